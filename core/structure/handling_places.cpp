#include "core/structure/handling_places.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace yardcast {

namespace {

/// Points of an edge may lie this far off its line.
constexpr double kStraightMm = 0.5;
/// Boxes and edges this much alike count as equal, so that rounding does not choose.
constexpr double kAlike = 1e-3;
constexpr int kSymmetryPoints = 16;

struct Along {
    double low = std::numeric_limits<double>::max();
    double high = std::numeric_limits<double>::lowest();
    void take(double value)
    {
        low = std::min(low, value);
        high = std::max(high, value);
    }
    double span() const { return high - low; }
};

SlabAxes boxAlong(const Region& outline, Point along)
{
    const Point across = leftNormal(along);
    Along s;
    Along t;
    for (const Polygon& polygon : outline) {
        for (const Point p : polygon.outer) {
            s.take(dot(p, along));
            t.take(dot(p, across));
        }
    }
    SlabAxes axes{along * s.low + across * t.low, along, across, s.span(), t.span()};
    if (axes.widthMm > axes.lengthMm * (1.0 + kAlike)) {
        // Turned by a quarter: the same box, its long side first.
        axes.origin = along * s.high + across * t.low;
        axes.along = across;
        axes.across = along * -1.0;
        std::swap(axes.lengthMm, axes.widthMm);
    }
    return axes;
}

/// A direction and its opposite are one axis: the one that looks right (or up).
Point axisOf(Point direction)
{
    const Point unit = direction * (1.0 / length(direction));
    return unit.x > 1e-9 || (std::abs(unit.x) <= 1e-9 && unit.y > 0.0) ? unit : unit * -1.0;
}

SlabAxes lookingRight(SlabAxes axes)
{
    const Point along = axisOf(axes.along);
    if (dot(along, axes.along) > 0.0) return axes;
    return {axes.at(axes.lengthMm, axes.widthMm), along, axes.across * -1.0, axes.lengthMm, axes.widthMm};
}

double depthAt(const Casting& casting, Point p)
{
    double depth = 0.0;
    for (const Zone& zone : casting.zones) {
        if (zone.isConcrete() && contains(zone.region, p)) depth += zone.depthMm();
    }
    return depth;
}

}  // namespace

Point StandingEdge::inward() const
{
    return leftNormal((to - from) * (1.0 / lengthMm()));
}

SlabAxes slabAxes(const Region& outline)
{
    SlabAxes best = boxAlong(outline, {1.0, 0.0});
    if (outline.empty()) return best;
    const Ring& ring = outline.front().outer;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point edge = ring[(i + 1) % ring.size()] - ring[i];
        if (!(length(edge) > kStraightMm)) continue;
        const SlabAxes box = boxAlong(outline, axisOf(edge));
        if (box.lengthMm * box.widthMm < best.lengthMm * best.widthMm * (1.0 - kAlike)) best = box;
    }
    return lookingRight(best);
}

std::vector<StandingEdge> standingEdges(const Region& outline, double leastShare)
{
    std::vector<StandingEdge> edges;
    if (outline.empty()) return edges;
    const Ring& ring = outline.front().outer;
    const int count = static_cast<int>(ring.size());
    for (int i = 0; i < count; ++i) {
        const Point a = ring[i];
        const Point b = ring[(i + 1) % count];
        if (!(distance(a, b) > kStraightMm)) continue;
        const Point along = (b - a) * (1.0 / distance(a, b));
        const Point inward = leftNormal(along);
        bool stands = true;
        Along reach;
        for (const Point p : ring) {
            const double off = dot(p - a, inward);
            stands = stands && off > -kStraightMm;
            if (std::abs(off) <= kStraightMm) reach.take(dot(p - a, along));
        }
        if (!stands) continue;
        const StandingEdge edge{i, a + along * reach.low, a + along * reach.high};
        // Pieces of one straight side are one edge, named by the longest.
        const auto same = std::find_if(edges.begin(), edges.end(), [&](const StandingEdge& other) {
            return distance(other.from, edge.from) <= 2 * kStraightMm && distance(other.to, edge.to) <= 2 * kStraightMm;
        });
        if (same == edges.end()) {
            edges.push_back(edge);
        } else if (distance(ring[same->edge], ring[(same->edge + 1) % count]) < distance(a, b)) {
            same->edge = i;
        }
    }
    const Point centroid = moments(outline).centroid();
    std::erase_if(edges, [&](const StandingEdge& edge) {
        const double at = dot(centroid - edge.from, (edge.to - edge.from) * (1.0 / edge.lengthMm()));
        return !(at > 0.0 && at < edge.lengthMm());
    });
    double longest = 0.0;
    for (const StandingEdge& edge : edges) longest = std::max(longest, edge.lengthMm());
    std::erase_if(edges, [&](const StandingEdge& edge) { return edge.lengthMm() < leastShare * longest; });
    std::stable_sort(edges.begin(), edges.end(), [](const StandingEdge& a, const StandingEdge& b) {
        return std::llround(a.lengthMm()) > std::llround(b.lengthMm());
    });
    return edges;
}

std::optional<StandingEdge> baseEdge(const Region& elevation)
{
    for (const StandingEdge& edge : standingEdges(elevation, 0.0)) {
        if (edge.inward().y > 1.0 - kAlike) return edge;
    }
    return std::nullopt;
}

std::optional<std::pair<Point, Point>> endsOfLine(const Region& outline, Point through, Point across)
{
    const Point along{across.y, -across.x};
    Along reach;
    for (const Polygon& polygon : outline) {
        const Ring& ring = polygon.outer;
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i] - through;
            const Point b = ring[(i + 1) % ring.size()] - through;
            const double offA = dot(a, along);
            const double offB = dot(b, along);
            if ((offA > 0.0) == (offB > 0.0)) continue;
            reach.take(dot(a + (b - a) * (offA / (offA - offB)), across));
        }
    }
    if (!(reach.span() > 0.0)) return std::nullopt;
    return std::pair{through + across * reach.low, through + across * reach.high};
}

Region handRegion(const Region& outline, Point at, Point along)
{
    const Point half = along * (kHandMm.width / 2);
    return intersect(regionOf(stripRing(at - half, at + half, kHandMm.depth)), outline);
}

std::vector<Region> stripPieces(const Region& outline, Point from, Point to, double widthMm, int pieces)
{
    std::vector<Region> regions;
    for (int i = 0; i < pieces; ++i) {
        const Point a = from + (to - from) * (static_cast<double>(i) / pieces);
        const Point b = from + (to - from) * (static_cast<double>(i + 1) / pieces);
        Region piece = intersect(regionOf(stripRing(a, b, widthMm)), outline);
        if (!piece.empty()) regions.push_back(std::move(piece));
    }
    return regions;
}

SlabSymmetry slabSymmetry(const Casting& casting, const SlabAxes& axes)
{
    // Moments tell small holes apart that fall between the sampled points.
    Point moment;
    double volume = 0.0;
    for (const Zone& zone : casting.zones) {
        if (!zone.isConcrete()) continue;
        const AreaMoments m = moments(zone.region);
        volume += m.areaMm2 * zone.depthMm();
        moment = moment + Point{m.firstXMm3, m.firstYMm3} * zone.depthMm();
    }
    if (!(volume > 0.0)) return {};
    const Point off = moment * (1.0 / volume) - axes.at(axes.lengthMm / 2, axes.widthMm / 2);
    SlabSymmetry symmetry{std::abs(dot(off, axes.along)) < kStraightMm, std::abs(dot(off, axes.across)) < kStraightMm};
    if (!symmetry.along && !symmetry.across) return symmetry;

    constexpr int n = kSymmetryPoints;
    std::vector<double> depth;
    for (int i = 0; i < n; ++i) {
        for (int j = 0; j < n; ++j) {
            depth.push_back(depthAt(casting, axes.at((i + 0.5) / n * axes.lengthMm, (j + 0.5) / n * axes.widthMm)));
        }
    }
    for (int i = 0; i < n; ++i) {
        for (int j = 0; j < n; ++j) {
            if (std::abs(depth[i * n + j] - depth[(n - 1 - i) * n + j]) > kStraightMm) symmetry.along = false;
            if (std::abs(depth[i * n + j] - depth[i * n + n - 1 - j]) > kStraightMm) symmetry.across = false;
        }
    }
    return symmetry;
}

}  // namespace yardcast
