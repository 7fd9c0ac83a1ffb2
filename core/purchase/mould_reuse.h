#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/mould/mould_estimate.h"

namespace yardcast {

/// Casting some pieces one after the other on one mould base, and the money it saves.
struct MouldReuse {
    std::vector<std::string> castings;  ///< the first has the largest base, which serves the others too
    std::int64_t savesMinor = 0;
};

/// The fewest pieces that have to share a base for `wantedMinor` to be saved; where that much cannot be saved, the
/// fewest that save anything. Nothing where sharing saves nothing. `boardPrice` gives what boards of so many m2 cost.
/// An estimate as the board areas are: a base serves a smaller one whatever its shape.
std::optional<MouldReuse> mouldReuse(const MouldEstimate& mould, double boardNeedM2, std::int64_t wantedMinor,
                                     const std::function<std::int64_t(double)>& boardPrice);

}  // namespace yardcast
