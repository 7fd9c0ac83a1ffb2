#include "core/structure/crack_strips.h"

#include <algorithm>
#include <cmath>

#include "core/structure/spread.h"

namespace yardcast {

namespace {

/// A crack line's strip, in thicknesses: with stress that grows as r^-0.46 towards the corner its weighted mean is that
/// along the line over one thickness.
constexpr double kLineLong = 1.15;
constexpr double kLineHalfWide = 0.4;
/// Places across a triangle as long as the strip.
constexpr double kLineFine = 5.0;

void fillStrip(const Body& body, const std::vector<int>& near, double spanMm, double halfMm, CrackLine& line)
{
    const TriangleMesh& mesh = body.mesh();
    const int kinds = body.kindCount();
    const Point aside = leftNormal(line.inward);
    std::vector<double> ofKind(body.kinds.size(), 0.0);
    double weights = 0.0;
    for (const int t : near) {
        Point p[3];
        for (int i = 0; i < 3; ++i) {
            const Point d = mesh.nodes[mesh.triangles[t][i]] - line.from;
            p[i] = {dot(d, line.inward) / spanMm, dot(d, aside) / halfMm};
        }
        if (std::max({p[0].x, p[1].x, p[2].x}) < 0 || std::min({p[0].x, p[1].x, p[2].x}) > 1 ||
            std::max({p[0].y, p[1].y, p[2].y}) < -1 || std::min({p[0].y, p[1].y, p[2].y}) > 1)
            continue;
        const double area = cross(p[1] - p[0], p[2] - p[0]) / 2;
        const double longest =
            std::max({std::abs(p[0].x - p[1].x), std::abs(p[1].x - p[2].x), std::abs(p[2].x - p[0].x),
                      std::abs(p[0].y - p[1].y) / 2, std::abs(p[1].y - p[2].y) / 2, std::abs(p[2].y - p[0].y) / 2});
        const int across = std::clamp(static_cast<int>(std::ceil(kLineFine * longest)), 1, 6);
        std::array<double, 3> ofCorners{};
        spreadOverTriangle(across, [&](const std::array<double, 3>& l, double part) {
            const Point q = p[0] * l[0] + p[1] * l[1] + p[2] * l[2];
            if (q.x < 0.0 || q.x > 1.0 || std::abs(q.y) > 1.0) return;
            const double weight = area * part * (1.0 - q.x * q.x) * (1.0 - q.y * q.y);
            for (int i = 0; i < 3; ++i) ofCorners[i] += weight * l[i];
        });
        const double whole = ofCorners[0] + ofCorners[1] + ofCorners[2];
        if (!(whole > 0.0)) continue;
        for (int k = 0; k < kinds; ++k) {
            if (!body.tells(t, k)) continue;
            const double share = body.share[static_cast<std::size_t>(t) * body.kinds.size() + k];
            line.strip.push_back({t, k, {share * ofCorners[0], share * ofCorners[1], share * ofCorners[2]}});
            ofKind[k] += share * whole;
            weights += share * whole;
        }
    }
    for (TriangleWeight& part : line.strip) {
        for (double& weight : part.weight) weight /= weights;
    }
    line.stripKind = static_cast<int>(std::max_element(ofKind.begin(), ofKind.end()) - ofKind.begin());
}

}  // namespace

void fillCrackStrips(Body& body)
{
    std::vector<int> near;
    for (InnerCorner& corner : body.corners) {
        const double spanMm = kLineLong * corner.thicknessMm;
        const double halfMm = kLineHalfWide * corner.thicknessMm;
        for (CrackLine& line : corner.lines) {
            near.clear();
            const Point end = line.from + line.inward * spanMm;
            const Point low{std::min(line.from.x, end.x), std::min(line.from.y, end.y)};
            const Point high{std::max(line.from.x, end.x), std::max(line.from.y, end.y)};
            body.index.nearBox({low.x - halfMm, low.y - halfMm}, {high.x + halfMm, high.y + halfMm},
                               [&](int t) { near.push_back(t); });
            std::sort(near.begin(), near.end());
            near.erase(std::unique(near.begin(), near.end()), near.end());
            fillStrip(body, near, spanMm, halfMm, line);
        }
    }
}

}  // namespace yardcast
