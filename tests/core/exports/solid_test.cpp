#include <gtest/gtest.h>

#include "core/exports/solid.h"

namespace yardcast {
namespace {

Region box(double x0, double y0, double x1, double y1)
{
    return regionOf({{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}});
}

/// The sign of the volume tells whether triangles turn outwards.
TEST(Solid, ABoxHasEightPointsTwelveTrianglesAndItsVolume)
{
    const auto solid = solidOfPrisms({{box(0, 0, 30, 20), 5, 15}});
    ASSERT_TRUE(solid);
    EXPECT_NEAR(volumeMm3(*solid), 30 * 20 * 10, 1e-6);
    const SolidCheck check = checkSolid(*solid);
    EXPECT_TRUE(check.closed);
    EXPECT_EQ(check.points, 8);
    EXPECT_EQ(check.edges, 18);
    EXPECT_EQ(check.triangles, 12);
    EXPECT_EQ(check.euler(), 2);
    EXPECT_EQ(check.shells, 1);
}

TEST(Solid, AHoleThroughTheBodyIsAHandle)
{
    const auto solid = solidOfPrisms({{subtract(box(0, 0, 30, 20), box(10, 5, 20, 15)), 0, 10}});
    ASSERT_TRUE(solid);
    EXPECT_NEAR(volumeMm3(*solid), (600 - 100) * 10, 1e-6);
    EXPECT_EQ(checkSolid(*solid).euler(), 0);
}

TEST(Solid, PrismsOfDifferentHeightAreOneBody)
{
    // The rim's long side meets two shorter ones: corners of those lie on it.
    const auto solid = solidOfPrisms(
        {{box(0, 0, 100, 10), 0, 60}, {box(0, 10, 40, 50), 0, 40}, {box(40, 10, 100, 50), 0, 25}});
    ASSERT_TRUE(solid);
    EXPECT_NEAR(volumeMm3(*solid), 1000 * 60 + 1600 * 40 + 2400 * 25, 1e-6);
    const SolidCheck check = checkSolid(*solid);
    EXPECT_TRUE(check.closed);
    EXPECT_EQ(check.euler(), 2);
    EXPECT_EQ(check.shells, 1);
}

TEST(Solid, WhatIsClosedAllRoundIsAShellTurnedInside)
{
    const Region inner = box(10, 10, 20, 20);
    const auto solid =
        solidOfPrisms({{subtract(box(0, 0, 30, 30), inner), 0, 30}, {inner, 0, 10}, {inner, 20, 30}});
    ASSERT_TRUE(solid);
    EXPECT_NEAR(volumeMm3(*solid), 27000 - 1000, 1e-6);
    const SolidCheck check = checkSolid(*solid);
    EXPECT_EQ(check.shells, 2);
    EXPECT_EQ(check.euler(), 4);
}

TEST(Solid, StripsThatMeetAtACornerOnlyDoNotShareAnEdge)
{
    // Two deep squares touch at (50, 50); shallow field fills the rest.
    const std::vector<Prism> prisms{{box(0, 0, 50, 50), 0, 60},
                                    {box(50, 50, 100, 100), 0, 60},
                                    {box(50, 0, 100, 50), 0, 40},
                                    {box(0, 50, 50, 100), 0, 40}};
    const auto solid = solidOfPrisms(prisms);
    ASSERT_TRUE(solid);
    const SolidCheck check = checkSolid(*solid);
    EXPECT_TRUE(check.closed);
    EXPECT_EQ(check.euler(), 2);
    // Each of four triangles at the line is kPinchMm narrower at its tip: 50 mm x 20 mm x a thousandth at most.
    EXPECT_NEAR(volumeMm3(*solid), 2500.0 * (60 + 60 + 40 + 40), 50 * 60 * kPinchMm);

    const auto apart = solidOfPrisms({prisms[0], prisms[1]});
    ASSERT_TRUE(apart);
    EXPECT_EQ(checkSolid(*apart).shells, 2);
    EXPECT_EQ(checkSolid(*apart).euler(), 4);
}

TEST(Solid, CrossingOrEmptyPrismsGiveNothing)
{
    EXPECT_FALSE(solidOfPrisms({}));
    EXPECT_FALSE(solidOfPrisms({{box(0, 0, 10, 10), 5, 5}}));
    EXPECT_FALSE(solidOfPrisms({{box(0, 0, 30, 10), 0, 5}, {box(10, -10, 20, 20), 0, 5}}));
    EXPECT_FALSE(solidOfPrisms({{box(0, 0, 30, 30), 0, 5}, {box(10, 10, 20, 20), 0, 9}}));
}

TEST(Solid, ATaperedBlockHasTheVolumeOfAFrustum)
{
    const Ring lower{{0, 0}, {40, 0}, {40, 40}, {0, 40}};
    const Ring upper{{2, 2}, {38, 2}, {38, 38}, {2, 38}};
    const auto solid = solidThrough({{lower, 0}, {upper, 30}});
    ASSERT_TRUE(solid);
    EXPECT_NEAR(volumeMm3(*solid), 30.0 / 3 * (1600 + 1296 + 40 * 36), 1e-6);
    EXPECT_EQ(checkSolid(*solid).euler(), 2);
    // A step, and a ring that begins elsewhere and has more points.
    const Ring more{{38, 38}, {20, 38}, {2, 38}, {2, 2}, {38, 2}};
    const auto stepped = solidThrough({{lower, 0}, {lower, 10}, {more, 10}, {more, 30}});
    ASSERT_TRUE(stepped);
    EXPECT_NEAR(volumeMm3(*stepped), 16000 + 20 * 1296, 1e-6);
    EXPECT_EQ(checkSolid(*stepped).euler(), 2);
    EXPECT_FALSE(solidThrough({{lower, 30}, {upper, 0}}));
    EXPECT_FALSE(solidThrough({{lower, 0}, {{{100, 0}, {140, 0}, {140, 40}, {100, 40}}, 30}}));
    EXPECT_FALSE(solidThrough({{lower, 0}}));
}

TEST(Solid, TheCheckSeesAMissingAndATurnedTriangle)
{
    Solid solid = *solidOfPrisms({{box(0, 0, 30, 20), 5, 15}});
    Solid turned = solid;
    std::swap(turned.triangles[3][0], turned.triangles[3][1]);
    EXPECT_FALSE(checkSolid(turned).closed);
    solid.triangles.pop_back();
    EXPECT_FALSE(checkSolid(solid).closed);
}

}  // namespace
}  // namespace yardcast
