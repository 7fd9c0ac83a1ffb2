#pragma once

/// What holds foam down in fresh concrete.
namespace yardcast {

/// Foam is held with so many times its uplift; our factor, no source.
inline constexpr double kHoldShare = 1.5;
/// What one 4 mm wood screw in a mould side may be counted on for; our choice, no source.
inline constexpr double kFixingN = 300.0;

}  // namespace yardcast
