#include "core/cutting/sheet_cutting.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

bool isSide(double mm)
{
    return std::isfinite(mm) && mm >= 0.01;
}

bool isWithin(double value, double most)
{
    return value >= 0.0 && value <= most;
}

}  // namespace

std::vector<SheetTrouble> sheetTroubles(const SheetCutting& list)
{
    using Kind = SheetTrouble::Kind;
    std::vector<SheetTrouble> out;
    for (const double mm : {list.sawMm, list.trimMm, list.leastStripMm}) {
        if (!isWithin(mm, kLargestSheetMm)) {
            out.push_back({Kind::badSaw, -1, -1});
        }
    }
    if (!isWithin(list.cutPrice, kDearestSheet)) {
        out.push_back({Kind::badPrice, -1, -1});
    }
    if (list.freeCuts < 0) {
        out.push_back({Kind::badCount, -1, -1});
    }
    if (list.stock.empty()) {
        out.push_back({Kind::noStock, -1, -1});
    }
    const auto checkSize = [&out](Size size, int stock, int piece) {
        if (!isSide(size.width) || !isSide(size.depth)) {
            out.push_back({Kind::noSize, stock, piece});
        } else if (std::max(size.width, size.depth) > kLargestSheetMm) {
            out.push_back({Kind::tooLarge, stock, piece});
        }
    };
    for (std::size_t s = 0; s < list.stock.size(); ++s) {
        const SheetStock& stock = list.stock[s];
        const int at = static_cast<int>(s);
        checkSize(stock.size, at, -1);
        if (!isWithin(stock.price, kDearestSheet)) {
            out.push_back({Kind::badPrice, at, -1});
        }
        if (stock.count.value_or(0) < 0) {
            out.push_back({Kind::badCount, at, -1});
        }
    }
    std::int64_t total = 0;
    for (std::size_t p = 0; p < list.pieces.size(); ++p) {
        const int at = static_cast<int>(p);
        checkSize(list.pieces[p].size, -1, at);
        if (list.pieces[p].count < 1) {
            out.push_back({Kind::badCount, -1, at});
        }
        total += std::max(list.pieces[p].count, 0);
    }
    const std::size_t mostKinds = kMostSheetKinds;
    if (total > kMostSheetPieces || list.pieces.size() > mostKinds || list.stock.size() > mostKinds) {
        out.push_back({Kind::tooMany, -1, -1});
    }
    return out;
}

}  // namespace yardcast
