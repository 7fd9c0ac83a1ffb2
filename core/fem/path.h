#pragma once

#include <functional>
#include <vector>

#include "core/geometry/region.h"

namespace yardcast::fem {

/// A polyline or a ring that edges of the mesh follow, measured along.
struct Path {
    std::vector<Point> points;
    std::vector<double> along;  ///< mm from the first point, one a point
    double lengthMm = 0.0;      ///< of the whole, the closing side of a ring included
    bool closed = false;
    bool boundary = false;
    bool everyPoint = false;    ///< every point has to be a node, those of arcs too

    int sides() const { return points.empty() ? 0 : int(points.size()) - (closed ? 0 : 1); }
    Point from(int side) const { return points[std::size_t(side)]; }
    Point to(int side) const { return points[(std::size_t(side) + 1) % points.size()]; }
    Point at(double alongMm) const;
    /// How far apart two places are along the path; the shorter way round for a ring.
    double between(double a, double b) const;
    /// The turn at a point, degrees, left positive; 0 at the ends of an open path.
    double turnDeg(int point) const;
};

/// The path without repeated points and points on a straight line. No sides where nothing is left (or, of a ring,
/// fewer than three points).
Path pathOf(const std::vector<Point>& points, bool closed, bool boundary);

/// The ring without sides shorter than `shortShare` of the size at them: the two ends of such a side become one point,
/// so placed that the area within the ring stays. Rings of three points stay.
Ring withoutShortSides(Ring ring, double shortShare, const std::function<double(Point)>& sizeAt);

/// Where two paths meet steeply enough to share a node.
struct Meeting {
    int path = 0;
    int otherPath = 0;
    double alongMm = 0.0;
    double otherAlongMm = 0.0;
    int site = -1;  ///< for the one who makes the node
};

}  // namespace yardcast::fem
