#include "core/front/division.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/front/front_layout.h"

namespace yardcast {
namespace {

TEST(Divide, TakesTheCountWhoseGapIsNearestToTheWish)
{
    // 1000 mm, battens of 46: 18 leave (1000 - 828) / 19 = 9.05, 19 leave (1000 - 874) / 20 = 6.3.
    const auto nine = divide(1000, 46, 9, {});
    ASSERT_TRUE(nine);
    EXPECT_EQ(nine->battens, 18);
    EXPECT_NEAR(nine->gapMm, 172.0 / 19, 1e-12);
    const auto six = divide(1000, 46, 6, {});
    ASSERT_TRUE(six);
    EXPECT_EQ(six->battens, 19);
    EXPECT_NEAR(six->gapMm, 6.3, 1e-12);
}

TEST(Divide, AWishOutsideTheLimitsGetsTheNearestInside)
{
    const auto wide = divide(1000, 46, 60, {});
    ASSERT_TRUE(wide);
    EXPECT_EQ(wide->battens, 17);  // (1000 - 782) / 18 = 12.1; 16 would leave 15.5
    const auto closed = divide(1000, 46, 0, {});
    ASSERT_TRUE(closed);
    EXPECT_EQ(closed->battens, 19);  // 20 would leave 3.8
}

TEST(Divide, HasNoAnswerWhereNoCountKeepsTheLimits)
{
    // One batten of 46 needs 54 to 76 mm, two need 104 to 137.
    EXPECT_FALSE(divide(90, 46, 8, {}));
    EXPECT_FALSE(divide(53.9, 46, 8, {}));
    EXPECT_TRUE(divide(54, 46, 8, {}));
    EXPECT_TRUE(divide(76, 46, 8, {}));
    EXPECT_FALSE(divide(10, 46, 8, {}));
}

TEST(Divide, PutsDoorEdgesInTheMiddleOfGaps)
{
    const auto d = divide(1000, 46, 9, {{300, 700}});
    ASSERT_TRUE(d);
    ASSERT_EQ(d->doorGaps.size(), 1U);
    const auto [from, to] = d->doorGaps[0];
    EXPECT_LT(from, to);
    const double pitch = 46 + d->gapMm;
    EXPECT_NEAR(d->gapCentreMm(from, 46), d->gapMm / 2 + from * pitch, 1e-12);
    EXPECT_LE(std::abs(d->gapCentreMm(from, 46) - 300), pitch / 2 + 1e-9);
    EXPECT_LE(std::abs(d->gapCentreMm(to, 46) - 700), pitch / 2 + 1e-9);
    EXPECT_LE(d->largestShiftMm, pitch / 2 + 1e-9);
}

TEST(Divide, ADoorNarrowerThanABattenGetsOne)
{
    const auto d = divide(1000, 46, 9, {{500, 505}});
    ASSERT_TRUE(d);
    EXPECT_EQ(d->doorGaps[0].second - d->doorGaps[0].first, 1);
}

TEST(Divide, OverlappingWishesAreKeptApart)
{
    const auto d = divide(1000, 46, 9, {{400, 800}, {200, 500}});
    ASSERT_TRUE(d);
    EXPECT_LT(d->doorGaps[1].first, d->doorGaps[1].second);
    EXPECT_LE(d->doorGaps[1].second, d->doorGaps[0].first);
    EXPECT_LT(d->doorGaps[0].first, d->doorGaps[0].second);
}

TEST(Divide, MoreDoorsThanBattensHaveNoRoom)
{
    std::vector<WishedDoor> doors(5, WishedDoor{100, 150});
    const auto d = divide(220, 46, 8, doors);  // four battens
    ASSERT_TRUE(d);
    EXPECT_TRUE(d->doorGaps.empty());
}

TEST(Divide, TheChoiceIsTheBestOfAllCounts)
{
    std::mt19937 random(5);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int i = 0; i < 300; ++i) {
        const double length = 300 + 3000 * unit(random);
        const double batten = 20 + 80 * unit(random);
        const double wish = 4 + 11 * unit(random);
        const double from = length * unit(random);
        const double to = length * unit(random);
        const auto d = divide(length, batten, wish, {{from, to}});
        double best = HUGE_VAL;
        for (int n = 1; n < length / batten; ++n) {
            const double gap = (length - n * batten) / (n + 1);
            if (gap < kLeastGapMm || gap > kMostGapMm) continue;
            for (int a = 0; a < n; ++a) {
                for (int b = a + 1; b <= n; ++b) {
                    const double left = gap / 2 + a * (batten + gap) - std::min(from, to);
                    const double right = gap / 2 + b * (batten + gap) - std::max(from, to);
                    best = std::min(best, std::abs(gap - wish) + std::max(std::abs(left), std::abs(right)) / 5);
                }
            }
        }
        ASSERT_EQ(d.has_value(), std::isfinite(best)) << length << ' ' << batten;
        if (!d) continue;
        const double cost = std::abs(d->gapMm - wish) + d->largestShiftMm / 5;
        // Within a count, edges are placed by least squares, not by the largest move: equal but for narrow doors.
        if (std::abs(to - from) > 2 * (batten + 15)) {
            EXPECT_NEAR(cost, best, 1e-9) << length << ' ' << batten;
        } else {
            EXPECT_GE(cost, best - 1e-9);
        }
    }
}

}  // namespace
}  // namespace yardcast
