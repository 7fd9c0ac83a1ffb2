#include "core/cutting/sheet_sums.h"

namespace yardcast::sheets {

std::vector<Um> sumsUpTo(const std::vector<RowLength>& lengths, Um limit, std::size_t mostSums)
{
    std::vector<Um> sums{0};
    std::vector<Um> next;
    for (const RowLength& row : lengths) {
        if (row.length <= 0 || row.length > limit) {
            continue;
        }
        const int most = static_cast<int>(std::min<Um>(row.most, limit / row.length));
        std::vector<Um> layer = sums;
        for (int copy = 0; copy < most; ++copy) {
            for (Um& sum : layer) {
                sum += row.length;
            }
            layer.erase(std::upper_bound(layer.begin(), layer.end(), limit), layer.end());
            if (layer.empty()) {
                break;
            }
            next.clear();
            std::set_union(sums.begin(), sums.end(), layer.begin(), layer.end(), std::back_inserter(next));
            sums.swap(next);
            if (sums.size() > mostSums) {
                return {};
            }
        }
    }
    return sums;
}

bool FreeWorth::make(Um w, Um h, const std::vector<Piece>& pieces, const std::vector<Um>& xs, const std::vector<Um>& ys,
                     double mostWork)
{
    xs_ = xs;
    ys_ = ys;
    const double columns = static_cast<double>(xs_.size());
    const double rows = static_cast<double>(ys_.size());
    if (xs_.empty() || ys_.empty() || columns * rows * (columns + rows) / 4.0 > mostWork) {
        return false;
    }
    cells_.assign(xs_.size() * ys_.size(), Cell{});
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const Piece& piece = pieces[i];
        if (piece.w > w || piece.h > h || piece.value <= 0.0) {
            continue;
        }
        const int x0 = static_cast<int>(std::lower_bound(xs_.begin(), xs_.end(), piece.w) - xs_.begin());
        const int y0 = static_cast<int>(std::lower_bound(ys_.begin(), ys_.end(), piece.h) - ys_.begin());
        for (int y = y0; y < static_cast<int>(ys_.size()); ++y) {
            for (int x = x0; x < static_cast<int>(xs_.size()); ++x) {
                Cell& cell = cells_[index(x, y)];
                if (piece.value > cell.value) {
                    cell.value = piece.value;
                    cell.how = static_cast<int>(i);
                }
            }
        }
    }
    // Where the rest of a cut at xs[c] falls among the sums, for every width: it only grows with the width.
    const int nx = static_cast<int>(xs_.size());
    const int ny = static_cast<int>(ys_.size());
    std::vector<int> restX(xs_.size());
    std::vector<std::vector<int>> restY(ys_.size());
    for (int y = 1; y < ny; ++y) {
        const Um depth = ys_[static_cast<std::size_t>(y)];
        for (int c = 1; c < y && 2 * ys_[static_cast<std::size_t>(c)] <= depth; ++c) {
            restY[static_cast<std::size_t>(y)].push_back(placeOf(ys_, depth - ys_[static_cast<std::size_t>(c)]));
        }
    }
    for (int x = 1; x < nx; ++x) {
        const Um width = xs_[static_cast<std::size_t>(x)];
        int halves = 0;
        for (int c = 1; c < x && 2 * xs_[static_cast<std::size_t>(c)] <= width; ++c) {
            restX[static_cast<std::size_t>(c)] = placeOf(xs_, width - xs_[static_cast<std::size_t>(c)]);
            halves = c;
        }
        for (int y = 1; y < ny; ++y) {
            Cell best = cells_[index(x, y)];
            for (int c = 1; c <= halves; ++c) {
                const double value =
                    cells_[index(c, y)].value + cells_[index(restX[static_cast<std::size_t>(c)], y)].value;
                if (value > best.value) {
                    best = {value, -1, c};
                }
            }
            const std::vector<int>& rest = restY[static_cast<std::size_t>(y)];
            for (int c = 1; c <= static_cast<int>(rest.size()); ++c) {
                const double value =
                    cells_[index(x, c)].value + cells_[index(x, rest[static_cast<std::size_t>(c) - 1])].value;
                if (value > best.value) {
                    best = {value, -1, -c};
                }
            }
            cells_[index(x, y)] = best;
        }
    }
    return true;
}

void FreeWorth::trace(int xPlace, int yPlace, Um x, Um y, std::vector<Laid>& out) const
{
    const Cell& cell = cells_[index(xPlace, yPlace)];
    if (cell.how >= 0) {
        out.push_back({cell.how, x, y});
    } else if (cell.cut > 0) {
        const Um cut = xs_[static_cast<std::size_t>(cell.cut)];
        trace(cell.cut, yPlace, x, y, out);
        trace(placeOf(xs_, xs_[static_cast<std::size_t>(xPlace)] - cut), yPlace, x + cut, y, out);
    } else if (cell.cut < 0) {
        const Um cut = ys_[static_cast<std::size_t>(-cell.cut)];
        trace(xPlace, -cell.cut, x, y, out);
        trace(xPlace, placeOf(ys_, ys_[static_cast<std::size_t>(yPlace)] - cut), x, y + cut, out);
    }
}

}  // namespace yardcast::sheets
