#include "core/structure/strength.h"

#include <algorithm>
#include <cmath>

#include "core/structure/body.h"
#include "core/structure/handling_cases.h"
#include "core/structure/in_use.h"
#include "core/structure/steel_worth.h"
#include "core/structure/uprights.h"

namespace yardcast {

const char* strengthCaseWord(StrengthCase which)
{
    switch (which) {
        case StrengthCase::ownWeight: return "own_weight";
        case StrengthCase::inPlace: return "in_place";
        case StrengthCase::suction: return "suction";
        case StrengthCase::tilt: return "tilt";
        case StrengthCase::carriedFlat: return "carried_flat";
        case StrengthCase::carriedOnEdge: return "carried_on_edge";
        case StrengthCase::setDown: return "set_down";
        case StrengthCase::cornerLate: return "corner_late";
        case StrengthCase::standing: return "standing";
    }
    return "own_weight";
}

std::optional<StrengthCase> strengthCaseOf(const std::string& word)
{
    for (int i = 0; i <= static_cast<int>(StrengthCase::standing); ++i) {
        const auto which = static_cast<StrengthCase>(i);
        if (word == strengthCaseWord(which)) return which;
    }
    return std::nullopt;
}

const CaseResult* CastingStrength::find(StrengthCase which) const
{
    const auto found =
        std::find_if(cases.begin(), cases.end(), [which](const CaseResult& c) { return c.which == which; });
    return found == cases.end() ? nullptr : &*found;
}

const CaseResult* CastingStrength::worst() const
{
    // What does not hold at all is worse than any figure.
    const auto rank = [](const CaseResult& c) { return c.holds ? c.usePercent : HUGE_VAL; };
    const auto found = std::max_element(cases.begin(), cases.end(),
                                        [&](const CaseResult& a, const CaseResult& b) { return rank(a) < rank(b); });
    return found == cases.end() ? nullptr : &*found;
}

CastingStrengthPtr solveStrength(const StrengthInput& input, Refinement refinement, CaseChoice choice,
                                 std::stop_token stop)
{
    auto result = std::make_shared<CastingStrength>();
    result->refinement = refinement;
    if (!input.casting) {
        result->whyNot = "no_casting";
        return result;
    }
    result->casting = input.casting->id;
    result->part = input.casting->part;
    result->grips = input.grips;
    if (!(concreteAtAge(input, CaseSetting{}.ageH).elasticMpa > 0.0)) {
        result->whyNot = "class_unknown";
        return result;
    }
    const std::shared_ptr<const Body> body = makeBody(input, refinement);
    if (stop.stop_requested()) return nullptr;
    if (!body) {
        result->whyNot = "no_mesh";
        Finding finding{"strength_unsolved", Severity::caution, {input.casting->id}, "", {}, {}};
        if (input.casting->part != input.casting->id) finding.subjects.push_back(input.casting->part);
        result->findings.push_back(std::move(finding));
        return result;
    }
    if (choice.inUse && input.casting->kind == PartKind::counter) {
        auto answer = inUseCases(body, stop);
        if (!answer) return nullptr;
        for (CaseResult& c : answer->cases) result->cases.push_back(std::move(c));
        for (Finding& f : answer->findings) result->findings.push_back(std::move(f));
        addBearingFindings(input, result->findings);
    }
    if (choice.inUse) {
        StandingAnswer answer = standingCase(input);
        for (CaseResult& c : answer.cases) result->cases.push_back(std::move(c));
        for (Finding& f : answer.findings) result->findings.push_back(std::move(f));
    }
    if (choice.handling) {
        auto answer = handlingCases(input, body, refinement, stop);
        if (!answer) return nullptr;
        for (CaseResult& c : answer->cases) result->cases.push_back(std::move(c));
        for (Finding& f : answer->findings) result->findings.push_back(std::move(f));
        result->grips = std::move(answer->grips);
        result->gripsProposed = answer->gripsProposed;
        result->tiltHands = std::move(answer->tiltHands);
    }
    result->steel = steelWorth(input, result->cases);
    addSteelFindings(input, result->steel, result->findings);
    std::stable_sort(result->cases.begin(), result->cases.end(),
                     [](const CaseResult& a, const CaseResult& b) { return a.which < b.which; });
    return result;
}

}  // namespace yardcast
