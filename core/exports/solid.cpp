#include "core/exports/solid.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <numeric>
#include <tuple>
#include <utility>

#include "core/exports/planar_cells.h"

namespace yardcast {

namespace {

struct Span {
    double fromMm = 0.0;
    double toMm = 0.0;
};
using Spans = std::vector<Span>;

/// In order, those that touch joined.
Spans joined(Spans spans)
{
    std::sort(spans.begin(), spans.end(), [](Span a, Span b) { return a.fromMm < b.fromMm; });
    Spans result;
    for (const Span span : spans) {
        if (!(span.toMm > span.fromMm)) continue;
        if (!result.empty() && span.fromMm <= result.back().toMm) {
            result.back().toMm = std::max(result.back().toMm, span.toMm);
        } else {
            result.push_back(span);
        }
    }
    return result;
}

bool covers(const Spans& spans, double heightMm)
{
    return std::any_of(spans.begin(), spans.end(),
                       [&](Span s) { return s.fromMm < heightMm && heightMm < s.toMm; });
}

/// Where one of both is solid and the other is not: (span, the first one is solid).
std::vector<std::pair<Span, bool>> differences(const Spans& a, const Spans& b)
{
    std::vector<double> ends;
    for (const Spans* spans : {&a, &b}) {
        for (const Span s : *spans) ends.insert(ends.end(), {s.fromMm, s.toMm});
    }
    std::sort(ends.begin(), ends.end());
    std::vector<std::pair<Span, bool>> result;
    for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
        if (!(ends[i + 1] > ends[i])) continue;
        const double middle = (ends[i] + ends[i + 1]) / 2;
        const bool inA = covers(a, middle);
        if (inA == covers(b, middle)) continue;
        if (!result.empty() && result.back().second == inA && result.back().first.toMm == ends[i]) {
            result.back().first.toMm = ends[i + 1];
        } else {
            result.push_back({{ends[i], ends[i + 1]}, inA});
        }
    }
    return result;
}

/// The body round one point of the plan: sectors between borders, each of one cell, and the levels of those cells.
struct Corner {
    std::vector<double> anglesRad;  ///< of the borders that leave it, ascending; sector i lies after border i
    std::vector<int> cells;         ///< of sector i
    std::vector<double> levelsMm;
    /// Where parts meet along the vertical line only, each has a copy of its own: by level, then by the layer below or
    /// above it, then by sector. Empty: one copy serves all.
    std::vector<std::array<std::vector<int>, 2>> copyAt;
    std::vector<Point> moves;       ///< of each copy
};

class Builder {
public:
    Builder(const PlanarCells& cells, std::vector<Spans> spans) : cells_(cells), spans_(std::move(spans)) {}

    Solid build()
    {
        makeCorners();
        for (const auto& [ends, border] : cells_.borders) addWalls(ends.first, ends.second, border);
        for (std::size_t i = 0; i < cells_.triangles.size(); ++i) addCaps(cells_.triangles[i], cells_.cellOf[i]);
        return std::move(solid_);
    }

private:
    const Spans& spansOf(int cell) const
    {
        static const Spans none;
        return cell < 0 ? none : spans_[std::size_t(cell)];
    }
    Point at(int point) const { return cells_.points[std::size_t(point)]; }

    void makeCorners()
    {
        corners_.resize(cells_.points.size());
        struct Leaving { double angleRad; int cell; };
        std::vector<std::vector<Leaving>> leaving(cells_.points.size());
        const auto angle = [&](int from, int to) {
            const Point d = at(to) - at(from);
            return std::atan2(d.y, d.x);
        };
        for (const auto& [ends, border] : cells_.borders) {
            leaving[std::size_t(ends.first)].push_back({angle(ends.first, ends.second), border.left});
            leaving[std::size_t(ends.second)].push_back({angle(ends.second, ends.first), border.right});
        }
        for (std::size_t i = 0; i < corners_.size(); ++i) {
            Corner& corner = corners_[i];
            std::sort(leaving[i].begin(), leaving[i].end(),
                      [](const Leaving& a, const Leaving& b) { return a.angleRad < b.angleRad; });
            for (const Leaving& l : leaving[i]) {
                corner.anglesRad.push_back(l.angleRad);
                corner.cells.push_back(l.cell);
                for (const Span s : spansOf(l.cell)) corner.levelsMm.insert(corner.levelsMm.end(), {s.fromMm, s.toMm});
            }
            std::sort(corner.levelsMm.begin(), corner.levelsMm.end());
            corner.levelsMm.erase(std::unique(corner.levelsMm.begin(), corner.levelsMm.end()), corner.levelsMm.end());
            if (corner.cells.size() > 3) splitPinched(corner);
        }
    }

    bool isSolid(const Corner& corner, std::size_t sector, std::size_t layer) const
    {
        return covers(spansOf(corner.cells[sector]), (corner.levelsMm[layer] + corner.levelsMm[layer + 1]) / 2);
    }

    /// Numbers for the parts of one layer that hang together round the corner, -1 where it is empty.
    std::vector<int> partsOf(const Corner& corner, std::size_t layer) const
    {
        const std::size_t sectors = corner.cells.size();
        std::vector<int> part(sectors, -1);
        int count = 0;
        for (std::size_t i = 0; i < sectors; ++i) {
            if (!isSolid(corner, i, layer)) continue;
            part[i] = i > 0 && part[i - 1] >= 0 ? part[i - 1] : count++;
        }
        if (count > 1 && part.front() >= 0 && part.back() >= 0)
            std::replace(part.begin(), part.end(), int(part.back()), int(part.front()));
        return part;
    }

    static int countOf(std::vector<int> parts)
    {
        std::sort(parts.begin(), parts.end());
        parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
        return int(parts.size()) - (!parts.empty() && parts.front() < 0 ? 1 : 0);
    }

    /// Copies for the parts that meet along the vertical line at the corner only.
    void splitPinched(Corner& corner) const
    {
        const std::size_t sectors = corner.cells.size();
        const std::size_t layers = corner.levelsMm.empty() ? 0 : corner.levelsMm.size() - 1;
        std::vector<std::vector<int>> parts;
        bool pinched = false;
        for (std::size_t k = 0; k < layers; ++k) {
            parts.push_back(partsOf(corner, k));
            pinched = pinched || countOf(parts.back()) > 1;
        }
        if (!pinched) return;
        const std::vector<int> nothing(sectors, -1);
        for (std::size_t level = 0; level <= layers; ++level) {
            std::array<std::vector<int>, 2> copy{level > 0 ? parts[level - 1] : nothing,
                                                 level < layers ? parts[level] : nothing};
            for (int& number : copy[1]) number += number >= 0 ? int(sectors) : 0;
            for (bool changed = true; changed;) {  // what is solid below and above hangs together
                changed = false;
                for (std::size_t i = 0; i < sectors; ++i) {
                    const int below = copy[0][i];
                    const int above = copy[1][i];
                    if (below < 0 || above < 0 || below == above) continue;
                    for (std::vector<int>& side : copy) std::replace(side.begin(), side.end(), above, below);
                    changed = true;
                }
            }
            std::vector<int> all = copy[0];
            all.insert(all.end(), copy[1].begin(), copy[1].end());
            const bool alone = countOf(all) <= 1;
            const std::array<std::vector<int>, 2> old = copy;
            std::map<int, int> renumbered;
            for (std::size_t side = 0; side < 2; ++side) {
                for (std::size_t i = 0; i < sectors; ++i) {
                    const int number = old[side][i];
                    if (number < 0) continue;
                    const auto [found, isNew] = renumbered.insert({number, int(corner.moves.size())});
                    if (isNew) corner.moves.push_back(alone ? Point{} : inwards(corner, old, number));
                    copy[side][i] = found->second;
                }
            }
            corner.copyAt.push_back(std::move(copy));
        }
    }

    /// Into the middle of the sectors of one copy.
    static Point inwards(const Corner& corner, const std::array<std::vector<int>, 2>& copy, int number)
    {
        Point sum;
        for (std::size_t i = 0; i < corner.cells.size(); ++i) {
            if (copy[0][i] != number && copy[1][i] != number) continue;
            const double from = corner.anglesRad[i];
            const double to = corner.anglesRad[(i + 1) % corner.anglesRad.size()];
            sum = sum + Point{std::sin(to) - std::sin(from), std::cos(from) - std::cos(to)};
        }
        return length(sum) > 0.0 ? sum * (kPinchMm / length(sum)) : Point{};
    }

    /// The point at this height, on the body that fills `sector` just above the height (or just below it).
    int pointAt(int point, double heightMm, std::size_t sector, bool above)
    {
        const Corner& corner = corners_[std::size_t(point)];
        int copy = 0;
        Point place = at(point);
        if (!corner.copyAt.empty()) {
            const auto level = std::lower_bound(corner.levelsMm.begin(), corner.levelsMm.end(), heightMm);
            copy = corner.copyAt[std::size_t(level - corner.levelsMm.begin())][above ? 1 : 0][sector];
            if (copy >= 0) place = place + corner.moves[std::size_t(copy)];
        }
        const auto [found, isNew] = numbers_.insert({{point, heightMm, copy}, int(solid_.points.size())});
        if (isNew) solid_.points.push_back({place.x, place.y, heightMm});
        return found->second;
    }

    /// The sector that follows the border from `point` to `other` counter-clockwise.
    std::size_t sectorAfter(int point, int other) const
    {
        const Corner& corner = corners_[std::size_t(point)];
        const Point d = at(other) - at(point);
        const auto found = std::lower_bound(corner.anglesRad.begin(), corner.anglesRad.end(), std::atan2(d.y, d.x));
        return std::size_t(found - corner.anglesRad.begin());
    }
    std::size_t sectorBefore(int point, int other) const
    {
        const std::size_t count = corners_[std::size_t(point)].cells.size();
        return (sectorAfter(point, other) + count - 1) % count;
    }
    /// The sector that a triangle lies in, by the direction of its middle.
    std::size_t sectorTowards(int point, Point middle) const
    {
        const Corner& corner = corners_[std::size_t(point)];
        const Point d = middle - at(point);
        const auto found = std::upper_bound(corner.anglesRad.begin(), corner.anglesRad.end(), std::atan2(d.y, d.x));
        const std::size_t count = corner.cells.size();
        return (std::size_t(found - corner.anglesRad.begin()) + count - 1) % count;
    }

    void addWalls(int a, int b, const PlanarCells::Border& border)
    {
        for (const auto& [span, leftSolid] : differences(spansOf(border.left), spansOf(border.right))) {
            // Seen from outside, `from` is on the left.
            const int from = leftSolid ? a : b;
            const int to = leftSolid ? b : a;
            const std::vector<int> rising = column(from, span, sectorAfter(from, to));
            const std::vector<int> across = column(to, span, sectorBefore(to, from));
            std::size_t i = 0;
            std::size_t j = 0;
            while (i + 1 < rising.size() || j + 1 < across.size()) {
                const bool left = j + 1 == across.size() ||
                                  (i + 1 < rising.size() && height(rising[i + 1]) < height(across[j + 1]));
                const int next = left ? rising[i + 1] : across[j + 1];
                solid_.triangles.push_back({rising[i], across[j], next});
                ++(left ? i : j);
            }
        }
    }

    double height(int point) const { return solid_.points[std::size_t(point)][2]; }

    /// The points above one another of a wall's side.
    std::vector<int> column(int point, Span span, std::size_t sector)
    {
        const std::vector<double> levels = corners_[std::size_t(point)].levelsMm;
        std::vector<int> result;
        for (const double level : levels) {
            if (level < span.fromMm || level > span.toMm) continue;
            result.push_back(pointAt(point, level, sector, level < span.toMm));
        }
        return result;
    }

    void addCaps(const std::array<int, 3>& triangle, int cell)
    {
        const Point middle = (at(triangle[0]) + at(triangle[1]) + at(triangle[2])) * (1.0 / 3.0);
        std::array<std::size_t, 3> sectors{};
        for (std::size_t i = 0; i < 3; ++i) sectors[i] = sectorTowards(triangle[i], middle);
        const auto corner = [&](std::size_t i, double heightMm, bool above) {
            return pointAt(triangle[i], heightMm, sectors[i], above);
        };
        for (const Span span : spansOf(cell)) {
            solid_.triangles.push_back(
                {corner(0, span.toMm, false), corner(1, span.toMm, false), corner(2, span.toMm, false)});
            solid_.triangles.push_back(
                {corner(0, span.fromMm, true), corner(2, span.fromMm, true), corner(1, span.fromMm, true)});
        }
    }

    struct Key {
        int point;
        double heightMm;
        int copy;
        friend bool operator<(const Key& a, const Key& b)
        {
            return std::tie(a.point, a.heightMm, a.copy) < std::tie(b.point, b.heightMm, b.copy);
        }
    };

    const PlanarCells& cells_;
    std::vector<Spans> spans_;
    std::vector<Corner> corners_;
    std::map<Key, int> numbers_;
    Solid solid_;
};

double angleRad(Point p, Point middle) { return std::atan2(p.y - middle.y, p.x - middle.x); }

/// The ring, counter-clockwise, from its point of the lowest angle about `middle`; nothing where it does not go round
/// once.
std::optional<Ring> fromLowestAngle(Ring ring, Point middle)
{
    if (ring.size() < 3) return {};
    if (signedArea(ring) < 0.0) std::reverse(ring.begin(), ring.end());
    const auto lowest = std::min_element(ring.begin(), ring.end(), [&](Point a, Point b) {
        return angleRad(a, middle) < angleRad(b, middle);
    });
    std::rotate(ring.begin(), lowest, ring.end());
    for (std::size_t i = 0; i < ring.size(); ++i) {
        if (i > 0 && !(angleRad(ring[i], middle) > angleRad(ring[i - 1], middle))) return {};
        if (!(cross(ring[i] - middle, ring[(i + 1) % ring.size()] - middle) > 0.0)) return {};
    }
    return ring;
}

/// The band between two such rings, whose points begin at these numbers.
void addBand(Solid& solid, const Ring& lower, int firstLower, const Ring& upper, int firstUpper, Point middle)
{
    const int n = int(lower.size());
    const int m = int(upper.size());
    const double turn = 2 * std::numbers::pi;
    const auto angle = [&](const Ring& ring, int i) {
        return angleRad(ring[std::size_t(i) % ring.size()], middle) + (i >= int(ring.size()) ? turn : 0.0);
    };
    for (int i = 0, j = 0; i < n || j < m;) {
        const bool below = j == m || (i < n && angle(lower, i + 1) <= angle(upper, j + 1));
        const int next = below ? firstLower + (i + 1) % n : firstUpper + (j + 1) % m;
        solid.triangles.push_back({firstLower + i % n, next, firstUpper + j % m});
        ++(below ? i : j);
    }
}

double determinant(const SolidPoint& a, const SolidPoint& b, const SolidPoint& c)
{
    return a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) +
           a[2] * (b[0] * c[1] - b[1] * c[0]);
}

}  // namespace

std::optional<Solid> solidOfPrisms(const std::vector<Prism>& prisms)
{
    std::vector<Region> regions;
    std::vector<Spans> spans;
    for (const Prism& prism : prisms) {
        if (prism.region.empty() || !(prism.toMm > prism.fromMm)) continue;
        const auto known = std::find(regions.begin(), regions.end(), prism.region);
        const std::size_t cell = std::size_t(known - regions.begin());
        if (known == regions.end()) {
            regions.push_back(prism.region);
            spans.emplace_back();
        }
        spans[cell].push_back({prism.fromMm, prism.toMm});
    }
    const std::optional<PlanarCells> cells = planarCells(regions);
    if (!cells) return {};
    for (Spans& s : spans) s = joined(std::move(s));
    Solid solid = Builder(*cells, std::move(spans)).build();
    if (solid.triangles.empty() || !checkSolid(solid).closed) return {};
    return solid;
}

std::optional<Solid> solidThrough(const std::vector<RingAt>& rings)
{
    if (rings.size() < 2 || !(rings.back().heightMm > rings.front().heightMm)) return {};
    const Point middle = moments(Polygon{rings.front().ring, {}}).centroid();
    Solid solid;
    std::vector<Ring> sorted;
    std::vector<int> first;
    for (const RingAt& at : rings) {
        const std::optional<Ring> ring = fromLowestAngle(at.ring, middle);
        if (!ring || (!first.empty() && at.heightMm < solid.points.back()[2])) return {};
        first.push_back(int(solid.points.size()));
        for (const Point p : *ring) solid.points.push_back({p.x, p.y, at.heightMm});
        sorted.push_back(*ring);
    }
    for (std::size_t k = 0; k + 1 < sorted.size(); ++k)
        addBand(solid, sorted[k], first[k], sorted[k + 1], first[k + 1], middle);
    for (const bool top : {false, true}) {
        const Ring& ring = top ? sorted.back() : sorted.front();
        const int offset = top ? first.back() : first.front();
        const std::optional<PlanarCells> flat = planarCells({{{ring, {}}}});
        if (!flat || flat->points.size() != ring.size()) return {};
        for (const std::array<int, 3>& t : flat->triangles)
            solid.triangles.push_back({offset + t[0], offset + t[top ? 1 : 2], offset + t[top ? 2 : 1]});
    }
    if (!checkSolid(solid).closed) return {};
    return solid;
}

std::optional<Solid> solidOfRing(const Ring& ring, double fromMm, double toMm)
{
    const Region region = regionOf(ring);
    return solidOfPrisms({{region, fromMm, toMm}});
}

void append(Solid& solid, const Solid& other)
{
    const int first = int(solid.points.size());
    solid.points.insert(solid.points.end(), other.points.begin(), other.points.end());
    for (const std::array<int, 3>& t : other.triangles)
        solid.triangles.push_back({first + t[0], first + t[1], first + t[2]});
}

double volumeMm3(const Solid& solid)
{
    if (solid.points.empty()) return 0.0;
    const SolidPoint origin = solid.points.front();  // near by: no figures are lost to distance
    const auto from = [&](int point) {
        const SolidPoint& p = solid.points[std::size_t(point)];
        return SolidPoint{p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]};
    };
    double sum = 0.0;
    for (const std::array<int, 3>& t : solid.triangles) sum += determinant(from(t[0]), from(t[1]), from(t[2]));
    return sum / 6;
}

SolidCheck checkSolid(const Solid& solid)
{
    SolidCheck check;
    std::map<std::pair<int, int>, std::pair<int, int>> runs;  // along, back
    std::vector<int> joinedTo(solid.points.size());
    std::iota(joinedTo.begin(), joinedTo.end(), 0);
    const auto root = [&](int point) {
        while (joinedTo[std::size_t(point)] != point) point = joinedTo[std::size_t(point)];
        return point;
    };
    std::vector<bool> used(solid.points.size(), false);
    for (const std::array<int, 3>& t : solid.triangles) {
        for (std::size_t i = 0; i < 3; ++i) {
            const int a = t[i];
            const int b = t[(i + 1) % 3];
            auto& run = runs[{std::min(a, b), std::max(a, b)}];
            ++(a < b ? run.first : run.second);
            used[std::size_t(a)] = true;
            const int low = std::min(root(a), root(b));
            joinedTo[std::size_t(root(a))] = low;
            joinedTo[std::size_t(root(b))] = low;
        }
    }
    check.closed = !solid.triangles.empty();
    for (const auto& [ends, run] : runs)
        check.closed = check.closed && ends.first != ends.second && run.first == 1 && run.second == 1;
    check.points = int(std::count(used.begin(), used.end(), true));
    check.edges = int(runs.size());
    check.triangles = int(solid.triangles.size());
    for (int i = 0; i < int(used.size()); ++i) check.shells += used[std::size_t(i)] && root(i) == i ? 1 : 0;
    return check;
}

}  // namespace yardcast
