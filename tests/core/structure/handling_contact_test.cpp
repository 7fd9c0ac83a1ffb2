#include "core/structure/handling_contact.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <random>

namespace yardcast {
namespace {

/// A stiff body on places at (x, y), a load of `forceN` downwards at (x, y); modes: up, and two turns about the origin.
PressingPlaces onPlaces(const std::vector<std::array<double, 2>>& at, std::array<double, 2> load, double forceN)
{
    PressingPlaces places;
    places.count = static_cast<int>(at.size());
    places.modes = 3;
    places.flexibility.assign(at.size() * at.size(), 0.0);
    places.giveMmN.assign(at.size(), 0.1);
    places.gapMm.assign(at.size(), 0.0);
    places.movedMm.assign(at.size(), 0.0);
    for (const auto& p : at) places.lever.insert(places.lever.end(), {1.0, p[1], -p[0]});
    places.load = {-forceN, -forceN * load[1], forceN * load[0]};
    return places;
}

TEST(Press, ThreePlacesCarryByStatics)
{
    // Moments about the line of two of them, by hand: 600 x 200 = R3 x 500.
    const PressingAnswer answer = press(onPlaces({{0, 0}, {1, 0}, {0.5, 0.5}}, {0.4, 0.2}, 600));
    ASSERT_TRUE(answer.holds);
    EXPECT_NEAR(answer.forceN[2], 240.0, 1e-9);
    EXPECT_NEAR(answer.forceN[1], 120.0, 1e-9);  // 600 x 0.4 = R2 x 1 + 240 x 0.5
    EXPECT_NEAR(answer.forceN[0], 240.0, 1e-9);
}

TEST(Press, EquallySoftPlacesShareAsUnderARigidBody)
{
    // Four corners of 2 x 1, load off the middle by (0.2, 0.1): R = F/4 (1 + x dx/(1 x 1) + y dy/(0.5 x 0.5)).
    const PressingAnswer answer = press(onPlaces({{-1, -0.5}, {1, -0.5}, {-1, 0.5}, {1, 0.5}}, {0.2, 0.1}, 400));
    ASSERT_TRUE(answer.holds);
    EXPECT_NEAR(answer.forceN[0], 100 * (1 - 0.2 - 0.2), 1e-9);
    EXPECT_NEAR(answer.forceN[1], 100 * (1 + 0.2 - 0.2), 1e-9);
    EXPECT_NEAR(answer.forceN[2], 100 * (1 - 0.2 + 0.2), 1e-9);
    EXPECT_NEAR(answer.forceN[3], 100 * (1 + 0.2 + 0.2), 1e-9);
}

TEST(Press, WhatWouldPullIsLetGo)
{
    // The load beyond the kern of four: the far corner would pull, the other three carry by statics.
    const PressingAnswer answer = press(onPlaces({{-1, -1}, {1, -1}, {-1, 1}, {1, 1}}, {0.6, 0.6}, 100));
    ASSERT_TRUE(answer.holds);
    EXPECT_EQ(answer.forceN[0], 0.0);
    EXPECT_NEAR(answer.forceN[1], 20.0, 1e-9);
    EXPECT_NEAR(answer.forceN[2], 20.0, 1e-9);
    EXPECT_NEAR(answer.forceN[3], 60.0, 1e-9);
}

TEST(Press, TipsWhereTheLoadLiesOutside)
{
    EXPECT_FALSE(press(onPlaces({{0, 0}, {1, 0}, {0.5, 0.5}}, {0.5, 0.7}, 100)).holds);
    EXPECT_FALSE(press(onPlaces({{0, 0}, {1, 0}}, {0.5, 0.0}, 100)).holds) << "two places do not hold a body";
    EXPECT_FALSE(press(onPlaces({{0, 0}, {0.5, 0}, {1, 0}}, {0.5, 0.0}, 100)).holds) << "nor do three on one line";
}

TEST(Press, ALowPlaceIsNotReachedByABodyInBalance)
{
    PressingPlaces places = onPlaces({{-1, -1}, {1, -1}, {-1, 1}, {1, 1}}, {0, 0}, 100);
    places.gapMm[3] = 10;
    const PressingAnswer answer = press(places);
    ASSERT_TRUE(answer.holds);
    EXPECT_EQ(answer.forceN[3], 0.0);
    EXPECT_NEAR(answer.forceN[0], 0.0, 1e-7);
    EXPECT_NEAR(answer.forceN[1], 50.0, 1e-7);
    EXPECT_NEAR(answer.forceN[2], 50.0, 1e-7);
}

TEST(Press, RocksOverToALowPlaceThatTheLoadLeansTo)
{
    PressingPlaces places = onPlaces({{-1, -1}, {1, -1}, {-1, 1}, {1, 1}}, {0.1, 0.1}, 100);
    places.gapMm[3] = 10;
    const PressingAnswer answer = press(places);
    ASSERT_TRUE(answer.holds);
    EXPECT_EQ(answer.forceN[0], 0.0);
    EXPECT_NEAR(answer.forceN[3], 10.0, 1e-9);  // 100 x 0.2 / 2 along the diagonal from the line of the two others
    EXPECT_NEAR(answer.forceN[1], 45.0, 1e-9);
    EXPECT_NEAR(answer.forceN[2], 45.0, 1e-9);
}

TEST(Press, InBalanceAndPressedOnlyWhateverTheFlexibility)
{
    std::mt19937 random(7);
    std::uniform_real_distribution<double> place(-1, 1);
    int held = 0;
    for (int trial = 0; trial < 300; ++trial) {
        const int n = 4 + trial % 9;
        std::vector<std::array<double, 2>> at;
        for (int i = 0; i < n; ++i) at.push_back({place(random), place(random)});
        const std::array<double, 2> load{0.4 * place(random), 0.4 * place(random)};
        PressingPlaces places = onPlaces(at, load, 100);
        // A positive definite flexibility: sum of outer products.
        for (int k = 0; k < n; ++k) {
            std::vector<double> v;
            for (int i = 0; i < n; ++i) v.push_back(place(random));
            for (int i = 0; i < n; ++i) {
                for (int j = 0; j < n; ++j) places.flexibility[i * n + j] += 0.05 * v[i] * v[j];
            }
        }
        for (int i = 0; i < n; ++i) places.giveMmN[i] = 0.01 + 0.1 * std::abs(place(random));
        const PressingAnswer answer = press(places);
        if (!answer.holds) continue;
        ++held;
        std::array<double, 3> sum{};
        for (int i = 0; i < n; ++i) {
            EXPECT_GE(answer.forceN[i], 0.0);
            double moved = places.movedMm[i];
            for (int j = 0; j < n; ++j) moved += places.flexibility[i * n + j] * answer.forceN[j];
            for (int m = 0; m < 3; ++m) {
                moved += places.lever[3 * i + m] * answer.rigid[m];
                sum[m] += places.lever[3 * i + m] * answer.forceN[i];
            }
            // What presses has sunk by its force; what does not is not below its place. 1e-8: condition of the system.
            if (answer.forceN[i] > 1e-6) {
                EXPECT_NEAR(-moved, answer.forceN[i] * places.giveMmN[i], 1e-8);
            } else if (answer.forceN[i] == 0.0) {
                EXPECT_LE(-moved, 1e-8);
            }
        }
        for (int m = 0; m < 3; ++m) EXPECT_NEAR(sum[m] + places.load[m], 0.0, 1e-9 * 100);
    }
    EXPECT_GT(held, 150) << "most of the random places hold it";
}

}  // namespace
}  // namespace yardcast
