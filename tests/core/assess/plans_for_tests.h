#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace yardcast::test {

/// Names of the plans in sample-projects, without the ending.
std::vector<std::string> sampleNames();
/// Throws when the file cannot be read as a plan.
Plan samplePlan(const std::string& name);

/// A row of kitchens: of every five parts two counters with a rim and a sink, two supports with a core, one front.
Plan rowOfParts(int parts);

}  // namespace yardcast::test
