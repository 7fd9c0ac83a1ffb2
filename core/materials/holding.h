#pragma once

/// What holds foam down in fresh concrete.
namespace yardcast {

/// Foam is held with so many times its uplift; our factor, no source.
inline constexpr double kHoldShare = 1.5;
/// What one 4 mm wood screw in a mould side may be counted on for; our choice, no source.
inline constexpr double kFixingN = 300.0;

/// Threaded rod M8 with a square plate and a nut at each end, mm. Common practice, no source.
inline constexpr double kTieRodMm = 8.0;
inline constexpr double kTiePlateMm = 40.0;
/// What one may be counted on for: the plate presses on the edge of a batten of 24 mm, drilled 9 mm, and C16 of EN 338
/// bears 2.2 MPa across the grain (from memory): 24 x 40 - 64 mm2 times that, rounded. The rod itself bears five times
/// as much.
inline constexpr double kTieN = 1900.0;

}  // namespace yardcast
