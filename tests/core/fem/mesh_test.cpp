#include "core/fem/mesh.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace yardcast {
namespace {

MeshRequest slabWithCutout(double sizeMm)
{
    MeshRequest request;
    request.domain = {{{{0, 0}, {2000, 0}, {2000, 600}, {0, 600}}, {}}};
    request.domain = subtract(request.domain, regionOf(rectangleRing({900, 300}, {560, 400}, 0, 20)));
    request.domain = subtract(request.domain, regionOf(circleRing({1320, 480}, 35)));
    request.lines = {{{60, 60}, {1940, 60}, {1940, 540}, {60, 540}, {60, 60}},
                     {{300, 0}, {300, 600}}, {{1400, 0}, {1400, 600}}, {{1800, 0}, {1800, 600}}};
    request.sizeMm = sizeMm;
    for (const double x : {620.0, 1180.0})
        for (const double y : {100.0, 500.0}) request.fine.push_back({{x, y}, 8});
    return request;
}

TEST(Mesh, FillsASlabWithACutoutWithGoodTriangles)
{
    for (const double sizeMm : {80.0, 50.0, 30.0, 20.0}) {
        SCOPED_TRACE(sizeMm);
        const MeshRequest request = slabWithCutout(sizeMm);
        const TriangleMesh mesh = meshOf(request);
        ASSERT_FALSE(mesh.triangles.empty());
        EXPECT_NEAR(mesh.areaMm2() / areaMm2(request.domain), 1.0, 5e-4);
        EXPECT_GE(mesh.leastAngleDeg(), 15.0);
    }
}

Region transformedRegion(const Region& region, const Placement& placement, bool mirrored)
{
    Region made;
    const auto ring = [&](Ring of) {
        for (Point& p : of) p = placement.toPlan({mirrored ? -p.x : p.x, p.y});
        if (mirrored) std::ranges::reverse(of);
        return of;
    };
    for (const Polygon& polygon : region) {
        made.push_back({ring(polygon.outer), {}});
        for (const Ring& hole : polygon.holes) made.back().holes.push_back(ring(hole));
    }
    return made;
}

TEST(Mesh, IsAsGoodWhenMirroredOrTurned)
{
    const MeshRequest request = slabWithCutout(30);
    const std::size_t nodes = meshOf(request).nodes.size();
    for (const bool mirrored : {false, true}) {
        for (const double turnDeg : {0.0, 7.0, 45.0, 90.0, 133.3, 180.0}) {
            SCOPED_TRACE(turnDeg);
            const Placement placement{{1234.5, -77.7}, turnDeg};
            MeshRequest turned = request;
            turned.domain = transformedRegion(request.domain, placement, mirrored);
            for (Ring& line : turned.lines)
                for (Point& p : line) p = placement.toPlan({mirrored ? -p.x : p.x, p.y});
            for (FinePlace& fine : turned.fine)
                fine.at = placement.toPlan({mirrored ? -fine.at.x : fine.at.x, fine.at.y});
            const TriangleMesh mesh = meshOf(turned);
            EXPECT_GE(mesh.leastAngleDeg(), 20.0);
            // Rounding to the lattice breaks ties otherwise: a few nodes more or less.
            EXPECT_NEAR(double(mesh.nodes.size()), double(nodes), 0.03 * double(nodes));
        }
    }
}

TEST(Mesh, KeepsStraightSidesAndTheAreaWithinArcs)
{
    const MeshRequest request = slabWithCutout(50);
    const TriangleMesh mesh = meshOf(request);
    const auto has = [&](Point p) {
        return std::ranges::any_of(mesh.nodes, [&](Point n) { return distance(n, p) < 0.01; });
    };
    for (const Point corner : {Point{0, 0}, {2000, 0}, {2000, 600}, {0, 600}}) EXPECT_TRUE(has(corner));
    for (const Point tangent : {Point{640, 100}, {1160, 100}, {620, 120}, {1180, 480}}) EXPECT_TRUE(has(tangent));
    EXPECT_NEAR(mesh.areaMm2() / areaMm2(request.domain), 1.0, 1e-4);
}

TEST(Mesh, FollowsLinesAndPointsWithRoomAndLeavesOutWhatHasNone)
{
    MeshRequest request;
    request.domain = {{{{0, 0}, {1000, 0}, {1000, 600}, {0, 600}}, {}}};
    request.sizeMm = 50;
    request.lines = {{{0, 200}, {1000, 260}}, {{0, 596}, {1000, 596}}};  // the second 4 from the edge
    request.points = {{500, 400}};
    const TriangleMesh mesh = meshOf(request);
    EXPECT_GE(mesh.leastAngleDeg(), 20.0);
    int onFirst = 0;
    bool atPoint = false;
    for (const Point p : mesh.nodes) {
        onFirst += distanceToSegment(p, {0, 200}, {1000, 260}) < 0.01 ? 1 : 0;
        EXPECT_FALSE(p.y > 585 && p.y < 599.9) << p.x;
        atPoint = atPoint || distance(p, {500, 400}) < 0.01;
    }
    EXPECT_GE(onFirst, 20);
    EXPECT_TRUE(atPoint);
    // No triangle lies on both sides of the first line.
    for (const auto& t : mesh.triangles) {
        double least = 0.0, most = 0.0;
        for (const int node : t) {
            const double side = cross({1000, 60}, mesh.nodes[std::size_t(node)] - Point{0, 200}) / std::hypot(1000, 60);
            least = std::min(least, side);
            most = std::max(most, side);
        }
        EXPECT_TRUE(least > -0.01 || most < 0.01);
    }
}

TEST(Mesh, IsFineWhereAskedAndGrowsFromThere)
{
    MeshRequest request;
    request.domain = {{{{0, 0}, {1000, 0}, {1000, 600}, {0, 600}}, {}}};
    request.sizeMm = 60;
    request.fine = {{{500, 300}, 8}};
    const TriangleMesh mesh = meshOf(request);
    for (const auto& t : mesh.triangles) {
        const Point a = mesh.nodes[std::size_t(t[0])], b = mesh.nodes[std::size_t(t[1])],
                    c = mesh.nodes[std::size_t(t[2])];
        const double away = distance((a + b + c) * (1.0 / 3), {500, 300});
        const double longest = std::max({distance(a, b), distance(b, c), distance(c, a)});
        // The lattice halves: edges are up to sqrt 2 longer than asked for, and a triangle that joins two of its
        // levels has one that is longer by the root of 3 / 2 again.
        EXPECT_LT(longest, 1.75 * std::min(60.0, 8 + 0.35 * away)) << away;
    }
}

TEST(Mesh, PutsTwoElementsAcrossAStripBesideACutout)
{
    for (const double sizeMm : {20.0, 30.0, 50.0, 80.0}) {
        for (double widthMm = 0.35 * sizeMm; widthMm < 2.5 * sizeMm; widthMm += 3.7) {
            SCOPED_TRACE(std::to_string(sizeMm) + " " + std::to_string(widthMm));
            MeshRequest request;
            request.domain = subtract({{{{0, 0}, {1500, 0}, {1500, 700}, {0, 700}}, {}}},
                                      regionOf(rectangleRing({700, widthMm + 200}, {500, 400}, 0, 20)));
            request.sizeMm = sizeMm;
            const TriangleMesh mesh = meshOf(request);
            EXPECT_GE(mesh.leastAngleDeg(), 15.0);
            for (const auto& t : mesh.triangles) {
                bool onEdge = false, onCutout = false;
                for (const int node : t) {
                    const Point p = mesh.nodes[std::size_t(node)];
                    onEdge = onEdge || p.y < 0.01;
                    onCutout = onCutout || (std::abs(p.y - widthMm) < 0.05 && p.x > 470 && p.x < 930);
                }
                EXPECT_FALSE(onEdge && onCutout);
            }
        }
    }
}

TEST(Mesh, SnapsALineThatAnArcNearlyTouches)
{
    // The cutout's rounded corner crosses a line in steps of 0.37: at every step the arc is near it somewhere.
    for (double x = 330; x < 400; x += 0.37) {
        SCOPED_TRACE(x);
        MeshRequest request;
        request.domain = subtract({{{{0, 0}, {1200, 0}, {1200, 600}, {0, 600}}, {}}},
                                  regionOf(rectangleRing({x + 250, 300}, {500, 400}, 0, 20)));
        request.lines = {{{350, 0}, {350, 600}}};
        request.sizeMm = 50;
        for (const double y : {100.0, 500.0}) request.fine.push_back({{x, y}, 8});
        EXPECT_GE(meshOf(request).leastAngleDeg(), 15.0);
    }
}

TEST(Mesh, IsEmptyWhereThereIsNothingToMesh)
{
    EXPECT_TRUE(meshOf({}).triangles.empty());
    MeshRequest flat;
    flat.domain = {{{{0, 0}, {100, 0}, {200, 0}}, {}}};
    EXPECT_TRUE(meshOf(flat).triangles.empty());
    MeshRequest square;
    square.domain = {{{{0, 0}, {100, 0}, {100, 100}, {0, 100}}, {}}};
    EXPECT_FALSE(meshOf(square).triangles.empty());
    for (const double sizeMm : {0.0, -5.0, 0.06, std::numeric_limits<double>::quiet_NaN(),
                                std::numeric_limits<double>::infinity()}) {
        MeshRequest wrong = square;
        wrong.sizeMm = sizeMm;
        EXPECT_TRUE(meshOf(wrong).triangles.empty()) << sizeMm;
    }
    for (const double far : {1e9, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        MeshRequest wrong = square;
        wrong.domain[0].outer[1].x = far;
        EXPECT_TRUE(meshOf(wrong).triangles.empty()) << far;
    }
    MeshRequest crossing = square;
    crossing.domain[0].outer = {{0, 0}, {100, 0}, {0, 100}, {80, 100}, {90, 30}};
    EXPECT_TRUE(meshOf(crossing).triangles.empty());
}

TEST(Mesh, TakesACutoutWithNextToNothingBetweenItAndTheEdge)
{
    // Turned, so that both sides of the strip are rounded; narrower than a step of the lattice (0.004) and wider.
    for (const double strip : {0.0, 0.0005, 0.001, 0.002, 0.003, 0.005, 0.01, 0.03, 0.1, 0.5}) {
        SCOPED_TRACE(strip);
        const Placement placement{{0, 0}, 31.0};
        MeshRequest request;
        request.sizeMm = 50;
        request.domain = transformed(subtract({{{{0, 0}, {1000, 0}, {1000, 500}, {0, 500}}, {}}},
                                              regionOf(rectangleRing({430, 100 + strip}, {300, 200}, 0, 20))),
                                     placement);
        const TriangleMesh mesh = meshOf(request);
        EXPECT_NEAR(mesh.areaMm2() / areaMm2(request.domain), 1.0, 5e-4);
    }
}

TEST(Mesh, TakesHolesThatTouchTheEdge)
{
    MeshRequest request;
    request.sizeMm = 50;
    request.domain = {{{{0, 0}, {1000, 0}, {1000, 500}, {0, 500}}, {{{500, 0}, {400, 200}, {600, 200}}}}};
    EXPECT_NEAR(meshOf(request).areaMm2(), 480000, 1);
    request.domain[0].holes = {{{300, 0}, {300, 200}, {700, 200}, {700, 0}}};
    EXPECT_NEAR(meshOf(request).areaMm2(), 420000, 1);
}

}  // namespace
}  // namespace yardcast
