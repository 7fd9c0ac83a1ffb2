#include "ui/drawing/overlay_painter.h"

#include <algorithm>

#include <QCoreApplication>

#include "ui/drawing/hand_marks.h"
#include "ui/drawing/mould_painter.h"
#include "ui/drawing/painters.h"
#include "ui/drawing/stage_words.h"
#include "ui/drawing/steel_painter.h"
#include "ui/drawing/strength_marks.h"

namespace yardcast::ui {

namespace {

/// One casting of a counter in the hands.
struct Handled {
    const Part& part;
    const Counter& counter;
    const Casting& casting;
    const CastingStrength* strength;   ///< null while not known
};

/// The edge it is tilted about, and rings where hands take it: the plan's grips as they are now (a drag goes before the
/// assessment), or thin rings where the program proposes them.
void paintHandling(QPainter& painter, const Handled& handled, const Projection& projection, const PaintStyle& style)
{
    const auto toView = [&](Point own) { return projection.map(handled.part.place.toPlan(own), handled.counter.topMm); };
    const CaseResult* tilt = handled.strength ? handled.strength->find(StrengthCase::tilt) : nullptr;
    if (tilt && tilt->edge >= 0 && projection.isAbove() && !handled.casting.outline.empty()) {
        const Ring& ring = handled.casting.outline.front().outer;
        const std::size_t edge = static_cast<std::size_t>(tilt->edge);
        if (edge < ring.size()) {
            paintStandingEdge(painter, toView(ring[edge]), toView(ring[(edge + 1) % ring.size()]), style);
        }
    }
    const CastingGrips found = castingGrips(handled.counter, handled.casting, handled.strength);
    const double radius = gripUnits(style) * style.mmPerUnit;
    painter.setPen(found.own ? style.pen(style.ink.chosen, style.wide()) : thinPen(style, style.ink.chosen));
    painter.setBrush(style.ink.sheet);
    for (const Point grip : found.grips) {
        painter.drawEllipse(toView(grip), radius, radius);
    }
    painter.setBrush(Qt::NoBrush);
}

}  // namespace

void paintCentreOfGravity(QPainter& painter, QPointF at, const PaintStyle& style, const QColor& colour)
{
    const double radius = centreUnits(style) * style.mmPerUnit;
    const QRectF box(at.x() - radius, at.y() - radius, 2.0 * radius, 2.0 * radius);
    painter.setPen(thinPen(style, colour));
    painter.setBrush(style.ink.sheet);
    painter.drawEllipse(box);
    painter.setBrush(colour);
    painter.drawPie(box, 0, 90 * 16);
    painter.drawPie(box, 180 * 16, 90 * 16);
    painter.setBrush(Qt::NoBrush);
}

void paintSteelLaid(QPainter& painter, const Plan& plan, const Assessment& assessment, const Projection& projection,
                    const PaintStyle& style)
{
    if (!projection.isAbove()) return;
    for (const CastingSteelLayoutPtr& layout : assessment.steel.layouts) {
        const Part* part = counterWithSteel(plan, *layout);
        if (!part) continue;
        const OwnMap map = [&](Point own) { return projection.map(part->place.toPlan(own)); };
        paintSteelLayout(painter, *layout, map, part->place.turnDeg, style);
    }
}

void paintSteelOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                       const Projection& projection, const PaintStyle& style)
{
    paintSteelLaid(painter, plan, assessment, projection, style);
    paintStageWords(painter, steelWords(plan, assessment, projection, style), style);
}

void paintLiftSigns(QPainter& painter, const Plan& plan, const Assessment& assessment, const Projection& projection,
                    const PaintStyle& style, const std::vector<std::string>& chosen)
{
    for (const PlacedCasting& placed : assessment.castings) {
        const Part* part = placed.casting ? findPart(plan, placed.casting->part) : nullptr;
        if (!part) {
            continue;
        }
        if (const auto* counter = std::get_if<Counter>(&part->body)) {
            paintHandling(painter, {*part, *counter, *placed.casting, assessment.strengthOf(placed.casting->id)},
                          projection, style);
        }
        if (showsSign(plan, *part, projection, style, chosen)) {
            const QPointF centre =
                projection.map({placed.centroidMm[0], placed.centroidMm[1]}, placed.centroidMm[2]);
            paintCentreOfGravity(painter, centre, style, style.ink.ink);
        }
    }
}

void paintLiftOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                      const Projection& projection, const PaintStyle& style)
{
    paintLiftSigns(painter, plan, assessment, projection, style, {});
    paintStageWords(painter, liftWords(plan, assessment, projection, style), style);
}

void paintMouldSigns(QPainter& painter, const Plan& plan, const Assessment& assessment, const Projection& projection,
                     const PaintStyle& style, const std::vector<std::string>& chosen)
{
    for (const MouldPtr& mould : assessment.moulds) {
        const auto placed = std::find_if(
            assessment.castings.begin(), assessment.castings.end(),
            [&](const PlacedCasting& one) { return one.casting && one.casting->id == mould->casting; });
        const Part* part = placed == assessment.castings.end() ? nullptr : findPart(plan, placed->casting->part);
        if (!part || !showsSign(plan, *part, projection, style, chosen)) continue;
        paintHandBadge(painter, castingMiddle(plan, *placed, *part, projection), handOf(*mould), style);
    }
}

void paintMouldOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                       const Projection& projection, const PaintStyle& style)
{
    paintMouldSigns(painter, plan, assessment, projection, style, {});
    paintStageWords(painter, mouldWords(plan, assessment, projection, style), style);
}

}  // namespace yardcast::ui
