#pragma once

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "core/fem/mesh.h"

namespace yardcast {

/// Where a point lies in a mesh: a triangle and the weights of its corners (sum 1).
struct PlaceInMesh {
    int triangle = -1;
    std::array<double, 3> weight{};
};

/// A piece of a straight line within one triangle.
struct PieceOfLine {
    int triangle = -1;
    double from = 0.0;  ///< mm from the line's start
    double to = 0.0;
};

/// Finds triangles by place: buckets of a square grid.
class TriangleIndex {
public:
    TriangleIndex() = default;
    explicit TriangleIndex(const TriangleMesh& mesh);

    /// The triangle that the point lies in or on; triangle -1 where it lies outside by more than 1e-6 mm.
    PlaceInMesh find(const TriangleMesh& mesh, Point p) const;
    /// The pieces of a line in the triangles it crosses, by their start. A line that runs along an edge of the mesh
    /// lies in none: move it aside a little.
    std::vector<PieceOfLine> crossed(const TriangleMesh& mesh, Point from, Point to) const;
    /// Calls `visit(triangle)` for all triangles whose boxes may meet the box; one may come more than once.
    template <typename Visit>
    void nearBox(Point low, Point high, Visit visit) const
    {
        if (columns_ == 0) return;
        const auto [x0, y0] = cellOf(low);
        const auto [x1, y1] = cellOf(high);
        for (int y = y0; y <= y1; ++y) {
            for (int x = x0; x <= x1; ++x) {
                const int cell = y * columns_ + x;
                for (int i = start_[cell]; i < start_[cell + 1]; ++i) visit(items_[i]);
            }
        }
    }

    /// The same along a line, without the cells that it passes by.
    template <typename Visit>
    void nearLine(Point from, Point to, Visit visit) const
    {
        if (columns_ == 0) return;
        if (from.y > to.y) std::swap(from, to);
        const int y0 = cellOf(from)[1];
        const int y1 = cellOf(to)[1];
        for (int y = y0; y <= y1; ++y) {
            // The rows at the ends of the grid take all that lies beyond it.
            const Point a = y == y0 ? from : pointAtY(from, to, low_.y + y * pitchMm_);
            const Point b = y == y1 ? to : pointAtY(from, to, low_.y + (y + 1) * pitchMm_);
            const double low = std::min(a.x, b.x);
            const double high = std::max(a.x, b.x);
            const int x0 = cellOf({low - kMarginMm, low_.y})[0];
            const int x1 = cellOf({high + kMarginMm, low_.y})[0];
            for (int x = x0; x <= x1; ++x) {
                const int cell = y * columns_ + x;
                for (int i = start_[cell]; i < start_[cell + 1]; ++i) visit(items_[i]);
            }
        }
    }

private:
    static constexpr double kMarginMm = 1e-6;
    std::array<int, 2> cellOf(Point p) const;
    static Point pointAtY(Point from, Point to, double y);

    Point low_;
    double pitchMm_ = 1.0;
    int columns_ = 0;
    int rows_ = 0;
    std::vector<int> start_;
    std::vector<int> items_;
};

/// Area of a region in each triangle, mm2, exact by clipping; the region's polygons must not overlap.
std::vector<double> areaInTriangles(const TriangleMesh& mesh, const TriangleIndex& index, const Region& region);

}  // namespace yardcast
