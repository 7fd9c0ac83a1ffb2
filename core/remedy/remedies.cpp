#include "core/remedy/remedies.h"

#include <algorithm>
#include <atomic>
#include <optional>
#include <set>
#include <thread>
#include <utility>

#include "core/remedy/attempts.h"
#include "core/remedy/trial.h"

namespace yardcast {

namespace {

/// An attempt that cleared the finding on a coarse mesh.
struct Promising {
    std::size_t index = 0;
    Added added;
};

/// The cases that the finding is about: only these are solved to sort out what does not help.
CaseChoice casesOf(const Finding& finding)
{
    const bool handled = finding.code.rfind("cracks_handling", 0) == 0;
    return {!handled, handled};
}

/// What one attempt is measured against.
struct Complaint {
    const Plan& plan;
    const PriceBook& prices;
    std::string part;
    std::string finding;
    Complaints before;  ///< strength complaints of the part
};

bool clears(const Complaint& complaint, const std::vector<CastingStrengthPtr>& strengths)
{
    for (const CastingStrengthPtr& strength : strengths) {
        if (!strength->whyNot.empty()) return false;
    }
    const Complaints after = complaintsOf(strengths);
    return after.count(complaint.finding) == 0 && isNoWorse(complaint.before, after);
}

/// All attempts that clear the finding on the coarse mesh, by two threads; each keeps an assessor of its own.
std::vector<Promising> screened(const Complaint& complaint, const std::vector<Attempt>& attempts, CaseChoice choice,
                                std::stop_token stop)
{
    std::vector<std::optional<Added>> passed(attempts.size());
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        Trial trial(complaint.plan, complaint.prices);
        for (std::size_t i = next++; i < attempts.size() && !stop.stop_requested(); i = next++) {
            const Plan& after = attempts[i].after;
            const std::optional<Added> added = trial.added(after);
            if (!added) continue;
            const auto strengths =
                strengthOfPart(after, *trial.last(), complaint.part, Refinement::draft, choice, stop);
            if (strengths && clears(complaint, *strengths)) passed[i] = added;
        }
    };
    {
        std::jthread other(work);
        work();
    }
    std::vector<Promising> promising;
    for (std::size_t i = 0; i < attempts.size(); ++i) {
        if (passed[i]) promising.push_back({i, *passed[i]});
    }
    return promising;
}

}  // namespace

std::vector<Remedy> triedRemedies(const Plan& plan, const PriceBook& prices, const Assessment& assessed,
                                  const CastingStrength& strength, const Finding& finding, Refinement refinement,
                                  std::stop_token stop)
{
    if (!isWorthTrying(finding)) return {};
    const std::vector<Attempt> attempts = attemptsFor(plan, strength, finding);
    if (attempts.empty()) return {};

    Complaint complaint{plan, prices, strength.part, complaintOf(finding), {}};
    for (const CastingStrengthPtr& known : assessed.strength) {
        if (known && known->part == strength.part) complaint.before.merge(complaintsOf(known->findings));
    }

    const std::vector<Promising> promising = screened(complaint, attempts, casesOf(finding), stop);
    std::vector<Remedy> remedies;
    std::set<std::string> kinds;
    Trial trial(plan, prices);
    for (const Promising& candidate : promising) {
        if (stop.stop_requested()) return {};
        const Attempt& attempt = attempts[candidate.index];
        if (kinds.count(attempt.code) > 0) continue;
        if (!trial.added(attempt.after)) continue;
        const auto strengths =
            strengthOfPart(attempt.after, *trial.last(), complaint.part, refinement, CaseChoice{}, stop);
        if (!strengths || !clears(complaint, *strengths)) continue;
        kinds.insert(attempt.code);
        Remedy remedy{attempt.code, attempt.values, patchBetween(plan, attempt.after), {}};
        remedy.values["added_kg"] = candidate.added.kg;
        remedy.values["added_minor"] = static_cast<double>(candidate.added.minor);
        remedy.values["currency"] = plan.currency;
        remedy.values["use_percent"] = greatestUse(*strengths);
        remedies.push_back(std::move(remedy));
    }
    const auto price = [](const Remedy& remedy) {
        return std::pair(std::get<double>(remedy.values.at("added_kg")),
                         std::get<double>(remedy.values.at("added_minor")));
    };
    std::stable_sort(remedies.begin(), remedies.end(),
                     [&](const Remedy& a, const Remedy& b) { return price(a) < price(b); });
    if (remedies.size() > kMostRemedies) remedies.resize(kMostRemedies);
    return remedies;
}

}  // namespace yardcast
