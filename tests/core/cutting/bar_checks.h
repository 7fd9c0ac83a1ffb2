#pragma once

#include <string>

#include "core/cutting/bar_cutting.h"

namespace yardcast {

/// What is wrong with a plan for a list, by reckoning anew from the plan alone: every piece exactly once or unplaced,
/// no bar overfilled with the saw width at every cut, no stock taken more often than it is there, the sums, the bound.
/// Empty where all holds.
std::string whatIsWrong(const BarCutting& list, const BarPlan& plan);

}  // namespace yardcast
