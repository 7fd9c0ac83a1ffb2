#pragma once

#include <deque>
#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "core/structure/strength.h"
#include "core/structure/strength_input.h"

namespace yardcast {

/// Strength of the castings of a plan, with a memo: a casting whose input, refinement and choice are equal to those of
/// an earlier call gets the same pointer again. Not thread-safe; keep one a thread. Castings that have to be solved are
/// shared out to two threads (both end before a call returns).
class StrengthAssessor {
public:
    /// `solveStrength`, or what stands for it; called from two threads at once.
    using Solver = std::function<CastingStrengthPtr(const StrengthInput&, Refinement, CaseChoice, std::stop_token)>;

    explicit StrengthAssessor(Solver solver = solveStrength);

    /// One a casting, in the order of `assessment.castings`, which must be those of the plan. Nothing when `stop` was
    /// asked before all were solved; those that were done are kept in the memo.
    std::optional<std::vector<CastingStrengthPtr>> assess(const Plan& plan, const Assessment& assessment,
                                                          Refinement refinement, CaseChoice choice = {},
                                                          std::stop_token stop = {});

    /// The same, but a casting of which a finer answer with at least these cases is known gets that one.
    std::optional<std::vector<CastingStrengthPtr>> assessAtLeast(const Plan& plan, const Assessment& assessment,
                                                                 Refinement refinement, CaseChoice choice = {},
                                                                 std::stop_token stop = {});

private:
    struct Known {
        StrengthInput input;
        Refinement refinement = Refinement::draft;
        CaseChoice choice;
        CastingStrengthPtr strength;
    };
    /// Whether an answer will do for what is asked.
    using Fits = bool (*)(const Known& known, Refinement refinement, CaseChoice choice);

    std::optional<std::vector<CastingStrengthPtr>> assess(const Plan& plan, const Assessment& assessment,
                                                          Refinement refinement, CaseChoice choice,
                                                          std::stop_token stop, Fits fits);
    static void keep(std::deque<Known>& known, Known added);
    CastingStrengthPtr find(const StrengthInput& input, Refinement refinement, CaseChoice choice, Fits fits);

    Solver solver_;
    std::unordered_map<std::string, std::deque<Known>> memo_;  ///< by casting, the latest used first
};

/// `newer` with the cases it lacks taken from `older`, an answer for the same casting as it was before: what is shown
/// while not all cases are solved. Findings that name such a case (value `case`), or none and were not found again,
/// come with it. `newer` itself where `older` has nothing to add.
CastingStrengthPtr completedFrom(const CastingStrengthPtr& newer, const CastingStrengthPtr& older);

/// The assessment with the strength of its castings: those in `strength` that speak about one of them (the others are
/// left out), and their findings merged into the list, with pointers from the top of the file. `assessment` must be one
/// without strength.
AssessmentPtr withStrength(const Plan& plan, const AssessmentPtr& assessment,
                           const std::vector<CastingStrengthPtr>& strength);

}  // namespace yardcast
