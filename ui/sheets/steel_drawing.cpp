#include "ui/sheets/steel_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QPainter>

#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/label_set.h"
#include "ui/drawing/marks.h"
#include "ui/drawing/own_map.h"
#include "ui/drawing/steel_painter.h"
#include "ui/sheets/free_labels.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/steel_names.h"

namespace yardcast::ui {

namespace {

/// Room for words beyond the casting, style units.
constexpr double kAside = 9.0;

OwnMap mapOf(Seen seen)
{
    if (seen == Seen::inTheMould) {
        return [](Point own) { return QPointF(-own.x, -own.y); };
    }
    return [](Point own) { return QPointF(own.x, -own.y); };
}

QRectF boxOf(const Box& box, const OwnMap& map)
{
    return QRectF(map(box.low), map(box.high)).normalized();
}

/// Heights of the two marks of the section.
std::array<double, 2> sectionMarksY(const QRectF& body, const PaintStyle& style)
{
    const double away = 5.0 * style.mmPerUnit;
    return {body.top() - away, body.bottom() + away};
}

std::vector<QRectF> sectionMarkBoxes(double x, const QRectF& body, const PaintStyle& style)
{
    const double unit = style.mmPerUnit;
    std::vector<QRectF> boxes;
    for (const double y : sectionMarksY(body, style)) {
        boxes.emplace_back(x - 9.0 * unit, y - 3.0 * unit, 15.0 * unit, 6.0 * unit);
    }
    return boxes;
}

void paintSectionMark(QPainter& painter, double x, const QRectF& body, const PaintStyle& style)
{
    const double unit = style.mmPerUnit;
    TextLook look;
    look.bold = true;
    for (const double y : sectionMarksY(body, style)) {
        painter.setPen(outlinePen(style));
        painter.drawLine(QPointF(x, y - 2.5 * unit), QPointF(x, y + 2.5 * unit));
        painter.drawLine(QPointF(x, y), QPointF(x - 6.0 * unit, y));
        paintArrowhead(painter, QPointF(x - 8.0 * unit, y), QPointF(-1.0, 0.0), style, style.ink.ink);
        paintText(painter, QPointF(x + 3.0 * unit, y), QStringLiteral("A"), style, look);
    }
}

void paintFootMark(QPainter& painter, QPointF at, const PaintStyle& style)
{
    TextLook look;
    look.bold = true;
    paintText(painter, at + QPointF(0.0, 3.0 * style.mmPerUnit), Sheets::tr("FOOT of the panel"), style, look);
}

std::vector<OverlayLabel> cutoutNames(const Part& part, const Casting& casting, const OwnMap& map,
                                      const PaintStyle& style)
{
    std::vector<OverlayLabel> labels;
    const auto* counter = std::get_if<Counter>(&part.body);
    if (!counter) return labels;
    for (const Cutout& cutout : counter->cutouts) {
        const std::optional<Box> box = boundsOf(cutoutRing(cutout));
        if (!box || contains(casting.outline, cutout.centre)) continue;
        OverlayLabel label;
        label.at = map(cutout.centre);
        label.texts = {QString::fromStdString(cutout.id)};
        label.weight = 30.0;
        label.look.behind = style.ink.sheet;
        const QSizeF room = textSizeMm(label.texts.first(), style);
        if (box->width() < 1.5 * room.width() || box->height() < 1.5 * room.height())
            label.clearUnits = std::max(box->width(), box->height()) / 2.0 / style.mmPerUnit;
        labels.push_back(std::move(label));
    }
    return labels;
}

/// What no word may cover: the outline and every bar.
std::vector<QLineF> linesOf(const Casting& casting, const CastingSteelLayout& layout, const OwnMap& map)
{
    std::vector<QLineF> lines;
    const auto addRing = [&](const Ring& ring) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            lines.emplace_back(map(ring[i]), map(ring[(i + 1) % ring.size()]));
        }
    };
    for (const Polygon& polygon : casting.outline) {
        addRing(polygon.outer);
        for (const Ring& hole : polygon.holes) addRing(hole);
    }
    for (const LaidBar& bar : layout.bars) lines.emplace_back(map(bar.from), map(bar.to));
    for (const CornerBar& bar : layout.cornerBars) lines.emplace_back(map(bar.bar.from), map(bar.bar.to));
    return lines;
}

/// How far the mesh ends from two sides of the mould, once each; at the other end where the section's mark stands.
std::vector<Dimension> coverDimensions(const CastingSteelLayout& layout, const QRectF& body, const OwnMap& map,
                                       const std::vector<QRectF>& taken, const PaintStyle& style)
{
    QRectF mesh;
    for (const MeshLayout& one : layout.meshes) {
        for (const MeshPiece& piece : one.pieces) mesh = mesh.united(boxOf(piece.at, map));
    }
    std::vector<Dimension> found;
    if (mesh.isEmpty()) return found;
    const auto add = [&](QPointF a, QPointF b, double offsetUnits, int figureEnd) {
        Dimension dimension;
        dimension.a = a;
        dimension.b = b;
        dimension.offsetUnits = offsetUnits;
        dimension.valueMm = std::round(QLineF(a, b).length());
        dimension.figureEnd = figureEnd;
        const QRectF covers = dimensionBounds(dimension, style);
        const bool isFree = std::none_of(taken.begin(), taken.end(),
                                         [&](const QRectF& other) { return other.intersects(covers); });
        if (isFree && dimension.valueMm > 0.0) found.push_back(dimension);
        return isFree;
    };
    constexpr double kAway = 4.0;
    if (!add(body.topLeft(), {mesh.left(), body.top()}, kAway, 1))
        add({mesh.right(), body.top()}, body.topRight(), kAway, -1);
    add({body.left(), body.bottom()}, {body.left(), mesh.bottom()}, kAway, 1);
    return found;
}

}  // namespace

Seen seenOf(const CastingSteelLayout& layout)
{
    return layout.datum == SteelDatum::mouldBase && layout.faceDown ? Seen::inTheMould : Seen::asItStands;
}

Point markedCorner(const Casting& casting)
{
    return casting.outline.empty() ? Point{} : frontLeftCorner(casting.outline.front().outer);
}

ScaledDrawing steelDrawing(const Part& part, const CastingPtr& casting, const CastingSteelLayout& layout,
                           const SteelDrawingOptions& options)
{
    const OwnMap map = mapOf(options.seen);
    const QRectF body = boxOf(casting->boundsMm, map);
    ScaledDrawing drawing;
    drawing.bounds = [body](const PaintStyle& style) {
        const double unit = style.mmPerUnit;
        return body.adjusted(-kAside * unit, -kAside * unit, kAside * unit, (kAside + 7.0) * unit);
    };
    drawing.paint = [part, casting, layout, options, map, body](QPainter& painter, const PaintStyle& style) {
        const double unit = style.mmPerUnit;
        const QPainterPath outline = regionPath(casting->outline, map);
        painter.fillPath(outline, style.ink.sheet);
        paintSteelLayout(painter, layout, map, 0.0, style);
        painter.setPen(outlinePen(style));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(outline);
        std::vector<OverlayLabel> labels = steelLabels(layout, map, style);
        const std::vector<OverlayLabel> names = cutoutNames(part, *casting, map, style);
        labels.insert(labels.end(), names.begin(), names.end());
        const double sectionX = map({options.sectionXMm, 0.0}).x();
        std::vector<QRectF> taken =
            options.withSection ? sectionMarkBoxes(sectionX, body, style) : std::vector<QRectF>();
        for (const Dimension& dimension : coverDimensions(layout, body, map, taken, style)) {
            taken.push_back(dimensionBounds(dimension, style));
            paintDimension(painter, dimension, style);
        }
        const QPointF corner = map(markedCorner(*casting));
        taken.emplace_back(corner - QPointF(1.6, 1.6) * unit, QSizeF(3.2, 3.2) * unit);
        paintFreeLabels(painter, labels, style, linesOf(*casting, layout, map), taken,
                        body.adjusted(-kAside * unit, -kAside * unit, kAside * unit, (kAside - 1.0) * unit));
        painter.setPen(Qt::NoPen);
        painter.setBrush(style.ink.ink);
        painter.drawEllipse(corner, 1.6 * unit, 1.6 * unit);
        painter.setBrush(Qt::NoBrush);
        const QPointF below(body.center().x(), body.bottom() + kAside * unit);
        if (options.front == FrontMark::no) {
            // Pieces drawn together have one for all.
        } else if (part.kind() == PartKind::counter) {
            paintFrontMark(painter, below, style);
        } else {
            paintFootMark(painter, below, style);
        }
        if (options.withSection) paintSectionMark(painter, sectionX, body, style);
    };
    return drawing;
}

}  // namespace yardcast::ui
