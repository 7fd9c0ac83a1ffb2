#include <algorithm>

#include "core/fem/shell.h"
#include "core/fem/triangle_clip.h"

namespace yardcast {

namespace {

std::array<Point, 3> cornersOf(const TriangleMesh& mesh, const std::array<int, 3>& triangle)
{
    return {mesh.nodes[std::size_t(triangle[0])], mesh.nodes[std::size_t(triangle[1])],
            mesh.nodes[std::size_t(triangle[2])]};
}

/// A force at height z above a node, on the node.
void addForce(NodeVector& load, int node, const std::array<double, 3>& forceN, double zMm, double share)
{
    double* const f = load.data() + std::size_t(node) * 6;
    for (std::size_t i = 0; i < 3; ++i) f[i] += share * forceN[i];
    f[3] -= share * zMm * forceN[1];
    f[4] += share * zMm * forceN[0];
}

/// Shares of the area common to each triangle and the region, by nodes.
std::vector<double> sharesOf(const TriangleMesh& mesh, const Region& region)
{
    std::vector<double> shares(mesh.nodes.size(), 0.0);
    const std::optional<Box> reach = boundsOf(region);
    if (!reach) return shares;
    for (const auto& t : mesh.triangles) {
        const std::array<Point, 3> corners = cornersOf(mesh, t);
        const auto& [a, b, c] = corners;
        if (std::max({a.x, b.x, c.x}) <= reach->low.x || std::min({a.x, b.x, c.x}) >= reach->high.x ||
            std::max({a.y, b.y, c.y}) <= reach->low.y || std::min({a.y, b.y, c.y}) >= reach->high.y)
            continue;
        const std::array<double, 3> common = fem::commonArea(corners, region);
        for (std::size_t k = 0; k < 3; ++k) shares[std::size_t(t[k])] += common[k];
    }
    return shares;
}

}  // namespace

NodeVector surfaceLoad(const ShellModel& model, const std::vector<std::array<double, 3>>& pressureMpa,
                       const std::vector<double>& zMm)
{
    NodeVector load(model.mesh.nodes.size() * 6, 0.0);
    const std::size_t count = std::min({model.mesh.triangles.size(), pressureMpa.size(), zMm.size()});
    for (std::size_t i = 0; i < count; ++i) {
        const auto& t = model.mesh.triangles[i];
        const auto& [a, b, c] = cornersOf(model.mesh, t);
        const double third = cross(b - a, c - a) / 6;
        for (const int node : t) addForce(load, node, pressureMpa[i], zMm[i], third);
    }
    return load;
}

NodeVector patchLoad(const ShellModel& model, const Region& region, std::array<double, 3> forceN, double zMm)
{
    const TriangleMesh& mesh = model.mesh;
    NodeVector load(mesh.nodes.size() * 6, 0.0);
    if (mesh.nodes.empty()) return load;
    const std::vector<double> shares = sharesOf(mesh, region);
    double total = 0.0;
    for (const double s : shares) total += s;
    constexpr double kNoAreaMm2 = 1e-6;  // what rounding may leave of a region that only touches
    if (total > kNoAreaMm2) {
        for (std::size_t i = 0; i < shares.size(); ++i)
            if (shares[i] != 0) addForce(load, int(i), forceN, zMm, shares[i] / total);
        return load;
    }
    const std::optional<Box> box = boundsOf(region);
    const Point centre = areaMm2(region) > 0 ? moments(region).centroid() : (box ? box->centre() : Point{});
    const auto nearest = std::ranges::min_element(mesh.nodes, {}, [&](Point p) { return distance(p, centre); });
    addForce(load, int(nearest - mesh.nodes.begin()), forceN, zMm, 1.0);
    return load;
}

std::vector<ContactSpring> contactSprings(const TriangleMesh& mesh, const Region& region, double bedNMm3, double gapMm)
{
    const auto bed = std::make_shared<const ContactBed>(ContactBed{region, bedNMm3});
    std::vector<ContactSpring> springs;
    const std::vector<double> shares = sharesOf(mesh, region);
    for (std::size_t i = 0; i < shares.size(); ++i)
        if (shares[i] > 0) springs.push_back({int(i), shares[i] * bedNMm3, gapMm, bed});
    return springs;
}

std::vector<double> nodeAreas(const TriangleMesh& mesh, const Region& region) { return sharesOf(mesh, region); }

}  // namespace yardcast
