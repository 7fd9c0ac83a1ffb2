#include "core/assess/with_cuts.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/assess/finding_order.h"
#include "core/purchase/budget.h"
#include "core/purchase/plan_prices.h"

namespace yardcast {

namespace {

constexpr const char* kStoreCut = "store_cut";

/// What the cuts of one item, all its jobs together, make of its line.
struct Taken {
    std::string unit;
    double need = 0.0;
    double held = 0.0;                       ///< of all stock that is cut, bought or not
    double owned = 0.0;
    bool whole = true;                       ///< every piece has its place
    std::map<double, PackChoice> packs;      ///< by size
    std::vector<ShoppingOrigin> origins;

    void add(const CutStock& stock, double size, int count)
    {
        held += size * count;
        if (stock.atHand) {
            owned += size * count;
            return;
        }
        PackChoice& choice = packs[stock.packSize];
        choice = {stock.packSize, choice.count + count, stock.priceMinor};
    }
    void add(const CutPiece& piece, double amount)
    {
        need += amount;
        const auto at = std::find_if(origins.begin(), origins.end(),
                                     [&](const ShoppingOrigin& origin) { return origin.subject == piece.subject; });
        if (at != origins.end()) {
            at->amount += amount;
        } else {
            origins.push_back({piece.subject, amount});
        }
    }
};

void takeSheets(const SheetCuts& cuts, Taken& taken)
{
    const SheetCutting& list = cuts.job.list;
    taken.unit = "m2";
    taken.whole = taken.whole && cuts.plan.unplaced.empty();
    for (const CutSheet& sheet : cuts.plan.sheets) {
        const auto s = static_cast<std::size_t>(sheet.stock);
        taken.add(cuts.job.stock[s], list.stock[s].size.width * list.stock[s].size.depth / 1e6, sheet.times);
    }
    for (std::size_t p = 0; p < list.pieces.size(); ++p) {
        taken.add(cuts.job.pieces[p],
                  list.pieces[p].count * list.pieces[p].size.width * list.pieces[p].size.depth / 1e6);
    }
}

void takeBars(const BarCuts& cuts, Taken& taken)
{
    const BarCutting& list = cuts.job.list;
    taken.unit = "m";
    taken.whole = taken.whole && cuts.plan.unplaced.empty();
    for (const BarPattern& pattern : cuts.plan.patterns) {
        const auto s = static_cast<std::size_t>(pattern.stock);
        taken.add(cuts.job.stock[s], list.stock[s].lengthMm / 1000.0, pattern.times);
    }
    for (std::size_t p = 0; p < list.pieces.size(); ++p) {
        taken.add(cuts.job.pieces[p], list.pieces[p].count * list.pieces[p].lengthMm / 1000.0);
    }
}

/// Where a line stands in the list: aisle, then place in the book.
std::pair<std::size_t, std::size_t> placeOf(const ShoppingLine& line, const PlanPrices& prices)
{
    const auto& groups = priceGroups();
    const auto group = static_cast<std::size_t>(std::find(groups.begin(), groups.end(), line.group) - groups.begin());
    const PlanPrices::Entry* entry = prices.find(line.item);
    return {group, entry ? entry->place : static_cast<std::size_t>(-1)};
}

ShoppingLine& lineOf(ShoppingList& list, const PlanPrices& prices, const std::string& item, const std::string& name,
                     const char* group)
{
    const auto same = std::find_if(list.lines.begin(), list.lines.end(), [&](const ShoppingLine& line) {
        return line.item == item && line.name == name;
    });
    if (same != list.lines.end()) return *same;
    ShoppingLine line;
    line.item = item;
    line.name = name;
    const PlanPrices::Entry* entry = prices.find(item);
    line.group = entry && entry->item ? entry->item->group : group;
    const auto place = placeOf(line, prices);
    const auto after = std::find_if(list.lines.begin(), list.lines.end(),
                                    [&](const ShoppingLine& other) { return placeOf(other, prices) > place; });
    return *list.lines.insert(after, std::move(line));
}

void fill(ShoppingLine& line, const Taken& taken)
{
    line.unit = taken.unit;
    line.need = taken.need;
    line.owned = std::min(taken.owned, taken.need);
    line.packs.clear();
    line.priceMinor = 0;
    for (auto choice = taken.packs.rbegin(); choice != taken.packs.rend(); ++choice) {
        line.packs.push_back(choice->second);
        line.priceMinor += choice->second.priceMinor * choice->second.count;
    }
    line.leftover = std::max(taken.held - taken.need, 0.0);
    line.estimate = !taken.whole;
    line.priced = true;
    line.origins = taken.origins;
}

void addStoreCuts(ShoppingList& list, const PlanPrices& prices, const CutPlans& cuts)
{
    std::map<std::int64_t, int> byPrice;
    for (const SheetCutsPtr& sheets : cuts.sheets) {
        const auto price = static_cast<std::int64_t>(std::llround(sheets->job.list.cutPrice));
        if (price > 0 && sheets->cutsMinor > 0) byPrice[price] += static_cast<int>(sheets->cutsMinor / price);
    }
    if (byPrice.empty()) return;
    const PlanPrices::Entry* entry = prices.find(kStoreCut);
    ShoppingLine& line =
        lineOf(list, prices, kStoreCut, entry && entry->item ? entry->item->name : kStoreCut, "boards");
    line.unit = "piece";
    line.need = 0.0;
    line.packs.clear();
    line.priceMinor = 0;
    for (const auto& [price, count] : byPrice) {
        line.packs.push_back({1.0, count, price});
        line.need += count;
        line.priceMinor += price * count;
    }
}

/// One for each item that has pieces no sheet is large enough for.
void sayTooLarge(const CutPlans& cuts, std::vector<Finding>& findings)
{
    for (const SheetCutsPtr& sheets : cuts.sheets) {
        Finding finding;
        finding.code = "piece_larger_than_sheet";
        finding.severity = Severity::caution;
        int count = 0;
        for (const UnplacedPieces& one : sheets->plan.unplaced) {
            const auto p = static_cast<std::size_t>(one.piece);
            const std::string& subject = sheets->job.pieces[p].subject;
            const Size size = sheets->job.list.pieces[p].size;
            if (count == 0 || size.width > std::get<double>(finding.values["length_mm"])) {
                finding.values["piece"] = sheets->job.pieces[p].name;
                finding.values["length_mm"] = size.width;
                finding.values["width_mm"] = size.depth;
            }
            count += one.count;
            if (std::find(finding.subjects.begin(), finding.subjects.end(), subject) == finding.subjects.end()) {
                finding.subjects.push_back(subject);
            }
        }
        if (count == 0) continue;
        finding.values["item"] = sheets->job.name;
        finding.values["count"] = static_cast<double>(count);
        findings.push_back(std::move(finding));
    }
}

}  // namespace

CutJobs cutJobs(const Plan& plan, const PriceBook& prices, const Assessment& assessment)
{
    return cutJobs(plan, prices, assessment.moulds, assessment.steel, assessment.fronts);
}

AssessmentPtr withCuts(const Plan& plan, const AssessmentPtr& assessment, const PriceBook& prices,
                       const CutPlansPtr& cuts)
{
    if (!cuts) return assessment;
    auto answer = std::make_shared<Assessment>(*assessment);
    answer->cuts = cuts;
    const PlanPrices planPrices(plan, prices);
    ShoppingList& list = answer->shopping;

    std::map<std::pair<std::string, std::string>, Taken> sheets;
    for (const SheetCutsPtr& one : cuts->sheets) takeSheets(*one, sheets[{one->job.item, one->job.name}]);
    for (const auto& [key, taken] : sheets) fill(lineOf(list, planPrices, key.first, key.second, "boards"), taken);
    std::map<std::pair<std::string, std::string>, Taken> bars;
    for (const BarCutsPtr& one : cuts->bars) takeBars(*one, bars[{one->job.item, one->job.name}]);
    for (const auto& [key, taken] : bars) fill(lineOf(list, planPrices, key.first, key.second, "timber"), taken);
    addStoreCuts(list, planPrices, *cuts);
    list.totalMinor = 0;
    for (const ShoppingLine& line : list.lines) list.totalMinor += line.priceMinor;

    auto& findings = answer->findings;
    findings.erase(std::remove_if(findings.begin(), findings.end(), isAboutBudget), findings.end());
    std::vector<Finding> added;
    compareWithBudget(plan, planPrices, list, answer->mould, added);
    sayTooLarge(*cuts, added);
    const FindingOrder order(plan, answer->castings);
    order.sort(added);
    order.merge(findings, std::move(added));
    return answer;
}

}  // namespace yardcast
