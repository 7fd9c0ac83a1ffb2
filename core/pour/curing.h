#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

/// How long castings have to be kept moist: EN 13670 tables F.1 to F.3 (from memory).
namespace yardcast {

/// Strength development r = fcm(2 d)/fcm(28 d): rapid >= 0.50, medium >= 0.30, slow >= 0.15, else very slow (none).
enum class StrengthGain { rapid, medium, slow, verySlow };
StrengthGain strengthGain(double s);

/// Least days of curing at a mean surface temperature, by class 2 to 4 and gain; between rows the days are interpolated
/// (the standard allows it). Below 5 deg C no time counts: infinity.
double curingDays(int curingClass, StrengthGain gain, double surfaceC);

struct Curing {
    std::string mix;
    StrengthGain gain = StrengthGain::medium;
    double surfaceC = 20.0;     ///< mean of the days used
    double days = 0.0;
    double sheetM2 = 0.0;       ///< sheeting over its castings with an overlap of 150 mm a side (common practice)
};
/// One a mix in use, in the plan's order. Findings: curing_stops (below 5 deg C), fume_needs_curing.
std::vector<Curing> curing(const Plan& plan, const std::vector<CastingPtr>& castings, std::vector<Finding>& findings);

}  // namespace yardcast
