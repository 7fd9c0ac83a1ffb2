#include "core/purchase/cut_lists.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace yardcast {
namespace {

MouldPart board(const std::string& name, double lengthMm, double widthMm, int count = 1)
{
    MouldPart part;
    part.stuff = MouldStuff::board;
    part.kind = MouldPartKind::side;
    part.name = name;
    part.lengthMm = lengthMm;
    part.widthMm = widthMm;
    part.thicknessMm = 18.0;
    part.count = count;
    part.goodFace = true;
    return part;
}

/// A kitchen of one mould, some steel and a front, none of it computed.
struct Kitchen {
    Plan plan;
    PriceBook book = exampleBook();
    std::vector<MouldPtr> moulds;
    SteelSchedule steel;
    std::vector<FrontLayout> fronts;

    Kitchen()
    {
        plan.currency = "EUR";
        auto mould = std::make_shared<Mould>();
        mould->casting = "C1";
        mould->parts = {board("C1-1", 1900.0, 700.0), board("C1-2", 1818.0, 76.0, 2), board("C1-3", 620.0, 76.0, 2)};
        moulds.push_back(mould);
        auto layout = std::make_shared<CastingSteelLayout>();
        layout->casting = "C1";
        BarListRow row;
        row.mark = 1;
        row.diameterMm = 8.0;
        row.count = 4;
        row.cutLengthMm = 1755.0;
        BarListRow suggested = row;
        suggested.suggested = true;
        layout->barList = {row, suggested};
        MeshLayout mesh;
        mesh.barMm = 4.0;
        mesh.pitchMm = 50.0;
        MeshPiece piece;
        piece.at = {{20.0, 20.0}, {1780.0, 600.0}};
        mesh.pieces = {piece, piece};
        layout->meshes = {mesh};
        steel.layouts.push_back(layout);
        Front front;
        front.batten.widthMm = 46.0;
        front.batten.thicknessMm = 27.0;
        front.batten.species = "larch";
        Part part;
        part.id = "F1";
        part.body = front;
        plan.parts.push_back(std::make_shared<Part>(part));
        FrontLayout frontLayout;
        frontLayout.part = "F1";
        frontLayout.solved = true;
        frontLayout.pieces = {{"batten", 780.0, 46.0, 27.0, 24}, {"rail", 1800.0, 45.0, 45.0, 3}};
        fronts.push_back(frontLayout);
    }

    CutJobs jobs() const { return cutJobs(plan, book, moulds, steel, fronts); }
};

const SheetJob* sheetsOf(const CutJobs& jobs, const std::string& item)
{
    for (const SheetJob& job : jobs.sheets) {
        if (job.item == item) return &job;
    }
    return nullptr;
}

const BarJob* barsOf(const CutJobs& jobs, const std::string& item)
{
    for (const BarJob& job : jobs.bars) {
        if (job.item == item) return &job;
    }
    return nullptr;
}

TEST(CutJobs, EveryPieceCarriesWhereItGoesAndItsNumber)
{
    Kitchen kitchen;
    const CutJobs jobs = kitchen.jobs();
    const SheetJob* boards = sheetsOf(jobs, "mould_board");
    ASSERT_NE(boards, nullptr);
    EXPECT_TRUE(boards->atStore);
    EXPECT_EQ(boards->list.sawMm, 4.0);
    EXPECT_EQ(boards->list.leastStripMm, 80.0);
    EXPECT_EQ(boards->list.freeCuts, 5);
    EXPECT_EQ(boards->list.cutPrice, 80.0);
    ASSERT_EQ(boards->list.stock.size(), 1u);
    EXPECT_EQ(boards->list.stock[0].price, 3900.0);
    ASSERT_EQ(boards->pieces.size(), 3u);
    EXPECT_EQ(boards->pieces[1], (CutPiece{"C1", "C1-2", "side", true, false}));
    EXPECT_EQ(boards->list.pieces[1].count, 2);
    const SheetJob* mesh = sheetsOf(jobs, "mesh_4_50");
    ASSERT_NE(mesh, nullptr);
    EXPECT_FALSE(mesh->atStore);
    EXPECT_EQ(mesh->list.pieces.at(0).count, 2);
    EXPECT_EQ(mesh->list.stock.size(), 2u);
    const BarJob* bars = barsOf(jobs, "bar_8");
    ASSERT_NE(bars, nullptr);
    ASSERT_EQ(bars->pieces.size(), 1u) << "suggested bars are not bought";
    EXPECT_EQ(bars->pieces[0].name, "C1-1");
    EXPECT_EQ(bars->list.stock.size(), 3u);
    const BarJob* battens = barsOf(jobs, "batten");
    ASSERT_NE(battens, nullptr);
    EXPECT_THAT(battens->name, testing::EndsWith("(46 x 27 larch)"));
    EXPECT_NE(barsOf(jobs, "frame_timber"), nullptr);
    EXPECT_TRUE(jobs.withoutStock.empty());
}

TEST(CutJobs, FoamLargerThanEverySheetIsPutTogetherOfParts)
{
    Kitchen kitchen;
    auto mould = std::make_shared<Mould>(*kitchen.moulds[0]);
    MouldPart foam = board("C1-9", 1500.0, 700.0);
    foam.stuff = MouldStuff::foam;
    foam.thicknessMm = 20.0;
    mould->parts.push_back(foam);
    kitchen.moulds[0] = mould;
    const CutJobs jobs = kitchen.jobs();
    const SheetJob* job = sheetsOf(jobs, "foam_20");
    ASSERT_NE(job, nullptr);
    // Sheets of 1250 x 600: two parts along and two across.
    EXPECT_EQ(job->list.pieces.at(0).count, 4);
    EXPECT_EQ(job->list.pieces.at(0).size, (Size{750.0, 350.0}));
    EXPECT_TRUE(CutSolver().solve(jobs)->sheets.at(2)->plan.unplaced.empty());
}

TEST(CutJobs, FoamThatIsNotSoldSoThickIsCutDownOrLayered)
{
    Kitchen kitchen;
    auto mould = std::make_shared<Mould>();
    mould->casting = "C1";
    const auto add = [&](const std::string& name, double thicknessMm) {
        MouldPart foam = board(name, 400.0, 300.0);
        foam.kind = MouldPartKind::former;
        foam.stuff = MouldStuff::foam;
        foam.thicknessMm = thicknessMm;
        mould->parts.push_back(foam);
    };
    add("C1-1", 6.0);
    add("C1-2", 22.0);
    add("C1-3", 240.0);
    kitchen.moulds = {mould};
    const CutJobs jobs = kitchen.jobs();
    EXPECT_TRUE(jobs.withoutStock.empty());
    const SheetJob* thin = sheetsOf(jobs, "foam_10");
    ASSERT_NE(thin, nullptr) << "the thinnest that is sold";
    EXPECT_EQ(thin->thicknessMm, 10.0);
    EXPECT_EQ(thin->pieces.at(0).cutDownToMm, 6.0);
    ASSERT_NE(sheetsOf(jobs, "foam_25"), nullptr);
    EXPECT_EQ(sheetsOf(jobs, "foam_25")->pieces.at(0).cutDownToMm, 22.0);
    const SheetJob* thick = sheetsOf(jobs, "foam_80");
    ASSERT_NE(thick, nullptr);
    EXPECT_EQ(thick->list.pieces.at(0).count, 3) << "three layers of 80";
    EXPECT_EQ(thick->pieces.at(0).cutDownToMm, 0.0);
}

TEST(CutJobs, BoardsLargerThanEverySheetAreJoined)
{
    Kitchen kitchen;
    auto mould = std::make_shared<Mould>();
    mould->casting = "C1";
    mould->parts = {board("C1-1", 2718.0, 60.0)};
    kitchen.moulds = {mould};
    const CutJobs jobs = kitchen.jobs();
    const SheetJob* job = sheetsOf(jobs, "mould_board");
    ASSERT_NE(job, nullptr);
    EXPECT_EQ(job->list.pieces.at(0).count, 2);
    EXPECT_EQ(job->list.pieces.at(0).size, (Size{1359.0, 60.0}));
    EXPECT_EQ(job->pieces.at(0).parts, 2);
}

TEST(CutJobs, StripsRodsAndBentBoardsAreCutToo)
{
    Kitchen kitchen;
    auto mould = std::make_shared<Mould>();
    mould->casting = "C1";
    const auto add = [&](MouldPartKind kind, MouldStuff stuff, double lengthMm, Size section, bool bent) {
        MouldPart part = board("C1-" + std::to_string(mould->parts.size() + 1), lengthMm, section.width);
        part.kind = kind;
        part.stuff = stuff;
        part.thicknessMm = section.depth;
        part.bent = bent;
        mould->parts.push_back(part);
    };
    add(MouldPartKind::chamfer, MouldStuff::strip, 2618.0, {10, 10}, false);
    add(MouldPartKind::chamfer, MouldStuff::strip, 236.0, {10, 10}, true);
    add(MouldPartKind::drip, MouldStuff::strip, 1800.0, {8, 5}, false);
    add(MouldPartKind::rebate, MouldStuff::strip, 1000.0, {44, 6}, false);
    add(MouldPartKind::tie, MouldStuff::rod, 242.0, {8, 8}, false);
    add(MouldPartKind::side, MouldStuff::board, 236.0, {50, 3}, true);
    kitchen.moulds = {mould};
    const CutJobs jobs = kitchen.jobs();
    EXPECT_TRUE(jobs.withoutStock.empty());
    std::vector<std::string> names;
    for (const BarJob& job : jobs.bars) names.push_back(job.name);
    EXPECT_THAT(names, testing::IsSupersetOf({"Triangular strips for chamfers (10 x 10)",
                                              "Triangular strips of soft foam for bent edges (10 x 10)",
                                              "Strips, planed (8 x 5)", "Strips, planed (44 x 6)", "Threaded rod M8"}));
    const BarJob* chamfer = barsOf(jobs, "chamfer_strip");
    ASSERT_NE(chamfer, nullptr);
    EXPECT_EQ(chamfer->list.pieces.at(0).count, 2) << "longer than all lengths: butted";
    ASSERT_NE(sheetsOf(jobs, "bend_board"), nullptr);
    EXPECT_FALSE(sheetsOf(jobs, "bend_board")->atStore);
}

TEST(CutJobs, OffcutsAndWhatIsOwnedCostNothing)
{
    Kitchen kitchen;
    Moulding moulding;
    moulding.offcuts = {{{2000.0, 800.0}, 18.0, 1, {}}, {{900.0, 900.0}, 12.0, 1, {}}};
    kitchen.plan.moulding = moulding;
    kitchen.plan.owned = {{"bar_8", 5.0, {}}};
    const CutJobs jobs = kitchen.jobs();
    const SheetJob* boards = sheetsOf(jobs, "mould_board");
    ASSERT_NE(boards, nullptr);
    ASSERT_EQ(boards->stock.size(), 2u) << "the thin one is no use";
    EXPECT_TRUE(boards->stock[0].atHand);
    EXPECT_EQ(boards->list.stock[0].count, 1);
    const BarJob* bars = barsOf(jobs, "bar_8");
    ASSERT_NE(bars, nullptr);
    EXPECT_TRUE(bars->stock[0].atHand);
    EXPECT_EQ(bars->list.stock[0].count, 2) << "whole lengths of 2 m";
    EXPECT_EQ(bars->list.stock[0].price, 0.0);
}

TEST(CutJobs, ASharedMouldIsSawnOnce)
{
    Kitchen kitchen;
    auto second = std::make_shared<Mould>(*kitchen.moulds[0]);
    second->casting = "C2";
    kitchen.moulds.push_back(second);
    EXPECT_EQ(sheetsOf(kitchen.jobs(), "mould_board")->pieces.size(), 6u);
    Moulding moulding;
    moulding.shared = {{{"C1", "C2"}, {}}};
    kitchen.plan.moulding = moulding;
    EXPECT_EQ(sheetsOf(kitchen.jobs(), "mould_board")->pieces.size(), 3u);
}

TEST(CutJobs, WhatHasNoStockIsSaid)
{
    Kitchen kitchen;
    kitchen.book.items.clear();
    const CutJobs jobs = kitchen.jobs();
    EXPECT_TRUE(jobs.sheets.empty());
    EXPECT_TRUE(jobs.bars.empty());
    std::vector<std::string> items;
    for (const CutWithoutStock& one : jobs.withoutStock) items.push_back(one.item);
    EXPECT_THAT(items, testing::UnorderedElementsAre("mould_board_18", "mesh_4_50", "bar_8", "batten_larch_46x27",
                                                     "frame_timber"));
}

TEST(CutSolver, SolvesAJobOnceWhileItStaysTheSame)
{
    Kitchen kitchen;
    CutSolver solver;
    const CutPlansPtr first = solver.solve(kitchen.jobs());
    ASSERT_NE(first, nullptr);
    ASSERT_EQ(first->sheets.size(), 2u);
    ASSERT_EQ(first->bars.size(), 3u);
    for (const BarCutsPtr& bars : first->bars) EXPECT_TRUE(bars->plan.proven) << bars->job.item;
    // Four of 1755: one of 6 m at 6.60 holds three, and one of 2 m at 2.40 the fourth; four of 2 m cost 9.60.
    EXPECT_EQ(first->bars[0]->job.item, "bar_8");
    EXPECT_EQ(first->bars[0]->priceMinor, 900);
    kitchen.fronts[0].pieces[1].count = 4;
    const CutPlansPtr second = solver.solve(kitchen.jobs());
    EXPECT_EQ(second->sheets, first->sheets);
    EXPECT_EQ(second->bars[0], first->bars[0]);
    EXPECT_EQ(second->bars[1], first->bars[1]);
    EXPECT_NE(second->bars[2], first->bars[2]);
}

TEST(CutSolver, AStopLeavesNoPlansAndAnotherCallFinishes)
{
    Kitchen kitchen;
    CutSolver solver;
    std::stop_source stop;
    stop.request_stop();
    EXPECT_EQ(solver.solve(kitchen.jobs(), stop.get_token()), nullptr);
    EXPECT_NE(solver.solve(kitchen.jobs()), nullptr);
}

}  // namespace
}  // namespace yardcast
