#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/fem/shell_meshes.h"

/// Beds that press where the body goes into them, to the fraction of a triangle.
namespace yardcast {
namespace {

using namespace testing_shells;

Region rectangle(double x0, double y0, double x1, double y1)
{
    return regionOf({{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}});
}

std::vector<NodeSpring> heldInPlane(const TriangleMesh& mesh)
{
    return held(mesh, [](Point p) { return p.x == 0; }, {u, v}, 1.0);
}

void append(std::vector<ContactSpring>& to, const std::vector<ContactSpring>& more)
{
    to.insert(to.end(), more.begin(), more.end());
}

/// A block 300 x 120 that hardly bends, on a bed of 10 N/mm3 under all of it, pushed down by 600 N at `x`.
struct Block {
    ShellModel model;
    std::vector<ContactSpring> bed;
    NodeVector load;

    explicit Block(double x, int nx = 3, int ny = 1)
        : model(uniformModel(gridMesh(300, 120, nx, ny), solid(400), 1e6, 0.0))
    {
        bed = contactSprings(model.mesh, rectangle(0, 0, 300, 120), 10.0);
        // A line across at x, shared between the nodes beside it.
        load = patchLoad(model, rectangle(x - 1, 0, x + 1, 120), {0, 0, -600}, 0.0);
    }
    ShellSolution solve() const
    {
        return ShellSystem::make(model, heldInPlane(model.mesh), bed)->solve(load);
    }
};

TEST(ShellBed, ABlockOnABedPressesOverThreeTimesItsEdgeDistance)
{
    // Any book on footings: a force within the middle third gives a trapezium of pressure; nearer to the edge a
    // triangle over three times that distance, twice the mean at the edge.
    for (const double x : {150.0, 120.0, 101.0, 80.0, 50.0, 20.0}) {
        const Block block(x);
        const ShellSolution s = block.solve();
        ASSERT_TRUE(s.settled) << x;
        const double e = 150 - x;
        const double atEdge = e <= 50 ? 600.0 / (300 * 120) * (1 + 6 * e / 300) : 2 * 600 / (3 * x * 120);
        const double atOther = e <= 50 ? 600.0 / (300 * 120) * (1 - 6 * e / 300) : atEdge * (1 - 300 / (3 * x));
        // What the block bends, 20 times as stiff as concrete and 400 thick.
        const auto pressure = [&](Point p) { return -10 * at(s.displacement, nodeAt(block.model.mesh, p), w); };
        EXPECT_NEAR(pressure({0, 0}), atEdge, 1e-3 * atEdge) << x;
        EXPECT_NEAR(pressure({300, 120}), atOther, 1e-3 * atEdge) << x;
        double force = 0.0;
        double moment = 0.0;
        for (std::size_t i = 0; i < block.bed.size(); ++i) {
            EXPECT_GE(s.contactN[i], 0.0);
            force += s.contactN[i];
            moment += s.contactN[i] * block.model.mesh.nodes[std::size_t(block.bed[i].node)].x;
        }
        // A stiff block on a soft bed: some digits are lost to its condition.
        EXPECT_NEAR(force, 600, 1e-6);
        EXPECT_NEAR(moment, 600 * x, 1e-6 * 300);
    }
}

TEST(ShellBed, TheMeshDoesNotMatterToABlock)
{
    const double coarse = at(Block(60, 1, 1).solve().displacement, 0, w);
    const double fine = at(Block(60, 13, 5).solve().displacement, 0, w);
    EXPECT_NEAR(coarse / fine, 1.0, 1e-3);  // what the block bends
}

TEST(ShellBed, ABlockTipsOverItsEdge)
{
    Block block(150);
    ShellModel& model = block.model;
    block.bed = contactSprings(model.mesh, rectangle(0, 0, 140, 120), 10.0);  // its middle is beyond
    EXPECT_FALSE(block.solve().settled);
    block.bed = contactSprings(model.mesh, rectangle(0, 0, 160, 120), 10.0);
    EXPECT_TRUE(block.solve().settled);
    for (double& f : block.load) f = -f;
    EXPECT_FALSE(block.solve().settled);
}

TEST(ShellBed, TakesHoldAtItsGap)
{
    // Two beds under a block, one of them lower by 0.02 mm: evenly loaded, it turns until both carry.
    Block block(150);
    block.bed = contactSprings(block.model.mesh, rectangle(0, 0, 100, 120), 10.0);
    append(block.bed, contactSprings(block.model.mesh, rectangle(200, 0, 300, 120), 10.0, 0.02));
    const ShellSolution s = block.solve();
    ASSERT_TRUE(s.settled);
    std::vector<double> forces(2, 0.0);
    for (std::size_t i = 0; i < block.bed.size(); ++i) forces[block.bed[i].gapMm > 0] += s.contactN[i];
    EXPECT_NEAR(forces[0] + forces[1], 600, 1e-6);
    EXPECT_GT(forces[0], 200);
    EXPECT_GT(forces[1], 200);
    EXPECT_LT(at(s.displacement, nodeAt(block.model.mesh, {300, 0}), w),
              at(s.displacement, nodeAt(block.model.mesh, {0, 0}), w) - 0.015);
}

/// A slab 1600 x 400 x 40 on two rests of 100 that begin 100 from its ends, in elements of `size` along it.
struct Slab {
    ShellModel model;
    std::vector<ContactSpring> beds;

    explicit Slab(double size)
        : model(uniformModel(gridMesh(1600, 400, int(1600 / size), 8), solid(40), 30000, 0.2))
    {
        append(beds, contactSprings(model.mesh, rectangle(100, 0, 200, 400), 10.0));
        append(beds, contactSprings(model.mesh, rectangle(1400, 0, 1500, 400), 10.0));
    }
    std::unique_ptr<ShellSystem> system() const { return ShellSystem::make(model, heldInPlane(model.mesh), beds); }
    NodeVector weight() const { return uniformLoad(model, {0, 0, -0.94e-3}); }
    NodeVector withPush(Point where, double downN) const
    {
        NodeVector load = weight();
        load[std::size_t(nodeAt(model.mesh, where)) * 6 + w] -= downN;
        return load;
    }
};

TEST(ShellBed, ASlabBearsOnSomeMillimetresAtTheEdgesOfItsRestsHoweverCoarseTheMesh)
{
    // The middle of its force lies some 4 mm behind the edge of the rest. Springs at nodes put it onto the edge, and
    // the deflection came out 2 % smaller.
    const Slab coarse(50);
    const Slab fine(6.25);
    const ShellSolution a = coarse.system()->solve(coarse.weight());
    const ShellSolution b = fine.system()->solve(fine.weight());
    ASSERT_TRUE(a.settled && b.settled);
    const auto deflection = [](const Slab& slab, const ShellSolution& s) {
        return at(s.displacement, nodeAt(slab.model.mesh, {800, 200}), w);
    };
    EXPECT_NEAR(deflection(coarse, a) / deflection(fine, b), 1.0, 4e-3);  // found: 0.3 % or less
    const auto centre = [](const Slab& slab, const ShellSolution& s) {
        double force = 0.0;
        double moment = 0.0;
        for (std::size_t i = 0; i < slab.beds.size(); ++i) {
            const Point p = slab.model.mesh.nodes[std::size_t(slab.beds[i].node)];
            if (p.x > 800) continue;
            force += s.contactN[i];
            moment += s.contactN[i] * p.x;
        }
        return moment / force;
    };
    EXPECT_NEAR(centre(coarse, a), centre(fine, b), 0.5);
    EXPECT_LT(centre(fine, b), 198);
    EXPECT_GT(centre(fine, b), 190);
}

TEST(ShellBed, BalancesTheLoadAndNeverPulls)
{
    const Slab slab(40);
    const auto system = slab.system();
    ASSERT_TRUE(system);
    for (const Point push : {Point{0, 0}, {1600, 200}, {800, 400}, {200, 200}}) {
        const NodeVector load = slab.withPush(push, 150);
        const ShellSolution s = system->solve(load);
        ASSERT_TRUE(s.settled);
        for (const double n : s.contactN) EXPECT_GE(n, 0.0);
        const std::array<double, 6> applied = resultant(slab.model.mesh, load);
        const std::array<double, 6> carried = system->reaction(s);
        const double force = std::abs(applied[2]);
        for (std::size_t i = 0; i < 6; ++i)
            EXPECT_NEAR(applied[i] + carried[i], 0.0, 1e-9 * force * (i < 3 ? 1.0 : 1600)) << i;
    }
}

TEST(ShellBed, ManyLoadsAtOnceAnswerAsOneByOne)
{
    const Slab slab(50);
    const auto system = slab.system();
    ASSERT_TRUE(system);
    std::vector<NodeVector> loads;
    for (int i = 0; i < 17; ++i) loads.push_back(slab.withPush({100.0 * i, i % 2 ? 400.0 : 0.0}, i == 9 ? -9000 : 200));
    const std::vector<ShellSolution> all = system->solve(loads);
    ASSERT_EQ(all.size(), loads.size());
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const ShellSolution one = system->solve(loads[i]);
        EXPECT_EQ(one.settled, i != 9);
        ASSERT_EQ(one.settled, all[i].settled) << i;
        EXPECT_LT(one.contactSteps, 30);
        double greatest = 0.0;
        double apart = 0.0;
        for (std::size_t k = 0; k < one.displacement.size(); ++k) {
            greatest = std::max(greatest, std::abs(one.displacement[k]));
            apart = std::max(apart, std::abs(one.displacement[k] - all[i].displacement[k]));
        }
        EXPECT_LE(apart, 1e-9 * greatest);
    }
}

}  // namespace
}  // namespace yardcast
