#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "core/purchase/price_book.h"
#include "core/structure/strength.h"

namespace yardcast {

/// Most remedies that are offered for one finding.
inline constexpr std::size_t kMostRemedies = 4;

/// The edits that were tried for one finding and clear it, solved at `refinement`: none is offered that was not solved,
/// or that brings a new stop or a new strength finding about the same casting. Ranked by what they add: kg, then money,
/// then as `attemptsFor` has them. Each remedy carries its edit (RFC 6902 JSON Patch on the plan file) and the values
///   added_kg, added_minor, currency, use_percent (after), refinement-independent
/// from which the effect is worded. At most one of a kind (the gentlest that clears). Empty when nothing clears, for
/// findings that are not `isWorthTrying`, or when `stop` was asked.
std::vector<Remedy> triedRemedies(const Plan& plan, const PriceBook& prices, const Assessment& assessed,
                                  const CastingStrength& strength, const Finding& finding, Refinement refinement,
                                  std::stop_token stop = {});

/// What a search minimises.
enum class SearchGoal { lightest, cheapest };

struct SearchStep {
    int tried = 0;
    int of = 0;
    double massKg = 0.0;  ///< of the one being tried
};

struct SearchAnswer {
    Plan plan;
    std::string edit;              ///< RFC 6902 JSON Patch
    double massKg = 0.0;           ///< of the counter's castings
    double addedKg = 0.0;
    std::int64_t addedMinor = 0;
    double usePercent = 0.0;
    int tried = 0;
    std::map<std::string, FindingValue> values;  ///< thickness_mm, rim_depth_mm (0: none), rim_width_mm, ribs, supports
};

/// The lightest, or cheapest, form of a counter that has no strength finding of caution or stop: over thickness, rim,
/// rims of its cutouts, ribs over its rests, one more support and its mesh. Candidates are tried in the order of the
/// goal, which needs no solving, so the first that holds is the best of the set. Nothing when none holds or `stop` was
/// asked. `progress` may be empty.
std::optional<SearchAnswer> searchCounter(const Plan& plan, const PriceBook& prices, const std::string& counter,
                                          SearchGoal goal, const std::function<void(const SearchStep&)>& progress,
                                          std::stop_token stop = {});

}  // namespace yardcast
