#include <random>

#include <gtest/gtest.h>

#include "core/structure/triangle_index.h"

namespace yardcast {

namespace {

TriangleMesh meshWithHole()
{
    MeshRequest request;
    request.domain = subtract(regionOf(rectangleRing({500, 300}, {1000, 600})),
                              regionOf(rectangleRing({400, 300}, {300, 200}, 0, 20)));
    request.sizeMm = 40;
    return meshOf(request);
}

double triangleArea(const TriangleMesh& mesh, int t)
{
    const auto& [a, b, c] = mesh.triangles[t];
    return cross(mesh.nodes[b] - mesh.nodes[a], mesh.nodes[c] - mesh.nodes[a]) / 2;
}

}  // namespace

TEST(TriangleIndex, FindsTheTriangleAndItsWeights)
{
    const TriangleMesh mesh = meshWithHole();
    const TriangleIndex index(mesh);
    std::mt19937 random(7);
    std::uniform_real_distribution<double> x(0, 1000);
    std::uniform_real_distribution<double> y(0, 600);
    for (int i = 0; i < 2000; ++i) {
        const Point p{x(random), y(random)};
        const PlaceInMesh place = index.find(mesh, p);
        const bool inHole = p.x > 252 && p.x < 548 && p.y > 202 && p.y < 398 &&
                            !(std::abs(p.x - 400) > 128 && std::abs(p.y - 300) > 78);
        EXPECT_TRUE(!inHole || place.triangle == -1) << p.x << ' ' << p.y;
        if (place.triangle < 0) continue;
        Point back;
        double sum = 0.0;
        for (int k = 0; k < 3; ++k) {
            EXPECT_GE(place.weight[k], -1e-6);
            back = back + mesh.nodes[mesh.triangles[place.triangle][k]] * place.weight[k];
            sum += place.weight[k];
        }
        EXPECT_NEAR(sum, 1.0, 1e-9);
        EXPECT_NEAR(distance(back, p), 0.0, 1e-6);
    }
}

TEST(TriangleIndex, PiecesOfALineCoverItOnce)
{
    const TriangleMesh mesh = meshWithHole();
    const TriangleIndex index(mesh);
    const auto covered = [&](Point from, Point to) {
        double sum = 0.0;
        double end = 0.0;
        for (const PieceOfLine& piece : index.crossed(mesh, from, to)) {
            EXPECT_GE(piece.from, end - 1e-6);
            end = piece.to;
            sum += piece.to - piece.from;
        }
        return sum;
    };
    EXPECT_NEAR(covered({3, 101.3}, {997, 101.3}), 994, 1e-6);
    EXPECT_NEAR(covered({3, 301.3}, {997, 301.3}), 994 - 300, 1e-6);  // over the hole
    EXPECT_NEAR(covered({700.1, 5}, {700.1, 595}), 590, 1e-6);
    EXPECT_NEAR(covered({20, 20}, {980, 180}), distance({20, 20}, {980, 180}), 1e-6);
}

TEST(TriangleIndex, AreaOfARegionInTrianglesIsExact)
{
    const TriangleMesh mesh = meshWithHole();
    const TriangleIndex index(mesh);
    Region domain = subtract(regionOf(rectangleRing({500, 300}, {1000, 600})),
                             regionOf(rectangleRing({400, 300}, {300, 200}, 0, 20)));
    std::mt19937 random(3);
    std::uniform_real_distribution<double> at(100, 900);
    std::uniform_real_distribution<double> size(5, 400);
    std::uniform_real_distribution<double> turn(0, 90);
    for (int i = 0; i < 40; ++i) {
        // A ring with a hole in it, so that holes are counted out.
        const Point c{at(random), at(random) * 0.6};
        const Size s{size(random), size(random)};
        const double angle = i % 3 == 0 ? 0.0 : turn(random);
        const Region ring = subtract(regionOf(rectangleRing(c, s, angle, 4)),
                                     regionOf(rectangleRing(c, {s.width / 2, s.depth / 2}, angle)));
        const std::vector<double> areas = areaInTriangles(mesh, index, ring);
        double sum = 0.0;
        for (std::size_t t = 0; t < areas.size(); ++t) {
            EXPECT_GE(areas[t], 0.0);
            EXPECT_LE(areas[t], triangleArea(mesh, static_cast<int>(t)) * (1 + 1e-12));
            sum += areas[t];
        }
        // The mesh keeps the domain to 0.01 mm, booleans to 1e-4: both along the boundary of what is common.
        EXPECT_NEAR(sum, areaMm2(intersect(ring, domain)), 0.01 * perimeterMm(ring)) << i;
    }
}

}  // namespace yardcast
