#pragma once

#include <string>

#include "core/cutting/sheet_cutting.h"

namespace yardcast {

/// Saws a plan's sheets step by step from whole sheets and looks whether exactly the list's pieces come out: what is wrong
/// first, or nothing. Knows nothing of how the plan came about.
std::string replaySaw(const SheetCutting& list, const SheetPlan& plan);

}  // namespace yardcast
