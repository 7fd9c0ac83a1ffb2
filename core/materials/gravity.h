#pragma once

namespace yardcast {

/// m/s2 = N/kg, as structures are reckoned with: standard gravity (9.80665, CGPM 1901) rounded up, 0.03 % more. The one
/// that weight, uplift, pressure and kilograms of a force are reckoned with.
inline constexpr double kGravityMS2 = 9.81;

}  // namespace yardcast
