#include <gtest/gtest.h>

#include "core/materials/materials.h"
#include "core/pour/mix_quantities.h"

namespace yardcast {
namespace {

MixQuantities quantitiesOf(const Mix& mix, double litres)
{
    Plan plan;
    plan.mixes = {mix};
    auto casting = std::make_shared<Casting>();
    casting->id = "C1";
    casting->mix = mix.id;
    casting->volumeL = litres;
    std::vector<Finding> findings;
    const auto result = mixQuantities(plan, {casting}, findings);
    return result.empty() ? MixQuantities{} : result.front();
}

/// EN 206 5.2.5.2.3, silica fume by the k-value concept (clause from memory), worked for a cubic metre:
/// c = 350 kg, s = 28 kg (s/c = 0.08), w = 160 kg.
///   k = 2: 160 / (350 + 56) = 0.394;  k = 1: 160 / 378 = 0.423;  without fume counted: 160 / 350 = 0.457.
Mix cubicMetre(double maxWaterCement)
{
    Mix mix;
    mix.id = "m";
    mix.bag = Bag{2200, 1000, 160, 350, 8, {}, 4, {}};
    mix.silicaFumePercent = 8;
    mix.maxWaterCement = maxWaterCement;
    return mix;
}

TEST(SilicaFumeEn206, WorkedExample)
{
    const MixQuantities low = quantitiesOf(cubicMetre(0.45), 1000);
    EXPECT_EQ(low.kValue, 2.0);
    EXPECT_NEAR(low.waterBinder, 0.394, 0.0005);
    const MixQuantities outdoors = quantitiesOf(cubicMetre(0.50), 1000);
    EXPECT_EQ(outdoors.kValue, 1.0);
    EXPECT_NEAR(outdoors.waterBinder, 0.423, 0.0005);
    EXPECT_NEAR(outdoors.waterCement, 0.457, 0.0005);
}

TEST(SilicaFumeEn206, CountsToElevenPercent)
{
    Mix mix = cubicMetre(0.50);
    mix.silicaFumePercent = 15;
    EXPECT_NEAR(quantitiesOf(mix, 1000).waterBinder, 160 / (350 * 1.11), 1e-9);
}

/// Yield of a bag = (bag + water) / fresh density (definition; the two lines are worked from it):
/// 25 kg + 2.5 l at 2250 kg/m3 give 12.22 l; 25 kg + 3.0 l at 2200 kg/m3 give 12.73 l.
TEST(BagYield, DensityFollowsFromYieldAndWater)
{
    Mix mix;
    mix.id = "m";
    mix.bag = Bag{25, 12.22, 2.5, 4.2, 8, {}, 4, {}};
    EXPECT_NEAR(quantitiesOf(mix, 100).freshDensityKgM3, 2250, 1);
    mix.bag = Bag{25, 12.73, 3.0, 4.2, 8, {}, 4, {}};
    EXPECT_NEAR(quantitiesOf(mix, 100).freshDensityKgM3, 2200, 1);
}

/// Common practice, no source: 2.5 kg of extra cement and 0.3 kg of silica fume bring a bag that yields 11 to 12.5 l
/// to about 13.3 l by absolute volumes (at the upper end of that range).
TEST(BagYield, ExtraPowdersAddTheirOwnVolume)
{
    Mix mix;
    mix.id = "m";
    mix.bag = Bag{25, 12.4, 2.6, 4.2, 8, {}, 4, {}};
    mix.extraCementPercent = 10;                  // 2.5 kg
    mix.silicaFumePercent = 0.3 / 6.7 * 100;      // 0.3 kg of 4.2 + 2.5
    const double litres = quantitiesOf(mix, 100).litresPerBag;
    EXPECT_NEAR(litres, 13.3, 0.05);
    EXPECT_NEAR(litres - 12.4, 2.5 / 3.15 + 0.3 / 2.2, 1e-9);
}

/// Densities of what is added, from memory: cement 3.15, silica fume 2.2, polypropylene fibre 0.91 kg/l; 0.9 kg/m3
/// of polypropylene is 0.1 % by volume.
TEST(Fibres, NineHundredGramsOfPolypropyleneAreATenthOfAPercent)
{
    EXPECT_NEAR(0.9 / fibreKgL("PP") / 1000, 0.001, 0.00002);
    Mix mix;
    mix.id = "m";
    mix.fibres = {Fibre{"PP", 0.9, {}}};
    EXPECT_NEAR(quantitiesOf(mix, 100).litresPerBag / mix.bag.yieldL, 1.001, 0.00002);
}

/// A whole job by hand. Bag 25 kg, yield 12.0 l, water 2.6 l, cement 4.2 kg; 50.16 l of slab (1800 x 620 x 40, rim
/// 60 x 60 all round) with 10 % allowance; 4 % extra cement, no fume, 0.8 % plasticiser.
///   extra 1.0 kg, cement 5.2 kg, plasticiser 0.0416 kg
///   litres a bag 12.0 + 1.0 / 3.15 + 0.0416 / 1.07 = 12.3563
///   to mix 50.16 x 1.10 = 55.176 l: 4.4654 bags, so 5 to buy; 4.4654 kg cement, 11.610 l water, 0.18576 kg plasticiser
///   w/c = (2.6 + 0.65 x 0.0416) / 5.2 = 0.5052
TEST(MixExample, WholeJob)
{
    Mix mix;
    mix.id = "m";
    mix.extraCementPercent = 4;
    mix.plasticiserPercent = 0.8;
    mix.allowancePercent = 10;
    const MixQuantities q = quantitiesOf(mix, 50.16);
    EXPECT_NEAR(q.litresPerBag, 12.3563, 5e-5);
    EXPECT_NEAR(q.volumeL, 55.176, 1e-9);
    EXPECT_NEAR(q.bagsExact, 4.4654, 5e-5);
    EXPECT_EQ(q.bags, 5);
    EXPECT_NEAR(q.extraCementKg, 4.4654, 5e-5);
    EXPECT_NEAR(q.waterL, 11.610, 5e-4);
    EXPECT_NEAR(q.plasticiserKg, 0.18576, 5e-6);
    EXPECT_NEAR(q.waterCement, 0.5052, 5e-5);
}

}  // namespace
}  // namespace yardcast
