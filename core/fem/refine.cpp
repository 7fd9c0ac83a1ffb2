#include "core/fem/refine.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/fem/quality.h"

namespace yardcast::fem {

namespace {

constexpr std::array<int, 3> kNext{1, 2, 0};
constexpr std::array<int, 3> kBefore{2, 0, 1};
/// Angles that refinement goes for. Above 20.7 degrees it may not end by itself, but the floor on lengths ends it.
constexpr double kWantedDeg = 26.0;
/// Circumradius, as a share of the size, of a triangle that is too large (an equilateral one of that size: 0.58).
constexpr double kLargeShare = 1.0;
/// No new node nearer to another than this share of the size.
constexpr double kFloorShare = 0.3;

struct Suspect {
    std::array<int, 3> corner{};
    int triangle = -1;
    double badness = 0.0;

    friend bool operator<(const Suspect& a, const Suspect& b)
    {
        return a.badness != b.badness ? a.badness < b.badness : a.triangle < b.triangle;
    }
};

class Refiner {
public:
    Refiner(Triangulation& mesh, const SizeField& sizes, int most)
        : mesh_(mesh), sizes_(sizes), most_(most), wanted_(sineSquaredOfDeg(kWantedDeg))
    {
    }

    void run()
    {
        for (int at = 0; at < int(mesh_.triangles().size()); ++at) look(at);
        long budget = 20L * long(mesh_.triangles().size()) + 1000;
        while (!queue_.empty() && --budget > 0 && int(mesh_.sites().size()) < most_) {
            std::pop_heap(queue_.begin(), queue_.end());
            const Suspect worst = queue_.back();
            queue_.pop_back();
            const Triangle& t = mesh_.triangle(worst.triangle);
            if (!t.alive() || t.corner != worst.corner) continue;
            mend(worst.triangle);
        }
    }

private:
    Point point(int site) const { return pointOf(mesh_.site(site)); }

    /// Queues the triangle if it is bad and can be better.
    void look(int at)
    {
        const Triangle& t = mesh_.triangle(at);
        if (!t.alive() || !t.inside) return;
        const Point a = point(t.corner[0]), b = point(t.corner[1]), c = point(t.corner[2]);
        const double sine2 = leastSineSquared(a, b, c);
        const Point centre = (a + b + c) * (1.0 / 3.0);
        const double twice = std::max(cross(b - a, c - a), 1e-9);
        const double radius = length(b - a) * length(c - b) * length(a - c) / (2.0 * twice);
        double badness = 0.0;
        if (sine2 < wanted_ && !ownCorner(t)) badness = 1.0 + wanted_ / std::max(sine2, 1e-12);
        const double largeMm = kLargeShare * sizes_.at(centre);
        if (badness == 0.0 && radius > largeMm) badness = std::min(0.99, radius / largeMm * 0.1);
        if (badness == 0.0) return;
        queue_.push_back({t.corner, at, badness});
        std::push_heap(queue_.begin(), queue_.end());
    }

    /// The thin angle is the domain's own: between two of its edges.
    bool ownCorner(const Triangle& t) const
    {
        int shortest = 0;
        double least = 0.0;
        for (int i = 0; i < 3; ++i) {
            const double mm = distance(point(t.corner[kNext[i]]), point(t.corner[kBefore[i]]));
            if (i == 0 || mm < least) {
                least = mm;
                shortest = i;
            }
        }
        return t.kind[kNext[shortest]] == EdgeKind::boundary && t.kind[kBefore[shortest]] == EdgeKind::boundary;
    }

    void lookAround(int site)
    {
        mesh_.star(site, star_);
        for (const int at : star_) look(at);
    }

    void mend(int at)
    {
        const Triangle t = mesh_.triangle(at);
        const Point a = point(t.corner[0]), b = point(t.corner[1]), c = point(t.corner[2]);
        const Point u = b - a, v = c - a;
        const double twice = 2.0 * cross(u, v);
        if (twice <= 0.0) return;
        const Point centre = a + Point{v.y * dot(u, u) - u.y * dot(v, v), u.x * dot(v, v) - v.x * dot(u, u)} *
                                     (1.0 / twice);
        // Walk to the centre; an edge that must not be crossed is in its way and gets split.
        Point p = nearer(a, b, c, centre);
        int in = at;
        int blockedBy = -1;
        for (int steps = 0; steps < 200; ++steps) {
            const Triangle& w = mesh_.triangle(in);
            const Site target = siteOf(p);
            int leave = -1;
            for (int i = 0; i < 3; ++i)
                if (turn(mesh_.site(w.corner[kNext[i]]), mesh_.site(w.corner[kBefore[i]]), target) < 0) leave = i;
            if (leave < 0) break;
            if (w.kind[leave] != EdgeKind::free) {
                blockedBy = leave;
                break;
            }
            in = w.neighbour[leave];
        }
        if (blockedBy >= 0) {
            splitOrRelease(in, blockedBy, at, t);
            return;
        }
        const Site site = siteOf(p);
        const Cavity& cavity = mesh_.cavity(site, in);
        if (cavity.rim.empty()) return;
        const double floorMm = kFloorShare * sizes_.at(p);
        for (const RimEdge& e : cavity.rim)
            if (e.kind != EdgeKind::free && facing(site, mesh_.site(e.from), mesh_.site(e.to)) < 0) {
                const auto [on, edge] = mesh_.edgeBetween(e.from, e.to);
                splitOrRelease(on, edge, at, t);
                return;
            }
        for (const RimEdge& e : cavity.rim)
            if (distance(point(e.from), p) < floorMm) return;
        lookAround(mesh_.fill(site));
    }

    /// Nearer to the shortest side than the centre of the circle, where that still mends the angle: fewer points
    /// (off-centres, Ungor 2004).
    static Point nearer(Point a, Point b, Point c, Point centre)
    {
        const double ab = distance(a, b), bc = distance(b, c), ca = distance(c, a);
        Point from = a, to = b;
        double least = ab;
        if (bc < least) { from = b; to = c; least = bc; }
        if (ca < least) { from = c; to = a; least = ca; }
        const Point middle = (from + to) * 0.5;
        const double awayMm = distance(middle, centre);
        constexpr double kRadians = (kWantedDeg + 2.0) * 3.14159265358979323846 / 180.0;
        const double offMm = 0.5 * least / std::tan(0.5 * kRadians);
        return awayMm > offMm ? middle + (centre - middle) * (offMm / awayMm) : centre;
    }

    /// Splits at the middle; near a sharp corner at a power of two from it, so that the edges on both sides of it end
    /// at the same distance and do not go on splitting each other.
    int split(int in, int edge, int a, int b)
    {
        const bool sharpA = isSharp(a, b), sharpB = isSharp(b, a);
        if (sharpA == sharpB) return mesh_.split(in, edge);
        const Point from = point(sharpA ? a : b), to = point(sharpA ? b : a);
        const double lengthMm = distance(from, to);
        const double shellMm = std::exp2(std::round(std::log2(0.5 * lengthMm)));
        return mesh_.splitAt(in, edge, siteOf(from + (to - from) * (shellMm / lengthMm)));
    }

    /// Whether another edge of a boundary or line leaves `at` within 60 degrees of the one to `end`.
    bool isSharp(int at, int end)
    {
        const Point mine = point(end) - point(at);
        mesh_.star(at, star_);
        for (const int in : star_) {
            const Triangle& t = mesh_.triangle(in);
            const int i = t.indexOfCorner(at);
            if (t.kind[kBefore[i]] == EdgeKind::free || t.corner[kNext[i]] == end) continue;
            const Point theirs = point(t.corner[kNext[i]]) - point(at);
            if (dot(mine, theirs) > 0.5 * length(mine) * length(theirs)) return true;
        }
        return false;
    }

    /// Splits the edge, or gives it up where it is a short piece of a line; then looks at the triangle again.
    void splitOrRelease(int in, int edge, int at, const Triangle& before)
    {
        const Triangle t = mesh_.triangle(in);
        const int a = t.corner[kNext[edge]], b = t.corner[kBefore[edge]];
        const Point middle = (point(a) + point(b)) * 0.5;
        int site = -1;
        if (distance(point(a), point(b)) >= 2.0 * kFloorShare * sizes_.at(middle)) site = split(in, edge, a, b);
        if (site >= 0) {
            lookAround(site);
        } else if (t.kind[edge] == EdgeKind::line) {
            mesh_.release(in, edge);
            lookAround(a);
            lookAround(b);
        } else {
            return;
        }
        if (mesh_.triangle(at).alive() && mesh_.triangle(at).corner == before.corner) look(at);
    }

    Triangulation& mesh_;
    const SizeField& sizes_;
    int most_ = 0;
    double wanted_ = 0.0;
    std::vector<Suspect> queue_;
    std::vector<int> star_;
};

}  // namespace

void refine(Triangulation& mesh, const SizeField& sizes, int most)
{
    Refiner(mesh, sizes, most).run();
}

}  // namespace yardcast::fem
