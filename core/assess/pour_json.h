#pragma once

#include "core/assess/assessment.h"
#include "core/assess/json_tools.h"

/// Inner seam of the JSON of an assessment: the pour.
namespace yardcast {

/// `pour`: days, castings, layers and batches; castings that are left out.
Json pourJson(const PourPlan& pour);
/// `play`: chances of a cold joint and what was tried; null where nothing was played.
Json playJson(const PourPlayPtr& play);

}  // namespace yardcast
