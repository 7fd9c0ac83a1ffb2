#include <algorithm>

#include "core/pour/weather.h"

namespace yardcast {

namespace {

constexpr double kSolidHeat = 0.22;  ///< of water's
constexpr double kMeltingK = 79.6;

double heat(const MixTemperatureInput& in)
{
    return kSolidHeat * (in.aggregateKg + in.cementKg) + in.waterKg + in.moistureKg + in.iceKg;
}

double heatTimesC(const MixTemperatureInput& in)
{
    return kSolidHeat * (in.aggregateKg * in.aggregateC + in.cementKg * in.cementC) + in.waterKg * in.waterC +
           in.moistureKg * in.aggregateC - kMeltingK * in.iceKg;
}

}  // namespace

double mixTemperatureC(const MixTemperatureInput& input)
{
    const double all = heat(input);
    return all > 0.0 ? heatTimesC(input) / all : 0.0;
}

double iceShareOf(const Plan& plan)
{
    const double share = plan.conditions.icePercent / 100;
    return share > 0.0 ? std::min(share, kMostIceInWater) : 0.0;
}

MixTemperatureInput mixTemperatureInput(const Charge& charge, double materialsC, double waterC, double iceShare)
{
    MixTemperatureInput in;
    // In a bag the cement lies mixed with its aggregate: only both together are known, at one temperature.
    in.cementKg = charge.cementKg + charge.fumeKg;
    in.aggregateKg = charge.perBag
        ? std::max(charge.dryMixKg + charge.extraCementKg - charge.cementKg, 0.0)
        : charge.sandDryKg + charge.gravelDryKg;
    in.aggregateC = in.cementC = materialsC;
    const double waterKg = std::max(charge.waterL, 0.0);
    in.iceKg = iceShare * waterKg;
    in.waterKg = waterKg - in.iceKg;
    in.waterC = waterC;
    in.moistureKg = std::max(charge.moistureL, 0.0);
    return in;
}

double waterForC(const MixTemperatureInput& input, double targetC)
{
    if (!(input.waterKg > 0.0)) return input.waterC;
    return input.waterC + (targetC * heat(input) - heatTimesC(input)) / input.waterKg;
}

}  // namespace yardcast
