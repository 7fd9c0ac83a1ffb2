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

/// Least days of curing at a mean surface temperature, by class 2 to 4 and gain, as the tables stand: a row holds from
/// its temperature up to the next, which is on the safe side within it. Below 5 deg C no time counts, and for what gains
/// very slowly the tables have no column: infinity.
double curingDays(int curingClass, StrengthGain gain, double surfaceC);
/// Likewise by r itself, in between the columns along the row (the tables' note allows it).
double curingDays(int curingClass, double ratio, double surfaceC);
/// fcm(2 d)/fcm(28 d) by eq. 3.2 of EN 1992-1-1.
double strengthRatio(double s);

struct Curing {
    std::string mix;
    StrengthGain gain = StrengthGain::medium;
    double ratio = 0.0;         ///< r
    double surfaceC = 20.0;     ///< mean of the hours that count
    double days = 0.0;          ///< from the pour to the end, hours below 5 deg C included; infinity where it has none
    double countedDays = 0.0;   ///< of these, what the table asks for
    double sheetM2 = 0.0;       ///< over its castings, see curingSheetM2
};
/// Colder hours do not count (note to the tables).
inline constexpr double kNoCuringBelowC = 5.0;

/// One a mix in use, in the plan's order. Findings: curing_stops (too
/// cold to count), curing_stretched (note: nights do not count), fume_needs_curing (note).
std::vector<Curing> curing(const Plan& plan, const std::vector<CastingPtr>& castings, std::vector<Finding>& findings);

}  // namespace yardcast
