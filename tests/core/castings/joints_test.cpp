#include <gtest/gtest.h>

#include "tests/core/castings/counters.h"

namespace yardcast {
namespace {

TEST(Joints, DivideACounterAndNumberItsPiecesAlongX)
{
    Counter counter = rimmedSlab();
    counter.joints = {Joint{{1200, 0}, {1200, 620}, {}, {}}, Joint{{600, 620}, {600, 0}, {}, {}}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 3U);
    EXPECT_EQ(castings[0]->id, "C1.1");
    EXPECT_EQ(castings[1]->id, "C1.2");
    EXPECT_EQ(castings[2]->id, "C1.3");
    for (const CastingPtr& casting : castings) EXPECT_EQ(casting->part, "C1");
    EXPECT_NEAR(castings[0]->boundsMm.high.x, 598, 1e-9);
    EXPECT_NEAR(castings[1]->boundsMm.low.x, 602, 1e-9);
    EXPECT_NEAR(castings[1]->boundsMm.high.x, 1198, 1e-9);
    // The rim does not run along the joint: an end piece has it on three sides, the middle one on two.
    EXPECT_NEAR(zoneAreaMm2(*castings[0], ZoneKind::rim), 598 * 620 - 538 * 500, 0.1);
    EXPECT_NEAR(zoneAreaMm2(*castings[1], ZoneKind::rim), 596 * 120, 0.1);
    EXPECT_NEAR(castings[0]->edgeLengthMm, 2 * (598 + 620), 1e-6);
}

TEST(Joints, PiecesTogetherAreTheWholeLessTheGaps)
{
    Counter counter = rimmedSlab();
    const double whole = volumeL(counter);
    counter.joints = {Joint{{900, 0}, {900, 620}, 6.0, {}}};
    // Each gap: 6 x 500 of field and 6 x 120 of rim.
    EXPECT_NEAR(whole - volumeL(counter), (6 * 500 * 40 + 6 * 120 * 60) * 1e-6, 1e-6);
}

TEST(Joints, CrossingJointsGiveFourPiecesInOrder)
{
    Counter counter = slab(1000, 600, 40);
    counter.joints = {Joint{{500, 0}, {500, 600}, {}, {}}, Joint{{0, 300}, {1000, 300}, {}, {}}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 4U);
    EXPECT_LT(castings[0]->centroidMm[1], 300);
    EXPECT_GT(castings[1]->centroidMm[1], 300);
    EXPECT_LT(castings[1]->centroidMm[0], 500);
    EXPECT_GT(castings[2]->centroidMm[0], 500);
}

TEST(Joints, AJointWithoutAGapDivides)
{
    Counter counter = slab(1000, 600, 40);
    counter.joints = {Joint{{500, 0}, {500, 600}, 0.0, {}}};
    EXPECT_EQ(castingsOf(partOf(counter)).size(), 2U);
    EXPECT_NEAR(volumeL(counter), 24.0, 1e-3);
}

TEST(Joints, AJointThatMissesOrHasNoLengthDividesNothing)
{
    Counter counter = slab(1000, 600, 40);
    counter.joints = {Joint{{0, 900}, {1000, 900}, {}, {}}, Joint{{500, 300}, {500, 300}, {}, {}}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_EQ(castings[0]->id, "C1");
    EXPECT_NEAR(castings[0]->volumeL, 24.0, 1e-9);
}

TEST(Joints, SliversAreDropped)
{
    Counter counter = slab(1000, 600, 40);
    counter.joints = {Joint{{2.1, 0}, {2.1, 600}, {}, {}}};  // leaves 0.1 x 600 mm on the left
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_EQ(castings[0]->id, "C1");
}

TEST(Joints, ThroughACutoutGiveBothPiecesTheirShareOfIt)
{
    Counter counter = slab(1000, 600, 40);
    counter.cutouts = {rectangleCutout({500, 300}, {200, 200})};
    counter.joints = {Joint{{500, 0}, {500, 600}, {}, {}}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 2U);
    EXPECT_NEAR(castings[0]->faceAreaM2, (498 * 600 - 98 * 200) * 1e-6, 1e-9);
    EXPECT_EQ(castings[0]->cutoutEdgeLengthMm, 0.0) << "it is an open notch now";
    EXPECT_NEAR(castings[1]->faceAreaM2, castings[0]->faceAreaM2, 1e-9);
}

TEST(Joints, ACutoutThatCutsTheSlabInTwoGivesTwoPieces)
{
    Counter counter = slab(1000, 600, 40);
    counter.cutouts = {rectangleCutout({500, 300}, {100, 700})};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 2U);
    EXPECT_EQ(castings[1]->id, "C1.2");
}

}  // namespace
}  // namespace yardcast
