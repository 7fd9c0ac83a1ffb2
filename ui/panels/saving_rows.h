#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/assess/mould_savings.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "ui/panels/line_model.h"

namespace yardcast::ui {

/// What moulds could do without, as a table: money against days and wear. The columns are the choice, what it saves, days
/// from first to last pour, and how often the mould that is used most serves.
QList<LineColumn> savingColumns();

struct SavingRow {
    Line line;
    std::optional<Remedy> remedy;        ///< the edit that makes the plan so; without one there is nothing to choose
    std::vector<std::string> castings;   ///< that it speaks of
};
/// In the order of the table; never empty. `Line::source` is the index of its row.
std::vector<SavingRow> savingRows(const Plan& plan, const MouldSavings& savings);

}  // namespace yardcast::ui
