#pragma once

#include <optional>
#include <stop_token>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "core/pour/pour_play.h"
#include "core/readiness/earliest_hours.h"

namespace yardcast {

/// What takes too long for the window's own thread: earliest hours by casting, and the pour played through.
struct Readiness {
    std::vector<CastingHoursPtr> hours;   ///< one a casting, in the order of the assessment's
    PourPlayPtr play;                     ///< null where there is nothing to pour
};

/// With a memo: a casting whose StrengthInput is equal but for its own age of lifting gets its hours again. Not
/// thread-safe; keep one a thread. Castings are shared out to two threads.
class ReadinessAssessor {
public:
    /// Nothing when stopped before all was done; what was done is kept.
    std::optional<Readiness> assess(const Plan& plan, const Assessment& assessment, std::stop_token stop = {});

private:
    struct Known {
        StrengthInput input;
        CastingHoursPtr hours;
    };
    std::unordered_map<std::string, Known> memo_;
};

/// The assessment with it: hours, gain, season, play, and their findings merged into the list.
AssessmentPtr withReadiness(const Plan& plan, const AssessmentPtr& assessment, const Readiness& readiness);

}  // namespace yardcast
