#include "core/fem/seeds.h"

#include <cmath>
#include <numbers>
#include <vector>

namespace yardcast::fem {

namespace {

/// How often the lattice may be halved: 1/32 is finer than the least size that is asked for.
constexpr int kLevels = 5;
/// Seeds keep this share of the size off other nodes (the lattice's own pitch is 0.71 to 1.41 of it).
constexpr double kOffNodes = 0.62;
constexpr double kOffEdges = 0.5;
/// An edge that spans a strip of two elements is at most this long, in sizes.
constexpr double kSpanSizes = 2.5;

class Seeder {
public:
    Seeder(Triangulation& mesh, const SizeField& sizes, Point centre, Point direction, int most)
        : mesh_(mesh), sizes_(sizes), centre_(centre), most_(most)
    {
        const double pitchMm = sizes.sizeMm() / (1 << kLevels);
        right_ = direction * (pitchMm / length(direction));
        up_ = right_ * 0.5 + leftNormal(right_) * (std::numbers::sqrt3 / 2.0);
    }

    /// Middles of edges that span a strip from boundary to boundary: a row of nodes along it, wherever the rows of the
    /// lattice happen to lie.
    void halveStrips()
    {
        std::vector<char> onBoundary(mesh_.sites().size(), 0);
        for (const Triangle& t : mesh_.triangles())
            for (int i = 0; t.alive() && i < 3; ++i)
                if (t.kind[i] == EdgeKind::boundary)
                    onBoundary[std::size_t(t.corner[(i + 1) % 3])] = onBoundary[std::size_t(t.corner[(i + 2) % 3])] = 1;
        std::vector<Point> middles;
        for (int at = 0; at < int(mesh_.triangles().size()); ++at) {
            const Triangle& t = mesh_.triangle(at);
            for (int i = 0; t.alive() && t.inside && i < 3; ++i) {
                const int a = t.corner[(i + 1) % 3], b = t.corner[(i + 2) % 3];
                if (t.neighbour[i] < at || t.kind[i] != EdgeKind::free) continue;
                if (!onBoundary[std::size_t(a)] || !onBoundary[std::size_t(b)]) continue;
                const Point p = pointOf(mesh_.site(a)), q = pointOf(mesh_.site(b));
                const Point middle = (p + q) * 0.5;
                if (distance(p, q) < kSpanSizes * sizes_.at(middle)) middles.push_back(middle);
            }
        }
        for (const Point p : middles) put(p);
    }

    bool run(Box bounds)
    {
        const Point middle = bounds.centre();
        const double reach = 0.5 * std::hypot(bounds.width(), bounds.height()) + sizes_.sizeMm() +
                             distance(middle, centre_);
        const double rowMm = sizes_.sizeMm() * std::numbers::sqrt3 / 2.0;
        const double rows = std::ceil(reach / rowMm);
        const double columns = std::ceil(reach / sizes_.sizeMm()) + 1.0;
        const double halfX = 0.5 * bounds.width() + 2.0 * sizes_.sizeMm();
        const double halfY = 0.5 * bounds.height() + 2.0 * sizes_.sizeMm();
        if (rows * columns > 4e6) return false;
        const int step = 1 << kLevels;
        for (int row = -int(rows); row <= int(rows); ++row) {
            for (int k = -int(columns); k <= int(columns); ++k) {
                const int i = (k - int(std::floor(row / 2.0))) * step, j = row * step;
                const Point p = at(i, j) - middle;
                if (std::abs(p.x) > halfX || std::abs(p.y) > halfY) continue;
                put(at(i, j));
                visit(i, j, step);
                visit(i + step, j + step, -step);
                if (int(mesh_.sites().size()) > most_) return false;
            }
        }
        return true;
    }

private:
    Point at(int i, int j) const { return centre_ + right_ * i + up_ * j; }

    /// A triangle of the lattice with its corner at (i, j) and sides of `step`; upside down where that is negative.
    void visit(int i, int j, int step)
    {
        const int half = step / 2;
        if (half == 0) return;
        const double sideMm = sizes_.sizeMm() * std::abs(step) / (1 << kLevels);
        const double wanted = 0.5 * sideMm * std::numbers::sqrt2;
        const Point centre = (at(i, j) + at(i + step, j) + at(i, j + step)) * (1.0 / 3.0);
        if (sizes_.at(centre) - sizes_.growth() * sideMm / std::numbers::sqrt3 > wanted) return;
        if (int(mesh_.sites().size()) > most_) return;
        if (step > 0) {  // every side belongs to one triangle that stands upright
            for (const Point p : {at(i + half, j), at(i, j + half), at(i + half, j + half)})
                if (sizes_.at(p) <= wanted) put(p);
        }
        visit(i, j, half);
        visit(i + half, j, half);
        visit(i, j + half, half);
        visit(i + half, j + half, -half);
    }

    void put(Point p)
    {
        const Site site = siteOf(p);
        if (!mesh_.insideRectangle(site)) return;
        const int in = mesh_.locate(site, last_);
        if (in < 0) return;
        last_ = in;
        if (!mesh_.triangle(in).inside) return;
        const double sizeMm = sizes_.at(p);
        const Cavity& cavity = mesh_.cavity(site, in);
        if (cavity.rim.empty()) return;
        const double nodeMm2 = kOffNodes * kOffNodes * sizeMm * sizeMm;
        for (const RimEdge& e : cavity.rim) {
            const Point a = pointOf(mesh_.site(e.from));
            const Point away = a - p;
            if (dot(away, away) < nodeMm2) return;
            if (e.kind == EdgeKind::free) continue;
            if (facing(site, mesh_.site(e.from), mesh_.site(e.to)) < 0) return;
            if (distanceToSegment(p, a, pointOf(mesh_.site(e.to))) < kOffEdges * sizeMm) return;
        }
        last_ = mesh_.triangleAt(mesh_.fill(site));
    }

    Triangulation& mesh_;
    const SizeField& sizes_;
    Point centre_;
    Point right_;
    Point up_;
    int most_ = 0;
    int last_ = 0;
};

}  // namespace

bool addSeeds(Triangulation& mesh, const SizeField& sizes, Box bounds, Point centre, Point direction, int most)
{
    Seeder seeder(mesh, sizes, centre, direction, most);
    seeder.halveStrips();
    return seeder.run(bounds);
}

}  // namespace yardcast::fem
