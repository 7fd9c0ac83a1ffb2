#pragma once

#include <array>
#include <cstddef>

/// Tables of standards read between their rows. For core/pour only.
namespace yardcast {

struct TablePoint {
    double x;
    double y;
};
/// In rising x.
template <std::size_t N>
using TableOf = std::array<TablePoint, N>;

/// Between the points by straight lines, flat beyond them (and for what is no number).
template <std::size_t N>
constexpr double interpolated(const TableOf<N>& table, double x)
{
    if (!(x > table.front().x)) return table.front().y;
    for (std::size_t i = 1; i < N; ++i) {
        if (x > table[i].x) continue;
        const double share = (x - table[i - 1].x) / (table[i].x - table[i - 1].x);
        return table[i - 1].y + share * (table[i].y - table[i - 1].y);
    }
    return table.back().y;
}

}  // namespace yardcast
