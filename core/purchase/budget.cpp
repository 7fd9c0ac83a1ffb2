#include "core/purchase/budget.h"

#include <algorithm>

#include "core/purchase/currency.h"
#include "core/purchase/mould_reuse.h"

namespace yardcast {

namespace {

Finding& sayMoney(const Plan& plan, const char* code, std::int64_t amountMinor, std::int64_t totalMinor,
                  const char* againstKey, double against, std::vector<Finding>& findings)
{
    Finding& finding = findings.emplace_back();
    finding.code = code;
    finding.pointer = std::string("/budget/") + againstKey;
    finding.values["amount"] = fromMinor(amountMinor, plan.currency);
    finding.values[againstKey] = against;
    finding.values["total"] = fromMinor(totalMinor, plan.currency);
    finding.values["currency"] = plan.currency;
    return finding;
}

/// What would help against too high a sum, reckoned with the same prices.
void offerMouldReuse(const Plan& plan, const PlanPrices& prices, const ShoppingList& list, const MouldEstimate& mould,
                     std::int64_t wantedMinor, Finding& finding)
{
    const auto line = std::find_if(list.lines.begin(), list.lines.end(),
                                   [](const ShoppingLine& each) { return each.item == "mould_board"; });
    if (line == list.lines.end() || !line->priced) return;
    const auto reuse = mouldReuse(mould, line->need - line->owned, wantedMinor,
                                  [&](double areaM2) { return prices.priceOf("mould_board", areaM2); });
    if (!reuse) return;
    Remedy remedy;
    remedy.code = "reuse_mould_base";
    std::string names;
    for (const std::string& casting : reuse->castings) names += (names.empty() ? "" : ", ") + casting;
    remedy.values["castings"] = names;
    remedy.values["saves"] = fromMinor(reuse->savesMinor, plan.currency);
    remedy.values["currency"] = plan.currency;
    remedy.effect = plainMoney(-reuse->savesMinor, plan.currency) + " " + plan.currency;
    finding.remedies.push_back(std::move(remedy));
}

}  // namespace

void compareWithBudget(const Plan& plan, const PlanPrices& prices, const ShoppingList& list, const MouldEstimate& mould,
                       std::vector<Finding>& findings)
{
    const std::int64_t total = list.totalMinor;
    if (!plan.budget || total == 0) return;
    const std::int64_t limit = toMinor(plan.budget->limit, plan.currency);
    if (total > limit) {
        Finding& over = sayMoney(plan, "over_budget", total - limit, total, "limit", plan.budget->limit, findings);
        over.severity = Severity::caution;
        offerMouldReuse(plan, prices, list, mould, total - limit, over);
    } else if (static_cast<double>(limit - total) < kTightBudgetShare * static_cast<double>(limit)) {
        sayMoney(plan, "budget_tight", limit - total, total, "limit", plan.budget->limit, findings);
    }
    if (!plan.budget->quote) return;
    const std::int64_t quote = toMinor(*plan.budget->quote, plan.currency);
    if (total < quote) {
        sayMoney(plan, "saves_against_quote", quote - total, total, "quote", *plan.budget->quote, findings);
    } else if (total > quote) {
        sayMoney(plan, "dearer_than_quote", total - quote, total, "quote", *plan.budget->quote, findings);
    }
}

bool isAboutBudget(const Finding& finding)
{
    for (const char* code : {"over_budget", "budget_tight", "saves_against_quote", "dearer_than_quote"}) {
        if (finding.code == code) return true;
    }
    return false;
}

}  // namespace yardcast
