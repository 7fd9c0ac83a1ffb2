#pragma once

#include <vector>

#include "core/cutting/bar_kinds.h"

/// The most valuable way of cutting one bar: a knapsack with limited copies, in whole numbers.
namespace yardcast::bars {

struct Priced {
    std::vector<int> copies;  ///< empty: nothing worth more than was asked for was found
    Units value = 0;          ///< of the copies; or what was asked for
    bool sure = false;        ///< no way is worth more than `atMost`
    Units atMost = 0;
};

class PatternPricer {
public:
    explicit PatternPricer(const BarKinds& kinds);

    /// A way for a capacity that is worth more than `above`, the best unless that takes too many steps: depth first by
    /// worth a width, with the fractional bound (Martello and Toth, Knapsack Problems, 1990, ch. 3; from memory).
    /// `values` and `most` copies one a kind of piece; values at or below 0 are left out. Sums of values below 2^62.
    Priced quick(Units capacity, const std::vector<Units>& values, const std::vector<int>& most, Units above);

    /// The same by dynamic programming over the width, always sure. On lengths too fine for that `atMost` is an upper
    /// bound and no copies are given. One table serves all capacities: newTable() when values or copies have changed.
    Priced exact(Units capacity, const std::vector<Units>& values, const std::vector<int>& most, Units above);
    void newTable() { table_.clear(); }

    /// Steps done so far, a measure of the work that does not depend on the machine.
    long long steps() const { return steps_; }

private:
    struct Item {
        Units width = 0;
        Units value = 0;
        int most = 0;
        int kind = 0;
        double ratio = 0.0;
    };
    void gather(Units capacity, const std::vector<Units>& values, const std::vector<int>& most);
    bool goDown(Units capacity, Priced& out);
    void buildTable(const std::vector<Units>& values, const std::vector<int>& most);
    Units cellsOf(Units width, bool up) const;

    const BarKinds& kinds_;
    std::vector<Item> items_;
    std::vector<int> chosen_;
    std::vector<Item> tableItems_;
    std::vector<std::vector<Units>> table_;   ///< the most value by width, with the first 0, 1, 2... kinds
    Units grid_ = 1;
    bool fine_ = false;                       ///< the table's widths are rounded down
    long long steps_ = 0;
};

}  // namespace yardcast::bars
