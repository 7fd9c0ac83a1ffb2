#pragma once

#include <vector>

#include "core/structure/handling_cases.h"

namespace yardcast {

/// What is known beside the cases.
struct HandlingFacts {
    double endsUsePercent = 0.0;   ///< laid on battens at its very ends, without care; 0 where not asked
    double battenInsetMm = 0.0;    ///< where the battens should lie, from the ends
};

/// - cracks_handling (one a case): a caution over the strength that may be used, a stop over the characteristic
///   strength itself, which is that times the safety against cracking;
/// - grips_tip: it tips at the plan's hand places;
/// - suction_strong: only the suction of the mould makes lifting it flat too much, tilting it is not;
/// - set_down_ends: it would crack on battens at its ends and does not where they belong.
std::vector<Finding> handlingFindings(const StrengthInput& input, const HandlingAnswer& answer,
                                      const HandlingFacts& facts);

}  // namespace yardcast
