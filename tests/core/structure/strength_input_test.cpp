#include <gtest/gtest.h>

#include "core/structure/body.h"
#include "tests/core/structure/slabs.h"

namespace yardcast {

namespace {

using tests::PlanMaker;
using tests::slab;

constexpr double kLatticeArea = 0.2;  // mm2: booleans are within 1e-4 mm along some 2 m of boundary

}  // namespace

TEST(Rests, SupportsAndPanelsWhoseTopMeetsTheUndersideCarry)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 620, 40));
    plan.wall("S1", 100, 100, 0, 620, 860);        // meets it
    plan.wall("S2", 900, 100, 0, 620, 846);        // 14 mm short: bedding makes it up
    plan.wall("S3", 1300, 100, 0, 620, 840);       // 20 mm short
    Panel back;
    back.lengthMm = 1800;
    back.thicknessMm = 50;
    back.baseMm = 0;
    back.heightMm = 860;
    plan.add("P1", back, {{0, 600}, 0});           // 20 mm of it below the slab's back edge
    plan.wall("S4", 2000, 100, 0, 620, 860);       // beside it
    const StrengthInput input = plan.input("C1");
    ASSERT_EQ(input.rests.size(), 3u);
    EXPECT_EQ(input.rests[0].under, "S1");
    EXPECT_NEAR(areaMm2(input.rests[0].footprint), 100 * 620, kLatticeArea);
    EXPECT_NEAR(areaMm2(input.rests[0].bearing), 100 * 620, kLatticeArea);
    EXPECT_NEAR(input.rests[0].lengthMm, 100, 1e-3);
    EXPECT_EQ(input.rests[1].under, "S2");
    EXPECT_EQ(input.rests[2].under, "P1");
    EXPECT_NEAR(areaMm2(input.rests[2].bearing), 1800 * 20, kLatticeArea);
    EXPECT_NEAR(input.rests[2].lengthMm, 20, 1e-3);
}

TEST(Rests, PadsReachFurther)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 620, 40));
    Support support;
    support.lengthMm = 620;
    support.widthMm = 100;
    support.heightMm = 860 - 22;
    support.mix = "M";
    plan.add("S1", support, {{200, 0}, 90});
    EXPECT_TRUE(plan.input("C1").rests.empty());
    support.pads = Pads{};  // 8 mm thick by default: 8 + 15 of bedding
    PlanMaker withPads;
    withPads.counter("C1", slab(1800, 620, 40));
    withPads.add("S1", support, {{200, 0}, 90});
    EXPECT_EQ(withPads.input("C1").rests.size(), 1u);
}

TEST(Rests, OverFoamOnlyRimsAndRibsBear)
{
    Counter counter = slab(1800, 620, 40);
    counter.rim = Rim{};  // 60 deep, 60 wide
    counter.filler = Filler{};
    PlanMaker plan;
    plan.counter("C1", counter).wall("S1", 900, 100, 0, 620, 840);
    StrengthInput input = plan.input("C1");
    ASSERT_EQ(input.rests.size(), 1u);
    EXPECT_NEAR(areaMm2(input.rests[0].footprint), 100 * 620, kLatticeArea);
    EXPECT_NEAR(areaMm2(input.rests[0].bearing), 100 * 120, kLatticeArea);

    counter.ribs = {{{900, 0}, {900, 620}, 80, {}}};
    PlanMaker ribbed;
    ribbed.counter("C1", counter).wall("S1", 900, 100, 0, 620, 840);
    input = ribbed.input("C1");
    ASSERT_EQ(input.rests.size(), 1u);
    EXPECT_NEAR(areaMm2(input.rests[0].bearing), 100 * 120 + 80 * 500, kLatticeArea);

    // A support that reaches up between the rims to the field carries the field.
    counter.ribs.clear();
    PlanMaker tall;
    tall.counter("C1", counter).wall("S1", 900, 100, 100, 520, 860);
    input = tall.input("C1");
    ASSERT_EQ(input.rests.size(), 1u);
    EXPECT_NEAR(areaMm2(input.rests[0].bearing), 100 * 420, kLatticeArea);
}

TEST(Rests, AreTheSameInTheOwnFrameHoweverTheKitchenIsTurned)
{
    for (const double turn : {0.0, 90.0, 180.0, 37.0, 211.5}) {
        const Placement whole{{1234, -567}, turn};
        PlanMaker plan;
        plan.counter("C1", slab(1800, 620, 40), whole);
        Support support;
        support.lengthMm = 620;
        support.widthMm = 100;
        support.heightMm = 860;
        support.mix = "M";
        plan.add("S1", support, {whole.toPlan({350, 0}), turn + 90});
        const StrengthInput input = plan.input("C1");
        ASSERT_EQ(input.rests.size(), 1u) << turn;
        const Box box = boundsOf(input.rests[0].bearing).value();
        EXPECT_NEAR(box.low.x, 250, 1e-3) << turn;
        EXPECT_NEAR(box.high.x, 350, 1e-3) << turn;
        EXPECT_NEAR(box.low.y, 0, 1e-3) << turn;
        EXPECT_NEAR(box.high.y, 620, 1e-3) << turn;
        EXPECT_NEAR(input.rests[0].lengthMm, 100, 1e-3) << turn;
    }
}

TEST(Loads, AreSharedByAreaAmongThePiecesOfACounter)
{
    Counter counter = slab(2000, 600, 40);
    counter.joints = {{{1000, 0}, {1000, 600}, 4.0, {}}};
    counter.loads = {{"oven", {900, 300}, {400, 300}, 80, {}}};
    PlanMaker plan;
    plan.counter("C1", counter, {{500, 0}, 0});
    Appliance jug;
    jug.on = "C1";
    jug.size = {200, 200};
    jug.massKg = 12;
    plan.add("A1", jug, {{1900, 100}, 0});
    const StrengthInput left = plan.input("C1.1");
    const StrengthInput right = plan.input("C1.2");
    // The oven lies from 700 to 1100; the joint takes 998 to 1002.
    ASSERT_EQ(left.loads.size(), 1u);
    EXPECT_NEAR(left.loads[0].massKg, 80.0 * 298 / 396, 1e-4);
    ASSERT_EQ(right.loads.size(), 2u);
    EXPECT_NEAR(right.loads[0].massKg, 80.0 * 98 / 396, 1e-4);
    EXPECT_FALSE(right.loads[0].appliance);
    EXPECT_TRUE(right.loads[1].appliance);
    EXPECT_DOUBLE_EQ(right.loads[1].massKg, 12.0);
    const Box box = boundsOf(right.loads[1].region).value();
    EXPECT_NEAR(box.low.x, 1400, 1e-3);
    EXPECT_NEAR(box.high.y, 300, 1e-3);
}

TEST(Loads, WhatHangsInACutoutRestsOnItsEdge)
{
    Counter counter = slab(1800, 620, 40);
    counter.cutouts = {tests::sink("K1", {900, 310}, {560, 400}, 20)};
    counter.loads = {{"sink", {900, 310}, {500, 350}, 15, {}}};
    PlanMaker plan;
    plan.counter("C1", counter);
    const StrengthInput input = plan.input("C1");
    ASSERT_EQ(input.loads.size(), 1u);
    EXPECT_DOUBLE_EQ(input.loads[0].massKg, 15);
    EXPECT_GT(areaMm2(input.loads[0].region), 1000);
    EXPECT_LT(areaMm2(intersect(input.loads[0].region, regionOf(cutoutRing(counter.cutouts[0])))), 1.0);
}

TEST(Carried, TwoWallsShareByStatics)
{
    Counter counter = slab(1800, 600, 40);
    counter.loads = {{"oven", {500, 300}, {400, 400}, 100, {}}};
    PlanMaker plan;
    plan.counter("C1", counter).wall("S1", 100, 100, 0, 600, 860).wall("S2", 1500, 100, 0, 600, 860);
    const StrengthInput s1 = plan.input("S1");
    const StrengthInput s2 = plan.input("S2");
    const double own = plan.input("C1").casting->massKg * kGravityMS2;
    const double oven = 100 * kGravityMS2;
    // Levers about S2, 1400 mm away: the slab's middle at 900, the oven at 500. A stiff slab on beds 100 wide deviates
    // from knife edges by (100/1400)^2/12 of the turning share: under 0.1 %.
    const double expected = (own * 600 + oven * 1000) / 1400;
    EXPECT_NEAR(s1.carriedN, expected, 1e-3 * expected);
    EXPECT_NEAR(s1.carriedN + s2.carriedN, own + oven, 1e-9 * (own + oven));
    EXPECT_NEAR(s1.carriedAtMm, 300, 1e-3);
}

TEST(Inputs, EqualWhereNothingThatMattersChanged)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 620, 40)).wall("S1", 100, 100, 0, 620, 860).wall("S2", 1600, 100, 0, 620, 860);
    const StrengthInput before = plan.input("C1");
    EXPECT_TRUE(before == plan.input("C1"));
    PlanMaker moved = plan;
    auto support = std::make_shared<Part>(*moved.plan.parts[2]);
    support->place.at.x += 1;
    moved.plan.parts[2] = support;
    EXPECT_FALSE(before == moved.input("C1"));
    PlanMaker hotter = plan;
    hotter.plan.conditions.airC += 5;
    EXPECT_FALSE(before == hotter.input("C1"));
}

TEST(Inputs, CourseComesFromTheDayAndFromReadings)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 620, 40)).wall("S1", 100, 100, 0, 620, 860).wall("S2", 1600, 100, 0, 620, 860);
    plan.plan.conditions.airC = 18;
    const StrengthInput even = plan.input("C1");
    // One temperature only: the figures of one temperature.
    const ConcreteProperties concrete = *concreteProperties(even.strengthClass);
    EXPECT_EQ(concreteAtAge(even, 48).fctk005Mpa, strengthAtAge(concrete, kNormalCementS, 48, 18.0).fctk005Mpa);
    plan.plan.conditions.lowC = 8;
    plan.plan.conditions.highC = 28;
    EXPECT_GT(concreteAtAge(plan.input("C1"), 48).fcmMpa, concreteAtAge(even, 48).fcmMpa);
    plan.plan.conditions.measured = {{0, 30, {}}, {24, 30, {}}};
    EXPECT_EQ(concreteAtAge(plan.input("C1"), 48).fcmMpa, strengthAtAge(concrete, kNormalCementS, 48, 30.0).fcmMpa);
    // The class itself from 28 days on, however cold it was.
    EXPECT_EQ(concreteAtAge(even, kFullAgeH).fckMpa, concrete.fckMpa);
    EXPECT_EQ(concreteAtAge(even, kFullAgeH).elasticMpa, concrete.ecmMpa);
    EXPECT_EQ(concreteAtAge(even, 100 * 24).fctmMpa, concrete.fctmMpa);
}

}  // namespace yardcast
