#include "core/cutting/bar_cutting.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/cutting/bar_kinds.h"
#include "core/cutting/bar_search.h"
#include "core/cutting/bar_tidy.h"

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

namespace {

using bars::BarKinds;
using bars::Solution;
using bars::Units;

/// Gives the pieces of a solution their names, in the order of the list; runs split where a name runs out.
class Naming {
public:
    Naming(const BarCutting& list, const BarKinds& kinds) : list_(list), kinds_(kinds), next_(kinds.pieces.size(), 0)
    {
        for (const BarPiece& piece : list.pieces) left_.push_back(piece.count);
    }
    void add(const bars::PatternRun& run, std::vector<BarPattern>& out)
    {
        const bars::StockKind& stock = kinds_.stock[static_cast<std::size_t>(run.pattern.stock)];
        const Units rest = stock.capacity - bars::usedWidth(kinds_, run.pattern) - bars::lengthUnits(list_.sawMm);
        Units times = run.times;
        while (times > 0) {
            BarPattern block{stock.source, 1, {}, static_cast<double>(std::max<Units>(rest, 0)) / 100.0};
            Units blockTimes = times;
            for (std::size_t kind = 0; kind < run.pattern.copies.size(); ++kind) {
                blockTimes = std::min(blockTimes, choose(kind, run.pattern.copies[kind], block.pieces));
            }
            block.times = static_cast<int>(blockTimes);
            for (const int piece : block.pieces) left_[static_cast<std::size_t>(piece)] -= block.times;
            times -= blockTimes;
            out.push_back(std::move(block));
        }
    }

private:
    /// Chooses so many pieces of a kind; returns how many bars the names last for.
    Units choose(std::size_t kind, int copies, std::vector<int>& pieces)
    {
        const std::vector<int>& sources = kinds_.pieces[kind].sources;
        Units lasts = kMostPieces;
        for (std::size_t at = next_[kind]; copies > 0 && at < sources.size(); ++at) {
            const int source = sources[at];
            const int left = left_[static_cast<std::size_t>(source)];
            const int taken = std::min(copies, left);
            if (left == 0 && at == next_[kind]) ++next_[kind];
            if (taken == 0) continue;
            pieces.insert(pieces.end(), static_cast<std::size_t>(taken), source);
            lasts = std::min<Units>(lasts, left / taken);
            copies -= taken;
        }
        return lasts;
    }

    const BarCutting& list_;
    const BarKinds& kinds_;
    std::vector<std::size_t> next_;
    std::vector<int> left_;
};

void addUnplaced(const BarKinds& kinds, const std::vector<BarPattern>& named, BarPlan& plan)
{
    plan.unplaced = kinds.hopeless;
    for (const BarPattern& pattern : named) {
        for (const int piece : pattern.pieces) plan.unplaced.push_back({piece, pattern.times});
    }
    std::sort(plan.unplaced.begin(), plan.unplaced.end(),
              [](const BarUnplaced& a, const BarUnplaced& b) { return a.piece < b.piece; });
    std::vector<BarUnplaced> joined;
    for (const BarUnplaced& one : plan.unplaced) {
        if (!joined.empty() && joined.back().piece == one.piece) joined.back().count += one.count;
        else joined.push_back(one);
    }
    plan.unplaced = std::move(joined);
}

}  // namespace

BarPlan cutBars(const BarCutting& list, std::stop_token stop)
{
    BarPlan plan;
    if (!barTroubles(list).empty()) return plan;
    const BarKinds kinds = bars::kindsOf(list);
    const bars::SearchAnswer answer = bars::searchBars(kinds, std::move(stop));
    bars::PatternPricer pricer(kinds);
    const Solution solution = bars::withLongerRests(kinds, bars::withFewerPatterns(kinds, answer.best, pricer));

    Naming naming(list, kinds);
    std::vector<BarPattern> leftOut;
    Units price = 0;
    Units leftOutPrice = 0;
    std::vector<bars::PatternRun> runs = solution;
    std::stable_sort(runs.begin(), runs.end(), [&](const bars::PatternRun& a, const bars::PatternRun& b) {
        const int sourceA = kinds.stock[static_cast<std::size_t>(a.pattern.stock)].source;
        const int sourceB = kinds.stock[static_cast<std::size_t>(b.pattern.stock)].source;
        if (sourceA != sourceB) return sourceA < sourceB;
        if (a.times != b.times) return a.times > b.times;
        return a.pattern.copies > b.pattern.copies;
    });
    for (const bars::PatternRun& run : runs) {
        const bars::StockKind& stock = kinds.stock[static_cast<std::size_t>(run.pattern.stock)];
        (stock.counts() ? price : leftOutPrice) += run.times * stock.price;
        naming.add(run, stock.counts() ? plan.patterns : leftOut);
        if (!stock.counts()) continue;
        plan.count += run.times;
        ++plan.differentPatterns;
    }
    addUnplaced(kinds, leftOut, plan);
    for (const BarPattern& pattern : plan.patterns) {
        if (pattern.remainderMm > 0.0) {
            plan.remaindersMm.insert(plan.remaindersMm.end(), static_cast<std::size_t>(pattern.times),
                                     pattern.remainderMm);
        }
    }
    std::sort(plan.remaindersMm.begin(), plan.remaindersMm.end(), std::greater<>());
    const double bound = std::max(answer.bound - static_cast<double>(leftOutPrice), 0.0);
    plan.price = kinds.pricesMade ? 0.0 : static_cast<double>(price) / 10000.0;
    plan.bound = kinds.pricesMade ? 0.0 : std::min(bound / 10000.0, plan.price);
    if (kinds.stock.size() == 1) {
        plan.boundCount =
            std::min(answer.bound / static_cast<double>(kinds.stock[0].price), static_cast<double>(plan.count));
    }
    plan.proven = answer.proven;
    return plan;
}

}  // namespace yardcast
