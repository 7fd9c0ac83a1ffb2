#pragma once

#include <algorithm>
#include <vector>

#include "core/cutting/sheet_units.h"

namespace yardcast::sheets {

/// A length that may occur in a row, at most `most` times.
struct RowLength {
    Um length = 0;
    int most = 0;
};

/// All sums of the lengths up to `limit`, ascending, 0 first; empty where there are more than `mostSums`.
std::vector<Um> sumsUpTo(const std::vector<RowLength>& lengths, Um limit, std::size_t mostSums);

/// Place of the largest of ascending `sums` that is at most `length`; sums[0] must be.
inline int placeOf(const std::vector<Um>& sums, Um length)
{
    return static_cast<int>(std::upper_bound(sums.begin(), sums.end(), length) - sums.begin()) - 1;
}

/// What unlimited copies of the pieces are worth in every rectangle whose sides are sums of piece sizes.
class FreeWorth {
public:
    struct Piece {
        Um w = 0;
        Um h = 0;
        double value = 0.0;
        int id = 0;
        bool turned = false;
    };
    /// False: there are too many sums (more than `mostWork` steps would be needed).
    bool make(Um w, Um h, const std::vector<Piece>& pieces, const std::vector<Um>& xs, const std::vector<Um>& ys,
              double mostWork);
    const std::vector<Um>& xs() const { return xs_; }
    const std::vector<Um>& ys() const { return ys_; }
    double at(int x, int y) const { return cells_[index(x, y)].value; }
    double in(Um w, Um h) const { return at(placeOf(xs_, w), placeOf(ys_, h)); }

    struct Laid {
        int piece = 0;  ///< index into the pieces given
        Um x = 0;
        Um y = 0;
    };
    /// How the worth of a rectangle comes about, from the corner (x, y).
    void trace(int xPlace, int yPlace, Um x, Um y, std::vector<Laid>& out) const;

private:
    struct Cell {
        double value = 0.0;
        int how = -1;      ///< -1 nothing; else a piece
        int cut = 0;       ///< above 0: cut along x at xs[cut]; below 0: along y at ys[-cut]
    };
    std::size_t index(int x, int y) const
    {
        return static_cast<std::size_t>(y) * xs_.size() + static_cast<std::size_t>(x);
    }
    std::vector<Um> xs_;
    std::vector<Um> ys_;
    std::vector<Cell> cells_;
};

}  // namespace yardcast::sheets
