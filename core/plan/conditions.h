#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/file_source.h"

/// The day of the pour, the days after it, and the season.
namespace yardcast {

/// A temperature of the concrete that was read off a thermometer; it holds until the next reading.
struct MeasuredTemperature {
    double h = 0.0;  ///< hours since the pour
    double c = 0.0;
    FileSource source;
    friend bool operator==(const MeasuredTemperature&, const MeasuredTemperature&) = default;
};

/// Weather and concrete temperature of the pour day.
struct Conditions {
    double airC = 20.0;
    std::optional<double> highC;  ///< default airC
    std::optional<double> lowC;   ///< default airC
    double humidityPercent = 60.0;
    double windKmh = 5.0;
    double concreteC = 20.0;
    double waterC = 15.0;                ///< of the tap
    double icePercent = 0.0;             ///< of the mixing water by mass, put in as ice in its place; 0 to 75
    std::optional<double> materialsC;    ///< of cement, bags and aggregates as they lie; default airC
    std::vector<MeasuredTemperature> measured;  ///< in rising order; in place of the day's course as far as they reach
    FileSource source;
    friend bool operator==(const Conditions&, const Conditions&) = default;
};

/// How the pours are to be done. Hours are hours of the day.
struct Pouring {
    double startH = 8.0;                  ///< when the first batch is begun
    double hours = 9.0;                   ///< of work in a day
    std::vector<std::string> order;       ///< ids of castings; those not named follow by the program's own order
    std::optional<int> moulds;            ///< how many castings may lie in moulds at one time; default: no bound
    /// To lay steel or foam into one casting between its layers; nothing is mixed meanwhile. Common practice, no source.
    double layingMinutes = 10.0;
    double workingMinutes = 75.0;         ///< how long the concrete can be worked at 20 deg C, see core/pour/weather.h
    FileSource source;
    friend bool operator==(const Pouring&, const Pouring&) = default;
};

/// Usual weather of one month, where the kitchen stands.
struct MonthWeather {
    int month = 1;  ///< 1 to 12
    double lowC = 10.0;
    double highC = 20.0;
    double humidityPercent = 60.0;
    double windKmh = 5.0;
    FileSource source;
    friend bool operator==(const MonthWeather&, const MonthWeather&) = default;
};

}  // namespace yardcast
