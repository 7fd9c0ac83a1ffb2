#include "ui/sheets/own_drawing.h"

#include <algorithm>

#include <QPainter>

#include "ui/drawing/label_set.h"
#include "ui/drawing/marks.h"
#include "ui/drawing/strength_picture.h"
#include "ui/sheets/handedness.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_words.h"

namespace yardcast::ui {

namespace {

QPointF asItStands(Point own)
{
    return {own.x, -own.y};
}

/// The edge of the casting's outline that it stands on or turns about.
void paintEdge(QPainter& painter, const Casting& casting, int edge, const PaintStyle& style)
{
    if (casting.outline.empty() || edge < 0) return;
    const Ring& ring = casting.outline.front().outer;
    const auto index = static_cast<std::size_t>(edge);
    if (index >= ring.size()) return;
    painter.setPen(style.pen(style.ink.ink, 3.0 * style.wide()));
    painter.drawLine(asItStands(ring[index]), asItStands(ring[(index + 1) % ring.size()]));
}

void paintMarkedCorner(QPainter& painter, const Casting& casting, const PaintStyle& style)
{
    if (casting.outline.empty()) return;
    const double radius = 1.4 * style.mmPerUnit;
    painter.setPen(Qt::NoPen);
    painter.setBrush(style.ink.ink);
    painter.drawEllipse(asItStands(frontLeftCorner(casting.outline.front().outer)), radius, radius);
    painter.setBrush(Qt::NoBrush);
}

/// The ids of cutouts that the casting has, in the middle of those that have room, beside the small ones.
std::vector<OverlayLabel> cutoutLabels(const Counter& counter, const Casting& casting, const PaintStyle& style)
{
    std::vector<OverlayLabel> labels;
    for (const Cutout& cutout : counter.cutouts) {
        if (contains(casting.outline, cutout.centre)) continue;
        OverlayLabel label;
        label.at = asItStands(cutout.centre);
        label.texts = {QString::fromStdString(cutout.id)};
        label.weight = 30.0;
        label.look.behind = style.ink.sheet;
        const std::optional<Box> box = boundsOf(cutoutRing(cutout));
        const QSizeF room = textSizeMm(label.texts.first(), style);
        if (box && (box->width() < 1.5 * room.width() || box->height() < 1.5 * room.height()))
            label.clearUnits = std::max(box->width(), box->height()) / 2.0 / style.mmPerUnit;
        labels.push_back(std::move(label));
    }
    return labels;
}

}  // namespace

ScaledDrawing strengthDrawing(const Part& part, const CastingPtr& casting, const CaseResult& result,
                              const std::vector<SectionForces>& sections, FrontMark front)
{
    const Box box = casting->boundsMm;
    const auto body = [box] {
        return QRectF(asItStands({box.low.x, box.high.y}), asItStands({box.high.x, box.low.y}));
    };
    ScaledDrawing drawing;
    drawing.bounds = [body](const PaintStyle& style) {
        const double unit = style.mmPerUnit;
        return body().adjusted(-kUseMarksReach * unit, -kUseMarksReach * unit, kUseMarksReach * unit,
                               (kUseMarksReach + 7.0) * unit);
    };
    drawing.paint = [part, casting, result, sections, body, front](QPainter& painter, const PaintStyle& style) {
        const double unit = style.mmPerUnit;
        paintUse(painter, result, asItStands, style);
        painter.setPen(outlinePen(style));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(regionPath(casting->outline, asItStands));
        const auto* counter = std::get_if<Counter>(&part.body);
        std::vector<OverlayLabel> labels;
        if (counter) {
            paintEdge(painter, *casting, result.edge, style);
            labels = cutoutLabels(*counter, *casting, style);
        }
        paintUseMarks(painter, result, sections, asItStands, style, labels);
        if (!counter) return;
        paintMarkedCorner(painter, *casting, style);
        if (front == FrontMark::no) return;
        paintFrontMark(painter, QPointF(body().center().x(), body().bottom() + kUseMarksReach * unit), style);
    };
    return drawing;
}

ScaledDrawing holdDrawing(const Part& part, const CastingPtr& casting, const CaseResult& result)
{
    const Box box = casting->boundsMm;
    const QRectF body(asItStands({box.low.x, box.high.y}), asItStands({box.high.x, box.low.y}));
    constexpr double kAside = 3.0;
    constexpr double kBelow = 11.0;
    ScaledDrawing drawing;
    drawing.bounds = [body](const PaintStyle& style) {
        const double unit = style.mmPerUnit;
        return body.adjusted(-kAside * unit, -kAside * unit, kAside * unit, kBelow * unit);
    };
    drawing.paint = [part, casting, result, body](QPainter& painter, const PaintStyle& style) {
        painter.setPen(outlinePen(style));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(regionPath(casting->outline, asItStands));
        paintEdge(painter, *casting, result.edge, style);
        std::vector<OverlayLabel> labels;
        const auto* counter = std::get_if<Counter>(&part.body);
        if (counter) labels = cutoutLabels(*counter, *casting, style);
        CaseResult holders = result;
        // The edge is drawn as a line already.
        std::erase_if(holders.held, [](const HeldAt& held) { return held.under == "edge"; });
        paintHolders(painter, holders, asItStands, style, labels);
        if (!counter) return;
        paintMarkedCorner(painter, *casting, style);
        paintFrontMark(painter, QPointF(body.center().x(), body.bottom() + (kBelow - 7.0) * style.mmPerUnit), style);
    };
    return drawing;
}

}  // namespace yardcast::ui
