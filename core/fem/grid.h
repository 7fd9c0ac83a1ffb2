#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

#include "core/geometry/region.h"

namespace yardcast::fem {

/// Numbers by the place that they are at, in square cells, for looking up what is near.
class Grid {
public:
    Grid(Box bounds, double pitchMm) : low_(bounds.low)
    {
        pitchMm_ = std::max({pitchMm, bounds.width() / 256.0, bounds.height() / 256.0, 1e-3});
        columns_ = int(bounds.width() / pitchMm_) + 1;
        rows_ = int(bounds.height() / pitchMm_) + 1;
        cells_.resize(std::size_t(columns_) * std::size_t(rows_));
    }

    /// Puts a number in every cell that the segment comes near.
    void add(int number, Point a, Point b)
    {
        const int pieces = std::max(1, int(distance(a, b) / (2.0 * pitchMm_)));
        for (int k = 0; k < pieces; ++k) {
            const Point p = a + (b - a) * (double(k) / pieces);
            const Point q = a + (b - a) * (double(k + 1) / pieces);
            forCells(p, q, 0.0, [&](std::vector<int>& cell) {
                if (cell.empty() || cell.back() != number) cell.push_back(number);
            });
        }
        if (std::size_t(number) >= asked_.size()) asked_.resize(std::size_t(number) + 1, 0);
    }

    /// Calls once for each number within `reachMm` of the box of a and b (and for some beyond).
    template <typename Visit>
    void near(Point a, Point b, double reachMm, Visit visit)
    {
        ++round_;
        forCells(a, b, reachMm, [&](std::vector<int>& cell) {
            for (std::size_t i = 0; i < cell.size(); ++i) {
                std::uint32_t& asked = asked_[std::size_t(cell[i])];
                if (asked == round_) continue;
                asked = round_;
                visit(cell[i]);
            }
        });
    }

private:
    template <typename Do>
    void forCells(Point a, Point b, double reachMm, Do act)
    {
        const auto index = [&](double from, double low, int count) {
            return int(std::clamp((from - low) / pitchMm_, 0.0, count - 1.0));
        };
        const int right = index(std::max(a.x, b.x) + reachMm, low_.x, columns_);
        const int top = index(std::max(a.y, b.y) + reachMm, low_.y, rows_);
        for (int j = index(std::min(a.y, b.y) - reachMm, low_.y, rows_); j <= top; ++j)
            for (int i = index(std::min(a.x, b.x) - reachMm, low_.x, columns_); i <= right; ++i)
                act(cells_[std::size_t(j) * std::size_t(columns_) + std::size_t(i)]);
    }

    Point low_;
    double pitchMm_ = 1.0;
    int columns_ = 1;
    int rows_ = 1;
    std::vector<std::vector<int>> cells_;
    std::vector<std::uint32_t> asked_;
    std::uint32_t round_ = 0;
};

}  // namespace yardcast::fem
