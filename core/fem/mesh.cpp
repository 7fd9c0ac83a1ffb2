#include "core/fem/mesh.h"

#include <algorithm>
#include <cmath>
#include <functional>
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

/// What merging sides and dividing arcs anew may change of the area; beyond it the boundary is followed point by point.
constexpr double kAreaShare = 5e-4;
/// Half the width of strips that may be left out when the domain cannot be meshed with them.
constexpr double kNoStripMm = 0.02;
/// Lines longer than this many sizes together are passed over.
constexpr double kMostLineSizes = 200000.0;

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
    double lineSizes = 0.0;
    for (const Ring& line : request.lines) {
        if (!inReach(line, centre)) continue;
        lineSizes += perimeterMm(line) / request.sizeMm;
        if (lineSizes > kMostLineSizes) break;
        sound.lines.push_back(moved(line, back));
    }
    for (const Point p : request.points)
        if (inReach({p}, centre)) sound.points.push_back(p - centre);
    for (const FinePlace& place : request.fine)
        if (inReach({place.at}, centre) && place.sizeMm > 0.0) sound.fine.push_back({place.at - centre, place.sizeMm});
    return sound;
}

struct Frame {
    Point centre;
    Point along;
};

/// Where the lattice lies: along the way that most of the boundary runs (square to it counts as the same), and of the
/// two the one in which the domain is longer; in the middle of it. A cutout that is dragged does not turn or move it.
Frame latticeFrame(const Region& domain)
{
    std::vector<Point> sides;  // in the first quarter
    for (const Polygon& polygon : domain) {
        for (std::size_t i = 0; i < polygon.outer.size(); ++i) {
            Point side = polygon.outer[(i + 1) % polygon.outer.size()] - polygon.outer[i];
            while (!(side.x > 0.0 && side.y >= 0.0) && length(side) > 0.0) side = leftNormal(side);
            if (length(side) > 0.0) sides.push_back(side);
        }
    }
    std::ranges::stable_sort(sides, std::ranges::greater{}, [](Point side) { return length(side); });
    Frame frame{{}, {1.0, 0.0}};
    double most = 0.0;
    const std::size_t tried = std::min<std::size_t>(sides.size(), 8);
    for (std::size_t i = 0; i < tried; ++i) {
        const Point along = sides[i] * (1.0 / length(sides[i]));
        double run = 0.0;
        for (const Point side : sides)
            if (std::min(std::abs(cross(along, side)), std::abs(dot(along, side))) < 0.01 * length(side))
                run += length(side);
        if (run <= most * (1.0 + 1e-9)) continue;
        most = run;
        frame.along = along;
    }
    Ring turned;
    const Point across = leftNormal(frame.along);
    for (const Polygon& polygon : domain)
        for (const Point p : polygon.outer) turned.push_back({dot(p, frame.along), dot(p, across)});
    const Box box = boundsOf(turned).value_or(Box{});
    frame.centre = frame.along * box.centre().x + across * box.centre().y;
    if (box.height() > box.width() * (1.0 + 1e-9)) frame.along = across;
    return frame;
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

/// The mesh; an empty one where it would be too large; nothing where its boundaries cross each other.
std::optional<TriangleMesh> meshOnce(const MeshRequest& request, Box bounds, Point centre, bool plain)
{
    const double marginMm = std::max(bounds.width(), bounds.height()) * 0.05 + 1.0;
    const Point margin{marginMm, marginMm};
    const double expected = 2.0 * areaMm2(request.domain) / (request.sizeMm * request.sizeMm);
    Triangulation mesh(siteOf(bounds.low - margin), siteOf(bounds.high + margin), int(expected) + 200);
    Layout layout = layoutOf(request, bounds, plain);
    Constraints constraints(layout, mesh, bounds);
    if (!constraints.addBoundaries()) return std::nullopt;
    constraints.addLines();
    constraints.addPoints(request.points);
    const Frame frame = latticeFrame(request.domain);
    if (!addSeeds(mesh, layout.sizes, bounds, frame.centre, frame.along, kMostMeshNodes))
        return TriangleMesh{};
    const int seeded = int(mesh.sites().size());
    refine(mesh, layout.sizes, std::min(kMostMeshNodes, 3 * seeded + 500));
    if (int(mesh.sites().size()) >= kMostMeshNodes) return TriangleMesh{};
    smooth(mesh, 1, constraints.pointSites());
    mendThin(mesh);
    return meshFrom(mesh, centre);
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
    const std::optional<MeshRequest> sound = soundRequest(request, centre);
    if (!sound) return {};
    const double area = areaMm2(sound->domain);
    const double sizeMm = sound->sizeMm;
    if (!(area > 0.1) || area / (sizeMm * sizeMm) > kMostMeshNodes) return {};
    if (perimeterMm(sound->domain) / sizeMm > kMostMeshNodes) return {};

    const Box bounds{box->low - centre, box->high - centre};
    MeshRequest tried = *sound;
    for (const bool opened : {false, true}) {
        // A strip thinner than the lattice of the nodes, between a cutout and the edge, makes boundaries cross when they
        // are rounded: without it there is a mesh.
        if (opened) {
            const Region shrunk = offset(sound->domain, -kNoStripMm, OffsetJoin::mitre);
            tried.domain = offset(shrunk, kNoStripMm, OffsetJoin::mitre);
            if (tried.domain.empty()) return {};
        }
        for (const bool plain : {false, true}) {
            std::optional<TriangleMesh> mesh = meshOnce(tried, bounds, centre, plain);
            if (!mesh) continue;
            if (mesh->triangles.empty() || std::abs(mesh->areaMm2() - area) <= kAreaShare * area)
                return std::move(*mesh);
        }
    }
    return {};
}

}  // namespace yardcast
