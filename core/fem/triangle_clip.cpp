#include "core/fem/triangle_clip.h"

#include <algorithm>

namespace yardcast::fem {

namespace {

/// The part of the ring inside the triangle, where all three area coordinates are positive (Sutherland, Hodgman, Comm. ACM 17 (1974) 32-42, from memory). Where it
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

std::vector<SharesRing> commonRings(const std::array<Point, 3>& corners, const Region& region)
{
    std::vector<SharesRing> rings;
    const double doubled = cross(corners[1] - corners[0], corners[2] - corners[0]);
    if (!(doubled > 0)) return rings;
    const Box box = boxOf(corners);
    std::vector<Shares> scratch;
    const auto add = [&](const Ring& outline, double sign) {
        if (outline.size() < 3 || apart(box, outline)) return;
        std::vector<Shares> ring;
        ring.reserve(outline.size() + 3);
        for (const Point p : outline) {
            const double first = cross(corners[1] - p, corners[2] - p) / doubled;
            const double second = cross(corners[2] - p, corners[0] - p) / doubled;
            const double third = cross(corners[0] - p, corners[1] - p) / doubled;
            ring.push_back({first, second, third});
        }
        clip(ring, scratch);
        if (ring.size() < 3) return;
        const Shares part = integral(ring);
        const double whole = part[0] + part[1] + part[2];
        if (whole != 0) rings.push_back({std::move(ring), whole < 0 ? -sign : sign});
    };
    for (const Polygon& polygon : region) {
        add(polygon.outer, 1.0);
        for (const Ring& hole : polygon.holes) add(hole, -1.0);
    }
    return rings;
}

std::array<double, 3> commonArea(const std::array<Point, 3>& corners, const Region& region)
{
    std::array<double, 3> sum{};
    const double area = cross(corners[1] - corners[0], corners[2] - corners[0]) / 2;
    for (const SharesRing& ring : commonRings(corners, region)) {
        const Shares part = integral(ring.points);
        for (std::size_t k = 0; k < 3; ++k) sum[k] += ring.sign * part[k] * area;
    }
    return sum;
}

}  // namespace yardcast::fem
