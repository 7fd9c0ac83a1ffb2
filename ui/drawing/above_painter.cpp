#include <algorithm>
#include <cmath>
#include <numbers>

#include <QPainter>

#include "ui/drawing/painters.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

/// Stretches of a ring's outline that lie under a counter and those in sight.
struct SplitLines {
    std::vector<QLineF> seen;
    std::vector<QLineF> hidden;
};

bool isUnder(const std::vector<Ring>& outlines, Point at)
{
    return std::any_of(outlines.begin(), outlines.end(), [&](const Ring& ring) { return contains(ring, at); });
}

void splitEdge(const std::vector<Ring>& outlines, Point a, Point b, const Projection& projection, SplitLines& into)
{
    std::vector<double> cuts{0.0, 1.0};
    const Point along = b - a;
    for (const Ring& ring : outlines) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point p = ring[i];
            const Point edge = ring[(i + 1) % ring.size()] - p;
            const double across = cross(along, edge);
            if (across == 0.0) {
                continue;
            }
            const double t = cross(p - a, edge) / across;
            const double u = cross(p - a, along) / across;
            if (t > 0.0 && t < 1.0 && u >= 0.0 && u <= 1.0) {
                cuts.push_back(t);
            }
        }
    }
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        if (cuts[i + 1] - cuts[i] < 1e-9) {
            continue;
        }
        const Point from = a + along * cuts[i];
        const Point to = a + along * cuts[i + 1];
        const QLineF line(projection.map(from), projection.map(to));
        (isUnder(outlines, (from + to) * 0.5) ? into.hidden : into.seen).push_back(line);
    }
}

SplitLines splitRing(const std::vector<Ring>& outlines, const Ring& ring, const Projection& projection)
{
    SplitLines lines;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        splitEdge(outlines, ring[i], ring[(i + 1) % ring.size()], projection, lines);
    }
    return lines;
}

QPainterPath regionPath(const Region& region, const Projection& projection)
{
    QPainterPath path;
    for (const Polygon& polygon : region) {
        path.addPath(pathOf(projection.map(polygon.outer)));
        for (const Ring& hole : polygon.holes) {
            path.addPath(pathOf(projection.map(hole)));
        }
    }
    return path;
}


Ring centred(double length, double width, double inLength, double inWidth)
{
    return rectangleRing({length / 2.0, width / 2.0}, {inLength, inWidth});
}

void drawLines(QPainter& painter, const QPen& pen, const std::vector<QLineF>& lines)
{
    painter.setPen(pen);
    painter.drawLines(lines.data(), static_cast<int>(lines.size()));
}

void paintCutout(QPainter& painter, const Part& part, const Cutout& cutout, const Projection& projection,
                 const PaintStyle& style)
{
    const QPainterPath opening = cutoutShape(part, cutout, projection);
    const auto toView = [&](Point own) { return projection.map(part.place.toPlan(own)); };
    painter.setPen(outlinePen(style));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(opening);

    const double rim = cutout.rimMm.value_or(0.0);
    if (rim > 0.0) {
        Cutout around = cutout;
        around.size = {cutout.size.width + 2.0 * rim, cutout.size.depth + 2.0 * rim};
        around.diameterMm = cutout.diameterMm + 2.0 * rim;
        if (cutout.cornerRadiusMm.value_or(0.0) > 0.0) {
            around.cornerRadiusMm = *cutout.cornerRadiusMm + rim;
        }
        painter.setPen(hiddenPen(style, style.ink.pencil));
        painter.drawPolygon(ownToAbove(part, cutoutRing(around), projection));
    }

    const Placement own{cutout.centre, cutout.turnDeg.value_or(0.0)};
    if (cutout.shape == CutoutShape::circle) {
        const double reach = cutout.diameterMm / 2.0 + 3.0 * (style.onPaper ? 1.0 : 2.0) * style.mmPerUnit;
        drawLines(painter, centrePen(style, style.ink.ink),
                  {QLineF(toView(own.toPlan({-reach, 0.0})), toView(own.toPlan({reach, 0.0}))),
                   QLineF(toView(own.toPlan({0.0, -reach})), toView(own.toPlan({0.0, reach})))});
    } else {
        const double x = cutout.size.width / 2.0;
        const double y = cutout.size.depth / 2.0;
        drawLines(painter, thinPen(style, style.ink.pencil),
                  {QLineF(toView(own.toPlan({-x, -y})), toView(own.toPlan({x, y}))),
                   QLineF(toView(own.toPlan({-x, y})), toView(own.toPlan({x, -y})))});
    }
    if (!style.showNames) {
        return;
    }
    const QString name = purposeName(cutout.purpose);
    const QSizeF room = textSizeMm(name, style);
    const QRectF box = opening.boundingRect();
    if (room.width() < 0.8 * box.width() && room.height() < 0.5 * box.height()) {
        TextLook look;
        look.behind = style.ink.sheet;
        QPointF at = toView(cutout.centre);
        if (cutout.shape == CutoutShape::circle) {
            // Clear of the centre lines, and of a diameter along them.
            at.ry() += 0.25 * box.height();
        }
        paintText(painter, at, name, style, look);
    }
}

void paintJoints(QPainter& painter, const Part& part, const Counter& counter, const Projection& projection,
                 const PaintStyle& style)
{
    for (const Joint& joint : counter.joints) {
        const Point along = joint.to - joint.from;
        const double run = length(along);
        if (run <= 0.0) {
            continue;
        }
        const double gap = joint.gapMm.value_or(kDefaultJointGapMm);
        const Point aside = leftNormal(along) * (gap / 2.0 / run);
        std::vector<QLineF> lines;
        // Below three units the two edges would run into one another: one line stands for the joint.
        const bool wide = gap > 3.0 * (style.onPaper ? 0.25 : 1.0) * style.mmPerUnit;
        for (const Point& shift : wide ? std::vector<Point>{aside, aside * -1.0} : std::vector<Point>{{0.0, 0.0}}) {
            lines.emplace_back(projection.map(part.place.toPlan(joint.from + shift)),
                               projection.map(part.place.toPlan(joint.to + shift)));
        }
        if (wide) {
            painter.fillPath(pathOf(ownToAbove(part, stripRing(joint.from, joint.to, gap), projection)),
                             style.ink.sheet);
        }
        drawLines(painter, outlinePen(style), lines);
    }
}

void paintCounter(QPainter& painter, const Plan& plan, const Part& part, const Counter& counter,
                  const Projection& projection, const PaintStyle& style)
{
    QPainterPath face = pathOf(ownToAbove(part, counter.outline, projection));
    for (const Cutout& cutout : counter.cutouts) {
        face.addPath(cutoutShape(part, cutout, projection));
    }
    fillCast(painter, face, style);

    std::vector<QLineF> hidden;
    for (const auto& [from, to] : rimInnerEdges(counter)) {
        hidden.emplace_back(projection.map(part.place.toPlan(from)), projection.map(part.place.toPlan(to)));
    }
    for (const Rib& rib : counter.ribs) {
        const QPolygonF strip = ownToAbove(part, stripRing(rib.from, rib.to, rib.widthMm), projection);
        if (strip.size() == 4) {
            hidden.emplace_back(strip[0], strip[1]);
            hidden.emplace_back(strip[2], strip[3]);
        }
    }
    drawLines(painter, hiddenPen(style, style.ink.pencil), hidden);

    for (const Cutout& cutout : counter.cutouts) {
        paintCutout(painter, part, cutout, projection, style);
    }
    paintJoints(painter, part, counter, projection, style);
    painter.setPen(outlinePen(style));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolygon(ownToAbove(part, counter.outline, projection));
    if (style.showNames && style.nameCastings) {
        const LabelPlace place = counterLabelPlace(plan, part, counter, projection, style);
        if (!place.text.isEmpty()) {
            TextLook look;
            look.bold = true;
            look.behind = style.ink.cast;
            paintText(painter, place.at, place.text, style, look);
        }
    }
}

/// A thing with a plain footprint: what lies under a counter is drawn with hidden lines and no tone.
template <typename Fill>
void paintSolid(QPainter& painter, const Plan& plan, const Part& part, const Projection& projection,
                const PaintStyle& style, const QPen& seenPen, Fill fill)
{
    const Ring ring = footprint(part);
    std::vector<Ring> over;
    Region seen = regionOf(ring);
    for (const Part* counter : countersOver(plan, part)) {
        over.push_back(footprint(*counter));
        seen = subtract(seen, regionOf(over.back()));
    }
    if (!seen.empty()) {
        fill(regionPath(seen, projection));
    }
    const SplitLines lines = splitRing(over, ring, projection);
    drawLines(painter, hiddenPen(style, style.ink.ink), lines.hidden);
    drawLines(painter, seenPen, lines.seen);
}

void paintCore(QPainter& painter, const Part& part, const Ring& own, const Projection& projection,
               const PaintStyle& style)
{
    const QPolygonF core = ownToAbove(part, own, projection);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(hiddenPen(style, style.ink.pencil));
    painter.drawPolygon(core);
    crossesIn(painter, pathOf(core), style);
}

void paintLabelIn(QPainter& painter, const Part& part, const Projection& projection, const PaintStyle& style,
                  Size size, const QColor& behind)
{
    if (!style.showNames || (!style.nameCastings && part.kind() != PartKind::appliance)) {
        return;
    }
    // Level where it fits, else along the longer side; never upside down.
    double angle = 0.0;
    const QRectF box = projection.map(footprint(part)).boundingRect();
    const bool square = std::fabs(box.width() * box.height() - size.width * size.depth) < 1.0;
    QString label = square ? labelThatFits(part, box.size(), style) : QString();
    if (label.isEmpty()) {
        const Point along = size.width >= size.depth ? Point{1.0, 0.0} : Point{0.0, 1.0};
        const Point inPlan = part.place.directionToPlan(along);
        angle = std::atan2(-inPlan.y, inPlan.x) * 180.0 / std::numbers::pi;
        if (angle >= 89.5) {
            angle -= 180.0;
        } else if (angle < -90.5) {
            angle += 180.0;
        }
        label = labelThatFits(part, QSizeF(std::max(size.width, size.depth), std::min(size.width, size.depth)), style);
    }
    if (label.isEmpty()) {
        return;
    }
    TextLook look;
    look.angleDeg = angle;
    look.behind = behind;
    paintText(painter, projection.map(part.place.toPlan({size.width / 2.0, size.depth / 2.0})), label, style, look);
}

void paintFront(QPainter& painter, const Plan& plan, const Part& part, const Front& front,
                const Projection& projection, const PaintStyle& style)
{
    paintSolid(painter, plan, part, projection, style, outlinePen(style), [&](const QPainterPath& seen) {
        painter.fillPath(seen, style.ink.timber);
    });
    const Point along = front.to - front.from;
    const double run = length(along);
    if (run <= 0.0) {
        return;
    }
    const Point unit = along * (1.0 / run);
    const Point outwards = leftNormal(unit) * -1.0;
    const auto toView = [&](Point own) { return projection.map(part.place.toPlan(own)); };
    for (const Door& door : front.doors) {
        const bool left = door.hinges == HingeSide::left;
        const double width = door.toMm - door.fromMm;
        if (width <= 0.0) {
            continue;
        }
        const Point hinge = front.from + unit * (left ? door.fromMm : door.toMm);
        const Point closed = front.from + unit * (left ? door.toMm : door.fromMm);
        constexpr int kSteps = 16;
        QPolygonF swing;
        for (int i = 0; i <= kSteps; ++i) {
            const SineCosine turn = sineCosineDeg(90.0 * i / kSteps);
            swing.append(toView(hinge + (closed - hinge) * turn.cosine + outwards * (width * turn.sine)));
        }
        painter.setPen(thinPen(style, style.ink.pencil));
        painter.setBrush(Qt::NoBrush);
        painter.drawPolyline(swing);
        painter.drawLine(toView(hinge), toView(hinge + outwards * width));
    }
}

void paintAppliance(QPainter& painter, const Plan& plan, const Part& part, const Appliance& appliance,
                    const Projection& projection, const PaintStyle& style)
{
    const bool covered = !countersOver(plan, part).empty();
    paintSolid(painter, plan, part, projection, style, outlinePen(style), [&](const QPainterPath& seen) {
        painter.fillPath(seen, style.ink.appliance);
    });
    const double clearance = appliance.clearanceMm.value_or(0.0);
    if (clearance > 0.0) {
        const Ring around = rectangleRing({appliance.size.width / 2.0, appliance.size.depth / 2.0},
                                          {appliance.size.width + 2.0 * clearance,
                                           appliance.size.depth + 2.0 * clearance},
                                          0.0, clearance);
        painter.setPen(phantomPen(style, style.ink.pencil));
        painter.setBrush(Qt::NoBrush);
        painter.drawPolygon(ownToAbove(part, around, projection));
    }
    paintLabelIn(painter, part, projection, style, appliance.size, covered ? style.ink.cast : style.ink.appliance);
}

}  // namespace

void paintPartAbove(QPainter& painter, const Plan& plan, const Part& part, const Projection& projection,
                    const PaintStyle& style)
{
    const auto castSeen = [&](const QPainterPath& seen) { fillCast(painter, seen, style); };
    if (const auto* counter = std::get_if<Counter>(&part.body)) {
        paintCounter(painter, plan, part, *counter, projection, style);
    } else if (const auto* support = std::get_if<Support>(&part.body)) {
        paintSolid(painter, plan, part, projection, style, outlinePen(style), castSeen);
        if (support->core) {
            paintCore(painter, part,
                      centred(support->lengthMm, support->widthMm, support->core->lengthMm,
                              support->core->thicknessMm),
                      projection, style);
        }
        paintLabelIn(painter, part, projection, style, {support->lengthMm, support->widthMm}, style.ink.cast);
    } else if (const auto* panel = std::get_if<Panel>(&part.body)) {
        paintSolid(painter, plan, part, projection, style, outlinePen(style), castSeen);
        if (panel->core) {
            paintCore(painter, part,
                      centred(panel->lengthMm, panel->thicknessMm, panel->core->lengthMm, panel->core->thicknessMm),
                      projection, style);
        }
        paintLabelIn(painter, part, projection, style, {panel->lengthMm, panel->thicknessMm}, style.ink.cast);
    } else if (const auto* front = std::get_if<Front>(&part.body)) {
        paintFront(painter, plan, part, *front, projection, style);
    } else if (const auto* appliance = std::get_if<Appliance>(&part.body)) {
        paintAppliance(painter, plan, part, *appliance, projection, style);
    }
}

}  // namespace yardcast::ui
