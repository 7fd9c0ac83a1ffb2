#pragma once

#include <cstdint>
#include <optional>
#include <stop_token>
#include <vector>

#include "core/geometry/point.h"

namespace yardcast {

/// A piece that may be cut from the one sheet of a knapsack, with what it is worth.
struct ValuedPiece {
    Size size;
    double value = 0.0;            ///< at least 0
    std::optional<int> most;       ///< of this piece; nothing: any number
};

struct KnapsackPiece {
    int piece = 0;                 ///< index into the pieces given
    Point at;
    Size size;                     ///< as it lies
    bool turned = false;
};

struct GuillotineKnapsack {
    double value = 0.0;
    double bound = 0.0;            ///< no cutting is worth more
    bool proven = false;           ///< value is the bound
    std::vector<KnapsackPiece> pieces;
};

/// The most worth that straight through-cuts (any number of stages) get out of one sheet, `sawMm` lost at every cut.
/// Without limits on the copies by dynamic programming over the sums of piece sizes (Beasley 1985, "Algorithms for
/// unconstrained two-dimensional guillotine cutting", JORS 36); with limits by building rectangles best first under that
/// bound (Viswanathan and Bagchi 1993, "Best-first search methods for constrained two-dimensional cutting stock problems",
/// Operations Research 41), until proven or until `places` rectangles were tried. Pieces that do not fit, or that are no
/// sizes, are left out.
GuillotineKnapsack guillotineKnapsack(Size sheet, const std::vector<ValuedPiece>& pieces, bool turn, double sawMm,
                                      std::uint64_t places = 4'000'000, std::stop_token stop = {});

}  // namespace yardcast
