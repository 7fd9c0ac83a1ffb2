#pragma once

#include <vector>

#include "core/purchase/plan_prices.h"
#include "core/purchase/shopping.h"

namespace yardcast {

/// Adds what a list's sum means for the plan's budget and quote: over_budget (with sharing a mould base as its remedy where
/// that saves anything), budget_tight, saves_against_quote, dearer_than_quote.
void compareWithBudget(const Plan& plan, const PlanPrices& prices, const ShoppingList& list, const MouldEstimate& mould,
                       std::vector<Finding>& findings);
/// True for the codes above.
bool isAboutBudget(const Finding& finding);

}  // namespace yardcast
