#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace yardcast::test {

inline const std::vector<std::string> kSamples = {"grill-bench", "corner-kitchen", "two-level-bar"};

/// The text of a file below the top of the tree; throws when it cannot be read.
std::string textOf(const std::string& path);
std::string sampleText(const std::string& name);
/// Throws when the file is no plan.
Plan sample(const std::string& name);

}  // namespace yardcast::test
