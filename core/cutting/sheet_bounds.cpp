#include "core/cutting/sheet_bounds.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "core/cutting/sheet_scales.h"
#include "core/cutting/sheet_sums.h"

namespace yardcast::sheets {

namespace {

constexpr double kMostPairSteps = 3e6;
constexpr std::size_t kMostMeasures = 24;
constexpr std::size_t kMostScales = 120;
constexpr std::size_t kMostAsked = 12;     // sorts of sheet
constexpr std::size_t kLooksToTell = 1'500'000;   // at one sort of sheet under one measure
/// Sums of doubles that stand for whole numbers below 2^53 differ by rounding only.
constexpr double kRounding = 1e-9;

/// What straight cuts get out of one sheet of each sort, whatever the copies.
class CutSheets {
public:
    CutSheets(const std::vector<Item>& items, const std::vector<Bin>& bins) : items_(items), bins_(bins)
    {
        double steps = 0.0;
        for (const Bin& bin : bins) {
            xs_.push_back(sumsUpTo(sides(true), bin.w, kMostCutSums));
            ys_.push_back(sumsUpTo(sides(false), bin.h, kMostCutSums));
            const double x = static_cast<double>(xs_.back().size());
            const double y = static_cast<double>(ys_.back().size());
            steps += x * y * (x + y) / 4.0;
            small_ = small_ && x > 0.0 && y > 0.0 && steps <= kMostCutSteps;
        }
    }
    bool isSmall() const { return small_; }

    /// The worth of the best sheet of each sort; `used` of each item in the best of sort `asked`.
    std::vector<double> worth(const std::vector<double>& values, std::size_t asked, std::vector<int>& used) const
    {
        std::vector<FreeWorth::Piece> pieces;
        for (std::size_t i = 0; i < items_.size(); ++i) {
            pieces.push_back({items_[i].w, items_[i].h, values[i], static_cast<int>(i), false});
            if (items_[i].turn) {
                pieces.push_back({items_[i].h, items_[i].w, values[i], static_cast<int>(i), true});
            }
        }
        std::vector<double> most;
        for (std::size_t b = 0; b < bins_.size(); ++b) {
            FreeWorth table;
            table.make(bins_[b].w, bins_[b].h, pieces, xs_[b], ys_[b], kMostCutSteps);
            const int x = static_cast<int>(xs_[b].size()) - 1;
            const int y = static_cast<int>(ys_[b].size()) - 1;
            most.push_back(table.at(x, y));
            if (b == asked) {
                std::vector<FreeWorth::Laid> laid;
                table.trace(x, y, 0, 0, laid);
                used.assign(items_.size(), 0);
                for (const FreeWorth::Laid& one : laid) {
                    ++used[static_cast<std::size_t>(pieces[static_cast<std::size_t>(one.piece)].id)];
                }
            }
        }
        return most;
    }

private:
    static constexpr std::size_t kMostCutSums = 300;
    static constexpr double kMostCutSteps = 1.5e6;
    std::vector<RowLength> sides(bool x) const
    {
        std::vector<RowLength> rows;
        for (const Item& item : items_) {
            rows.push_back({x ? item.w : item.h, item.count});
            if (item.turn) {
                rows.push_back({x ? item.h : item.w, item.count});
            }
        }
        return rows;
    }
    const std::vector<Item>& items_;
    const std::vector<Bin>& bins_;
    std::vector<std::vector<Um>> xs_;
    std::vector<std::vector<Um>> ys_;
    bool small_ = true;
};

/// Any worth of the pieces bounds the sheets by what one sheet can be worth (the linear program's dual; Gilmore and Gomory
/// 1965, "Multistage cutting stock problems of two and more dimensions", Operations Research 13). From the area on, pieces
/// that the best sheet has in plenty are made worth less, those that it leaves out more.
void addCuttingMeasures(const std::vector<Item>& items, const std::vector<Bin>& bins, std::vector<Measure>& out)
{
    constexpr std::size_t kMostBins = 6;
    constexpr int kRounds = 8;
    if (bins.size() > kMostBins) {
        return;
    }
    const CutSheets sheets(items, bins);
    if (!sheets.isSmall()) {
        return;
    }
    std::size_t dearest = 0;
    std::vector<double> values;
    for (std::size_t b = 0; b < bins.size(); ++b) {
        dearest = bins[b].area() > bins[dearest].area() ? b : dearest;
    }
    for (const Item& item : items) {
        values.push_back(item.area() / bins[dearest].area());
    }
    for (int round = 0; round < kRounds; ++round) {
        std::vector<int> used;
        Measure measure;
        measure.held = sheets.worth(values, dearest, used);
        double inSheet = 0.0;
        for (std::size_t i = 0; i < items.size(); ++i) {
            measure.need += values[i] * items[i].count;
            inSheet += values[i] * used[i];
        }
        const double usual = inSheet / measure.need;
        if (!(usual > 0.0)) {
            return;
        }
        out.push_back(measure);
        for (std::size_t i = 0; i < items.size(); ++i) {
            const double plenty = static_cast<double>(used[i]) / items[i].count / usual;
            values[i] *= std::clamp(1.0 + 0.1 * (1.0 - plenty), 0.85, 1.1);
        }
    }
}

double heldBy(const Measure& measure, const std::vector<int>& counts)
{
    double held = 0.0;
    for (std::size_t b = 0; b < counts.size(); ++b) {
        held += measure.held[b] * counts[b];
    }
    return held;
}

/// Of many measures those that matter: the area, what asks for most of each sort of sheet, and, one after the other,
/// what rules out most clearly the cheapest and the smallest combination that is not ruled out yet.
std::vector<Measure> telling(std::vector<Measure> all, const std::vector<Bin>& bins)
{
    if (all.size() <= kMostMeasures) {
        return all;
    }
    std::vector<char> chosen(all.size(), 0);
    std::vector<Measure> out;
    const auto choose = [&](std::size_t i) {
        if (!chosen[i]) {
            chosen[i] = 1;
            out.push_back(all[i]);
        }
    };
    choose(0);
    for (std::size_t b = 0; b < bins.size() && b < kMostAsked; ++b) {
        std::size_t most = 0;
        for (std::size_t i = 1; i < all.size(); ++i) {
            most = all[i].need * all[most].held[b] > all[most].need * all[i].held[b] ? i : most;
        }
        choose(most);
    }
    std::vector<Bin> alike = bins;
    for (Bin& bin : alike) {
        bin.price = 1;
    }
    std::size_t looks = 0;
    for (const std::vector<Bin>* priced : {&bins, static_cast<const std::vector<Bin>*>(&alike)}) {
        while (out.size() < kMostMeasures && looks < kLooksToTell) {
            Combinations combinations(*priced, out, kLooksToTell - looks);
            const auto next = combinations.next();
            looks += combinations.looks() + all.size() * bins.size() / 4;
            if (!next) {
                break;
            }
            std::size_t clearest = 0;
            double least = 1.0 - kRounding;
            for (std::size_t i = 0; i < all.size(); ++i) {
                const double share = heldBy(all[i], next->counts) / all[i].need;
                if (share < least) {
                    least = share;
                    clearest = i;
                }
            }
            if (least >= 1.0 - kRounding) {
                break;
            }
            choose(clearest);
        }
    }
    return out;
}

}  // namespace

std::vector<Measure> measures(const std::vector<Item>& items, const std::vector<Bin>& bins)
{
    if (items.empty() || bins.empty()) {
        return {};
    }
    const double pairs = kMostPairSteps / static_cast<double>(items.size() + bins.size());
    const std::size_t mostScales = std::min(kMostScales, static_cast<std::size_t>(std::sqrt(pairs)));
    const SideScales xs = sideScales(items, bins, true, mostScales);
    const SideScales ys = sideScales(items, bins, false, mostScales);
    std::vector<char> upright(items.size(), 0);
    std::vector<char> turned(items.size(), 0);
    for (std::size_t i = 0; i < items.size(); ++i) {
        for (const Bin& bin : bins) {
            upright[i] = upright[i] || (items[i].w <= bin.w && items[i].h <= bin.h);
            turned[i] = turned[i] || (items[i].turn && items[i].h <= bin.w && items[i].w <= bin.h);
        }
    }
    std::vector<Measure> out;
    for (std::size_t u = 0; u < xs.held.size(); ++u) {
        for (std::size_t v = 0; v < ys.held.size(); ++v) {
            Measure measure;
            for (std::size_t b = 0; b < bins.size(); ++b) {
                measure.held.push_back(xs.held[u][b] * ys.held[v][b]);
            }
            for (std::size_t i = 0; i < items.size(); ++i) {
                const double asIs = xs.asIs[u][i] * ys.asIs[v][i];
                const double other = xs.turned[u][i] * ys.turned[v][i];
                const double one = !turned[i] ? asIs : !upright[i] ? other : std::min(asIs, other);
                measure.need += one * items[i].count;
            }
            // Some see nothing at all.
            if (measure.need > 0.0) {
                out.push_back(std::move(measure));
            }
        }
    }
    addCuttingMeasures(items, bins, out);
    return telling(std::move(out), bins);
}

Combinations::Combinations(const std::vector<Bin>& bins, const std::vector<Measure>& measures, std::size_t mostLooks)
    : bins_(bins), measures_(measures), order_(bins.size()), mostLooks_(mostLooks)
{
    std::iota(order_.begin(), order_.end(), 0);
    std::stable_sort(order_.begin(), order_.end(), [&](int a, int b) {
        return bins[static_cast<std::size_t>(a)].price > bins[static_cast<std::size_t>(b)].price;
    });
    Entry start;
    start.counts.assign(bins.size(), 0);
    for (std::size_t b = 0; b < bins.size(); ++b) {
        if (bins[b].price == 0) {
            start.counts[b] = bins[b].most;
        }
    }
    push(std::move(start));
}

bool Combinations::after(const Entry& a, const Entry& b) const
{
    if (a.price != b.price) {
        return a.price > b.price;
    }
    return a.sheets != b.sheets ? a.sheets > b.sheets : a.counts > b.counts;
}

void Combinations::push(Entry entry)
{
    looks_ += bins_.size() * (measures_.size() + 4);
    if (!canEver(entry)) {
        return;
    }
    heap_.push_back(std::move(entry));
    std::push_heap(heap_.begin(), heap_.end(), [this](const Entry& a, const Entry& b) { return after(a, b); });
}

bool Combinations::enough(const std::vector<int>& counts) const
{
    for (const Measure& measure : measures_) {
        if (heldBy(measure, counts) < measure.need * (1.0 - kRounding)) {
            return false;
        }
    }
    return true;
}

/// Whether adding all that may still be added would do; keeps the heap from filling with dead ends.
bool Combinations::canEver(const Entry& entry) const
{
    std::vector<int> counts = entry.counts;
    for (std::size_t i = static_cast<std::size_t>(entry.from); i < order_.size(); ++i) {
        const std::size_t b = static_cast<std::size_t>(order_[i]);
        counts[b] = bins_[b].most;
    }
    return enough(counts);
}

std::optional<Combination> Combinations::next()
{
    const auto order = [this](const Entry& a, const Entry& b) { return after(a, b); };
    while (!heap_.empty()) {
        std::pop_heap(heap_.begin(), heap_.end(), order);
        const Entry entry = std::move(heap_.back());
        heap_.pop_back();
        floor_ = entry.price;
        if (looks_ > mostLooks_) {
            exhausted_ = true;
            heap_.clear();
            return {};
        }
        for (std::size_t i = static_cast<std::size_t>(entry.from); i < order_.size(); ++i) {
            const std::size_t b = static_cast<std::size_t>(order_[i]);
            if (bins_[b].price > 0 && entry.counts[b] < bins_[b].most) {
                Entry more = entry;
                ++more.counts[b];
                ++more.sheets;
                more.price += bins_[b].price;
                more.from = static_cast<int>(i);
                push(std::move(more));
            }
        }
        if (enough(entry.counts)) {
            return Combination{entry.price, entry.counts};
        }
    }
    floor_ = std::numeric_limits<std::int64_t>::max();
    return {};
}

std::int64_t linearBound(const std::vector<Bin>& bins, const std::vector<Measure>& measures)
{
    std::int64_t step = 0;
    for (const Bin& bin : bins) {
        step = std::gcd(step, bin.price);
    }
    double best = 0.0;
    for (const Measure& measure : measures) {
        // Worth `rate` a unit: what is needed, less what counted sheets hold beyond their price. Concave in the rate, so
        // the best is where a sheet's price is met, and no rate may make an uncounted sheet hold more than it costs.
        double mostRate = std::numeric_limits<double>::infinity();
        std::vector<double> rates;
        for (std::size_t b = 0; b < bins.size(); ++b) {
            if (measure.held[b] > 0.0) {
                const double rate = static_cast<double>(bins[b].price) / measure.held[b];
                rates.push_back(rate);
                if (!bins[b].limited) {
                    mostRate = std::min(mostRate, rate);
                }
            }
        }
        for (const double rate : rates) {
            if (rate > mostRate) {
                continue;
            }
            double bound = rate * measure.need;
            for (std::size_t b = 0; b < bins.size(); ++b) {
                if (bins[b].limited) {
                    bound -= bins[b].most * std::max(0.0, rate * measure.held[b] - static_cast<double>(bins[b].price));
                }
            }
            best = std::max(best, bound);
        }
    }
    if (step == 0 || !(best > 0.0)) {
        return 0;
    }
    const double steps = std::ceil(best / static_cast<double>(step) * (1.0 - kRounding) - kRounding);
    return static_cast<std::int64_t>(std::max(0.0, steps)) * step;
}

}  // namespace yardcast::sheets
