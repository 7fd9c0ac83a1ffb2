#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "core/purchase/shopping.h"

namespace yardcast {
namespace {

struct Outcome {
    std::int64_t priceMinor = 0;
    double leftover = 0.0;
};

Outcome outcomeOf(const std::vector<PackChoice>& choices, double need)
{
    Outcome outcome{0, -need};
    for (const PackChoice& choice : choices) {
        outcome.priceMinor += choice.priceMinor * choice.count;
        outcome.leftover += choice.size * choice.count;
    }
    return outcome;
}

/// Every combination of counts up to what alone would cover the need.
Outcome bruteForce(double need, const std::vector<Pack>& packs, std::size_t next = 0)
{
    constexpr double slack = 4e-7;
    if (need <= slack) return {0, -need};
    if (next == packs.size()) return {std::numeric_limits<std::int64_t>::max() / 4, 0.0};
    Outcome best{std::numeric_limits<std::int64_t>::max() / 4, 0.0};
    const int most = static_cast<int>(std::ceil(need / packs[next].size));
    for (int count = 0; count <= most; ++count) {
        Outcome rest = bruteForce(need - count * packs[next].size, packs, next + 1);
        rest.priceMinor += count * packs[next].priceMinor;
        const bool better = rest.priceMinor < best.priceMinor ||
                            (rest.priceMinor == best.priceMinor && rest.leftover < best.leftover - slack);
        if (better) best = rest;
    }
    return best;
}

TEST(CheapestPacks, TakesTheSmallPackWhenItIsEnough)
{
    const auto choice = cheapestPacks(4.0, {{25, 620}, {5, 210}});
    ASSERT_EQ(choice.size(), 1u);
    EXPECT_EQ(choice[0].size, 5.0);
    EXPECT_EQ(choice[0].count, 1);
}

TEST(CheapestPacks, PrefersABigPackWhenItIsCheaperThoughMoreIsLeft)
{
    const auto choice = cheapestPacks(15.0, {{25, 620}, {5, 210}});
    ASSERT_EQ(choice.size(), 1u);
    EXPECT_EQ(choice[0].size, 25.0);
    EXPECT_EQ(outcomeOf(choice, 15.0).priceMinor, 620);
}

TEST(CheapestPacks, MixesSizesLargestFirst)
{
    const auto choice = cheapestPacks(28.0, {{5, 210}, {25, 620}});
    ASSERT_EQ(choice.size(), 2u);
    EXPECT_EQ(choice[0].size, 25.0);
    EXPECT_EQ(choice[1].size, 5.0);
    EXPECT_EQ(choice[1].count, 1);
}

TEST(CheapestPacks, LeavesTheLeastOverOnEqualPrice)
{
    // 5 m: 2 + 3 and 6 cost the same.
    const auto choice = cheapestPacks(5.0, {{2, 200}, {3, 300}, {6, 500}});
    EXPECT_NEAR(outcomeOf(choice, 5.0).leftover, 0.0, 1e-9);
}

TEST(CheapestPacks, RoundingNoiseBuysNoPackMore)
{
    EXPECT_EQ(cheapestPacks(0.1 + 0.2, {{0.3, 100}})[0].count, 1);
    EXPECT_EQ(cheapestPacks(200.0 + 1e-8, {{25, 540}})[0].count, 8);
    EXPECT_EQ(cheapestPacks(200.001, {{25, 540}})[0].count, 9);
}

TEST(CheapestPacks, NothingForNoNeedOrNoUsablePack)
{
    EXPECT_TRUE(cheapestPacks(0.0, {{1, 1}}).empty());
    EXPECT_TRUE(cheapestPacks(-3.0, {{1, 1}}).empty());
    EXPECT_TRUE(cheapestPacks(std::nan(""), {{1, 1}}).empty());
    EXPECT_TRUE(cheapestPacks(1.0, {}).empty());
    EXPECT_TRUE(cheapestPacks(1.0, {{0.0, 5}, {-2.0, 5}, {std::nan(""), 5}}).empty());
    EXPECT_TRUE(cheapestPacks(1e300, {{1, 1}}).empty());
    EXPECT_TRUE(cheapestPacks(std::numeric_limits<double>::infinity(), {{1, 1}}).empty());
}

TEST(CheapestPacks, FreePacksCoverAnything)
{
    EXPECT_EQ(outcomeOf(cheapestPacks(7.3, {{1, 0}, {5, 200}}), 7.3).priceMinor, 0);
}

TEST(CheapestPacks, SameAsEveryCombinationTriedForRandomShops)
{
    std::mt19937 random(20240611);
    const std::vector<double> usual{0.15, 0.25, 0.3, 0.5, 0.6, 0.75, 1, 2, 2.4, 2.5, 3,
                                    3.125, 3.6, 4, 5, 6, 10, 25, 66};
    std::uniform_int_distribution<std::size_t> anySize(0, usual.size() - 1);
    std::uniform_int_distribution<int> anyPrice(0, 900);
    std::uniform_int_distribution<int> anyCount(1, 4);
    std::uniform_real_distribution<double> anyShare(0.05, 40.0);
    for (int round = 0; round < 4000; ++round) {
        std::vector<Pack> packs;
        double least = 1e9;
        for (int i = anyCount(random); i > 0; --i) {
            packs.push_back({usual[anySize(random)], anyPrice(random)});
            least = std::min(least, packs.back().size);
        }
        // Half of the shops sell at one price per unit, so that ties are common.
        if (round % 2 == 0) {
            for (Pack& pack : packs) pack.priceMinor = std::llround(pack.size * 100);
        }
        double need = anyShare(random) * least;
        if (round % 3 == 0) need = std::ceil(need * 20) / 20;
        const Outcome wanted = bruteForce(need, packs);
        const Outcome found = outcomeOf(cheapestPacks(need, packs), need);
        ASSERT_EQ(found.priceMinor, wanted.priceMinor) << "round " << round << ", need " << need;
        ASSERT_GE(found.leftover, -1e-6) << "round " << round;
        ASSERT_NEAR(found.leftover, wanted.leftover, 2e-6) << "round " << round << ", need " << need;
    }
}

TEST(CheapestPacks, LargeNeedsStayQuick)
{
    const std::vector<Pack> packs{{2, 240}, {3, 340}, {6, 660}, {0.7, 90}};
    const auto choice = cheapestPacks(123456.7, packs);
    const Outcome outcome = outcomeOf(choice, 123456.7);
    EXPECT_GE(outcome.leftover, -1e-6);
    EXPECT_LT(outcome.leftover, 6.0);
    EXPECT_GE(static_cast<double>(outcome.priceMinor), 123456.7 * 110);
    EXPECT_LE(static_cast<double>(outcome.priceMinor), 123456.7 * 110 + 660);
}

}  // namespace
}  // namespace yardcast
