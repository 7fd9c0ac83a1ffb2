#pragma once

#include <stop_token>
#include <vector>

#include "core/cutting/bar_kinds.h"
#include "core/cutting/bar_relaxation.h"

/// The cheapest plan for a list: a bound by column generation, plans by rounding it, and where they differ, branching
/// on how many bars of each stock are taken, each branch decided by trying ways of cutting bar by bar.
namespace yardcast::bars {

struct SearchAnswer {
    Solution best;
    double bound = 0.0;       ///< in price units; of the linear program, or better where the search did not end
    bool proven = false;
};
SearchAnswer searchBars(const BarKinds& kinds, std::stop_token stop);

/// Bar by bar, each of the best way by its values, until all is cut or no stock is left. Whole multiples at once.
/// Empty when the limits do not allow all of it.
Solution greedySolution(const BarKinds& kinds, PatternPricer& pricer, std::vector<Units> demand, const Limits& limits,
                        const std::vector<Units>& values);

}  // namespace yardcast::bars
