#pragma once

#include <vector>

#include "core/castings/casting.h"
#include "core/plan/parts.h"

namespace yardcast {

/// A counter as one solid, before joints divide it, in its own frame.
struct CounterSolid {
    Region plan;               ///< outline less cutouts
    std::vector<Zone> zones;   ///< disjoint; concrete zones together are `plan`
    double deepestMm = 0.0;
};

/// The zones of the whole counter. Where deep strips meet, rim goes before cutout rim before rib. Without a rim, or
/// with one no deeper than the field, all is field. Drip groove and rebate divide zones; where they would leave less than
/// `kLeastLeftMm` of the concrete, and where foam lies below it (drip), they are left out. Empty where a size
/// is no size or a coordinate is out of reach.
CounterSolid counterSolid(const Counter& counter);

inline constexpr double kLeastLeftMm = 1.0;

/// The pieces that joints leave of `plan`, in order of their centroids along own x, then y (to the mm). What is
/// smaller than `kSliverMm2` is dropped.
std::vector<Region> counterPieces(const Counter& counter, const Region& plan);
inline constexpr double kSliverMm2 = 100.0;

}  // namespace yardcast
