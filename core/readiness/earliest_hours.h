#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/readiness/needed_ages.h"
#include "core/structure/strength.h"
#include "core/structure/strength_input.h"

/// When a casting may be stripped, tilted and carried: found by the solver of strength, at each age.
namespace yardcast {

/// Hours after the pour, infinity where it never holds: where the strength of the class is not enough, or the course
/// does not bring that age within a year. After kLongestWaitH the solver of strength counts with the class itself,
/// whatever the temperature was; these hours go on by the course.
struct EarliestHour {
    HandlingWay way = HandlingWay::strip;
    double likelyH = 0.0;      ///< by the mean tensile strength, safety taken off
    /// By its 5 % fractile, as the use in percent is reckoned, of what class and ratio of water to cement both support.
    double cautiousH = 0.0;
    double likelyDays = 0.0;   ///< the same as days at 20 deg C
    double cautiousDays = 0.0;
    double tensionMpa = 0.0;   ///< greatest, at the cautious hour (or at 28 days where it never holds)
    PlaceName place;           ///< of the governing tension
    bool byCompression = false;///< compressive strength `strip_mpa` governs: the mould stays on until then
    bool possible = true;      ///< false: nothing holds it that way (no long edge, tips)
    /// Eq. 3.2 is an extrapolation before about one day at 20 deg C: such an hour is to be tested, not believed.
    bool stretched() const { return cautiousDays < 1.0; }
};
inline constexpr double kLongestWaitH = 28 * 24.0;

/// As hours are shown to people: up to the whole hour until two days, beyond up to the half day; infinity stays. Hours are
/// found to 0.1 h, but a class and a forecast are not known to the hour, and none may be shown earlier than it is.
inline constexpr double kWholeHoursUpToH = 48.0;
double shownWaitH(double h);

struct CastingHours {
    std::string casting;
    std::string part;
    std::string mix;
    double planH = 0.0;                  ///< the plan's own hour of lifting
    HandlingWay carry = HandlingWay::carryFlat;  ///< how the plan wants it carried
    std::vector<EarliestHour> ways;      ///< in the order of kHandlingWays; those that make no sense are left out
    /// Subjects: casting, part; one at most.
    /// - lifted_early: the plan's hour is before the cautious one: a caution; a stop where it is before the likely one;
    /// - never_strong: the cautious strength never is what a mould is taken off at: a caution; a stop where the likely
    ///   is not either;
    /// - never_holds: a way that the plan needs does not hold at any age.
    std::vector<Finding> findings;
    std::string whyNot;
    const EarliestHour* find(HandlingWay way) const;
    /// How it leaves the mould soonest: lifted off flat, or tilted off. Null without any.
    const EarliestHour* outOfMould() const;
    /// Of the ways that the plan needs the one that is ready last: tilted (lifted off flat where it cannot be tilted),
    /// and carried as planned. Null without any.
    const EarliestHour* governing() const;
};
using CastingHoursPtr = std::shared_ptr<const CastingHours>;

/// The hours by the input's course at which it has the ages it needs. Cheap.
CastingHoursPtr hoursOf(const StrengthInput& input, const CastingAges& ages);
/// `neededAges` and `hoursOf`: to 0.1 h. Null when stopped. Pure.
CastingHoursPtr earliestHours(const StrengthInput& input, Refinement refinement = Refinement::draft,
                              std::stop_token stop = {});

/// Share of the 28-day mean strength by hour, and what mixes allow: the contract's `gain`.
struct GainCurve {
    std::string mix;
    std::vector<double> h;       ///< 0, 6, 12 ... 168 and 28 days
    std::vector<double> share;
    std::vector<double> meanMpa;
    /// Cautious, the latest of its castings: out of the mould the one way or the other, tilted, carried as planned.
    /// Empty while not solved; infinite where one of them never holds.
    std::optional<double> stripH, tiltH, carryH;
};
/// By the plan's own course.
std::vector<GainCurve> gainCurves(const Plan& plan, const std::vector<std::string>& mixesInUse,
                                  const std::vector<CastingHoursPtr>& hours);

/// The same wait in each month of the season: cautious hour to carry, evaporation at the best start, frost.
struct SeasonMonth {
    int month = 1;
    double carryH = 0.0;             ///< of the slowest casting as planned, by its equivalent age; 0 while not solved
    double evaporationKgM2H = 0.0;   ///< worst of the day from the best start
    double limitKgM2H = 0.0;         ///< of the strictest mix
    double bestStartH = 0.0;
    bool frost = false;              ///< the night is too cold for fresh concrete
    double curingDays = 0.0;         ///< of the mix that takes longest
    int rank = 0;                    ///< 1 the best; 0 not fit for casting
};
/// In the plan's order. Not fit: frost, or no end of the wait within a year. The best: evaporation below the limit
/// first, then the shorter wait (of carrying and curing the longer one).
std::vector<SeasonMonth> seasonMonths(const Plan& plan, const std::vector<std::string>& mixesInUse,
                                      const std::vector<CastingHoursPtr>& hours);

}  // namespace yardcast
