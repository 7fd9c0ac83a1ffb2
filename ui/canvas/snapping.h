#pragma once

#include <string>
#include <vector>

#include "core/geometry/point.h"
#include "core/geometry/region.h"

/// Snapping as plain functions: what may be snapped to, where the pointer is, how near is near. All in mm of one
/// frame (the plan, the elevation, or the own frame of a counter).
namespace yardcast::ui {

/// What was snapped to, in the order in which it is tried.
enum class SnapKind { none, corner, middle, edge, spacing, grid };

struct SnapPoint {
    Point at;
    std::string owner;  ///< id of the part it belongs to; may be empty
};

struct SnapEdge {
    Point a;
    Point b;
    std::string owner;
};

/// Bounds of one thing, for gaps between things.
struct SnapBox {
    Box box;
    std::string owner;
};

struct SnapTargets {
    std::vector<SnapPoint> corners;
    std::vector<SnapPoint> middles;  ///< of edges and of whole shapes
    std::vector<SnapEdge> edges;
    std::vector<SnapBox> boxes;
    Point gridOrigin;
};

/// How near is near.
struct SnapReach {
    double radiusMm = 0.0;
    double gridMm = 0.0;  ///< pitch of the grid; 0: no grid
};

/// A line that shows why: an alignment, or one of the gaps that are equal.
struct Guide {
    enum class What { line, gap };
    Point from;
    Point to;
    What what = What::line;
};

struct Snap {
    Point at;                        ///< the point, or the corrected way of a move
    SnapKind kind = SnapKind::none;  ///< the strongest of the two axes
    SnapKind kindX = SnapKind::none;
    SnapKind kindY = SnapKind::none;
    std::string owner;
    std::vector<Guide> guides;
};

/// A point being placed. A corner within the radius wins, then a middle, then the nearest edge; what is left free is
/// lined up with corners, middles, then put on the grid. The grid always holds: sizes come out round.
Snap snapPoint(const SnapTargets& targets, Point at, SnapReach reach);

/// A shape being moved, as it lay before the move.
struct Moving {
    std::vector<Point> corners;
    Box box;
};

/// The way `by` corrected so that a corner meets a corner, or, axis by axis, the middle comes in line with a middle,
/// a side with a side, gaps become equal, or the low corner comes onto the grid. `locked` axes stay as they are.
struct AxisLock {
    bool x = false;
    bool y = false;
};
Snap snapMove(const SnapTargets& targets, const Moving& moving, Point by, SnapReach reach, AxisLock locked = {});

/// A side being moved along `direction` (a unit vector): `at` is shifted along it until it is in line with a corner, a
/// middle or the grid counted from the grid's origin.
Snap snapAlong(const SnapTargets& targets, Point at, Point direction, SnapReach reach);

}  // namespace yardcast::ui
