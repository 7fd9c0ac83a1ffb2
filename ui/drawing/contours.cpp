#include "ui/drawing/contours.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace yardcast::ui {

namespace {

/// Stretches of a hatch line nearer than this are one.
constexpr double kJoinMm = 0.01;
constexpr int kMostHatchLines = 20000;

bool isAbove(double value, double level)
{
    return value >= level;
}

Point between(Point a, Point b, double valueA, double valueB, double level)
{
    const double share = (level - valueA) / (valueB - valueA);
    // A node that is no number: the line goes through the other end.
    if (!std::isfinite(share)) return std::isfinite(valueA) ? a : b;
    return a + (b - a) * std::clamp(share, 0.0, 1.0);
}

using EdgeKey = std::pair<int, int>;

EdgeKey keyOf(int a, int b)
{
    return a < b ? EdgeKey{a, b} : EdgeKey{b, a};
}

/// The crossings of one level: on every edge of the mesh at most one, each joined to one or two others.
class Tracer {
public:
    Tracer(const TriangleMesh& mesh, const std::vector<double>& values, double level)
        : mesh_(mesh), values_(values), level_(level)
    {
        for (const auto& triangle : mesh.triangles) addTriangle(triangle);
    }

    std::vector<ContourLine> lines()
    {
        std::vector<ContourLine> found;
        // Open lines begin at the edge of the mesh; what is left after them are rings.
        for (int start = 0; start < static_cast<int>(points_.size()); ++start) {
            if (!used_[start] && neighbours_[start].size() == 1) found.push_back(trace(start, false));
        }
        for (int start = 0; start < static_cast<int>(points_.size()); ++start) {
            if (!used_[start] && !neighbours_[start].empty()) found.push_back(trace(start, true));
        }
        std::stable_sort(found.begin(), found.end(), [](const ContourLine& a, const ContourLine& b) {
            return a.lengthMm() > b.lengthMm();
        });
        return found;
    }

private:
    void addTriangle(const std::array<int, 3>& triangle)
    {
        int crossed[2];
        int count = 0;
        for (int side = 0; side < 3; ++side) {
            const int a = triangle[side];
            const int b = triangle[(side + 1) % 3];
            if (isAbove(values_[a], level_) != isAbove(values_[b], level_) && count < 2)
                crossed[count++] = crossing(a, b);
        }
        if (count != 2) return;
        neighbours_[crossed[0]].push_back(crossed[1]);
        neighbours_[crossed[1]].push_back(crossed[0]);
    }

    int crossing(int a, int b)
    {
        const auto [entry, isNew] = index_.try_emplace(keyOf(a, b), static_cast<int>(points_.size()));
        if (isNew) {
            points_.push_back(between(mesh_.nodes[a], mesh_.nodes[b], values_[a], values_[b], level_));
            neighbours_.emplace_back();
            used_.push_back(false);
        }
        return entry->second;
    }

    ContourLine trace(int start, bool closed)
    {
        ContourLine line;
        line.level = level_;
        line.closed = closed;
        for (int at = start; at >= 0;) {
            used_[at] = true;
            line.points.push_back(points_[at]);
            int next = -1;
            for (const int neighbour : neighbours_[at]) {
                if (!used_[neighbour]) next = neighbour;
            }
            at = next;
        }
        return line;
    }

    const TriangleMesh& mesh_;
    const std::vector<double>& values_;
    double level_;
    std::map<EdgeKey, int> index_;
    std::vector<Point> points_;
    std::vector<std::vector<int>> neighbours_;
    std::vector<bool> used_;
};

}  // namespace

double ContourLine::lengthMm() const
{
    double sum = 0.0;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) sum += distance(points[i], points[i + 1]);
    if (closed && points.size() > 2) sum += distance(points.back(), points.front());
    return sum;
}

std::pair<Point, Point> ContourLine::alongMm(double distanceMm) const
{
    const std::size_t count = points.size();
    Point direction{1.0, 0.0};
    for (std::size_t i = 0; i + 1 < count + (closed ? 1 : 0); ++i) {
        const Point a = points[i];
        const Point b = points[(i + 1) % count];
        const double piece = distance(a, b);
        if (piece <= 0.0) continue;
        direction = (b - a) * (1.0 / piece);
        if (distanceMm <= piece) return {a + direction * std::max(0.0, distanceMm), direction};
        distanceMm -= piece;
    }
    return {count == 0 ? Point{} : points[closed ? 0 : count - 1], direction};
}

std::vector<ContourLine> contourLines(const TriangleMesh& mesh, const std::vector<double>& values,
                                      const std::vector<double>& levels)
{
    std::vector<ContourLine> all;
    if (values.size() != mesh.nodes.size()) return all;
    for (const double level : levels) {
        std::vector<ContourLine> lines = Tracer(mesh, values, level).lines();
        all.insert(all.end(), std::make_move_iterator(lines.begin()), std::make_move_iterator(lines.end()));
    }
    return all;
}

std::vector<Ring> piecesAbove(const TriangleMesh& mesh, const std::vector<double>& values, double level)
{
    std::vector<Ring> pieces;
    if (values.size() != mesh.nodes.size()) return pieces;
    for (const auto& triangle : mesh.triangles) {
        Ring piece;
        for (int side = 0; side < 3; ++side) {
            const int a = triangle[side];
            const int b = triangle[(side + 1) % 3];
            if (isAbove(values[a], level)) piece.push_back(mesh.nodes[a]);
            if (isAbove(values[a], level) != isAbove(values[b], level))
                piece.push_back(between(mesh.nodes[a], mesh.nodes[b], values[a], values[b], level));
        }
        if (piece.size() >= 3) pieces.push_back(std::move(piece));
    }
    return pieces;
}

std::vector<std::pair<Point, Point>> hatchThrough(const std::vector<Ring>& pieces, double angleDeg, double spacingMm)
{
    std::vector<std::pair<Point, Point>> lines;
    if (!(spacingMm > 0.0)) return lines;
    const SineCosine turn = sineCosineDeg(angleDeg);
    const Point along{turn.cosine, turn.sine};
    const Point aside = leftNormal(along);
    std::map<long long, std::vector<std::pair<double, double>>> rows;
    for (const Ring& piece : pieces) {
        double low = dot(piece.front(), aside);
        double high = low;
        for (const Point& point : piece) {
            low = std::min(low, dot(point, aside));
            high = std::max(high, dot(point, aside));
        }
        if (!((high - low) / spacingMm < kMostHatchLines)) continue;
        for (long long row = static_cast<long long>(std::ceil(low / spacingMm)); row * spacingMm <= high; ++row) {
            const double level = row * spacingMm;
            double from = HUGE_VAL;
            double to = -HUGE_VAL;
            for (std::size_t i = 0; i < piece.size(); ++i) {
                const Point a = piece[i];
                const Point b = piece[(i + 1) % piece.size()];
                const double heightA = dot(a, aside) - level;
                const double heightB = dot(b, aside) - level;
                if ((heightA < 0.0) == (heightB < 0.0)) continue;
                const Point at = a + (b - a) * (heightA / (heightA - heightB));
                from = std::min(from, dot(at, along));
                to = std::max(to, dot(at, along));
            }
            if (to > from) rows[row].emplace_back(from, to);
        }
    }
    for (auto& [row, stretches] : rows) {
        std::sort(stretches.begin(), stretches.end());
        std::pair<double, double> open = stretches.front();
        const auto close = [&, level = row * spacingMm] {
            lines.emplace_back(along * open.first + aside * level, along * open.second + aside * level);
        };
        for (const auto& stretch : stretches) {
            if (stretch.first <= open.second + kJoinMm) {
                open.second = std::max(open.second, stretch.second);
            } else {
                close();
                open = stretch;
            }
        }
        close();
    }
    return lines;
}

}  // namespace yardcast::ui
