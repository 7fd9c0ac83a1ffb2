#include "core/pour/mix_concrete.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/pour/charge.h"

namespace yardcast {
namespace {

/// A bag with 4.2 kg of cement and `waterL` of water: nothing else changes the ratio.
Mix bag(double waterL)
{
    Mix mix;
    mix.id = "m";
    mix.bag.waterL = waterL;
    mix.bag.yieldL = 12.0;
    mix.strengthClass = "C25/30";
    mix.allowancePercent = 0.0;
    return mix;
}

Mix weighed(Mix mix, double densityKgM3)
{
    mix.trial = TrialBatch{10.0, densityKgM3 / 100, {}, {}};
    return mix;
}

TEST(MixConcrete, WithoutATrialTheClassStandsAndOnlyCautionKnowsOfTheWater)
{
    const MixConcrete dry = concreteOf(bag(2.1));  // 0.50: 30 to 35 MPa by the table
    EXPECT_EQ(dry.likelyShare, 1.0);
    EXPECT_EQ(dry.likely, concreteProperties(25.0));
    // 0.50 is 3/7 of the way from 0.47 (35 MPa) to 0.54 (30 MPa): 32.857 of 33 MPa.
    EXPECT_NEAR(dry.cautiousShare, 32.857 / 33, 1e-5);
    const MixConcrete wet = concreteOf(bag(4.5));
    EXPECT_EQ(wet.likely, concreteProperties(25.0));
    EXPECT_NEAR(wet.waterBinder, 4.5 / 4.2, 1e-12);
    EXPECT_NEAR(wet.cautious.fcmMpa, wet.supportedMpa, 1e-9);
    EXPECT_LT(wet.supportedMpa, 15.0);
    // What the ratio supports beyond the class is nobody's promise.
    EXPECT_EQ(concreteOf(bag(1.8)).cautiousShare, 1.0);
}

TEST(MixConcrete, ATrialThatIsWetterThanPlannedTakesStrengthAway)
{
    const Mix plain = bag(2.1);
    const double planned = plannedChargeOf(plain).densityKgM3();
    const Mix same = weighed(plain, planned);
    EXPECT_EQ(concreteOf(same).likelyShare, 1.0);
    const Mix denser = weighed(plain, planned * 1.05);
    EXPECT_EQ(concreteOf(denser).likelyShare, 1.0) << "dry is not believed to be stronger";

    const Mix wet = weighed(plain, planned * 0.92);
    const MixConcrete concrete = concreteOf(wet);
    const double ratio = (2.1 + extraWaterByTrialL(wet)) / 4.2;
    EXPECT_GT(ratio, 0.6);
    EXPECT_NEAR(concrete.waterBinder, ratio, 1e-12);
    EXPECT_NEAR(concrete.likelyShare, strengthByRatioMpa(ratio) / strengthByRatioMpa(0.5), 1e-12);
    EXPECT_NEAR(concrete.likely.fcmMpa, 33 * concrete.likelyShare, 1e-9);
    EXPECT_NEAR(concrete.likely.fctmMpa, concreteProperties(25.0).fctmMpa * concrete.likelyShare, 1e-9);
    EXPECT_LE(concrete.cautiousShare, concrete.likelyShare);

    Mix said = same;  // the maker says that more went in
    said.trial->waterL = 2.9;
    EXPECT_LT(concreteOf(said).likelyShare, 1.0);
}

TEST(MixConcrete, AWordThatIsNoClassIsTakenForTheLowestItCanMean)
{
    const auto taken = [](const char* text) {
        Mix mix = bag(2.1);
        mix.strengthClass = text;
        return concreteOf(mix).name;
    };
    EXPECT_EQ(taken("C30/37"), "C30/37");
    EXPECT_EQ(taken("c30/37"), "C30/37");
    EXPECT_EQ(taken("C 30 - 37"), "C30/37");
    EXPECT_EQ(taken("C30"), "C25/30");   // a cube of 30 or a cylinder of 30
    EXPECT_EQ(taken("B25"), "C20/25");
    EXPECT_EQ(taken("C35/40"), "C35/45");
    EXPECT_EQ(taken("C99/100"), "C12/15");
    EXPECT_EQ(taken("hard"), "C12/15");
    EXPECT_EQ(taken(""), "C12/15");
    EXPECT_EQ(taken("C99999999999999999999999/1"), "C12/15");
}

TEST(StripDays, AskTheMeanAndWhatIsCountedOnOfIt)
{
    const MixConcrete concrete = concreteOf(bag(1.8));
    EXPECT_NEAR(likelyStripDays(concrete, kNormalCementS, 15.0), 1.6236, 1e-3);
    EXPECT_NEAR(cautiousStripDays(concrete, kNormalCementS, 15.0), 3.0232, 1e-3);
    EXPECT_NEAR(cautiousStripDays(concrete, kNormalCementS, 25.0), 28.0, 1e-9);
    EXPECT_FALSE(std::isfinite(cautiousStripDays(concrete, kNormalCementS, 25.1)));
}

}  // namespace
}  // namespace yardcast
