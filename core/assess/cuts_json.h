#pragma once

#include "core/assess/json_tools.h"
#include "core/purchase/cut_lists.h"

/// Inner seam of the JSON of an assessment: what is cut from whole sheets and lengths.
namespace yardcast {

/// `cuts`: sheets and bars, one entry an item; where nothing is known yet the key is left out.
Json cutsJson(const CutPlans& cuts);

}  // namespace yardcast
