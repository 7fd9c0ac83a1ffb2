#pragma once

#include "core/castings/casting.h"

namespace yardcast {

/// Common practice, no source: so much of the sheet lies beyond the casting on each side.
inline constexpr double kSheetOverlapMm = 150.0;

/// Sheeting that keeps the casting moist: the box of its outline with the overlap all round, m2. The one figure that
/// curing, the pour day and the shopping list name.
double curingSheetM2(const Casting& casting);

}  // namespace yardcast
