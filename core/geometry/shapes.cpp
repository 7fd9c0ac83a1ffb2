#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/geometry/region.h"

namespace yardcast {

namespace {

constexpr int kMostChordsAQuarter = 1000;

/// A quarter of an arc as chords: both ends on the arc (so that the straight edges stay true), the points between
/// them on a slightly larger radius, so that the area is that of the quarter disc.
struct QuarterChords {
    int count = 2;
    double innerScale = 1.0;  ///< radius of the points between, over the arc's radius
};

QuarterChords quarterChords(double radiusMm)
{
    QuarterChords chords;
    for (int n = 2; n <= kMostChordsAQuarter; ++n) {
        const double step = std::numbers::pi / 2 / n;
        // Sum of the triangles of the fan: (n - 2) s^2 + 2 s = (pi / 2) / sin(step).
        const double target = std::numbers::pi / 2 / std::sin(step);
        const double s = n == 2 ? target / 2 : (std::sqrt(1.0 + (n - 2) * target) - 1.0) / (n - 2);
        chords = {n, s};
        // The end chords run from radius 1 to radius s and dip furthest near their true end.
        const double dip = 1.0 - std::cos(step / 2);
        if (radiusMm * std::max(s - 1.0, dip) <= kArcToleranceMm) break;
    }
    return chords;
}

}  // namespace

Ring rectangleRing(Point centre, Size size, double turnDeg, double cornerRadiusMm)
{
    const Placement placement{centre, turnDeg};
    const double halfX = size.width / 2;
    const double halfY = size.depth / 2;
    const double radius = std::min({cornerRadiusMm, std::abs(halfX), std::abs(halfY)});
    Ring ring;
    if (!(radius > 0.0)) {
        for (const Point p : {Point{-halfX, -halfY}, {halfX, -halfY}, {halfX, halfY}, {-halfX, halfY}})
            ring.push_back(placement.toPlan(p));
        return ring;
    }
    const QuarterChords chords = quarterChords(radius);
    const Point centres[] = {{halfX - radius, halfY - radius},
                             {radius - halfX, halfY - radius},
                             {radius - halfX, radius - halfY},
                             {halfX - radius, radius - halfY}};
    for (int quarter = 0; quarter < 4; ++quarter) {
        for (int i = 0; i <= chords.count; ++i) {
            const bool end = i == 0 || i == chords.count;
            const SineCosine t = sineCosineDeg(90.0 * quarter + 90.0 * i / chords.count);
            const Point p = centres[quarter] + Point{t.cosine, t.sine} * (end ? radius : radius * chords.innerScale);
            const Point placed = placement.toPlan(p);
            // Where the radius is half a side, two arcs meet in one point.
            if (ring.empty() || distance(ring.back(), placed) > kLatticeMm) ring.push_back(placed);
        }
    }
    if (ring.size() > 1 && distance(ring.front(), ring.back()) <= kLatticeMm) ring.pop_back();
    return ring;
}

Ring circleRing(Point centre, double diameterMm)
{
    const double radius = diameterMm / 2;
    int count = 16;
    double outer = 1.0;
    for (; count <= 4 * kMostChordsAQuarter; count += 4) {
        const double step = 2 * std::numbers::pi / count;
        outer = std::sqrt(step / std::sin(step));
        if (radius * std::max(outer - 1.0, 1.0 - outer * std::cos(step / 2)) <= kArcToleranceMm) break;
    }
    Ring ring;
    ring.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        const SineCosine t = sineCosineDeg(360.0 * (i + 0.5) / count);
        ring.push_back(centre + Point{t.cosine, t.sine} * (radius * outer));
    }
    return ring;
}

Ring stripRing(Point a, Point b, double widthMm, double extendMm)
{
    const double span = distance(a, b);
    if (!(span > 0.0)) return {};
    const Point along = (b - a) * (1.0 / span);
    const Point side = leftNormal(along) * (widthMm / 2);
    const Point from = a - along * extendMm;
    const Point to = b + along * extendMm;
    return {from - side, to - side, to + side, from + side};
}

}  // namespace yardcast
