#include "core/fem/mesh.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/fem/constraints.h"
#include "core/fem/improve.h"
#include "core/fem/layout.h"
#include "core/fem/quality.h"
#include "core/fem/refine.h"
#include "core/fem/seeds.h"

namespace yardcast {

namespace {

using namespace fem;

bool isFinite(Point p)
{
    return std::isfinite(p.x) && std::isfinite(p.y);
}

bool inReach(const Ring& ring, Point centre)
{
    const double most = 0.4 * double(kFarthestSite) / kSitesPerMm;
    return std::ranges::all_of(ring, [&](Point p) {
        return isFinite(p) && std::abs(p.x - centre.x) < most && std::abs(p.y - centre.y) < most;
    });
}

Ring moved(Ring ring, Point by)
{
    for (Point& p : ring) p = p + by;
    return ring;
}

/// The request about the origin, without what is no number; nothing where it cannot be meshed.
std::optional<MeshRequest> soundRequest(const MeshRequest& request, Point centre)
{
    MeshRequest sound;
    sound.sizeMm = request.sizeMm;
    sound.growth = std::isfinite(request.growth) ? std::clamp(request.growth, 0.05, 2.0) : 0.35;
    const Point back = centre * -1.0;
    for (const Polygon& polygon : request.domain) {
        if (!inReach(polygon.outer, centre)) return {};
        sound.domain.push_back({moved(polygon.outer, back), {}});
        if (signedArea(polygon.outer) < 0.0) std::ranges::reverse(sound.domain.back().outer);
        for (const Ring& hole : polygon.holes) {
            if (!inReach(hole, centre)) return {};
            sound.domain.back().holes.push_back(moved(hole, back));
            if (signedArea(hole) > 0.0) std::ranges::reverse(sound.domain.back().holes.back());
        }
    }
    for (const Ring& line : request.lines)
        if (inReach(line, centre)) sound.lines.push_back(moved(line, back));
    for (const Point p : request.points)
        if (inReach({p}, centre)) sound.points.push_back(p - centre);
    for (const FinePlace& place : request.fine)
        if (inReach({place.at}, centre) && place.sizeMm > 0.0) sound.fine.push_back({place.at - centre, place.sizeMm});
    return sound;
}

/// The direction of the longest side of the domain: the lattice lies along it.
Point longestSide(const Region& domain)
{
    Point longest{1.0, 0.0};
    double most = 0.0;
    for (const Polygon& polygon : domain) {
        for (std::size_t i = 0; i < polygon.outer.size(); ++i) {
            const Point side = polygon.outer[(i + 1) % polygon.outer.size()] - polygon.outer[i];
            if (length(side) <= most * (1.0 + 1e-9)) continue;
            most = length(side);
            longest = side;
        }
    }
    return longest;
}

TriangleMesh meshFrom(const Triangulation& from, Point centre)
{
    TriangleMesh mesh;
    std::vector<int> number(from.sites().size(), -1);
    for (const Triangle& t : from.triangles()) {
        if (!t.alive() || !t.inside) continue;
        std::array<int, 3> corners{};
        for (int i = 0; i < 3; ++i) {
            int& node = number[std::size_t(t.corner[i])];
            if (node < 0) {
                node = int(mesh.nodes.size());
                mesh.nodes.push_back(pointOf(from.site(t.corner[i])) + centre);
            }
            corners[i] = node;
        }
        mesh.triangles.push_back(corners);
    }
    return mesh;
}

}  // namespace

double TriangleMesh::leastAngleDeg() const
{
    double least = 1.0;
    for (const auto& t : triangles)
        least = std::min(least, leastSineSquared(nodes[std::size_t(t[0])], nodes[std::size_t(t[1])],
                                                 nodes[std::size_t(t[2])]));
    return triangles.empty() ? 0.0 : std::asin(std::sqrt(least)) * 180.0 / std::numbers::pi;
}

double TriangleMesh::areaMm2() const
{
    double twice = 0.0;
    for (const auto& t : triangles)
        twice += cross(nodes[std::size_t(t[1])] - nodes[std::size_t(t[0])],
                       nodes[std::size_t(t[2])] - nodes[std::size_t(t[0])]);
    return 0.5 * twice;
}

TriangleMesh meshOf(const MeshRequest& request)
{
    if (!(request.sizeMm >= 0.05) || !std::isfinite(request.sizeMm)) return {};
    const std::optional<Box> box = boundsOf(request.domain);
    if (!box || !isFinite(box->low) || !isFinite(box->high)) return {};
    const Point centre = box->centre();
    std::optional<MeshRequest> sound = soundRequest(request, centre);
    if (!sound) return {};
    const double area = areaMm2(sound->domain);
    const double sizeMm = sound->sizeMm;
    if (!(area > 0.1) || area / (sizeMm * sizeMm) > kMostMeshNodes) return {};

    const Box bounds{box->low - centre, box->high - centre};
    const double marginMm = std::max(bounds.width(), bounds.height()) * 0.05 + 1.0;
    Triangulation mesh(siteOf(bounds.low - Point{marginMm, marginMm}), siteOf(bounds.high + Point{marginMm, marginMm}),
                       int(2.0 * area / (sizeMm * sizeMm)) + 200);
    Layout layout = layoutOf(*sound, bounds);
    Constraints constraints(layout, mesh, bounds);
    if (!constraints.addBoundaries()) return {};
    constraints.addLines();
    constraints.addPoints(sound->points);
    if (!addSeeds(mesh, layout.sizes, bounds, longestSide(sound->domain), kMostMeshNodes)) return {};
    const int seeded = int(mesh.sites().size());
    refine(mesh, layout.sizes, std::min(kMostMeshNodes, 3 * seeded + 500));
    smooth(mesh, 1);
    mendThin(mesh);
    return meshFrom(mesh, centre);
}

}  // namespace yardcast
