#include "core/structure/handling_places.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numbers>

#include "tests/core/structure/handling_samples.h"

namespace yardcast {
namespace {

const Region kEll = regionOf({{0, 0}, {1600, 0}, {1600, 600}, {600, 600}, {600, 1200}, {0, 1200}});

TEST(SlabAxes, AreThoseOfTheSmallestBox)
{
    const SlabAxes axes = slabAxes(regionOf(rectangleRing({500, 300}, {1200, 400}, 30)));
    EXPECT_NEAR(axes.lengthMm, 1200, 1e-2);
    EXPECT_NEAR(axes.widthMm, 400, 1e-2);
    EXPECT_NEAR(axes.along.x, std::cos(std::numbers::pi / 6), 1e-4);
    EXPECT_NEAR(distance(axes.at(600, 200), {500, 300}), 0.0, 1e-2);
}

TEST(SlabAxes, LookRightAlongTheLongSide)
{
    const SlabAxes axes = slabAxes(regionOf(rectangleRing({200, 500}, {400, 1000})));
    EXPECT_NEAR(axes.lengthMm, 1000, 1e-6);
    EXPECT_NEAR(axes.along.y, 1.0, 1e-12);
    EXPECT_NEAR(distance(axes.at(0, 0), {400, 0}), 0.0, 1e-6) << "`across` lies to the left of `along`";
}

TEST(StandingEdges, ARectangleStandsOnItsLongEdges)
{
    const auto edges = standingEdges(regionOf(rectangleRing({900, 300}, {1800, 600})));
    ASSERT_EQ(edges.size(), 2u);
    for (const StandingEdge& edge : edges) EXPECT_NEAR(edge.lengthMm(), 1800, 1e-6);
    EXPECT_NEAR(std::abs(edges[0].inward().y), 1.0, 1e-12);
}

TEST(StandingEdges, AnEllStandsOnItsOuterSidesOnly)
{
    for (const StandingEdge& edge : standingEdges(kEll)) {
        const bool onFront = edge.from.y < 1e-6 && edge.to.y < 1e-6;
        const bool onLeft = edge.from.x < 1e-6 && edge.to.x < 1e-6;
        EXPECT_TRUE(onFront || onLeft) << edge.from.x << " " << edge.from.y;
    }
    EXPECT_EQ(standingEdges(kEll).size(), 2u);
}

TEST(StandingEdges, PiecesOfOneSideAreOneEdge)
{
    const auto edges = standingEdges({{{{0, 0}, {500, 0}, {1800, 0}, {1800, 600}, {0, 600}}, {}}});
    ASSERT_EQ(edges.size(), 2u);
    for (const StandingEdge& edge : edges) EXPECT_NEAR(edge.lengthMm(), 1800, 1e-6);
    EXPECT_TRUE(edges[0].edge == 1 || edges[1].edge == 1) << "named by its longest piece";
}

TEST(StandingEdges, NothingStandsOnAnEdgeBesideItsMiddle)
{
    // Leaning far over: it would fall over its foot (0, 0) to (300, 0), and the top edge is as bad.
    const auto edges = standingEdges(regionOf({{0, 0}, {300, 0}, {1500, 900}, {1200, 900}}), 0.0);
    ASSERT_EQ(edges.size(), 2u);
    for (const StandingEdge& edge : edges) EXPECT_NEAR(edge.lengthMm(), 1500, 1e-3);
}

TEST(EndsOfLine, ReachFromFirstToLastConcrete)
{
    const auto ends = endsOfLine(kEll, {300, 0}, {0, 1});
    ASSERT_TRUE(ends);
    EXPECT_NEAR(ends->first.y, 0.0, 1e-6);
    EXPECT_NEAR(ends->second.y, 1200.0, 1e-6);
    EXPECT_NEAR(endsOfLine(kEll, {1000, 0}, {0, 1})->second.y, 600.0, 1e-6);
    EXPECT_FALSE(endsOfLine(kEll, {2000, 0}, {0, 1}));
}

TEST(HandRegion, KeepsToTheConcrete)
{
    EXPECT_NEAR(areaMm2(handRegion(kEll, {300, 40}, {1, 0})), 100 * 60, 1e-3);
    EXPECT_NEAR(areaMm2(handRegion(kEll, {0, 40}, {1, 0})), 50 * 60, 1e-3);
    EXPECT_TRUE(handRegion(kEll, {1000, 1000}, {1, 0}).empty());
}

TEST(SlabSymmetry, SeesWhatIsAlike)
{
    const auto of = [](const Counter& counter) {
        const StrengthInput input = inputOf(counter);
        return slabSymmetry(*input.casting, slabAxes(input.casting->outline));
    };
    const SlabSymmetry plain = of(slab(1800, 600, 40));
    EXPECT_TRUE(plain.along && plain.across);
    const SlabSymmetry middle = of(sinkSlab(1600, 650, 800));
    EXPECT_TRUE(middle.along);
    EXPECT_FALSE(middle.across) << "the opening lies nearer to the front";
    EXPECT_FALSE(of(sinkSlab(1600, 650, 700)).along);
    // A tap hole that the sampled points miss: moments see it.
    Counter tap = slab(1800, 600, 40);
    Cutout hole;
    hole.id = "K1";
    hole.shape = CutoutShape::circle;
    hole.centre = {1700, 550};
    hole.diameterMm = 60;
    tap.cutouts.push_back(hole);
    const SlabSymmetry tapped = of(tap);
    EXPECT_FALSE(tapped.along || tapped.across);
    // Alike only when turned by half: not a mirror image.
    Counter skew = slab(1800, 600, 40);
    skew.outline = {{0, 0}, {1600, 0}, {1800, 600}, {200, 600}};
    const SlabSymmetry skewed = of(skew);
    EXPECT_FALSE(skewed.along || skewed.across);
}

}  // namespace
}  // namespace yardcast
