#pragma once

#include "core/plan/plan.h"

namespace yardcast::ui {

/// What one begins with: no parts, and one usual mix for worktops and one for bodies, so that the first counter has its
/// figures at once. The mixes are invented; each maker writes what stands on the bag.
Plan emptyPlan();

}  // namespace yardcast::ui
