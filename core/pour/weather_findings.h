#pragma once

#include "core/pour/weather.h"

/// Inner seam of the pour day's weather.
namespace yardcast {

/// What the weather has to say, with remedies that were worked out. `input` is that of the first mix in use; without
/// any water in it nothing is said about cooling.
void addWeatherFindings(const Plan& plan, const PourWeather& weather, const MixTemperatureInput& input,
                        std::vector<Finding>& findings);

}  // namespace yardcast
