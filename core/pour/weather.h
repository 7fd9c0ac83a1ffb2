#pragma once

#include <vector>

#include "core/materials/temperature_course.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/pour/charge.h"
#include "core/pour/mix_quantities.h"

/// The pour day's weather: what it does to fresh concrete, hour by hour.
namespace yardcast {

/// Uno (1998), ACI Materials Journal 95-M34: E = 5 ((Tc+18)^2.5 - r (Ta+18)^2.5) (V+4) 1e-6, kg/(m2 h); r relative
/// humidity as a share, V km/h. Never below 0. Real rates differ by some 40 % either way.
double evaporationKgM2H(double concreteC, double airC, double humidityShare, double windKmh);
/// Published comparisons: real rates lie so far to either side of such formulas.
inline constexpr double kEvaporationUncertainPercent = 40.0;
/// Where care begins: 1.0, and 0.5 for mixes that hardly bleed (silica fume, fibres) (ACI 305R, from memory).
inline constexpr double kEvaporationLimit = 1.0;
inline constexpr double kEvaporationLimitLowBleed = 0.5;
double evaporationLimit(const Mix& mix);

/// Magnus' formula over water (WMO Guide No. 8, from memory): 6.112 exp(17.62 t / (243.12 + t)) hPa. `dewPointC` is its
/// inverse at that humidity.
double saturationHpa(double airC);
double dewPointC(double airC, double humidityPercent);
/// Relative humidity of air with this dew point, at most 100.
double humidityPercentAt(double airC, double dewPoint);

/// What goes into the mixer with its temperatures; masses in one unit, for any amount of concrete.
struct MixTemperatureInput {
    double aggregateKg = 0.0;   ///< dry
    double aggregateC = 20.0;
    double cementKg = 0.0;      ///< with silica fume
    double cementC = 20.0;
    double waterKg = 0.0;       ///< added, liquid
    double waterC = 15.0;
    double moistureKg = 0.0;    ///< free water of the aggregate, at its temperature
    double iceKg = 0.0;
};
/// ACI 305R appendix B (from memory): specific heat 0.22 of water's, 79.6 K for melting ice at 0 deg C.
double mixTemperatureC(const MixTemperatureInput& input);
/// Of one bag or one m3: what lies about (cement, bags, aggregate with its moisture) at `materialsC`, the water at
/// `waterC`, a share of it (0 to 1 by mass) as ice in its place. Fibres, pigment and plasticiser are too little to count.
MixTemperatureInput mixTemperatureInput(const Charge& charge, double materialsC, double waterC, double iceShare = 0.0);
/// The plan's share of ice in the mixing water, 0 to kMostIceInWater.
double iceShareOf(const Plan& plan);
/// All the water there is; the last portion stays liquid: it carries the plasticiser.
inline constexpr double kMostIceInWater = 0.75;
/// How warm the water that is not ice has to be for the mix to come out at `targetC` (any number, ice or steam included).
double waterForC(const MixTemperatureInput& input, double targetC);
/// Beyond this share of ice in the water the equation is not trusted (a public paper: wrong above 20 %, irrational
/// above 50 %): more is not proposed, and a plan that takes more is told so.
inline constexpr double kMostIceShare = 0.20;

/// Minutes the concrete can be worked: `minutesAt20` at 20 deg C, half for each 10 K more (F-78: from memory; the rule
/// that setting doubles and halves with 10 K is published for finishing windows).
double workingMinutes(double minutesAt20, double concreteC);
/// Above this the mix is too hot (ACI 305R, 35 deg C); below this it may freeze or hardly hardens (5 deg C).
inline constexpr double kHottestMixC = 35.0;
inline constexpr double kColdestMixC = 5.0;

/// By so much of what the air is warmer than `air_c` is the concrete warmer than `concrete_c`: what lies in the shade
/// follows the air late and the tap water hardly does. Our estimate, no source.
inline constexpr double kFollowsAir = 0.5;
/// A pour of a private garden begins and ends between these hours of the day: light, and neighbours. Our choice.
inline constexpr double kEarliestWorkH = 6.0;
inline constexpr double kLatestWorkH = 21.0;
/// Fresh concrete bears freezing from this mean strength on: EN 13670 8.5 (from memory).
inline constexpr double kFrostProofMpa = 5.0;
/// Warmer than this and cooling is worth a thought: common practice, no source.
inline constexpr double kWarmMixC = 25.0;
/// Mixing water hotter than this stiffens cement at once: ACI 306R (from memory).
inline constexpr double kHottestWaterC = 60.0;
/// Colder water than this does not come out of a tub with ice in it (our choice).
inline constexpr double kColdestWaterC = 2.0;

struct WeatherHour {
    double hourOfDay = 0.0;
    double airC = 0.0;
    double humidityPercent = 0.0;   ///< the dew point of the day's mean is kept: drier when warmer
    double concreteC = 0.0;         ///< as mixed at that hour, see kFollowsAir
    double evaporationKgM2H = 0.0;
    double workingMinutes = 0.0;
};

/// Which way of cooling brings the mix to `targetC`, and by how much water.
struct Cooling {
    double targetC = 0.0;
    double fromC = 0.0;             ///< with tap water
    double coldWaterC = 0.0;        ///< water this cold is enough; not below kColdestWaterC
    bool coldWaterEnough = false;
    double icePerBatchKg = 0.0;     ///< all of it, in place of as much water; 0 where not needed or beyond
                                    ///< kMostIceShare; for one bag or one m3 where there is no mixer
    double icePercent = 0.0;        ///< the same as a share of the mixing water, up to the next whole percent
    bool iceEnough = false;
};

struct PourWeather {
    double evaporationKgM2H = 0.0;  ///< of the plan's own conditions: air_c, concrete_c, humidity, wind
    double limitKgM2H = 0.0;        ///< the strictest of the mixes in use
    double mixC = 0.0;              ///< from the ingredients of the first mix in use; concreteC without any
    double workingMinutes = 0.0;    ///< at the plan's concrete_c
    std::vector<WeatherHour> hours; ///< 0 to 23, one a full hour
    double startH = 0.0;            ///< the plan's own
    double workH = 0.0;             ///< how long the day's work takes
    double bestStartH = 0.0;        ///< see bestStart
    double worstAtBestKgM2H = 0.0;  ///< greatest evaporation in that day of work
    double worstAtPlanKgM2H = 0.0;  ///< the same from the plan's own start
    bool frostTonight = false;      ///< it freezes before the concrete has kFrostProofMpa
    double frostAtH = 0.0;          ///< hours after the pour; 0 without frost
    double frostMpa = 0.0;          ///< mean strength it has then; likewise
    double lowC = 0.0;
    std::vector<Cooling> cooling;   ///< one where the mix is hotter than kWarmMixC; else empty
};

/// The day's weather at an hour of the day: any number, wraps round.
WeatherHour weatherAt(const Plan& plan, double hourOfDay);
/// Hours of work of the first day: as many batches as the quantities say, one after the other, with an hour for setting
/// up and cleaning (common practice, no source); not above the plan's own hours a day, and those without quantities.
double workHours(const Plan& plan, const std::vector<MixQuantities>& quantities);
/// The hour, from a start to the end of the work, in which most water leaves.
WeatherHour worstHour(const Plan& plan, double startH, double workH);
/// The full or half hour between kEarliestWorkH and kLatestWorkH at which to start: where the work stays above
/// kColdestMixC if any does (else where it is least cold), of those where the worst hour dries least, of those the
/// nearest to the plan's own. The plan's own, whatever it is, where none of these is better.
double bestStart(const Plan& plan, double workH);

/// `quantities` give the length of the day's work and what goes into a batch; without them the plan's own hours a day.
/// `findings` receives: evaporation_high (caution at the limit, stop at twice), mix_hot, mix_cold, frost_night, mix_differs,
/// ice_unsure (more than kMostIceShare); pointers to /conditions. Remedies with computed figures: better start, colder or
/// warmer water and ice as edits, the others as words.
PourWeather pourWeather(const Plan& plan, const std::vector<std::string>& mixesInUse, std::vector<Finding>& findings,
                        const std::vector<MixQuantities>& quantities = {});

/// Course of the castings' temperature after the pour: what was measured, then between low and high of the days.
TemperatureCourse courseOf(const Plan& plan);

}  // namespace yardcast
