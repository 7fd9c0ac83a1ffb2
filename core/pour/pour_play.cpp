#include "core/pour/pour_play.h"

#include <algorithm>
#include <utility>

#include "core/pour/charge.h"
#include "core/pour/pour_trials.h"

namespace yardcast {

namespace {

/// How much cooler the first mix in use comes out, K.
double coolsK(const Plan& plan, const std::vector<MixQuantities>& quantities, double waterC, double iceShare)
{
    const Mix* mix = quantities.empty() ? nullptr : findMix(plan, quantities.front().mix);
    if (mix == nullptr || !isUsable(*mix)) return 0.0;
    const Charge charge = chargeOf(*mix);
    const double materialsC = plan.conditions.materialsC.value_or(plan.conditions.airC);
    const double ownShare = iceShareOf(plan);
    const MixTemperatureInput own = mixTemperatureInput(charge, materialsC, plan.conditions.waterC, ownShare);
    const MixTemperatureInput cooled =
        mixTemperatureInput(charge, materialsC, waterC, std::max(ownShare, iceShare));
    return std::max(0.0, mixTemperatureC(own) - mixTemperatureC(cooled));
}

}  // namespace

PourPlayPtr playPour(const Plan& plan, const std::vector<CastingPtr>& castings,
                     const std::vector<MixQuantities>& quantities, int plays, std::uint64_t seed,
                     std::stop_token stop, const PourSpread& spread)
{
    PlayWorld world;
    world.weatherOf = [](const Plan& changed) {
        PourWeather weather;
        for (int hour = 0; hour < 24; ++hour) weather.hours.push_back(weatherAt(changed, hour));
        return weather;
    };
    world.coolsK = [&](const Plan& changed, double waterC, double iceShare) {
        return coolsK(changed, quantities, waterC, iceShare);
    };
    return playPourIn(world, plan, castings, quantities, plays, seed, std::move(stop), spread);
}

}  // namespace yardcast
