#pragma once

#include <cstddef>
#include <vector>

#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/pour/mixing_card.h"

namespace yardcast {

/// What a mixing card says about its mix (see `mixingCards`): one finding a subject. Where frost applies and the air is
/// not known, the mix joins the subjects of `airUnknown`.
void addMixFindings(const Plan& plan, std::size_t index, const MixQuantities& quantities, const MixingCard& card,
                    Finding& airUnknown, std::vector<Finding>& findings);

}  // namespace yardcast
