#include "core/pour/proportioning.h"

#include <algorithm>
#include <cmath>

#include "core/materials/concrete_strength.h"
#include "core/materials/materials.h"
#include "core/pour/charge.h"
#include "core/pour/table_points.h"

namespace yardcast {

double mixingWaterKgM3(double maxAggregateMm)
{
    static constexpr TableOf<6> kTable{{{9.5, 228}, {12.5, 216}, {19, 205}, {25, 193}, {37.5, 181}, {50, 169}}};
    return interpolated(kTable, maxAggregateMm);
}

double ratioForStrength(double meanMpa)
{
    static constexpr TableOf<6> kTable{{{15, 0.79}, {20, 0.69}, {25, 0.61}, {30, 0.54}, {35, 0.47}, {40, 0.42}}};
    return interpolated(kTable, meanMpa);
}

double coarseVolumeShare(double maxAggregateMm, double finenessModulus)
{
    // Every row falls by 0.1 for each 1.0 of the fineness modulus; the column of 2.4 stands for the rest.
    static constexpr TableOf<5> kAt24{{{9.5, 0.50}, {12.5, 0.59}, {19, 0.66}, {25, 0.71}, {37.5, 0.75}}};
    return interpolated(kAt24, maxAggregateMm) - 0.1 * (std::clamp(finenessModulus, 2.4, 3.0) - 2.4);
}

double freshMassKgM3(double maxAggregateMm)
{
    static constexpr TableOf<6> kTable{{{9.5, 2280}, {12.5, 2310}, {19, 2345}, {25, 2380}, {37.5, 2410}, {50, 2445}}};
    return interpolated(kTable, maxAggregateMm);
}

Proportions proportion(const ProportionInput& input)
{
    Proportions result;
    result.waterKg = mixingWaterKgM3(input.maxAggregateMm);
    result.airPercent = entrappedAirPercent(input.maxAggregateMm);
    result.waterCement = std::min(ratioForStrength(input.meanMpa), input.mostWaterCement);
    result.cementKg = std::max(result.waterKg / result.waterCement, input.leastCementKgM3);
    result.gravelKg = coarseVolumeShare(input.maxAggregateMm, input.finenessModulus) * input.dryRoddedKgM3;
    result.sandByMassKg = freshMassKgM3(input.maxAggregateMm) - result.waterKg - result.cementKg - result.gravelKg;
    const double sandM3 = 1 - result.waterKg / 1000 - result.cementKg / (kCementKgL * 1000) -
                          result.gravelKg / input.gravelDryKgM3 - result.airPercent / 100;
    result.sandByVolumeKg = sandM3 * input.sandDryKgM3;
    return result;
}

Recipe startingRecipe(const Mix& mix, double mostWaterCement, double leastCementKgM3)
{
    Recipe recipe;
    const auto concrete = concreteProperties(readClass(mix.strengthClass).taken);
    recipe.maxAggregateMm = maxAggregateMm(mix) > 0.0 ? maxAggregateMm(mix) : recipe.maxAggregateMm;
    const auto dry = [](const Aggregate& a) { return a.densityKgM3 / (1 + a.absorptionPercent / 100); };
    ProportionInput input;
    input.meanMpa = concrete ? concrete->fcmMpa : input.meanMpa;
    input.maxAggregateMm = recipe.maxAggregateMm;
    input.sandDryKgM3 = dry(recipe.sand);
    input.gravelDryKgM3 = dry(recipe.gravel);
    if (mostWaterCement > 0.0) input.mostWaterCement = mostWaterCement;
    input.leastCementKgM3 = leastCementKgM3;
    const Proportions made = proportion(input);
    recipe.waterLM3 = std::round(made.waterKg);
    recipe.cementKgM3 = std::ceil(made.cementKg / 5) * 5;
    const double sandM3 = made.sandByVolumeKg / input.sandDryKgM3;
    const double gravelM3 = made.gravelKg / input.gravelDryKgM3;
    recipe.sandPercent = std::round(std::clamp(sandM3 / (sandM3 + gravelM3), 0.0, 1.0) * 100);
    return recipe;
}

}  // namespace yardcast
