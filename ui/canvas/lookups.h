#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace yardcast::ui {

/// Null for what is not there.
const Counter* findCounter(const Plan& plan, const std::string& part);
const Cutout* findCutout(const Plan& plan, const std::string& part, const std::string& cutout);
const Fixture* findFixture(const Plan& plan, const std::string& fixture);
/// The parts, and the appliances that stand on the counters among them: they go where their counter goes.
std::vector<std::string> withRiders(const Plan& plan, const std::vector<std::string>& parts);
/// Length and width of a part that is a box seen from above (support, panel, appliance).
Size boxSizeOf(const Part& part);

}  // namespace yardcast::ui
