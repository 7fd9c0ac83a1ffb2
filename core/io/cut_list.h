#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/cutting/bar_cutting.h"
#include "core/cutting/sheet_cutting.h"
#include "core/io/json_text.h"
#include "core/plan/finding.h"

namespace yardcast {

struct CutListReading {
    std::variant<BarCutting, SheetCutting> list;  ///< only of use without problems
    std::vector<Finding> problems;                ///< all at once, each with its JSON pointer
};

/// A list of cuts that needs no plan, JSON:
///   { "kind": "bar", "saw_mm"?, "trim_mm"? (off each of both ends), "stock": [{"length_mm", "price"?, "count"?}],
///     "pieces": [{"name"?, "length_mm", "count"?}] }
///   { "kind": "sheet", "saw_mm"?, "trim_mm"? (off all around), "least_strip_mm"?, "cut_price"?, "free_cuts"?,
///     "stock": [{"size": [x, y], "price"?, "count"?}], "pieces": [{"name"?, "size": [x, y], "count"?, "turn"?}] }
/// Widths and prices are 0 and piece counts 1 where they are not said; stock without a count is without limit; pieces
/// may be turned unless it is said that they may not. Other keys are passed over. Never throws. Problems (stop): those
/// of readJson, cuts_missing and cuts_wrong (value expected), cuts_too_many (limit, kinds_limit).
CutListReading readCutList(std::string_view text);
inline constexpr std::size_t kLargestCutListBytes = 16u << 20;

/// How a plan of cuts is written as JSON, wherever it is: lengths and shares of prices to a millionth. "count",
/// "bound_count" (of bars only where there is one sort of stock, not rounded up), "proven", "gap_percent" of the price
/// where it is not proven, "plan", "unplaced"; of bars "patterns" and "remainders"; of sheets "cuts". `pieceOf` gives
/// the JSON that a piece of the list begins with: its name and more.
using CutPieceJson = std::function<Json(int)>;
Json cutPlanJson(const BarCutting& list, const BarPlan& plan, const CutPieceJson& pieceOf);
Json cutPlanJson(const SheetCutting& list, const SheetPlan& plan, const CutPieceJson& pieceOf);

/// The answer to a list as JSON text: cutPlanJson with "price" and "bound" of it in the list's own unit; of sheets
/// also "sheets_price" and "cuts_price".
std::string cutAnswer(const BarCutting& list, const BarPlan& plan);
std::string cutAnswer(const SheetCutting& list, const SheetPlan& plan);

}  // namespace yardcast
