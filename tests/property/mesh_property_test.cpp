// Slabs with a cutout that is dragged across rests, rims and edges in small steps: every step must mesh well. The
// number of slabs is small here; YARDCAST_SLABS=2000 runs as many.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

#include "tests/property/random_slab.h"

namespace yardcast {
namespace {

constexpr double kLeastAngleDeg = 15.0;

std::uint32_t slabCount()
{
    const char* asked = std::getenv("YARDCAST_SLABS");
    return asked ? std::uint32_t(std::atoi(asked)) : 100u;
}

/// What is wrong with the mesh as a mesh; empty where nothing is.
std::string faultOf(const TriangleMesh& mesh)
{
    std::vector<std::pair<int, int>> edges;
    for (const auto& t : mesh.triangles) {
        for (std::size_t i = 0; i < 3; ++i) {
            if (t[i] < 0 || t[i] >= int(mesh.nodes.size())) return "a corner is no node";
            edges.push_back({t[i], t[(i + 1) % 3]});
        }
        const Point a = mesh.nodes[std::size_t(t[0])], b = mesh.nodes[std::size_t(t[1])],
                    c = mesh.nodes[std::size_t(t[2])];
        if (!(cross(b - a, c - a) > 0.0)) return "a triangle is turned over";
    }
    std::ranges::sort(edges);
    if (std::ranges::adjacent_find(edges) != edges.end()) return "triangles overlap at an edge";
    return {};
}

double leastAngleDeg(const TriangleMesh& mesh, const std::array<int, 3>& t)
{
    return TriangleMesh{mesh.nodes, {t}}.leastAngleDeg();
}

/// Triangles with an angle under 15 degrees that the domain itself does not ask for. It does where it is narrower than
/// a twenty-fifth of the size (the end of a horn that a cutout leaves of an edge): in what an opening by half of that
/// takes away, touched by the triangle.
std::vector<Point> thinTriangles(const TriangleMesh& mesh, const MeshRequest& request)
{
    std::vector<std::array<int, 3>> thin;
    for (const auto& t : mesh.triangles)
        if (leastAngleDeg(mesh, t) < kLeastAngleDeg) thin.push_back(t);
    if (thin.empty()) return {};
    const double half = 0.5 * 0.04 * request.sizeMm;
    const Region opened = offset(offset(request.domain, -half, OffsetJoin::mitre), half, OffsetJoin::mitre);
    const Region narrow = subtract(request.domain, offset(opened, 0.01, OffsetJoin::mitre));
    std::vector<Point> at;
    for (const auto& t : thin) {
        const Ring ring{mesh.nodes[std::size_t(t[0])], mesh.nodes[std::size_t(t[1])], mesh.nodes[std::size_t(t[2])]};
        if (intersect(offset(regionOf(ring), 0.3, OffsetJoin::mitre), narrow).empty()) at.push_back(ring[0]);
    }
    return at;
}

TEST(MeshProperty, DraggedCutoutsAlwaysMeshWell)
{
    const std::uint32_t count = slabCount();
    constexpr int kSteps = 12;
    int meshes = 0, thin = 0, excused = 0;
    double least = 90.0, worstArea = 0.0;
    for (const std::uint32_t seed : random::seeds(count)) {
        random::Source source(seed);
        const random::DraggedSlab slab(source);
        for (int step = 0; step < kSteps; ++step) {
            SCOPED_TRACE("seed " + std::to_string(seed) + " step " + std::to_string(step));
            const MeshRequest request = slab.at(step);
            const TriangleMesh mesh = meshOf(request);
            ++meshes;
            EXPECT_FALSE(mesh.triangles.empty());
            EXPECT_EQ(faultOf(mesh), "");
            const double off = std::abs(mesh.areaMm2() / areaMm2(request.domain) - 1.0);
            worstArea = std::max(worstArea, off);
            EXPECT_LT(off, 5e-4);
            const double angle = mesh.leastAngleDeg();
            least = std::min(least, angle);
            const std::vector<Point> faults = thinTriangles(mesh, request);
            if (angle < kLeastAngleDeg) ++(faults.empty() ? excused : thin);
            EXPECT_TRUE(faults.empty()) << angle << " degrees at " << faults[0].x << " " << faults[0].y << " size "
                                        << request.sizeMm;
        }
    }
    std::printf("%d meshes of %u slabs: %d with an angle under 15 degrees, %d more at narrow ends of the slab itself; "
                "least %.2f, worst area %.2g\n", meshes, count, thin, excused, least, worstArea);
}

TEST(MeshProperty, AnyRequestGivesAValidMeshOrNone)
{
    int filled = 0;
    const std::vector<std::uint32_t> seeds = random::seeds(slabCount() * 10);
    for (const std::uint32_t seed : seeds) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        const TriangleMesh mesh = meshOf(random::anyMeshRequest(source));
        EXPECT_EQ(faultOf(mesh), "");
        EXPECT_LE(mesh.nodes.size(), std::size_t(kMostMeshNodes));
        filled += mesh.triangles.empty() ? 0 : 1;
    }
    EXPECT_GT(filled, int(seeds.size()) / 20);
}

}  // namespace
}  // namespace yardcast
