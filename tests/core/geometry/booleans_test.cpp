#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "core/geometry/region.h"

namespace yardcast {
namespace {

Region rectangle(double x0, double y0, double x1, double y1)
{
    return regionOf({{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}});
}

TEST(RegionOf, TurnsAClockwiseRingRound)
{
    const Region region = regionOf({{0, 0}, {0, 10}, {20, 10}, {20, 0}});
    ASSERT_EQ(region.size(), 1U);
    EXPECT_DOUBLE_EQ(signedArea(region[0].outer), 200.0);
}

TEST(RegionOf, KeepsCoordinatesOnTheLatticeExactly)
{
    const Region region = rectangle(0, 0, 1800.1, 619.9999);
    const auto box = boundsOf(region);
    ASSERT_TRUE(box);
    EXPECT_EQ(box->high, (Point{1800.1, 619.9999}));
}

TEST(RegionOf, DegenerateRingsAreEmpty)
{
    EXPECT_TRUE(regionOf({}).empty());
    EXPECT_TRUE(regionOf({{1, 1}}).empty());
    EXPECT_TRUE(regionOf({{1, 1}, {2, 2}}).empty());
    EXPECT_TRUE(regionOf({{0, 0}, {5, 0}, {10, 0}}).empty());
}

TEST(RegionOf, RefusesWhatIsNoNumberOrTooLarge)
{
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), HUGE_VAL, -HUGE_VAL, 1e300, 1.0001e6}) {
        EXPECT_TRUE(regionOf({{0, 0}, {bad, 0}, {10, 10}}).empty()) << bad;
        EXPECT_TRUE(unite(rectangle(0, 0, 1, 1), {{{{0, 0}, {1, 0}, {1, bad}}, {}}}).empty()) << bad;
        EXPECT_TRUE(offset(rectangle(0, 0, 1, 1), bad, OffsetJoin::mitre).empty()) << bad;
    }
    EXPECT_FALSE(regionOf({{-1e6, -1e6}, {1e6, -1e6}, {1e6, 1e6}}).empty());
}

TEST(Booleans, OfTwoOverlappingRectangles)
{
    const Region a = rectangle(0, 0, 100, 60);
    const Region b = rectangle(80, 20, 200, 40);
    EXPECT_DOUBLE_EQ(areaMm2(unite(a, b)), 6000 + 2400 - 400);
    EXPECT_DOUBLE_EQ(areaMm2(intersect(a, b)), 400.0);
    EXPECT_DOUBLE_EQ(areaMm2(subtract(a, b)), 5600.0);
}

TEST(Booleans, AHoleComesOutAsAHole)
{
    const Region ring = subtract(rectangle(0, 0, 100, 60), rectangle(40, 20, 60, 40));
    ASSERT_EQ(ring.size(), 1U);
    ASSERT_EQ(ring[0].holes.size(), 1U);
    EXPECT_LT(signedArea(ring[0].holes[0]), 0.0);
    EXPECT_DOUBLE_EQ(areaMm2(ring), 5600.0);
}

TEST(Booleans, AnIslandInAHoleIsAPolygonOfItsOwn)
{
    const Region ring = subtract(rectangle(0, 0, 100, 100), rectangle(20, 20, 80, 80));
    const Region both = unite(ring, rectangle(40, 40, 60, 60));
    ASSERT_EQ(both.size(), 2U);
    EXPECT_DOUBLE_EQ(areaMm2(both), 10000 - 3600 + 400);
    EXPECT_TRUE(contains(both, {50, 50}));
    EXPECT_FALSE(contains(both, {30, 30}));
}

TEST(Booleans, WithNothing)
{
    const Region a = rectangle(0, 0, 10, 10);
    EXPECT_DOUBLE_EQ(areaMm2(unite(a, {})), 100.0);
    EXPECT_DOUBLE_EQ(areaMm2(subtract(a, {})), 100.0);
    EXPECT_TRUE(intersect(a, {}).empty());
    EXPECT_TRUE(subtract({}, a).empty());
}

TEST(UniteRings, CountsOverlapsOnceInEitherSense)
{
    const Ring a{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
    const Ring clockwise{{5, 0}, {5, 10}, {15, 10}, {15, 0}};
    EXPECT_DOUBLE_EQ(areaMm2(uniteRings({a, clockwise, a})), 150.0);
    EXPECT_TRUE(uniteRings({}).empty());
}

TEST(Offset, MitredRectangleGrowsAndShrinksExactly)
{
    const Region a = rectangle(0, 0, 100, 60);
    EXPECT_NEAR(areaMm2(offset(a, 10, OffsetJoin::mitre)), 120.0 * 80.0, 0.1);
    EXPECT_NEAR(areaMm2(offset(a, -10, OffsetJoin::mitre)), 80.0 * 40.0, 0.1);
    EXPECT_TRUE(offset(a, -30.01, OffsetJoin::mitre).empty());
}

TEST(Offset, HolesShrinkWhereTheRegionGrows)
{
    const Region ring = subtract(rectangle(0, 0, 100, 100), rectangle(30, 30, 70, 70));
    EXPECT_NEAR(areaMm2(offset(ring, 5, OffsetJoin::mitre)), 110.0 * 110.0 - 30.0 * 30.0, 0.1);
    EXPECT_NEAR(areaMm2(offset(ring, -5, OffsetJoin::mitre)), 90.0 * 90.0 - 50.0 * 50.0, 0.1);
}

TEST(Offset, RoundJoinIsTheParallelCurve)
{
    // Steiner: A + P d + pi d2, less what the chords cut off: at most 2/3 of the tolerance along the arcs.
    const double d = 60.0;
    const double exact = 560.0 * 400.0 + 2 * (560.0 + 400.0) * d + std::numbers::pi * d * d;
    const double area = areaMm2(offset(rectangle(0, 0, 560, 400), d, OffsetJoin::round));
    EXPECT_LE(area, exact + 0.1);
    EXPECT_GE(area, exact - 2 * std::numbers::pi * d * kArcToleranceMm * 2 / 3 - 0.1);
}

/// A star-shaped ring: simple, often far from convex.
Ring randomStar(std::mt19937& random)
{
    std::uniform_int_distribution<int> corners(3, 24);
    std::uniform_real_distribution<double> radius(20, 900);
    std::uniform_real_distribution<double> centre(-500, 500);
    const Point c{centre(random), centre(random)};
    const int count = corners(random);
    Ring ring;
    for (int i = 0; i < count; ++i) {
        const double angle = 2 * std::numbers::pi * i / count;
        ring.push_back(c + Point{std::cos(angle), std::sin(angle)} * radius(random));
    }
    return ring;
}

TEST(Booleans, AreasOfRandomPolygonsAddUp)
{
    std::mt19937 random(20240611);
    for (int i = 0; i < 400; ++i) {
        const Region a = regionOf(randomStar(random));
        const Region b = regionOf(randomStar(random));
        const double both = areaMm2(intersect(a, b));
        // The lattice moves a crossing by up to its pitch: error below perimeter times pitch.
        const double allowed = kLatticeMm * (perimeterMm(a) + perimeterMm(b));
        EXPECT_NEAR(areaMm2(unite(a, b)) + both, areaMm2(a) + areaMm2(b), allowed);
        EXPECT_NEAR(areaMm2(subtract(a, b)) + both, areaMm2(a), allowed);
        EXPECT_NEAR(areaMm2(subtract(b, a)) + both, areaMm2(b), allowed);
        EXPECT_NEAR(areaMm2(intersect(subtract(a, b), b)), 0.0, allowed);
    }
}

TEST(Booleans, OfTurnedPolygonsHaveTheSameArea)
{
    std::mt19937 random(7);
    std::uniform_real_distribution<double> degrees(-360, 360);
    for (int i = 0; i < 100; ++i) {
        const Ring a = randomStar(random);
        const Ring b = randomStar(random);
        const Placement placement{{degrees(random), degrees(random)}, degrees(random)};
        const double before = areaMm2(intersect(regionOf(a), regionOf(b)));
        const double after =
            areaMm2(intersect(regionOf(transformed(a, placement)), regionOf(transformed(b, placement))));
        EXPECT_NEAR(after, before, kLatticeMm * (perimeterMm(a) + perimeterMm(b)));
    }
}

}  // namespace
}  // namespace yardcast
