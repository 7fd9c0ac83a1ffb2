#include "core/purchase/shopping.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/purchase/budget.h"
#include "core/purchase/currency.h"
#include "core/purchase/needs.h"
#include "core/purchase/plan_prices.h"

namespace yardcast {

namespace {

Finding note(const char* code, const std::string& pointer = {})
{
    Finding finding;
    finding.code = code;
    finding.pointer = pointer;
    return finding;
}

class ListMaker {
public:
    ListMaker(const Plan& plan, const PriceBook& book, std::vector<Finding>& findings)
        : plan_(plan), book_(book), prices_(plan, book), findings_(findings)
    {
        for (const Owned& owned : plan.owned) {
            if (owned.amount > 0.0) owned_[owned.item] += owned.amount;
        }
    }

    ShoppingList make(const std::vector<Need>& needs)
    {
        if (!prices_.usable()) {
            Finding& finding = findings_.emplace_back(note("currency_differs", "/currency"));
            finding.severity = Severity::caution;
            finding.values["book"] = book_.currency;
            finding.values["plan"] = plan_.currency;
        }
        for (const Need& need : needs) addLine(need);
        std::stable_sort(rows_.begin(), rows_.end(), [](const Row& a, const Row& b) { return a.order < b.order; });
        ShoppingList list;
        list.currency = plan_.currency;
        for (Row& row : rows_) {
            list.totalMinor += row.line.priceMinor;
            list.lines.push_back(std::move(row.line));
        }
        reportUnknownKeys(needs);
        if (book_.currency == kNoCurrency && !list.lines.empty()) findings_.push_back(note("example_prices"));
        return list;
    }

private:
    struct Row {
        std::pair<std::size_t, std::size_t> order;  ///< aisle, place in the book
        ShoppingLine line;
    };

    std::vector<Pack> packsFor(const Need& need, const std::string& key)
    {
        const PlanPrices::Entry* entry = prices_.find(key);
        if (!entry || entry->packs.empty()) return {};
        if (key == "spare_bag" && !prices_.isOwn(key)) return {{1.0, lastBagPriceMinor_}};
        if (need.packSize == 0.0) return entry->packs;
        for (const Pack& pack : entry->packs) {
            if (std::abs(pack.size - need.packSize) < 1e-6) return {pack};
        }
        const Pack& nearest = *std::min_element(
            entry->packs.begin(), entry->packs.end(), [&](const Pack& a, const Pack& b) {
                return std::abs(a.size - need.packSize) < std::abs(b.size - need.packSize);
            });
        Finding& finding = findings_.emplace_back(note("bag_price_reckoned"));
        for (const ShoppingOrigin& origin : need.origins) finding.subjects.push_back(origin.subject);
        finding.values["bag_kg"] = need.packSize;
        finding.values["from_kg"] = nearest.size;
        const double price = static_cast<double>(nearest.priceMinor) * need.packSize / nearest.size;
        return {{need.packSize, std::llround(std::min(price, 1e15))}};
    }

    void addLine(const Need& need)
    {
        Row row;
        ShoppingLine& line = row.line;
        line.item = prices_.keyFor(need.keys);
        const PlanPrices::Entry* entry = prices_.find(line.item);
        const PricedItem* item = entry ? entry->item : nullptr;
        line.name = (item ? item->name : line.item) + (need.detail.empty() ? "" : " (" + need.detail + ")");
        line.group = item ? item->group : need.group;
        line.unit = need.unit;
        line.need = need.amount;
        line.estimate = need.estimate;
        line.origins = need.origins;
        takeOwned(need, line);

        const std::vector<Pack> packs = packsFor(need, line.item);
        if (line.item == "dry_mix") lastBagPriceMinor_ = packs.empty() ? 0 : packs.front().priceMinor;
        choosePacks(need, packs, line);
        const auto& groups = priceGroups();
        const auto aisle = std::find(groups.begin(), groups.end(), line.group) - groups.begin();
        row.order = {static_cast<std::size_t>(aisle), entry ? entry->place : book_.items.size()};
        rows_.push_back(std::move(row));
    }

    void takeOwned(const Need& need, ShoppingLine& line)
    {
        for (const std::string& key : need.keys) {
            const auto owned = owned_.find(key);
            if (owned == owned_.end()) continue;
            const double taken = std::min(owned->second, line.need - line.owned);
            line.owned += taken;
            owned->second -= taken;
        }
    }

    void choosePacks(const Need& need, const std::vector<Pack>& packs, ShoppingLine& line)
    {
        const double cover = line.owned > 0.0 ? line.need - line.owned : std::max(need.amount, need.atLeast);
        line.packs = cheapestPacks(cover, packs);
        double bought = 0.0;
        double longest = 0.0;
        for (const PackChoice& choice : line.packs) {
            bought += choice.size * choice.count;
            line.priceMinor += choice.priceMinor * choice.count;
        }
        for (const Pack& pack : packs) longest = std::max(longest, pack.size);
        if (!line.packs.empty()) line.leftover = std::max(0.0, bought - (line.need - line.owned));
        line.priced = !packs.empty() && (!line.packs.empty() || cover < 1e-6);
        if (!line.priced) {
            Finding& finding = findings_.emplace_back(note("no_price"));
            addSubjects(line, finding);
            finding.values["item"] = line.item;
            finding.values["amount"] = line.need;
            finding.values["unit"] = line.unit;
        } else if (need.longestMm > longest * 1000.0 + 1e-6) {
            Finding& finding = findings_.emplace_back(note("longer_than_stock"));
            finding.severity = Severity::caution;
            addSubjects(line, finding);
            finding.values["item"] = line.item;
            finding.values["piece_mm"] = need.longestMm;
            finding.values["stock_mm"] = longest * 1000.0;
        }
    }

    static void addSubjects(const ShoppingLine& line, Finding& finding)
    {
        for (const ShoppingOrigin& origin : line.origins) {
            if (!origin.subject.empty()) finding.subjects.push_back(origin.subject);
        }
    }

    /// A key typed wrongly would silently change nothing.
    void reportUnknownKeys(const std::vector<Need>& needs)
    {
        const auto known = [&](const std::string& key) {
            if (book_.find(key)) return true;
            return std::any_of(needs.begin(), needs.end(), [&](const Need& need) {
                return std::find(need.keys.begin(), need.keys.end(), key) != need.keys.end();
            });
        };
        for (std::size_t i = 0; i < plan_.owned.size(); ++i) {
            if (known(plan_.owned[i].item)) continue;
            Finding& finding = findings_.emplace_back(note("owned_unknown", "/owned/" + std::to_string(i) + "/item"));
            finding.values["item"] = plan_.owned[i].item;
        }
        for (std::size_t i = 0; i < plan_.prices.size(); ++i) {
            if (known(plan_.prices[i].item)) continue;
            Finding& finding = findings_.emplace_back(note("price_unknown", "/prices/" + std::to_string(i) + "/item"));
            finding.values["item"] = plan_.prices[i].item;
        }
    }

    const Plan& plan_;
    const PriceBook& book_;
    PlanPrices prices_;
    std::vector<Finding>& findings_;
    std::map<std::string, double> owned_;
    std::vector<Row> rows_;
    std::int64_t lastBagPriceMinor_ = 0;
};

double carriedKg(const ShoppingList& list, const SteelSchedule& steel)
{
    double massKg = steel.massKg;
    for (const ShoppingLine& line : list.lines) {
        static const std::set<std::string> kHeavy{"dry_mix", "cement", "sand", "gravel"};
        if (kHeavy.count(line.item) == 0) continue;
        for (const PackChoice& choice : line.packs) massKg += choice.size * choice.count;
    }
    return massKg;
}

}  // namespace

ShoppingList shoppingList(const Plan& plan, const PriceBook& prices, const std::vector<CastingPtr>& castings,
                          const std::vector<MixQuantities>& mixes, const SteelSchedule& steel,
                          const std::vector<FrontLayout>& fronts, const MouldEstimate& mould,
                          std::vector<Finding>& findings)
{
    ListMaker maker(plan, prices, findings);
    ShoppingList list = maker.make(gatherNeeds(plan, prices, castings, mixes, steel, fronts, mould));
    list.massKg = carriedKg(list, steel);
    compareWithBudget(plan, PlanPrices(plan, prices), list, mould, findings);
    return list;
}

}  // namespace yardcast
