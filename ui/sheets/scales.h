#pragma once

#include <vector>

#include <QString>

namespace yardcast::ui {

/// Full size and the reductions of ISO 5455:1979: 1:2, 1:5, 1:10 and on by decades (the table ends at 1:10000; further
/// ones only keep a plan with absurd sizes on its sheet). Largest drawing first.
const std::vector<int>& reductionScales();
/// "1:20".
QString scaleText(int of);

}  // namespace yardcast::ui
