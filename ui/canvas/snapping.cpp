#include "ui/canvas/snapping.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace yardcast::ui {

namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();
/// Less than this, mm, is no gap and no distance.
constexpr double kNothingMm = 1e-6;

Point closestOn(const SnapEdge& edge, Point p)
{
    const Point along = edge.b - edge.a;
    const double span2 = dot(along, along);
    if (span2 <= kNothingMm) return edge.a;
    return edge.a + along * std::clamp(dot(p - edge.a, along) / span2, 0.0, 1.0);
}

double toGrid(double value, double origin, double pitch)
{
    return pitch > 0.0 ? origin + std::round((value - origin) / pitch) * pitch : value;
}

const SnapPoint* nearest(const std::vector<SnapPoint>& points, Point at, double radius)
{
    const SnapPoint* best = nullptr;
    double least = radius;
    for (const SnapPoint& point : points) {
        if (std::abs(point.at.x - at.x) > least || std::abs(point.at.y - at.y) > least) continue;
        const double far = distance(point.at, at);
        if (far <= least) {
            least = far;
            best = &point;
        }
    }
    return best;
}

using Coordinate = double Point::*;
constexpr Coordinate kX = &Point::x;
constexpr Coordinate kY = &Point::y;
Coordinate other(Coordinate axis) { return axis == kX ? kY : kX; }

Point pointOf(Coordinate axis, double along, double across)
{
    return axis == kX ? Point{along, across} : Point{across, along};
}

/// The nearest in the coordinate alone; among equals the one that lies closest, so that the guide is short.
const SnapPoint* inLine(const std::vector<SnapPoint>& points, Point at, Coordinate axis, double radius)
{
    const SnapPoint* best = nullptr;
    double least = radius;
    double leastFar = kFar;
    for (const SnapPoint& point : points) {
        const double off = std::abs(point.at.*axis - at.*axis);
        if (off > least + kNothingMm) continue;
        const double far = std::abs(point.at.*other(axis) - at.*other(axis));
        if (off < least - kNothingMm || far < leastFar) {
            least = std::min(off, least);
            leastFar = far;
            best = &point;
        }
    }
    return best;
}

SnapKind stronger(SnapKind a, SnapKind b)
{
    if (a == SnapKind::none) return b;
    if (b == SnapKind::none) return a;
    return std::min(a, b);
}

void finish(Snap& snap)
{
    snap.kind = stronger(snap.kindX, snap.kindY);
}

Snap whole(Point at, SnapKind kind, const std::string& owner)
{
    Snap snap;
    snap.at = at;
    snap.kind = snap.kindX = snap.kindY = kind;
    snap.owner = owner;
    return snap;
}

/// Lines one coordinate of `at` up with a corner or middle, or puts it on the grid.
void lineUp(const SnapTargets& targets, Snap& snap, Coordinate axis, SnapReach reach)
{
    SnapKind& kind = axis == kX ? snap.kindX : snap.kindY;
    const SnapPoint* found = inLine(targets.corners, snap.at, axis, reach.radiusMm);
    kind = SnapKind::corner;
    if (!found) {
        found = inLine(targets.middles, snap.at, axis, reach.radiusMm);
        kind = SnapKind::middle;
    }
    if (found) {
        snap.at.*axis = found->at.*axis;
        if (snap.owner.empty()) snap.owner = found->owner;
        snap.guides.push_back({found->at, snap.at, Guide::What::line});
        return;
    }
    kind = reach.gridMm > 0.0 ? SnapKind::grid : SnapKind::none;
    snap.at.*axis = toGrid(snap.at.*axis, targets.gridOrigin.*axis, reach.gridMm);
}

/// The guide of the first coordinate was drawn before the second one moved.
void straighten(Snap& snap)
{
    for (Guide& guide : snap.guides) {
        if (guide.what != Guide::What::line) continue;
        guide.to = snap.at;
    }
}

}  // namespace

Snap snapPoint(const SnapTargets& targets, Point at, SnapReach reach)
{
    if (const SnapPoint* corner = nearest(targets.corners, at, reach.radiusMm)) {
        return whole(corner->at, SnapKind::corner, corner->owner);
    }
    if (const SnapPoint* middle = nearest(targets.middles, at, reach.radiusMm)) {
        return whole(middle->at, SnapKind::middle, middle->owner);
    }

    const SnapEdge* edge = nullptr;
    double least = reach.radiusMm;
    for (const SnapEdge& candidate : targets.edges) {
        const double far = distance(closestOn(candidate, at), at);
        if (far <= least) {
            least = far;
            edge = &candidate;
        }
    }

    Snap snap;
    snap.at = at;
    if (edge) {
        const Point on = closestOn(*edge, at);
        const Point along = edge->b - edge->a;
        snap.owner = edge->owner;
        if (std::abs(along.x) > kNothingMm && std::abs(along.y) > kNothingMm) {
            snap = whole(on, SnapKind::edge, edge->owner);
            snap.guides.push_back({edge->a, edge->b, Guide::What::line});
            return snap;
        }
        // On an upright or level edge the way along it is still free.
        const Coordinate fixed = std::abs(along.x) <= kNothingMm ? kX : kY;
        snap.at.*fixed = on.*fixed;
        lineUp(targets, snap, other(fixed), reach);
        (fixed == kX ? snap.kindX : snap.kindY) = SnapKind::edge;
        straighten(snap);
        snap.guides.push_back({edge->a, edge->b, Guide::What::line});
        snap.owner = edge->owner;
        finish(snap);
        snap.kind = SnapKind::edge;
        return snap;
    }

    lineUp(targets, snap, kX, reach);
    lineUp(targets, snap, kY, reach);
    straighten(snap);
    finish(snap);
    return snap;
}

namespace {

Box moved(const Box& box, Point by) { return {box.low + by, box.high + by}; }

/// One axis of a move.
struct AxisMove {
    double by = 0.0;
    SnapKind kind = SnapKind::none;
    std::string owner;
    std::vector<Guide> guides;
};

/// Guide along `other(axis)` at coordinate `value`, spanning both boxes.
Guide spanning(const Box& a, const Box& b, Coordinate axis, double value)
{
    const Coordinate across = other(axis);
    const double low = std::min(a.low.*across, b.low.*across);
    const double high = std::max(a.high.*across, b.high.*across);
    return {pointOf(axis, value, low), pointOf(axis, value, high), Guide::What::line};
}

std::optional<AxisMove> alignMiddle(const SnapTargets& targets, const Box& box, Coordinate axis, double radius)
{
    const double centre = box.centre().*axis;
    std::optional<AxisMove> best;
    double least = radius;
    for (const SnapBox& target : targets.boxes) {
        const double off = target.box.centre().*axis - centre;
        if (std::abs(off) > least) continue;
        least = std::abs(off);
        best = AxisMove{off, SnapKind::middle, target.owner, {}};
        best->guides = {spanning(box, target.box, axis, target.box.centre().*axis)};
    }
    return best;
}

std::optional<AxisMove> alignSide(const SnapTargets& targets, const Box& box, Coordinate axis, double radius)
{
    std::optional<AxisMove> best;
    double least = radius;
    for (const SnapBox& target : targets.boxes) {
        for (const double own : {box.low.*axis, box.high.*axis}) {
            for (const double side : {target.box.low.*axis, target.box.high.*axis}) {
                if (std::abs(side - own) > least - (best ? kNothingMm : 0.0)) continue;
                least = std::abs(side - own);
                best = AxisMove{side - own, SnapKind::edge, target.owner, {}};
                best->guides = {spanning(box, target.box, axis, side)};
            }
        }
    }
    return best;
}

/// Boxes that stand in one row with `box` along the axis, from low to high.
std::vector<const SnapBox*> rowOf(const SnapTargets& targets, const Box& box, Coordinate axis)
{
    const Coordinate across = other(axis);
    std::vector<const SnapBox*> row;
    for (const SnapBox& target : targets.boxes) {
        const bool beside = target.box.low.*across < box.high.*across && target.box.high.*across > box.low.*across;
        // What reaches past the box on both sides lies over or under it, not beside it.
        const bool around = target.box.low.*axis < box.low.*axis && target.box.high.*axis > box.high.*axis;
        if (beside && !around) row.push_back(&target);
    }
    std::ranges::sort(row, {}, [&](const SnapBox* b) { return b->box.low.*axis; });
    return row;
}

Guide gapGuide(const Box& box, Coordinate axis, double from, double to)
{
    const double across = box.centre().*other(axis);
    return {pointOf(axis, from, across), pointOf(axis, to, across), Guide::What::gap};
}

std::optional<AxisMove> equalGap(const SnapTargets& targets, const Box& box, Coordinate axis, double radius)
{
    const std::vector<const SnapBox*> row = rowOf(targets, box, axis);
    const double low = box.low.*axis;
    const double high = box.high.*axis;
    const double centre = (low + high) / 2;
    const SnapBox* before = nullptr;
    const SnapBox* after = nullptr;
    for (const SnapBox* target : row) {
        if (target->box.high.*axis <= centre && (!before || target->box.high.*axis > before->box.high.*axis)) {
            before = target;
        }
        if (target->box.low.*axis >= centre && !after) after = target;
    }

    std::optional<AxisMove> best;
    double least = radius;
    const auto offer = [&](double newLow, const std::string& owner, std::vector<Guide> guides) {
        const double off = newLow - low;
        if (std::abs(off) > least - (best ? kNothingMm : 0.0)) return;
        least = std::abs(off);
        best = AxisMove{off, SnapKind::spacing, owner, std::move(guides)};
    };

    if (before && after) {
        const double from = before->box.high.*axis;
        const double to = after->box.low.*axis;
        const double gap = (to - from - (high - low)) / 2;
        if (gap > kNothingMm) {
            offer(from + gap, before->owner,
                  {gapGuide(box, axis, from, from + gap), gapGuide(box, axis, to - gap, to)});
        }
    }
    for (std::size_t i = 0; i + 1 < row.size(); ++i) {
        const double from = row[i]->box.high.*axis;
        const double to = row[i + 1]->box.low.*axis;
        const double gap = to - from;
        if (gap <= kNothingMm || (from < centre && to > centre)) continue;
        const Guide shown = gapGuide(row[i]->box, axis, from, to);
        if (before) {
            const double at = before->box.high.*axis;
            offer(at + gap, before->owner, {shown, gapGuide(box, axis, at, at + gap)});
        }
        if (after) {
            const double at = after->box.low.*axis;
            offer(at - gap - (high - low), after->owner, {shown, gapGuide(box, axis, at - gap, at)});
        }
    }
    return best;
}

AxisMove snapAxis(const SnapTargets& targets, const Box& box, Coordinate axis, SnapReach reach)
{
    const double radius = reach.radiusMm;
    if (auto found = alignMiddle(targets, box, axis, radius)) return *found;
    if (auto found = alignSide(targets, box, axis, radius)) return *found;
    if (auto found = equalGap(targets, box, axis, radius)) return *found;
    AxisMove move;
    if (reach.gridMm > 0.0) {
        move.by = toGrid(box.low.*axis, targets.gridOrigin.*axis, reach.gridMm) - box.low.*axis;
        move.kind = SnapKind::grid;
    }
    return move;
}

}  // namespace

Snap snapMove(const SnapTargets& targets, const Moving& moving, Point by, SnapReach reach, AxisLock locked)
{
    if (!locked.x && !locked.y) {
        const SnapPoint* corner = nullptr;
        Point off;
        double least = reach.radiusMm;
        for (const Point& own : moving.corners) {
            const SnapPoint* found = nearest(targets.corners, own + by, least);
            if (!found || (corner && distance(found->at, own + by) > least - kNothingMm)) continue;
            least = distance(found->at, own + by);
            corner = found;
            off = found->at - (own + by);
        }
        if (corner) {
            Snap snap = whole(by + off, SnapKind::corner, corner->owner);
            const Box box = moved(moving.box, snap.at);
            const auto isOfBox = [&](Point p) {
                return std::abs(p.x - corner->at.x) < kNothingMm || std::abs(p.y - corner->at.y) < kNothingMm;
            };
            // Both sides that now lie in line are shown, not the point alone.
            if (isOfBox(box.low) || isOfBox(box.high)) {
                snap.guides.push_back({{corner->at.x, box.low.y}, {corner->at.x, box.high.y}, Guide::What::line});
                snap.guides.push_back({{box.low.x, corner->at.y}, {box.high.x, corner->at.y}, Guide::What::line});
            }
            return snap;
        }
    }

    Snap snap;
    snap.at = by;
    const auto axisMove = [&](Coordinate axis, SnapKind& kind) {
        AxisMove move = snapAxis(targets, moved(moving.box, snap.at), axis, reach);
        snap.at.*axis += move.by;
        kind = move.kind;
        if (snap.owner.empty()) snap.owner = move.owner;
        return move.guides;
    };
    std::vector<Guide> guidesX;
    std::vector<Guide> guidesY;
    if (!locked.x) guidesX = axisMove(kX, snap.kindX);
    if (!locked.y) guidesY = axisMove(kY, snap.kindY);
    snap.guides = std::move(guidesX);
    snap.guides.insert(snap.guides.end(), guidesY.begin(), guidesY.end());
    finish(snap);
    return snap;
}

Snap snapAlong(const SnapTargets& targets, Point at, Point direction, SnapReach reach)
{
    Snap snap;
    snap.at = at;
    const auto find = [&](const std::vector<SnapPoint>& points, SnapKind kind) {
        const SnapPoint* best = nullptr;
        double least = reach.radiusMm;
        double leastFar = kFar;
        for (const SnapPoint& point : points) {
            const double off = std::abs(dot(point.at - at, direction));
            if (off > least + kNothingMm) continue;
            const double far = std::abs(cross(point.at - at, direction));
            if (off < least - kNothingMm || far < leastFar) {
                least = std::min(off, least);
                leastFar = far;
                best = &point;
            }
        }
        if (!best) return false;
        snap.at = at + direction * dot(best->at - at, direction);
        snap.kind = snap.kindX = snap.kindY = kind;
        snap.owner = best->owner;
        snap.guides.push_back({best->at, snap.at, Guide::What::line});
        return true;
    };
    if (find(targets.corners, SnapKind::corner) || find(targets.middles, SnapKind::middle)) return snap;
    if (reach.gridMm > 0.0) {
        const double along = dot(at - targets.gridOrigin, direction);
        snap.at = at + direction * (toGrid(along, 0.0, reach.gridMm) - along);
        snap.kind = snap.kindX = snap.kindY = SnapKind::grid;
    }
    return snap;
}

}  // namespace yardcast::ui
