#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/pour/charge.h"

/// EN 206 Table F.1 (informative; 50 years, CEM I, aggregate of 20 to 32 mm).
namespace yardcast {

struct ExposureLimits {
    double maxWaterCement = 0.0;     ///< 0: no limit
    double minFckMpa = 0.0;
    double minCementKgM3 = 0.0;
    double minAirPercent = 0.0;
};
ExposureLimits limitsOf(Exposure exposure);
ExposureLimits limitsOf(Frost frost);

/// One row of the comparison, met or not; unknown where the mix does not state it.
struct LimitCheck {
    /// Units of `is` and `limit`: a ratio (silica fume counted), fck in MPa, kg/m3 of cement (with k times the fume),
    /// percent of the volume, percent of the cement, g in a kg of cement, MPa of mean strength, percent of the cement.
    enum class What { waterCement, strengthClass, cement, air, fume, plasticiser, ratioForClass, pigment };
    What what = What::waterCement;
    std::string by;                  ///< "plan", "XC4", "XF3", "EN 206 5.2.6" ...
    double is = 0.0;
    double limit = 0.0;
    std::optional<bool> met;         ///< nothing: not known
};
/// Name of the class of Table 3.1 with this fck, "" where none has.
std::string classNamed(double fckMpa);
struct MixCheck {
    std::string mix;
    Ratios ratios;                   ///< after a trial batch that was too wet: its own, see weighedChargeOf
    double cementKgM3 = 0.0;
    std::string classSupported;      ///< highest class of Table 3.1 whose mean the ratio supports; "" below C12/15
    std::vector<LimitCheck> limits;
};
/// EN 206 5.2.5.2.3: fume may take the place of cement in the minimum, but of no more than this, kg/m3, where the
/// minimum is at most 300 (from memory).
inline constexpr double kMostCementReplacedKgM3 = 30.0;
/// EN 206 5.2.6: admixtures in all, g in a kg of cement.
inline constexpr double kMostAdmixtureGKg = 50.0;
/// More colours no deeper and weakens: common practice (EN 12878 has its makers state it), from memory.
inline constexpr double kMostPigmentPercent = 10.0;

/// Each limit of the plan's exposure and frost is a row, so are the plan's own ratio and what additions there are. The
/// mix must be usable. Air that is not known and a class that is no class leave `met` empty.
MixCheck checkMix(const Plan& plan, const Mix& mix);

}  // namespace yardcast
