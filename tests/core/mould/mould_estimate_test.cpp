#include "core/mould/mould_estimate.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "tests/core/mould/moulds.h"

namespace yardcast {
namespace {

MouldEstimate estimateOf(const std::vector<Part>& parts, std::optional<Moulding> how = {})
{
    const MouldsOfPlan all = mouldsOfParts(parts, std::move(how));
    return estimateMoulds(all.plan, all.castings, all.moulds);
}

double amountOf(const MouldNeed& need, MouldStuff stuff)
{
    double sum = 0.0;
    for (const MouldStuffNeed& one : need.stuffs) sum += one.stuff == stuff ? one.amount : 0.0;
    return sum;
}

TEST(MouldEstimate, OfACounterWorkedByHand)
{
    Counter counter = rimmedSlab();
    counter.cutouts = {rectangleCutout({600, 310}, {560, 400})};
    counter.filler = Filler{};
    Moulding how;
    how.draftDeg = 0.0;
    how.edge = EdgeFinish::sharp;
    const MouldEstimate e = estimateOf({partOf(counter)}, how);
    ASSERT_EQ(e.castings.size(), 1U);
    const MouldNeed& n = e.castings[0];
    EXPECT_EQ(n.casting, "C1");
    // Boards of 18 and 40 mm beyond them on each side: 116 mm more each way.
    EXPECT_NEAR(n.baseM2, 1.916 * 0.736, 1e-9);
    // Each covers the end of one other: 18 mm more.
    EXPECT_NEAR(n.sidesM2, (2 * 1.818 + 2 * 0.638) * 0.060, 1e-9);
    // Three plies of board; the fourth of 6 mm is foam.
    EXPECT_NEAR(n.formersM2, 3 * 0.560 * 0.400, 1e-9);
    EXPECT_NEAR(n.boardM2, (n.baseM2 + n.sidesM2 + n.formersM2) * 1.10, 1e-12);
    EXPECT_NEAR(n.releaseMl, 100 * (1.8 * 0.62 - 0.56 * 0.4 + 6.760 * 0.060), 1e-6);
    // 150 mm beyond each side, over the cutouts as well: what curing asks for.
    EXPECT_NEAR(n.sheetingM2, 2.1 * 0.92, 1e-9);
    EXPECT_NEAR(n.sealerL, (1.8 * 0.62 - 0.56 * 0.4 + 6.760 * 0.060) * 2 / 8, 1e-9);
    EXPECT_NEAR(n.foamM2, 1.680 * 0.500 - 0.56 * 0.4, 1e-6);
    EXPECT_NEAR(n.foamThicknessMm, 20, 1e-12);
    // The filler's rectangle and the make-up ply.
    EXPECT_NEAR(amountOf(n, MouldStuff::foam), 1.680 * 0.500 + 0.560 * 0.400, 1e-9);
    EXPECT_NEAR(n.waxedM, 1.920, 1e-9);
    EXPECT_NEAR(n.tapedM, 2 * (1.680 + 0.500) + 1.920, 1e-6);
    EXPECT_EQ(n.ties, 0);
}

TEST(MouldEstimate, CountsTheScrewsOfItsMould)
{
    const MouldsOfPlan all = mouldsOfParts({partOf(rimmedSlab())});
    const MouldScrews& screws = all.moulds.at(0)->screws;
    const MouldEstimate e = estimateMoulds(all.plan, all.castings, all.moulds);
    EXPECT_GT(screws.sides, 0);
    EXPECT_EQ(e.castings.at(0).screws, screws.sides + screws.formers + screws.holdDowns + screws.foam);
}

TEST(MouldEstimate, OfAPanelThatStandsHasRods)
{
    Panel panel;
    panel.lengthMm = 1800;
    panel.heightMm = 900;
    panel.thicknessMm = 60;
    panel.cast = UprightCast::upright;
    const MouldsOfPlan all = mouldsOfParts({partOf(panel, "P1")});
    const MouldNeed need = estimateMoulds(all.plan, all.castings, all.moulds).castings.at(0);
    const Mould& mould = *all.moulds.at(0);
    ASSERT_GT(mould.ties.rows.size(), 1U);
    EXPECT_EQ(need.ties, mould.ties.across * static_cast<int>(mould.ties.rows.size() - 1));
    const auto rods = partsOfKind(mould, MouldPartKind::tie);
    EXPECT_NEAR(amountOf(need, MouldStuff::rod), need.ties * rods.at(0).lengthMm / 1000, 1e-9);
}

TEST(MouldEstimate, WhatComesOutOfAnothersMouldTakesNoBoards)
{
    Moulding how;
    how.shared = {{{"S1", "S2"}, {}}};
    Support support;
    support.lengthMm = 600;
    support.heightMm = 840;
    support.widthMm = 100;
    support.core = Core{440, 680, 40, 20, {}};
    const MouldEstimate e = estimateOf({partOf(support, "S1"), partOf(support, "S2")}, how);
    EXPECT_GT(e.castings.at(0).boardM2, 0.0);
    EXPECT_EQ(e.castings.at(1).boardM2, 0.0);
    EXPECT_EQ(e.castings.at(1).screws, 0);
    EXPECT_NEAR(e.castings.at(1).foamM2, 0.440 * 0.680, 1e-9) << "its core is its own";
    EXPECT_EQ(e.castings.at(1).siliconeMl, e.castings.at(0).siliconeMl) << "and it is sealed again";
}

TEST(MouldEstimate, AddsUpTheCastings)
{
    Counter counter = rimmedSlab();
    counter.joints = {Joint{{900, 0}, {900, 620}, {}, {}}};
    const MouldEstimate e = estimateOf({partOf(counter), partOf(Support{}, "S1")});
    ASSERT_EQ(e.castings.size(), 3U);
    double board = 0.0;
    double silicone = 0.0;
    double sealer = 0.0;
    for (const MouldNeed& n : e.castings) {
        board += n.boardM2;
        silicone += n.siliconeMl;
        sealer += n.sealerL;
    }
    EXPECT_NEAR(e.boardM2, board, 1e-12);
    EXPECT_NEAR(e.siliconeMl, silicone, 1e-9);
    EXPECT_NEAR(e.sealerL, sealer, 1e-12);
    EXPECT_GT(e.releaseMl, 0.0);
    EXPECT_GT(e.sheetingM2, 0.0);
}

TEST(MouldEstimate, OfNothingIsNothing)
{
    const MouldEstimate e = estimateOf({});
    EXPECT_TRUE(e.castings.empty());
    EXPECT_EQ(e.boardM2, 0.0);
}

}  // namespace
}  // namespace yardcast
