#include "core/exports/planar_cells.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "core/fem/triangulation.h"

namespace yardcast {

namespace {

using fem::EdgeKind;
using fem::Site;
using fem::Triangle;
using fem::Triangulation;

/// Half as much again as a step of the lattice of triangulations: what is farther apart is told apart there.
constexpr double kNearMm = 1.5 / fem::kSitesPerMm;
constexpr int kMostPasses = 8;

/// Gives near points one number.
class PointNumbers {
public:
    explicit PointNumbers(Point centre) : centre_(centre) {}

    int numberOf(Point p)
    {
        const std::int64_t x = cell(p.x - centre_.x);
        const std::int64_t y = cell(p.y - centre_.y);
        for (std::int64_t dx = -1; dx <= 1; ++dx) {
            for (std::int64_t dy = -1; dy <= 1; ++dy) {
                const auto found = inCell_.find({x + dx, y + dy});
                if (found == inCell_.end()) continue;
                for (const int number : found->second) {
                    if (distance(points[std::size_t(number)], p) < kNearMm) return number;
                }
            }
        }
        const int number = int(points.size());
        points.push_back(p);
        inCell_[{x, y}].push_back(number);
        return number;
    }

    std::vector<Point> points;

private:
    static std::int64_t cell(double mm) { return std::int64_t(std::floor(mm / kNearMm)); }

    Point centre_;
    std::map<std::pair<std::int64_t, std::int64_t>, std::vector<int>> inCell_;
};

using Chain = std::vector<int>;  // numbers of points, closed

/// The chain with the points that lie on its sides put in; true where there were any.
bool splitAtPoints(Chain& chain, const std::vector<Point>& points)
{
    Chain split;
    bool changed = false;
    for (std::size_t i = 0; i < chain.size(); ++i) {
        const int from = chain[i];
        const int to = chain[(i + 1) % chain.size()];
        const Point a = points[std::size_t(from)];
        const Point b = points[std::size_t(to)];
        split.push_back(from);
        if (from == to) continue;
        const double span = distance(a, b);
        std::vector<std::pair<double, int>> between;
        for (int k = 0; k < int(points.size()); ++k) {
            const Point p = points[std::size_t(k)];
            if (k == from || k == to) continue;
            if (p.x < std::min(a.x, b.x) - kNearMm || p.x > std::max(a.x, b.x) + kNearMm) continue;
            if (p.y < std::min(a.y, b.y) - kNearMm || p.y > std::max(a.y, b.y) + kNearMm) continue;
            if (std::abs(cross(b - a, p - a)) >= kNearMm * span) continue;
            const double along = dot(b - a, p - a) / span;
            if (along > 0.0 && along < span) between.push_back({along, k});
        }
        std::sort(between.begin(), between.end());
        for (const auto& [along, number] : between) split.push_back(number);
        changed = changed || !between.empty();
    }
    chain = std::move(split);
    return changed;
}

std::optional<Box> boundsOfAll(const std::vector<Region>& regions)
{
    std::optional<Box> all;
    for (const Region& region : regions) {
        const std::optional<Box> box = boundsOf(region);
        if (!box) continue;
        if (!all) all = box;
        all->low = {std::min(all->low.x, box->low.x), std::min(all->low.y, box->low.y)};
        all->high = {std::max(all->high.x, box->high.x), std::max(all->high.y, box->high.y)};
    }
    return all;
}

/// Borders of the cells from the chains of each; false where one side of a border belongs to two cells.
bool addBorders(PlanarCells& cells, const std::vector<std::vector<Chain>>& chainsOf)
{
    for (std::size_t cell = 0; cell < chainsOf.size(); ++cell) {
        std::map<std::pair<int, int>, int> runs;  // how often along the border, less how often back
        for (const Chain& chain : chainsOf[cell]) {
            for (std::size_t i = 0; i < chain.size(); ++i) {
                const int a = chain[i];
                const int b = chain[(i + 1) % chain.size()];
                if (a != b) runs[{std::min(a, b), std::max(a, b)}] += a < b ? 1 : -1;
            }
        }
        for (const auto& [ends, count] : runs) {
            if (count == 0) continue;
            if (std::abs(count) > 1) return false;
            PlanarCells::Border& border = cells.borders[ends];
            int& side = count > 0 ? border.left : border.right;
            if (side >= 0) return false;
            side = int(cell);
        }
    }
    return true;
}

/// Triangulates, and gives each triangle its cell, spreading from the borders.
bool addTriangles(PlanarCells& cells, Box bounds)
{
    const Point centre = bounds.centre();
    const double margin = 1.0 + 0.05 * std::max(bounds.width(), bounds.height());
    const Point half{bounds.width() / 2 + margin, bounds.height() / 2 + margin};
    const Point corner = half + Point{margin, margin};
    Triangulation mesh(fem::siteOf(corner * -1.0), fem::siteOf(corner), int(cells.points.size()) + 4);
    // A fence: the triangulation cannot take edges away from the corners of its own rectangle to let a border through.
    std::array<int, 4> fence{};
    for (std::size_t i = 0; i < 4; ++i) {
        const Point p{i == 0 || i == 3 ? -half.x : half.x, i < 2 ? -half.y : half.y};
        fence[i] = mesh.insert(fem::siteOf(p), 0);
    }
    for (std::size_t i = 0; i < 4; ++i) {
        if (!mesh.constrain(fence[i], fence[(i + 1) % 4], EdgeKind::boundary)) return false;
    }
    std::vector<int> siteOf(cells.points.size(), -1);
    std::map<int, int> pointAt;
    int last = 0;
    for (const auto& [ends, border] : cells.borders) {
        for (const int end : {ends.first, ends.second}) {
            int& site = siteOf[std::size_t(end)];
            if (site >= 0) continue;
            site = mesh.insert(fem::siteOf(cells.points[std::size_t(end)] - centre), last);
            if (site < 0 || !pointAt.insert({site, end}).second) return false;
            last = mesh.triangleAt(site);
        }
    }
    for (const auto& [ends, border] : cells.borders) {
        if (!mesh.constrain(siteOf[std::size_t(ends.first)], siteOf[std::size_t(ends.second)], EdgeKind::boundary))
            return false;
    }
    mesh.makeDelaunay();

    constexpr int kUnknown = -2;
    std::vector<int> label(mesh.triangles().size(), kUnknown);
    std::vector<int> open;
    const auto give = [&](int triangle, int cell) {
        int& known = label[std::size_t(triangle)];
        if (known == kUnknown) {
            known = cell;
            open.push_back(triangle);
        }
        return known == cell;
    };
    for (const auto& [ends, border] : cells.borders) {
        const int from = siteOf[std::size_t(ends.first)];
        const auto [triangle, edge] = mesh.edgeBetween(from, siteOf[std::size_t(ends.second)]);
        if (triangle < 0) return false;
        const Triangle& t = mesh.triangle(triangle);
        const int across = t.neighbour[std::size_t(edge)];
        const bool onLeft = t.corner[std::size_t((edge + 1) % 3)] == from;
        if (!give(triangle, onLeft ? border.left : border.right)) return false;
        if (across >= 0 && !give(across, onLeft ? border.right : border.left)) return false;
    }
    while (!open.empty()) {
        const int triangle = open.back();
        open.pop_back();
        const Triangle& t = mesh.triangle(triangle);
        for (std::size_t i = 0; i < 3; ++i) {
            if (t.neighbour[i] < 0 || t.kind[i] == EdgeKind::boundary) continue;
            if (!give(t.neighbour[i], label[std::size_t(triangle)])) return false;
        }
    }
    for (std::size_t i = 0; i < mesh.triangles().size(); ++i) {
        const Triangle& t = mesh.triangles()[i];
        if (!t.alive() || label[i] < 0) continue;
        std::array<int, 3> corners{};
        for (std::size_t k = 0; k < 3; ++k) {
            const auto at = pointAt.find(t.corner[k]);
            if (at == pointAt.end()) return false;
            corners[k] = at->second;
        }
        cells.triangles.push_back(corners);
        cells.cellOf.push_back(label[i]);
    }
    return true;
}

}  // namespace

std::optional<PlanarCells> planarCells(const std::vector<Region>& regions)
{
    const std::optional<Box> bounds = boundsOfAll(regions);
    const double most = 0.4 * double(fem::kFarthestSite) / fem::kSitesPerMm;
    if (!bounds || !(bounds->width() < most) || !(bounds->height() < most)) return {};
    PointNumbers numbers(bounds->centre());
    std::vector<std::vector<Chain>> chainsOf;
    for (const Region& region : regions) {
        std::vector<Chain>& chains = chainsOf.emplace_back();
        const auto add = [&](const Ring& ring, bool counterClockwise) {
            Chain chain;
            for (const Point p : ring) chain.push_back(numbers.numberOf(p));
            if ((signedArea(ring) > 0.0) != counterClockwise) std::reverse(chain.begin(), chain.end());
            chains.push_back(std::move(chain));
        };
        for (const Polygon& polygon : region) {
            add(polygon.outer, true);
            for (const Ring& hole : polygon.holes) add(hole, false);
        }
    }
    bool changed = true;
    for (int pass = 0; changed && pass < kMostPasses; ++pass) {
        changed = false;
        for (std::vector<Chain>& chains : chainsOf) {
            for (Chain& chain : chains) changed = splitAtPoints(chain, numbers.points) || changed;
        }
    }
    PlanarCells cells;
    cells.points = numbers.points;
    if (changed || !addBorders(cells, chainsOf) || cells.borders.empty()) return {};
    if (!addTriangles(cells, *bounds)) return {};
    return cells;
}

}  // namespace yardcast
