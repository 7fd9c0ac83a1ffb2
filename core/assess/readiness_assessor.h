#pragma once

#include <deque>
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
    std::vector<GainCurve> gain;          ///< one a mix in use
    std::vector<SeasonMonth> season;
    PourPlayPtr play;                     ///< null where there is nothing to pour
};

/// With a memo of the ages that castings need: one whose StrengthInput is equal but for its weather and its own age of
/// lifting, and which is held by the same hands, is not solved again. Not thread-safe; keep one a thread. Castings are
/// shared out to two threads (both end before a call returns).
class ReadinessAssessor {
public:
    /// Hands are those that the assessment's strength chose; castings without strength choose their own. Nothing when
    /// stopped before all was done; what was done is kept.
    std::optional<Readiness> assess(const Plan& plan, const Assessment& assessment, std::stop_token stop = {},
                                    Refinement refinement = Refinement::working);

private:
    struct Known {
        StrengthInput input;   ///< without what does not matter
        std::optional<ChosenHands> hands;
        Refinement refinement = Refinement::working;
        CastingAgesPtr ages;
    };
    CastingAgesPtr find(const Known& wanted);
    void keep(Known known);

    std::unordered_map<std::string, std::deque<Known>> memo_;
};

/// The assessment with it: hours, gain, season, play, and their findings merged into the list. A finding of strength
/// that says that a casting cracks in a way of handling gets the hours of that way:
///   likely_h, cautious_h  where there are any;
///   never                 1 where it does not hold at any age;
///   wait_h                whole hours after which all castings of its part hold in all ways that the plan needs.
/// lifted_early and never_holds are only added where no such finding says it already;
/// castings of which the same is said share one, with their `count`.
AssessmentPtr withReadiness(const Plan& plan, const AssessmentPtr& assessment, const Readiness& readiness);

}  // namespace yardcast
