#include <algorithm>
#include <cmath>

#include <QPainter>

#include "core/front/front_layout.h"
#include "ui/drawing/painters.h"

namespace yardcast::ui {

namespace {

/// A rectangle of the elevation: along the view, and heights above the datum.
QRectF standing(double fromX, double toX, double lowMm, double highMm)
{
    return QRectF(QPointF(std::min(fromX, toX), -highMm), QPointF(std::max(fromX, toX), -lowMm));
}

struct Along {
    double low = 0.0;
    double high = 0.0;
};

Along extentAlong(const Ring& ring, const Projection& projection)
{
    Along extent;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const double x = projection.map(ring[i]).x();
        extent.low = i == 0 ? x : std::min(extent.low, x);
        extent.high = i == 0 ? x : std::max(extent.high, x);
    }
    return extent;
}

/// The visible side of a counter: for each stretch along the view how deep it hangs below the face.
struct Hang {
    double fromX = 0.0;
    double toX = 0.0;
    double depthMm = 0.0;
};

/// Each edge hangs by its rim or by the thickness; ribs and cutout rims hang as deep as the rim.
std::vector<Hang> hangsOf(const Part& part, const Counter& counter, const Projection& projection)
{
    std::vector<Hang> hangs;
    const auto add = [&](const Ring& own, double depth) {
        const Along extent = extentAlong(transformed(own, part.place), projection);
        hangs.push_back({extent.low, extent.high, depth});
    };
    const auto count = counter.outline.size();
    for (std::size_t i = 0; i < count; ++i) {
        const bool rimmed = isRimmed(counter, static_cast<int>(i));
        const double depth = rimmed ? std::max(counter.rim->depthMm, counter.thicknessMm) : counter.thicknessMm;
        add({counter.outline[i], counter.outline[(i + 1) % count]}, depth);
    }
    const double full = fullDepthMm(counter);
    for (const Rib& rib : counter.ribs) {
        add(stripRing(rib.from, rib.to, rib.widthMm), full);
    }
    return hangs;
}

/// The outline of all hangs together: a skyline upside down.
QPolygonF skyline(const std::vector<Hang>& hangs, double topMm)
{
    std::vector<double> stops;
    for (const Hang& hang : hangs) {
        stops.push_back(hang.fromX);
        stops.push_back(hang.toX);
    }
    std::sort(stops.begin(), stops.end());
    stops.erase(std::unique(stops.begin(), stops.end()), stops.end());
    if (stops.size() < 2) {
        return {};
    }
    QPolygonF outline;
    outline << QPointF(stops.back(), -topMm) << QPointF(stops.front(), -topMm);
    for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
        const double middle = (stops[i] + stops[i + 1]) / 2.0;
        double depth = 0.0;
        for (const Hang& hang : hangs) {
            if (hang.fromX <= middle && middle <= hang.toX) {
                depth = std::max(depth, hang.depthMm);
            }
        }
        outline << QPointF(stops[i], depth - topMm) << QPointF(stops[i + 1], depth - topMm);
    }
    return outline;
}

/// Corners of the outline that show as upright edges: between two sides of which one at least faces the viewer, with
/// nothing of the same slab before them.
std::vector<std::pair<double, double>> uprightEdges(const Part& part, const Counter& counter,
                                                    const Projection& projection)
{
    const Ring ring = transformed(counter.outline, part.place);
    const auto count = ring.size();
    if (count < 3 || count > 64) {
        return {};
    }
    const double side = signedArea(ring) >= 0.0 ? 1.0 : -1.0;
    const auto facing = [&](std::size_t i) {
        return side * (projection.map(ring[(i + 1) % count]).x() - projection.map(ring[i]).x()) > 1e-6;
    };
    std::vector<std::pair<double, double>> edges;
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t before = (i + count - 1) % count;
        if (!facing(i) && !facing(before)) {
            continue;
        }
        const double x = projection.map(ring[i]).x();
        const double depth = projection.depth(ring[i]);
        bool covered = false;
        for (std::size_t j = 0; j < count && !covered; ++j) {
            if (j == i || j == before || !facing(j)) {
                continue;
            }
            const double a = projection.map(ring[j]).x();
            const double b = projection.map(ring[(j + 1) % count]).x();
            if ((a < x) == (b < x)) {
                continue;
            }
            const double t = (x - a) / (b - a);
            covered = projection.depth(ring[j] + (ring[(j + 1) % count] - ring[j]) * t) < depth - 1e-6;
        }
        if (!covered) {
            const auto deep = [&](std::size_t edge) {
                return isRimmed(counter, static_cast<int>(edge)) ? counter.rim->depthMm : counter.thicknessMm;
            };
            edges.emplace_back(x, std::max(deep(i), deep(before)));
        }
    }
    return edges;
}

void paintCounter(QPainter& painter, const Part& part, const Counter& counter, const Projection& projection,
                  const PaintStyle& style)
{
    const std::vector<Hang> hangs = hangsOf(part, counter, projection);
    const QPolygonF outline = skyline(hangs, counter.topMm);
    if (outline.isEmpty()) {
        return;
    }
    fillCast(painter, pathOf(outline), style);
    std::vector<QLineF> upright;
    for (const auto& [x, depth] : uprightEdges(part, counter, projection)) {
        upright.emplace_back(x, -counter.topMm, x, depth - counter.topMm);
    }
    for (const Joint& joint : counter.joints) {
        const double gap = joint.gapMm.value_or(kDefaultJointGapMm);
        const Point nearer = projection.depth(part.place.toPlan(joint.from)) <
                                     projection.depth(part.place.toPlan(joint.to))
                                 ? joint.from
                                 : joint.to;
        const double x = projection.map(part.place.toPlan(nearer)).x();
        for (const double shift : {-gap / 2.0, gap / 2.0}) {
            upright.emplace_back(x + shift, -counter.topMm, x + shift, fullDepthMm(counter) - counter.topMm);
        }
    }
    painter.setPen(thinPen(style, style.ink.ink));
    painter.drawLines(upright.data(), static_cast<int>(upright.size()));

    std::vector<QLineF> hidden;
    for (const Cutout& cutout : counter.cutouts) {
        const Along extent = extentAlong(transformed(cutoutRing(cutout), part.place), projection);
        for (const double x : {extent.low, extent.high}) {
            hidden.emplace_back(x, -counter.topMm, x, counter.thicknessMm - counter.topMm);
        }
    }
    painter.setPen(hiddenPen(style, style.ink.pencil));
    painter.drawLines(hidden.data(), static_cast<int>(hidden.size()));
    painter.setPen(outlinePen(style));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolygon(outline);
}

void paintLabel(QPainter& painter, const Part& part, const QRectF& box, const PaintStyle& style,
                const QColor& behind)
{
    const bool cast = part.kind() != PartKind::appliance && part.kind() != PartKind::front;
    if (!style.showNames || (cast && !style.nameCastings)) {
        return;
    }
    const bool upright = box.height() > box.width() && textSizeMm(QString::fromStdString(part.id), style).width() >
                                                           box.width();
    const QSizeF room = upright ? QSizeF(box.height(), box.width()) : box.size();
    const QString label = labelThatFits(part, room, style);
    if (label.isEmpty()) {
        return;
    }
    TextLook look;
    look.behind = behind;
    look.angleDeg = upright ? -90.0 : 0.0;
    paintText(painter, box.center(), label, style, look);
}

/// A support or panel: its box, its core as a hidden line, its pads.
void paintUpright(QPainter& painter, const Plan& plan, const Part& part, const Projection& projection,
                  const PaintStyle& style, Size size, const std::optional<Core>& core,
                  const std::optional<Pads>& pads)
{
    const Levels levels = levelsOf(plan, part);
    const Along extent = extentAlong(footprint(part), projection);
    const QRectF box = standing(extent.low, extent.high, levels.lowMm, levels.highMm);
    QPainterPath path;
    path.addRect(box);
    fillCast(painter, path, style);
    if (core) {
        const Ring inside = transformed(
            rectangleRing({size.width / 2.0, size.depth / 2.0}, {core->lengthMm, core->thicknessMm}), part.place);
        const Along within = extentAlong(inside, projection);
        const double middle = (levels.lowMm + levels.highMm) / 2.0;
        const QRectF hidden =
            standing(within.low, within.high, middle - core->heightMm / 2.0, middle + core->heightMm / 2.0);
        QPainterPath foam;
        foam.addRect(hidden);
        crossesIn(painter, foam, style);
        painter.setPen(hiddenPen(style, style.ink.pencil));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(hidden);
    }
    painter.setPen(outlinePen(style));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box);
    if (pads && pads->count > 0) {
        const double thick = pads->thicknessMm.value_or(8.0);
        const double wide = std::min(pads->size.width, box.width());
        painter.setPen(thinPen(style, style.ink.ink));
        painter.setBrush(style.ink.pencil);
        painter.drawRect(standing(extent.low, extent.low + wide, levels.lowMm - thick, levels.lowMm));
        painter.drawRect(standing(extent.high - wide, extent.high, levels.lowMm - thick, levels.lowMm));
        painter.setBrush(Qt::NoBrush);
    }
    paintLabel(painter, part, box, style, style.ink.cast);
}

/// Where a distance along the front shows in this view.
struct FrontView {
    Point start;
    Point unit;
    const Projection& projection;
    double x(double alongMm) const { return projection.map(start + unit * alongMm).x(); }
};

void paintDoors(QPainter& painter, const Front& front, const FrontLayout& layout, const FrontView& view,
                const PaintStyle& style)
{
    for (std::size_t i = 0; i < front.doors.size(); ++i) {
        const Door& door = front.doors[i];
        const bool solved = i < layout.doors.size();
        const double from = solved ? layout.doors[i].fromMm : door.fromMm;
        const double to = solved ? layout.doors[i].toMm : door.toMm;
        const QRectF leaf = standing(view.x(from), view.x(to), front.bottomMm, front.topMm);
        painter.setPen(outlinePen(style));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(leaf);
        // Hinges as small plates on their side.
        const bool hingeLeft = door.hinges == HingeSide::left;
        const double x = view.x(hingeLeft ? from : to);
        const double wide = 2.0 * (style.onPaper ? 1.0 : 4.0) * style.mmPerUnit;
        painter.setBrush(style.ink.ink);
        for (const double share : {0.12, 0.88}) {
            const double z = front.bottomMm + (front.topMm - front.bottomMm) * share;
            painter.drawRect(standing(x - wide / 2.0, x + wide / 2.0, z - wide, z + wide));
        }
        painter.setBrush(Qt::NoBrush);
    }
}

void paintFront(QPainter& painter, const Part& part, const Front& front, const Projection& projection,
                const PaintStyle& style)
{
    const Along extent = extentAlong(footprint(part), projection);
    const QRectF box = standing(extent.low, extent.high, front.bottomMm, front.topMm);
    const Point from = part.place.toPlan(front.from);
    const Point to = part.place.toPlan(front.to);
    const double run = distance(from, to);
    const double shown = std::fabs(projection.map(to).x() - projection.map(from).x());
    const FrontView view{from, run > 0.0 ? (to - from) * (1.0 / run) : Point{1.0, 0.0}, projection};
    const bool broadside = run > 0.0 && shown > 0.5 * run;

    std::vector<Finding> ignored;
    FrontLayout layout;
    if (broadside) {
        layout = layOutFront(part, ignored);
    }
    painter.fillRect(box, style.ink.sheet);
    std::vector<QRectF> battens;
    battens.reserve(layout.battenStartsMm.size());
    for (const double start : layout.battenStartsMm) {
        if (front.batten.run == BattenRun::upright) {
            battens.push_back(standing(view.x(start), view.x(start + front.batten.widthMm), front.bottomMm,
                                       front.topMm));
        } else {
            battens.push_back(standing(extent.low, extent.high, front.bottomMm + start,
                                       front.bottomMm + start + front.batten.widthMm));
        }
    }
    if (battens.empty()) {
        painter.fillRect(box, style.ink.timber);
    } else {
        painter.setPen(thinPen(style, style.ink.pencil));
        painter.setBrush(style.ink.timber);
        painter.drawRects(battens.data(), static_cast<int>(battens.size()));
    }
    if (broadside) {
        paintDoors(painter, front, layout, view, style);
    }
    painter.setPen(outlinePen(style));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box);
    paintLabel(painter, part, box, style, style.ink.sheet);
}

void paintAppliance(QPainter& painter, const Plan& plan, const Part& part, const Projection& projection,
                    const PaintStyle& style)
{
    const Levels levels = levelsOf(plan, part);
    const Along extent = extentAlong(footprint(part), projection);
    const QRectF box = standing(extent.low, extent.high, levels.lowMm, levels.highMm);
    painter.setPen(outlinePen(style));
    painter.setBrush(style.ink.appliance);
    painter.drawRect(box);
    painter.setBrush(Qt::NoBrush);
    paintLabel(painter, part, box, style, style.ink.appliance);
}

}  // namespace

void paintPartInFront(QPainter& painter, const Plan& plan, const Part& part, const Projection& projection,
                      const PaintStyle& style)
{
    if (const auto* counter = std::get_if<Counter>(&part.body)) {
        paintCounter(painter, part, *counter, projection, style);
    } else if (const auto* support = std::get_if<Support>(&part.body)) {
        paintUpright(painter, plan, part, projection, style, {support->lengthMm, support->widthMm}, support->core,
                     support->pads);
    } else if (const auto* panel = std::get_if<Panel>(&part.body)) {
        paintUpright(painter, plan, part, projection, style, {panel->lengthMm, panel->thicknessMm}, panel->core, {});
    } else if (const auto* front = std::get_if<Front>(&part.body)) {
        paintFront(painter, part, *front, projection, style);
    } else {
        paintAppliance(painter, plan, part, projection, style);
    }
}

QPainterPath partShapeInFront(const Plan& plan, const Part& part, const Projection& projection)
{
    if (const auto* counter = std::get_if<Counter>(&part.body)) {
        return pathOf(skyline(hangsOf(part, *counter, projection), counter->topMm));
    }
    const Levels levels = levelsOf(plan, part);
    const Along extent = extentAlong(footprint(part), projection);
    QPainterPath path;
    path.addRect(standing(extent.low, extent.high, levels.lowMm, levels.highMm));
    return path;
}

}  // namespace yardcast::ui
