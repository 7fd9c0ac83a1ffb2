#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/handling/lift_means.h"
#include "core/plan/validation.h"

namespace yardcast {
namespace {

Part slab(double lengthMm, double widthMm, double thicknessMm)
{
    Part part;
    part.id = "C1";
    Counter counter;
    counter.outline = {{0, 0}, {lengthMm, 0}, {lengthMm, widthMm}, {0, widthMm}};
    counter.thicknessMm = thicknessMm;
    part.body = counter;
    return part;
}

Cutout opening(Point centre, Size size)
{
    Cutout cutout;
    cutout.id = "K1";
    cutout.centre = centre;
    cutout.size = size;
    return cutout;
}

Counter& counterOf(Part& part) { return std::get<Counter>(part.body); }

Part with(Part part, const std::vector<Joint>& joints)
{
    auto& all = counterOf(part).joints;
    all.insert(all.end(), joints.begin(), joints.end());
    return part;
}

std::optional<JointProposal> propose(const Part& part, double limitKg, const std::vector<Box>& rests = {})
{
    return proposeJoints(part, *castingsOf(part).at(0), limitKg, rests);
}

/// 1.8 x 0.6 x 0.05 m at 2400 kg/m3 are 129.6 kg.
TEST(JointProposal, HalvesASlabThatHalvesCarry)
{
    const auto proposal = propose(slab(1800, 600, 50), 70);
    ASSERT_TRUE(proposal);
    ASSERT_EQ(proposal->joints.size(), 1U);
    EXPECT_EQ(proposal->joints[0].from.x, 900.0);
    EXPECT_EQ(proposal->joints[0].to.x, 900.0);
    // The gap of 4 mm is not cast.
    EXPECT_NEAR(proposal->heaviestKg, 129.6 / 2 * 898 / 900, 1e-6);
    EXPECT_FALSE(proposal->overSupport);
}

TEST(JointProposal, TakesNoJointMoreThanItNeeds)
{
    EXPECT_EQ(propose(slab(1800, 600, 50), 65)->joints.size(), 1U);
    EXPECT_EQ(propose(slab(1800, 600, 50), 64)->joints.size(), 2U);
    EXPECT_EQ(propose(slab(1800, 600, 50), 33.3)->joints.size(), 3U);
    EXPECT_FALSE(propose(slab(1800, 600, 50), 129.7)) << "it can be carried as it is";
    EXPECT_FALSE(propose(slab(1800, 600, 50), 10)) << "more than five joints";
}

TEST(JointProposal, CutsAcrossTheLongWay)
{
    const auto proposal = propose(slab(600, 1800, 50), 44);
    ASSERT_TRUE(proposal);
    ASSERT_EQ(proposal->joints.size(), 2U);
    EXPECT_EQ(proposal->joints[0].from.y, 600.0);
    EXPECT_EQ(proposal->joints[1].from.y, 1200.0);
}

TEST(JointProposal, GoesRoundACutoutInTheMiddle)
{
    Part part = slab(1800, 600, 50);
    counterOf(part).cutouts = {opening({900, 300}, {560, 400})};
    const auto proposal = propose(part, 100);
    ASSERT_TRUE(proposal);
    ASSERT_EQ(proposal->joints.size(), 1U);
    const double away = std::abs(proposal->joints[0].from.x - 900);
    EXPECT_GE(away, 280 + kLeastStripMm + kDefaultJointGapMm / 2);
    EXPECT_LT(away, 280 + kLeastStripMm + 15) << "as near as it may, for pieces of even mass";
}

TEST(JointProposal, LiesOverASupportWhereThatCostsNoJointMore)
{
    const Part part = slab(1800, 600, 50);
    const std::vector<Box> rests{{{700, 0}, {800, 600}}, {{0, 0}, {100, 600}}, {{1700, 0}, {1800, 600}}};
    const auto over = propose(part, 80, rests);
    ASSERT_TRUE(over);
    EXPECT_EQ(over->joints[0].from.x, 750.0);
    EXPECT_TRUE(over->overSupport);
    // 1050 mm are 75.4 kg: too much for 70. In the middle the right piece would lie on one rest only and tip: it is divided
    // along, so that both pieces lie on all three.
    const auto along = propose(part, 70, rests);
    ASSERT_TRUE(along);
    ASSERT_EQ(along->joints.size(), 1U);
    EXPECT_EQ(along->joints[0].from.y, along->joints[0].to.y);
    EXPECT_FALSE(propose(part, 30, rests)) << "four pieces and more cannot each stand on two rests";
    auto more = rests;
    more.push_back({{950, 0}, {1020, 600}});
    const auto beside = propose(part, 70, more);
    ASSERT_TRUE(beside);
    EXPECT_EQ(beside->joints.size(), 1U);
    for (const CastingPtr& piece : castingsOf(with(part, beside->joints))) {
        const auto under = std::count_if(more.begin(), more.end(), [&](const Box& rest) {
            return std::min(rest.high.x, piece->boundsMm.high.x) - std::max(rest.low.x, piece->boundsMm.low.x) > 20;
        });
        EXPECT_GE(under, 2);
    }
}

TEST(JointProposal, DividesOnePieceOfACounterThatHasJoints)
{
    Part part = slab(3000, 600, 50);
    counterOf(part).joints = {{{1000, 0}, {1000, 600}, {}, {}}};
    const auto castings = castingsOf(part);
    ASSERT_EQ(castings.size(), 2U);
    const auto proposal = proposeJoints(part, *castings[1], 75, {});
    ASSERT_TRUE(proposal);
    EXPECT_EQ(proposal->joints.size(), 1U);
    EXPECT_EQ(castingsOf(with(part, proposal->joints)).size(), 3U);
}

TEST(JointProposal, KeepsClearOfTheInnerCornerOfAnL)
{
    Part part = slab(2000, 600, 50);
    counterOf(part).outline = {{0, 0}, {2000, 0}, {2000, 600}, {650, 600}, {650, 1600}, {0, 1600}};
    const auto proposal = propose(part, 100);
    ASSERT_TRUE(proposal);
    for (const Joint& joint : proposal->joints) {
        const bool upright = joint.from.x == joint.to.x;
        EXPECT_GE(std::abs(upright ? joint.from.x - 650 : joint.from.y - 600), kLeastStripMm);
    }
}

TEST(JointProposal, HoldsWhatItPromises)
{
    std::mt19937 random(11);
    const auto between = [&](double low, double high) { return std::uniform_real_distribution<double>(low, high)(random); };
    int proposed = 0;
    for (int run = 0; run < 120; ++run) {
        Part part = slab(between(900, 3000), between(400, 900), std::round(between(30, 80)));
        Counter& counter = counterOf(part);
        const Box box = *boundsOf(counter.outline);
        if (run % 2 == 0) {
            counter.rim = Rim{};
            counter.rim->depthMm = counter.thicknessMm + 20;
            counter.filler = Filler{};
        }
        for (int k = 0; k < run % 3; ++k) {
            counter.cutouts.push_back(opening({box.width() * (k + 1) / 3, box.height() / 2},
                                              {between(100, box.width() / 4), between(100, box.height() - 120)}));
            counter.cutouts.back().id = "K" + std::to_string(k + 1);
        }
        if (run % 5 == 0) counter.steel = Steel{Mesh{}, {}, {}};
        const auto castings = castingsOf(part);
        ASSERT_EQ(castings.size(), 1U);
        const double limit = between(25, 80);
        const auto proposal = propose(part, limit);
        if (!proposal) continue;
        ++proposed;
        const Part after = with(part, proposal->joints);
        const auto pieces = castingsOf(after);
        EXPECT_EQ(pieces.size(), proposal->joints.size() + 1);
        double heaviest = 0.0;
        for (const CastingPtr& piece : pieces) heaviest = std::max(heaviest, piece->massKg);
        EXPECT_DOUBLE_EQ(heaviest, proposal->heaviestKg);
        EXPECT_LE(heaviest, limit);
        EXPECT_GT(castings[0]->massKg, limit * static_cast<double>(proposal->joints.size()) * 0.2);
        Plan plan;
        plan.parts = {std::make_shared<const Part>(after)};
        for (const Finding& finding : validate(plan).findings) EXPECT_NE(finding.code.rfind("joint_", 0), 0U) << finding.code;
    }
    EXPECT_GT(proposed, 80) << "the law must have been tried";
}

TEST(Rests, AreFoundInTheCountersOwnFrameHoweverThePlanIsTurned)
{
    for (const double turn : {0.0, 90.0, 180.0, 270.0}) {
        const Placement whole{{4000, -300}, turn};
        Part counter = slab(1800, 600, 50);
        counter.place = whole;
        Part support;
        support.id = "S1";
        Support body;
        body.lengthMm = 600;
        body.widthMm = 100;
        body.heightMm = 850;
        support.body = body;
        // From front to back, its right side at x = 800 of the counter.
        support.place = {whole.toPlan({800, 0}), turn + 90};
        Part low = support;
        low.id = "S2";
        std::get<Support>(low.body).heightMm = 600;
        Plan plan;
        for (const Part& part : {counter, support, low}) plan.parts.push_back(std::make_shared<const Part>(part));
        const auto rests = Rests(plan).under(*plan.parts[0]);
        ASSERT_EQ(rests.size(), 1U) << "what ends below the slab bears nothing";
        EXPECT_NEAR(rests[0].low.x, 700, 1e-6);
        EXPECT_NEAR(rests[0].high.x, 800, 1e-6);
        const auto proposal = proposeJoints(*plan.parts[0], *castingsOf(*plan.parts[0]).at(0), 80, rests);
        ASSERT_TRUE(proposal);
        EXPECT_EQ(proposal->joints[0].from.x, 750.0);
    }
}

Part upright(double lengthMm, double widthMm, double heightMm)
{
    Part part;
    part.id = "S1";
    Support support;
    support.lengthMm = lengthMm;
    support.widthMm = widthMm;
    support.heightMm = heightMm;
    part.body = support;
    return part;
}

TEST(CoreProposal, IsTheLeastThatBringsItToTheLimit)
{
    const Part part = upright(600, 100, 840);  // 121 kg solid
    const auto proposal = proposeCore(part, 100);
    ASSERT_TRUE(proposal);
    EXPECT_EQ(proposal->core.lengthMm, 440.0);
    EXPECT_EQ(proposal->core.heightMm, 680.0);
    EXPECT_EQ(proposal->core.thicknessMm, 30.0);
    // 0.6 x 0.1 x 0.84 less 0.44 x 0.03 x 0.68 of concrete, and the foam of 20 kg/m3.
    EXPECT_NEAR(proposal->massKg, (0.0504 - 0.008976) * 2400 + 0.008976 * 20, 1e-6);
    EXPECT_FALSE(proposeCore(part, 121)) << "it can be carried as it is";
}

TEST(CoreProposal, KeepsItsWallsWhereNoneIsEnough)
{
    const auto proposal = proposeCore(upright(600, 100, 840), 10);
    ASSERT_TRUE(proposal);
    EXPECT_EQ(proposal->core.thicknessMm, 60.0) << "80 would leave 10 mm of concrete beside it";
    EXPECT_GT(proposal->massKg, 10.0);
    EXPECT_FALSE(proposeCore(upright(600, 40, 840), 10)) << "no room for walls of 15 mm";
    EXPECT_FALSE(proposeCore(slab(1800, 600, 50), 10)) << "a counter has no core";
}

TEST(Patches, StandInTheFileOfThePlan)
{
    const Part part = slab(1800, 600, 50);
    const std::vector<Joint> joints{{{900.06, 0}, {900, 600}, {}, {}}};
    EXPECT_EQ(jointPatch(3, std::get<Counter>(part.body), joints),
              R"([{"op":"add","path":"/parts/3/joints","value":[{"from":[900.1,0],"to":[900,600]}]}])");
    EXPECT_EQ(jointPatch(0, std::get<Counter>(with(part, joints).body), joints),
              R"([{"op":"add","path":"/parts/0/joints/-","value":{"from":[900.1,0],"to":[900,600]}}])");
    Core core;
    core.lengthMm = 440;
    core.heightMm = 680;
    core.thicknessMm = 30;
    EXPECT_EQ(corePatch(1, false, core),
              R"([{"op":"add","path":"/parts/1/core","value":{"length_mm":440,"height_mm":680,"thickness_mm":30,"density_kg_m3":20}}])");
    EXPECT_THAT(corePatch(1, true, core), testing::HasSubstr(R"("path":"/parts/1/core/thickness_mm","value":30)"));
}

TEST(TiltKg, IsHalfTheMassOfAnEvenSlab)
{
    EXPECT_NEAR(tiltKg(*castingsOf(slab(1800, 600, 50)).at(0)), 129.6 / 2, 1e-9);
    EXPECT_NEAR(tiltKg(*castingsOf(upright(600, 100, 840)).at(0)), 120.96 / 2, 1e-9);
}

/// A wedge about its long edge: its centre lies at a third of its reach.
TEST(TiltKg, GoesByTheLeverOfTheCentre)
{
    Part part = slab(1800, 600, 50);
    counterOf(part).outline = {{0, 0}, {1800, 0}, {900, 600}};
    EXPECT_NEAR(tiltKg(*castingsOf(part).at(0)), 64.8 / 3, 1e-6);
}

}  // namespace
}  // namespace yardcast
