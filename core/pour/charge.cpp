#include "core/pour/charge.h"

#include <algorithm>
#include <cmath>

#include "core/materials/materials.h"
#include "core/pour/table_points.h"

namespace yardcast {

namespace {

/// EN 206 5.2.5.2.3: k = 2.0 where the specified ratio is at most 0.45; above it 1.0 in classes XC and XF, which is
/// where anything outdoors belongs.
constexpr double kLowRatio = 0.45;
constexpr double kForLowRatio = 2.0;
constexpr double kOutdoors = 1.0;
/// Fibres above this share of the volume are a slip of the pen.
constexpr double kMostFibreShare = 0.5;
constexpr double kCubicMetreL = 1000.0;

bool isAmount(double value) { return value > 0.0 && value <= 1e6; }
bool isShare(double percent) { return percent >= 0.0 && percent <= 1000.0; }

double fibreShareOfVolume(const Mix& mix)
{
    double share = 0.0;
    for (const Fibre& fibre : mix.fibres) share += fibre.kgPerM3 / 1000 / fibreKgL(fibre.kind);
    return share;
}

double fibreDoseKgL(const Mix& mix)
{
    double dose = 0.0;
    for (const Fibre& fibre : mix.fibres) dose += fibre.kgPerM3 / 1000;
    return dose;
}

bool hasNumbers(const Bag& bag)
{
    return isAmount(bag.massKg) && isAmount(bagYieldL(bag)) && isAmount(bag.cementKg) && bag.waterL >= 0.0 &&
           bag.waterL <= 1e6;
}

bool hasNumbers(const Aggregate& aggregate)
{
    return isAmount(aggregate.densityKgM3) && isShare(aggregate.absorptionPercent) &&
           isShare(aggregate.moisturePercent);
}

bool hasNumbers(const Recipe& recipe)
{
    return isAmount(recipe.cementKgM3) && isAmount(recipe.waterLM3) && isAmount(recipe.cementBagKg) &&
           recipe.sandPercent >= 0.0 && recipe.sandPercent <= 100.0 && hasNumbers(recipe.sand) &&
           hasNumbers(recipe.gravel);
}

bool hasNumbers(const Mix& mix)
{
    const bool base = mix.recipe ? hasNumbers(*mix.recipe) : hasNumbers(mix.bag);
    const double airPercent = mix.airPercent.value_or(0.0);
    return base && isShare(mix.extraCementPercent) && isShare(mix.silicaFumePercent) &&
           isShare(mix.plasticiserPercent) && isShare(mix.pigmentPercent) && isShare(mix.allowancePercent) &&
           airPercent >= 0.0 && airPercent < 100.0 &&
           std::all_of(mix.fibres.begin(), mix.fibres.end(),
                       [](const Fibre& f) { return f.kgPerM3 >= 0.0 && f.kgPerM3 <= 1e6; });
}

void dose(const Mix& mix, Charge& charge)
{
    charge.fumeKg = charge.cementKg * mix.silicaFumePercent / 100;
    charge.plasticiserKg = charge.cementKg * mix.plasticiserPercent / 100;
    charge.pigmentKg = charge.cementKg * mix.pigmentPercent / 100;
}

void addFibres(const Mix& mix, Charge& charge)
{
    charge.fibresKg.clear();
    for (const Fibre& fibre : mix.fibres)
        charge.fibresKg.emplace_back(fibre.kind, fibre.kgPerM3 / 1000 * charge.litres);
}

double massWithoutFibresKg(const Charge& charge)
{
    const double solids = charge.perBag ? charge.dryMixKg + charge.extraCementKg
                                        : charge.cementKg + charge.sandKg + charge.gravelKg;
    return solids + charge.fumeKg + charge.plasticiserKg + charge.pigmentKg + charge.waterL;
}

/// What is added to the bag adds its own volume. The fibres' dose is of the mixed volume, which they are a part of:
/// litres = (all but fibres) / (1 - their share).
Charge bagCharge(const Mix& mix)
{
    Charge charge;
    charge.dryMixKg = mix.bag.massKg;
    charge.extraCementKg = mix.bag.massKg * mix.extraCementPercent / 100;
    charge.cementKg = mix.bag.cementKg + charge.extraCementKg;
    dose(mix, charge);
    charge.waterL = mix.bag.waterL;
    charge.effectiveWaterL = charge.waterL + kPlasticiserWaterShare * charge.plasticiserKg;
    const double withoutFibres = bagYieldL(mix.bag) + charge.extraCementKg / kCementKgL +
                                 charge.fumeKg / kSilicaFumeKgL + charge.plasticiserKg / kPlasticiserKgL +
                                 charge.pigmentKg / kPigmentKgL;
    charge.litres = withoutFibres / (1 - fibreShareOfVolume(mix));
    return charge;
}

struct Lying {
    double dryKg;
    double kg;         ///< as it lies
    double freeL;      ///< water it brings beyond what its pores take; negative: it drinks
    double absorbedL;  ///< in its pores once they are full
};

Lying lying(const Aggregate& aggregate, double litres)
{
    const double dryKg = litres * aggregate.densityKgM3 / 1000 / (1 + aggregate.absorptionPercent / 100);
    return {dryKg, dryKg * (1 + aggregate.moisturePercent / 100),
            dryKg * (aggregate.moisturePercent - aggregate.absorptionPercent) / 100,
            dryKg * aggregate.absorptionPercent / 100};
}

/// One m3: sand and gravel fill what is left.
Charge recipeCharge(const Mix& mix, const Recipe& recipe)
{
    Charge charge;
    charge.perBag = false;
    charge.litres = kCubicMetreL;
    charge.cementKg = recipe.cementKgM3;
    dose(mix, charge);
    const double plasticiserWaterL = kPlasticiserWaterShare * charge.plasticiserKg;
    charge.effectiveWaterL = recipe.waterLM3;
    charge.airL = mix.airPercent.value_or(entrappedAirPercent(recipe.maxAggregateMm)) / 100 * kCubicMetreL;
    const double roomL = kCubicMetreL * (1 - fibreShareOfVolume(mix)) - charge.airL - charge.effectiveWaterL -
                         charge.cementKg / kCementKgL - charge.fumeKg / kSilicaFumeKgL -
                         (charge.plasticiserKg / kPlasticiserKgL - plasticiserWaterL) - charge.pigmentKg / kPigmentKgL;
    const Lying sand = lying(recipe.sand, roomL * recipe.sandPercent / 100);
    const Lying gravel = lying(recipe.gravel, roomL * (100 - recipe.sandPercent) / 100);
    charge.sandDryKg = sand.dryKg;
    charge.sandKg = sand.kg;
    charge.gravelDryKg = gravel.dryKg;
    charge.gravelKg = gravel.kg;
    charge.moistureL = sand.freeL + gravel.freeL;
    charge.absorbedL = sand.absorbedL + gravel.absorbedL;
    charge.waterL = charge.effectiveWaterL - plasticiserWaterL - charge.moistureL;
    return charge;
}

Charge plannedWithoutFibres(const Mix& mix) { return mix.recipe ? recipeCharge(mix, *mix.recipe) : bagCharge(mix); }

void setWater(Charge& charge, double waterL)
{
    charge.effectiveWaterL += waterL - charge.waterL;
    charge.waterL = waterL;
}

}  // namespace

double Charge::fibreKg() const
{
    double sum = 0.0;
    for (const auto& [kind, kg] : fibresKg) sum += kg;
    return sum;
}

double entrappedAirPercent(double maxAggregateMm)
{
    static constexpr TableOf<6> kTable{
        {{9.5, 3.0}, {12.5, 2.5}, {19.0, 2.0}, {25.0, 1.5}, {37.5, 1.0}, {50.0, 0.5}}};
    return interpolated(kTable, maxAggregateMm);
}

MixFault faultOf(const Mix& mix)
{
    if (!hasNumbers(mix)) return MixFault::numbers;
    if (fibreShareOfVolume(mix) > kMostFibreShare) return MixFault::noRoom;
    if (!mix.recipe) return MixFault::none;
    const Charge charge = recipeCharge(mix, *mix.recipe);
    if (!(charge.sandDryKg >= 0.0 && charge.gravelDryKg >= 0.0 && charge.sandDryKg + charge.gravelDryKg > 0.0))
        return MixFault::noRoom;
    return charge.waterL >= 0.0 ? MixFault::none : MixFault::tooWet;
}

bool isUsable(const Mix& mix) { return faultOf(mix) == MixFault::none; }

Charge plannedChargeOf(const Mix& mix)
{
    Charge charge = plannedWithoutFibres(mix);
    addFibres(mix, charge);
    charge.massKg = massWithoutFibresKg(charge) + charge.fibreKg();
    charge.plannedLitres = charge.litres;
    return charge;
}

std::optional<double> trialDensityKgM3(const Mix& mix)
{
    if (!mix.trial || !isAmount(mix.trial->bucketL) || !isAmount(mix.trial->concreteKg)) return std::nullopt;
    const double density = mix.trial->concreteKg / mix.trial->bucketL * 1000;
    if (!(density >= 300.0 && density <= 5000.0) || fibreDoseKgL(mix) * 1000 > kMostFibreShare * density)
        return std::nullopt;
    return density;
}

Charge chargeOf(const Mix& mix)
{
    const std::optional<double> density = trialDensityKgM3(mix);
    Charge charge = plannedChargeOf(mix);
    if (!density) return charge;
    if (mix.trial->waterL && isAmount(*mix.trial->waterL)) setWater(charge, *mix.trial->waterL);
    // The dose of fibres is of the true volume: litres = (all but fibres) / (density - dose).
    const double byTrialL = massWithoutFibresKg(charge) / (*density / 1000 - fibreDoseKgL(mix));
    const bool wetter = charge.effectiveWaterL > plannedChargeOf(mix).effectiveWaterL || extraWaterByTrialL(mix) > 0.0;
    charge.byTrial = !wetter || byTrialL < charge.plannedLitres;
    charge.litres = charge.byTrial ? byTrialL : charge.plannedLitres;
    addFibres(mix, charge);
    charge.massKg = massWithoutFibresKg(charge) + charge.fibreKg();
    return charge;
}

Charge weighedChargeOf(const Mix& mix)
{
    Charge charge = chargeOf(mix);
    const double extraL = extraWaterByTrialL(mix);
    charge.effectiveWaterL += extraL;
    charge.waterL += extraL;
    return charge;
}

double extraWaterByTrialL(const Mix& mix)
{
    const std::optional<double> density = trialDensityKgM3(mix);
    if (!density) return 0.0;
    const Charge planned = plannedChargeOf(mix);
    const double saidL = mix.trial->waterL && isAmount(*mix.trial->waterL) ? *mix.trial->waterL : planned.waterL;
    const double massKg = planned.massKg + saidL - planned.waterL;
    const double litres = planned.litres + saidL - planned.waterL;
    const double kgL = *density / 1000;
    // (mass + x) / (litres + x) = density; lighter than water, no water explains it.
    if (!(litres > 0.0) || !(kgL < massKg / litres * (1 - kDensityTolerance)) || kgL <= 1.0) return 0.0;
    return (massKg - kgL * litres) / (kgL - 1);
}

double yieldSpreadPercent(const Mix& mix, const Charge& charge)
{
    const double bag = mix.bag.yieldSpreadPercent;
    if (!charge.byTrial) return bag;
    return std::min(bag, std::max(kSpreadLeftByTrial * bag, 100 * kDensityTolerance));
}

double litresAtSpread(const Mix& mix, const Charge& charge, double sign)
{
    const double spread = yieldSpreadPercent(mix, charge);
    if (!charge.perBag || !(spread > 0.0 && spread < 100.0)) return charge.litres;
    const double bagShare = bagYieldL(mix.bag) / (1 - fibreShareOfVolume(mix)) / charge.plannedLitres;
    return charge.litres * (1 + sign * bagShare * spread / 100);
}

double binderKKg(const Mix& mix, const Charge& charge)
{
    const double k = mix.maxWaterCement <= kLowRatio ? kForLowRatio : kOutdoors;
    return charge.cementKg + k * std::min(charge.fumeKg, kMostFumeShare * charge.cementKg);
}

Ratios ratiosOf(const Mix& mix, const Charge& charge)
{
    Ratios ratios;
    ratios.waterCement = charge.effectiveWaterL / charge.cementKg;
    if (charge.fumeKg > 0.0) ratios.kValue = mix.maxWaterCement <= kLowRatio ? kForLowRatio : kOutdoors;
    ratios.waterBinderK = charge.effectiveWaterL / binderKKg(mix, charge);
    ratios.waterBinderPlain = charge.effectiveWaterL / (charge.cementKg + charge.fumeKg);
    ratios.totalWaterCement = (charge.effectiveWaterL + charge.absorbedL) / charge.cementKg;
    return ratios;
}

double strengthByRatioMpa(double waterCement)
{
    static constexpr TableOf<6> kTable{
        {{0.42, 40.0}, {0.47, 35.0}, {0.54, 30.0}, {0.61, 25.0}, {0.69, 20.0}, {0.79, 15.0}}};
    constexpr double kWettest = 0.79;
    if (waterCement > kWettest) return 15.0 * std::pow(15.0 / 20.0, (waterCement - kWettest) / (kWettest - 0.69));
    return interpolated(kTable, waterCement);
}

}  // namespace yardcast
