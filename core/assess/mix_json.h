#pragma once

#include "core/assess/assessment.h"
#include "core/assess/json_tools.h"

/// Inner seam of the JSON of an assessment: mixes.
namespace yardcast {

/// `mixes`: quantities, ratios, limits of EN 206 and the card of a batch, one a mix in use.
Json mixesJson(const Plan& plan, const Assessment& assessment);

}  // namespace yardcast
