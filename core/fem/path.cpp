#include "core/fem/path.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace yardcast::fem {

namespace {

constexpr double kSamePointMm = 0.02;
constexpr double kStraightMm = 0.004;  // the pitch of the lattice that everything is rounded to

/// The middle point adds nothing: it is on the line, or the line runs back over itself.
bool needless(Point before, Point middle, Point after)
{
    return distance(before, after) <= kSamePointMm || distanceToSegment(middle, before, after) <= kStraightMm;
}

}  // namespace

Point Path::at(double alongMm) const
{
    if (closed) alongMm -= lengthMm * std::floor(alongMm / lengthMm);
    const auto next = std::ranges::upper_bound(along, alongMm);
    const int side = std::clamp(int(next - along.begin()) - 1, 0, sides() - 1);
    const Point a = from(side), b = to(side);
    const double share = std::clamp((alongMm - along[std::size_t(side)]) / distance(a, b), 0.0, 1.0);
    return a + (b - a) * share;
}

double Path::between(double a, double b) const
{
    const double direct = std::abs(a - b);
    return closed ? std::min(direct, lengthMm - direct) : direct;
}

double Path::turnDeg(int point) const
{
    const int count = int(points.size());
    if (!closed && (point == 0 || point == count - 1)) return 0.0;
    const Point in = points[std::size_t(point)] - points[std::size_t((point + count - 1) % count)];
    const Point out = points[std::size_t((point + 1) % count)] - points[std::size_t(point)];
    return std::atan2(cross(in, out), dot(in, out)) * 180.0 / std::numbers::pi;
}

Path pathOf(std::vector<Point> points, bool closed, bool boundary)
{
    Path path;
    path.closed = closed;
    path.boundary = boundary;
    std::vector<Point>& kept = path.points;
    for (const Point p : points) {
        if (!kept.empty() && distance(kept.back(), p) <= kSamePointMm) continue;
        while (kept.size() >= 2 && needless(kept[kept.size() - 2], kept.back(), p)) kept.pop_back();
        if (kept.empty() || distance(kept.back(), p) > kSamePointMm) kept.push_back(p);
    }
    if (closed) {
        bool changed = true;
        while (changed && kept.size() >= 3) {
            changed = false;
            const std::size_t n = kept.size();
            if (distance(kept[0], kept[n - 1]) <= kSamePointMm || needless(kept[n - 2], kept[n - 1], kept[0])) {
                kept.pop_back();
                changed = true;
            } else if (needless(kept[n - 1], kept[0], kept[1])) {
                kept.erase(kept.begin());
                changed = true;
            }
        }
    }
    if (kept.size() < (closed ? 3u : 2u)) {
        kept.clear();
        path.closed = false;
        return path;
    }
    for (std::size_t i = 0; i < kept.size(); ++i) {
        path.along.push_back(path.lengthMm);
        if (int(i) < path.sides()) path.lengthMm += distance(path.from(int(i)), path.to(int(i)));
    }
    return path;
}

}  // namespace yardcast::fem
