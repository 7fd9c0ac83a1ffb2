#include "core/handling/grip_loads.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

namespace yardcast {
namespace {

using testing::DoubleNear;
using testing::ElementsAre;

double sum(const std::vector<GripLoad>& loads)
{
    return std::accumulate(loads.begin(), loads.end(), 0.0, [](double all, const GripLoad& l) { return all + l.kg; });
}

TEST(GripLoads, TwoByTheirLevers)
{
    const auto loads = gripLoads({{0, 300}, {2000, 300}}, {500, 300}, 80);
    ASSERT_EQ(loads.size(), 2U);
    EXPECT_NEAR(loads[0].kg, 60, 1e-9);
    EXPECT_NEAR(loads[1].kg, 20, 1e-9);
}

TEST(GripLoads, AtTheEndsOfAnEdgeOnlyTheWayAlongItCounts)
{
    const auto loads = gripLoads({{0, 0}, {1000, 0}}, {250, 310}, 40);
    ASSERT_EQ(loads.size(), 2U);
    EXPECT_NEAR(loads[0].kg, 30, 1e-9);
    EXPECT_NEAR(loads[1].kg, 10, 1e-9);
}

/// Moments about the line through the first two leave the third no choice.
TEST(GripLoads, ThreeByStatics)
{
    const auto loads = gripLoads({{0, 0}, {1000, 0}, {500, 600}}, {500, 200}, 90);
    ASSERT_EQ(loads.size(), 3U);
    EXPECT_NEAR(loads[2].kg, 90 * 200 / 600.0, 1e-9);
    EXPECT_NEAR(loads[0].kg, 30, 1e-9);
    EXPECT_NEAR(loads[1].kg, 30, 1e-9);
}

TEST(GripLoads, FourAtTheCornersShareEvenlyAboutTheirMiddle)
{
    const std::vector<Point> corners{{0, 0}, {0, 600}, {1800, 0}, {1800, 600}};
    for (const GripLoad& load : gripLoads(corners, {900, 300}, 130)) EXPECT_NEAR(load.kg, 32.5, 1e-9);
    const auto loads = gripLoads(corners, {1350, 300}, 100);
    EXPECT_NEAR(loads[0].kg, 12.5, 1e-9);
    EXPECT_NEAR(loads[2].kg, 37.5, 1e-9);
}

TEST(GripLoads, BelowNothingWhereThePieceTips)
{
    const auto loads = gripLoads({{500, 0}, {1000, 0}}, {250, 0}, 40);
    ASSERT_EQ(loads.size(), 2U);
    EXPECT_LT(loads[1].kg, 0.0);
    EXPECT_NEAR(sum(loads), 40, 1e-9);
}

TEST(GripLoads, NoneWhereNothingCanBeSaid)
{
    EXPECT_TRUE(gripLoads({}, {0, 0}, 10).empty());
    EXPECT_TRUE(gripLoads({{0, 0}}, {0, 0}, 10).empty());
    EXPECT_TRUE(gripLoads({{5, 5}, {5, 5}, {5, 5}}, {0, 0}, 10).empty());
    EXPECT_TRUE(gripLoads({{0, 0}, {NAN, 5}}, {0, 0}, 10).empty());
    EXPECT_TRUE(gripLoads({{0, 0}, {10, 0}}, {0, 0}, NAN).empty());
}

TEST(GripLoads, KeepEquilibriumAndDoNotCareHowThePlanIsTurned)
{
    std::mt19937 random(7);
    std::uniform_real_distribution<double> along(0, 2000);
    std::uniform_real_distribution<double> across(0, 700);
    for (int run = 0; run < 300; ++run) {
        std::vector<Point> grips(2 + run % 6);
        for (Point& grip : grips) grip = {along(random), across(random)};
        const Point centroid{along(random), across(random)};
        const auto loads = gripLoads(grips, centroid, 77.0);
        ASSERT_EQ(loads.size(), grips.size());
        EXPECT_NEAR(sum(loads), 77.0, 1e-9);
        // Grips within a millimetre of one line count as on it and hold along it only.
        const double wide = std::abs(cross(grips[1] - grips[0], grips.back() - grips[0]));
        if (grips.size() > 3 || (grips.size() == 3 && wide > 3.0 * 2000)) {
            Point moment;
            for (const GripLoad& load : loads) moment = moment + (load.at - centroid) * load.kg;
            // Three grips nearly on one line bear thousands of kg with and against each other: relative to those.
            double most = 77.0;
            for (const GripLoad& load : loads) most = std::max(most, std::abs(load.kg));
            EXPECT_NEAR(length(moment), 0.0, 1e-7 * most * 2000);
        }
        const Placement place{{-350, 1200}, 37.0 * run};
        std::vector<Point> turned;
        for (const Point grip : grips) turned.push_back(place.toPlan(grip));
        const auto same = gripLoads(turned, place.toPlan(centroid), 77.0);
        for (std::size_t i = 0; i < loads.size(); ++i) {
            EXPECT_NEAR(same[i].kg, loads[i].kg, 1e-7 * std::max(77.0, std::abs(loads[i].kg)));
        }
    }
}

TEST(PersonLoads, PeopleAtTheEndsHoldBothHandsThere)
{
    const auto loads = gripLoads({{0, 0}, {1800, 0}, {0, 600}, {1800, 600}}, {600, 300}, 90);
    EXPECT_THAT(personLoads(loads, 2), ElementsAre(DoubleNear(60, 1e-9), DoubleNear(30, 1e-9)));
    EXPECT_EQ(personLoads(loads, 4).size(), 4U);
    EXPECT_EQ(personLoads(loads, 9).size(), 4U) << "no more hands than grips";
    EXPECT_THAT(personLoads(loads, 1), ElementsAre(DoubleNear(90, 1e-9)));
}

TEST(PersonLoads, ThreeAtFourGripsSpareTheHeavyEnd)
{
    const auto loads = gripLoads({{0, 0}, {1800, 0}, {0, 600}, {1800, 600}}, {600, 300}, 90);
    const auto shares = personLoads(loads, 3);
    EXPECT_THAT(shares, ElementsAre(DoubleNear(30, 1e-9), DoubleNear(30, 1e-9), DoubleNear(30, 1e-9)));
}

TEST(PersonLoads, NobodyBearsNothing)
{
    EXPECT_TRUE(personLoads({}, 2).empty());
    EXPECT_TRUE(personLoads({{{0, 0}, 5.0}, {{9, 0}, 5.0}}, 0).empty());
}

}  // namespace
}  // namespace yardcast
