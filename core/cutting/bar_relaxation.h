#pragma once

#include <set>
#include <utility>
#include <vector>

#include "core/cutting/bar_kinds.h"
#include "core/cutting/bar_pricing.h"

/// How little a demand can cost, by column generation (Gilmore and Gomory, Operations Research 9, 1961, 849-859).
namespace yardcast::bars {

__extension__ using Wide = __int128;

/// Bars of each stock that may be taken, least and most.
struct Limits {
    std::vector<Units> least;
    std::vector<Units> most;
};

/// Prices in whole units of worth, fine enough that rounding a dual to them costs nothing that matters.
class Worths {
public:
    explicit Worths(const BarKinds& kinds);
    Units ofStock(int stock) const { return prices_[static_cast<std::size_t>(stock)]; }
    Units of(double price) const;           ///< nearest
    Units priceAtLeast(Wide worth) const;   ///< the least whole price that is worth this or more
    Wide worthOf(Units price) const;        ///< rounded down
    double price(Wide worth) const;

private:
    Units times_ = 1;
    Units over_ = 1;
    std::vector<Units> prices_;
};

/// The answer for a demand. For any plan within the limits: its price is worth `lower` and, on top, for each bar
/// `peak[stock]` less the values of its pieces, and for each stock the `rest` of every bar away from the cheaper limit.
struct Relaxed {
    Wide lower = 0;                         ///< worth; true whatever the doubles did
    std::vector<Units> values;              ///< one a kind of piece
    std::vector<Units> peak;                ///< one a stock: no way of cutting one is worth more
    std::vector<Units> rest;                ///< price less peak
    std::vector<Units> guide;               ///< newer values that prove nothing; empty: `values` are the newest
    std::vector<std::pair<Pattern, double>> amounts;  ///< of the linear program, those above 0
};

class Relaxation {
public:
    explicit Relaxation(const BarKinds& kinds);

    /// Stops early where `lower` reaches `enough` (worth). Roughly: without the work to make `lower` as good as it can
    /// be.
    Relaxed solve(const std::vector<Units>& demand, const Limits& limits, Wide enough, bool roughly);

    PatternPricer& pricer() { return pricer_; }
    const Worths& worths() const { return worths_; }
    long long steps() const { return steps_ + pricer_.steps(); }

private:
    const BarKinds& kinds_;
    Worths worths_;
    PatternPricer pricer_;
    std::set<Pattern> known_;
    long long steps_ = 0;
};

}  // namespace yardcast::bars
