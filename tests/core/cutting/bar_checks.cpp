#include "tests/core/cutting/bar_checks.h"

#include <cmath>

namespace yardcast {

namespace {

/// What a bar's pieces take: the pieces one after the other, a cut after each that does not end where the bar ends.
bool fits(const BarCutting& list, double usableMm, const std::vector<int>& pieces, double& remainderMm)
{
    double at = 0.0;
    for (std::size_t p = 0; p < pieces.size(); ++p) {
        const int piece = pieces[p];
        at += list.pieces[static_cast<std::size_t>(piece)].lengthMm;
        if (at > usableMm + 1e-6) return false;
        if (std::abs(at - usableMm) < 1e-6) {
            remainderMm = 0.0;
            return p + 1 == pieces.size();
        }
        at += list.sawMm;
    }
    remainderMm = std::max(usableMm - at, 0.0);
    return true;
}

}  // namespace

std::string whatIsWrong(const BarCutting& list, const BarPlan& plan)
{
    std::vector<long long> placed(list.pieces.size(), 0);
    std::vector<long long> taken(list.stock.size(), 0);
    double price = 0.0;
    long long count = 0;
    std::vector<double> rests;
    for (const BarPattern& pattern : plan.patterns) {
        if (pattern.stock < 0 || pattern.stock >= static_cast<int>(list.stock.size())) return "a pattern of no stock";
        if (pattern.times < 1 || pattern.pieces.empty()) return "an empty pattern";
        const BarStock& stock = list.stock[static_cast<std::size_t>(pattern.stock)];
        double rest = -1.0;
        if (!fits(list, stock.lengthMm - 2.0 * list.trimMm, pattern.pieces, rest)) return "a bar is overfilled";
        if (std::abs(rest - pattern.remainderMm) > 0.006) return "a remainder is wrong";
        for (int t = 0; t < pattern.times && rest > 0.005; ++t) rests.push_back(rest);
        for (const int piece : pattern.pieces) placed[static_cast<std::size_t>(piece)] += pattern.times;
        taken[static_cast<std::size_t>(pattern.stock)] += pattern.times;
        price += stock.price * pattern.times;
        count += pattern.times;
    }
    for (const BarUnplaced& left : plan.unplaced) placed[static_cast<std::size_t>(left.piece)] += left.count;
    for (std::size_t p = 0; p < placed.size(); ++p) {
        if (placed[p] != list.pieces[p].count)
            return "piece " + std::to_string(p) + " is there " + std::to_string(placed[p]) + " times";
    }
    for (std::size_t s = 0; s < taken.size(); ++s) {
        if (list.stock[s].count && taken[s] > *list.stock[s].count) return "more of a stock than there is";
    }
    if (count != plan.count) return "the count is wrong";
    if (std::abs(price - plan.price) > 1e-6 * (1.0 + price)) return "the price is wrong";
    if (plan.bound > plan.price + 1e-9) return "the bound is above the price";
    if (plan.boundCount && *plan.boundCount > static_cast<double>(plan.count) + 1e-9)
        return "the bound of the count is above it";
    if (rests.size() != plan.remaindersMm.size()) return "remainders are missing";
    return {};
}

}  // namespace yardcast
