#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast {
namespace {

using namespace samples;
using ::testing::ElementsAre;

TEST(PartEdits, FreeIdIsTheLowestNumberNoPartHas)
{
    Plan plan = twoSupports();
    EXPECT_EQ(freePartId(plan, PartKind::support), "S3");
    EXPECT_EQ(freePartId(plan, PartKind::counter), "C2");
    EXPECT_EQ(freePartId(plan, PartKind::panel), "P1");
    EXPECT_EQ(freePartId(plan, PartKind::front), "F1");
    EXPECT_EQ(freePartId(plan, PartKind::appliance), "A1");
    EXPECT_EQ(freePartId(removeParts(plan, {"S1"}), PartKind::support), "S1");
}

TEST(PartEdits, AddKeepsAFreeIdAndReplacesATakenOne)
{
    const Plan plan = twoSupports();
    EXPECT_EQ(addPart(plan, supportPart("left", {0, 0})).parts.back()->id, "left");
    EXPECT_EQ(addPart(plan, supportPart("S1", {0, 0})).parts.back()->id, "S3");
    EXPECT_EQ(addPart(plan, supportPart("", {0, 0})).parts.back()->id, "S3");
}

TEST(PartEdits, WhatDidNotChangeStaysShared)
{
    const Plan plan = twoSupports();
    const Plan moved = moveParts(plan, {"S1"}, {10, 0});
    EXPECT_EQ(moved.parts[0], plan.parts[0]);
    EXPECT_EQ(moved.parts[2], plan.parts[2]);
    EXPECT_NE(moved.parts[1], plan.parts[1]);
    EXPECT_EQ(plan.parts[1]->place.at, (Point{100, 0})) << "the plan given is not touched";
}

TEST(PartEdits, RemoveAlsoTakesBackWhatAppliancesStoodOn)
{
    Plan plan = twoSupports();
    put(plan, appliancePart("A1", {0, 0}, "C1"));
    const Plan removed = removeParts(plan, {"C1", "S2", "none"});
    ASSERT_EQ(removed.parts.size(), 2u);
    EXPECT_FALSE(body<Appliance>(removed, "A1").on);
}

TEST(PartEdits, NoSuchPartChangesNothing)
{
    const Plan plan = twoSupports();
    EXPECT_EQ(removeParts(plan, {"X"}), plan);
    EXPECT_EQ(moveParts(plan, {"X"}, {1, 1}), plan);
    EXPECT_EQ(turnParts(plan, {"X"}, 90, {0, 0}), plan);
    EXPECT_EQ(mirrorParts(plan, {"X"}, 0), plan);
    EXPECT_EQ(duplicateParts(plan, {"X"}, {1, 1}), plan);
    EXPECT_EQ(raiseParts(plan, {"X"}, 5), plan);
    EXPECT_EQ(alignParts(plan, {"X"}, AlignTo::left), plan);
    EXPECT_EQ(distributeParts(plan, {"X"}, Axis::x), plan);
    EXPECT_EQ(changePart(plan, "X", [](Part& p) { p.name = "no"; }), plan);
    EXPECT_EQ(changeCounter(plan, "S1", [](Counter& c) { c.topMm = 1; }), plan);
    EXPECT_EQ(renamePart(plan, "X", "Y"), plan);
    EXPECT_EQ(resizePart(plan, "X", {1, 1}), plan);
    EXPECT_EQ(moveOutlineEdge(plan, "X", 0, 5), plan);
    EXPECT_EQ(moveOutlineEdge(plan, "S1", 0, 5), plan);
    EXPECT_EQ(moveOutlineEdge(plan, "C1", 4, 5), plan);
    EXPECT_EQ(moveOutlineEdge(plan, "C1", -1, 5), plan);
    EXPECT_EQ(moveOutlineCorner(plan, "C1", 4, {0, 0}), plan);
    EXPECT_EQ(insertOutlineCorner(plan, "C1", 4, {0, 0}), plan);
    EXPECT_EQ(removeOutlineCorner(plan, "C1", 4), plan);
    EXPECT_EQ(extrudeOutlineEdge(plan, "C1", 4, 0, 10, 10), plan);
    EXPECT_EQ(addCutout(plan, "S1", sink("K9", {0, 0})), plan);
    EXPECT_EQ(removeCutout(plan, "C1", "K9"), plan);
    EXPECT_EQ(changeCutout(plan, "C1", "K9", [](Cutout& c) { c.diameterMm = 1; }), plan);
    EXPECT_EQ(removeFixture(plan, "X1"), plan);
    EXPECT_EQ(changeFixture(plan, "X1", [](Fixture& f) { f.at = {1, 1}; }), plan);
}

TEST(PartEdits, MovesKeepTypedDecimals)
{
    Plan plan;
    put(plan, supportPart("S1", {100.1, 0}));
    EXPECT_EQ(moveParts(plan, {"S1"}, {0.2, 0}).parts[0]->place.at.x, 100.3);
}

TEST(PartEdits, TurnsAGroupAboutAPoint)
{
    const Plan plan = turnParts(twoSupports(), {"C1", "S1", "S2"}, 90, {0, 0});
    EXPECT_EQ(findPart(plan, "C1")->place, (Placement{{0, 0}, 90}));
    EXPECT_EQ(findPart(plan, "S1")->place, (Placement{{0, 100}, 90}));
    EXPECT_EQ(findPart(plan, "S2")->place, (Placement{{0, 1600}, 90}));
    const Plan back = turnParts(plan, {"C1", "S1", "S2"}, -90, {0, 0});
    EXPECT_EQ(back, twoSupports());
    EXPECT_EQ(turnParts(plan, {"C1"}, -180, {0, 0}).parts[0]->place.turnDeg, 270.0);
}

TEST(PartEdits, CopiesGetFreeIdsAndStandOnTheCopiedCounter)
{
    Plan plan = twoSupports();
    put(plan, appliancePart("A1", {600, 100}, "C1"));
    Ids ids{"stale"};
    const Plan copied = duplicateParts(plan, {"C1", "A1"}, {0, 1000}, &ids);
    EXPECT_THAT(ids, ElementsAre("C2", "A2"));
    EXPECT_EQ(body<Appliance>(copied, "A2").on, "C2");
    EXPECT_EQ(body<Appliance>(copied, "A1").on, "C1");
    EXPECT_EQ(findPart(copied, "C2")->place.at, (Point{0, 1000}));
    EXPECT_EQ(body<Counter>(copied, "C2"), body<Counter>(plan, "C1"));

    const Plan onlyAppliance = duplicateParts(plan, {"A1"}, {0, 0});
    EXPECT_EQ(body<Appliance>(onlyAppliance, "A2").on, "C1");
}

TEST(PartEdits, PastingIntoAnotherPlan)
{
    Plan empty;
    Ids ids;
    const Plan pasted = insertParts(
        empty, {appliancePart("A7", {0, 0}, "C1"), supportPart("S5", {0, 0}), supportPart("S5", {0, 0})}, {5, 5}, &ids);
    EXPECT_THAT(ids, ElementsAre("A7", "S5", "S1"));
    EXPECT_FALSE(body<Appliance>(pasted, "A7").on) << "there is no such counter here";

    Plan other;
    put(other, counterPart("C1", {0, 0}));
    const Plan both = insertParts(other, {appliancePart("A1", {0, 0}, "C1"), counterPart("C1", {0, 0})}, {}, &ids);
    EXPECT_THAT(ids, ElementsAre("A1", "C2"));
    EXPECT_EQ(body<Appliance>(both, "A1").on, "C2");
}

TEST(PartEdits, RaisesEveryKind)
{
    Plan plan = twoSupports();
    put(plan, panelPart("P1", {0, 600}));
    put(plan, frontPart("F1", {0, 0}));
    put(plan, appliancePart("A1", {0, 0}));
    const Plan up = raiseParts(plan, {"C1", "S1", "P1", "F1", "A1"}, 15.5);
    EXPECT_EQ(body<Counter>(up, "C1").topMm, 915.5);
    EXPECT_EQ(body<Support>(up, "S1").baseMm, 15.5);
    EXPECT_EQ(body<Panel>(up, "P1").baseMm, 915.5);
    EXPECT_EQ(body<Front>(up, "F1").bottomMm, 75.5);
    EXPECT_EQ(body<Front>(up, "F1").topMm, 855.5);
    EXPECT_EQ(body<Appliance>(up, "A1"), body<Appliance>(plan, "A1"));
    EXPECT_EQ(body<Support>(up, "S2").baseMm, 0.0);
}

TEST(PartEdits, ChangesAnyProperty)
{
    const Plan plan = twoSupports();
    EXPECT_EQ(changePart(plan, "S1", [](Part& p) { p.name = "left foot"; }).parts[1]->name, "left foot");
    EXPECT_EQ(body<Counter>(changeCounter(plan, "C1", [](Counter& c) { c.topMm = 880; }), "C1").topMm, 880.0);
    EXPECT_EQ(changePlan(plan, [](Plan& p) { p.crew.people = 4; }).crew.people, 4);
    EXPECT_EQ(plan.crew.people, 2);
}

TEST(PartEdits, RenameIsFollowedAndRefusesTakenIds)
{
    Plan plan = twoSupports();
    put(plan, appliancePart("A1", {0, 0}, "C1"));
    const Plan renamed = renamePart(plan, "C1", "bar");
    EXPECT_TRUE(findPart(renamed, "bar"));
    EXPECT_EQ(body<Appliance>(renamed, "A1").on, "bar");
    EXPECT_EQ(renamePart(plan, "C1", "S1"), plan);
    EXPECT_EQ(renamePart(plan, "C1", ""), plan);
}

TEST(PartEdits, ResizesWhatHasASize)
{
    Plan plan = twoSupports();
    put(plan, panelPart("P1", {0, 600}));
    put(plan, appliancePart("A1", {0, 0}));
    EXPECT_EQ(body<Support>(resizePart(plan, "S1", {300, 120}), "S1").lengthMm, 300.0);
    EXPECT_EQ(body<Support>(resizePart(plan, "S1", {300, 120}), "S1").widthMm, 120.0);
    EXPECT_EQ(body<Panel>(resizePart(plan, "P1", {300, 50}), "P1").thicknessMm, 50.0);
    EXPECT_EQ(body<Appliance>(resizePart(plan, "A1", {300, 50}), "A1").size, (Size{300, 50}));
    const Counter wide = body<Counter>(resizePart(plan, "C1", {2000, 650}), "C1");
    EXPECT_EQ(wide.outline, (Ring{{0, 0}, {2000, 0}, {2000, 650}, {0, 650}}));
    EXPECT_EQ(wide.cutouts, body<Counter>(plan, "C1").cutouts);
}

TEST(PartEdits, ACounterThatIsNoRectangleKeepsItsOutline)
{
    const Plan plan = moveOutlineCorner(twoSupports(), "C1", 2, {1800, 650});
    EXPECT_EQ(resizePart(plan, "C1", {2000, 650}), plan);
}

}  // namespace
}  // namespace yardcast
