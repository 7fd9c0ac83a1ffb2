#include "core/remedy/trial.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace yardcast {

namespace {

/// Complaints that a remedy may bring: the maker sees its price in kg and money beside it.
constexpr std::array<std::string_view, 5> kPriceOfIt{"over_budget", "budget_tight", "heavy", "dearer_than_quote",
                                                     "no_price"};

bool isPriceOfIt(const std::string& complaint)
{
    return std::any_of(kPriceOfIt.begin(), kPriceOfIt.end(), [&](std::string_view code) {
        return complaint.size() > code.size() && complaint.compare(0, code.size(), code) == 0
            && complaint[code.size()] == '|';
    });
}

}  // namespace

std::string complaintOf(const Finding& finding)
{
    std::string complaint = (finding.code == "cracks_surely_in_place" ? "cracks_in_place" : finding.code) + '|';
    complaint += wordAt(finding.values, "case");
    complaint += '|';
    if (!finding.subjects.empty()) complaint += finding.subjects.front();
    return complaint;
}

Complaints complaintsOf(const std::vector<Finding>& findings)
{
    Complaints complaints;
    for (const Finding& finding : findings) {
        if (finding.severity == Severity::note) continue;
        Severity& worst = complaints.try_emplace(complaintOf(finding), finding.severity).first->second;
        worst = std::max(worst, finding.severity);
    }
    return complaints;
}

bool isNoWorse(const Complaints& before, const Complaints& after)
{
    return std::all_of(after.begin(), after.end(), [&](const auto& complaint) {
        const auto known = before.find(complaint.first);
        return known != before.end() && complaint.second <= known->second;
    });
}

Trial::Trial(const Plan& plan, const PriceBook& prices)
    : assessor_(prices), before_(assessor_.assess(plan)), complaints_(complaintsOf(before_->findings))
{
}

std::optional<Added> Trial::added(const Plan& after)
{
    last_ = assessor_.assess(after);
    for (const auto& [complaint, severity] : complaintsOf(last_->findings)) {
        if (isPriceOfIt(complaint)) continue;
        const auto known = complaints_.find(complaint);
        if (known == complaints_.end() || severity > known->second) return std::nullopt;
    }
    return Added{last_->massKg() - before_->massKg(), last_->shopping.totalMinor - before_->shopping.totalMinor};
}

std::optional<std::vector<CastingStrengthPtr>> strengthOfPart(const Plan& plan, const Assessment& assessment,
                                                              const std::string& part, Refinement refinement,
                                                              CaseChoice choice, std::stop_token stop,
                                                              const StrengthAssessor::Solver& solver)
{
    std::vector<CastingPtr> castings;
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting->part == part) castings.push_back(placed.casting);
    }
    std::vector<CastingStrengthPtr> strengths;
    for (const StrengthInput& input : strengthInputs(plan, castings)) {
        CastingStrengthPtr strength = solver(input, refinement, choice, stop);
        if (!strength) return std::nullopt;
        strengths.push_back(std::move(strength));
    }
    return strengths;
}

Complaints complaintsOf(const std::vector<CastingStrengthPtr>& strengths)
{
    std::vector<Finding> all;
    for (const CastingStrengthPtr& strength : strengths) {
        all.insert(all.end(), strength->findings.begin(), strength->findings.end());
    }
    return complaintsOf(all);
}

double greatestUse(const std::vector<CastingStrengthPtr>& strengths)
{
    double use = 0.0;
    for (const CastingStrengthPtr& strength : strengths) {
        for (const CaseResult& result : strength->cases) {
            if (result.holds) use = std::max(use, result.usePercent);
        }
    }
    return use;
}

}  // namespace yardcast
