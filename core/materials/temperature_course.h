#pragma once

#include <vector>

#include "core/materials/concrete_strength.h"

/// Temperature of a casting through the hours after the pour, and the age it gives. Hours, deg C.
namespace yardcast {

/// A reading that holds until the next one.
struct TemperatureReading {
    double h = 0.0;
    double c = 0.0;
    friend bool operator==(const TemperatureReading&, const TemperatureReading&) = default;
};

/// What the concrete's temperature does: readings first, as far as they reach, then the day's wave without end. A thin
/// casting follows the air within an hour or two; its own heat, which would make it older, is not counted (safe).
struct TemperatureCourse {
    std::vector<TemperatureReading> readings;  ///< in rising order, each until the next; for the last see courseAtC
    double lowC = 20.0;         ///< of the wave, at kColdestH of the day
    double highC = 20.0;        ///< at kWarmestH
    double startH = 8.0;        ///< hour of the day of the pour
    friend bool operator==(const TemperatureCourse&, const TemperatureCourse&) = default;
};
/// Common practice, no source: coldest about sunrise, warmest in mid-afternoon; between them half waves of a cosine.
inline constexpr double kColdestH = 5.0;
inline constexpr double kWarmestH = 15.0;

/// Air of a day with this low and high at an hour of the day (any number; wraps round).
double airAtHourC(double lowC, double highC, double hourOfDay);
/// Temperature `h` hours after the pour. Before the first reading and after the last it is the day's wave; the last
/// reading holds as long as the one before it did, a single one for an hour.
double courseAtC(const TemperatureCourse& course, double h);
/// Eq. B.10 of EN 1992-1-1 integrated over the course, days at 20 deg C (0.9981 a day at 20 deg C, as that gives
/// it); the integral is exact to 1e-6. Below 0 deg C nothing is counted, above 80 as at 80.
double equivalentAgeDays(const TemperatureCourse& course, double ageH);
/// The same over readings alone: each holds until the next, the last until `endH`; before the first nothing is known,
/// nothing is counted.
double equivalentAgeDays(const std::vector<TemperatureReading>& readings, double endH);
/// The age in hours at which the equivalent age reaches `days`; infinity where it never does within `mostH`.
double hoursToEquivalentAge(const TemperatureCourse& course, double days, double mostH = 24.0 * 365);
/// Concrete `ageH` hours after its pour.
StrengthAtAge strengthAtAge(const ConcreteProperties& concrete, double s, double ageH, const TemperatureCourse& course);

/// ASTM C1074: Nurse-Saul maturity at `endH`, deg C h, datum temperature T0; nothing below counts. Readings as above.
double nurseSaulMaturity(const std::vector<TemperatureReading>& readings, double endH, double datumC);
/// ASTM C1074: equivalent age in hours at `referenceC`, with Q = E/R in kelvin (5000 usual, from memory). Readings as
/// above.
double equivalentAgeH(const std::vector<TemperatureReading>& readings, double endH, double qKelvin, double referenceC);

}  // namespace yardcast
