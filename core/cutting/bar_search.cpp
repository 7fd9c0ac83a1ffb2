#include "core/cutting/bar_search.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <queue>

#include "core/cutting/bar_fill.h"

namespace yardcast::bars {

namespace {

constexpr long long kMostSteps = 300'000'000;  ///< some tenths of a second
constexpr long long kStepsAFill = 1'000'000;
constexpr long long kStepsALongFill = 20'000'000;  ///< for what else would stay open

struct Node {
    Limits limits;
    Wide lower = 0;
    int order = 0;
};
struct Later {
    bool operator()(const Node& a, const Node& b) const
    {
        return a.lower != b.lower ? a.lower > b.lower : a.order > b.order;
    }
};

bool isZero(const std::vector<Units>& demand)
{
    return std::all_of(demand.begin(), demand.end(), [](Units count) { return count == 0; });
}

void take(std::vector<Units>& demand, Limits& limits, const Pattern& pattern, Units times)
{
    for (std::size_t i = 0; i < demand.size(); ++i) demand[i] -= times * pattern.copies[i];
    const auto s = static_cast<std::size_t>(pattern.stock);
    if (limits.most[s] < kNoLimit) limits.most[s] -= times;
    limits.least[s] = std::max<Units>(limits.least[s] - times, 0);
}

/// How often a pattern goes into what is left, within its stock's limit.
Units timesIn(const std::vector<Units>& demand, const Limits& limits, const Pattern& pattern)
{
    Units times = limits.most[static_cast<std::size_t>(pattern.stock)];
    for (std::size_t i = 0; i < demand.size(); ++i) {
        if (pattern.copies[i] > 0) times = std::min(times, demand[i] / pattern.copies[i]);
    }
    return times;
}

class Search {
public:
    Search(const BarKinds& kinds, std::stop_token stop) : kinds_(kinds), stop_(std::move(stop)), relaxation_(kinds)
    {
        for (const PieceKind& piece : kinds.pieces) demand_.push_back(piece.demand);
        for (const StockKind& stock : kinds.stock) {
            all_.least.push_back(0);
            all_.most.push_back(stock.limit);
        }
    }
    SearchAnswer run();

private:
    bool spent() const { return stop_.stop_requested() || relaxation_.steps() + fillSteps_ > kMostSteps; }
    Wide enough(Units price) const { return relaxation_.worths().worthOf(price); }
    bool cannotBeat(Wide lower, Units already) const;
    void record(Solution solution);
    void dive(std::vector<Units> demand, Limits limits, Solution fixed, Units price, int detours, const Relaxed* first);
    void tryGreedy(const std::vector<Units>& demand, const Limits& limits, const Solution& fixed,
                   const std::vector<Units>& values);
    std::optional<std::pair<std::size_t, double>> mostBroken(const Relaxed& relaxed) const;
    std::vector<Units> barsOf(const Relaxed& relaxed) const;
    bool settle(const std::vector<Units>& bars, long long mostSteps);
    void push(Node node, std::size_t stock, Units least, Units most);
    bool branchAround(const Node& node, const std::vector<Units>& bars);

    const BarKinds& kinds_;
    std::stop_token stop_;
    Relaxation relaxation_;
    std::vector<Units> demand_;
    Limits all_;
    Solution best_;
    Units bestPrice_ = kNoLimit << 20;
    long long fillSteps_ = 0;
    std::priority_queue<Node, std::vector<Node>, Later> open_;
    int order_ = 0;
    std::map<std::vector<Units>, bool> settled_;
};

/// Prices come in steps: a bound just above one of them is as good as the next.
bool Search::cannotBeat(Wide lower, Units already) const
{
    const Units least = already + relaxation_.worths().priceAtLeast(lower);
    const Units step = kinds_.priceStep;
    return (least + step - 1) / step * step >= bestPrice_;
}

void Search::record(Solution solution)
{
    const Units price = priceOf(kinds_, solution);
    if (price >= bestPrice_) return;
    tidy(solution);
    best_ = std::move(solution);
    bestPrice_ = price;
}

void Search::tryGreedy(const std::vector<Units>& demand, const Limits& limits, const Solution& fixed,
                       const std::vector<Units>& values)
{
    Solution rest = greedySolution(kinds_, relaxation_.pricer(), demand, limits, values);
    if (rest.empty()) return;
    rest.insert(rest.end(), fixed.begin(), fixed.end());
    record(std::move(rest));
}

/// Rounds the linear program down, fixes the pattern nearest to a whole more, and solves again for what is left.
void Search::dive(std::vector<Units> demand, Limits limits, Solution fixed, Units price, int detours,
                  const Relaxed* first)
{
    while (!isZero(demand)) {
        if (spent()) return;
        Relaxed own;
        if (!first) own = relaxation_.solve(demand, limits, enough(std::max<Units>(bestPrice_ - price, 0)), true);
        const Relaxed relaxed = first ? *first : std::move(own);
        first = nullptr;
        if (cannotBeat(relaxed.lower, price)) return;
        std::vector<std::pair<double, const Pattern*>> parts;
        bool rounded = false;
        for (const auto& [pattern, amount] : relaxed.amounts) {
            const Units whole = std::min(static_cast<Units>(amount + 1e-6), timesIn(demand, limits, pattern));
            if (whole > 0) {
                rounded = true;
                take(demand, limits, pattern, whole);
                fixed.push_back({pattern, whole});
                price += whole * kinds_.stock[static_cast<std::size_t>(pattern.stock)].price;
            }
            if (amount - static_cast<double>(whole) > 1e-6)
                parts.push_back({amount - static_cast<double>(whole), &pattern});
        }
        if (isZero(demand)) break;
        tryGreedy(demand, limits, fixed, relaxed.guide.empty() ? relaxed.values : relaxed.guide);
        std::stable_sort(parts.begin(), parts.end(),
                         [](const auto& a, const auto& b) { return a.first > b.first + 1e-9; });
        parts.erase(std::remove_if(parts.begin(), parts.end(), [&](const auto& part) {
            return timesIn(demand, limits, *part.second) < 1;
        }), parts.end());
        if (parts.empty()) {
            if (!rounded) return;
            continue;
        }
        const auto fix = [&](const Pattern& pattern, std::vector<Units>& d, Limits& l, Solution& f, Units& p) {
            take(d, l, pattern, 1);
            f.push_back({pattern, 1});
            p += kinds_.stock[static_cast<std::size_t>(pattern.stock)].price;
        };
        for (int k = 1; k <= detours && k < static_cast<int>(parts.size()); ++k) {
            std::vector<Units> d = demand;
            Limits l = limits;
            Solution f = fixed;
            Units p = price;
            fix(*parts[static_cast<std::size_t>(k)].second, d, l, f, p);
            dive(std::move(d), std::move(l), std::move(f), p, detours - k, nullptr);
            if (cannotBeat(relaxed.lower, price)) break;
        }
        fix(*parts[0].second, demand, limits, fixed, price);
    }
    record(std::move(fixed));
}

/// The stock whose number of bars is furthest from whole.
std::optional<std::pair<std::size_t, double>> Search::mostBroken(const Relaxed& relaxed) const
{
    std::vector<double> bars(kinds_.stock.size(), 0.0);
    for (const auto& [pattern, amount] : relaxed.amounts) bars[static_cast<std::size_t>(pattern.stock)] += amount;
    std::optional<std::pair<std::size_t, double>> out;
    double most = 1e-5;
    for (std::size_t s = 0; s < bars.size(); ++s) {
        const double off = std::abs(bars[s] - std::round(bars[s]));
        if (off <= most) continue;
        most = off;
        out = {s, bars[s]};
    }
    return out;
}

void Search::push(Node node, std::size_t stock, Units least, Units most)
{
    node.limits.least[stock] = std::max(node.limits.least[stock], least);
    node.limits.most[stock] = std::min(node.limits.most[stock], most);
    if (node.limits.least[stock] > node.limits.most[stock]) return;
    node.order = ++order_;
    open_.push(std::move(node));
}

std::vector<Units> Search::barsOf(const Relaxed& relaxed) const
{
    std::vector<double> bars(kinds_.stock.size(), 0.0);
    for (const auto& [pattern, amount] : relaxed.amounts) bars[static_cast<std::size_t>(pattern.stock)] += amount;
    std::vector<Units> out;
    for (const double count : bars) out.push_back(std::llround(count));
    return out;
}

/// Whether so many bars of each stock hold the demand. False where that stayed open.
bool Search::settle(const std::vector<Units>& bars, long long mostSteps)
{
    if (const auto known = settled_.find(bars);
        known != settled_.end() && (known->second || mostSteps == kStepsAFill)) {
        return known->second;
    }
    const Limits limits{std::vector<Units>(bars.size(), 0), bars};
    Units price = 0;
    for (std::size_t s = 0; s < bars.size(); ++s) price += bars[s] * kinds_.stock[s].price;
    // With the limits above only, the values say what a width is worth; no plan within them is dearer than all the
    // bars.
    const Units below = std::min(bestPrice_, price + kinds_.priceStep);
    const Relaxed relaxed = relaxation_.solve(demand_, limits, enough(below), false);
    Solution found;
    const FillAnswer filled =
        fillBars(kinds_, relaxation_, demand_, limits, relaxed, below, mostSteps, fillSteps_, found);
    if (filled == FillAnswer::Found) record(std::move(found));
    return settled_[bars] = filled != FillAnswer::Unknown;
}

/// Parts the node at so many bars, of the first stock whose number is open: fewer, as many, more. False where none is.
bool Search::branchAround(const Node& node, const std::vector<Units>& bars)
{
    for (std::size_t s = 0; s < bars.size(); ++s) {
        if (node.limits.least[s] == node.limits.most[s]) continue;
        push(node, s, 0, bars[s] - 1);
        push(node, s, bars[s], bars[s]);
        push(node, s, bars[s] + 1, kNoLimit);
        return true;
    }
    return false;
}

SearchAnswer Search::run()
{
    std::vector<Units> widths;
    for (const PieceKind& piece : kinds_.pieces) widths.push_back(piece.width);
    tryGreedy(demand_, all_, {}, widths);

    SearchAnswer answer;
    const Relaxed root = relaxation_.solve(demand_, all_, enough(bestPrice_), false);
    if (!cannotBeat(root.lower, 0)) dive(demand_, all_, {}, 0, 0, &root);
    if (!cannotBeat(root.lower, 0)) dive(demand_, all_, {}, 0, 3, &root);
    open_.push({all_, root.lower, 0});
    std::vector<std::pair<Wide, std::vector<Units>>> unsettled;
    while (!open_.empty()) {
        const Node node = open_.top();
        if (cannotBeat(node.lower, 0)) {
            open_.pop();
            continue;
        }
        if (spent()) break;
        open_.pop();
        const Relaxed relaxed =
            node.order == 0 ? root : relaxation_.solve(demand_, node.limits, enough(bestPrice_), false);
        Node tighter = node;
        tighter.lower = std::max(node.lower, relaxed.lower);
        if (cannotBeat(tighter.lower, 0)) continue;
        if (const auto broken = mostBroken(relaxed)) {
            if (node.order % 8 == 1) dive(demand_, node.limits, {}, 0, 0, &relaxed);
            if (cannotBeat(tighter.lower, 0)) continue;
            const auto below = static_cast<Units>(std::floor(broken->second));
            push(tighter, broken->first, 0, below);
            push(tighter, broken->first, below + 1, kNoLimit);
            continue;
        }
        const std::vector<Units> bars = barsOf(relaxed);
        if (node.order != 0) dive(demand_, node.limits, {}, 0, 2, &relaxed);
        const bool settled = cannotBeat(tighter.lower, 0) || settle(bars, kStepsAFill);
        if (cannotBeat(tighter.lower, 0)) continue;
        if (!branchAround(tighter, bars) && !settled) unsettled.push_back({tighter.lower, bars});
    }
    std::optional<Wide> least;
    for (const auto& [lower, bars] : unsettled) {
        if (cannotBeat(lower, 0) || (!spent() && settle(bars, kStepsALongFill))) continue;
        least = std::min(least.value_or(lower), lower);
    }
    while (!open_.empty()) {
        const Node node = open_.top();
        open_.pop();
        if (!cannotBeat(node.lower, 0)) least = std::min(least.value_or(node.lower), node.lower);
    }
    if (least && cannotBeat(*least, 0)) least.reset();
    answer.best = best_;
    answer.proven = !least.has_value();
    answer.bound = std::min(relaxation_.worths().price(least.value_or(root.lower)), static_cast<double>(bestPrice_));
    return answer;
}

}  // namespace

Solution greedySolution(const BarKinds& kinds, PatternPricer& pricer, std::vector<Units> demand, const Limits& limits,
                        const std::vector<Units>& values)
{
    Solution out;
    Limits left = limits;
    while (!isZero(demand)) {
        std::vector<int> most(demand.size());
        Units all = 0;
        for (std::size_t i = 0; i < demand.size(); ++i) {
            most[i] = static_cast<int>(demand[i]);
            all += demand[i] * kinds.pieces[i].width;
        }
        std::optional<Pattern> chosen;
        double chosenRate = 0.0;
        std::optional<std::size_t> last;
        for (std::size_t s = 0; s < kinds.stock.size(); ++s) {
            const StockKind& stock = kinds.stock[s];
            if (left.most[s] <= 0) continue;
            if (all <= stock.capacity && (!last || stock.price < kinds.stock[*last].price)) last = s;
            Priced found = pricer.quick(stock.capacity, values, most, 0);
            if (found.copies.empty()) continue;
            const double rate = static_cast<double>(found.value) / (static_cast<double>(stock.price) + 1e-6);
            if (chosen && rate <= chosenRate) continue;
            chosenRate = rate;
            chosen = Pattern{static_cast<int>(s), std::move(found.copies)};
        }
        if (last &&
            (!chosen || kinds.stock[*last].price <= kinds.stock[static_cast<std::size_t>(chosen->stock)].price)) {
            chosen = Pattern{static_cast<int>(*last), most};
        }
        if (!chosen) return {};
        const Units times = timesIn(demand, left, *chosen);
        take(demand, left, *chosen, times);
        out.push_back({std::move(*chosen), times});
    }
    return out;
}

SearchAnswer searchBars(const BarKinds& kinds, std::stop_token stop)
{
    if (kinds.pieces.empty()) return {{}, 0.0, true};
    return Search(kinds, std::move(stop)).run();
}

}  // namespace yardcast::bars
