#include "core/cutting/bar_cutting.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

bool isLength(double mm)
{
    return std::isfinite(mm) && mm >= 0.01;
}

}  // namespace

std::vector<BarTrouble> barTroubles(const BarCutting& list)
{
    using Kind = BarTrouble::Kind;
    std::vector<BarTrouble> out;
    for (const double mm : {list.sawMm, list.trimMm}) {
        if (!(mm >= 0.0 && mm <= kLongestBarMm)) out.push_back({Kind::BadSaw, -1, -1});
    }
    if (list.stock.empty()) out.push_back({Kind::NoStock, -1, -1});
    for (std::size_t s = 0; s < list.stock.size(); ++s) {
        const BarStock& stock = list.stock[s];
        const int at = static_cast<int>(s);
        if (!isLength(stock.lengthMm)) out.push_back({Kind::NoLength, at, -1});
        if (stock.lengthMm > kLongestBarMm) out.push_back({Kind::TooLong, at, -1});
        if (!(stock.price >= 0.0 && stock.price <= kDearestBar)) out.push_back({Kind::BadPrice, at, -1});
        if (stock.count && *stock.count < 0) out.push_back({Kind::BadCount, at, -1});
    }
    long long total = 0;
    std::vector<double> lengths;
    for (std::size_t p = 0; p < list.pieces.size(); ++p) {
        const BarPiece& piece = list.pieces[p];
        const int at = static_cast<int>(p);
        if (!isLength(piece.lengthMm)) out.push_back({Kind::NoLength, -1, at});
        if (piece.lengthMm > kLongestBarMm) out.push_back({Kind::TooLong, -1, at});
        if (piece.count < 1) out.push_back({Kind::BadCount, -1, at});
        total += std::max(piece.count, 0);
        if (std::isfinite(piece.lengthMm)) lengths.push_back(piece.lengthMm);
    }
    std::sort(lengths.begin(), lengths.end());
    const auto kinds = std::unique(lengths.begin(), lengths.end()) - lengths.begin();
    if (total > kMostPieces || kinds > kMostBarKinds || list.stock.size() > static_cast<std::size_t>(kMostBarKinds)) {
        out.push_back({Kind::TooMany, -1, -1});
    }
    return out;
}

}  // namespace yardcast
