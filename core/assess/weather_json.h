#pragma once

#include "core/assess/assessment.h"
#include "core/assess/json_tools.h"

/// Inner seam of the JSON of an assessment: the pour day's weather and curing.
namespace yardcast {

Json weatherJson(const PourWeather& weather);
Json curingJson(const std::vector<Curing>& curing);

}  // namespace yardcast
