#pragma once

#include <cstdint>
#include <stop_token>
#include <vector>

#include "core/cutting/sheet_fill.h"

namespace yardcast::sheets {

/// Sheets filled together; `times` such sets of sheets are cut.
struct FilledGroup {
    SheetForest forest;
    std::vector<int> bins;      ///< sort of each sheet of the forest
    int times = 1;
};

struct Filled {
    std::vector<FilledGroup> groups;
    std::vector<int> left;      ///< of each item
};

/// What no plan for the items undercuts.
struct SheetBound {
    std::int64_t price = 0;     ///< of the sheets
    int count = 0;              ///< of sheets
};
SheetBound sheetBound(const std::vector<Item>& items, const std::vector<Bin>& bins);

/// Of the sheets alone.
std::int64_t sheetsPrice(const Filled& filled, const std::vector<Bin>& bins);

/// The cheapest sheets found for the items, which each fit some sheet: the combinations of sheets that no bound rules out
/// are tried by rising price.
Filled fillSheets(const std::vector<Item>& items, const std::vector<Bin>& bins, CutCosts costs, std::uint64_t places,
                  const std::stop_token& stop);

}  // namespace yardcast::sheets
