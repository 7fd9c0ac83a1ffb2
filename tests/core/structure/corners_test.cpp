#include <cmath>

#include <gtest/gtest.h>

#include "core/structure/design_stress.h"
#include "core/structure/in_use.h"
#include "tests/core/structure/slabs.h"

namespace yardcast {

namespace {

/// Design value at the inner corners of K1 and the greatest of the bare nodes there, under own weight.
struct AtCorners {
    double design = 0.0;
    double node = 0.0;
};

AtCorners cornersOf(double radius, Refinement refinement, double extraFineMm)
{
    Counter counter = tests::slab(1800, 620, 40);
    counter.cutouts = {tests::sink("K1", {900, 310}, {560, 400}, radius)};
    counter.loads = {{"oven", {900, 50}, {400, 80}, 80.0, {}}};
    tests::PlanMaker plan;
    plan.counter("C1", counter).wall("S1", 100, 100, 0, 620, 860).wall("S2", 1700, 100, 0, 620, 860);
    const StrengthInput input = plan.input("C1");
    std::vector<FinePlace> fine;
    if (extraFineMm > 0.0) {
        for (const Point p : {Point{620, 110}, Point{1180, 110}, Point{1180, 510}, Point{620, 510}})
            fine.push_back({p, extraFineMm});
    }
    const auto body = makeBody(input, refinement, {}, {}, fine);
    const OnRests rests(*body);
    const ShellSolution solution = rests.system().solve(rests.deadLoad(true));
    const auto forces = rests.system().forces(solution.displacement);
    const StressField stress = stressField(*body, forces);
    DesignStress counts(*body, forces, stress);
    AtCorners result;
    for (std::size_t i = 0; i < body->corners.size(); ++i) {
        const FibreTension t = counts.atCorner(static_cast<int>(i));
        result.design = std::max({result.design, t.topMpa, t.bottomMpa});
    }
    for (std::size_t i = 0; i < body->mesh().nodes.size(); ++i) {
        if (body->cornerOfNode[i] < 0) continue;
        const FibreTension t = fibreTension(*body, stress, static_cast<int>(i), 0);
        result.node = std::max({result.node, t.topMpa, t.bottomMpa});
    }
    return result;
}

}  // namespace

TEST(Corners, TheDesignValueDoesNotDependOnTheMesh)
{
    for (const double radius : {0.0, 5.0, 20.0, 60.0}) {
        const double reference = cornersOf(radius, Refinement::printed, 3.0).design;
        for (const Refinement refinement : {Refinement::draft, Refinement::working, Refinement::printed}) {
            const double design = cornersOf(radius, refinement, 0.0).design;
            // The largest seen is 3.2 %, at a sharp corner; what grows without end there is the node (below).
            EXPECT_NEAR(design, reference, 0.04 * reference) << radius << " at " << meshSizeMm(refinement);
        }
    }
}

TEST(Corners, ABareNodeAtASharpCornerGrowsWithoutEnd)
{
    // Why the mean is needed: the finest mesh shows half as much again as the usual one.
    const double usual = cornersOf(0.0, Refinement::working, 0.0).node;
    const double finest = cornersOf(0.0, Refinement::working, 1.5).node;
    EXPECT_GT(finest, 1.4 * usual);
    const double mean = cornersOf(0.0, Refinement::working, 0.0).design;
    EXPECT_NEAR(cornersOf(0.0, Refinement::working, 1.5).design, mean, 0.06 * mean);
}

}  // namespace yardcast
