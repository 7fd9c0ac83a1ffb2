#pragma once

#include <vector>

#include "core/geometry/region.h"
#include "core/plan/finding.h"
#include "core/structure/strength.h"

/// Supports and panels where they stand at the end: statics of a rigid body, no solving. Forces N, mm, kPa.
namespace yardcast {

/// Where an upright stands: pads side by side along its length, in two rows where they fit across it, else in one row
/// along its middle. A panel, and a support without pads, stands on all of its base.
struct StandingPads {
    std::vector<Box> pads;         ///< seen from above: own x along the length, own y across
    Box around;                    ///< about all of them
    double thicknessMm = 0.0;      ///< 0 without pads
};
StandingPads standingPads(const StrengthInput& input);

struct Standing {
    std::vector<double> padN;      ///< one a pad; own weight and what it carries
    bool holds = false;            ///< it stands by itself: the resultant lies within the pads
    double weightN = 0.0;          ///< own and carried
    double leanN = 0.0;            ///< level push at the top, across, at which it tips
    double tipFactor = 0.0;        ///< leanN over kLeanN
    double padMpa = 0.0;           ///< greatest pressure on a pad
    double groundKpa = 0.0;        ///< the same on the ground below it; 0 where it does not stand on the ground
    double slenderness = 0.0;      ///< height over thickness
};
Standing standing(const StrengthInput& input);

/// Somebody leans on it: 1 kN level at the top, and the wanted factor (judgement, no source).
inline constexpr double kLeanN = 1000.0;
inline constexpr double kLeanFactor = 1.5;
/// Presumed to bear, where nobody has looked: 50 kPa on garden soil (cautious judgement); past 150 kPa even firm ground
/// is doubtful (from memory of usual presumed values). What stands within `kGroundReachMm` of the datum stands on it.
inline constexpr double kSoilKpa = 50.0;
inline constexpr double kFirmGroundKpa = 150.0;
inline constexpr double kGroundReachMm = 200.0;
/// A bar: a top this high invites to lean on it. Below it, what carries a counter is not judged by itself.
inline constexpr double kBarTopMm = 1000.0;
/// What is no higher than this many times its base is not called slender enough to be pushed over.
inline constexpr double kSquatRatio = 3.0;
/// EN 1992-1-1 12.6.5.1(5): plain walls, height over thickness (from memory).
inline constexpr double kMostSlender = 25.0;
/// EN 1992-1-1 10.9.5.2(2): a dry bearing takes 0.4 fcd (from memory), fcd with 12.3.1's 0.8 for plain concrete.
double dryBearingMpa(double fckMpa);

/// The case `standing` and its findings: upright_tips (a caution for a bar and for what carries nothing), pad_pressure,
/// ground_pressure (a note past `kSoilKpa`, a caution past `kFirmGroundKpa`), pads_few (one pad under a long one),
/// upright_slender. Counters have none (no cases).
struct StandingAnswer {
    std::vector<CaseResult> cases;
    std::vector<Finding> findings;
};
StandingAnswer standingCase(const StrengthInput& input);

}  // namespace yardcast
