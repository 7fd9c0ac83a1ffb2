#include "core/cutting/bar_cutting.h"

#include <gtest/gtest.h>

#include <limits>

#include "core/cutting/bar_tidy.h"
#include "tests/core/cutting/bar_checks.h"

using namespace yardcast;

namespace {

std::vector<double> lengthsOf(const BarCutting& list, const BarPattern& pattern)
{
    std::vector<double> out;
    for (const int piece : pattern.pieces) out.push_back(list.pieces[static_cast<std::size_t>(piece)].lengthMm);
    return out;
}

}  // namespace

TEST(BarTroubles, AllOfThemAtOnceByPlace)
{
    const double none = std::numeric_limits<double>::quiet_NaN();
    BarCutting list{
        -1.0, none, {{0.0, -2.0, -1}, {none, none, {}}}, {{"a", 0.0, 1}, {"b", 1e7, 0}, {"c", 100.0, 2'000'000}}};
    using Kind = BarTrouble::Kind;
    const std::vector<BarTrouble> want{{Kind::BadSaw, -1, -1},  {Kind::BadSaw, -1, -1},  {Kind::NoLength, 0, -1},
                                       {Kind::BadPrice, 0, -1}, {Kind::BadCount, 0, -1}, {Kind::NoLength, 1, -1},
                                       {Kind::BadPrice, 1, -1}, {Kind::NoLength, -1, 0}, {Kind::TooLong, -1, 1},
                                       {Kind::BadCount, -1, 1}, {Kind::TooMany, -1, -1}};
    EXPECT_EQ(barTroubles(list), want);
    EXPECT_EQ(cutBars(list), BarPlan{});
}

TEST(BarTroubles, NothingToCutFrom)
{
    const std::vector<BarTrouble> want{{BarTrouble::Kind::NoStock, -1, -1}};
    EXPECT_EQ(barTroubles({}), want);
}

// F-68. Gilmore and Gomory's rolls as in Chvatal, Linear Programming, 1983, ch. 13 (data:
// https://miro.gams.com/gallery/app_direct/cutstock/; the optimum from memory and by a plan that was built): 453 rolls,
// and the linear program says 452.25.
TEST(BarCutting, PublishedRolls)
{
    const BarCutting list{
        0.0, 0.0, {{100.0, 1.0, {}}}, {{"", 45.0, 97}, {"", 36.0, 610}, {"", 31.0, 395}, {"", 14.0, 211}}};
    const BarPlan plan = cutBars(list);
    EXPECT_EQ(whatIsWrong(list, plan), "");
    EXPECT_EQ(plan.count, 453);
    EXPECT_DOUBLE_EQ(plan.price, 453.0);
    EXPECT_NEAR(plan.bound, 452.25, 1e-6);   // duals rounded to 2^-32 of a bar, times 1313 pieces
    EXPECT_NEAR(plan.boundCount.value_or(0.0), 452.25, 1e-6);
    EXPECT_TRUE(plan.proven);
}

// F-73: with a saw width k, n pieces fit where sum(l) + k (n - 1) <= L.
TEST(BarCutting, NoCutAfterThePieceThatEndsWhereTheBarEnds)
{
    BarCutting list{0.0, 0.0, {{5400.0, 1.0, {}}}, {{"", 1800.0, 3}}};
    EXPECT_EQ(cutBars(list).count, 1);
    list.sawMm = 3.0;
    EXPECT_EQ(cutBars(list).count, 2);
    list.stock[0].lengthMm = 5406.0;
    EXPECT_EQ(cutBars(list).count, 1);
    EXPECT_TRUE(cutBars(list).remaindersMm.empty());
    list.stock[0].lengthMm = 5405.99;
    EXPECT_EQ(cutBars(list).count, 2);
}

TEST(BarCutting, HundredthsAreExact)
{
    // 0.1 and 0.7 are no binary fractions; ten of each fill the bar to the hair.
    const BarCutting list{0.1, 0.0, {{8.0 + 0.1 * 19, 1.0, {}}}, {{"", 0.1, 10}, {"", 0.7, 10}}};
    EXPECT_EQ(cutBars(list).count, 1);
}

TEST(BarCutting, TrimComesOffBothEnds)
{
    BarCutting list{3.0, 10.0, {{1000.0, 1.0, {}}}, {{"", 980.0, 1}}};
    EXPECT_EQ(cutBars(list).count, 1);
    list.pieces[0].lengthMm = 980.01;
    const std::vector<BarUnplaced> want{{0, 1}};
    EXPECT_EQ(cutBars(list).unplaced, want);
    EXPECT_EQ(cutBars(list).count, 0);
}

TEST(BarCutting, SeveralStocksForTheLeastMoney)
{
    // By hand: 7850 mm are wanted, so two bars at least, and two of 3000 or of 3000 and 4000 are too short; 3000 and
    // 5000 hold them (1450 + 1450; 3500 + 1450) for 14, as dear as two of 4000, which do not.
    const BarCutting list{
        0.0, 0.0, {{3000.0, 5.0, {}}, {4000.0, 7.0, {}}, {5000.0, 9.0, {}}}, {{"a", 3500.0, 1}, {"b", 1450.0, 3}}};
    const BarPlan plan = cutBars(list);
    EXPECT_EQ(whatIsWrong(list, plan), "");
    EXPECT_DOUBLE_EQ(plan.price, 14.0);
    EXPECT_TRUE(plan.proven);
    EXPECT_FALSE(plan.boundCount.has_value());
}

TEST(BarCutting, OffcutsAtHandAreUsedBeforeMoneyIsSpent)
{
    const BarCutting list{3.0, 0.0, {{3000.0, 7.2, {}}, {1250.0, 0.0, 2}}, {{"a", 1200.0, 4}}};
    const BarPlan plan = cutBars(list);
    EXPECT_EQ(whatIsWrong(list, plan), "");
    EXPECT_DOUBLE_EQ(plan.price, 7.2);
    EXPECT_EQ(plan.count, 3);
}

TEST(BarCutting, OffcutsThatAreTooFewLeaveTheLeastLengthUnplaced)
{
    const BarCutting list{0.0, 0.0, {{1000.0, 0.0, 2}}, {{"a", 900.0, 1}, {"b", 500.0, 3}, {"c", 1200.0, 2}}};
    const BarPlan plan = cutBars(list);
    EXPECT_EQ(whatIsWrong(list, plan), "");
    // Best: 900 and 500 + 500 are placed; left out are one of 500 and what is longer than all stock.
    const std::vector<BarUnplaced> want{{1, 1}, {2, 2}};
    EXPECT_EQ(plan.unplaced, want);
    EXPECT_TRUE(plan.proven);
}

TEST(BarCutting, WithoutPricesTheLeastStockIsTaken)
{
    const BarCutting list{0.0, 0.0, {{2000.0, 0.0, {}}, {3000.0, 0.0, {}}}, {{"a", 1000.0, 3}}};
    const BarPlan plan = cutBars(list);
    EXPECT_EQ(plan.count, 1);
    EXPECT_DOUBLE_EQ(plan.price, 0.0);
    EXPECT_EQ(plan.patterns[0].stock, 1);
}

TEST(BarCutting, AlikeBarsAreOnePatternAndNamesSplitIt)
{
    const BarCutting list{0.0, 0.0, {{1000.0, 1.0, {}}}, {{"a", 600.0, 6}, {"b", 400.0, 4}, {"c", 400.0, 2}}};
    const BarPlan plan = cutBars(list);
    EXPECT_EQ(whatIsWrong(list, plan), "");
    EXPECT_EQ(plan.differentPatterns, 1);
    const std::vector<BarPattern> want{{0, 4, {0, 1}, 0.0}, {0, 2, {0, 2}, 0.0}};
    EXPECT_EQ(plan.patterns, want);
}
/// 3 x 5, 5 x 4, 9 x 3 and 3 x 2 out of five bars of 14: 5 + 4 + 3 + 2 three times and 4 + 3 + 3 + 3 twice do, where
/// four different patterns were.
TEST(BarTidy, FourPatternsBecomeTwoWhereTwoDo)
{
    bars::BarKinds kinds;
    kinds.stock = {{14, 1, bars::kNoLimit, 0}};
    for (const bars::Units width : {5, 4, 3, 2}) {
        kinds.pieces.push_back({width, 0, {}});
    }
    const bars::Solution four{
        {{0, {2, 1, 0, 0}}, 1}, {{0, {1, 1, 1, 1}}, 1}, {{0, {0, 1, 3, 0}}, 2}, {{0, {0, 1, 2, 2}}, 1}};
    bars::PatternPricer pricer(kinds);
    const bars::Solution fewer = bars::withFewerPatterns(kinds, four, pricer);
    EXPECT_EQ(fewer.size(), 2U);
    std::vector<bars::Units> pieces(4, 0);
    bars::Units count = 0;
    for (const bars::PatternRun& run : fewer) {
        EXPECT_LE(bars::usedWidth(kinds, run.pattern), 14);
        count += run.times;
        for (std::size_t i = 0; i < 4; ++i) {
            pieces[i] += run.times * run.pattern.copies[i];
        }
    }
    EXPECT_EQ(count, 5);
    EXPECT_EQ(pieces, (std::vector<bars::Units>{3, 5, 9, 3}));
}


TEST(BarCutting, WhatIsLeftLiesInOneLongRest)
{
    // Four of 300 and one of 100 in two bars of 1000: the rests can be 300 and 400, or 0 and 700.
    const BarCutting list{0.0, 0.0, {{1000.0, 1.0, {}}}, {{"a", 300.0, 4}, {"b", 100.0, 1}}};
    const BarPlan plan = cutBars(list);
    ASSERT_EQ(plan.remaindersMm.size(), 1U);
    EXPECT_DOUBLE_EQ(plan.remaindersMm[0], 700.0);
    EXPECT_EQ(lengthsOf(list, plan.patterns[0]), (std::vector<double>{300.0, 300.0, 300.0, 100.0}));
}

TEST(BarCutting, AMillionPiecesAreAnsweredAtOnce)
{
    const BarCutting list{
        3.0, 0.0, {{6000.0, 12.0, {}}}, {{"a", 1750.0, 400'000}, {"b", 1210.0, 350'000}, {"c", 333.3, 250'000}}};
    const BarPlan plan = cutBars(list);
    EXPECT_EQ(whatIsWrong(list, plan), "");
    EXPECT_TRUE(plan.proven);
}

TEST(BarCutting, AwkwardListsAreAnsweredToo)
{
    BarCutting many{3.0, 0.0, {{3000.0, 7.2, {}}, {4000.0, 9.1, {}}, {6000.0, 14.0, {}}}, {}};
    for (int k = 0; k < kMostBarKinds; ++k) many.pieces.push_back({"", 150.0 + k * 4.37, 1 + k % 9});
    EXPECT_EQ(whatIsWrong(many, cutBars(many)), "");

    // Hundreds of thousands fit into one, and lengths lie on no grid worth the name.
    const BarCutting tiny{0.0, 0.0, {{kLongestBarMm, 1.0, {}}}, {{"", 0.01, 900'000}}};
    EXPECT_EQ(cutBars(tiny).count, 1);
    BarCutting fine{0.13, 0.0, {{12000.0, 7.0, {}}, {9000.0, 5.3, {}}}, {}};
    for (int k = 0; k < 60; ++k) fine.pieces.push_back({"", 30.0 + 0.01 * ((k * 7919) % 297'000), 1 + k % 20});
    EXPECT_EQ(whatIsWrong(fine, cutBars(fine)), "");

    BarCutting offcuts{3.0, 0.0, {{3000.0, 5.0, {}}}, {}};
    for (int s = 1; s < kMostBarKinds; ++s) offcuts.stock.push_back({300.0 + s, 0.0, 1});
    for (int k = 0; k < 40; ++k) offcuts.pieces.push_back({"", 100.0 + 11.0 * k, 5});
    const BarPlan used = cutBars(offcuts);
    EXPECT_EQ(whatIsWrong(offcuts, used), "");

    const BarCutting dear{
        0.0, 0.0, {{3000.0, kDearestBar, {}}, {1999.99, 0.0001, {}}}, {{"", 2000.0, 500'000}, {"", 3.33, 400'000}}};
    EXPECT_EQ(whatIsWrong(dear, cutBars(dear)), "");
}

TEST(BarCutting, AStopGivesTheBestSoFar)
{
    std::stop_source source;
    source.request_stop();
    const BarCutting list{3.0, 0.0, {{3000.0, 1.0, {}}}, {{"a", 1310.0, 7}, {"b", 777.0, 9}, {"c", 512.0, 11}}};
    EXPECT_EQ(whatIsWrong(list, cutBars(list, source.get_token())), "");
}
