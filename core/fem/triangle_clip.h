#pragma once

#include <array>

#include "core/geometry/region.h"

namespace yardcast::fem {

/// What a triangle and a region have in common: the area that falls to each corner when it is shared out by area
/// coordinates (so that sum and first moments are kept), mm2. Exact; corners counter-clockwise.
std::array<double, 3> commonArea(const std::array<Point, 3>& corners, const Region& region);

}  // namespace yardcast::fem
