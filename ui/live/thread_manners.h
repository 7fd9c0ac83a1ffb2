#pragma once

namespace yardcast::ui {

/// The calling thread, and those it starts from now on, give way to the window when there are fewer processors than
/// work: by this many steps of niceness (QThread's priorities do nothing under the scheduler that Linux has by
/// default). Elsewhere nothing.
void giveWay(int niceness);

inline constexpr int kStrengthNiceness = 5;
inline constexpr int kRemedyNiceness = 10;

}  // namespace yardcast::ui
