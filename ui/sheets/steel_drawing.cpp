#include "ui/sheets/steel_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QPainter>

#include "ui/drawing/label_set.h"
#include "ui/drawing/marks.h"
#include "ui/drawing/own_map.h"
#include "ui/drawing/steel_painter.h"
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
        paintLabels(painter, labels, style,
                    options.withSection ? sectionMarkBoxes(sectionX, body, style) : std::vector<QRectF>());
        painter.setPen(Qt::NoPen);
        painter.setBrush(style.ink.ink);
        painter.drawEllipse(map(markedCorner(*casting)), 1.6 * unit, 1.6 * unit);
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

ScaledDrawing meshCutDrawing(const MeshLayout& mesh)
{
    /// Two sheets side by side.
    const double gap = 60.0;
    const int across = mesh.sheets > 1 ? 2 : 1;
    const int down = (mesh.sheets + across - 1) / across;
    const double width = mesh.sheet.width;
    const double depth = mesh.sheet.depth;
    const auto cornerOf = [=](int sheet) {
        return QPointF((sheet % across) * (width + gap), (sheet / across) * (depth + gap));
    };
    ScaledDrawing drawing;
    drawing.bounds = [=](const PaintStyle& style) {
        const double unit = style.mmPerUnit;
        return QRectF(0.0, 0.0, across * (width + gap) - gap, down * (depth + gap) - gap)
            .adjusted(-unit, -unit, unit, unit);
    };
    drawing.paint = [=](QPainter& painter, const PaintStyle& style) {
        std::vector<OverlayLabel> labels;
        for (int sheet = 0; sheet < mesh.sheets; ++sheet) {
            painter.setPen(thinPen(style, style.ink.ink));
            painter.setBrush(Qt::NoBrush);
            painter.drawRect(QRectF(cornerOf(sheet), QSizeF(width, depth)));
        }
        for (const MeshPiece& piece : mesh.pieces) {
            QSizeF size(piece.at.width(), piece.at.height());
            if (piece.turnedOnSheet) size.transpose();
            // The low corner of a sheet is drawn below left.
            const QPointF low = cornerOf(piece.sheet) + QPointF(piece.onSheet.x, depth - piece.onSheet.y - size.height());
            const QRectF box(low, size);
            painter.setPen(outlinePen(style));
            painter.setBrush(style.ink.cast);
            painter.drawRect(box);
            painter.setBrush(Qt::NoBrush);
            painter.setPen(thinPen(style, style.ink.ink));
            painter.drawLine(box.bottomLeft(), box.topRight());
            OverlayLabel label;
            label.at = box.center();
            const QString words = Sheets::tr("%1, %2", "mark and size of a piece of mesh")
                                      .arg(meshMark(piece.mark), sizeText(std::round(size.width()), std::round(size.height())));
            label.texts = {meshMark(piece.mark)};
            if (textSizeMm(words, style).width() < size.width()) label.texts.prepend(words);
            label.look.behind = style.ink.sheet;
            label.look.colour = style.ink.ink;
            label.weight = size.width() * size.height();
            labels.push_back(std::move(label));
        }
        paintLabels(painter, labels, style);
    };
    return drawing;
}

}  // namespace yardcast::ui
