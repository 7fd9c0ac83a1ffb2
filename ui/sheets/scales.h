#pragma once

#include <vector>

#include <QString>

namespace yardcast::ui {

/// Reductions of ISO 5455:1979, table: 1:2, 1:5, 1:10 ... 1:10000, and full size; largest drawing first.
const std::vector<int>& reductionScales();
/// "1:20".
QString scaleText(int of);

}  // namespace yardcast::ui
