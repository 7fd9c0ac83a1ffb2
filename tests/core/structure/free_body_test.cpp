#include "core/structure/free_body.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/structure/handling_samples.h"

namespace yardcast {
namespace {

NodeVector unitAt(const Body& body, int node, int freedom)
{
    NodeVector load(6 * body.mesh().nodes.size(), 0.0);
    load[6 * node + freedom] = 1.0;
    return load;
}

class FreeBodies : public testing::Test {
protected:
    void SetUp() override
    {
        body = makeBody(inputOf(sinkSlab(1500, 650, 600)), Refinement::draft);
        ASSERT_NE(body, nullptr);
        weight = ownWeightLoad(*body, {0, 0, -1}, 1.0);
    }

    double largest(const NodeVector& a, const NodeVector& b, int freedom) const
    {
        double most = 0.0;
        for (std::size_t i = freedom; i < a.size(); i += 6) most = std::max(most, std::abs(a[i] - b[i]));
        return most;
    }

    std::shared_ptr<const Body> body;
    NodeVector weight;
};

TEST_F(FreeBodies, OnSpringsAsTheSolverHasThem)
{
    // The same four springs, once as the system's own and once as places that press on a free body.
    const double stiffness = 10.0;
    std::vector<NodeSpring> springs = inPlaneHold(*body);
    const auto free = FreeBody::make(body->model);
    ASSERT_NE(free, nullptr);
    const int load = free->add(weight);
    std::vector<FreeBody::Place> places;
    for (const Point p : {Point{200, 40}, {1300, 40}, {250, 610}, {1250, 610}}) {
        const int node = nearestNode(*body, p);
        springs.push_back({node, {0, 0, stiffness, 0, 0, 0}});
        places.push_back({free->add(unitAt(*body, node, 2)), 1.0, 1.0 / stiffness, 0.0});
    }
    free->solveAdded();
    const auto state = free->hold({{load, 1.0}}, places, {});
    ASSERT_TRUE(state.holds);
    const auto system = ShellSystem::make(body->model, springs, {});
    ASSERT_NE(system, nullptr);
    const ShellSolution solution = system->solve(weight);

    // Stresses do not know how far the hands sank.
    const auto a = system->forces(solution.displacement);
    const auto b = free->system().forces(free->displacement(state));
    double scale = 0.0;
    double difference = 0.0;
    for (std::size_t t = 0; t < a.size(); ++t) {
        for (int i = 0; i < 3; ++i) {
            for (int k = 0; k < 3; ++k) {
                scale = std::max(scale, std::abs(a[t][i].moment[k]));
                difference = std::max(difference, std::abs(a[t][i].moment[k] - b[t][i].moment[k]));
            }
        }
    }
    EXPECT_GT(scale, 1.0);
    EXPECT_LT(difference, 1e-6 * scale);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const int node = springs[springs.size() - places.size() + i].node;
        EXPECT_NEAR(state.forceN[i], -stiffness * solution.displacement[6 * node + 2], 1e-6 * state.forceN[i]);
    }
}

TEST_F(FreeBodies, DeflectionLeavesOutWhatHandsSink)
{
    const auto free = FreeBody::make(body->model);
    const int load = free->add(weight);
    std::vector<FreeBody::Place> soft;
    std::vector<FreeBody::Place> stiff;
    std::vector<int> nodes;
    for (const Point p : {Point{200, 40}, {1300, 40}, {700, 610}}) {
        nodes.push_back(nearestNode(*body, p));
        const int unit = free->add(unitAt(*body, nodes.back(), 2));
        soft.push_back({unit, 1.0, 0.1, 0.0});
        stiff.push_back({unit, 1.0, 1e-6, 0.0});
    }
    free->solveAdded();
    const NodeVector a = free->displacement(free->hold({{load, 1.0}}, soft, {}));
    const NodeVector b = free->displacement(free->hold({{load, 1.0}}, stiff, {}));
    EXPECT_LT(largest(a, b, 2), 1e-6) << "mm";
    for (const int node : nodes) EXPECT_NEAR(a[6 * node + 2], 0.0, 1e-6);
    EXPECT_GT(largest(a, NodeVector(a.size(), 0.0), 2), 1e-3) << "but it bends";
}

TEST_F(FreeBodies, InThePlaneHangsBetweenTwoHands)
{
    const auto free = FreeBody::make(body->model);
    const int load = free->add(ownWeightLoad(*body, {0, -1, 0}, 1.0));
    const std::array<double, 6> sum = free->resultant(load);
    const double weightN = -sum[1];
    const double atX = -sum[5] / weightN;
    EXPECT_NEAR(sum[0], 0.0, 1e-9 * weightN);
    std::vector<FreeBody::Place> places;
    for (const Point p : {Point{300, 0}, {1200, 0}}) {
        places.push_back({free->add(unitAt(*body, nearestNode(*body, p), 1)), 1.0, 0.1, 0.0});
    }
    free->solveAdded();
    const auto state = free->hold({{load, 1.0}}, places, {false, {0.0, 1.0}});
    ASSERT_TRUE(state.holds);
    const double left = body->mesh().nodes[nearestNode(*body, {300, 0})].x;
    const double right = body->mesh().nodes[nearestNode(*body, {1200, 0})].x;
    EXPECT_NEAR(state.forceN[1], weightN * (atX - left) / (right - left), 1e-9 * weightN);
    EXPECT_NEAR(state.forceN[0] + state.forceN[1], weightN, 1e-9 * weightN);
}

TEST_F(FreeBodies, DoNotHangOnTwoPlaces)
{
    const auto free = FreeBody::make(body->model);
    const int load = free->add(weight);
    std::vector<FreeBody::Place> places;
    for (const Point p : {Point{300, 300}, {1200, 300}}) {
        places.push_back({free->add(unitAt(*body, nearestNode(*body, p), 2)), 1.0, 0.1, 0.0});
    }
    free->solveAdded();
    EXPECT_FALSE(free->hold({{load, 1.0}}, places, {}).holds);
}

}  // namespace
}  // namespace yardcast
