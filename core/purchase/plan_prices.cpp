#include "core/purchase/plan_prices.h"

#include <algorithm>
#include <cmath>

#include "core/purchase/currency.h"
#include "core/purchase/shopping.h"

namespace yardcast {

namespace {

std::optional<Size> sheetOf(const PricedItem* item, double packSize)
{
    if (item == nullptr) return {};
    for (const Pack& pack : item->packs) {
        if (std::abs(pack.size - packSize) < 1e-6) return pack.sheet;
    }
    return {};
}

}  // namespace

PlanPrices::PlanPrices(const Plan& plan, const PriceBook& book)
    : usable_(book.currency == kNoCurrency || book.currency == plan.currency)
{
    const auto inPlans = [&](std::int64_t minor) { return rescaleMinor(minor, book.currency, plan.currency); };
    for (std::size_t i = 0; i < book.items.size(); ++i) {
        const PricedItem& item = book.items[i];
        Entry entry{&item, i, {}, {}};
        if (usable_) {
            for (const Pack& pack : item.packs)
                entry.packs.push_back({pack.size, inPlans(pack.priceMinor), pack.sheet});
            if (item.cuts) entry.cuts = CutTariff{item.cuts->freeASheet, inPlans(item.cuts->priceMinor)};
        }
        entries_[item.item] = std::move(entry);
    }
    for (const OwnPrice& own : plan.prices) {
        if (!(own.packSize > 0.0) || !(own.price >= 0.0)) continue;
        Entry& entry = entries_.try_emplace(own.item, Entry{nullptr, book.items.size(), {}, {}}).first->second;
        if (own_.insert(own.item).second) entry.packs.clear();
        entry.packs.push_back({own.packSize, toMinor(std::min(own.price, kLargestPrice), plan.currency),
                               sheetOf(entry.item, own.packSize)});
    }
}

const PlanPrices::Entry* PlanPrices::find(const std::string& key) const
{
    const auto it = entries_.find(key);
    return it == entries_.end() ? nullptr : &it->second;
}

std::string PlanPrices::keyFor(const std::vector<std::string>& keys) const
{
    for (const std::string& key : keys) {
        const Entry* entry = find(key);
        if (entry && !entry->packs.empty()) return key;
    }
    for (const std::string& key : keys) {
        if (find(key)) return key;
    }
    return keys.front();
}

std::int64_t PlanPrices::priceOf(const std::string& item, double amount) const
{
    const Entry* entry = find(item);
    std::int64_t price = 0;
    if (!entry) return price;
    for (const PackChoice& choice : cheapestPacks(amount, entry->packs)) price += choice.priceMinor * choice.count;
    return price;
}

}  // namespace yardcast
