#include "core/pour/charge.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/materials/materials.h"
#include "tests/core/pour/mix_samples.h"

namespace yardcast {
namespace {

/// Litres that all that goes in takes up by itself; the water in the pores of the grains is inside their volume.
double absoluteLitres(const Mix& mix, const Charge& charge)
{
    double litres = charge.fumeKg / kSilicaFumeKgL + charge.pigmentKg / kPigmentKgL;
    for (const auto& [kind, kg] : charge.fibresKg) litres += kg / fibreKgL(kind);
    const double plasticiserL = charge.plasticiserKg / kPlasticiserKgL;
    if (charge.perBag) return litres + bagYieldL(mix.bag) + charge.extraCementKg / kCementKgL + plasticiserL;
    const Recipe& recipe = *mix.recipe;
    const auto grains = [](const Aggregate& a, double dryKg) {
        return dryKg * (1 + a.absorptionPercent / 100) / a.densityKgM3 * 1000;
    };
    return litres + charge.cementKg / kCementKgL + grains(recipe.sand, charge.sandDryKg) +
           grains(recipe.gravel, charge.gravelDryKg) + charge.effectiveWaterL + plasticiserL -
           kPlasticiserWaterShare * charge.plasticiserKg + charge.airL;
}

double drySolidsKg(const Charge& c)
{
    return c.cementKg + c.fumeKg + c.pigmentKg + c.plasticiserKg * (1 - kPlasticiserWaterShare) + c.sandDryKg +
           c.gravelDryKg + c.fibreKg();
}

TEST(Charge, OfABagIsOneBag)
{
    const Charge charge = chargeOf(bagMix());
    EXPECT_TRUE(charge.perBag);
    EXPECT_EQ(charge.dryMixKg, 25.0);
    EXPECT_NEAR(charge.cementKg, 5.2, 1e-12);
    EXPECT_NEAR(charge.pigmentKg, 0.104, 1e-12);
    EXPECT_NEAR(charge.litres, absoluteLitres(bagMix(), charge), 1e-9);
    EXPECT_NEAR(charge.effectiveWaterL, 2.6 + 0.65 * 0.052, 1e-12);
    EXPECT_EQ(charge.plannedLitres, charge.litres);
    EXPECT_FALSE(charge.byTrial);
}

TEST(Charge, OfARecipeIsACubicMetre)
{
    const Charge charge = chargeOf(recipeMix());
    EXPECT_FALSE(charge.perBag);
    EXPECT_EQ(charge.litres, 1000.0);
    EXPECT_NEAR(absoluteLitres(recipeMix(), charge), 1000.0, 1e-9);
    EXPECT_NEAR(charge.airL, 30.0, 1e-12) << "grains of 8 mm: 3 %";
    // Sand and gravel share the volume that is left.
    EXPECT_NEAR(charge.sandDryKg * 1.007 / 2.640, charge.gravelDryKg * 1.005 / 2.680, 1e-9);
    EXPECT_NEAR(charge.sandKg, charge.sandDryKg * 1.05, 1e-9);
    // Each kind of water by itself.
    EXPECT_NEAR(charge.waterL + charge.moistureL + kPlasticiserWaterShare * charge.plasticiserKg, 180.0, 1e-9);
    // Nothing is lost: the mass is dry solids, all water outside the pores, and what the pores hold.
    EXPECT_NEAR(charge.massKg, drySolidsKg(charge) + charge.effectiveWaterL + charge.absorbedL, 1e-9);
}

TEST(Charge, StatedAirTakesThePlaceOfSandAndGravel)
{
    Mix mix = recipeMix();
    const Charge before = chargeOf(mix);
    mix.airPercent = 5.0;
    const Charge after = chargeOf(mix);
    EXPECT_NEAR(after.airL, 50.0, 1e-12);
    EXPECT_LT(after.sandDryKg, before.sandDryKg);
    EXPECT_NEAR(absoluteLitres(mix, after), 1000.0, 1e-9);
}

/// Whether the water comes from the tap or lies on the sand: concrete, ratio and density are the same.
TEST(Moisture, TheConcreteDoesNotKnowWhereItsWaterCameFrom)
{
    std::mt19937 random(20);
    std::uniform_real_distribution<double> wet(0.0, 6.0);
    const Charge dry = chargeOf([] {
        Mix mix = recipeMix();
        mix.recipe->sand.moisturePercent = mix.recipe->gravel.moisturePercent = 0;
        return mix;
    }());
    EXPECT_LT(dry.moistureL, 0.0) << "dry grains drink";
    for (int i = 0; i < 50; ++i) {
        Mix mix = recipeMix();
        mix.recipe->sand.moisturePercent = wet(random);
        mix.recipe->gravel.moisturePercent = wet(random) / 3;
        const Charge charge = chargeOf(mix);
        EXPECT_NEAR(charge.effectiveWaterL, dry.effectiveWaterL, 1e-9);
        EXPECT_NEAR(charge.massKg, dry.massKg, 1e-6);
        EXPECT_NEAR(charge.sandDryKg, dry.sandDryKg, 1e-9);
        EXPECT_NEAR(charge.waterL + charge.sandKg + charge.gravelKg, dry.waterL + dry.sandKg + dry.gravelKg, 1e-6);
        EXPECT_NEAR(ratiosOf(mix, charge).waterCement, ratiosOf(mix, dry).waterCement, 1e-12);
        // Read back the other way: what lies on the grains and comes from the tap is what the recipe asks for.
        const double onGrainsL = charge.sandKg - charge.sandDryKg + charge.gravelKg - charge.gravelDryKg;
        EXPECT_NEAR(charge.waterL + onGrainsL + kPlasticiserWaterShare * charge.plasticiserKg - charge.absorbedL,
                    mix.recipe->waterLM3, 1e-6);
    }
}

TEST(Moisture, SandAndGravelMayChangeNames)
{
    Mix mix = recipeMix();
    mix.recipe->sandPercent = 35;
    Mix mirrored = mix;
    std::swap(mirrored.recipe->sand, mirrored.recipe->gravel);
    mirrored.recipe->sandPercent = 65;
    const Charge a = chargeOf(mix);
    const Charge b = chargeOf(mirrored);
    EXPECT_NEAR(a.sandKg, b.gravelKg, 1e-9);
    EXPECT_NEAR(a.gravelKg, b.sandKg, 1e-9);
    EXPECT_NEAR(a.waterL, b.waterL, 1e-9);
    EXPECT_NEAR(a.massKg, b.massKg, 1e-6);
}

TEST(TrialBatch, ABucketAsPlannedChangesNothing)
{
    for (Mix mix : {bagMix(), recipeMix()}) {
        const Charge planned = chargeOf(mix);
        mix.trial = TrialBatch{10, planned.densityKgM3() / 100, {}, {}};
        const Charge weighed = chargeOf(mix);
        EXPECT_TRUE(weighed.byTrial);
        EXPECT_NEAR(weighed.litres, planned.litres, 1e-9 * planned.litres);
        EXPECT_NEAR(weighed.fibreKg(), planned.fibreKg(), 1e-9);
        EXPECT_EQ(extraWaterByTrialL(mix), 0.0);
    }
}

TEST(TrialBatch, ABucketThatIsNotWetGivesItsLitresAndFibres)
{
    for (const double share : {0.985, 1.04}) {
        for (Mix mix : {bagMix(), recipeMix()}) {
            const Charge planned = chargeOf(mix);
            mix.trial = TrialBatch{10, planned.densityKgM3() / 100 * share, {}, {}};
            const Charge weighed = chargeOf(mix);
            EXPECT_NEAR(weighed.densityKgM3(), planned.densityKgM3() * share, 1e-9 * planned.densityKgM3());
            EXPECT_GT((weighed.litres - planned.litres) * (1 - share), 0.0);
            // The dose of each kind of fibre is still that of the true volume.
            for (std::size_t i = 0; i < mix.fibres.size(); ++i)
                EXPECT_NEAR(weighed.fibresKg[i].second / weighed.litres * 1000, mix.fibres[i].kgPerM3, 1e-9);
            EXPECT_EQ(weighed.cementKg, planned.cementKg);
            EXPECT_EQ(weighed.plannedLitres, planned.litres);
        }
    }
}

/// Water that should not be there fills no mould: nobody buys fewer bags for a mistake at the mixer.
TEST(TrialBatch, AWetOneIsMixedAgainAndSavesNoBags)
{
    for (Mix mix : {bagMix(), recipeMix()}) {
        const Charge planned = chargeOf(mix);
        mix.trial = TrialBatch{10, planned.densityKgM3() / 100 * 0.9, {}, {}};
        const Charge again = chargeOf(mix);
        EXPECT_EQ(again.litres, planned.litres);
        EXPECT_EQ(again.waterL, planned.waterL);
        EXPECT_FALSE(again.byTrial);
        // The ratio is that of the bucket.
        const Charge weighed = weighedChargeOf(mix);
        EXPECT_NEAR(weighed.effectiveWaterL, planned.effectiveWaterL + extraWaterByTrialL(mix), 1e-12);
        EXPECT_EQ(weighed.litres, planned.litres);
        // Likewise where the maker says that more water went in.
        mix.trial = TrialBatch{10, planned.densityKgM3() / 100 * 0.97, planned.waterL * 1.3, {}};
        EXPECT_LE(chargeOf(mix).litres, planned.litres);
    }
}

/// Water too much is found again from the density that it makes.
TEST(TrialBatch, WaterTooMuchIsReadOffTheDensity)
{
    for (Mix mix : {bagMix(), recipeMix()}) {
        const Charge planned = chargeOf(mix);
        const double extra = planned.litres * 0.06;
        const double density = (planned.massKg + extra) / (planned.litres + extra);
        mix.trial = TrialBatch{10, density * 10, {}, {}};
        EXPECT_NEAR(extraWaterByTrialL(mix), extra, 1e-9 * planned.litres);
        // Said to have gone in, the same water is no riddle and counts in the ratio.
        mix.trial->waterL = planned.waterL + extra;
        EXPECT_NEAR(extraWaterByTrialL(mix), 0.0, 1e-9);
        const Charge said = chargeOf(mix);
        EXPECT_NEAR(said.effectiveWaterL, planned.effectiveWaterL + extra, 1e-9);
        EXPECT_GT(ratiosOf(mix, said).waterCement, ratiosOf(mix, planned).waterCement);
    }
}

TEST(TrialBatch, WithinTwoPercentIsNoWater)
{
    Mix mix = bagMix();
    mix.trial = TrialBatch{10, chargeOf(mix).densityKgM3() / 100 * 0.985, {}, {}};
    EXPECT_EQ(extraWaterByTrialL(mix), 0.0);
}

TEST(TrialBatch, WhatIsNoConcreteIsNotBelieved)
{
    Mix mix = bagMix();
    const double masses[] = {0.0, -5.0, 1.0, 600.0, NAN, HUGE_VAL};
    for (const double kg : masses) {
        mix.trial = TrialBatch{10, kg, {}, {}};
        EXPECT_FALSE(trialDensityKgM3(mix).has_value()) << kg;
        EXPECT_FALSE(chargeOf(mix).byTrial) << kg;
    }
}

TEST(Fault, SaysWhyThereIsNoConcrete)
{
    EXPECT_EQ(faultOf(bagMix()), MixFault::none);
    EXPECT_EQ(faultOf(recipeMix()), MixFault::none);
    Mix full = recipeMix();
    full.recipe->cementKgM3 = 2000;
    full.recipe->waterLM3 = 500;
    EXPECT_EQ(faultOf(full), MixFault::noRoom);
    Mix soaked = recipeMix();
    soaked.recipe->sand.moisturePercent = 30;
    EXPECT_EQ(faultOf(soaked), MixFault::tooWet);
    Mix felt = bagMix();
    felt.fibres = {Fibre{"PP", 600, {}}};
    EXPECT_EQ(faultOf(felt), MixFault::noRoom);
}

TEST(Fault, BrokenNumbersOfARecipeAreNeverUsable)
{
    const double values[] = {-1.0, NAN, HUGE_VAL, -HUGE_VAL, 1e300};
    for (const double bad : values) {
        for (int field = 0; field < 9; ++field) {
            Mix mix = recipeMix();
            Recipe& r = *mix.recipe;
            double* fields[] = {&r.cementKgM3, &r.waterLM3, &r.sandPercent, &r.sand.densityKgM3,
                                &r.sand.absorptionPercent, &r.gravel.moisturePercent, &r.cementBagKg,
                                &mix.pigmentPercent, &mix.fibres[0].kgPerM3};
            *fields[field] = bad;
            EXPECT_FALSE(isUsable(mix)) << field << ' ' << bad;
        }
    }
}

TEST(Spread, IsThatOfTheBagAlone)
{
    Mix mix = bagMix();
    mix.fibres.clear();
    const Charge charge = chargeOf(mix);
    EXPECT_NEAR(charge.litres - litresAtSpread(mix, charge, -1), 0.04 * 12.0, 1e-12);
    EXPECT_NEAR(litresAtSpread(mix, charge, 1) - charge.litres, 0.04 * 12.0, 1e-12);
    const Charge recipe = chargeOf(recipeMix());
    EXPECT_EQ(litresAtSpread(recipeMix(), recipe, -1), recipe.litres);
}

TEST(Spread, AWeighedBatchHalvesItDownToWhatABucketIsReadTo)
{
    Mix mix = bagMix();
    mix.fibres.clear();
    const auto shareOf = [&](double spreadPercent) {
        mix.bag.yieldSpreadPercent = spreadPercent;
        const Charge charge = chargeOf(mix);
        EXPECT_TRUE(charge.byTrial);
        return (charge.litres - litresAtSpread(mix, charge, -1)) / charge.litres * charge.plannedLitres / 12.0;
    };
    const double kgL = plannedChargeOf(mix).densityKgM3() / 1000;
    mix.trial = TrialBatch{};
    mix.trial->bucketL = 10;
    mix.trial->concreteKg = 10 * kgL * 0.99;
    EXPECT_NEAR(shareOf(10.0), 0.05, 1e-12);
    EXPECT_NEAR(shareOf(3.0), 0.02, 1e-12);
    EXPECT_NEAR(shareOf(1.0), 0.01, 1e-12);
}

TEST(Ratios, WithoutFumeAllAreTheSame)
{
    Mix mix = bagMix();
    mix.silicaFumePercent = 0;
    const Ratios ratios = ratiosOf(mix, chargeOf(mix));
    EXPECT_EQ(ratios.waterBinderK, ratios.waterCement);
    EXPECT_EQ(ratios.waterBinderPlain, ratios.waterCement);
    EXPECT_EQ(ratios.totalWaterCement, ratios.waterCement);
    EXPECT_EQ(ratios.kValue, 0.0);
}

TEST(Ratios, WaterInPoresCountsInTheTotalOnly)
{
    const Mix mix = recipeMix();
    const Charge charge = chargeOf(mix);
    const Ratios ratios = ratiosOf(mix, charge);
    EXPECT_NEAR(ratios.waterCement, 0.45, 1e-12);
    EXPECT_NEAR(ratios.waterBinderPlain, 180.0 / 420.0, 1e-12);
    EXPECT_NEAR(ratios.totalWaterCement, (180.0 + charge.absorbedL) / 400.0, 1e-12);
    EXPECT_GT(charge.absorbedL, 5.0);
}

TEST(StrengthByRatio, FallsWithWaterAndIsFlatBeyondTheTable)
{
    double before = 41.0;
    for (double ratio = 0.42; ratio < 0.80; ratio += 0.01) {
        EXPECT_LT(strengthByRatioMpa(ratio), before);
        before = strengthByRatioMpa(ratio);
    }
    EXPECT_EQ(strengthByRatioMpa(0.2), 40.0);
    // Beyond the table: 15 of 20 MPa for each 0.10 more.
    EXPECT_NEAR(strengthByRatioMpa(0.89), 11.25, 1e-9);
    EXPECT_NEAR(strengthByRatioMpa(0.99), 8.4375, 1e-9);
}

}  // namespace
}  // namespace yardcast
