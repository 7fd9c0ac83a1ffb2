#include "core/pour/pour_play.h"

#include <algorithm>
#include <utility>

#include "core/pour/charge.h"
#include "core/pour/pour_trials.h"

namespace yardcast {

namespace {

/// With as much ice in the place of water as the equation is trusted for; of the first mix in use.
double iceCoolsK(const Plan& plan, const std::vector<MixQuantities>& quantities)
{
    const Mix* mix = quantities.empty() ? nullptr : findMix(plan, quantities.front().mix);
    if (mix == nullptr || !isUsable(*mix)) return 0.0;
    const Charge charge = chargeOf(*mix);
    const Conditions& day = plan.conditions;
    const double materialsC = day.materialsC.value_or(day.airC);
    MixTemperatureInput input;
    // What is dry and no cement counts as aggregate, in a bag as well.
    input.aggregateKg = charge.dryMixKg > 0.0 ? charge.dryMixKg - (charge.cementKg - charge.extraCementKg)
                                              : charge.sandDryKg + charge.gravelDryKg;
    input.aggregateC = materialsC;
    input.cementKg = charge.cementKg + charge.fumeKg;
    input.cementC = materialsC;
    input.waterKg = charge.waterL;
    input.waterC = day.waterC;
    input.moistureKg = std::max(0.0, charge.moistureL);
    MixTemperatureInput iced = input;
    iced.iceKg = kMostIceShare * charge.waterL;
    iced.waterKg = charge.waterL - iced.iceKg;
    return std::max(0.0, mixTemperatureC(input) - mixTemperatureC(iced));
}

}  // namespace

PourPlayPtr playPour(const Plan& plan, const std::vector<CastingPtr>& castings,
                     const std::vector<MixQuantities>& quantities, int plays, std::uint64_t seed,
                     std::stop_token stop, const PourSpread& spread)
{
    std::vector<std::string> mixes;
    for (const MixQuantities& q : quantities) mixes.push_back(q.mix);
    PlayWorld world;
    world.weatherOf = [&](const Plan& changed) {
        std::vector<Finding> ignored;
        return pourWeather(changed, mixes, ignored);
    };
    world.iceCoolsK = [&](const Plan& changed) { return iceCoolsK(changed, quantities); };
    return playPourIn(world, plan, castings, quantities, plays, seed, std::move(stop), spread);
}

}  // namespace yardcast
