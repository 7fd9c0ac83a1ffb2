#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/core/mould/moulds.h"
#include "tests/property/random_plan.h"

namespace yardcast {

namespace {

/// A counter whose sink is left of the middle (own frame), its tap behind it.
Counter leftSink()
{
    Counter counter = slab(1250, 650, 60);
    counter.cutouts = {rectangleCutout({445, 300}, {460, 410})};
    counter.cutouts[0].purpose = CutoutPurpose::sink;
    return counter;
}

const Twin* twinOf(const Mould& mould, const std::string& casting)
{
    for (const Twin& twin : mould.twins) {
        if (twin.casting == casting) return &twin;
    }
    return nullptr;
}

}  // namespace

TEST(MouldHand, FaceDownWhatIsOnTheLeftInTheKitchenIsOnTheRightInTheMould)
{
    const Mould mould = *mouldsOfParts({partOf(leftSink())}).moulds.at(0);
    EXPECT_TRUE(mould.mirrored);
    EXPECT_EQ(mould.check.about, "K1");
    EXPECT_EQ(mould.check.what, "sink");
    EXPECT_EQ(mould.check.side, "right");
    EXPECT_NEAR(mould.check.rightMm, 445 - 230, 1e-6);
    EXPECT_NEAR(mould.check.leftMm, 1250 - 445 - 230, 1e-6);
    EXPECT_NEAR(mould.check.frontMm, 300 - 205, 1e-6);
    Counter up = leftSink();
    up.cast = CounterCast::faceUp;
    const Mould upMould = *mouldsOfParts({partOf(up)}).moulds.at(0);
    EXPECT_FALSE(upMould.mirrored);
    EXPECT_EQ(upMould.check.side, "left");
}

TEST(MouldHand, TheLargeCutoutSaysItAndNotTheTapFartherOut)
{
    Counter counter = leftSink();
    counter.cutouts.push_back(circleCutout({1150, 560}, 35));
    counter.cutouts[1].purpose = CutoutPurpose::tap;
    EXPECT_EQ(mouldsOfParts({partOf(counter)}).moulds[0]->check.about, "K1");
    counter.cutouts[0].centre.x = 625;
    EXPECT_EQ(mouldsOfParts({partOf(counter)}).moulds[0]->check.about, "K2") << "the sink now lies in the middle";
}

TEST(MouldHand, TheFrameIsMirroredThereAndBack)
{
    const MouldsOfPlan all = mouldsOfParts({partOf(leftSink())});
    const Casting& casting = *all.castings[0];
    const Part& part = *all.plan.parts[0];
    const Point in = toMould(casting, part, {445, 300});
    EXPECT_NEAR(in.x, 1250 - 445, 1e-9);
    EXPECT_NEAR(in.y, 300, 1e-9);
    const Point back = fromMould(casting, part, in);
    EXPECT_NEAR(back.x, 445, 1e-9);
    EXPECT_NEAR(back.y, 300, 1e-9);
    EXPECT_GT(signedArea(all.moulds[0]->inside[0].outer), 0.0) << "still counter-clockwise";
}

TEST(MouldHand, FindsTwinsThatAreTheSameHoweverTheyStandAndMirrorTwins)
{
    Plan plan;
    plan = addPart(plan, partOf(leftSink(), "C1"));
    Part turned = partOf(leftSink(), "C2");
    turned.place = {{4000, 3000}, 180};
    plan = addPart(plan, turned);
    plan = addPart(plan, partOf(leftSink(), "C3"));
    plan = mirrorParts(plan, {"C3"}, 9000);
    plan = addPart(plan, partOf(slab(1250, 650, 60), "C4"));
    std::vector<Part> parts;
    for (const PartPtr& part : plan.parts) parts.push_back(*part);
    const MouldsOfPlan all = mouldsOfParts(parts);
    ASSERT_EQ(all.moulds.size(), 4U);
    const Mould& first = *all.moulds[0];
    EXPECT_TRUE(first.handed);
    ASSERT_TRUE(twinOf(first, "C2"));
    EXPECT_EQ(twinOf(first, "C2")->kind, TwinKind::same);
    ASSERT_TRUE(twinOf(first, "C3"));
    EXPECT_EQ(twinOf(first, "C3")->kind, TwinKind::mirror);
    EXPECT_FALSE(twinOf(first, "C4"));
    EXPECT_FALSE(all.moulds[3]->handed) << "a plain rectangle is its own mirror image";
    const Finding* finding = all.finding("mirror_twins");
    ASSERT_TRUE(finding);
    EXPECT_EQ(finding->subjects[0], "C1");
    EXPECT_NE(std::find(finding->subjects.begin(), finding->subjects.end(), "C3"), finding->subjects.end());
}

TEST(MouldHand, ASlabTurnedInItsOwnFrameIsTheSame)
{
    Counter a = lShape();
    Counter b = a;
    b.outline.clear();
    for (const Point p : a.outline) b.outline.push_back({1500 - p.y, p.x});
    const MouldsOfPlan all = mouldsOfParts({partOf(a, "C1"), partOf(b, "C2")});
    ASSERT_TRUE(twinOf(*all.moulds[0], "C2"));
    EXPECT_EQ(twinOf(*all.moulds[0], "C2")->kind, TwinKind::same);
    EXPECT_TRUE(all.moulds[0]->handed);
}

TEST(MouldHand, SteelMakesHandsToo)
{
    Counter counter = slab(1200, 600, 60);
    counter.steel = Steel{};
    counter.steel->bars = {BarGroup{{100, 100}, {500, 100}, 8, 1, {}, 20, {}, SteelMaterial::steel}};
    EXPECT_TRUE(mouldsOfParts({partOf(counter)}).moulds[0]->handed);
    counter.steel->bars[0].to = {1100, 100};
    EXPECT_FALSE(mouldsOfParts({partOf(counter)}).moulds[0]->handed);
    Counter other = counter;
    other.steel->bars[0].material = SteelMaterial::glass;
    EXPECT_EQ(mouldsOfParts({partOf(counter, "C1"), partOf(other, "C2")}).moulds[0]->twins.size(), 1U)
        << "what bars are made of changes neither mould nor hand";
    Counter thicker = counter;
    thicker.steel->bars[0].diameterMm = 10;
    EXPECT_TRUE(mouldsOfParts({partOf(counter, "C1"), partOf(thicker, "C2")}).moulds[0]->twins.empty());
}

TEST(MouldHand, MirroringAnyCounterGivesItsMirrorTwinOrItself)
{
    int handed = 0;
    const std::vector<std::uint32_t> seeds = random::seeds(60);
    for (const std::uint32_t seed : seeds) {
        random::Source source(seed);
        Plan plan;
        plan = addPart(plan, partOf(random::counter(source), "C1"));
        plan = addPart(plan, partOf(std::get<Counter>(plan.parts[0]->body), "C2"));
        plan = mirrorParts(plan, {"C2"}, 5000);
        const MouldsOfPlan all = mouldsOfParts({*plan.parts[0], *plan.parts[1]});
        ASSERT_EQ(all.moulds.size(), 2U) << seed;
        const Twin* twin = twinOf(*all.moulds[0], "C2");
        ASSERT_TRUE(twin) << "seed " << seed;
        EXPECT_EQ(twin->kind, all.moulds[0]->handed ? TwinKind::mirror : TwinKind::same) << "seed " << seed;
        EXPECT_EQ(all.moulds[0]->handed, all.moulds[1]->handed);
        handed += all.moulds[0]->handed ? 1 : 0;
        const MouldCheck& a = all.moulds[0]->check;
        const MouldCheck& b = all.moulds[1]->check;
        EXPECT_EQ(a.about.empty(), b.about.empty()) << seed;
        if (!a.about.empty() && a.about == b.about) {
            EXPECT_NE(a.side, b.side) << "seed " << seed;
        }
    }
    EXPECT_GT(handed, int(seeds.size()) / 3);
}

TEST(MouldHand, DiagonalsAndTolerances)
{
    Counter counter = slab(1250, 650, 60);
    counter.joints = {Joint{{600, 0}, {600, 650}, 4, {}}};
    const MouldsOfPlan all = mouldsOfParts({partOf(counter)});
    const Mould& mould = *all.moulds.at(0);
    ASSERT_EQ(mould.diagonals.size(), 2U);
    for (const Mould::Diagonal& d : mould.diagonals) EXPECT_NEAR(d.lengthMm, std::hypot(598, 650), 1e-3);
    EXPECT_NEAR(mould.leastWidthMm, 597, 1e-3);
    EXPECT_NEAR(mould.mostWidthMm, 599, 1e-3);
    EXPECT_EQ(mould.takenUpBy, "C1.2");
    EXPECT_NEAR(mould.gapMm, 4, 1e-3);
    EXPECT_FALSE(all.finding("gap_within_tolerance"));
    counter.joints[0].gapMm = 1.0;
    EXPECT_TRUE(mouldsOfParts({partOf(counter)}).finding("gap_within_tolerance"));
    EXPECT_TRUE(mouldsOfParts({partOf(slab(1250, 650, 60))}).moulds[0]->takenUpBy.empty());
}

TEST(MouldHand, TheMemoChangesNothingAndKeepsWhatDidNotChange)
{
    Plan plan;
    plan = addPart(plan, partOf(leftSink(), "C1"));
    plan = addPart(plan, partOf(slab(1250, 650, 60), "C2"));
    plan = moveParts(plan, {"C2"}, {3000, 0});
    const auto castingsNow = [](const Plan& p) {
        std::vector<CastingPtr> all;
        for (const PartPtr& part : p.parts) {
            for (const CastingPtr& casting : castingsOf(*part)) all.push_back(casting);
        }
        return all;
    };
    std::vector<CastingPtr> castings = castingsNow(plan);
    std::vector<Finding> findings;
    std::shared_ptr<MouldMemo> memo;
    const auto first = mouldsOf(plan, castings, findings, &memo);
    const auto again = mouldsOf(plan, castings, findings, &memo);
    EXPECT_EQ(first[0], again[0]);
    EXPECT_EQ(first[1], again[1]);
    // Nearer together: the same boards, another gap.
    const Plan near = moveParts(plan, {"C2"}, {-1745, 0});
    const auto moved = mouldsOf(near, castings, findings, &memo);
    EXPECT_EQ(moved[0]->takenUpBy, "C2");
    EXPECT_NEAR(moved[0]->gapMm, 5, 1e-9);
    EXPECT_TRUE(first[0]->takenUpBy.empty()) << "what was given out is never changed";
    Plan thicker = near;
    thicker.moulding = Moulding{};
    thicker.moulding->boardMm = 21;
    const auto other = mouldsOf(thicker, castings, findings, &memo);
    EXPECT_EQ(other[0]->parts[1].thicknessMm, 21);
}

}  // namespace yardcast
