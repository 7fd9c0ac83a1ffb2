#include "core/geometry/region.h"

#include <gtest/gtest.h>

#include <cmath>

namespace yardcast {
namespace {

const Ring kUnitSquareFarOff{{100000, 200000}, {100001, 200000}, {100001, 200001}, {100000, 200001}};

TEST(SignedArea, IsPositiveCounterClockwise)
{
    EXPECT_DOUBLE_EQ(signedArea({{0, 0}, {4, 0}, {0, 3}}), 6.0);
    EXPECT_DOUBLE_EQ(signedArea({{0, 0}, {0, 3}, {4, 0}}), -6.0);
}

TEST(SignedArea, OfFewerThanThreePointsIsZero)
{
    EXPECT_EQ(signedArea({}), 0.0);
    EXPECT_EQ(signedArea({{1, 1}, {2, 5}}), 0.0);
}

TEST(Moments, OfRectangleAboutItsCornerAreThoseOfTheTextbook)
{
    // b x h from the corner: A = bh, Sx = b2h/2, Ixx = b3h/3, Ixy = b2h2/4.
    const AreaMoments m = moments(Polygon{{{0, 0}, {3, 0}, {3, 2}, {0, 2}}, {}});
    EXPECT_DOUBLE_EQ(m.areaMm2, 6.0);
    EXPECT_DOUBLE_EQ(m.firstXMm3, 9.0);
    EXPECT_DOUBLE_EQ(m.firstYMm3, 6.0);
    EXPECT_DOUBLE_EQ(m.secondXxMm4, 18.0);
    EXPECT_DOUBLE_EQ(m.secondYyMm4, 8.0);
    EXPECT_DOUBLE_EQ(m.secondXyMm4, 9.0);
}

TEST(Moments, OfRightTriangleAreThoseOfTheTextbook)
{
    // Legs b along x and h along y from the right angle: Ixx = b3h/12, Iyy = bh3/12, Ixy = b2h2/24.
    const AreaMoments m = moments(Polygon{{{0, 0}, {6, 0}, {0, 4}}, {}});
    EXPECT_DOUBLE_EQ(m.areaMm2, 12.0);
    EXPECT_NEAR(m.centroid().x, 2.0, 1e-12);
    EXPECT_NEAR(m.centroid().y, 4.0 / 3.0, 1e-12);
    EXPECT_NEAR(m.secondXxMm4, 72.0, 1e-9);
    EXPECT_NEAR(m.secondYyMm4, 32.0, 1e-9);
    EXPECT_NEAR(m.secondXyMm4, 24.0, 1e-9);
}

TEST(Moments, HolesAreTakenOffInEitherSense)
{
    const Ring outer{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
    const Ring hole{{6, 4}, {8, 4}, {8, 6}, {6, 6}};
    const Ring reversed{hole.rbegin(), hole.rend()};
    for (const Ring& h : {hole, reversed}) {
        const AreaMoments m = moments(Polygon{outer, {h}});
        EXPECT_DOUBLE_EQ(m.areaMm2, 96.0);
        EXPECT_NEAR(m.centroid().x, (100.0 * 5 - 4.0 * 7) / 96.0, 1e-12);
        EXPECT_NEAR(m.centroid().y, 5.0, 1e-12);
    }
}

TEST(Moments, KeepTheirDigitsFarFromTheOrigin)
{
    const AreaMoments m = moments(Polygon{kUnitSquareFarOff, {}});
    EXPECT_NEAR(m.areaMm2, 1.0, 1e-12);
    EXPECT_NEAR(m.centroid().x, 100000.5, 1e-9);
    EXPECT_NEAR(m.centroid().y, 200000.5, 1e-9);
}

TEST(Moments, CentroidOfNothingIsTheOrigin)
{
    EXPECT_EQ(moments(Region{}).centroid(), (Point{0, 0}));
    EXPECT_EQ(areaMm2(Region{}), 0.0);
}

TEST(Perimeter, CountsHoles)
{
    const Region region{{{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {{{4, 4}, {4, 6}, {6, 6}, {6, 4}}}}};
    EXPECT_DOUBLE_EQ(perimeterMm(region), 48.0);
}

TEST(Bounds, OfNothingIsNothing)
{
    EXPECT_FALSE(boundsOf(Ring{}));
    EXPECT_FALSE(boundsOf(Region{}));
    const auto box = boundsOf(kUnitSquareFarOff);
    ASSERT_TRUE(box);
    EXPECT_EQ(box->low, (Point{100000, 200000}));
    EXPECT_EQ(box->width(), 1.0);
}

TEST(Contains, InsideOnTheBoundaryAndInAHole)
{
    const Region region{{{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {{{4, 4}, {4, 6}, {6, 6}, {6, 4}}}}};
    EXPECT_TRUE(contains(region, {2, 5}));
    EXPECT_TRUE(contains(region, {0, 5}));
    EXPECT_TRUE(contains(region, {10, 10}));
    EXPECT_TRUE(contains(region, {4, 5})) << "the edge of a hole belongs to the region";
    EXPECT_FALSE(contains(region, {5, 5}));
    EXPECT_FALSE(contains(region, {10.01, 5}));
    EXPECT_FALSE(contains(Region{}, {0, 0}));
}

TEST(Contains, NotchOfAnL)
{
    const Ring l{{0, 0}, {20, 0}, {20, 10}, {10, 10}, {10, 20}, {0, 20}};
    EXPECT_TRUE(contains(l, {5, 15}));
    EXPECT_FALSE(contains(l, {15, 15}));
}

TEST(Distance, ToSegmentEndsAndRing)
{
    EXPECT_DOUBLE_EQ(distanceToSegment({3, 4}, {0, 0}, {0, 0}), 5.0);
    EXPECT_DOUBLE_EQ(distanceToSegment({5, 3}, {0, 0}, {10, 0}), 3.0);
    EXPECT_DOUBLE_EQ(distanceToSegment({13, 4}, {0, 0}, {10, 0}), 5.0);
    EXPECT_DOUBLE_EQ(distanceToRing({{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {5, 4}), 4.0);
}

TEST(Transformed, QuarterTurnsAreExactAndInvertible)
{
    const Placement placement{{100, 50}, 90};
    const Ring ring{{0, 0}, {10, 0}, {10, 5}};
    const Ring expected{{100, 50}, {100, 60}, {95, 60}};
    EXPECT_EQ(transformed(ring, placement), expected);
    for (const Point p : ring) EXPECT_EQ(placement.toOwn(placement.toPlan(p)), p);
}

TEST(Transformed, KeepsAreaAndHoles)
{
    const Region region{{{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {{{4, 4}, {4, 6}, {6, 6}, {6, 4}}}}};
    const Region moved = transformed(region, {{-3000, 700}, 33.3});
    ASSERT_EQ(moved.size(), 1U);
    EXPECT_EQ(moved[0].holes.size(), 1U);
    EXPECT_NEAR(areaMm2(moved), 96.0, 1e-9);
}

}  // namespace
}  // namespace yardcast
