#include <cmath>

#include <gtest/gtest.h>

#include "tests/core/castings/counters.h"

namespace yardcast {

namespace {

// All figures worked by hand; booleans keep within 1e-4 mm, so areas of strips 2 m long within 1 mm2.
constexpr double kAreaMm2 = 1.0;

double grooveAreaMm2(const Casting& casting)
{
    double sum = 0.0;
    for (const Zone& zone : casting.zones) {
        if (zone.grooveMm > 0.0) sum += areaMm2(zone.region);
    }
    return sum;
}

double rebateAreaMm2(const Casting& casting)
{
    double sum = 0.0;
    for (const Zone& zone : casting.zones) {
        if (zone.isConcrete() && zone.fromMm > 0.0) sum += areaMm2(zone.region);
    }
    return sum;
}

}  // namespace

TEST(Grooves, ADripTakesItsOwnVolumeOutOfTheUnderside)
{
    Counter counter = rimmedSlab();
    const auto before = castingsOf(partOf(counter)).at(0);
    counter.drip = Drip{{0}, 20, 8, 5, {}};
    const auto after = castingsOf(partOf(counter)).at(0);
    EXPECT_NEAR(grooveAreaMm2(*after), 1800 * 8, kAreaMm2);
    EXPECT_NEAR(before->volumeL - after->volumeL, 1800 * 8 * 5 * 1e-6, 1e-5);
    EXPECT_NEAR(before->massKg - after->massKg, 1800 * 8 * 5 * 2400e-9, 1e-4);
    // Taken away at y = 24 and 57.5 below the face, so the centre of the rest lies further back and higher.
    const double lost = 1800 * 8 * 5 * 1e-6;
    EXPECT_NEAR(after->centroidMm[1], (before->centroidMm[1] * before->volumeL - 24 * lost) / after->volumeL, 1e-4);
    EXPECT_NEAR(900 - after->centroidMm[2],
                ((900 - before->centroidMm[2]) * before->volumeL - 57.5 * lost) / after->volumeL, 1e-4);
    EXPECT_EQ(after->deepestMm, 60);
    EXPECT_NEAR(areaMm2(after->outline), areaMm2(before->outline), 1e-9) << "the face is whole";
}

TEST(Grooves, TwoDripsMeetInAMitreAndRunOutAtOtherEdges)
{
    Counter counter = slab(1000, 600, 40);
    counter.drip = Drip{{0, 1}, 20, 8, 5, {}};
    const auto casting = castingsOf(partOf(counter)).at(0);
    // Front: 980 from the left end to 20 before the right edge; right: from y = 28 to the back.
    EXPECT_NEAR(grooveAreaMm2(*casting), 8 * 980 + 8 * (600 - 28), kAreaMm2);
}

TEST(Grooves, ADripFollowsAReentrantCorner)
{
    Counter counter = lShape();
    counter.drip = Drip{{3, 4}, 20, 8, 5, {}};
    const auto casting = castingsOf(partOf(counter)).at(0);
    // Edge 3: x = 1200, y from 1500 to 600; edge 4: y = 600, x from 1200 to 0; the corner is closed by an L of 28 and 20.
    EXPECT_NEAR(grooveAreaMm2(*casting), 8 * 900 + 8 * 1200 + 28 * 28 - 20 * 20, kAreaMm2);
}

TEST(Grooves, ARebateTakesItsOwnVolumeOutOfTheFace)
{
    Counter counter = rimmedSlab();
    const auto before = castingsOf(partOf(counter)).at(0);
    counter.rebate = Rebate{{2}, 80, 8, {}};
    const auto after = castingsOf(partOf(counter)).at(0);
    EXPECT_NEAR(rebateAreaMm2(*after), 1800 * 80, kAreaMm2);
    const double lost = 1800 * 80 * 8 * 1e-6;
    EXPECT_NEAR(before->volumeL - after->volumeL, lost, 1e-5);
    EXPECT_NEAR(900 - after->centroidMm[2],
                ((900 - before->centroidMm[2]) * before->volumeL - 4 * lost) / after->volumeL, 1e-4);
    EXPECT_EQ(after->deepestMm, 60);
}

TEST(Grooves, AreOpenedByCutoutsAndDividedByJoints)
{
    Counter counter = slab(1200, 600, 40);
    counter.cutouts = {rectangleCutout({300, 60}, {200, 100})};
    counter.joints = {Joint{{600, 0}, {600, 600}, 4.0, {}}};
    counter.drip = Drip{{0}, 20, 8, 5, {}};
    counter.rebate = Rebate{{2}, 44, 8, {}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 2U);
    EXPECT_NEAR(grooveAreaMm2(*castings[0]), 8 * (598 - 200), kAreaMm2);
    EXPECT_NEAR(grooveAreaMm2(*castings[1]), 8 * 598, kAreaMm2);
    EXPECT_NEAR(rebateAreaMm2(*castings[0]), 44 * 598, kAreaMm2);
}

TEST(Grooves, WhereADripLiesUnderARebateBothAreTaken)
{
    Counter counter = slab(1000, 600, 40);
    const double plainL = volumeL(counter);
    counter.drip = Drip{{0}, 20, 8, 5, {}};
    counter.rebate = Rebate{{0}, 44, 8, {}};
    EXPECT_NEAR(plainL - volumeL(counter), 1000 * (8 * 5 + 44 * 8) * 1e-6, 1e-5);
}

TEST(Grooves, ADripIsLeftOutWhereFoamLiesBelow)
{
    Counter counter = rimmedSlab();
    counter.filler = Filler{};
    const double plainL = volumeL(counter);
    counter.drip = Drip{{0}, 70, 8, 5, {}};
    EXPECT_NEAR(plainL - volumeL(counter), 2 * 60 * 8 * 5 * 1e-6, 1e-5) << "only the rims at its ends have it";
    counter.filler.reset();
    EXPECT_NEAR(plainL - volumeL(counter), 1800 * 8 * 5 * 1e-6, 1e-5);
}

TEST(Grooves, WhatWouldCutThroughOrHasNoSizeIsNotThere)
{
    Counter counter = slab(1000, 600, 40);
    const double plainL = volumeL(counter);
    counter.drip = Drip{{0}, 20, 8, 39.5, {}};
    EXPECT_DOUBLE_EQ(volumeL(counter), plainL);
    counter.drip->depthMm = 5;
    counter.drip->edges = {7, -1};
    EXPECT_DOUBLE_EQ(volumeL(counter), plainL) << "unknown edges are no edges, not all";
    counter.drip->edges = {};
    EXPECT_DOUBLE_EQ(volumeL(counter), plainL);
    counter.drip->edges = {0};
    counter.drip->widthMm = std::nan("");
    EXPECT_EQ(volumeL(counter), 0.0) << "what is no number cannot be computed";
}

}  // namespace yardcast
