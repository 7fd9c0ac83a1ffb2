#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

#include "core/fem/triangle_clip.h"
#include "tests/core/fem/example_slab.h"
#include "tests/core/fem/shell_meshes.h"

namespace yardcast {
namespace {

using namespace testing_shells;

double sum(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

ShellModel irregularModel()
{
    TriangleMesh mesh = meshOf(exampleSlabRequest(50, true, Rests::edges));
    return uniformModel(std::move(mesh), solid(30), 30000, 0.2);
}

TEST(TriangleClip, SharesTheWholeTriangleInThirds)
{
    const std::array<Point, 3> t{{{10, 10}, {40, 15}, {20, 50}}};
    const double area = cross(t[1] - t[0], t[2] - t[0]) / 2;
    for (const double share : fem::commonArea(t, regionOf(rectangleRing({25, 25}, {200, 200}))))
        EXPECT_NEAR(share, area / 3, 1e-10);
    for (const double share : fem::commonArea(t, regionOf(rectangleRing({125, 25}, {100, 200})))) EXPECT_EQ(share, 0.0);
}

TEST(TriangleClip, KeepsAreaAndFirstMomentsOfWhatIsCommon)
{
    // Against Clipper, whose lattice of 1e-4 mm is what keeps them apart: outlines of some 300 mm move by 1e-4.
    std::mt19937 random(7);
    std::uniform_real_distribution<double> place(0, 100);
    Region comb = regionOf({{0, 0}, {100, 0}, {100, 100}, {80, 100}, {80, 20}, {60, 20}, {60, 100}, {40, 100}, {40, 20},
                            {20, 20}, {20, 100}, {0, 100}});
    comb = subtract(comb, regionOf(circleRing({50, 10}, 12)));
    const Region ring = subtract(regionOf(circleRing({50, 50}, 80)), regionOf(circleRing({50, 50}, 40)));
    int common = 0;
    for (int i = 0; i < 300; ++i) {
        std::array<Point, 3> t{{{place(random), place(random)}, {place(random), place(random)},
                                {place(random), place(random)}}};
        if (cross(t[1] - t[0], t[2] - t[0]) < 0) std::swap(t[1], t[2]);
        if (cross(t[1] - t[0], t[2] - t[0]) < 1) continue;
        for (const Region& region : {comb, ring}) {
            const std::array<double, 3> shares = fem::commonArea(t, region);
            const AreaMoments exact = moments(intersect(regionOf({t[0], t[1], t[2]}), region));
            const double area = shares[0] + shares[1] + shares[2];
            EXPECT_NEAR(area, exact.areaMm2, 0.05);
            EXPECT_NEAR(shares[0] * t[0].x + shares[1] * t[1].x + shares[2] * t[2].x, exact.firstXMm3, 5.0);
            EXPECT_NEAR(shares[0] * t[0].y + shares[1] * t[1].y + shares[2] * t[2].y, exact.firstYMm3, 5.0);
            common += area > 100;
        }
    }
    EXPECT_GT(common, 300);
}

TEST(TriangleClip, TakesRingsOfEitherSense)
{
    const std::array<Point, 3> t{{{0, 0}, {10, 0}, {0, 10}}};
    const Region region{{{{0, 0}, {0, 4}, {4, 4}, {4, 0}}, {{{1, 1}, {2, 1}, {2, 2}, {1, 2}}}}};
    const std::array<double, 3> shares = fem::commonArea(t, region);
    EXPECT_NEAR(shares[0] + shares[1] + shares[2], 15.0, 1e-12);
}

TEST(NodeAreas, SumToTheCommonArea)
{
    const ShellModel model = irregularModel();
    const auto request = exampleSlabRequest(50, true, Rests::edges);
    for (const Region& region : {regionOf(rectangleRing({300, 300}, {100, 700})), regionOf(circleRing({480, 110}, 90)),
                                 unite(regionOf(rectangleRing({1200, 80}, {33, 41}, 30)),
                                       regionOf(rectangleRing({1900, 500}, {400, 51})))}) {
        const std::vector<double> areas = nodeAreas(model.mesh, region);
        const AreaMoments common = moments(intersect(region, request.domain));
        // The mesh follows arcs of the domain by chords of its own.
        EXPECT_NEAR(sum(areas) / common.areaMm2, 1.0, 1e-3);
        double x = 0.0;
        for (std::size_t i = 0; i < areas.size(); ++i) x += areas[i] * model.mesh.nodes[i].x;
        EXPECT_NEAR(x / common.firstXMm3, 1.0, 1e-3);
        for (const double a : areas) EXPECT_GE(a, -1e-9);
    }
    const Region inside{{rectangleRing({1500, 300}, {77, 99}, 12), {}}};
    EXPECT_NEAR(sum(nodeAreas(model.mesh, inside)), 77 * 99, 1e-6);
    EXPECT_EQ(sum(nodeAreas(model.mesh, {})), 0.0);
}

TEST(PatchLoad, HasTheForceAndTheMomentsOfTheRegion)
{
    const ShellModel model = irregularModel();
    const Region region = regionOf(rectangleRing({1500, 300}, {120, 80}, 25));
    const std::array<double, 3> force{100, -200, -1000};
    const double z = -12;
    const std::array<double, 6> r = resultant(model.mesh, patchLoad(model, region, force, z));
    EXPECT_NEAR(r[0], 100, 1e-9);
    EXPECT_NEAR(r[1], -200, 1e-9);
    EXPECT_NEAR(r[2], -1000, 1e-9);
    // (1500, 300, -12) x force.
    EXPECT_NEAR(r[3], 300 * -1000 - z * -200, 1e-3);
    EXPECT_NEAR(r[4], z * 100 - 1500 * -1000, 1e-3);
    EXPECT_NEAR(r[5], 1500 * -200 - 300 * 100, 1e-3);
}

TEST(PatchLoad, GoesToTheNearestNodeWhereItMissesTheMesh)
{
    const ShellModel model = irregularModel();
    const NodeVector load = patchLoad(model, regionOf(rectangleRing({2100, 300}, {50, 50})), {0, 0, -10}, 0);
    int loaded = 0;
    for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i) {
        if (load[i * 6 + w] == 0) continue;
        ++loaded;
        EXPECT_EQ(int(i), nodeAt(model.mesh, {2100, 300}));
    }
    EXPECT_EQ(loaded, 1);
    EXPECT_EQ(resultant(model.mesh, patchLoad(model, {}, {0, 0, -10}, 0))[2], -10);
}

TEST(SurfaceLoad, HasTheWeightAndItsLever)
{
    const ShellModel model = irregularModel();
    const double area = model.mesh.areaMm2();
    const std::array<double, 6> r = resultant(model.mesh, uniformLoad(model, {1e-3, 2e-3, -3e-3}, -15));
    EXPECT_NEAR(r[0], 1e-3 * area, 1e-8);
    EXPECT_NEAR(r[1], 2e-3 * area, 1e-8);
    EXPECT_NEAR(r[2], -3e-3 * area, 1e-8);
    double firstX = 0.0;
    double firstY = 0.0;
    for (const auto& t : model.mesh.triangles) {
        const auto at = [&](std::size_t k) { return model.mesh.nodes[std::size_t(t[k])]; };
        const double a = cross(at(1) - at(0), at(2) - at(0)) / 2;
        firstX += a * (at(0).x + at(1).x + at(2).x) / 3;
        firstY += a * (at(0).y + at(1).y + at(2).y) / 3;
    }
    EXPECT_NEAR(r[3], -3e-3 * firstY + 15 * 2e-3 * area, 1e-5);
    EXPECT_NEAR(r[4], 3e-3 * firstX - 15 * 1e-3 * area, 1e-5);
    EXPECT_NEAR(r[5], 2e-3 * firstX - 1e-3 * firstY, 1e-5);
}

TEST(SurfaceLoad, ASlabOnEdgeIsADeepBeam)
{
    // 2000 x 300 x 50 on its long edge, carried at half depth of both ends, weight in its plane. At mid-span the stresses
    // are a beam's: what the theory of elasticity adds is under 0.5 % at this depth.
    const double span = 2000;
    const double depth = 300;
    const ShellModel model = uniformModel(gridMesh(span, depth, 40, 6), solid(50), 30000, 0.2);
    const auto ends = [&](Point p) { return p.y == depth / 2 && (p.x == 0 || p.x == span); };
    const auto system =
        ShellSystem::make(model,
                          held(model.mesh, ends, {v}, 1e7) +
                              held(model.mesh, [&](Point p) { return p.x == 0 && p.y == depth / 2; }, {u}, 1e7) +
                              held(model.mesh, [&](Point p) { return p.x == 0 || p.x == span; }, {w}, 1e3),
                          {});
    ASSERT_TRUE(system);
    const double weight = 24e-6 * 50;
    const NodeVector load = uniformLoad(model, {0, -weight, 0}, -25);
    const ShellSolution s = system->solve(load);
    ASSERT_TRUE(s.settled);
    const double moment = weight * depth * span * span / 8;
    const double section = 50 * depth * depth / 6;
    const ShellForces low = forcesAt(model.mesh, system->forces(s.displacement), nodeAt(model.mesh, {span / 2, 0}));
    // Found: 2.3 % low at the extreme fibre, with six cells over the depth.
    EXPECT_NEAR(low.force[0] / 50 / (moment / section), 1.0, 0.024);
    // Its own weight acts at the centroid, so it bends in its plane only.
    for (const double m : low.moment) EXPECT_LT(std::abs(m), 1e-3 * low.force[0] * 50 / 6);
    const std::array<double, 6> applied = resultant(model.mesh, load);
    const std::array<double, 6> carried = system->reaction(s);
    for (std::size_t i = 0; i < 6; ++i)
        EXPECT_NEAR(applied[i] + carried[i], 0.0, 1e-9 * std::abs(applied[1]) * (i < 3 ? 1.0 : span));
}

}  // namespace
}  // namespace yardcast
