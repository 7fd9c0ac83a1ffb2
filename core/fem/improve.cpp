#include "core/fem/improve.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/fem/quality.h"

namespace yardcast::fem {

namespace {

constexpr std::array<int, 3> kNext{1, 2, 0};
constexpr std::array<int, 3> kBefore{2, 0, 1};

/// The nodes round a site, and the least angle about it when it stands at p.
double leastAbout(const Triangulation& mesh, const std::vector<int>& star, int site, Point p)
{
    double least = 1.0;
    for (const int at : star) {
        const Triangle& t = mesh.triangle(at);
        const int i = t.indexOfCorner(site);
        least = std::min(least, leastSineSquared(p, pointOf(mesh.site(t.corner[kNext[i]])),
                                                 pointOf(mesh.site(t.corner[kBefore[i]]))));
    }
    return least;
}

bool isFree(const Triangulation& mesh, const std::vector<int>& star, int site)
{
    return std::ranges::all_of(star, [&](int at) {
        const Triangle& t = mesh.triangle(at);
        return t.inside && t.kind[kNext[t.indexOfCorner(site)]] == EdgeKind::free;
    });
}

}  // namespace

void smooth(Triangulation& mesh, int sweeps, const std::vector<int>& kept)
{
    std::vector<char> stays(mesh.sites().size(), 0);
    for (const int site : kept) stays[std::size_t(site)] = 1;
    std::vector<int> star;
    for (int sweep = 0; sweep < sweeps; ++sweep) {
        for (int site = 4; site < int(mesh.sites().size()); ++site) {
            if (stays[std::size_t(site)] || mesh.triangleAt(site) < 0) continue;
            mesh.star(site, star);
            if (!isFree(mesh, star, site)) continue;
            Point middle;
            for (const int at : star) {
                const Triangle& t = mesh.triangle(at);
                middle = middle + pointOf(mesh.site(t.corner[kNext[t.indexOfCorner(site)]]));
            }
            const Site to = siteOf(middle * (1.0 / double(star.size())));
            const double now = leastAbout(mesh, star, site, pointOf(mesh.site(site)));
            if (leastAbout(mesh, star, site, pointOf(to)) > now) mesh.move(site, to);
        }
        mesh.makeDelaunay();
    }
}

namespace {

/// Triangles under this angle are mended; the promise is 15 degrees.
constexpr double kThinDeg = 20.0;
constexpr int kPasses = 4;

class Mender {
public:
    explicit Mender(Triangulation& mesh) : mesh_(mesh), thin_(sineSquaredOfDeg(kThinDeg)) {}

    void run()
    {
        for (int pass = 0; pass < kPasses; ++pass) {
            bool changed = false;
            for (int at = 0; at < int(mesh_.triangles().size()); ++at)
                if (isThin(at)) changed = mend(at) || changed;
            if (!changed) return;
        }
    }

private:
    Point point(int site) const { return pointOf(mesh_.site(site)); }
    double quality(const Triangle& t) const
    {
        return leastSineSquared(point(t.corner[0]), point(t.corner[1]), point(t.corner[2]));
    }
    bool isThin(int at) const
    {
        const Triangle& t = mesh_.triangle(at);
        return t.alive() && t.inside && quality(t) < thin_;
    }

    bool mend(int at)
    {
        bool changed = false;
        for (int i = 0; i < 3; ++i) {
            if (mesh_.triangle(at).kind[i] != EdgeKind::line) continue;
            mesh_.release(at, i);
            changed = true;
            if (!isThin(at)) return true;
        }
        const std::array<int, 3> corners = mesh_.triangle(at).corner;
        for (const int site : corners) {
            if (mesh_.triangle(at).corner != corners || !isThin(at)) return true;
            changed = move(site) || changed;
        }
        if (mesh_.triangle(at).corner != corners || !isThin(at)) return changed;
        for (const int site : corners)
            if (takeOut(site)) return true;
        return changed;
    }

    /// Least quality of the inside triangles about the site when it stands at p; negative where any is turned over.
    double about(int site, Point p) const
    {
        double least = 1.0;
        for (const int at : star_) {
            const Triangle& t = mesh_.triangle(at);
            const int i = t.indexOfCorner(site);
            const Point a = point(t.corner[kNext[i]]), b = point(t.corner[kBefore[i]]);
            if (cross(a - p, b - p) <= 0.0) return -1.0;
            if (t.inside) least = std::min(least, leastSineSquared(p, a, b));
        }
        return least;
    }

    /// The ends of the two boundary edges at the site, when it has two.
    bool boundaryEnds(int site, std::array<int, 2>& ends) const
    {
        std::size_t count = 0;
        for (const int at : star_) {
            const Triangle& t = mesh_.triangle(at);
            const int i = t.indexOfCorner(site);
            if (t.kind[kBefore[i]] != EdgeKind::boundary) continue;
            if (count < 2) ends[count] = t.corner[kNext[i]];
            ++count;
        }
        return count == 2;
    }

    bool isInterior() const
    {
        return std::ranges::all_of(star_, [&](int at) { return mesh_.triangle(at).inside; });
    }

    bool touchesBoundary(int site) const
    {
        return std::ranges::any_of(star_, [&](int at) {
            const Triangle& t = mesh_.triangle(at);
            return t.kind[kNext[t.indexOfCorner(site)]] == EdgeKind::boundary;
        });
    }

    /// Looks for a better place: about the middle of the neighbours, or along a straight side.
    bool move(int site)
    {
        if (site < 4 || mesh_.triangleAt(site) < 0) return false;
        mesh_.star(site, star_);
        const Point now = point(site);
        std::vector<Point> places;
        if (!touchesBoundary(site)) {
            if (!isInterior()) return false;
            Point middle;
            double reachMm = 0.0;
            for (const int at : star_) {
                const Triangle& t = mesh_.triangle(at);
                const Point p = point(t.corner[kNext[t.indexOfCorner(site)]]);
                middle = middle + p * (1.0 / double(star_.size()));
                reachMm = std::max(reachMm, distance(p, now));
            }
            places = {middle, (middle + now) * 0.5};
            for (const double share : {0.1, 0.25})
                for (int k = 0; k < 8; ++k) {
                    const double angle = k * 0.78539816339744831;
                    places.push_back(now + Point{std::cos(angle), std::sin(angle)} * (share * reachMm));
                    places.push_back(middle + Point{std::cos(angle), std::sin(angle)} * (share * reachMm));
                }
        } else {
            std::array<int, 2> ends{};
            if (!boundaryEnds(site, ends)) return false;
            const Point a = point(ends[0]), b = point(ends[1]);
            if (distanceToSegment(now, a, b) > kOnSideMm) return false;
            for (const double share : {0.2, 0.35, 0.5, 0.65, 0.8}) places.push_back(a + (b - a) * share);
        }
        double best = about(site, now);
        const double before = best;
        Site to = mesh_.site(site);
        for (const Point p : places) {
            const double quality = about(site, pointOf(siteOf(p)));
            if (quality <= best) continue;
            best = quality;
            to = siteOf(p);
        }
        if (best <= before * 1.02) return false;
        mesh_.move(site, to);
        mesh_.makeDelaunayAbout(site);
        return true;
    }

    /// Takes an inner node out where the best fan over its star has no angle as small as the least there now.
    bool takeOut(int site)
    {
        if (site < 4 || mesh_.triangleAt(site) < 0) return false;
        mesh_.star(site, star_);
        if (touchesBoundary(site) || !isInterior()) return false;
        const double now = about(site, point(site));
        std::vector<int> ring;
        for (const int at : star_) {
            const Triangle& t = mesh_.triangle(at);
            ring.push_back(t.corner[kNext[t.indexOfCorner(site)]]);
        }
        int bestApex = -1;
        double best = std::max(now, 0.0);
        for (std::size_t k = 0; k < ring.size(); ++k) {
            double least = 1.0;
            for (std::size_t j = 1; j + 1 < ring.size(); ++j)
                least = std::min(least, leastSineSquared(point(ring[k]), point(ring[(k + j) % ring.size()]),
                                                         point(ring[(k + j + 1) % ring.size()])));
            if (least <= best) continue;
            best = least;
            bestApex = ring[k];
        }
        return bestApex >= 0 && mesh_.remove(site, bestApex);
    }

    static constexpr double kOnSideMm = 0.01;  // rounding of what lies on a slanting side

    Triangulation& mesh_;
    double thin_ = 0.0;
    std::vector<int> star_;
};

}  // namespace

void mendThin(Triangulation& mesh)
{
    Mender(mesh).run();
}

}  // namespace yardcast::fem
