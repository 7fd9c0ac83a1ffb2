#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/geometry/region.h"

namespace yardcast {
namespace {

TEST(SelfCrossing, SimpleRingsHaveNone)
{
    EXPECT_FALSE(selfCrossing({}));
    EXPECT_FALSE(selfCrossing({{0, 0}, {10, 0}, {0, 10}}));
    EXPECT_FALSE(selfCrossing({{0, 0}, {20, 0}, {20, 10}, {10, 10}, {10, 20}, {0, 20}}));
    EXPECT_FALSE(selfCrossing({{0, 0}, {0, 10}, {10, 10}, {10, 0}})) << "clockwise";
}

TEST(SelfCrossing, FigureOfEight)
{
    const auto crossing = selfCrossing({{0, 0}, {10, 10}, {10, 0}, {0, 10}});
    ASSERT_TRUE(crossing);
    EXPECT_EQ(*crossing, std::pair(0, 2));
}

TEST(SelfCrossing, SpikeThatRunsBack)
{
    const auto crossing = selfCrossing({{0, 0}, {10, 0}, {20, 0}, {10, 0}, {10, 10}});
    ASSERT_TRUE(crossing);
    EXPECT_EQ(*crossing, std::pair(1, 2));
}

TEST(SelfCrossing, CornerThatTouchesAnEdge)
{
    EXPECT_TRUE(selfCrossing({{0, 0}, {20, 0}, {20, 10}, {10, 0}, {0, 10}}));
    EXPECT_FALSE(selfCrossing({{0, 0}, {20, 0}, {20, 10}, {10, 0.001}, {0, 10}}));
}

TEST(SelfCrossing, RepeatedAndStraightPointsAreNoCrossing)
{
    EXPECT_FALSE(selfCrossing({{0, 0}, {5, 0}, {5, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 0}}));
}

TEST(SelfCrossing, NumbersThatAreNoneArePassedOver)
{
    EXPECT_FALSE(selfCrossing({{0, 0}, {10, 10}, {10, 0}, {0, NAN}}));
    EXPECT_FALSE(selfCrossing({{0, 0}, {1e300, 10}, {10, 0}, {0, 10}}));
}

TEST(SelfCrossing, ALongRingIsSwept)
{
    Ring ring;
    const int count = 20000;
    for (int i = 0; i < count; ++i) {
        const double angle = 2 * std::numbers::pi * i / count;
        ring.push_back({100000 * std::cos(angle), 100000 * std::sin(angle)});
    }
    EXPECT_FALSE(selfCrossing(ring));
    std::swap(ring[5000], ring[5001]);
    EXPECT_TRUE(selfCrossing(ring));
}

}  // namespace
}  // namespace yardcast
