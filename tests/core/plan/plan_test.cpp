#include <cmath>
#include <limits>

#include <gtest/gtest.h>

#include "core/plan/plan.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast {
namespace {

using namespace samples;

TEST(Plan, FindsPartsAndMixesById)
{
    const Plan plan = twoSupports();
    EXPECT_EQ(indexOfPart(plan, "S2"), 2);
    EXPECT_EQ(indexOfPart(plan, "S3"), -1);
    EXPECT_EQ(findPart(plan, "S1"), plan.parts[1].get());
    EXPECT_EQ(findPart(plan, "none"), nullptr);
    EXPECT_EQ(findMix(plan, "body"), &plan.mixes[1]);
    EXPECT_EQ(findMix(plan, "none"), nullptr);
}

TEST(Plan, EqualityIsDeep)
{
    const Plan a = twoSupports();
    Plan b = twoSupports();
    EXPECT_EQ(a, b);
    auto copy = std::make_shared<Part>(*b.parts[0]);
    std::get<Counter>(copy->body).cutouts[0].centre.x += 1.0;
    b.parts[0] = copy;
    EXPECT_FALSE(a == b);
}

TEST(Plan, FootprintOfTurnedSupport)
{
    Part support = supportPart("S1", {1000, 500}, 600, 100);
    support.place.turnDeg = 90;
    const auto box = boundsOf(footprint(support));
    ASSERT_TRUE(box);
    EXPECT_EQ(box->low, (Point{900, 500}));
    EXPECT_EQ(box->high, (Point{1000, 1100}));
}

TEST(Plan, BattensOfAFrontLieTowardsThePersonInFrontOfIt)
{
    const Part front = frontPart("F1", {100, 200}, 1000);
    const auto box = boundsOf(footprint(front));
    ASSERT_TRUE(box);
    EXPECT_EQ(box->low, (Point{100, 200 - 27}));
    EXPECT_EQ(box->high, (Point{1100, 200}));
    EXPECT_GT(signedArea(footprint(front)), 0.0);
}

TEST(Plan, LevelsOfACounterReachDownByItsRim)
{
    Plan plan = twoSupports();
    EXPECT_EQ(levelsOf(plan, *plan.parts[0]).lowMm, 840.0);
    Part counter = *plan.parts[0];
    std::get<Counter>(counter.body).thicknessMm = 30.0;
    EXPECT_EQ(levelsOf(plan, counter).lowMm, 870.0);
    std::get<Counter>(counter.body).rim = Rim{};
    EXPECT_EQ(levelsOf(plan, counter).lowMm, 840.0);
    EXPECT_EQ(levelsOf(plan, counter).highMm, 900.0);
}

TEST(Plan, AnApplianceStandsOnItsCounterOrOnTheGround)
{
    Plan plan = twoSupports();
    put(plan, appliancePart("A1", {0, 0}, "C1"));
    put(plan, appliancePart("A2", {0, 0}));
    put(plan, appliancePart("A3", {0, 0}, "S1"));
    EXPECT_EQ(levelsOf(plan, *findPart(plan, "A1")).lowMm, 900.0);
    EXPECT_EQ(levelsOf(plan, *findPart(plan, "A1")).highMm, 1200.0);
    EXPECT_EQ(levelsOf(plan, *findPart(plan, "A2")).lowMm, 0.0);
    EXPECT_EQ(levelsOf(plan, *findPart(plan, "A3")).lowMm, 0.0) << "a support is no counter";
    plan.site.ground = Ground{};
    plan.site.ground->levelMm = -20.0;
    EXPECT_EQ(levelsOf(plan, *findPart(plan, "A2")).lowMm, -20.0);
}

TEST(Plan, AssumptionsHaveTheirDefaults)
{
    Plan plan = twoSupports();
    EXPECT_EQ(assumptionsOf(plan), Assumptions{});
    EXPECT_EQ(suctionKpa(assumptionsOf(plan)), 1.0);
    EXPECT_EQ(personN(assumptionsOf(plan), Imposed::worktop), 1000.0);
    EXPECT_EQ(personN(assumptionsOf(plan), Imposed::person), 1500.0);
    plan.assumptions.emplace().mouldSurface = MouldSurface::planed;
    EXPECT_EQ(suctionKpa(assumptionsOf(plan)), 2.0);
    plan.assumptions->mouldSurface = MouldSurface::rough;
    EXPECT_EQ(suctionKpa(assumptionsOf(plan)), 3.0);
    plan.assumptions->suctionKpa = 0.5;
    plan.assumptions->personN = 700.0;
    EXPECT_EQ(suctionKpa(assumptionsOf(plan)), 0.5);
    EXPECT_EQ(personN(assumptionsOf(plan), Imposed::person), 700.0);
    EXPECT_FALSE(plan == twoSupports());
}

TEST(Plan, AssumptionsThatAreNoSensibleNumbersAreNotUsed)
{
    Plan plan;
    Assumptions& own = plan.assumptions.emplace();
    own.bedNMm3 = 0.0;
    own.strippingFactor = std::nan("");
    own.handlingFactor = 1.6;
    own.suctionKpa = -1.0;
    own.crackSafety = 0.0;
    own.evenLoadKpa = 1e9;
    own.personN = std::numeric_limits<double>::infinity();
    own.lateCornerMm = -3.0;
    Assumptions expected;
    expected.handlingFactor = 1.6;
    EXPECT_EQ(assumptionsOf(plan), expected);
}

TEST(Plan, CutoutRings)
{
    const Ring tap = cutoutRing(tapHole("K1", {10, 20}, 40));
    EXPECT_NEAR(signedArea(tap), 3.14159265358979 * 400.0, 1e-6);
    Cutout turned = sink("K2", {0, 0}, {400, 200});
    turned.turnDeg = 90;
    const auto box = boundsOf(cutoutRing(turned));
    ASSERT_TRUE(box);
    EXPECT_NEAR(box->high.x, 100.0, 1e-9);
    EXPECT_NEAR(box->high.y, 200.0, 1e-9);
}

}  // namespace
}  // namespace yardcast
