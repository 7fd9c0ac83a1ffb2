#include <algorithm>
#include <cmath>

#include "tests/reference/solid.h"

namespace yardcast::reference {

namespace {

/// Lines through all of `fixed` (any order), denser near those that are `fine`.
std::vector<double> gradedLines(std::vector<double> fixed, const std::vector<double>& fine, const SolidMeshing& meshing)
{
    std::sort(fixed.begin(), fixed.end());
    fixed.erase(std::unique(fixed.begin(), fixed.end(), [](double a, double b) { return b - a < 1e-6; }), fixed.end());
    const auto sizeAt = [&](double x) {
        double size = meshing.sizeMm;
        for (const double f : fine) size = std::min(size, meshing.fineMm + meshing.growth * std::abs(x - f));
        return size;
    };
    std::vector<double> lines{fixed.front()};
    for (std::size_t i = 0; i + 1 < fixed.size(); ++i) {
        // Equal steps of the integral of 1/size.
        constexpr int kSteps = 400;
        const double from = fixed[i];
        const double span = fixed[i + 1] - from;
        std::vector<double> sum{0.0};
        for (int s = 0; s < kSteps; ++s)
            sum.push_back(sum.back() + span / kSteps / sizeAt(from + span * (s + 0.5) / kSteps));
        const int count = std::max(1, static_cast<int>(std::ceil(sum.back() - 0.3)));
        int s = 0;
        for (int n = 1; n < count; ++n) {
            const double wanted = sum.back() * n / count;
            while (sum[s + 1] < wanted) ++s;
            lines.push_back(from + span * (s + (wanted - sum[s]) / (sum[s + 1] - sum[s])) / kSteps);
        }
        lines.push_back(fixed[i + 1]);
    }
    return lines;
}

/// Corners and mid-edges of a brick in half steps from its low corner, in the order of C3D20. Layers are counted
/// downwards, so z = 2 is the lower side.
constexpr int kBrick[20][3] = {{0, 0, 2}, {2, 0, 2}, {2, 2, 2}, {0, 2, 2}, {0, 0, 0}, {2, 0, 0}, {2, 2, 0},
                               {0, 2, 0}, {1, 0, 2}, {2, 1, 2}, {1, 2, 2}, {0, 1, 2}, {1, 0, 0}, {2, 1, 0},
                               {1, 2, 0}, {0, 1, 0}, {0, 0, 1}, {2, 0, 1}, {2, 2, 1}, {0, 2, 1}};

}  // namespace

SolidMesh::SolidMesh(const Slab& slab, const SolidMeshing& meshing)
{
    const std::vector<Zone> zones = zonesOf(slab);
    std::vector<double> xs, ys, fineXs, fineYs, depths{0.0};
    const auto add = [&](Point p) {
        xs.push_back(p.x);
        ys.push_back(p.y);
    };
    // Where the rim of a cutout goes round its corner the chords are too short to be followed: cells decide by their
    // centres there.
    constexpr double kLeastEdgeMm = 20.0;
    const auto addEdges = [&](const Ring& ring) {
        for (std::size_t i = 0, n = ring.size(); i < n; ++i) {
            const Point along = ring[(i + 1) % n] - ring[i];
            if (length(along) < kLeastEdgeMm) continue;
            if (std::abs(along.x) < 1e-6) xs.push_back(ring[i].x);
            if (std::abs(along.y) < 1e-6) ys.push_back(ring[i].y);
        }
    };
    for (const Zone& zone : zones) {
        depths.push_back(zone.toMm);
        for (const Polygon& polygon : zone.region) {
            addEdges(polygon.outer);
            for (const Ring& hole : polygon.holes) addEdges(hole);
        }
    }
    for (const PlaneCut& cut : slab.cuts) {
        add(cut.from);
        add(cut.to);
    }
    const Box bounds{{*std::min_element(xs.begin(), xs.end()), *std::min_element(ys.begin(), ys.end())},
                     {*std::max_element(xs.begin(), xs.end()), *std::max_element(ys.begin(), ys.end())}};
    const auto addRest = [](double value, double low, double high, std::vector<double>& all,
                            std::vector<double>& fine) {
        if (value <= low || value >= high) return;
        all.push_back(value);
        fine.push_back(value);
    };
    for (const Box& rest : slab.rests) {
        addRest(rest.low.x, bounds.low.x, bounds.high.x, xs, fineXs);
        addRest(rest.high.x, bounds.low.x, bounds.high.x, xs, fineXs);
        addRest(rest.low.y, bounds.low.y, bounds.high.y, ys, fineYs);
        addRest(rest.high.y, bounds.low.y, bounds.high.y, ys, fineYs);
    }
    for (const Cutout& cutout : slab.counter.cutouts) {
        // The outer corners of a cutout's rim are round: bricks follow them in steps, which have to be small.
        for (const double beyond : {0.0, cutout.rimMm.value_or(0.0) / 2, cutout.rimMm.value_or(0.0)}) {
            for (const double sign : {-1.0, 1.0}) {
                fineXs.push_back(cutout.centre.x + sign * (cutout.size.width / 2 + beyond));
                fineYs.push_back(cutout.centre.y + sign * (cutout.size.depth / 2 + beyond));
            }
        }
    }
    const Ring& outline = slab.counter.outline;
    for (std::size_t i = 0, n = outline.size(); i < n; ++i) {
        if (cross(outline[i] - outline[(i + n - 1) % n], outline[(i + 1) % n] - outline[i]) >= 0.0) continue;
        fineXs.push_back(outline[i].x);
        fineYs.push_back(outline[i].y);
    }
    xs_ = gradedLines(xs, fineXs, meshing);
    ys_ = gradedLines(ys, fineYs, meshing);

    std::sort(depths.begin(), depths.end());
    depths.erase(std::unique(depths.begin(), depths.end()), depths.end());
    zs_.push_back(0.0);
    for (std::size_t d = 1; d < depths.size(); ++d) {
        const int layers = d == 1 ? meshing.fieldLayers : meshing.deepLayers;
        for (int l = 1; l <= layers; ++l) zs_.push_back(-depths[d - 1] - (depths[d] - depths[d - 1]) * l / layers);
    }

    const int nx = static_cast<int>(xs_.size()) - 1;
    const int ny = static_cast<int>(ys_.size()) - 1;
    const int nz = static_cast<int>(zs_.size()) - 1;
    const auto at = [](const std::vector<double>& lines, int half) {
        return half % 2 ? (lines[half / 2] + lines[half / 2 + 1]) / 2 : lines[half / 2];
    };
    std::vector<int> ids(static_cast<std::size_t>(2 * nx + 1) * (2 * ny + 1) * (2 * nz + 1), 0);
    brickOfCell_.assign(static_cast<std::size_t>(nx) * ny * nz, -1);
    for (int i = 0; i < nx; ++i) {
        for (int j = 0; j < ny; ++j) {
            const double depth = depthAt(zones, {at(xs_, 2 * i + 1), at(ys_, 2 * j + 1)});
            for (int k = 0; k < nz && -zs_[k + 1] <= depth + 1e-9; ++k) {
                Brick brick{{i, j, k}, {}};
                for (int n = 0; n < 20; ++n) {
                    const int a = 2 * i + kBrick[n][0];
                    const int b = 2 * j + kBrick[n][1];
                    const int c = 2 * k + kBrick[n][2];
                    int& id = ids[(static_cast<std::size_t>(a) * (2 * ny + 1) + b) * (2 * nz + 1) + c];
                    if (id == 0) {
                        nodes_.push_back({at(xs_, a), at(ys_, b), at(zs_, c)});
                        id = static_cast<int>(nodes_.size());
                    }
                    brick.nodes[n] = id;
                }
                brickOfCell_[(static_cast<std::size_t>(i) * ny + j) * nz + k] = static_cast<int>(bricks_.size());
                bricks_.push_back(brick);
            }
        }
    }
}

int SolidMesh::brickAt(int i, int j, int k) const
{
    const int nx = static_cast<int>(xs_.size()) - 1;
    const int ny = static_cast<int>(ys_.size()) - 1;
    const int nz = static_cast<int>(zs_.size()) - 1;
    if (i < 0 || j < 0 || k < 0 || i >= nx || j >= ny || k >= nz) return -1;
    return brickOfCell_[(static_cast<std::size_t>(i) * ny + j) * nz + k];
}

}  // namespace yardcast::reference
