#pragma once

#include <cstdint>
#include <vector>

#include "core/cutting/bar_cutting.h"

/// A list of bars in the solver's own terms: whole numbers, equal lengths together, saw width and trim folded in.
namespace yardcast::bars {

using Units = std::int64_t;   ///< of length or of price
inline constexpr Units kNoLimit = Units{1} << 40;

struct StockKind {
    Units capacity = 0;       ///< usable length and one saw width
    Units price = 0;
    Units limit = kNoLimit;
    int source = 0;           ///< index into the list's stock; -1: stands for leaving a piece out
    bool counts() const { return source >= 0; }
};
/// One length of piece.
struct PieceKind {
    Units width = 0;          ///< length and one saw width
    Units demand = 0;
    std::vector<int> sources; ///< indices into the list's pieces
};
struct BarKinds {
    std::vector<StockKind> stock;
    std::vector<PieceKind> pieces;      ///< longest first
    std::vector<BarUnplaced> hopeless;  ///< longer than all stock
    Units priceStep = 1;                ///< every price is a whole multiple of this
    bool pricesMade = false;            ///< no stock has a price: a bar's price is its capacity
};

/// Hundredths of a millimetre, ten-thousandths of money.
Units lengthUnits(double mm);
Units priceUnits(double price);

/// The list, which has no troubles. Pieces that may find no stock get one of their own, at a price above all else,
/// which stands for leaving them out: so the least unplaced length comes before the least money.
BarKinds kindsOf(const BarCutting& list);

/// A way of cutting one bar: how many of each kind of piece.
struct Pattern {
    int stock = 0;
    std::vector<int> copies;  ///< one a kind of piece
    friend bool operator==(const Pattern&, const Pattern&) = default;
    friend auto operator<=>(const Pattern&, const Pattern&) = default;
};
struct PatternRun {
    Pattern pattern;
    Units times = 0;
    friend bool operator==(const PatternRun&, const PatternRun&) = default;
};
using Solution = std::vector<PatternRun>;

Units usedWidth(const BarKinds& kinds, const Pattern& pattern);
Units priceOf(const BarKinds& kinds, const Solution& solution);

/// Joins equal patterns and sorts them.
void tidy(Solution& solution);

}  // namespace yardcast::bars
