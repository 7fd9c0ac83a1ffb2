#pragma once

/// Revised NIOSH lifting equation: Waters, Putz-Anderson, Garg, Applications Manual, DHHS (NIOSH) 94-110, revised 9/2021.
namespace yardcast {

enum class Coupling { good, fair, poor };
enum class LiftDuration { hour, twoHours, day };
struct NioshLift {
    double horizontalCm = 25.0;   ///< hands from the middle of the ankles
    double verticalCm = 75.0;     ///< hands above the ground
    double travelCm = 25.0;
    double asymmetryDeg = 0.0;
    double liftsPerMinute = 0.2;
    LiftDuration duration = LiftDuration::hour;
    Coupling coupling = Coupling::poor;
};
struct NioshLimit {
    double horizontal = 0.0;      ///< the multipliers
    double vertical = 0.0;
    double travel = 0.0;
    double asymmetry = 0.0;
    double frequency = 0.0;
    double coupling = 0.0;
    double limitKg = 0.0;         ///< recommended weight limit, 23 kg times all
};
/// Metric equation. Zero multipliers beyond its bounds (H > 63, V > 175, D > 175, A > 135). It is written for one lifter
/// with two hands; to use it for each of a team is an assumption that must be said.
NioshLimit nioshLimit(const NioshLift& lift);

}  // namespace yardcast
