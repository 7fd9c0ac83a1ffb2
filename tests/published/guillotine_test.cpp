#include "core/cutting/sheet_knapsack.h"

#include <gtest/gtest.h>

#include <vector>

namespace yardcast {
namespace {

/// The pieces overlap nowhere, lie inside and are no more than there are; their worth is the answer's.
void expectSound(const GuillotineKnapsack& answer, Size sheet, const std::vector<ValuedPiece>& pieces, double sawMm)
{
    std::vector<int> used(pieces.size(), 0);
    double worth = 0.0;
    for (std::size_t i = 0; i < answer.pieces.size(); ++i) {
        const KnapsackPiece& a = answer.pieces[i];
        const ValuedPiece& of = pieces[static_cast<std::size_t>(a.piece)];
        worth += of.value;
        ++used[static_cast<std::size_t>(a.piece)];
        EXPECT_EQ(a.size.width, a.turned ? of.size.depth : of.size.width);
        EXPECT_EQ(a.size.depth, a.turned ? of.size.width : of.size.depth);
        EXPECT_TRUE(a.at.x >= 0 && a.at.y >= 0);
        EXPECT_LE(a.at.x + a.size.width, sheet.width);
        EXPECT_LE(a.at.y + a.size.depth, sheet.depth);
        for (std::size_t j = 0; j < i; ++j) {
            const KnapsackPiece& b = answer.pieces[j];
            EXPECT_TRUE(a.at.x + a.size.width + sawMm <= b.at.x || b.at.x + b.size.width + sawMm <= a.at.x
                        || a.at.y + a.size.depth + sawMm <= b.at.y || b.at.y + b.size.depth + sawMm <= a.at.y)
                << i << " lies on " << j;
        }
    }
    for (std::size_t p = 0; p < pieces.size(); ++p) {
        EXPECT_LE(used[p], pieces[p].most.value_or(used[p]));
    }
    EXPECT_DOUBLE_EQ(worth, answer.value);
}

void expectWorth(double worth, Size sheet, const std::vector<ValuedPiece>& pieces, bool turn)
{
    const GuillotineKnapsack answer = guillotineKnapsack(sheet, pieces, turn, 0.0);
    EXPECT_DOUBLE_EQ(answer.value, worth);
    EXPECT_DOUBLE_EQ(answer.bound, worth);
    EXPECT_TRUE(answer.proven);
    expectSound(answer, sheet, pieces, 0.0);
}

std::vector<ValuedPiece> unlimited(std::vector<ValuedPiece> pieces)
{
    for (ValuedPiece& piece : pieces) {
        piece.most.reset();
    }
    return pieces;
}

/// Christofides and Whitlock 1977, "An algorithm for two-dimensional cutting problems", Operations Research 25, examples
/// 1 and 2; data as kept in the OR-Library (cgcut1, cgcut2). Optima 244 and 2892 as published there; those with turning
/// (260) and without limits (249, 3076) computed by a separate exact search.
const std::vector<ValuedPiece> kCgcut1{{{8, 4}, 66, 2}, {{3, 7}, 35, 1}, {{8, 2}, 24, 3}, {{3, 4}, 17, 5},
                                       {{3, 3}, 11, 2}, {{3, 2}, 8, 2},  {{2, 1}, 2, 1}};
const std::vector<ValuedPiece> kCgcut2{{{21, 22}, 582, 1}, {{31, 13}, 403, 1}, {{9, 35}, 315, 3}, {{9, 24}, 216, 3},
                                       {{30, 7}, 210, 2},  {{11, 13}, 143, 3}, {{10, 14}, 140, 2}, {{14, 8}, 110, 3},
                                       {{12, 8}, 94, 3},   {{13, 7}, 90, 3}};

TEST(GuillotineKnapsack, ChristofidesWhitlock1)
{
    expectWorth(244, {15, 10}, kCgcut1, false);
}

TEST(GuillotineKnapsack, ChristofidesWhitlock1Turned)
{
    expectWorth(260, {15, 10}, kCgcut1, true);
}

TEST(GuillotineKnapsack, ChristofidesWhitlock1Unlimited)
{
    expectWorth(249, {15, 10}, unlimited(kCgcut1), false);
}

TEST(GuillotineKnapsack, ChristofidesWhitlock2)
{
    expectWorth(2892, {40, 70}, kCgcut2, false);
}

TEST(GuillotineKnapsack, ChristofidesWhitlock2Unlimited)
{
    expectWorth(3076, {40, 70}, unlimited(kCgcut2), false);
}

/// Beasley 1985, "Algorithms for unconstrained two-dimensional guillotine cutting", JORS 36, gcut1 (OR-Library): the worth
/// of a piece is its area. Optimum 56 460; 58 136 with turning, computed by a separate dynamic programme.
TEST(GuillotineKnapsack, Beasley1)
{
    std::vector<ValuedPiece> pieces;
    for (const Size size : {Size{167, 184}, Size{114, 118}, Size{167, 152}, Size{83, 140}, Size{70, 86}, Size{143, 166},
                            Size{120, 160}, Size{66, 148}, Size{87, 141}, Size{69, 165}}) {
        pieces.push_back({size, size.width * size.depth, {}});
    }
    expectWorth(56'460, {250, 250}, pieces, false);
    expectWorth(58'136, {250, 250}, pieces, true);
}

/// Small cases with answers that can be seen, from the test data of an open library of guillotine models.
TEST(GuillotineKnapsack, SmallCases)
{
    expectWorth(20, {10, 20}, {{{10, 10}, 10, 2}, {{10, 11}, 19, 1}}, false);
    expectWorth(20, {16, 20}, {{{10, 8}, 10, 2}, {{10, 16}, 19, 1}}, false);
    expectWorth(700, {100, 100}, {{{10, 10}, 7, 100}}, false);
    expectWorth(350, {100, 100}, {{{10, 10}, 7, 50}}, false);
    expectWorth(0, {10, 10}, {{{11, 2}, 7, 1}, {{2, 10.5}, 7, 1}}, false);
}

/// n pieces and the cuts between them fit where sum(l) + saw (n - 1) is no more than the sheet, both ways.
TEST(GuillotineKnapsack, SawWidthIsLostBetweenPieces)
{
    const std::vector<ValuedPiece> thirds{{{1800, 1000}, 1, {}}};
    EXPECT_DOUBLE_EQ(guillotineKnapsack({5400, 2000}, thirds, false, 0.0).value, 6);
    EXPECT_DOUBLE_EQ(guillotineKnapsack({5400, 2000}, thirds, false, 3.0).value, 2);
    EXPECT_DOUBLE_EQ(guillotineKnapsack({5406, 2003}, thirds, false, 3.0).value, 6);
    EXPECT_DOUBLE_EQ(guillotineKnapsack({5405.9, 2003}, thirds, false, 3.0).value, 4);
    const GuillotineKnapsack answer = guillotineKnapsack({5406, 2003}, thirds, false, 3.0);
    expectSound(answer, {5406, 2003}, thirds, 3.0);
}

}  // namespace
}  // namespace yardcast
