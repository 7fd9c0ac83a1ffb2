#pragma once

#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/purchase/price_book.h"

namespace yardcast {

/// The packs that hold for a plan: its own prices first, then the book, all in the plan's currency. A pack that only the
/// plan prices has the sheet of the book's pack of that size. The book must outlive this.
class PlanPrices {
public:
    PlanPrices(const Plan& plan, const PriceBook& book);

    struct Entry {
        const PricedItem* item = nullptr;   ///< null: only the plan has a price
        std::size_t place = 0;              ///< in the book
        std::vector<Pack> packs;
        std::optional<CutTariff> cuts;
    };

    /// Null where neither knows the item.
    const Entry* find(const std::string& key) const;
    bool isOwn(const std::string& key) const { return own_.count(key) > 0; }
    /// False where the book is in another currency: then only the plan's own prices hold.
    bool usable() const { return usable_; }
    /// The first key that has packs, or the first that the book knows, or the first. `keys` must not be empty.
    std::string keyFor(const std::vector<std::string>& keys) const;
    /// What packs of an item cost that cover so much; 0 where there are none.
    std::int64_t priceOf(const std::string& item, double amount) const;

private:
    bool usable_ = true;
    std::map<std::string, Entry> entries_;
    std::set<std::string> own_;
};

}  // namespace yardcast
