#pragma once

#include <array>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "core/geometry/region.h"

/// Regions that share borders, as one net of triangles.
namespace yardcast {

/// Points, borders and triangles of disjoint regions ("cells"). Borders that run along each other are the same edges,
/// and every point that lies on a border is a corner of it. Cells are numbered as given; -1 is outside of all.
struct PlanarCells {
    struct Border {
        int left = -1;   ///< cell on the left, seen from the lower numbered point to the higher
        int right = -1;
    };
    std::vector<Point> points;
    std::map<std::pair<int, int>, Border> borders;   ///< by the numbers of both ends, lower first
    std::vector<std::array<int, 3>> triangles;       ///< counter-clockwise, of cells only
    std::vector<int> cellOf;                         ///< one a triangle
};

/// Points nearer than 0.006 mm become one, and points so near to a border lie on it. Nothing where borders cross or
/// regions overlap by more.
std::optional<PlanarCells> planarCells(const std::vector<Region>& regions);

}  // namespace yardcast
