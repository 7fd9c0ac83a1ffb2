#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/assess/assess.h"
#include "core/plan/plan.h"
#include "core/remedy/remedies.h"
#include "core/structure/strength.h"

/// Trying a changed plan: what it adds, and whether one part holds in it. For core/remedy only.
namespace yardcast {

/// How grave each complaint is; cautions and stops only.
using Complaints = std::map<std::string, Severity>;
Complaints complaintsOf(const std::vector<Finding>& findings);
/// True when nothing in `after` is new or graver than in `before`.
bool isNoWorse(const Complaints& before, const Complaints& after);

/// What an edit adds to the whole plan.
struct Added {
    double kg = 0.0;
    std::int64_t minor = 0;
};

class Trial {
public:
    /// `before` is the plan as it is, without strength findings counted.
    Trial(const Plan& plan, const PriceBook& prices);

    /// What `after` adds. Nothing where it brings a complaint of its own that the plan did not have: about shapes,
    /// collisions, rests. What it does to budget and to how many must lift is no reason not to offer it, unless nobody
    /// could lift it.
    std::optional<Added> added(const Plan& after);
    /// The assessment of the last plan given to `added`.
    const AssessmentPtr& last() const { return last_; }

private:
    Assessor assessor_;
    AssessmentPtr before_;
    AssessmentPtr last_;
    Complaints complaints_;
};

/// Strength of all castings of one part; nothing when `stop` was asked.
std::optional<std::vector<CastingStrengthPtr>> strengthOfPart(const Plan& plan, const Assessment& assessment,
                                                              const std::string& part, Refinement refinement,
                                                              CaseChoice choice, std::stop_token stop,
                                                              const StrengthAssessor::Solver& solver = solveStrength);
/// All their complaints.
Complaints complaintsOf(const std::vector<CastingStrengthPtr>& strengths);
/// The greatest use of all cases that hold, percent.
double greatestUse(const std::vector<CastingStrengthPtr>& strengths);

}  // namespace yardcast
