#pragma once

#include "core/io/json_text.h"
#include "core/plan/plan.h"

namespace yardcast {

/// The JSON object a value is kept as: its source with what changed written in place, then what is new.
Json planToJson(const Plan& plan);
Json partToJson(const Part& part);

}  // namespace yardcast
