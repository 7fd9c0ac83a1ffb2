#pragma once

#include <optional>
#include <utility>
#include <vector>

namespace yardcast {

/// Where a door is wished, along the division.
struct WishedDoor {
    double fromMm = 0.0;
    double toMm = 0.0;
};

/// Battens of one width with equal gaps, n + 1 of them, over a length.
struct Division {
    int battens = 0;
    double gapMm = 0.0;
    /// For each wished door, in their order: the gaps its edges lie in, gap 0 before the first batten. Empty where the
    /// doors have no room.
    std::vector<std::pair<int, int>> doorGaps;
    double largestShiftMm = 0.0;  ///< of any door edge

    double gapCentreMm(int gap, double battenMm) const { return gapMm / 2 + gap * (battenMm + gapMm); }
};

/// Gap with n battens, mm; every gap alike, those at the ends included.
double equalGapMm(double lengthMm, double battenMm, int battens);

/// The count of battens whose gap lies inside the limits and is nearest to the wish, weighed against how far door
/// edges have to move: 1 mm of gap counts as much as 5 mm of the farthest moved edge (judgement). Doors keep their
/// order, do not overlap and have at least one batten. Nothing where no count keeps the limits.
std::optional<Division> divide(double lengthMm, double battenMm, double wishGapMm,
                               const std::vector<WishedDoor>& doors);

}  // namespace yardcast
