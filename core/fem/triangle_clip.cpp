#include "core/fem/triangle_clip.h"

#include <algorithm>

namespace yardcast::fem {

namespace {

/// Area coordinates in the triangle: inside where all three are positive.
using Shares = std::array<double, 3>;

/// The part of the ring inside the triangle (Sutherland, Hodgman, Comm. ACM 17 (1974) 32-42, from memory). Where it
/// falls apart, the parts hang together by lines of no area.
void clip(std::vector<Shares>& ring, std::vector<Shares>& scratch)
{
    for (std::size_t side = 0; side < 3; ++side) {
        if (std::ranges::all_of(ring, [&](const Shares& s) { return s[side] >= 0; })) continue;
        scratch.clear();
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Shares& a = ring[i];
            const Shares& b = ring[i + 1 < ring.size() ? i + 1 : 0];
            if (a[side] >= 0) scratch.push_back(a);
            if ((a[side] >= 0) != (b[side] >= 0)) {
                const double t = a[side] / (a[side] - b[side]);
                Shares cut;
                for (std::size_t k = 0; k < 3; ++k) cut[k] = a[k] + t * (b[k] - a[k]);
                cut[side] = 0.0;
                scratch.push_back(cut);
            }
        }
        ring.swap(scratch);
        if (ring.empty()) return;
    }
}

/// Signed integral of the shares over the ring, in parts of the triangle's area.
Shares integral(const std::vector<Shares>& ring)
{
    Shares sum{};
    for (std::size_t i = 1; i + 1 < ring.size(); ++i) {
        const Shares& o = ring[0];
        const Shares& a = ring[i];
        const Shares& b = ring[i + 1];
        const double area = (a[1] - o[1]) * (b[2] - o[2]) - (a[2] - o[2]) * (b[1] - o[1]);
        for (std::size_t k = 0; k < 3; ++k) sum[k] += area * (o[k] + a[k] + b[k]) / 3;
    }
    return sum;
}

Box boxOf(const std::array<Point, 3>& corners)
{
    const auto [lowX, highX] = std::minmax({corners[0].x, corners[1].x, corners[2].x});
    const auto [lowY, highY] = std::minmax({corners[0].y, corners[1].y, corners[2].y});
    return {{lowX, lowY}, {highX, highY}};
}

bool apart(const Box& box, const Ring& ring)
{
    bool left = true, right = true, below = true, above = true;
    for (const Point p : ring) {
        left = left && p.x <= box.low.x;
        right = right && p.x >= box.high.x;
        below = below && p.y <= box.low.y;
        above = above && p.y >= box.high.y;
    }
    return left || right || below || above;
}

}  // namespace

std::array<double, 3> commonArea(const std::array<Point, 3>& corners, const Region& region)
{
    const double doubled = cross(corners[1] - corners[0], corners[2] - corners[0]);
    std::array<double, 3> sum{};
    if (!(doubled > 0)) return sum;
    const Box box = boxOf(corners);
    std::vector<Shares> ring;
    std::vector<Shares> scratch;
    const auto add = [&](const Ring& outline, double sign) {
        if (outline.size() < 3 || apart(box, outline)) return;
        ring.clear();
        for (const Point p : outline) {
            const double first = cross(corners[1] - p, corners[2] - p) / doubled;
            const double second = cross(corners[2] - p, corners[0] - p) / doubled;
            const double third = cross(corners[0] - p, corners[1] - p) / doubled;
            ring.push_back({first, second, third});
        }
        clip(ring, scratch);
        const Shares part = integral(ring);
        const double way = part[0] + part[1] + part[2] < 0 ? -sign : sign;
        for (std::size_t k = 0; k < 3; ++k) sum[k] += way * part[k] * doubled / 2;
    };
    for (const Polygon& polygon : region) {
        add(polygon.outer, 1.0);
        for (const Ring& hole : polygon.holes) add(hole, -1.0);
    }
    return sum;
}

}  // namespace yardcast::fem
