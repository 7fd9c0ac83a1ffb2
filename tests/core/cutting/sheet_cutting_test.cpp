#include "core/cutting/sheet_cutting.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "tests/core/cutting/sheet_replay.h"

namespace yardcast {
namespace {

SheetCutting boards()
{
    SheetCutting list;
    list.sawMm = 4.0;
    list.stock = {{{2500, 1250}, 39.0, {}}};
    return list;
}

SheetPlan soundPlan(const SheetCutting& list, SheetEffort effort = {500'000})
{
    SheetPlan plan = cutSheets(list, effort);
    EXPECT_EQ(replaySaw(list, plan), "");
    return plan;
}

TEST(SheetCutting, OnePieceAsLargeAsTheSheetNeedsNoCut)
{
    SheetCutting list = boards();
    list.pieces = {{"whole", {2500, 1250}, 3}};
    const SheetPlan plan = soundPlan(list);
    EXPECT_EQ(plan.count, 3);
    EXPECT_EQ(plan.cuts, 0);
    EXPECT_DOUBLE_EQ(plan.price, 117.0);
    EXPECT_TRUE(plan.proven);
    ASSERT_EQ(plan.sheets.size(), 1U);
    EXPECT_EQ(plan.sheets[0].times, 3);
    EXPECT_TRUE(plan.sheets[0].remainders.empty());
}

/// n pieces fit a length where sum(l) + saw (n - 1) is no more: three of 832 with two cuts of 2 mm make 2500 exactly.
TEST(SheetCutting, NoCutAfterThePieceThatEndsWhereTheSheetEnds)
{
    SheetCutting list = boards();
    list.sawMm = 2.0;
    list.pieces = {{"third", {832, 1250}, 3, false}};
    EXPECT_EQ(soundPlan(list).count, 1);
    EXPECT_EQ(soundPlan(list).cuts, 2);
    list.sawMm = 2.01;
    EXPECT_EQ(soundPlan(list).count, 2);
    // Both ways: 3 x 2 pieces where the rows too have just room for the cut.
    list.sawMm = 2.0;
    list.pieces = {{"sixth", {832, 624}, 6, false}};
    EXPECT_EQ(soundPlan(list).count, 1);
    list.pieces = {{"sixth", {832, 624.01}, 6, false}};
    EXPECT_EQ(soundPlan(list).count, 2);
}

/// What is left is less than a saw width: the saw takes it, and no more than it.
TEST(SheetCutting, TheSawTakesALastSliver)
{
    SheetCutting list = boards();
    list.pieces = {{"wide", {2498, 1250}, 1, false}};
    const SheetPlan plan = soundPlan(list);
    ASSERT_EQ(plan.sheets.size(), 1U);
    ASSERT_EQ(plan.sheets[0].steps.size(), 1U);
    EXPECT_DOUBLE_EQ(plan.sheets[0].steps[0].atMm, 2498);
    EXPECT_DOUBLE_EQ(plan.sheets[0].steps[0].lostMm, 2);
    EXPECT_EQ(plan.sheets[0].steps[0].run, SawRun::alongY);
}

TEST(SheetCutting, GrainKeepsPiecesFromTurning)
{
    SheetCutting list = boards();
    list.pieces = {{"tall", {600, 2400}, 1, false}};
    const SheetPlan plan = cutSheets(list);
    ASSERT_EQ(plan.unplaced.size(), 1U);
    EXPECT_EQ(plan.unplaced[0].reason, Unplaced::tooLarge);
    EXPECT_EQ(plan.unplaced[0].count, 1);
    EXPECT_EQ(plan.count, 0);
    list.pieces[0].turn = true;
    const SheetPlan turned = soundPlan(list);
    EXPECT_EQ(turned.count, 1);
    EXPECT_TRUE(turned.sheets[0].pieces[0].turned);
}

TEST(SheetCutting, TrimIsTakenOffAllAroundWithItsCutInside)
{
    SheetCutting list = boards();
    list.trimMm = 10;
    list.pieces = {{"inner", {2480, 1230}, 1, false}};
    const SheetPlan plan = soundPlan(list);
    EXPECT_EQ(plan.count, 1);
    EXPECT_EQ(plan.cuts, 4);
    EXPECT_EQ(plan.sheets[0].pieces[0].at, (Point{10, 10}));
    list.pieces = {{"inner", {2480.1, 1230}, 1, false}};
    EXPECT_EQ(cutSheets(list).unplaced.size(), 1U);
    // A trim less than the saw: the blade hangs over the edge.
    list.trimMm = 1.5;
    list.pieces = {{"inner", {2497, 1247}, 1, false}};
    EXPECT_EQ(soundPlan(list).count, 1);
}

TEST(SheetCutting, OffcutsAreUsedFirstAndCostNothing)
{
    SheetCutting list = boards();
    list.stock.push_back({{700, 700}, 0.0, 2});
    list.pieces = {{"a", {600, 600}, 1}, {"b", {650, 500}, 1}};
    const SheetPlan plan = soundPlan(list);
    EXPECT_DOUBLE_EQ(plan.price, 0.0);
    EXPECT_EQ(plan.count, 2);
    EXPECT_TRUE(plan.proven);
    // A third does not fit them any more and needs a sheet; two stay on the offcuts.
    list.pieces.push_back({"c", {690, 690}, 1});
    const SheetPlan more = soundPlan(list);
    EXPECT_DOUBLE_EQ(more.price, 39.0);
    EXPECT_EQ(more.count, 3);
    EXPECT_EQ(more.sheets.front().stock, 1);
}

TEST(SheetCutting, TakesTheMixOfSheetsThatCostsLeast)
{
    SheetCutting list = boards();
    list.stock.push_back({{1250, 1250}, 22.0, {}});
    list.pieces = {{"half", {1200, 1200}, 3}};
    // Two on a whole sheet, one on a half: 61; three halves would be 66, two wholes 78.
    const SheetPlan plan = soundPlan(list);
    EXPECT_DOUBLE_EQ(plan.price, 61.0);
    EXPECT_TRUE(plan.proven);
    list.stock[1].price = 19.0;
    EXPECT_DOUBLE_EQ(soundPlan(list).price, 57.0);
}

/// Boards wider than half a sheet's depth both ways lie beside each other only, with their lesser side along it where
/// the other fits across: 1370 + 770 + 920 + 2 x 770 + 8 x 720 mm with a saw width each, more than four times 2504. The
/// area is less than that of four sheets, and the offcut takes none of them.
TEST(SheetCutting, LargeBoardsOfWhichNoTwoLieAboveEachOtherProveTheSheets)
{
    SheetCutting list = boards();
    list.stock.push_back({{900, 600}, 0.0, 1});
    list.pieces = {{"a", {1366, 766}, 1}, {"b", {1116, 766}, 1}, {"c", {1016, 916}, 1}, {"d", {816, 766}, 1},
                   {"e", {766, 766}, 1},  {"f", {716, 916}, 8},  {"g", {818, 60}, 18}, {"h", {618, 60}, 26}};
    const SheetPlan plan = soundPlan(list);
    EXPECT_DOUBLE_EQ(plan.price, 5 * 39.0);
    EXPECT_TRUE(plan.proven);
}

/// Narrow both ways and of several sizes: one blank for all of them, not one each.
TEST(SheetCutting, TinyPiecesOfSeveralSizesShareABlank)
{
    SheetCutting list = boards();
    list.leastStripMm = 80;
    list.pieces = {{"a", {34.9, 34.9}, 1}, {"b", {33, 33}, 1}, {"c", {31.2, 31.2}, 1}, {"d", {58, 22}, 1}};
    const SheetPlan plan = soundPlan(list);
    ASSERT_EQ(plan.sheets.size(), 1U);
    EXPECT_EQ(plan.sheets[0].blanks.size(), 1U);
    EXPECT_EQ(plan.cuts, 2);
    EXPECT_EQ(plan.sheets[0].pieces.size(), 4U);
}

/// Three strips each cut at 700 and once elsewhere: the fence for crosscuts is set to 700 once.
TEST(SheetCutting, LikeCutsFollowEachOtherFromStripToStrip)
{
    SheetCutting list = boards();
    list.stock = {{{1404, 1208}, 39.0, {}}};
    list.pieces = {{"a", {700, 500}, 2, false}, {"b", {700, 400}, 2, false}, {"c", {700, 300}, 2, false}};
    const SheetPlan plan = soundPlan(list);
    ASSERT_EQ(plan.count, 1);
    int settings = 0;
    double at[2] = {-1.0, -1.0};
    for (const SawStep& step : plan.sheets[0].steps) {
        double& fence = at[step.run == SawRun::alongX ? 1 : 0];
        settings += fence != step.atMm ? 1 : 0;
        fence = step.atMm;
    }
    // 500 and 400 along the sheet; 700 across once, whichever way is first.
    EXPECT_LE(settings, 3);
    EXPECT_LE(plan.cuts, 5);
}

/// What would be waste beside a blank stays on it, to be ripped off at home: no cut at the store for a sliver. Along
/// its strips a blank is cut to size, for that is the pieces' length.
TEST(SheetCutting, NoCutForASliverBesideABlank)
{
    SheetCutting list = boards();
    list.stock = {{{1000, 108}, 39.0, {}}};
    list.leastStripMm = 80;
    list.pieces = {{"side", {1000, 50}, 2}};
    const SheetPlan plan = soundPlan(list);
    ASSERT_EQ(plan.sheets.size(), 1U);
    EXPECT_EQ(plan.cuts, 0);
    ASSERT_EQ(plan.sheets[0].blanks.size(), 1U);
    EXPECT_EQ(plan.sheets[0].blanks[0].size, (Size{1000, 108}));
    EXPECT_EQ(plan.sheets[0].steps.size(), 2U);
    list.pieces = {{"side", {990, 50}, 2}};
    EXPECT_EQ(soundPlan(list).cuts, 1);
}

TEST(SheetCutting, CountedStockRunsOut)
{
    SheetCutting list = boards();
    list.stock[0].count = 1;
    list.pieces = {{"half", {1200, 1200}, 3}, {"small", {40, 300}, 1}};
    const SheetPlan plan = soundPlan(list);
    EXPECT_EQ(plan.count, 1);
    ASSERT_EQ(plan.unplaced.size(), 1U);
    EXPECT_EQ(plan.unplaced[0].piece, 0);
    EXPECT_EQ(plan.unplaced[0].count, 1);
    EXPECT_EQ(plan.unplaced[0].reason, Unplaced::noSheetLeft);
    EXPECT_FALSE(plan.proven);
}

TEST(SheetCutting, CutsBeyondTheFreeOnesArePaidEachSheet)
{
    SheetCutting list = boards();
    list.cutPrice = 1.5;
    list.freeCuts = 2;
    // Five strips the whole length of a sheet with a rest: five cuts.
    list.pieces = {{"strip", {2500, 200}, 5, false}};
    const SheetPlan plan = soundPlan(list);
    EXPECT_EQ(plan.cuts, 5);
    EXPECT_DOUBLE_EQ(plan.sheetsPrice, 39.0);
    EXPECT_DOUBLE_EQ(plan.cutsPrice, 4.5);
    EXPECT_DOUBLE_EQ(plan.price, 43.5);
}

TEST(SheetCutting, NarrowStripsComeAsBlanksToRipAtHome)
{
    SheetCutting list = boards();
    list.leastStripMm = 100;
    list.pieces = {{"edge", {1800, 60}, 4}, {"low edge", {1800, 45}, 1}, {"base", {1800, 600}, 1}};
    const SheetPlan plan = soundPlan(list);
    ASSERT_EQ(plan.sheets.size(), 1U);
    const CutSheet& sheet = plan.sheets[0];
    EXPECT_FALSE(sheet.blanks.empty());
    int ripped = 0;
    for (const PlacedPiece& piece : sheet.pieces) {
        EXPECT_EQ(piece.blank >= 0, piece.piece != 2);
        ripped += piece.blank >= 0 ? 1 : 0;
    }
    EXPECT_EQ(ripped, 5);
    int atHome = 0;
    for (const SawStep& step : sheet.steps) {
        atHome += step.atHome ? 1 : 0;
    }
    // All strips are as long as their blanks: one rip fewer than strips in each.
    EXPECT_EQ(atHome, ripped - static_cast<int>(sheet.blanks.size()));
    // One narrow strip alone is cut from a blank that is just wide enough.
    list.pieces = {{"edge", {1800, 60}, 1}, {"block", {30, 40}, 5}};
    const SheetPlan alone = soundPlan(list);
    ASSERT_EQ(alone.sheets.size(), 1U);
    for (const SheetArea& blank : alone.sheets[0].blanks) {
        EXPECT_GE(std::min(blank.size.width, blank.size.depth), 100);
    }
}

TEST(SheetCutting, GrainHoldsForNarrowStripsToo)
{
    SheetCutting list = boards();
    list.leastStripMm = 120;
    list.pieces = {{"across", {60, 900}, 5, false}, {"along", {900, 60}, 5, false}, {"dot", {50, 70}, 9, false}};
    const SheetPlan plan = soundPlan(list);
    EXPECT_TRUE(plan.unplaced.empty());
    for (const PlacedPiece& piece : plan.sheets[0].pieces) {
        EXPECT_FALSE(piece.turned);
    }
}

TEST(SheetCutting, TheRestStaysInOnePiece)
{
    SheetCutting list = boards();
    list.pieces = {{"a", {800, 600}, 2}, {"b", {800, 300}, 2}};
    const SheetPlan plan = soundPlan(list);
    ASSERT_EQ(plan.sheets.size(), 1U);
    ASSERT_FALSE(plan.sheets[0].remainders.empty());
    // Two columns of 600 + 300 (or alike) leave 1.09 m2 in one piece at least.
    const SheetArea& rest = plan.sheets[0].remainders.front();
    EXPECT_GE(rest.size.width * rest.size.depth, 1.09e6);
}

TEST(SheetCutting, SheetsWithoutAPriceAreTakenByArea)
{
    SheetCutting list = boards();
    list.stock = {{{2500, 1250}, 0.0, {}}, {{1250, 1250}, 0.0, {}}};
    list.pieces = {{"a", {1200, 1200}, 1}};
    const SheetPlan plan = soundPlan(list);
    ASSERT_EQ(plan.sheets.size(), 1U);
    EXPECT_EQ(plan.sheets[0].stock, 1);
    EXPECT_DOUBLE_EQ(plan.price, 0.0);
}

TEST(SheetCutting, SameListSamePlan)
{
    SheetCutting list = boards();
    list.stock.push_back({{1250, 1250}, 22.0, {}});
    list.pieces = {{"base", {1840, 660}, 1}, {"side", {1840, 80}, 4}, {"end", {624, 80}, 6}, {"former", {560, 400}, 2}};
    const SheetPlan one = soundPlan(list);
    const SheetPlan two = soundPlan(list);
    ASSERT_EQ(one.sheets.size(), two.sheets.size());
    for (std::size_t s = 0; s < one.sheets.size(); ++s) {
        ASSERT_EQ(one.sheets[s].pieces.size(), two.sheets[s].pieces.size());
        for (std::size_t p = 0; p < one.sheets[s].pieces.size(); ++p) {
            EXPECT_EQ(one.sheets[s].pieces[p].at, two.sheets[s].pieces[p].at);
            EXPECT_EQ(one.sheets[s].pieces[p].piece, two.sheets[s].pieces[p].piece);
        }
    }
}

TEST(SheetCutting, EqualSizesUnderSeveralNamesAllComeOut)
{
    SheetCutting list = boards();
    list.pieces = {{"left", {1240, 300}, 5}, {"right", {300, 1240}, 6}, {"back", {1240, 300}, 4, false}};
    const SheetPlan plan = soundPlan(list);
    EXPECT_EQ(plan.count, 2);
}

TEST(SheetCutting, StopsWithAWholePlan)
{
    SheetCutting list = boards();
    list.pieces = {{"base", {1840, 660}, 5}, {"side", {1840, 80}, 14}, {"end", {624, 80}, 36}, {"former", {560, 400}, 12}};
    std::stop_source stop;
    stop.request_stop();
    const SheetPlan plan = cutSheets(list, {}, stop.get_token());
    EXPECT_TRUE(plan.stopped);
    EXPECT_EQ(replaySaw(list, plan), "");
    EXPECT_TRUE(plan.unplaced.empty());
}

TEST(SheetCutting, AMillionPiecesAreCut)
{
    SheetCutting list = boards();
    list.sawMm = 3;
    list.pieces = {{"tile", {300, 200}, 1'000'000}};
    const SheetPlan plan = soundPlan(list);
    EXPECT_TRUE(plan.unplaced.empty());
    // 48 of a sheet is the most (GuillotineKnapsack of one piece says so too).
    EXPECT_EQ(plan.count, 20'834);
    EXPECT_TRUE(plan.proven);
    list.pieces = {{"crumb", {10, 10}, 1'000'000}};
    EXPECT_EQ(soundPlan(list).count, 55);   // 192 x 96 of a sheet
    list.pieces = {{"tile", {300, 200}, 500'000}, {"plate", {333, 217}, 300'000}, {"slat", {1201, 17}, 200'000}};
    EXPECT_TRUE(soundPlan(list).unplaced.empty());
}

TEST(SheetCutting, EverythingWrongIsNamed)
{
    using Kind = SheetTrouble::Kind;
    const double nan = std::numeric_limits<double>::quiet_NaN();
    SheetCutting list;
    list.sawMm = nan;
    list.stock = {{{0, 1250}, -1.0, -3}, {{1e6, 5}, nan, {}}};
    list.pieces = {{"a", {nan, 3}, 0}, {"b", {-5, 3}, 1}, {"c", {5, std::numeric_limits<double>::infinity()}, 2'000'000}};
    const std::vector<SheetTrouble> expected{
        {Kind::badSaw, -1, -1},  {Kind::noSize, 0, -1},   {Kind::badPrice, 0, -1}, {Kind::badCount, 0, -1},
        {Kind::tooLarge, 1, -1}, {Kind::badPrice, 1, -1}, {Kind::noSize, -1, 0},   {Kind::badCount, -1, 0},
        {Kind::noSize, -1, 1},   {Kind::noSize, -1, 2},   {Kind::tooMany, -1, -1}};
    EXPECT_EQ(sheetTroubles(list), expected);
    const SheetPlan plan = cutSheets(list);
    EXPECT_TRUE(plan.sheets.empty());
    EXPECT_EQ(plan.count, 0);
    EXPECT_EQ(sheetTroubles({}), (std::vector<SheetTrouble>{{Kind::noStock, -1, -1}}));
}

TEST(SheetCutting, NothingToCutAndNothingLeftOfATrimmedSheet)
{
    SheetCutting list = boards();
    const SheetPlan none = soundPlan(list);
    EXPECT_EQ(none.count, 0);
    EXPECT_TRUE(none.proven);
    list.trimMm = 700;
    list.pieces = {{"a", {10, 10}, 2}};
    const SheetPlan all = soundPlan(list);
    EXPECT_EQ(all.count, 0);
    ASSERT_EQ(all.unplaced.size(), 1U);
    EXPECT_EQ(all.unplaced[0].count, 2);
    EXPECT_EQ(all.unplaced[0].reason, Unplaced::tooLarge);
}

}  // namespace
}  // namespace yardcast
