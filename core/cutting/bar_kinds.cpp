#include "core/cutting/bar_kinds.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <optional>

namespace yardcast::bars {

namespace {

/// What stands below may not shorten: a bar that is dearer and no longer than another without limit is never bought.
void dropOutdone(std::vector<StockKind>& stock)
{
    std::vector<StockKind> kept;
    for (std::size_t a = 0; a < stock.size(); ++a) {
        bool outdone = false;
        for (std::size_t b = 0; b < stock.size() && !outdone; ++b) {
            if (a == b || stock[b].limit != kNoLimit) continue;
            const bool asGood = stock[b].capacity >= stock[a].capacity && stock[b].price <= stock[a].price;
            const bool same = stock[b].capacity == stock[a].capacity && stock[b].price == stock[a].price;
            // Of two that are alike the first stays; an offcut at hand stays where the bought one costs nothing either.
            outdone = asGood && (!same || (stock[a].limit == kNoLimit && b < a));
        }
        if (!outdone) kept.push_back(stock[a]);
    }
    stock = std::move(kept);
}

/// More than any plan without waste of whole bars can cost.
Units dearestSanePlan(const BarKinds& kinds)
{
    Units sum = 1;
    for (const StockKind& stock : kinds.stock) {
        if (stock.limit != kNoLimit) sum += stock.price * std::min<Units>(stock.limit, kMostPieces);
    }
    for (const PieceKind& piece : kinds.pieces) {
        std::optional<Units> alone;
        for (const StockKind& stock : kinds.stock) {
            if (stock.limit != kNoLimit || stock.capacity < piece.width) continue;
            const Units bars = (piece.demand - 1) / (stock.capacity / piece.width) + 1;
            alone = std::min(alone.value_or(stock.price * bars), stock.price * bars);
        }
        sum += alone.value_or(0);
    }
    return sum;
}

void addLeftOut(BarKinds& kinds)
{
    const Units sane = dearestSanePlan(kinds);
    const Units shortest = kinds.pieces.empty() ? 1 : kinds.pieces.back().width;
    std::vector<StockKind> extra;
    for (const PieceKind& piece : kinds.pieces) {
        const bool alwaysFits = std::any_of(kinds.stock.begin(), kinds.stock.end(), [&](const StockKind& s) {
            return s.limit == kNoLimit && s.capacity >= piece.width;
        });
        if (alwaysFits) continue;
        const double factor = static_cast<double>(piece.width) / static_cast<double>(shortest);
        const double price = std::min(static_cast<double>(sane) * factor, 1e17);
        const Units steps = static_cast<Units>(std::ceil(price)) / kinds.priceStep + 1;
        extra.push_back({piece.width, steps * kinds.priceStep, kNoLimit, -1});
    }
    kinds.stock.insert(kinds.stock.end(), extra.begin(), extra.end());
}

}  // namespace

Units lengthUnits(double mm)
{
    return std::llround(mm * 100.0);
}

Units priceUnits(double price)
{
    return std::llround(price * 10000.0);
}

BarKinds kindsOf(const BarCutting& list)
{
    BarKinds out;
    const Units saw = lengthUnits(list.sawMm);
    const Units trim = 2 * lengthUnits(list.trimMm);
    for (std::size_t s = 0; s < list.stock.size(); ++s) {
        const BarStock& stock = list.stock[s];
        const Units usable = lengthUnits(stock.lengthMm) - trim;
        const Units limit = stock.count ? Units{*stock.count} : kNoLimit;
        if (usable <= 0 || limit == 0) continue;
        out.stock.push_back({usable + saw, priceUnits(stock.price), limit, static_cast<int>(s)});
    }
    Units longest = 0;
    for (const StockKind& stock : out.stock) longest = std::max(longest, stock.capacity);

    std::map<Units, PieceKind, std::greater<>> byWidth;
    for (std::size_t p = 0; p < list.pieces.size(); ++p) {
        const Units width = lengthUnits(list.pieces[p].lengthMm) + saw;
        if (width > longest) {
            out.hopeless.push_back({static_cast<int>(p), list.pieces[p].count});
            continue;
        }
        PieceKind& kind = byWidth[width];
        kind.width = width;
        kind.demand += list.pieces[p].count;
        kind.sources.push_back(static_cast<int>(p));
    }
    for (auto& [width, kind] : byWidth) out.pieces.push_back(std::move(kind));

    out.pricesMade = std::all_of(out.stock.begin(), out.stock.end(), [](const StockKind& s) { return s.price == 0; });
    if (out.pricesMade) {
        for (StockKind& stock : out.stock) stock.price = stock.capacity;
    }
    dropOutdone(out.stock);
    Units step = 0;
    for (const StockKind& stock : out.stock) step = std::gcd(step, stock.price);
    out.priceStep = std::max<Units>(step, 1);
    addLeftOut(out);
    return out;
}

Units usedWidth(const BarKinds& kinds, const Pattern& pattern)
{
    Units width = 0;
    for (std::size_t i = 0; i < pattern.copies.size(); ++i) width += pattern.copies[i] * kinds.pieces[i].width;
    return width;
}

Units priceOf(const BarKinds& kinds, const Solution& solution)
{
    Units price = 0;
    for (const PatternRun& run : solution)
        price += run.times * kinds.stock[static_cast<std::size_t>(run.pattern.stock)].price;
    return price;
}

void tidy(Solution& solution)
{
    std::map<Pattern, Units> joined;
    for (const PatternRun& run : solution) {
        if (run.times > 0) joined[run.pattern] += run.times;
    }
    solution.clear();
    for (const auto& [pattern, times] : joined) solution.push_back({pattern, times});
}

}  // namespace yardcast::bars
