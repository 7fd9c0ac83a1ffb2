#include <gtest/gtest.h>

#include "core/materials/concrete_strength.h"
#include "core/materials/materials.h"
#include "core/pour/mix_limits.h"
#include "core/pour/mix_quantities.h"
#include "core/pour/proportioning.h"

namespace yardcast {
namespace {

/// ACI 211.1-91, metric example 1 (appendix 2; figures from memory, each step checked by hand). Concrete below ground,
/// 24 MPa, slump 75 to 100 mm, grains to 37.5 mm; cement 3.15, gravel 2.68, absorption 0.5 %, rodded 1600 kg/m3; sand
/// 2.64, absorption 0.7 %, fineness modulus 2.8. Water 181 kg, air 1 %, ratio 0.62, cement 181 / 0.62 = 292 kg, coarse
/// volume 0.71 x 1600 = 1136 kg, fresh mass 2410: sand 2410 - 181 - 292 - 1136 = 801 kg.
ProportionInput exampleInput()
{
    ProportionInput input;
    input.meanMpa = 24;
    input.maxAggregateMm = 37.5;
    input.finenessModulus = 2.8;
    input.dryRoddedKgM3 = 1600;
    input.sandDryKgM3 = 2640;
    input.gravelDryKgM3 = 2680;
    input.mostWaterCement = 0.62;  // the example rounds what the table gives (0.626) down
    return input;
}

TEST(Aci211, TheWholeExampleByMass)
{
    EXPECT_NEAR(ratioForStrength(24), 0.62, 0.01);
    const Proportions made = proportion(exampleInput());
    EXPECT_EQ(made.waterKg, 181);
    EXPECT_EQ(made.airPercent, 1.0);
    EXPECT_EQ(made.waterCement, 0.62);
    EXPECT_NEAR(made.cementKg, 292, 0.5);
    EXPECT_NEAR(coarseVolumeShare(37.5, 2.8), 0.71, 1e-12);
    EXPECT_NEAR(made.gravelKg, 1136, 1e-9);
    EXPECT_NEAR(made.sandByMassKg, 801, 0.5);
}

/// The same by absolute volumes: 1 - 0.181 - 0.093 - 0.424 - 0.010 = 0.292 m3 of sand, 772 kg.
TEST(Aci211, TheWholeExampleByAbsoluteVolumes)
{
    const Proportions made = proportion(exampleInput());
    EXPECT_NEAR(made.sandByVolumeKg, 772, 1.5);  // 771 with the volumes rounded to a litre as above
}

/// The example goes on: sand with 6 % and gravel with 2 % of water. Gravel 1136 x 1.02 = 1159 kg wet, sand x 1.06; the
/// water to add is 181 less 1136 x (2 - 0.5) % and sand x (6 - 0.7) %. With the sand by mass, 801 kg, that is 849 kg
/// of wet sand and 122 kg of water. Here a recipe, sand by absolute volumes.
TEST(Aci211, MoistureOfSandAndGravel)
{
    const Proportions made = proportion(exampleInput());
    Mix mix;
    mix.id = "m";
    Recipe recipe;
    recipe.cementKgM3 = made.cementKg;
    recipe.waterLM3 = made.waterKg;
    recipe.maxAggregateMm = 37.5;
    // The example's densities are of dry grains; a recipe's are of grains with their pores full.
    recipe.sand = Aggregate{2640 * 1.007, 0.7, 6, {}};
    recipe.gravel = Aggregate{2680 * 1.005, 0.5, 2, {}};
    const double sandM3 = made.sandByVolumeKg / 2640;
    recipe.sandPercent = sandM3 / (sandM3 + made.gravelKg / 2680) * 100;
    mix.recipe = recipe;
    const Charge charge = chargeOf(mix);
    EXPECT_NEAR(charge.gravelKg, 1159, 0.5);
    EXPECT_NEAR(charge.gravelDryKg, 1136, 1e-6);
    EXPECT_NEAR(charge.sandDryKg, made.sandByVolumeKg, 1e-6);
    EXPECT_NEAR(charge.sandKg, made.sandByVolumeKg * 1.06, 1e-6);
    EXPECT_NEAR(charge.waterL, 181 - 1136 * 0.015 - made.sandByVolumeKg * 0.053, 1e-6);
    EXPECT_NEAR(801 * 1.06, 849, 0.5);
    EXPECT_NEAR(181 - 1136 * 0.015 - 801 * 0.053, 122, 0.6);
    // Absolute volumes lose nothing: the m3 weighs what its parts weigh, near the first estimate of 2410.
    EXPECT_NEAR(charge.densityKgM3(), 2410, 30);
    EXPECT_NEAR(ratiosOf(mix, charge).waterCement, 0.62, 1e-9);
}

/// The tables themselves, at their rows (from memory).
TEST(Aci211, Tables)
{
    const double grains[] = {9.5, 12.5, 19, 25, 37.5};
    const double water[] = {228, 216, 205, 193, 181};
    const double air[] = {3, 2.5, 2, 1.5, 1};
    const double coarse[5][4] = {{0.50, 0.48, 0.46, 0.44},
                                 {0.59, 0.57, 0.55, 0.53},
                                 {0.66, 0.64, 0.62, 0.60},
                                 {0.71, 0.69, 0.67, 0.65},
                                 {0.75, 0.73, 0.71, 0.69}};
    for (int i = 0; i < 5; ++i) {
        EXPECT_EQ(mixingWaterKgM3(grains[i]), water[i]);
        EXPECT_EQ(entrappedAirPercent(grains[i]), air[i]);
        for (int j = 0; j < 4; ++j) EXPECT_NEAR(coarseVolumeShare(grains[i], 2.4 + 0.2 * j), coarse[i][j], 1e-9);
    }
    const double mean[] = {40, 35, 30, 25, 20, 15};
    const double ratio[] = {0.42, 0.47, 0.54, 0.61, 0.69, 0.79};
    for (int i = 0; i < 6; ++i) {
        EXPECT_NEAR(ratioForStrength(mean[i]), ratio[i], 1e-12);
        EXPECT_NEAR(strengthByRatioMpa(ratio[i]), mean[i], 1e-9);
    }
}

/// A recipe that the program starts a maker with holds what it was asked for.
TEST(Aci211, AStartingRecipeHoldsItsRatioAndCement)
{
    for (const char* name : {"C20/25", "C25/30", "C30/37", "C35/45"}) {
        Mix mix;
        mix.id = "m";
        mix.strengthClass = name;
        mix.recipe = startingRecipe(mix, 0.50, 320);
        ASSERT_TRUE(isUsable(mix)) << name;
        const Charge charge = chargeOf(mix);
        const double ratio = ratiosOf(mix, charge).waterCement;
        EXPECT_LE(ratio, 0.50);
        EXPECT_GE(charge.cementKg, 320);
        // Beyond the table (40 MPa) it has no ratio to give.
        const double mean = concreteProperties(name)->fcmMpa;
        EXPECT_GE(strengthByRatioMpa(ratio) + 1e-9, std::min(mean, 40.0)) << name;
    }
}

/// EN 206-1:2000 Table F.1, row by row (informative; verified against a public copy of the standard).
TEST(En206TableF1, EveryClass)
{
    struct Row {
        Exposure exposure;
        double ratio, fck, cement;
    };
    const Row rows[] = {
        {Exposure::x0, 0, 12, 0},       {Exposure::xc1, .65, 20, 260}, {Exposure::xc2, .60, 25, 280},
        {Exposure::xc3, .55, 30, 280},  {Exposure::xc4, .50, 30, 300}, {Exposure::xs1, .50, 30, 300},
        {Exposure::xs2, .45, 35, 320},  {Exposure::xs3, .45, 35, 340}, {Exposure::xd1, .55, 30, 300},
        {Exposure::xd2, .55, 30, 300},  {Exposure::xd3, .45, 35, 320},
    };
    for (const Row& row : rows) {
        const ExposureLimits limits = limitsOf(row.exposure);
        EXPECT_EQ(limits.maxWaterCement, row.ratio);
        EXPECT_EQ(limits.minFckMpa, row.fck);
        EXPECT_EQ(limits.minCementKgM3, row.cement);
        EXPECT_EQ(limits.minAirPercent, 0.0);
    }
    struct FrostRow {
        Frost frost;
        double ratio, fck, cement, air;
    };
    for (const FrostRow& row : {FrostRow{Frost::xf1, .55, 30, 300, 0}, FrostRow{Frost::xf2, .55, 25, 300, 4},
                                FrostRow{Frost::xf3, .50, 30, 320, 4}, FrostRow{Frost::xf4, .45, 30, 340, 4}}) {
        const ExposureLimits limits = limitsOf(row.frost);
        EXPECT_EQ(limits.maxWaterCement, row.ratio);
        EXPECT_EQ(limits.minFckMpa, row.fck);
        EXPECT_EQ(limits.minCementKgM3, row.cement);
        EXPECT_EQ(limits.minAirPercent, row.air);
    }
}

/// An outdoor counter in rain and frost (XC4 and XF3): at most 0.50 and at least 320 kg of cement, C30/37, 4 % of air;
/// judged on one m3 with 350 kg of cement, 28 kg of fume and 160 l of water: 160 / 378 = 0.423, 378 kg.
TEST(En206TableF1, AnOutdoorCounter)
{
    Plan plan;
    Mix mix;
    mix.id = "m";
    mix.strengthClass = "C30/37";
    mix.bag = Bag{2200, 1000 - 28 / 2.2, 160, 350, 8, {}, 4, {}};  // with the fume it fills one m3
    mix.silicaFumePercent = 8;
    mix.airPercent = 4.5;
    plan.mixes = {mix};
    const MixCheck good = checkMix(plan, mix);
    EXPECT_NEAR(good.cementKgM3, 350, 1e-6);
    int rows = 0;
    for (const LimitCheck& row : good.limits) {
        if (row.by != "XF3") continue;
        ++rows;
        EXPECT_TRUE(row.met.value_or(false)) << static_cast<int>(row.what);
        if (row.what == LimitCheck::What::waterCement) {
            EXPECT_NEAR(row.is, 0.423, 0.0005);
        }
        if (row.what == LimitCheck::What::cement) {
            EXPECT_NEAR(row.is, 378, 1e-6);
        }
    }
    EXPECT_EQ(rows, 4);
    // 310 kg and as much fume share: 310 + 24.8 is enough for 320; without fume it is not.
    mix.bag.cementKg = 310;
    const auto cementMet = [&](const Mix& m) {
        for (const LimitCheck& row : checkMix(plan, m).limits) {
            if (row.by == "XF3" && row.what == LimitCheck::What::cement) return row.met.value_or(false);
        }
        return false;
    };
    EXPECT_TRUE(cementMet(mix));
    mix.silicaFumePercent = 0;
    EXPECT_FALSE(cementMet(mix));
}

/// EN 206 5.2.5.2.3 (from memory): fume replaces at most 30 kg of the cement where the minimum is at most 300.
TEST(En206, FumeReplacesThirtyKilogramsAtMost)
{
    Plan plan;
    plan.assumptions.emplace().frost = Frost::none;  // XC4: 300 kg
    Mix mix;
    mix.id = "m";
    mix.maxWaterCement = 0.45;                        // k = 2
    mix.silicaFumePercent = 11;
    const auto cement = [&](double kg) {
        mix.bag = Bag{2200, 1000 - kg * 0.11 / 2.2, 120, kg, 8, {}, 4, {}};
        for (const LimitCheck& row : checkMix(plan, mix).limits) {
            if (row.what == LimitCheck::What::cement) return row;
        }
        return LimitCheck{};
    };
    EXPECT_NEAR(cement(260).is, 290, 1e-6) << "260 + 2 x 28.6 = 317, but no more than 30 kg count";
    EXPECT_FALSE(cement(260).met.value_or(true));
    EXPECT_TRUE(cement(271).met.value_or(false));
}

/// EN 206 5.2.6: at most 50 g of admixtures to a kg of cement.
TEST(En206, FiftyGramsOfAdmixture)
{
    Plan plan;
    Mix mix;
    mix.id = "m";
    const auto met = [&](double percent) {
        mix.plasticiserPercent = percent;
        for (const LimitCheck& row : checkMix(plan, mix).limits) {
            if (row.what == LimitCheck::What::plasticiser) return row.met.value_or(false);
        }
        return false;
    };
    EXPECT_TRUE(met(5.0));
    EXPECT_FALSE(met(5.01));
}

/// Yield of a bag that states only a density: (25 + 2.5) / 2250 = 12.22 l, (25 + 3.0) / 2200 = 12.73 l
/// (definition); published bags of 80 lb give 0.60 ft3 (from memory): 36.3 kg and 17.0 l, with some 3.8 l of water
/// (our figure) 2360 kg/m3.
TEST(BagYieldByDensity, WorkedLines)
{
    const auto yield = [](double massKg, double waterL, double density) {
        Bag bag;
        bag.massKg = massKg;
        bag.waterL = waterL;
        bag.freshDensityKgM3 = density;
        Mix mix;
        mix.bag = bag;
        return chargeOf(mix).litres;
    };
    EXPECT_NEAR(yield(25, 2.5, 2250), 12.22, 0.005);
    EXPECT_NEAR(yield(25, 3.0, 2200), 12.73, 0.005);
    EXPECT_NEAR(yield(36.3, 3.8, 2360), 17.0, 0.05);
}

}  // namespace
}  // namespace yardcast
