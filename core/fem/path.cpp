#include "core/fem/path.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace yardcast::fem {

namespace {

constexpr double kSamePointMm = 0.02;
constexpr double kStraightMm = 0.004;  // the pitch of the lattice that everything is rounded to

/// A side that joins two opposite ones is the end of a strip when both are longer than it by this.
constexpr double kStripEnd = 1.5;

/// Points left after those on a straight line are passed over. What has been passed over is remembered as area, so that
/// it cannot add up to a curve.
class Straightened {
public:
    void add(Point p)
    {
        if (!kept_.empty() && distance(kept_.back().at, p) <= kSamePointMm) return;
        double lost = 0.0;  // twice the area between the points passed over and the side that stands for them
        while (kept_.size() >= 2) {
            const Kept& middle = kept_.back();
            const Point before = kept_[kept_.size() - 2].at;
            const double sum = lost + middle.lost + cross(middle.at - before, p - before);
            const double spanMm = distance(before, p);
            const Point back = before - middle.at, on = p - middle.at;
            const bool folded = dot(back, on) > 0.0 &&
                                std::abs(cross(back, on)) <= kStraightMm * std::max(length(back), length(on));
            if (!folded && spanMm > kSamePointMm && std::abs(sum) > kStraightMm * spanMm) break;
            if (!folded && spanMm > kSamePointMm && distanceToSegment(middle.at, before, p) > kStraightMm) break;
            lost = folded || spanMm <= kSamePointMm ? 0.0 : sum;
            kept_.pop_back();
        }
        if (kept_.empty() || distance(kept_.back().at, p) > kSamePointMm) kept_.push_back({p, lost});
    }

    std::vector<Point> points() const
    {
        std::vector<Point> all;
        for (const Kept& k : kept_) all.push_back(k.at);
        return all;
    }

private:
    struct Kept {
        Point at;
        double lost = 0.0;
    };
    std::vector<Kept> kept_;
};

/// The point adds nothing to the ring: it is on the line between its neighbours, or the ring runs back over itself.
bool needless(Point before, Point middle, Point after)
{
    const Point back = before - middle, on = after - middle;
    if (distance(before, after) <= kSamePointMm) return true;
    if (distanceToSegment(middle, before, after) <= 0.1 * kStraightMm) return true;
    return dot(back, on) > 0.0 && std::abs(cross(back, on)) <= kStraightMm * std::max(length(back), length(on));
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

Path pathOf(const std::vector<Point>& points, bool closed, bool boundary)
{
    Path path;
    path.closed = closed;
    path.boundary = boundary;
    Straightened straightened;
    for (const Point p : points) straightened.add(p);
    std::vector<Point>& kept = path.points;
    kept = straightened.points();
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

namespace {

/// The point that can stand for b and c between a and d, the area on either side kept: on the line parallel to ad that
/// keeps it, where that meets ab or cd, whichever moves less; else nearest to the middle of bc.
Point mergedPoint(Point a, Point b, Point c, Point d)
{
    const Point base = d - a;
    const Point middle = (b + c) * 0.5;
    const double twice = cross(b - a, c - a) + cross(c - a, d - a);
    const double baseMm = length(base);
    if (baseMm < kSamePointMm) return middle;
    const Point normal = leftNormal(base) * (1.0 / baseMm);
    const double heightMm = -twice / baseMm;  // of the parallel line over ad, to its left
    const auto onLine = [&](Point from, Point direction, Point& found) {
        const double climb = dot(direction, normal);
        if (std::abs(climb) < 0.05 * length(direction)) return false;
        found = from + direction * ((heightMm - dot(from - a, normal)) / climb);
        return true;
    };
    Point best = middle + normal * (heightMm - dot(middle - a, normal));
    const double reachMm = 1.5 * distance(b, c);
    double bestMm = distance(best, middle);
    Point other;
    bool along = false;  // keeps the direction of one of the sides
    if (onLine(b, b - a, other) && distance(other, middle) < reachMm) {
        best = other;
        bestMm = distance(other, middle);
        along = true;
    }
    if (onLine(c, d - c, other) && distance(other, middle) < (along ? bestMm : reachMm)) best = other;
    return best;
}

}  // namespace

Ring withoutShortSides(Ring ring, double shortShare, const std::function<double(Point)>& sizeAt)
{
    struct Short {
        double share = 0.0;
        std::size_t side = 0;
    };
    bool changed = true;
    while (changed && ring.size() > 3) {
        changed = false;
        const std::size_t count = ring.size();
        std::vector<Short> candidates;
        for (std::size_t i = 0; i < count; ++i) {
            const Point b = ring[i], c = ring[(i + 1) % count];
            const double share = distance(b, c) / (shortShare * sizeAt((b + c) * 0.5));
            if (share >= 1.0) continue;
            // The end of a strip: its two long sides must not be drawn together.
            const Point in = b - ring[(i + count - 1) % count], out = ring[(i + 2) % count] - c;
            const double endMm = kStripEnd * distance(b, c);
            if (dot(in, out) < -0.85 * length(in) * length(out) && length(in) > endMm && length(out) > endMm) continue;
            candidates.push_back({share, i});
        }
        std::ranges::stable_sort(candidates, {}, &Short::share);
        std::vector<char> touched(count, 0), gone(count, 0);
        std::size_t left = count;
        for (const Short& candidate : candidates) {
            const std::size_t b = candidate.side, a = (b + count - 1) % count, c = (b + 1) % count, d = (b + 2) % count;
            if (left <= 3) break;
            if (touched[a] || touched[b] || touched[c] || touched[d]) continue;
            ring[b] = mergedPoint(ring[a], ring[b], ring[c], ring[d]);
            touched[a] = touched[b] = touched[c] = touched[d] = 1;
            gone[c] = 1;
            --left;
            changed = true;
        }
        Ring kept;
        for (std::size_t i = 0; i < count; ++i)
            if (!gone[i]) kept.push_back(ring[i]);
        ring = std::move(kept);
    }
    return ring;
}

}  // namespace yardcast::fem
