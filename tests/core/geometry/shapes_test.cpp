#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/geometry/region.h"

namespace yardcast {
namespace {

constexpr double kPi = std::numbers::pi;

/// Largest distance of the ring, at its points and along its chords, from the circle about `centre`.
double farthestFromCircle(const Ring& ring, Point centre, double radius)
{
    double worst = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i];
        const Point b = ring[(i + 1) % ring.size()];
        for (int k = 0; k <= 16; ++k)
            worst = std::max(worst, std::abs(distance(a + (b - a) * (k / 16.0), centre) - radius));
    }
    return worst;
}

class CircleOf : public testing::TestWithParam<double> {};

TEST_P(CircleOf, HasTheExactAreaAndStaysWithinTheTolerance)
{
    const double diameter = GetParam();
    const Ring ring = circleRing({500, 300}, diameter);
    EXPECT_NEAR(signedArea(ring) / (kPi / 4 * diameter * diameter), 1.0, 1e-12);
    EXPECT_LE(farthestFromCircle(ring, {500, 300}, diameter / 2), kArcToleranceMm + 1e-9);
    const Point c = moments(Polygon{ring, {}}).centroid();
    EXPECT_NEAR(c.x, 500.0, 1e-9);
    EXPECT_NEAR(c.y, 300.0, 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Diameters, CircleOf, testing::Values(4.0, 35.0, 380.0, 2000.0));

TEST(Rectangle, StandsAboutItsCentre)
{
    const Ring ring = rectangleRing({100, 50}, {40, 20});
    const Ring expected{{80, 40}, {120, 40}, {120, 60}, {80, 60}};
    EXPECT_EQ(ring, expected);
}

TEST(Rectangle, TurnsAboutItsCentreExactlyAtRightAngles)
{
    const auto box = boundsOf(rectangleRing({100, 50}, {40, 20}, 90));
    ASSERT_TRUE(box);
    EXPECT_EQ(box->low, (Point{90, 30}));
    EXPECT_EQ(box->high, (Point{110, 70}));
}

class RoundedBy : public testing::TestWithParam<double> {};

TEST_P(RoundedBy, KeepsTheAreaOfTheTrueShape)
{
    const double r = GetParam();
    const Ring ring = rectangleRing({0, 0}, {560, 400}, 0, r);
    EXPECT_NEAR(signedArea(ring), 560.0 * 400.0 - (4 - kPi) * r * r, 1e-6);
    const auto box = boundsOf(ring);
    ASSERT_TRUE(box);
    EXPECT_NEAR(box->width(), 560.0, 2 * kArcToleranceMm);
    EXPECT_NEAR(box->height(), 400.0, 2 * kArcToleranceMm);
    EXPECT_FALSE(selfCrossing(ring));
    // Along the arc of the corner at the upper right.
    const Point centre{280 - r, 200 - r};
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point middle = (ring[i] + ring[(i + 1) % ring.size()]) * 0.5;
        for (const Point p : {ring[i], middle}) {
            if (p.x > centre.x + 1e-6 && p.y > centre.y + 1e-6) {
                EXPECT_NEAR(distance(p, centre), r, kArcToleranceMm + 1e-9);
            }
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Radii, RoundedBy, testing::Values(0.5, 5.0, 20.0, 75.0, 200.0));

TEST(Rectangle, RadiusIsCutToHalfTheShorterSide)
{
    const Ring ring = rectangleRing({0, 0}, {300, 100}, 0, 1e9);
    EXPECT_NEAR(signedArea(ring), 200.0 * 100.0 + kPi * 50 * 50, 1e-6);
    EXPECT_FALSE(selfCrossing(ring));
}

TEST(Strip, LiesAboutTheLineAndIsLengthenedAtBothEnds)
{
    const auto box = boundsOf(stripRing({100, 0}, {100, 600}, 4, 5));
    ASSERT_TRUE(box);
    EXPECT_EQ(box->low, (Point{98, -5}));
    EXPECT_EQ(box->high, (Point{102, 605}));
    EXPECT_NEAR(signedArea(stripRing({0, 0}, {300, 400}, 80)), 500.0 * 80.0, 1e-9);
}

TEST(Strip, WithoutDirectionIsEmpty) { EXPECT_TRUE(stripRing({3, 3}, {3, 3}, 80, 5).empty()); }

}  // namespace
}  // namespace yardcast
