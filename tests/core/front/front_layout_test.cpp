#include "core/front/front_layout.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/materials/materials.h"

namespace yardcast {
namespace {

Part partOf(const Front& front)
{
    Part part;
    part.id = "F1";
    part.body = front;
    return part;
}

/// 1000 wide, 780 high, larch battens 46 x 27, wish 9.
Front plain()
{
    Front front;
    front.from = {0, 0};
    front.to = {1000, 0};
    front.bottomMm = 60;
    front.topMm = 840;
    front.batten.gapMm = 9;
    front.batten.species = "larch";
    return front;
}

struct Result {
    FrontLayout layout;
    std::vector<Finding> findings;

    const Finding* find(const std::string& code) const
    {
        for (const Finding& f : findings) {
            if (f.code == code) return &f;
        }
        return nullptr;
    }
    int count(const std::string& name) const
    {
        int sum = 0;
        for (const TimberPiece& piece : layout.pieces) {
            if (piece.name == name) sum += piece.count;
        }
        return sum;
    }
};

Result layOut(const Front& front)
{
    Result result;
    result.layout = layOutFront(partOf(front), result.findings);
    return result;
}

TEST(FrontLayout, AllGapsAreEqualThoseAtTheEndsIncluded)
{
    const Result r = layOut(plain());
    const FrontLayout& l = r.layout;
    ASSERT_TRUE(l.solved);
    EXPECT_EQ(l.part, "F1");
    EXPECT_EQ(l.battens, 18);
    ASSERT_EQ(l.battenStartsMm.size(), 18U);
    double before = 0.0;
    for (const double start : l.battenStartsMm) {
        EXPECT_NEAR(start - before, l.gapMm, 1e-9);
        before = start + 46;
    }
    EXPECT_NEAR(1000 - before, l.gapMm, 1e-9);
    EXPECT_EQ(l.battenLengthMm, 780.0);
    EXPECT_NEAR(l.timberM, 18 * 0.78, 1e-9);
    EXPECT_TRUE(r.findings.empty());
}

TEST(FrontLayout, FrameOfAPlainFront)
{
    const Result r = layOut(plain());
    ASSERT_EQ(r.layout.pieces.size(), 2U);
    EXPECT_EQ(r.count("batten"), 18);
    EXPECT_EQ(r.count("rail"), 2);
    const double rail = 1000 - 2 * r.layout.gapMm;
    EXPECT_NEAR(r.layout.frameTimberM, 2 * rail / 1000, 1e-9);
    EXPECT_EQ(r.layout.screws, 18 * 2 * 2);
    EXPECT_EQ(r.layout.hinges, 0);
    const double litres = 18 * 780 * 46 * 27 * 1e-6 + 2 * rail * 45 * 45 * 1e-6;
    EXPECT_NEAR(r.layout.massKg, litres * timberKgM3("larch") / 1000, 1e-9);
}

TEST(FrontLayout, AHighFrontHasThreeRails)
{
    Front front = plain();
    front.topMm = front.bottomMm + 901;
    EXPECT_EQ(layOut(front).count("rail"), 3);
    front.topMm = front.bottomMm + 900;
    EXPECT_EQ(layOut(front).count("rail"), 2);
}

TEST(FrontLayout, ADoorDividesTheRailsAndHasABrace)
{
    Front front = plain();
    front.doors = {Door{300, 700, HingeSide::right, {}}};
    const Result r = layOut(front);
    const FrontLayout& l = r.layout;
    ASSERT_EQ(l.doors.size(), 1U);
    const DoorLayout& door = l.doors[0];
    EXPECT_EQ(door.side, HingeSide::right);
    EXPECT_EQ(door.hinges, 2);
    EXPECT_EQ(l.hinges, 2);
    // The leaf ends in the middle of gaps: its width is so many battens with a whole gap each.
    EXPECT_NEAR(door.toMm - door.fromMm, door.battens * (46 + l.gapMm), 1e-9);
    EXPECT_EQ(r.count("rail"), 4);
    EXPECT_EQ(r.count("door_rail"), 2);
    EXPECT_EQ(r.count("door_brace"), 1);
    EXPECT_EQ(l.screws, l.battens * 2 * 2 + door.battens * 2);
    for (const TimberPiece& piece : l.pieces) {
        if (piece.name != "door_brace") continue;
        EXPECT_NEAR(piece.lengthMm, std::hypot(door.battens * 46 + (door.battens - 1) * l.gapMm, 780 - 200), 1e-9);
    }
}

TEST(FrontLayout, ADoorThatMovesByMoreThanFiveMillimetresIsSaid)
{
    Front front = plain();
    front.doors = {Door{307, 692, HingeSide::left, {}}};
    const Result r = layOut(front);
    const DoorLayout& door = r.layout.doors.at(0);
    const double shift = std::max(std::abs(door.fromMm - 307), std::abs(door.toMm - 692));
    EXPECT_NEAR(door.shiftMm, shift, 1e-9);
    ASSERT_GT(shift, 5.0);
    ASSERT_NE(r.find("door_moved"), nullptr);
    EXPECT_EQ(r.find("door_moved")->severity, Severity::note);
    EXPECT_NEAR(std::get<double>(r.find("door_moved")->values.at("shift_mm")), shift, 1e-9);
    // Wished where it came to lie, it stays.
    front.doors[0].fromMm = door.fromMm;
    front.doors[0].toMm = door.toMm;
    const Result again = layOut(front);
    EXPECT_EQ(again.find("door_moved"), nullptr);
    EXPECT_NEAR(again.layout.doors.at(0).shiftMm, 0, 1e-9);
}

TEST(FrontLayout, AHighOrHeavyLeafHasThreeHinges)
{
    Front front = plain();
    front.doors = {Door{0, 500, HingeSide::left, {}}};
    front.topMm = front.bottomMm + 901;
    EXPECT_EQ(layOut(front).layout.hinges, 3);
    front = plain();
    front.doors = {Door{0, 500, HingeSide::left, {}}};
    front.batten.thicknessMm = 60;
    front.batten.species = "oak";
    EXPECT_EQ(layOut(front).layout.hinges, 3) << "heavier than 12 kg";
}

TEST(FrontLayout, TheLongSampleWithThreeDoorsDividesEvenly)
{
    Front front = plain();
    front.to = {5400, 0};
    front.doors = {Door{300, 900, HingeSide::left, {}}, Door{2000, 2600, HingeSide::left, {}},
                   Door{4000, 4600, HingeSide::right, {}}};
    const Result r = layOut(front);
    ASSERT_TRUE(r.layout.solved);
    EXPECT_GE(r.layout.gapMm, kLeastGapMm);
    EXPECT_LE(r.layout.gapMm, kMostGapMm);
    for (const DoorLayout& door : r.layout.doors) {
        EXPECT_LT(door.shiftMm, 28);
        for (const double edge : {door.fromMm, door.toMm}) {
            const double place = (edge - r.layout.gapMm / 2) / (46 + r.layout.gapMm);
            EXPECT_NEAR(place, std::round(place), 1e-9) << "in the middle of a gap";
        }
    }
    int inDoors = 0;
    for (const DoorLayout& door : r.layout.doors) inDoors += door.battens;
    EXPECT_LT(inDoors, r.layout.battens);
    EXPECT_EQ(r.count("rail"), 4 * 2);
}

TEST(FrontLayout, NarrowOpeningsAreUnsolvedAndSaid)
{
    Front front = plain();
    front.to = {90, 0};
    const Result r = layOut(front);
    EXPECT_FALSE(r.layout.solved);
    EXPECT_TRUE(r.layout.pieces.empty());
    ASSERT_NE(r.find("front_unsolved"), nullptr);
    EXPECT_EQ(r.find("front_unsolved")->severity, Severity::caution);
    EXPECT_EQ(std::get<double>(r.find("front_unsolved")->values.at("battens")), 1.0);
    EXPECT_EQ(std::get<double>(r.find("front_unsolved")->values.at("gap_mm")), 22.0);
}

TEST(FrontLayout, MoreDoorsThanBattensAreSaid)
{
    Front front = plain();
    front.to = {220, 0};  // four battens
    front.doors.assign(5, Door{100, 150, HingeSide::left, {}});
    const Result r = layOut(front);
    EXPECT_FALSE(r.layout.solved);
    EXPECT_EQ(r.find("front_unsolved"), nullptr);
    ASSERT_NE(r.find("doors_no_room"), nullptr);
    EXPECT_EQ(std::get<double>(r.find("doors_no_room")->values.at("battens")), 4.0);
}

TEST(FrontLayout, LevelBattensDivideTheHeight)
{
    Front front = plain();
    front.batten.run = BattenRun::level;
    const Result r = layOut(front);
    ASSERT_TRUE(r.layout.solved);
    EXPECT_EQ(r.layout.battenLengthMm, 1000.0);
    EXPECT_NEAR(r.layout.battens * 46 + (r.layout.battens + 1) * r.layout.gapMm, 780, 1e-9);
    EXPECT_EQ(r.count("batten"), r.layout.battens);
    EXPECT_EQ(r.count("stile"), 3);  // at 0, 500 and 1000
}

TEST(FrontLayout, DoorsCutLevelBattensWithAStileOnEachSide)
{
    Front front = plain();
    front.batten.run = BattenRun::level;
    front.doors = {Door{400, 800, HingeSide::left, {}}};
    const Result r = layOut(front);
    const int rows = r.layout.battens;
    EXPECT_EQ(r.count("batten"), 2 * rows);
    EXPECT_EQ(r.count("door_batten"), rows);
    EXPECT_EQ(r.count("stile"), 4);
    EXPECT_EQ(r.count("door_stile"), 2);
    EXPECT_EQ(r.count("door_brace"), 1);
    // 398 + 396 + 198: two clearances of 4 mm are lost.
    EXPECT_NEAR(r.layout.timberM, rows * 0.992, 1e-9);
    EXPECT_EQ(r.layout.doors.at(0).shiftMm, 0.0);
    EXPECT_EQ(r.layout.hinges, 2);
    EXPECT_EQ(r.layout.screws, rows * 2 * 6 + rows * 2);
}

TEST(FrontLayout, AMeasuredOpeningGoesBeforeTheDrawing)
{
    Front front = plain();
    front.measured = MeasuredOpening{996, 990, 778, 781, 1260, 1264, {}};
    const Result r = layOut(front);
    EXPECT_EQ(r.layout.lengthMm, 990.0);
    EXPECT_EQ(r.layout.heightMm, 778.0);
    ASSERT_NE(r.find("opening_out_of_square"), nullptr);
    EXPECT_EQ(r.find("opening_out_of_square")->severity, Severity::caution);
    front.measured->diagonalFallingMm = 1262;
    EXPECT_EQ(layOut(front).find("opening_out_of_square")->severity, Severity::note);
    front.measured->diagonalFallingMm = 1261;
    EXPECT_EQ(layOut(front).find("opening_out_of_square"), nullptr);
}

TEST(FrontLayout, BrokenNumbersGiveAnEmptyLayout)
{
    for (const double bad : {double{NAN}, HUGE_VAL, -HUGE_VAL, 1e300, -1.0, 0.0}) {
        for (int field = 0; field < 7; ++field) {
            Front front = plain();
            front.doors = {Door{300, 700, HingeSide::left, {}}};
            double* fields[] = {&front.to.x,           &front.topMm,           &front.batten.widthMm,
                                &front.batten.thicknessMm, &front.batten.gapMm, &front.doors[0].fromMm,
                                &front.doors[0].toMm};
            *fields[field] = bad;
            const Result r = layOut(front);
            for (const double value : {r.layout.gapMm, r.layout.massKg, r.layout.timberM, r.layout.frameTimberM})
                EXPECT_TRUE(std::isfinite(value)) << field << ' ' << bad;
            for (const DoorLayout& door : r.layout.doors) EXPECT_TRUE(std::isfinite(door.fromMm + door.shiftMm));
        }
    }
    Part other;
    other.body = Support{};
    std::vector<Finding> findings;
    EXPECT_FALSE(layOutFront(other, findings).solved);
}

TEST(FrontLayout, AFrontOfAbsurdSizeDoesNotStall)
{
    Front front = plain();
    front.to = {1e5, 0};
    front.batten.widthMm = 5;
    for (int i = 0; i < 100; ++i) front.doors.push_back(Door{i * 900.0, i * 900.0 + 600, HingeSide::left, {}});
    layOut(front);  // a stall would run into the test's time limit
}

}  // namespace
}  // namespace yardcast
