#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/geometry/point.h"
#include "core/plan/finding.h"

namespace yardcast {

struct Pack {
    double size = 0.0;              ///< in the item's unit
    std::int64_t priceMinor = 0;    ///< a pack
    std::optional<Size> sheet = {}; ///< of what is sold in sheets: length and width, mm
};

/// What the store takes for straight cuts.
struct CutTariff {
    int freeASheet = 0;
    std::int64_t priceMinor = 0;    ///< of each further cut
};

struct PricedItem {
    std::string item;     ///< stable key, e.g. "dry_mix", "cement", "mesh_4_50", "bar_8"
    std::string name;     ///< what the list prints (data, not translated)
    std::string unit;     ///< "kg", "l", "ml", "m", "m2", "piece"
    std::string group;    ///< the aisle, one of priceGroups()
    std::vector<Pack> packs;
    std::optional<double> coverageM2;  ///< what one unit covers, m2; only some items
    std::optional<CutTariff> cuts = {};   ///< the store saws it
};

/// Prices of everything the list may ask for, in minor units of `currency`. A book in "XXX" (ISO 4217: no currency)
/// holds whole units of whatever currency the plan has, kept with two decimals.
struct PriceBook {
    std::string title;
    std::string currency;
    std::vector<PricedItem> items;

    const PricedItem* find(std::string_view item) const;
};

struct PriceBookReading {
    PriceBook book;
    std::vector<Finding> problems;  ///< any: the book is empty
};
/// From the text of a `.yardprices` file (JSON): `{"yardprices": 1, "title", "currency", "items": [{"item", "name",
/// "unit", "group", "packs": [{"size", "price", "sheet"?: [length, width] in mm}], "coverage"?, "cuts"?: {"free",
/// "price"}}]}`. Prices are whole units of the currency. Never throws; gives all problems at once, each with its JSON pointer.
PriceBookReading readPriceBook(const std::string& text);
inline constexpr std::size_t kLargestPriceBookBytes = 8u << 20;
inline constexpr double kLargestPrice = 1e7;  ///< whole units a pack; keeps sums within whole numbers
/// The example book that comes with the program (prices invented). Same as resources/example.yardprices.
const PriceBook& exampleBook();
/// Its file's text.
std::string_view exampleBookText();

/// The words that `unit` and `group` may hold, in the order of the list (aisles).
const std::vector<std::string>& priceUnits();
const std::vector<std::string>& priceGroups();

}  // namespace yardcast
