#pragma once

#include "core/assess/assessment.h"
#include "core/assess/json_tools.h"

/// Inner seam of the JSON of an assessment: lifting.
namespace yardcast {

/// `handling`: mass, who can lift it by which rule, the load at each grip, and what would help.
Json handlingJson(const Assessment& assessment);

}  // namespace yardcast
