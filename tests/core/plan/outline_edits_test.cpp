#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast {
namespace {

using namespace samples;
using ::testing::ElementsAre;

Plan withRim(std::vector<int> edges)
{
    return changeCounter(twoSupports(), "C1", [&](Counter& c) {
        c.rim = Rim{};
        c.rim->edges = std::move(edges);
    });
}

const Ring& outline(const Plan& plan) { return body<Counter>(plan, "C1").outline; }
std::vector<int> rim(const Plan& plan)
{
    std::vector<int> edges = *body<Counter>(plan, "C1").rim->edges;
    std::sort(edges.begin(), edges.end());
    return edges;
}

TEST(OutlineEdits, MovesAnEdgeOutwardsInEitherSenseOfTheRing)
{
    const Plan plan = twoSupports();
    EXPECT_EQ(outline(moveOutlineEdge(plan, "C1", 1, 50)), (Ring{{0, 0}, {1850, 0}, {1850, 600}, {0, 600}}));
    EXPECT_EQ(outline(moveOutlineEdge(plan, "C1", 3, -50)), (Ring{{50, 0}, {1800, 0}, {1800, 600}, {50, 600}}));
    const Plan clockwise =
        changeCounter(plan, "C1", [](Counter& c) { std::reverse(c.outline.begin(), c.outline.end()); });
    EXPECT_EQ(outline(moveOutlineEdge(clockwise, "C1", 0, 50)), (Ring{{0, 650}, {1800, 650}, {1800, 0}, {0, 0}}));
}

TEST(OutlineEdits, NeighboursOfAMovedEdgeKeepTheirDirection)
{
    const Plan slanted = moveOutlineCorner(twoSupports(), "C1", 1, {1500, 0});
    const Plan moved = moveOutlineEdge(slanted, "C1", 0, 100);
    EXPECT_EQ(outline(moved)[0], (Point{0, -100}));
    EXPECT_EQ(outline(moved)[1], (Point{1450, -100})) << "the right edge leans 300 over 600";
}

TEST(OutlineEdits, AnEdgeThatRunsOnStraightMovesByItself)
{
    const Plan split = insertOutlineCorner(twoSupports(), "C1", 0, {900, 0});
    const Plan moved = moveOutlineEdge(split, "C1", 0, 100);
    EXPECT_EQ(outline(moved)[0], (Point{0, -100}));
    EXPECT_EQ(outline(moved)[1], (Point{900, -100}));
}

TEST(OutlineEdits, InsertedCornerDividesItsEdgeAndTheRimFollows)
{
    const Plan plan = insertOutlineCorner(withRim({0, 1, 3, 7}), "C1", 1, {1900, 300});
    EXPECT_EQ(outline(plan), (Ring{{0, 0}, {1800, 0}, {1900, 300}, {1800, 600}, {0, 600}}));
    EXPECT_THAT(rim(plan), ElementsAre(0, 1, 2, 4, 7));
}

TEST(OutlineEdits, DripAndRebateFollowAsTheRimDoes)
{
    const Plan with = changeCounter(withRim({0}), "C1", [](Counter& c) {
        c.drip = Drip{{0, 1, 9}, 20, 8, 5, {}};
        c.rebate = Rebate{{2}, 44, 8, {}};
    });
    const Plan split = insertOutlineCorner(with, "C1", 1, {1900, 300});
    EXPECT_THAT(body<Counter>(split, "C1").drip->edges, ElementsAre(0, 1, 2, 9));
    EXPECT_THAT(body<Counter>(split, "C1").rebate->edges, ElementsAre(3));
    const Plan joined = removeOutlineCorner(split, "C1", 2);
    EXPECT_THAT(body<Counter>(joined, "C1").drip->edges, ElementsAre(0, 1, 9));
    EXPECT_THAT(body<Counter>(joined, "C1").rebate->edges, ElementsAre(2));
}

TEST(OutlineEdits, RemovedCornerJoinsItsEdges)
{
    const Plan five = insertOutlineCorner(withRim({1, 2}), "C1", 1, {1900, 300});
    const Plan four = removeOutlineCorner(five, "C1", 2);
    EXPECT_EQ(outline(four), outline(twoSupports()));
    EXPECT_THAT(rim(four), ElementsAre(1, 2));
    const Plan noFirst = removeOutlineCorner(five, "C1", 0);
    EXPECT_EQ(outline(noFirst), (Ring{{1800, 0}, {1900, 300}, {1800, 600}, {0, 600}}));
    EXPECT_THAT(rim(noFirst), ElementsAre(0, 1, 2));
}

TEST(OutlineEdits, ThreeCornersStay)
{
    const Plan three = removeOutlineCorner(twoSupports(), "C1", 3);
    ASSERT_EQ(outline(three).size(), 3u);
    EXPECT_EQ(removeOutlineCorner(three, "C1", 0), three);
}

TEST(OutlineEdits, ExtrudingTheEndOfAnEdgeMakesAnL)
{
    const Plan plan = extrudeOutlineEdge(withRim({0, 1, 2, 3}), "C1", 0, 1200, 1800, 700);
    EXPECT_EQ(outline(plan), (Ring{{0, 0}, {1200, 0}, {1200, -700}, {1800, -700}, {1800, 600}, {0, 600}}));
    EXPECT_THAT(rim(plan), ElementsAre(0, 1, 2, 3, 4, 5));
    EXPECT_DOUBLE_EQ(signedArea(outline(plan)), 1800.0 * 600 + 600.0 * 700);
}

TEST(OutlineEdits, ExtrudingTheMiddleMakesAT)
{
    const Plan plan = extrudeOutlineEdge(withRim({2}), "C1", 2, 1200, 600, 300);
    EXPECT_EQ(outline(plan),
              (Ring{{0, 0}, {1800, 0}, {1800, 600}, {1200, 600}, {1200, 900}, {600, 900}, {600, 600}, {0, 600}}));
    EXPECT_THAT(rim(plan), ElementsAre(2, 3, 4, 5, 6));
}

TEST(OutlineEdits, ExtrudingAWholeEdgeMovesIt)
{
    const Plan plan = withRim({3});
    for (int edge = 0; edge < 4; ++edge) {
        const Ring moved = outline(moveOutlineEdge(plan, "C1", edge, 40));
        const Plan extruded = extrudeOutlineEdge(plan, "C1", edge, -5, 1e5, 40);
        EXPECT_TRUE(std::is_permutation(moved.begin(), moved.end(), outline(extruded).begin(), outline(extruded).end()))
            << "edge " << edge;
        EXPECT_DOUBLE_EQ(signedArea(moved), signedArea(outline(extruded)));
    }
}

TEST(OutlineEdits, NothingToExtrude)
{
    const Plan plan = twoSupports();
    EXPECT_EQ(extrudeOutlineEdge(plan, "C1", 0, 300, 300, 100), plan);
    EXPECT_EQ(extrudeOutlineEdge(plan, "C1", 0, 300, 600, 0), plan);
    EXPECT_EQ(extrudeOutlineEdge(plan, "C1", 0, std::nan(""), 600, 10), plan);
}

}  // namespace
}  // namespace yardcast
