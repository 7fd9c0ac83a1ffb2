#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/plan/finding.h"

namespace yardcast {

struct Pack {
    double size = 0.0;              ///< in the item's unit
    std::int64_t priceMinor = 0;    ///< a pack
};

struct PricedItem {
    std::string item;     ///< stable key, e.g. "dry_mix", "extra_cement", "mesh"
    std::string name;     ///< what the list prints (data, not translated)
    std::string unit;     ///< "kg", "l", "ml", "m", "m2", "piece", "bag"
    std::string group;    ///< the aisle: "concrete", "steel", "boards", "timber", "sealing", "fixings", "tools", "safety"
    std::vector<Pack> packs;
};

/// Prices of everything the list may ask for, in minor units of `currency`.
struct PriceBook {
    std::string title;
    std::string currency;
    std::vector<PricedItem> items;

    const PricedItem* find(const std::string& item) const;
};

struct PriceBookReading {
    PriceBook book;
    std::vector<Finding> problems;  ///< any: the book is empty
};
/// From the text of a `.yardprices` file (JSON).
PriceBookReading readPriceBook(const std::string& text);
/// The example book that comes with the program (prices invented). Same as resources/example.yardprices.
const PriceBook& exampleBook();

}  // namespace yardcast
