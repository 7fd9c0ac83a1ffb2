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
    enum class What { waterCement, strengthClass, cement, air, fume, plasticiser, ratioForClass };
    What what = What::waterCement;
    std::string by;                  ///< "XC4", "XF3", "EN 206 5.2.6" ...
    double is = 0.0;
    double limit = 0.0;
    std::optional<bool> met;         ///< nothing: not known
};
struct MixCheck {
    std::string mix;
    Ratios ratios;
    double cementKgM3 = 0.0;
    std::string classSupported;      ///< highest class of Table 3.1 whose mean the ratio supports; "" below C12/15
    std::vector<LimitCheck> limits;
};
/// The strictest of the plan's exposure and frost decide; each is a row.
MixCheck checkMix(const Plan& plan, const Mix& mix);

}  // namespace yardcast
