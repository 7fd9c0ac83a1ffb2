#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/structure/strength.h"
#include "core/structure/strength_input.h"

/// When a casting may be stripped, tilted and carried: found by the solver of strength, at each age.
namespace yardcast {

enum class HandlingWay { strip, tilt, carryFlat, carryOnEdge };
inline constexpr HandlingWay kHandlingWays[] = {HandlingWay::strip, HandlingWay::tilt, HandlingWay::carryFlat,
                                                HandlingWay::carryOnEdge};
const char* handlingWayWord(HandlingWay way);  ///< "strip", "tilt", "carry_flat", "carry_on_edge"

/// Hours after the pour, infinity where it never holds within kLongestWaitH.
struct EarliestHour {
    HandlingWay way = HandlingWay::strip;
    double likelyH = 0.0;      ///< by the mean tensile strength, safety taken off
    double cautiousH = 0.0;    ///< by its 5 % fractile, as the use in percent is reckoned
    double tensionMpa = 0.0;   ///< greatest, at the cautious hour (or at 28 days where it never holds)
    PlaceName place;           ///< of the governing tension
    bool byCompression = false;///< strip: the mean compressive strength `strip_mpa` governs
    bool possible = true;      ///< false: nothing holds it that way (no long edge, tips)
};
inline constexpr double kLongestWaitH = 28 * 24.0;

struct CastingHours {
    std::string casting;
    std::string part;
    std::string mix;
    double planH = 0.0;                  ///< the plan's own hour of lifting
    std::vector<EarliestHour> ways;      ///< in the order of kHandlingWays; those that make no sense are left out
    std::vector<Finding> findings;       ///< lifted_early (caution; stop where even the likely hour is later), never_holds
    std::string whyNot;
    const EarliestHour* find(HandlingWay way) const;
};
using CastingHoursPtr = std::shared_ptr<const CastingHours>;

/// Solves the handling cases at ages that close in on the hour where use is 100 % (fixed-point: tension hardly depends on
/// the age, only through the stiffness against the rests), to 0.1 h. Null when stopped. Pure.
CastingHoursPtr earliestHours(const StrengthInput& input, Refinement refinement = Refinement::draft,
                              std::stop_token stop = {});

/// Share of the 28-day mean strength by hour, and what mixes allow: the contract's `gain`.
struct GainCurve {
    std::string mix;
    std::vector<double> h;       ///< 0, 6, 12 ... 168 and 28 days
    std::vector<double> share;
    std::vector<double> meanMpa;
    std::optional<double> stripH, tiltH, carryH;  ///< cautious, the latest of its castings; empty while not solved
};
std::vector<GainCurve> gainCurves(const Plan& plan, const std::vector<std::string>& mixesInUse,
                                  const std::vector<CastingHoursPtr>& hours);

/// The same wait in each month of the season: cautious hour to carry, evaporation at the best start, frost.
struct SeasonMonth {
    int month = 1;
    double carryH = 0.0;             ///< of the slowest casting, by its equivalent age
    double evaporationKgM2H = 0.0;   ///< worst of the day from the best start
    double bestStartH = 0.0;
    bool frost = false;
    double curingDays = 0.0;
    int rank = 0;                    ///< 1 the best; 0 not fit for casting
};
std::vector<SeasonMonth> seasonMonths(const Plan& plan, const std::vector<std::string>& mixesInUse,
                                      const std::vector<CastingHoursPtr>& hours);

}  // namespace yardcast
