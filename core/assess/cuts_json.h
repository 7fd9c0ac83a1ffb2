#pragma once

#include "core/assess/json_tools.h"
#include "core/purchase/cut_lists.h"

/// Inner seam of the JSON of an assessment: what is cut from whole sheets and lengths.
namespace yardcast {

/// `cuts`: sheets and bars, one entry an item; empty lists while not known.
Json cutsJson(const CutPlansPtr& cuts);

}  // namespace yardcast
