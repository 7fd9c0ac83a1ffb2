#pragma once

#include <array>
#include <vector>

#include "core/geometry/region.h"

namespace yardcast::fem {

/// What a triangle and a region have in common: the area that falls to each corner when it is shared out by area
/// coordinates (so that sum and first moments are kept), mm2. Exact; corners counter-clockwise.
std::array<double, 3> commonArea(const std::array<Point, 3>& corners, const Region& region);

/// Area coordinates in a triangle.
using Shares = std::array<double, 3>;
/// A ring in area coordinates; `sign` makes the area of outlines positive, that of holes negative.
struct SharesRing {
    std::vector<Shares> points;
    double sign = 1.0;
};
/// The same as rings, parts of which may hang together by lines of no area.
std::vector<SharesRing> commonRings(const std::array<Point, 3>& corners, const Region& region);

}  // namespace yardcast::fem
