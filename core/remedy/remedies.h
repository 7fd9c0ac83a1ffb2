#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/assess/assessment.h"
#include "core/assess/strength_assessor.h"
#include "core/plan/plan.h"
#include "core/purchase/price_book.h"
#include "core/structure/strength.h"

namespace yardcast {

/// Most remedies that are offered for one finding.
inline constexpr std::size_t kMostRemedies = 4;

/// Finds remedies for the findings of one plan. An edit that may help with several findings is solved once. Not
/// thread-safe; uses a second thread while it works.
class RemedyFinder {
public:
    /// `assessed` is the assessment of this plan, with strength. `refinement`: what an edit has to hold at before it is
    /// offered; what does not help is sorted out on coarse meshes.
    RemedyFinder(const Plan& plan, const PriceBook& prices, AssessmentPtr assessed, Refinement refinement,
                 StrengthAssessor::Solver solver = solveStrength);
    ~RemedyFinder();

    /// The findings worth trying, gravest first.
    std::vector<Finding> findings() const;

    /// The edits that were tried for one of the findings and clear it: none is offered that was not solved, or that
    /// makes anything else worse (but its price in kg and money). Ranked by what they add: kg, then money, then as
    /// `attemptsFor` has them. Each carries its edit (RFC 6902 JSON Patch on the plan file) and the values
    ///   added_kg, added_minor, currency, use_percent (the greatest of the part, after it)
    /// of which its effect is worded. At most one of a kind (the gentlest that clears). Where nothing clears, the one edit
    /// that lowers the greatest use most, if by a fifth at least, with the value `use_before_percent`: its effect says
    /// that it does not clear the finding by itself. Empty for findings that are not `isWorthTrying`, or when `stop` was
    /// asked.
    std::vector<Remedy> remedies(const Finding& finding, std::stop_token stop = {});

private:
    struct Memo;
    std::unique_ptr<Memo> memo_;
};

/// By `complaintOf` the finding.
using FoundRemedies = std::map<std::string, std::vector<Remedy>>;
/// Code, case and first subject of a finding: what its remedies are found by.
std::string complaintOf(const Finding& finding);
/// The same assessment, each finding with the remedies that were found for it.
AssessmentPtr withRemedies(const AssessmentPtr& assessment, const FoundRemedies& found);

/// What a search minimises.
enum class SearchGoal { lightest, cheapest };

struct SearchStep {
    int tried = 0;
    int of = 0;
    double massKg = 0.0;  ///< of the one being tried
};

struct SearchAnswer {
    Plan plan;
    /// "form_lightest" or "form_cheapest", with its edit and, beside the values of every tried remedy, thickness_mm,
    /// rim_depth_mm (0: no rim), rim_width_mm, 1 or 0 for ribs, cutout_rims, supports (one more) and mesh (0: it had
    /// one and has none now), shortened_mm of what bears it, counter_kg and counter_added_kg of the counter alone.
    Remedy remedy;
    double massKg = 0.0;           ///< of the counter's castings
    double addedKg = 0.0;          ///< to the whole plan
    std::int64_t addedMinor = 0;
    double usePercent = 0.0;
    int tried = 0;
};

/// The lightest, or cheapest, form of a counter that has no strength finding of caution or stop: over thickness, rim,
/// rims of its cutouts, ribs over its rests, one more support and its mesh. Candidates are tried in the order of the
/// goal, which needs no solving, so the first that holds is the best of the set. Nothing when none holds or `stop` was
/// asked. `progress` may be empty.
std::optional<SearchAnswer> searchCounter(const Plan& plan, const PriceBook& prices, const std::string& counter,
                                          SearchGoal goal, const std::function<void(const SearchStep&)>& progress,
                                          std::stop_token stop = {});

}  // namespace yardcast
