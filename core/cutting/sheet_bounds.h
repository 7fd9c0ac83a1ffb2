#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/cutting/sheet_units.h"

namespace yardcast::sheets {

/// No filling of sheets gets `need` out of less than sum(held of each sheet): an area, or what a pair of dual feasible
/// functions makes of it (Fekete and Schepers 2004, "A general framework for bounds for higher-dimensional orthogonal
/// packing problems", Math. Methods Oper. Res. 60).
struct Measure {
    double need = 0.0;
    std::vector<double> held;   ///< of each sort of sheet
};

/// The measures that may show that sheets do not do. The first is the area that can be used.
std::vector<Measure> measures(const std::vector<Item>& items, const std::vector<Bin>& bins);

/// How many of each sort of sheet, with their price.
struct Combination {
    std::int64_t price = 0;
    std::vector<int> counts;
};

/// Combinations of sheets by rising price (then by count) that no measure rules out. Sheets at price 0 are always all
/// there.
class Combinations {
public:
    static constexpr std::size_t kMostLooks = 20'000'000;
    /// `mostLooks` at one sort of sheet under one measure.
    Combinations(const std::vector<Bin>& bins, const std::vector<Measure>& measures,
                 std::size_t mostLooks = kMostLooks);
    /// Nothing: there is none, or too many would have to be looked at (`exhausted` tells which).
    std::optional<Combination> next();
    /// No combination still to come costs less.
    std::int64_t floorPrice() const { return floor_; }
    bool exhausted() const { return exhausted_; }
    /// A measure of the work done.
    std::size_t looks() const { return looks_; }

private:
    struct Entry {
        std::int64_t price = 0;
        int sheets = 0;
        int from = 0;
        std::vector<int> counts;
    };
    bool after(const Entry& a, const Entry& b) const;
    bool enough(const std::vector<int>& counts) const;
    bool canEver(const Entry& entry) const;
    void push(Entry entry);

    const std::vector<Bin>& bins_;
    const std::vector<Measure>& measures_;
    std::vector<int> order_;
    std::vector<Entry> heap_;
    std::int64_t floor_ = 0;
    bool exhausted_ = false;
    std::size_t looks_ = 0;
    std::size_t mostLooks_ = kMostLooks;
};

/// A price that no plan undercuts, without looking at combinations: the measures as linear bounds.
std::int64_t linearBound(const std::vector<Bin>& bins, const std::vector<Measure>& measures);

}  // namespace yardcast::sheets
