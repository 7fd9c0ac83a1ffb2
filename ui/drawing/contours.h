#pragma once

#include <utility>
#include <vector>

#include "core/fem/mesh.h"
#include "core/geometry/region.h"

/// Lines and areas of equal value of a figure that is known at the nodes of a mesh and runs straight between them. All
/// in the frame of the mesh, mm. Values that are no numbers count as below every level.
namespace yardcast::ui {

struct ContourLine {
    double level = 0.0;
    std::vector<Point> points;
    bool closed = false;    ///< the last point joins the first
    double lengthMm() const;
    /// The point at this distance along it, and the direction there (of length 1).
    std::pair<Point, Point> alongMm(double distanceMm) const;
};

/// Lines of equal value, each in one piece from edge to edge of the mesh or round a hill. Longest first within a level.
std::vector<ContourLine> contourLines(const TriangleMesh& mesh, const std::vector<double>& values,
                                      const std::vector<double>& levels);
/// Where the value is at least `level`: convex pieces that do not overlap, counter-clockwise, one or none a triangle.
std::vector<Ring> piecesAbove(const TriangleMesh& mesh, const std::vector<double>& values, double level);
/// Parallel lines through the pieces, `spacingMm` apart at `angleDeg` from x; stretches that meet are one line.
std::vector<std::pair<Point, Point>> hatchThrough(const std::vector<Ring>& pieces, double angleDeg, double spacingMm);

}  // namespace yardcast::ui
