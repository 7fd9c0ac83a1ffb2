#pragma once

#include <optional>
#include <stop_token>
#include <string>
#include <vector>

/// Bars, battens and steel cut from stock lengths: for the least money, proven or with the gap stated.
/// Lengths are reckoned in whole hundredths of a millimetre and prices in whole ten-thousandths, in integers throughout;
/// what lies between is rounded to the nearest.
namespace yardcast {

struct BarStock {
    double lengthMm = 0.0;
    double price = 0.0;         ///< of one; any unit, the same for all of a list
    std::optional<int> count;   ///< how many there are (offcuts at hand, at price 0); without it, as many as wanted
    friend bool operator==(const BarStock&, const BarStock&) = default;
};
struct BarPiece {
    std::string name;
    double lengthMm = 0.0;
    int count = 1;
    friend bool operator==(const BarPiece&, const BarPiece&) = default;
};
/// What is to be cut. A saw width is lost at every cut; a piece that ends where the bar ends needs no cut after it, so
/// n pieces fit where sum(l) + saw (n - 1) <= length. `trimMm` is taken off each of the two ends, its cut included.
struct BarCutting {
    double sawMm = 0.0;
    double trimMm = 0.0;
    std::vector<BarStock> stock;
    std::vector<BarPiece> pieces;
    friend bool operator==(const BarCutting&, const BarCutting&) = default;
};

/// `times` bars of a stock that are all cut alike.
struct BarPattern {
    int stock = 0;              ///< index into the list's stock
    int times = 1;
    std::vector<int> pieces;    ///< indices into the list's pieces, in cutting order: longest first
    double remainderMm = 0.0;   ///< what is left of each bar when the saw has passed and the ends are trimmed; 0 where nothing
    friend bool operator==(const BarPattern&, const BarPattern&) = default;
};
/// Pieces that got no bar: longer than all stock, or no stock left.
struct BarUnplaced {
    int piece = 0;              ///< index into the list's pieces
    int count = 0;
    friend bool operator==(const BarUnplaced&, const BarUnplaced&) = default;
};
struct BarPlan {
    long long count = 0;        ///< bars taken from stock, offcuts included
    double price = 0.0;         ///< of them all
    double bound = 0.0;         ///< no plan that places as much costs less than this
    std::optional<double> boundCount;  ///< where there is one sort of stock: no plan takes fewer bars; not rounded up
    bool proven = false;        ///< the price is the least there is
    int differentPatterns = 0;  ///< by lengths, names apart
    std::vector<BarPattern> patterns;  ///< in the order of the stock, most alike first; equal lengths under several names split them
    std::vector<double> remaindersMm;  ///< all that is left, longest first, one entry a bar with something left
    std::vector<BarUnplaced> unplaced;
    friend bool operator==(const BarPlan&, const BarPlan&) = default;
};

/// What is wrong with a list, by place: `stock` and `piece` are indices, or -1.
struct BarTrouble {
    enum class Kind {
        NoLength,               ///< a length that is not a number above 0
        TooLong,                ///< a length beyond kLongestBarMm
        BadCount,               ///< a count below 1 (stock: below 0)
        TooMany,                ///< more than kMostPieces in all, or more than kMostBarKinds different lengths or stocks
        BadPrice,               ///< no number, below 0, or beyond kDearestBar
        BadSaw,                 ///< saw width or trim no number, below 0, or beyond kLongestBarMm
        NoStock                 ///< nothing to cut from
    };
    Kind kind = Kind::NoLength;
    int stock = -1;
    int piece = -1;
    friend bool operator==(const BarTrouble&, const BarTrouble&) = default;
};
inline constexpr double kLongestBarMm = 1e6;
inline constexpr double kDearestBar = 1e6;
inline constexpr int kMostPieces = 1'000'000;
inline constexpr int kMostBarKinds = 400;

/// All that is wrong with a list, at once; empty where it can be cut. Pieces longer than all stock are not wrong: they
/// come back as unplaced.
std::vector<BarTrouble> barTroubles(const BarCutting& list);

/// The cheapest plan: least unplaced length first, then least money, then fewest bars, fewest different patterns and
/// large remainders. The same list gives the same plan on every machine: effort is counted in steps, not in seconds. A
/// stop ends the search with the best plan so far and the bound so far. A list with troubles gives an empty plan.
BarPlan cutBars(const BarCutting& list, std::stop_token stop = {});

}  // namespace yardcast
