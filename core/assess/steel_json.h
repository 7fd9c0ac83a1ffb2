#pragma once

#include "core/assess/assessment.h"
#include "core/assess/json_tools.h"

/// Inner seam of the JSON of an assessment: steel.
namespace yardcast {

/// `steel`: what is needed by casting and diameter, how every sheet and bar lies, and what it is worth.
Json steelJson(const Assessment& assessment);

}  // namespace yardcast
