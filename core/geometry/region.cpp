#include "core/geometry/region.h"

#include <algorithm>
#include <cstdint>
#include <numeric>

namespace yardcast {

namespace {

AreaMoments& operator+=(AreaMoments& sum, const AreaMoments& term)
{
    sum.areaMm2 += term.areaMm2;
    sum.firstXMm3 += term.firstXMm3;
    sum.firstYMm3 += term.firstYMm3;
    sum.secondXxMm4 += term.secondXxMm4;
    sum.secondYyMm4 += term.secondYyMm4;
    sum.secondXyMm4 += term.secondXyMm4;
    return sum;
}

/// Signed moments of a ring about the frame's axes, by Green's theorem. Summed about the ring's first point and
/// moved afterwards, so that a ring far from the origin loses no digits.
AreaMoments ringMoments(const Ring& ring)
{
    AreaMoments sum;
    if (ring.size() < 3) return sum;
    const Point origin = ring.front();
    for (std::size_t i = 1; i + 1 < ring.size(); ++i) {
        const Point a = ring[i] - origin;
        const Point b = ring[i + 1] - origin;
        const double doubled = cross(a, b);
        sum.areaMm2 += doubled / 2;
        sum.firstXMm3 += doubled * (a.x + b.x) / 6;
        sum.firstYMm3 += doubled * (a.y + b.y) / 6;
        sum.secondXxMm4 += doubled * (a.x * a.x + a.x * b.x + b.x * b.x) / 12;
        sum.secondYyMm4 += doubled * (a.y * a.y + a.y * b.y + b.y * b.y) / 12;
        sum.secondXyMm4 += doubled * (2 * a.x * a.y + a.x * b.y + b.x * a.y + 2 * b.x * b.y) / 24;
    }
    AreaMoments moved = sum;
    moved.firstXMm3 += origin.x * sum.areaMm2;
    moved.firstYMm3 += origin.y * sum.areaMm2;
    moved.secondXxMm4 += 2 * origin.x * sum.firstXMm3 + origin.x * origin.x * sum.areaMm2;
    moved.secondYyMm4 += 2 * origin.y * sum.firstYMm3 + origin.y * origin.y * sum.areaMm2;
    moved.secondXyMm4 +=
        origin.x * sum.firstYMm3 + origin.y * sum.firstXMm3 + origin.x * origin.y * sum.areaMm2;
    return moved;
}

AreaMoments scaled(const AreaMoments& m, double k)
{
    return {m.areaMm2 * k,     m.firstXMm3 * k,   m.firstYMm3 * k,
            m.secondXxMm4 * k, m.secondYyMm4 * k, m.secondXyMm4 * k};
}

void widen(Box& box, Point p)
{
    box.low.x = std::min(box.low.x, p.x);
    box.low.y = std::min(box.low.y, p.y);
    box.high.x = std::max(box.high.x, p.x);
    box.high.y = std::max(box.high.y, p.y);
}

bool onRing(const Ring& ring, Point p)
{
    // Most edges are far off: their boxes tell so.
    constexpr double kReachMm = 2 * kLatticeMm;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const Point a = ring[j];
        const Point b = ring[i];
        if (p.x < std::min(a.x, b.x) - kReachMm || p.x > std::max(a.x, b.x) + kReachMm ||
            p.y < std::min(a.y, b.y) - kReachMm || p.y > std::max(a.y, b.y) + kReachMm)
            continue;
        if (distanceToSegment(p, a, b) <= kLatticeMm) return true;
    }
    return false;
}

bool evenOddInside(const Ring& ring, Point p)
{
    bool inside = false;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const Point a = ring[j];
        const Point b = ring[i];
        if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
    }
    return inside;
}

/// Lattice points and exact orientation, so that touching is told from passing by without a tolerance.
struct LatticePoint {
    std::int64_t x = 0;
    std::int64_t y = 0;
    friend bool operator==(const LatticePoint&, const LatticePoint&) = default;
};

struct LatticeEdge {
    LatticePoint a;
    LatticePoint b;
    int index = 0;
};

__extension__ using WideInteger = __int128;

int orientation(LatticePoint a, LatticePoint b, LatticePoint c)
{
    const WideInteger value = static_cast<WideInteger>(b.x - a.x) * (c.y - a.y) -
                              static_cast<WideInteger>(b.y - a.y) * (c.x - a.x);
    return value > 0 ? 1 : (value < 0 ? -1 : 0);
}

bool withinBox(LatticePoint a, LatticePoint b, LatticePoint p)
{
    return std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= p.y &&
           p.y <= std::max(a.y, b.y);
}

bool meet(const LatticeEdge& p, const LatticeEdge& q)
{
    const int o1 = orientation(p.a, p.b, q.a);
    const int o2 = orientation(p.a, p.b, q.b);
    const int o3 = orientation(q.a, q.b, p.a);
    const int o4 = orientation(q.a, q.b, p.b);
    if (o1 != o2 && o3 != o4) return true;
    return (o1 == 0 && withinBox(p.a, p.b, q.a)) || (o2 == 0 && withinBox(p.a, p.b, q.b)) ||
           (o3 == 0 && withinBox(q.a, q.b, p.a)) || (o4 == 0 && withinBox(q.a, q.b, p.b));
}

/// Edges p then q share q.a; they overlap when q runs straight back over p.
bool foldsBack(const LatticeEdge& p, const LatticeEdge& q)
{
    if (orientation(p.a, p.b, q.b) != 0) return false;
    const WideInteger along = static_cast<WideInteger>(p.b.x - p.a.x) * (q.b.x - q.a.x) +
                              static_cast<WideInteger>(p.b.y - p.a.y) * (q.b.y - q.a.y);
    return along < 0;
}

}  // namespace

Point AreaMoments::centroid() const
{
    if (!(std::abs(areaMm2) > 0.0)) return {};
    return {firstXMm3 / areaMm2, firstYMm3 / areaMm2};
}

double signedArea(const Ring& ring)
{
    double doubled = 0.0;
    for (std::size_t i = 1; i + 1 < ring.size(); ++i)
        doubled += cross(ring[i] - ring.front(), ring[i + 1] - ring.front());
    return doubled / 2;
}

double perimeterMm(const Ring& ring)
{
    double sum = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) sum += distance(ring[i], ring[(i + 1) % ring.size()]);
    return sum;
}

AreaMoments moments(const Polygon& polygon)
{
    AreaMoments sum = ringMoments(polygon.outer);
    if (sum.areaMm2 < 0) sum = scaled(sum, -1);
    for (const Ring& hole : polygon.holes) {
        const AreaMoments m = ringMoments(hole);
        sum += scaled(m, m.areaMm2 > 0 ? -1 : 1);
    }
    return sum;
}

AreaMoments moments(const Region& region)
{
    AreaMoments sum;
    for (const Polygon& polygon : region) sum += moments(polygon);
    return sum;
}

double areaMm2(const Region& region)
{
    double sum = 0.0;
    for (const Polygon& polygon : region) {
        sum += std::abs(signedArea(polygon.outer));
        for (const Ring& hole : polygon.holes) sum -= std::abs(signedArea(hole));
    }
    return sum;
}

double perimeterMm(const Region& region)
{
    double sum = 0.0;
    for (const Polygon& polygon : region) {
        sum += perimeterMm(polygon.outer);
        for (const Ring& hole : polygon.holes) sum += perimeterMm(hole);
    }
    return sum;
}

std::optional<Box> boundsOf(const Ring& ring)
{
    if (ring.empty()) return std::nullopt;
    Box box{ring.front(), ring.front()};
    for (const Point p : ring) widen(box, p);
    return box;
}

std::optional<Box> boundsOf(const Region& region)
{
    std::optional<Box> box;
    for (const Polygon& polygon : region) {
        for (const Point p : polygon.outer) {
            if (!box) box = Box{p, p};
            widen(*box, p);
        }
    }
    return box;
}

bool contains(const Ring& ring, Point p)
{
    if (ring.size() < 3) return false;
    return onRing(ring, p) || evenOddInside(ring, p);
}

bool contains(const Region& region, Point p)
{
    return std::any_of(region.begin(), region.end(), [p](const Polygon& polygon) {
        if (!contains(polygon.outer, p)) return false;
        return std::none_of(polygon.holes.begin(), polygon.holes.end(), [p](const Ring& hole) {
            return hole.size() >= 3 && !onRing(hole, p) && evenOddInside(hole, p);
        });
    });
}

double distanceToSegment(Point p, Point a, Point b)
{
    const Point along = b - a;
    const double squared = dot(along, along);
    const double t = squared > 0.0 ? std::clamp(dot(p - a, along) / squared, 0.0, 1.0) : 0.0;
    return distance(p, a + along * t);
}

double distanceToRing(const Ring& ring, Point p)
{
    double least = HUGE_VAL;
    for (std::size_t i = 0; i < ring.size(); ++i)
        least = std::min(least, distanceToSegment(p, ring[i], ring[(i + 1) % ring.size()]));
    return least;
}

std::optional<std::pair<int, int>> selfCrossing(const Ring& ring)
{
    std::vector<LatticeEdge> edges;
    edges.reserve(ring.size());
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point p = ring[i];
        if (!(std::abs(p.x) <= kLargestCoordinateMm && std::abs(p.y) <= kLargestCoordinateMm)) return std::nullopt;
        edges.push_back({{std::llround(p.x / kLatticeMm), std::llround(p.y / kLatticeMm)}, {}, static_cast<int>(i)});
    }
    for (std::size_t i = 0; i < edges.size(); ++i) edges[i].b = edges[(i + 1) % edges.size()].a;
    std::erase_if(edges, [](const LatticeEdge& e) { return e.a == e.b; });
    const int count = static_cast<int>(edges.size());
    if (count < 2) return std::nullopt;

    for (int i = 0; i < count; ++i) {
        const int next = (i + 1) % count;
        if (foldsBack(edges[i], edges[next])) return std::pair{edges[i].index, edges[next].index};
    }
    // Sweep along x: only edges whose ranges overlap are compared.
    std::vector<int> order(edges.size());
    std::iota(order.begin(), order.end(), 0);
    const auto lowX = [&edges](int i) { return std::min(edges[i].a.x, edges[i].b.x); };
    const auto highX = [&edges](int i) { return std::max(edges[i].a.x, edges[i].b.x); };
    std::sort(order.begin(), order.end(), [&](int i, int j) { return lowX(i) < lowX(j); });
    std::vector<int> active;
    for (const int i : order) {
        std::erase_if(active, [&](int j) { return highX(j) < lowX(i); });
        for (const int j : active) {
            const bool neighbours = (i + 1) % count == j || (j + 1) % count == i;
            if (!neighbours && meet(edges[i], edges[j])) {
                const auto [first, second] = std::minmax(edges[i].index, edges[j].index);
                return std::pair{first, second};
            }
        }
        active.push_back(i);
    }
    return std::nullopt;
}

Ring transformed(const Ring& ring, const Placement& placement)
{
    Ring result;
    result.reserve(ring.size());
    for (const Point p : ring) result.push_back(placement.toPlan(p));
    return result;
}

Region transformed(const Region& region, const Placement& placement)
{
    Region result;
    result.reserve(region.size());
    for (const Polygon& polygon : region) {
        Polygon moved{transformed(polygon.outer, placement), {}};
        for (const Ring& hole : polygon.holes) moved.holes.push_back(transformed(hole, placement));
        result.push_back(std::move(moved));
    }
    return result;
}

}  // namespace yardcast
