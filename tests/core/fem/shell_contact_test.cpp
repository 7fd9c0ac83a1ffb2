#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/core/fem/example_slab.h"
#include "tests/core/fem/shell_meshes.h"

namespace yardcast {
namespace {

using namespace testing_shells;

constexpr double kBed = 5000.0;
constexpr double kWidth = 2000.0;
constexpr double kDepth = 600.0;

/// A slab over three lines of beds, held in its plane by soft springs.
struct Slab {
    ShellModel model = uniformModel(gridMesh(kWidth, kDepth, 40, 12), solid(30), 30000, 0.2);
    std::vector<ContactSpring> beds;
    std::vector<NodeSpring> springs;

    Slab()
    {
        const TriangleMesh& mesh = model.mesh;
        for (std::size_t i = 0; i < mesh.nodes.size(); ++i) {
            const double x = mesh.nodes[i].x;
            if (x == 300 || x == 1200 || x == 1800) beds.push_back({int(i), kBed, 0.0});
        }
        springs = held(mesh, [](Point p) { return p.y == 0 && (p.x == 300 || p.x == 1800); }, {u, v}, 1.0);
    }
    NodeVector weight() const { return uniformLoad(model, {0, 0, -0.75e-3}); }
    void push(NodeVector& load, Point where, double downN) const
    {
        load[std::size_t(nodeAt(model.mesh, where)) * 6 + w] -= downN;
    }
    std::unique_ptr<ShellSystem> system() const { return ShellSystem::make(model, springs, beds); }
};

/// The contact springs that press, found by making the matrix anew until none changes.
std::optional<NodeVector> byFactorisingAnew(const Slab& slab, const NodeVector& load)
{
    std::vector<char> on(slab.beds.size(), 1);
    for (int round = 0; round < 60; ++round) {
        std::vector<NodeSpring> springs = slab.springs;
        NodeVector all = load;
        for (std::size_t i = 0; i < on.size(); ++i) {
            if (!on[i]) continue;
            springs.push_back({slab.beds[i].node, {0, 0, slab.beds[i].stiffnessNMm, 0, 0, 0}});
            all[std::size_t(slab.beds[i].node) * 6 + w] -= slab.beds[i].stiffnessNMm * slab.beds[i].gapMm;
        }
        const auto system = ShellSystem::make(slab.model, springs, {});
        if (!system) return std::nullopt;
        NodeVector d = system->solve(all).displacement;
        bool changed = false;
        for (std::size_t i = 0; i < on.size(); ++i) {
            const char want = at(d, slab.beds[i].node, w) + slab.beds[i].gapMm < 0;
            changed = changed || want != on[i];
            on[i] = want;
        }
        if (!changed) return d;
    }
    return std::nullopt;
}

void expectBalance(const ShellSystem& system, const TriangleMesh& mesh, const NodeVector& load, const ShellSolution& s)
{
    const std::array<double, 6> applied = resultant(mesh, load);
    const std::array<double, 6> carried = system.reaction(s);
    double force = 0.0;
    for (std::size_t i = 0; i < load.size(); ++i) force += i % 6 < 3 ? std::abs(load[i]) : 0.0;
    for (std::size_t i = 0; i < 6; ++i)
        EXPECT_NEAR(applied[i] + carried[i], 0.0, 1e-9 * force * (i < 3 ? 1.0 : kWidth)) << i;
}

void expectSame(const NodeVector& a, const NodeVector& b, double tolerance)
{
    ASSERT_EQ(a.size(), b.size());
    double greatest = 0.0;
    double apart = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        greatest = std::max(greatest, std::abs(b[i]));
        apart = std::max(apart, std::abs(a[i] - b[i]));
    }
    EXPECT_LE(apart, tolerance * greatest);
}

TEST(ShellContact, BedsPressAndNeverPull)
{
    const Slab slab;
    const auto system = slab.system();
    ASSERT_TRUE(system);
    NodeVector load = slab.weight();
    slab.push(load, {kWidth, kDepth}, 1000);
    const ShellSolution s = system->solve(load);
    ASSERT_TRUE(s.settled);
    int lifted = 0;
    for (std::size_t i = 0; i < slab.beds.size(); ++i) {
        const double deflection = at(s.displacement, slab.beds[i].node, w);
        if (s.contactN[i] == 0) {
            ++lifted;
            EXPECT_GE(deflection, 0.0);
        } else {
            EXPECT_NEAR(s.contactN[i], -kBed * deflection, 1e-9 * 1900);
        }
    }
    EXPECT_GT(lifted, 10);
    EXPECT_LT(lifted, 30);
    expectBalance(*system, slab.model.mesh, load, s);
}

TEST(ShellContact, AgreesWithFactorisingAnew)
{
    Slab slab;
    for (std::size_t i = 0; i < slab.beds.size(); ++i) slab.beds[i].gapMm = 0.02 * double(i % 3);
    const auto system = slab.system();
    ASSERT_TRUE(system);
    for (const Point at : {Point{2000, 600}, {0, 0}, {750, 300}, {1500, 0}}) {
        NodeVector load = slab.weight();
        slab.push(load, at, 700);
        const ShellSolution s = system->solve(load);
        ASSERT_TRUE(s.settled);
        const std::optional<NodeVector> other = byFactorisingAnew(slab, load);
        ASSERT_TRUE(other);
        // Both solve equations of a condition of some 1e7 in doubles.
        expectSame(s.displacement, *other, 1e-8);
        expectBalance(*system, slab.model.mesh, load, s);
    }
}

TEST(ShellContact, ABedTakesHoldAtItsGap)
{
    // A plate on springs over four corner beds that are 0.1 mm lower, pushed down alike at its corners.
    const TriangleMesh mesh = gridMesh(100, 100, 1, 1);
    const ShellModel model = uniformModel(mesh, solid(100), 30000, 0.2);
    std::vector<ContactSpring> beds;
    for (int i = 0; i < 4; ++i) beds.push_back({i, 1000.0, 0.1});
    const auto system = ShellSystem::make(model, held(mesh, [](Point) { return true; }, {u, v, w}, 50.0), beds);
    ASSERT_TRUE(system);
    for (const double newtons : {5.0, 19.9, 20.1, 400.0, -400.0}) {
        NodeVector load(mesh.nodes.size() * 6, 0.0);
        for (std::size_t i = 0; i < 4; ++i) load[i * 6 + w] = -newtons / 4;
        const ShellSolution s = system->solve(load);
        ASSERT_TRUE(s.settled);
        // Each corner: 50 w until w = -0.1, then 1050.
        const double each = newtons / 4;
        const double deflection = each <= 5 ? each / 50 : 0.1 + (each - 5) / 1050;
        for (int i = 0; i < 4; ++i) {
            EXPECT_NEAR(at(s.displacement, i, w), -deflection, 1e-9 * std::abs(deflection));
            EXPECT_NEAR(s.contactN[std::size_t(i)], std::max(0.0, 1000 * (deflection - 0.1)), 1e-6);
        }
    }
}

TEST(ShellContact, SaysWhenItTips)
{
    const Slab slab;
    const auto system = slab.system();
    ASSERT_TRUE(system);
    // Own weight 900 N, its centre 800 mm behind the last bed; a push 200 mm beyond that bed balances it at 3600 N.
    for (const double newtons : {3000.0, 3500.0, 3700.0, 21000.0}) {
        NodeVector load = slab.weight();
        slab.push(load, {kWidth, kDepth / 2}, newtons);
        const ShellSolution s = system->solve(load);
        EXPECT_EQ(s.settled, newtons < 3600) << newtons;
        EXPECT_LT(s.contactSteps, 200);
        for (const double d : s.displacement) ASSERT_TRUE(std::isfinite(d));
        if (s.settled) expectBalance(*system, slab.model.mesh, load, s);
    }
    NodeVector up = slab.weight();
    slab.push(up, {1000, 300}, -901);
    EXPECT_FALSE(system->solve(up).settled);
}

TEST(ShellContact, TipsOverTwoBedsOnly)
{
    Slab slab;
    std::erase_if(slab.beds, [&](const ContactSpring& c) {
        const Point p = slab.model.mesh.nodes[std::size_t(c.node)];
        return p.x == 1200 || p.y != 0;
    });
    // Two points hold nothing: with the beds in, the slab still turns about the line through them.
    EXPECT_FALSE(slab.system());
}

TEST(ShellContact, ManyLoadsAtOnceAnswerAsOneByOne)
{
    const Slab slab;
    const auto system = slab.system();
    ASSERT_TRUE(system);
    std::vector<NodeVector> loads;
    for (int i = 0; i < 21; ++i) {
        NodeVector load = slab.weight();
        slab.push(load, {100.0 * i, i % 2 ? kDepth : 0.0}, i == 7 ? 1e5 : 800.0);
        slab.push(load, {kWidth, 0}, i == 13 ? 1e5 : 0.0);
        loads.push_back(load);
    }
    const std::vector<ShellSolution> all = system->solve(loads);
    ASSERT_EQ(all.size(), loads.size());
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const ShellSolution one = system->solve(loads[i]);
        EXPECT_EQ(all[i].settled, one.settled) << i;
        EXPECT_EQ(all[i].settled, i != 13) << i;
        if (one.settled) expectSame(all[i].displacement, one.displacement, 1e-10);
    }
}

TEST(ShellContact, MirroredAndTurnedBodiesMoveAlike)
{
    // The example slab with its beds as areas and a person near a corner: mirrored in x, and turned by a quarter.
    const ExampleSlab slab = exampleSlab(40, Rests::areas, meshOf(exampleSlabRequest(40, true, Rests::areas)));
    NodeVector load = patchLoad(slab.model, regionOf(rectangleRing({1930, 540}, {100, 100})), {0, 0, -2500}, 0.0);
    const NodeVector even = slab.load();
    for (std::size_t i = 0; i < load.size(); ++i) load[i] += even[i];
    const auto system = ShellSystem::make(slab.model, slab.springs, slab.beds);
    ASSERT_TRUE(system);
    const ShellSolution straight = system->solve(load);
    ASSERT_TRUE(straight.settled);
    EXPECT_GT(std::ranges::count(straight.contactN, 0.0), 20);
    for (const bool mirror : {true, false}) {
        ExampleSlab other = slab;
        NodeVector otherLoad(load.size(), 0.0);
        for (Point& p : other.model.mesh.nodes) p = mirror ? Point{2000 - p.x, p.y} : Point{-p.y, p.x};
        if (mirror)
            for (auto& t : other.model.mesh.triangles) std::swap(t[1], t[2]);
        for (std::size_t i = 0; i < load.size(); i += 6) otherLoad[i + w] = load[i + w];
        const auto otherSystem = ShellSystem::make(other.model, other.springs, other.beds);
        ASSERT_TRUE(otherSystem);
        const ShellSolution s = otherSystem->solve(otherLoad);
        ASSERT_TRUE(s.settled);
        double greatest = 0.0;
        for (std::size_t i = w; i < load.size(); i += 6)
            greatest = std::max(greatest, std::abs(straight.displacement[i]));
        for (std::size_t i = w; i < load.size(); i += 6)
            EXPECT_NEAR(s.displacement[i], straight.displacement[i], 1e-8 * greatest);
        for (std::size_t i = 0; i < s.contactN.size(); ++i)
            EXPECT_NEAR(s.contactN[i], straight.contactN[i], 1e-8 * 2500);
    }
}

TEST(ShellContact, StopsWhenAsked)
{
    const Slab slab;
    std::stop_source source;
    EXPECT_TRUE(ShellSystem::make(slab.model, slab.springs, slab.beds, source.get_token()));
    source.request_stop();
    EXPECT_FALSE(ShellSystem::make(slab.model, slab.springs, slab.beds, source.get_token()));
}

TEST(ShellSystem, RefusesWhatIsNoBodyOrNotHeld)
{
    const Slab slab;
    EXPECT_FALSE(ShellSystem::make(slab.model, {}, slab.beds)) << "free in its plane";
    EXPECT_FALSE(ShellSystem::make(slab.model, slab.springs, {})) << "free to fall";
    EXPECT_FALSE(ShellSystem::make(ShellModel{}, {}, {}));
    ShellModel thin = slab.model;
    thin.sections[5].areaMm = 0;
    EXPECT_FALSE(ShellSystem::make(thin, slab.springs, slab.beds));
    ShellModel torn = slab.model;
    torn.mesh.triangles[3] = {0, 1, 4000};
    EXPECT_FALSE(ShellSystem::make(torn, slab.springs, slab.beds));
    ShellModel lost = slab.model;
    lost.mesh.nodes.push_back({50, 50});
    EXPECT_FALSE(ShellSystem::make(lost, slab.springs, slab.beds)) << "a node without triangles";
    EXPECT_FALSE(ShellSystem::make(slab.model, {{-1, {}}}, slab.beds));
    EXPECT_FALSE(ShellSystem::make(slab.model, slab.springs, {{0, 0.0, 0.0}}));
    const ShellSolution none = slab.system()->solve(NodeVector(5, 1.0));
    EXPECT_FALSE(none.settled);
}

}  // namespace
}  // namespace yardcast
