#pragma once

#include <vector>

#include "core/materials/temperature_course.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

/// The pour day's weather: what it does to fresh concrete, hour by hour.
namespace yardcast {

/// Uno (1998), ACI Materials Journal 95-M34: E = 5 ((Tc+18)^2.5 - r (Ta+18)^2.5) (V+4) 1e-6, kg/(m2 h); r relative
/// humidity as a share, V km/h. Never below 0. Real rates differ by some 40 % either way.
double evaporationKgM2H(double concreteC, double airC, double humidityShare, double windKmh);
/// Where care begins: 1.0, and 0.5 for mixes that hardly bleed (silica fume, fibres) (ACI 305R, from memory).
inline constexpr double kEvaporationLimit = 1.0;
inline constexpr double kEvaporationLimitLowBleed = 0.5;
double evaporationLimit(const Mix& mix);

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
/// Beyond this share of ice in the water the equation is not trusted (a public paper: wrong above 20 %, irrational
/// above 50 %); more is refused.
inline constexpr double kMostIceShare = 0.20;

/// Minutes the concrete can be worked: `minutesAt20` at 20 deg C, half for each 10 K more (F-78: from memory; the rule
/// that setting doubles and halves with 10 K is published for finishing windows).
double workingMinutes(double minutesAt20, double concreteC);
/// Above this the mix is too hot (ACI 305R, 35 deg C); below this it may freeze or hardly hardens (5 deg C).
inline constexpr double kHottestMixC = 35.0;
inline constexpr double kColdestMixC = 5.0;

struct WeatherHour {
    double hourOfDay = 0.0;
    double airC = 0.0;
    double humidityPercent = 0.0;   ///< the dew point of the day's mean is kept: drier when warmer
    double concreteC = 0.0;         ///< as mixed at that hour from materials that follow the air half-way
    double evaporationKgM2H = 0.0;
    double workingMinutes = 0.0;
};

/// Which way of cooling brings the mix to `targetC`, and by how much water.
struct Cooling {
    double targetC = 0.0;
    double fromC = 0.0;             ///< with tap water
    double coldWaterC = 0.0;        ///< water this cold is enough; not below 1
    bool coldWaterEnough = false;
    double icePerBatchKg = 0.0;     ///< in place of water; 0 where not needed or beyond kMostIceShare
    bool iceEnough = false;
};

struct PourWeather {
    double evaporationKgM2H = 0.0;  ///< of the plan's own conditions: air_c, concrete_c, humidity, wind
    double limitKgM2H = 0.0;        ///< the strictest of the mixes in use
    double mixC = 0.0;              ///< from the ingredients of the first mix in use; concreteC without any
    double workingMinutes = 0.0;    ///< at the plan's concrete_c
    std::vector<WeatherHour> hours; ///< 0 to 23, one a full hour
    double bestStartH = 0.0;        ///< of the hours in which the day's work fits, where the worst hour is mildest
    double worstAtBestKgM2H = 0.0;  ///< greatest evaporation in that day of work
    double worstAtPlanKgM2H = 0.0;  ///< the same from the plan's own start
    bool frostTonight = false;      ///< low below 0, or below kColdestMixC in the first night
    double lowC = 0.0;
    std::vector<Cooling> cooling;   ///< one where the mix is hotter than 25 deg C at the plan's start; else empty
};

/// `findings` receives: evaporation_high (caution at the limit, stop at twice), mix_hot, mix_cold, frost_night, wind...;
/// pointers to /conditions. Remedies as words with computed figures (better start, cold water, ice).
PourWeather pourWeather(const Plan& plan, const std::vector<std::string>& mixesInUse, std::vector<Finding>& findings);

/// Course of the castings' temperature after the pour: what was measured, then between low and high of the days.
TemperatureCourse courseOf(const Plan& plan);

}  // namespace yardcast
