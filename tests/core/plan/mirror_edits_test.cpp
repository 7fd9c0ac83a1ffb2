#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast {
namespace {

using namespace samples;
using ::testing::ElementsAre;

/// What a mirror must do, said without own frames: a point of the part in plan axes goes to 2x - px.
void expectMirrored(Point before, Point after, double xMm)
{
    EXPECT_NEAR(after.x, 2 * xMm - before.x, 1e-5);
    EXPECT_NEAR(after.y, before.y, 1e-5);
}

Part fullCounter()
{
    Part part = counterPart("C1", {200, 100});
    part.place.turnDeg = 30;
    auto& c = std::get<Counter>(part.body);
    c.outline = {{0, 0}, {1800, 0}, {1800, 1200}, {1200, 1200}, {1200, 600}, {0, 600}};
    c.rim = Rim{};
    c.rim->edges = {0, 1, 4, 9};
    c.cutouts = {sink("K1", {500, 300}), tapHole("K2", {500, 540})};
    c.cutouts[0].turnDeg = 10;
    c.ribs = {Rib{{900, 0}, {900, 600}, 80, {}}};
    c.joints = {Joint{{1000, 0}, {1000, 600}, 4.0, {}}};
    c.steel = Steel{};
    c.steel->bars = {BarGroup{{60, 60}, {1700, 60}, 8, 2, 40.0, 20, {}}};
    c.loads = {PlacedLoad{"oven", {1500, 900}, {400, 400}, 80, {}}};
    c.lift = Lift{};
    c.lift->grips = {{100, 0}, {1700, 0}};
    return part;
}

TEST(MirrorEdits, EveryPointOfACounterIsMirrored)
{
    Plan plan;
    put(plan, fullCounter());
    const double x = 750;
    const Part before = *plan.parts[0];
    const Part after = *mirrorParts(plan, {"C1"}, x).parts[0];
    const auto& b = std::get<Counter>(before.body);
    const auto& a = std::get<Counter>(after.body);
    const auto both = [&](Point p, Point q) { expectMirrored(before.place.toPlan(p), after.place.toPlan(q), x); };

    both(b.cutouts[0].centre, a.cutouts[0].centre);
    both(b.cutouts[1].centre, a.cutouts[1].centre);
    EXPECT_EQ(a.cutouts[0].turnDeg, -10.0);
    EXPECT_FALSE(a.cutouts[1].turnDeg);
    both(b.ribs[0].from, a.ribs[0].from);
    both(b.ribs[0].to, a.ribs[0].to);
    both(b.joints[0].from, a.joints[0].from);
    both(b.joints[0].to, a.joints[0].to);
    both(b.steel->bars[0].from, a.steel->bars[0].from);
    both(b.steel->bars[0].to, a.steel->bars[0].to);
    both(b.loads[0].centre, a.loads[0].centre);
    both(b.lift->grips[0], a.lift->grips[0]);
    both(b.lift->grips[1], a.lift->grips[1]);
    EXPECT_EQ(signedArea(a.outline), signedArea(b.outline)) << "same area and same sense";
}

TEST(MirrorEdits, RimEdgesFollowTheirEdges)
{
    Plan plan;
    put(plan, fullCounter());
    const double x = 750;
    const Part before = *plan.parts[0];
    const Part after = *mirrorParts(plan, {"C1"}, x).parts[0];
    const auto& b = std::get<Counter>(before.body);
    const auto& a = std::get<Counter>(after.body);
    ASSERT_EQ(a.rim->edges->size(), b.rim->edges->size());
    for (std::size_t i = 0; i < 3; ++i) {
        const auto middle = [](const Counter& c, int edge) {
            const std::size_t n = c.outline.size();
            const auto e = static_cast<std::size_t>(edge);
            return (c.outline[e] + c.outline[(e + 1) % n]) * 0.5;
        };
        expectMirrored(before.place.toPlan(middle(b, (*b.rim->edges)[i])),
                       after.place.toPlan(middle(a, (*a.rim->edges)[i])), x);
    }
    EXPECT_EQ(a.rim->edges->back(), 9) << "an index that names no edge is kept for validation to speak about";
    EXPECT_EQ(a.rim->edges->front(), 0) << "the front edge of a part stays its first";
}

TEST(MirrorEdits, DripAndRebateEdgesFollowTheirEdges)
{
    Part part = fullCounter();
    std::get<Counter>(part.body).drip = Drip{{0, 1, 9}, 20, 8, 5, {}};
    std::get<Counter>(part.body).rebate = Rebate{{2}, 44, 8, {}};
    Plan plan;
    put(plan, part);
    const Plan after = mirrorParts(plan, {"C1"}, 750);
    const auto& mirrored = body<Counter>(after, "C1");
    // Of six edges: the front stays the first, the others are counted the other way round.
    EXPECT_THAT(mirrored.drip->edges, ElementsAre(0, 5, 9));
    EXPECT_THAT(mirrored.rebate->edges, ElementsAre(4));
}

TEST(MirrorEdits, ARectangleStaysTheSameRectangle)
{
    Plan plan;
    put(plan, counterPart("C1", {100, 50}));
    const Plan mirrored = mirrorParts(plan, {"C1"}, 0);
    EXPECT_EQ(body<Counter>(mirrored, "C1").outline, body<Counter>(plan, "C1").outline);
    EXPECT_EQ(mirrored.parts[0]->place, (Placement{{-1900, 50}, 0}));
}

TEST(MirrorEdits, TwiceIsTheSamePlan)
{
    Plan plan = twoSupports();
    put(plan, panelPart("P1", {33.25, 600}));
    put(plan, frontPart("F1", {0.1, 0.7}));
    Part tilted = fullCounter();
    tilted.id = "C2";
    std::get<Counter>(tilted.body).outline[1].x = 1800.3;
    put(plan, tilted);
    const Ids all{"C1", "C2", "S1", "S2", "P1", "F1"};
    EXPECT_EQ(mirrorParts(mirrorParts(plan, all, 431.7), all, 431.7), plan);
}

TEST(MirrorEdits, AFrontKeepsItsVisibleSideAndItsDoorsChangeHands)
{
    Plan plan;
    Part part = frontPart("F1", {100, 0}, 1000);
    auto& front = std::get<Front>(part.body);
    front.doors = {Door{50, 450, HingeSide::left, {}}};
    front.measured = MeasuredOpening{1000, 1001, 780, 782, 1270, 1268, {}};
    put(plan, part);
    const Plan mirrored = mirrorParts(plan, {"F1"}, 600);
    const auto& after = body<Front>(mirrored, "F1");
    EXPECT_EQ(after.from, front.from);
    EXPECT_EQ(after.to, front.to);
    EXPECT_EQ(boundsOf(footprint(*mirrored.parts[0])), boundsOf(footprint(*plan.parts[0])));
    EXPECT_EQ(after.doors[0].fromMm, 550.0);
    EXPECT_EQ(after.doors[0].toMm, 950.0);
    EXPECT_EQ(after.doors[0].hinges, HingeSide::right);
    EXPECT_EQ(after.measured->leftMm, 782.0);
    EXPECT_EQ(after.measured->rightMm, 780.0);
    EXPECT_EQ(after.measured->diagonalRisingMm, 1268.0);
    EXPECT_EQ(after.measured->diagonalFallingMm, 1270.0);
}

TEST(MirrorEdits, AGroupIsMirroredInOneLine)
{
    const Plan plan = mirrorParts(twoSupports(), {"S1", "S2"}, 900);
    EXPECT_EQ(findPart(plan, "S1")->place.at, (Point{1600, 0}));
    EXPECT_EQ(findPart(plan, "S2")->place.at, (Point{100, 0}));
}

}  // namespace
}  // namespace yardcast
