#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/front/front_layout.h"
#include "core/mould/mould_estimate.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/pour/mix_quantities.h"
#include "core/purchase/price_book.h"
#include "core/reinforcement/steel_schedule.h"

namespace yardcast {

/// How many of one pack size.
struct PackChoice {
    double size = 0.0;
    int count = 0;
    std::int64_t priceMinor = 0;  ///< of one pack
};

/// One need from one origin, so that a click on a line leads to the parts it comes from.
struct ShoppingOrigin {
    std::string subject;   ///< part, casting or mix
    double amount = 0.0;
};

struct ShoppingLine {
    std::string item;
    std::string name;
    std::string group;
    std::string unit;
    double need = 0.0;        ///< before what is owned
    double owned = 0.0;       ///< taken off, at most the need
    std::vector<PackChoice> packs;
    std::int64_t priceMinor = 0;
    double leftover = 0.0;    ///< bought less (need - owned); 0 where nothing is priced
    bool estimate = false;    ///< until a saw plan exists
    bool priced = true;       ///< false: neither the book nor the plan has a price for it
    std::vector<ShoppingOrigin> origins;
};

struct ShoppingList {
    std::vector<ShoppingLine> lines;      ///< by aisle, then as in the price book
    std::string currency;                 ///< ISO 4217, the plan's
    std::int64_t totalMinor = 0;          ///< exact sum of the lines
    double massKg = 0.0;                  ///< to carry home: dry mix, cement, sand, gravel, steel
};

/// The cheapest packs that cover `need` (exact, by search over counts); on equal price the least left over.
/// Largest packs first. Empty: no need, no usable packs, or more than ten million packs. Sizes and needs count in
/// millionths of a unit.
std::vector<PackChoice> cheapestPacks(double need, const std::vector<Pack>& packs);

/// What to buy, from the cheapest packs that cover what is needed and not owned. Prices of the plan's own for an item
/// replace all packs of the book. Each sort of dry mix is bought in bags of its own mass, whole bags for each mix (an
/// opened bag is not kept for the next mix), priced by the kg where no pack of that mass has a price.
/// A book in another currency than the plan's is not used (finding `currency_differs`); a book in "XXX" is.
/// Findings: over_budget, budget_tight (less than kTightBudgetShare left), saves_against_quote, dearer_than_quote,
/// no_price, longer_than_stock, bag_price_reckoned, currency_differs, example_prices, owned_unknown, price_unknown.
ShoppingList shoppingList(const Plan& plan, const PriceBook& prices, const std::vector<CastingPtr>& castings,
                          const std::vector<MixQuantities>& mixes, const SteelSchedule& steel,
                          const std::vector<FrontLayout>& fronts, const MouldEstimate& mould,
                          std::vector<Finding>& findings);

inline constexpr double kTightBudgetShare = 0.10;

}  // namespace yardcast
