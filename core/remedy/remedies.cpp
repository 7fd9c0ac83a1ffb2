#include "core/remedy/remedies.h"

#include <algorithm>
#include <atomic>
#include <optional>
#include <set>
#include <thread>
#include <utility>

#include "core/io/plan_patch.h"
#include "core/remedy/attempts.h"
#include "core/remedy/trial.h"

namespace yardcast {

namespace {

/// What came of an attempt. Nothing: it brings complaints about shapes, or was not solved.
struct Tried {
    Added added;
    Complaints complaints;
    double usePercent = 0.0;
};
using Outcome = std::optional<Tried>;

/// An edit that does not clear a finding is worth telling where it brings the greatest use below this share of what it was.
constexpr double kWorthHalfWay = 0.8;

/// The same edit for another finding of the same part.
std::string keyOf(const std::string& part, const Attempt& attempt)
{
    std::string key = part + '|' + attempt.code;
    for (const auto& [name, value] : attempt.values) {
        key += '|';
        key += std::holds_alternative<double>(value) ? std::to_string(std::get<double>(value))
                                                     : std::get<std::string>(value);
    }
    return key;
}

bool clears(const Outcome& outcome, const std::string& complaint, const Complaints& before)
{
    return outcome && outcome->complaints.count(complaint) == 0 && isNoWorse(before, outcome->complaints);
}

}  // namespace

struct RemedyFinder::Memo {
    Plan plan;
    PriceBook prices;
    AssessmentPtr assessed;
    Refinement refinement;
    StrengthAssessor::Solver solver;
    std::map<std::string, Outcome> coarse;
    std::map<std::string, Outcome> fine;

    Outcome solve(Trial& trial, const Plan& after, const std::string& part, Refinement how, std::stop_token stop) const
    {
        const std::optional<Added> added = trial.added(after);
        if (!added) return std::nullopt;
        const auto strengths = strengthOfPart(after, *trial.last(), part, how, CaseChoice{}, stop, solver);
        if (!strengths) return std::nullopt;
        for (const CastingStrengthPtr& strength : *strengths) {
            if (!strength->whyNot.empty()) return std::nullopt;
        }
        return Tried{*added, complaintsOf(*strengths), greatestUse(*strengths)};
    }

    const Outcome& solvedFine(const std::string& key, const Plan& after, const std::string& part, std::stop_token stop)
    {
        const auto known = fine.find(key);
        if (known != fine.end()) return known->second;
        Trial trial(plan, prices);
        Outcome outcome = solve(trial, after, part, refinement, stop);
        if (stop.stop_requested()) return none;
        return fine.emplace(key, std::move(outcome)).first->second;
    }
    const Outcome none;

    /// Those that are not known yet, on the coarse mesh, by two threads; each keeps an assessor of its own.
    void screen(const std::string& part, const std::vector<Attempt>& attempts, std::stop_token stop)
    {
        std::vector<std::pair<std::string, const Attempt*>> open;
        for (const Attempt& attempt : attempts) {
            const std::string key = keyOf(part, attempt);
            if (coarse.count(key) == 0) open.emplace_back(key, &attempt);
        }
        std::vector<Outcome> outcomes(open.size());
        std::atomic<std::size_t> next{0};
        const auto work = [&] {
            std::optional<Trial> trial;
            for (std::size_t i = next++; i < open.size() && !stop.stop_requested(); i = next++) {
                if (!trial) trial.emplace(plan, prices);
                outcomes[i] = solve(*trial, open[i].second->after, part, Refinement::draft, stop);
            }
        };
        {
            std::jthread other(work);
            work();
        }
        if (stop.stop_requested()) return;
        for (std::size_t i = 0; i < open.size(); ++i) coarse.emplace(open[i].first, std::move(outcomes[i]));
    }
};

RemedyFinder::RemedyFinder(const Plan& plan, const PriceBook& prices, AssessmentPtr assessed, Refinement refinement,
                           StrengthAssessor::Solver solver)
    : memo_(new Memo{plan, prices, std::move(assessed), refinement, std::move(solver), {}, {}, {}})
{
}

RemedyFinder::~RemedyFinder() = default;

std::vector<Finding> RemedyFinder::findings() const
{
    std::vector<Finding> worth;
    std::copy_if(memo_->assessed->findings.begin(), memo_->assessed->findings.end(), std::back_inserter(worth),
                 isWorthTrying);
    return worth;
}

std::vector<Remedy> RemedyFinder::remedies(const Finding& finding, std::stop_token stop)
{
    if (!isWorthTrying(finding) || finding.subjects.empty()) return {};
    const auto& strengths = memo_->assessed->strength;
    const auto known = std::find_if(strengths.begin(), strengths.end(), [&](const CastingStrengthPtr& strength) {
        return strength && strength->casting == finding.subjects.front();
    });
    if (known == strengths.end()) return {};
    const std::string& part = (*known)->part;
    std::vector<CastingStrengthPtr> ofPart;
    std::copy_if(strengths.begin(), strengths.end(), std::back_inserter(ofPart),
                 [&](const CastingStrengthPtr& strength) { return strength && strength->part == part; });
    const Complaints before = complaintsOf(ofPart);
    const std::string complaint = complaintOf(finding);

    const std::vector<Attempt> attempts = attemptsFor(memo_->plan, **known, finding);
    if (attempts.empty()) return {};
    memo_->screen(part, attempts, stop);
    if (stop.stop_requested()) return {};

    const auto remedyOf = [&](const Attempt& attempt, const Tried& tried) {
        Remedy remedy{attempt.code, attempt.values, patchBetween(memo_->plan, attempt.after), {}};
        remedy.values["added_kg"] = tried.added.kg;
        remedy.values["added_minor"] = static_cast<double>(tried.added.minor);
        remedy.values["currency"] = memo_->plan.currency;
        remedy.values["use_percent"] = tried.usePercent;
        return remedy;
    };
    std::vector<Remedy> remedies;
    std::set<std::string> kinds;
    for (const Attempt& attempt : attempts) {
        const std::string key = keyOf(part, attempt);
        if (kinds.count(attempt.code) > 0 || !clears(memo_->coarse[key], complaint, before)) continue;
        const Outcome& outcome = memo_->solvedFine(key, attempt.after, part, stop);
        if (stop.stop_requested()) return {};
        if (!clears(outcome, complaint, before)) continue;
        kinds.insert(attempt.code);
        remedies.push_back(remedyOf(attempt, *outcome));
    }
    if (remedies.empty()) {
        // Nothing clears it alone: what goes furthest is worth knowing, said as what it is.
        const double now = greatestUse(ofPart);
        const Attempt* best = nullptr;
        double least = kWorthHalfWay * now;
        for (const Attempt& attempt : attempts) {
            const Outcome& outcome = memo_->coarse[keyOf(part, attempt)];
            if (!outcome || !isNoWorse(before, outcome->complaints) || outcome->usePercent >= least) continue;
            least = outcome->usePercent;
            best = &attempt;
        }
        if (best != nullptr) {
            const Outcome& outcome = memo_->solvedFine(keyOf(part, *best), best->after, part, stop);
            if (stop.stop_requested()) return {};
            if (outcome && isNoWorse(before, outcome->complaints) && outcome->usePercent < kWorthHalfWay * now) {
                Remedy remedy = remedyOf(*best, *outcome);
                remedy.values["use_before_percent"] = now;
                remedies.push_back(std::move(remedy));
            }
        }
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

AssessmentPtr withRemedies(const AssessmentPtr& assessment, const FoundRemedies& found)
{
    auto answer = std::make_shared<Assessment>(*assessment);
    for (Finding& finding : answer->findings) {
        const auto remedies = found.find(complaintOf(finding));
        if (remedies == found.end()) continue;
        finding.remedies.insert(finding.remedies.end(), remedies->second.begin(), remedies->second.end());
    }
    return answer;
}

}  // namespace yardcast
