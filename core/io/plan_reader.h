#pragma once

#include <vector>

#include "core/io/json_text.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

/// A plan from its JSON object. What was read is only of use when `problems` got nothing of severity stop. The
/// object is emptied into the plan (sources).
Plan planFromJson(Json&& object, std::vector<Finding>& problems);

/// One part by itself; pointers begin at the part.
Part partFromJson(Json&& object, std::vector<Finding>& problems);

}  // namespace yardcast
