#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

/// What validation found, and which parts cannot be computed at all (sizes that are no sizes); those are left out of
/// every figure, and each has a stop finding that says so.
struct Validation {
    std::vector<Finding> findings;
    std::set<std::string> unusableParts;
    std::set<std::string> unusableMixes;
};

/// All problems of the plan at once, with the JSON pointer of each. Time grows as n log n with the number of parts
/// (neighbours by sweep). Never throws, whatever the numbers are.
Validation validate(const Plan& plan);

inline constexpr double kLeastStripMm = 40.0;  ///< concrete left beside a cutout; common practice, no source

}  // namespace yardcast
