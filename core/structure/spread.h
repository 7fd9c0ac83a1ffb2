#pragma once

#include <array>

namespace yardcast {

/// Calls `visit(shares of the corners, share of the area)` for places spread over a triangle, `across` along a side.
template <typename Visit>
void spreadOverTriangle(int across, Visit visit)
{
    const double area = 1.0 / (across * across);
    const double step = 1.0 / across;
    for (int i = 0; i < across; ++i) {
        for (int j = 0; i + j < across; ++j) {
            for (const bool turned : {false, true}) {
                if (turned && i + j + 1 >= across) continue;
                const double third = turned ? 2.0 / 3 : 1.0 / 3;
                const double u = (i + third) * step;
                const double v = (j + third) * step;
                visit(std::array<double, 3>{1.0 - u - v, u, v}, area);
            }
        }
    }
}

}  // namespace yardcast
