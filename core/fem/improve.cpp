#include "core/fem/improve.h"

#include <algorithm>
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

void smooth(Triangulation& mesh, int sweeps)
{
    std::vector<int> star;
    for (int sweep = 0; sweep < sweeps; ++sweep) {
        for (int site = 4; site < int(mesh.sites().size()); ++site) {
            if (mesh.triangleAt(site) < 0) continue;
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

}  // namespace yardcast::fem
