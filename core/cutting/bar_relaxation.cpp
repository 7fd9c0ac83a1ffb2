#include "core/cutting/bar_relaxation.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/cutting/bar_master.h"

namespace yardcast::bars {

namespace {

constexpr double kWorthOfDearest =
    4294967296.0;  ///< 2^32: duals up to a thousand of them, a million pieces: below 2^62
constexpr int kMostRounds = 2000;
constexpr long long kMostStepsASolve = 400'000'000;

Wide lagrangian(const Worths& worths, const std::vector<Units>& demand, const std::vector<Units>& values,
                const std::vector<Units>& peak, const Limits& limits)
{
    Wide sum = 0;
    for (std::size_t i = 0; i < demand.size(); ++i) sum += static_cast<Wide>(demand[i]) * values[i];
    for (std::size_t s = 0; s < peak.size(); ++s) {
        const Units rest = worths.ofStock(static_cast<int>(s)) - peak[s];
        sum += static_cast<Wide>(rest) * (rest > 0 ? limits.least[s] : limits.most[s]);
    }
    return sum;
}

bool proper(const Pattern& pattern, const std::vector<Units>& demand, const Limits& limits)
{
    if (limits.most[static_cast<std::size_t>(pattern.stock)] <= 0) return false;
    for (std::size_t i = 0; i < demand.size(); ++i) {
        if (pattern.copies[i] > demand[i]) return false;
    }
    return true;
}

}  // namespace

Worths::Worths(const BarKinds& kinds)
{
    double dearest = 1.0;
    for (const StockKind& stock : kinds.stock) dearest = std::max(dearest, static_cast<double>(stock.price));
    if (dearest > kWorthOfDearest) {
        over_ = static_cast<Units>(std::ceil(dearest / kWorthOfDearest));
    } else {
        times_ = static_cast<Units>(std::floor(kWorthOfDearest / dearest));
    }
    for (const StockKind& stock : kinds.stock) prices_.push_back(stock.price * times_ / over_);
}

Units Worths::of(double price) const
{
    const double most = kWorthOfDearest * 1000.0;
    return std::llround(std::clamp(price * static_cast<double>(times_) / static_cast<double>(over_), -most, most));
}

Units Worths::priceAtLeast(Wide worth) const
{
    if (worth <= 0) return 0;
    return static_cast<Units>((worth * over_ + times_ - 1) / times_);
}

Wide Worths::worthOf(Units price) const
{
    return static_cast<Wide>(price) * times_ / over_;
}

double Worths::price(Wide worth) const
{
    return static_cast<double>(worth) * static_cast<double>(over_) / static_cast<double>(times_);
}

Relaxation::Relaxation(const BarKinds& kinds) : kinds_(kinds), worths_(kinds), pricer_(kinds)
{
    // A piece alone, as often as it fits: something to begin with.
    for (std::size_t s = 0; s < kinds.stock.size(); ++s) {
        for (std::size_t i = 0; i < kinds.pieces.size(); ++i) {
            const Units fit = std::min(kinds.stock[s].capacity / kinds.pieces[i].width, kinds.pieces[i].demand);
            if (fit <= 0 || (kinds.stock[s].source < 0 && fit > 1)) continue;
            Pattern pattern{static_cast<int>(s), std::vector<int>(kinds.pieces.size(), 0)};
            pattern.copies[i] = static_cast<int>(fit);
            known_.insert(std::move(pattern));
        }
    }
}

Relaxed Relaxation::solve(const std::vector<Units>& demand, const Limits& wanted, Wide enough, bool roughly)
{
    const std::size_t stocks = kinds_.stock.size();
    Units pieces = 0;
    for (const Units count : demand) pieces += count;
    // No sensible plan takes more bars than there are pieces.
    Limits limits = wanted;
    Limits rows = wanted;
    for (std::size_t s = 0; s < stocks; ++s) {
        if (limits.most[s] >= pieces) {
            limits.most[s] = pieces;
            rows.most[s] = kNoLimit;
        }
        limits.least[s] = std::min(limits.least[s], limits.most[s]);
        rows.least[s] = limits.least[s];
    }
    std::vector<int> most(demand.size());
    for (std::size_t i = 0; i < demand.size(); ++i) most[i] = static_cast<int>(demand[i]);

    BarMaster master(kinds_, demand, rows.least, rows.most);
    for (const Pattern& pattern : known_) {
        if (proper(pattern, demand, limits)) master.add(pattern);
    }
    Relaxed out;
    // To begin with, what a width costs at the least: true whatever follows.
    double rate = std::numeric_limits<double>::infinity();
    for (std::size_t s = 0; s < stocks; ++s) {
        if (limits.most[s] <= 0) continue;
        rate = std::min(rate, static_cast<double>(worths_.ofStock(static_cast<int>(s))) /
                                  static_cast<double>(kinds_.stock[s].capacity));
    }
    if (!std::isfinite(rate)) rate = 0.0;
    for (const PieceKind& piece : kinds_.pieces) {
        out.values.push_back(static_cast<Units>(std::floor(rate * static_cast<double>(piece.width))));
    }
    for (std::size_t s = 0; s < stocks; ++s) {
        out.peak.push_back(static_cast<Units>(std::floor(rate * static_cast<double>(kinds_.stock[s].capacity))) + 1);
        out.rest.push_back(worths_.ofStock(static_cast<int>(s)) - out.peak[s]);
    }
    out.lower = std::max<Wide>(lagrangian(worths_, demand, out.values, out.peak, limits), 0);
    std::vector<Units> values(demand.size());
    std::vector<Units> peak(stocks);
    for (int round = 0; round < kMostRounds; ++round) {
        if (!master.solve(kMostStepsASolve - master.steps())) break;
        for (std::size_t i = 0; i < demand.size(); ++i) {
            const double dual = demand[i] > 0 ? master.pieceDual(static_cast<int>(i)) : 0.0;
            values[i] = std::max<Units>(worths_.of(dual * master.dearest()), 0);
        }
        bool added = false;
        bool sure = true;
        for (const bool thoroughly : {false, true}) {
            if (thoroughly && (added || sure || roughly)) break;
            sure = true;
            pricer_.newTable();
            for (std::size_t s = 0; s < stocks; ++s) {
                const int stock = static_cast<int>(s);
                const Units capacity = kinds_.stock[s].capacity;
                peak[s] =
                    std::max<Units>(worths_.ofStock(stock) - worths_.of(master.stockDual(stock) * master.dearest()), 0);
                if (limits.most[s] <= 0) continue;
                Priced found = thoroughly ? pricer_.exact(capacity, values, most, peak[s])
                                          : pricer_.quick(capacity, values, most, peak[s]);
                peak[s] = found.atMost;
                sure = sure && found.sure;
                if (found.copies.empty()) continue;
                Pattern pattern{stock, std::move(found.copies)};
                if (!known_.insert(pattern).second) continue;
                master.add(pattern);
                added = true;
            }
        }
        const Wide lower = sure ? lagrangian(worths_, demand, values, peak, limits) : 0;
        if (lower > out.lower) {
            out.lower = lower;
            out.values = values;
            out.peak = peak;
        }
        if (roughly) out.guide = values;
        if (!added || out.lower >= enough) break;
    }
    for (std::size_t s = 0; s < stocks; ++s) out.rest[s] = worths_.ofStock(static_cast<int>(s)) - out.peak[s];
    const std::vector<double> amounts = master.amounts();
    for (int p = 0; p < master.patterns(); ++p) {
        if (amounts[static_cast<std::size_t>(p)] > 1e-7)
            out.amounts.push_back({master.pattern(p), amounts[static_cast<std::size_t>(p)]});
    }
    steps_ += master.steps();
    return out;
}

}  // namespace yardcast::bars
