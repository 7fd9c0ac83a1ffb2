#pragma once

#include "core/assess/assessment.h"
#include "core/assess/json_tools.h"

/// Inner seam of the JSON of an assessment: when castings are ready. Hours are null where there are none.
namespace yardcast {

/// `hours`: one a casting that was solved.
Json hoursJson(const std::vector<CastingHoursPtr>& hours);
/// `gain`: one a mix in use.
Json gainJson(const std::vector<GainCurve>& gain);
/// `season`: one a month.
Json seasonJson(const std::vector<SeasonMonth>& season);

}  // namespace yardcast
