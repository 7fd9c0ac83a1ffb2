#include "core/structure/triangle_index.h"

#include <cmath>

namespace yardcast {

namespace {

constexpr int kMostCells = 1 << 18;
/// A line that lies no deeper than this in a triangle runs along its edge.
constexpr double kInsideMm = 1e-7;

struct Corners {
    std::array<Point, 3> at;

    Corners(const TriangleMesh& mesh, int triangle)
    {
        for (int i = 0; i < 3; ++i) at[i] = mesh.nodes[mesh.triangles[triangle][i]];
    }
    Point centre() const { return (at[0] + at[1] + at[2]) * (1.0 / 3.0); }
    double doubledArea() const { return cross(at[1] - at[0], at[2] - at[0]); }
};

/// How far a point lies inside edge i of a triangle, mm, positive inwards.
struct Edge {
    Point from;
    Point inward;
    Edge(const Corners& corners, int i) : from(corners.at[i])
    {
        const Point along = corners.at[(i + 1) % 3] - from;
        const double span = std::sqrt(dot(along, along));
        inward = span > 0.0 ? leftNormal(along) * (1.0 / span) : Point{};
    }
    double depth(Point p) const { return dot(p - from, inward); }
};

/// Whether a line passes a triangle by, as far as that is cheap to see.
bool passesBy(const Corners& corners, Point a, Point b)
{
    const auto& [p, q, r] = corners.at;
    if (std::max({p.x, q.x, r.x}) < std::min(a.x, b.x) || std::min({p.x, q.x, r.x}) > std::max(a.x, b.x) ||
        std::max({p.y, q.y, r.y}) < std::min(a.y, b.y) || std::min({p.y, q.y, r.y}) > std::max(a.y, b.y))
        return true;
    const Point along = b - a;
    const double first = cross(along, p - a);
    const double second = cross(along, q - a);
    const double third = cross(along, r - a);
    return (first > 0.0 && second > 0.0 && third > 0.0) || (first < 0.0 && second < 0.0 && third < 0.0);
}

/// Whether a point lies deeper than -`marginMm` inside all edges.
bool isNear(const Corners& corners, Point p, double marginMm)
{
    for (int i = 0; i < 3; ++i) {
        const Point along = corners.at[(i + 1) % 3] - corners.at[i];
        const double inside = cross(along, p - corners.at[i]);
        if (inside < 0.0 && inside * inside > marginMm * marginMm * dot(along, along)) return false;
    }
    return true;
}

/// The share of the line a-b, from 0 to 1, that lies deeper than `least` inside; empty where first >= second.
std::pair<double, double> shareInside(const Corners& corners, Point a, Point b, double least)
{
    double first = 0.0;
    double second = 1.0;
    for (int i = 0; i < 3; ++i) {
        const Edge edge(corners, i);
        const double atA = edge.depth(a) - least;
        const double atB = edge.depth(b) - least;
        if (atA < 0.0 && atB < 0.0) return {1.0, 0.0};
        if (atA < 0.0) first = std::max(first, atA / (atA - atB));
        if (atB < 0.0) second = std::min(second, atA / (atA - atB));
        if (first >= second) return {1.0, 0.0};
    }
    return {first, second};
}

/// What of a ring lies inside the three edges (Sutherland-Hodgman): doubled back along them where it leaves, which
/// leaves its signed area right.
double clippedArea(const Ring& ring, const Corners& corners, Ring& work, Ring& next)
{
    const Ring* from = &ring;
    for (int i = 0; i < 3; ++i) {
        const Edge edge(corners, i);
        next.clear();
        Point p = from->back();
        double atP = edge.depth(p);
        for (const Point q : *from) {
            const double atQ = edge.depth(q);
            if ((atP >= 0.0) != (atQ >= 0.0)) next.push_back(p + (q - p) * (atP / (atP - atQ)));
            if (atQ >= 0.0) next.push_back(q);
            p = q;
            atP = atQ;
        }
        work.swap(next);
        if (work.size() < 3) return 0.0;
        from = &work;
    }
    return signedArea(work);
}

/// Even-odd test of many points against one region: edges by rows.
class RegionRows {
public:
    explicit RegionRows(const Region& region)
    {
        std::size_t count = 0;
        bool first = true;
        for (const Polygon& polygon : region) {
            count += polygon.outer.size();
            for (const Ring& hole : polygon.holes) count += hole.size();
            for (const Point p : polygon.outer) {
                low_ = first ? p.y : std::min(low_, p.y);
                high_ = first ? p.y : std::max(high_, p.y);
                first = false;
            }
        }
        rows_ = std::clamp(static_cast<int>(count), 1, 256);
        pitch_ = std::max((high_ - low_) / rows_, 1e-9);
        edges_.resize(static_cast<std::size_t>(rows_));
        for (const Polygon& polygon : region) {
            add(polygon.outer);
            for (const Ring& hole : polygon.holes) add(hole);
        }
    }

    bool contains(Point p) const
    {
        if (!(p.y >= low_ && p.y <= high_)) return false;
        bool inside = false;
        for (const auto& [a, b] : edges_[static_cast<std::size_t>(row(p.y))]) {
            if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
        }
        return inside;
    }

private:
    int row(double y) const { return std::clamp(static_cast<int>((y - low_) / pitch_), 0, rows_ - 1); }
    void add(const Ring& ring)
    {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i];
            const Point b = ring[i + 1 < ring.size() ? i + 1 : 0];
            if (a.y == b.y) continue;
            const int last = row(std::max(a.y, b.y));
            for (int r = row(std::min(a.y, b.y)); r <= last; ++r) edges_[static_cast<std::size_t>(r)].push_back({a, b});
        }
    }

    double low_ = 0.0;
    double high_ = 0.0;
    double pitch_ = 1.0;
    int rows_ = 1;
    std::vector<std::vector<std::pair<Point, Point>>> edges_;
};

}  // namespace

TriangleIndex::TriangleIndex(const TriangleMesh& mesh)
{
    if (mesh.nodes.empty() || mesh.triangles.empty()) return;
    const Box box = boundsOf(mesh.nodes).value_or(Box{});
    low_ = box.low;
    // About two triangles a cell.
    const double cells = std::clamp(static_cast<double>(mesh.triangles.size()) / 2, 1.0, double{kMostCells});
    pitchMm_ = std::max({std::sqrt(box.width() * box.height() / cells), box.width() / 1000, box.height() / 1000, 1e-6});
    columns_ = static_cast<int>(box.width() / pitchMm_) + 1;
    rows_ = static_cast<int>(box.height() / pitchMm_) + 1;

    const auto cellsOf = [&](int triangle, auto visit) {
        const Corners c(mesh, triangle);
        const auto [x0, y0] = cellOf({std::min({c.at[0].x, c.at[1].x, c.at[2].x}) - kMarginMm,
                                      std::min({c.at[0].y, c.at[1].y, c.at[2].y}) - kMarginMm});
        const auto [x1, y1] = cellOf({std::max({c.at[0].x, c.at[1].x, c.at[2].x}) + kMarginMm,
                                      std::max({c.at[0].y, c.at[1].y, c.at[2].y}) + kMarginMm});
        for (int y = y0; y <= y1; ++y) {
            for (int x = x0; x <= x1; ++x) visit(y * columns_ + x);
        }
    };
    start_.assign(static_cast<std::size_t>(columns_) * rows_ + 1, 0);
    const int count = static_cast<int>(mesh.triangles.size());
    for (int t = 0; t < count; ++t) cellsOf(t, [&](int cell) { ++start_[cell + 1]; });
    for (std::size_t i = 1; i < start_.size(); ++i) start_[i] += start_[i - 1];
    items_.resize(static_cast<std::size_t>(start_.back()));
    std::vector<int> next(start_.begin(), start_.end() - 1);
    for (int t = 0; t < count; ++t) cellsOf(t, [&](int cell) { items_[next[cell]++] = t; });
}

std::array<int, 2> TriangleIndex::cellOf(Point p) const
{
    const auto index = [&](double mm, int count) {
        return static_cast<int>(std::clamp(mm / pitchMm_, 0.0, static_cast<double>(count - 1)));
    };
    return {index(p.x - low_.x, columns_), index(p.y - low_.y, rows_)};
}

Point TriangleIndex::pointAtY(Point from, Point to, double y)
{
    const double t = std::clamp((y - from.y) / (to.y - from.y), 0.0, 1.0);
    return from + (to - from) * t;
}

PlaceInMesh TriangleIndex::find(const TriangleMesh& mesh, Point p) const
{
    PlaceInMesh best;
    if (columns_ == 0) return best;
    double depth = -kMarginMm;
    const auto [x, y] = cellOf(p);
    const int cell = y * columns_ + x;
    // What lies well within one triangle lies in no other.
    for (int i = start_[cell]; i < start_[cell + 1] && depth <= kMarginMm; ++i) {
        const int t = items_[i];
        const Corners corners(mesh, t);
        if (!isNear(corners, p, kMarginMm)) continue;
        double least = HUGE_VAL;
        for (int k = 0; k < 3; ++k) least = std::min(least, Edge(corners, k).depth(p));
        if (!(least > depth)) continue;
        depth = least;
        const double doubled = corners.doubledArea();
        best.triangle = t;
        for (int k = 0; k < 3; ++k)
            best.weight[k] = cross(corners.at[(k + 1) % 3] - p, corners.at[(k + 2) % 3] - p) / doubled;
    }
    return best;
}

std::vector<PieceOfLine> TriangleIndex::crossed(const TriangleMesh& mesh, Point from, Point to) const
{
    std::vector<PieceOfLine> pieces;
    const double span = distance(from, to);
    if (!(span > 0.0)) return pieces;
    nearLine(from, to, [&](int t) {
        const Corners corners(mesh, t);
        if (passesBy(corners, from, to)) return;
        const auto [first, second] = shareInside(corners, from, to, 0.0);
        if ((second - first) * span > kInsideMm) pieces.push_back({t, first * span, second * span});
    });
    std::sort(pieces.begin(), pieces.end(), [](const PieceOfLine& a, const PieceOfLine& b) {
        return a.triangle != b.triangle ? a.triangle < b.triangle : a.from < b.from;
    });
    pieces.erase(std::unique(pieces.begin(), pieces.end(),
                             [](const PieceOfLine& a, const PieceOfLine& b) { return a.triangle == b.triangle; }),
                 pieces.end());
    std::sort(pieces.begin(), pieces.end(),
              [](const PieceOfLine& a, const PieceOfLine& b) { return a.from < b.from; });
    return pieces;
}

std::vector<double> areaInTriangles(const TriangleMesh& mesh, const TriangleIndex& index, const Region& region)
{
    const std::size_t count = mesh.triangles.size();
    std::vector<char> cut(count, 0);
    struct SignedRing {
        const Ring* ring;
        double sign;
        Box box;
    };
    std::vector<SignedRing> rings;
    const auto addRing = [&](const Ring& ring, double sign) {
        if (const auto box = boundsOf(ring)) rings.push_back({&ring, signedArea(ring) < 0.0 ? -sign : sign, *box});
    };
    for (const Polygon& polygon : region) {
        addRing(polygon.outer, 1.0);
        for (const Ring& hole : polygon.holes) addRing(hole, -1.0);
    }
    for (const auto& [ring, sign, box] : rings) {
        for (std::size_t i = 0; i < ring->size(); ++i) {
            const Point a = (*ring)[i];
            const Point b = (*ring)[i + 1 < ring->size() ? i + 1 : 0];
            index.nearLine(a, b, [&](int t) {
                if (cut[t]) return;
                const Corners corners(mesh, t);
                if (passesBy(corners, a, b)) return;
                const auto [first, second] = shareInside(corners, a, b, kInsideMm);
                if (second > first) cut[t] = 1;
            });
        }
    }
    std::vector<double> areas(count, 0.0);
    const RegionRows rows(region);
    Ring work;
    Ring next;
    for (std::size_t t = 0; t < count; ++t) {
        const Corners corners(mesh, static_cast<int>(t));
        if (cut[t]) {
            double sum = 0.0;
            const auto& [p, q, r] = corners.at;
            for (const auto& [ring, sign, box] : rings) {
                if (std::max({p.x, q.x, r.x}) < box.low.x || std::min({p.x, q.x, r.x}) > box.high.x ||
                    std::max({p.y, q.y, r.y}) < box.low.y || std::min({p.y, q.y, r.y}) > box.high.y)
                    continue;
                sum += sign * clippedArea(*ring, corners, work, next);
            }
            areas[t] = std::clamp(sum, 0.0, corners.doubledArea() / 2);
        } else if (rows.contains(corners.centre())) {
            areas[t] = corners.doubledArea() / 2;
        }
    }
    return areas;
}

}  // namespace yardcast
