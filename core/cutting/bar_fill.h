#pragma once

#include "core/cutting/bar_kinds.h"
#include "core/cutting/bar_relaxation.h"

/// Whether a demand can be met within limits for less than a price, decided by trying.
namespace yardcast::bars {

enum class FillAnswer { Found, None, Unknown };

/// Bar by bar, each holding the longest piece that is left, over the ways whose waste by the relaxation's values the
/// gap to `below` (a price) still bears; each way such that no piece that is left fits into it or in place of a shorter
/// one (an exchange shows that nothing is lost). States that failed are remembered, and what costs too much by a linear
/// program of its own is not tried. Unknown after `mostSteps` steps.
FillAnswer fillBars(const BarKinds& kinds, Relaxation& relaxation, const std::vector<Units>& demand,
                    const Limits& limits, const Relaxed& relaxed, Units below, long long mostSteps, long long& steps,
                    Solution& found);

}  // namespace yardcast::bars
