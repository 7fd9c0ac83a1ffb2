#pragma once

#include <vector>

#include "core/assess/json_tools.h"
#include "core/structure/strength.h"

/// Inner seam of the JSON of an assessment: what the solver of strength has to say.
namespace yardcast {

/// `strength` of the contract: one object a casting and case.
Json strengthJson(const std::vector<CastingStrengthPtr>& strength);
/// One object a casting: how fine it was solved, its worst case, its grips, and why it was not solved.
Json strengthCastingsJson(const std::vector<CastingStrengthPtr>& strength);
/// What steel is worth: one object a casting, section and case.
Json steelChecksJson(const std::vector<CastingStrengthPtr>& strength);

}  // namespace yardcast
