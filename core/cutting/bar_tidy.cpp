#include "core/cutting/bar_tidy.h"

#include <algorithm>
#include <set>

namespace yardcast::bars {

namespace {

constexpr std::size_t kMostRestBars = 60;
constexpr int kMostNodes = 200'000;         // of all searches for two patterns instead of more

Units capacityOf(const BarKinds& kinds, const Pattern& pattern)
{
    return kinds.stock[static_cast<std::size_t>(pattern.stock)].capacity;
}

/// Two patterns of one stock that share out evenly over all their bars become one.
bool joinTwo(Solution& solution)
{
    for (std::size_t a = 0; a < solution.size(); ++a) {
        for (std::size_t b = a + 1; b < solution.size(); ++b) {
            PatternRun& one = solution[a];
            const PatternRun& other = solution[b];
            if (one.pattern.stock != other.pattern.stock) continue;
            const Units bars = one.times + other.times;
            Pattern shared = one.pattern;
            bool even = true;
            for (std::size_t i = 0; i < shared.copies.size() && even; ++i) {
                const Units sum = one.times * one.pattern.copies[i] + other.times * other.pattern.copies[i];
                even = sum % bars == 0;
                shared.copies[i] = static_cast<int>(sum / bars);
            }
            if (!even) continue;
            one = {shared, bars};
            solution.erase(solution.begin() + static_cast<std::ptrdiff_t>(b));
            return true;
        }
    }
    return false;
}

/// Two patterns that together cut what some runs cut, out of the same bars; decided by trying.
class TwoInstead {
public:
    explicit TwoInstead(const BarKinds& kinds) : kinds_(kinds) {}
    bool isTired() const { return nodes_ > kMostNodes; }

    /// Empty where there are none. The runs are of at most two stocks.
    Solution of(const std::vector<const PatternRun*>& runs)
    {
        const int first = runs.front()->pattern.stock;
        int second = first;
        Units ofFirst = 0;
        Units bars = 0;
        demand_.assign(kinds_.pieces.size(), 0);
        for (const PatternRun* run : runs) {
            const int stock = run->pattern.stock;
            if (stock != first && second != first && stock != second) return {};
            second = stock == first ? second : stock;
            ofFirst += stock == first ? run->times : 0;
            bars += run->times;
            for (std::size_t i = 0; i < demand_.size(); ++i) demand_[i] += run->times * run->pattern.copies[i];
        }
        a_ = {{first, std::vector<int>(demand_.size(), 0)}, 0};
        b_ = {{second, std::vector<int>(demand_.size(), 0)}, 0};
        const bool oneStock = first == second;
        for (Units times = oneStock ? 1 : ofFirst; times <= (oneStock ? bars / 2 : ofFirst) && !isTired(); ++times) {
            a_.times = times;
            b_.times = bars - times;
            if (share(0, capacityOf(kinds_, a_.pattern), capacityOf(kinds_, b_.pattern))) return {a_, b_};
        }
        return {};
    }

private:
    bool share(std::size_t piece, Units roomA, Units roomB)
    {
        if (piece == demand_.size()) return true;
        const Units width = kinds_.pieces[piece].width;
        const Units demand = demand_[piece];
        for (Units inA = std::min(demand / a_.times, roomA / width); inA >= 0; --inA) {
            const Units over = demand - inA * a_.times;
            const Units inB = over / b_.times;
            if (inB * width > roomB || ++nodes_ > kMostNodes) return false;
            if (over % b_.times != 0) continue;
            a_.pattern.copies[piece] = static_cast<int>(inA);
            b_.pattern.copies[piece] = static_cast<int>(inB);
            if (share(piece + 1, roomA - inA * width, roomB - inB * width)) return true;
        }
        return false;
    }

    const BarKinds& kinds_;
    std::vector<Units> demand_;
    PatternRun a_;
    PatternRun b_;
    int nodes_ = 0;
};

/// Any three or four runs that two patterns can stand for become two.
bool joinMore(TwoInstead& two, Solution& solution)
{
    const std::size_t n = solution.size();
    for (std::size_t a = 0; a < n; ++a) {
        for (std::size_t b = a + 1; b < n; ++b) {
            for (std::size_t c = b + 1; c < n; ++c) {
                for (std::size_t d = c + 1; d <= n; ++d) {
                    // The last round without a fourth.
                    if (two.isTired()) return false;
                    std::vector<const PatternRun*> runs{&solution[a], &solution[b], &solution[c]};
                    if (d < n) runs.push_back(&solution[d]);
                    const Solution both = two.of(runs);
                    if (both.empty()) continue;
                    if (d < n) solution.erase(solution.begin() + static_cast<std::ptrdiff_t>(d));
                    solution.erase(solution.begin() + static_cast<std::ptrdiff_t>(c));
                    solution[a] = both.front();
                    solution[b] = both.back();
                    return true;
                }
            }
        }
    }
    return false;
}

struct Chosen {
    PatternRun run;
    Units waste = 0;
};

/// The pattern that fits `times` times into what is left, the fullest; no copies where there is none.
Chosen fullest(const BarKinds& kinds, PatternPricer& pricer, const std::vector<Units>& demand, int stock, Units times)
{
    std::vector<Units> widths;
    std::vector<int> most;
    for (std::size_t i = 0; i < demand.size(); ++i) {
        widths.push_back(kinds.pieces[i].width);
        most.push_back(static_cast<int>(demand[i] / times));
    }
    const Units capacity = kinds.stock[static_cast<std::size_t>(stock)].capacity;
    Priced found = pricer.quick(capacity, widths, most, 0);
    return {{{stock, std::move(found.copies)}, times}, capacity - found.value};
}

/// Rebuilds the plan from as many bars of each stock; each pattern may waste `share` of the mean. Empty where that
/// fails or takes no fewer patterns.
Solution rebuilt(const BarKinds& kinds, PatternPricer& pricer, std::vector<Units> demand, std::vector<Units> bars,
                 double share, std::size_t fewerThan)
{
    Solution out;
    const auto anyLeft = [&] { return std::any_of(demand.begin(), demand.end(), [](Units d) { return d > 0; }); };
    while (anyLeft()) {
        Units room = 0;
        Units count = 0;
        for (std::size_t s = 0; s < bars.size(); ++s) {
            room += bars[s] * kinds.stock[s].capacity;
            count += bars[s];
        }
        Units wanted = 0;
        for (std::size_t i = 0; i < demand.size(); ++i) wanted += demand[i] * kinds.pieces[i].width;
        if (wanted > room) return {};
        const double bearable = share * static_cast<double>(room - wanted) / static_cast<double>(count);
        Chosen best;
        for (std::size_t s = 0; s < bars.size(); ++s) {
            if (bars[s] == 0) continue;
            std::set<Units, std::greater<>> tries{bars[s], 1};
            for (const Units d : demand) {
                for (Units part = 1; part <= 3 && d / part > 0; ++part) tries.insert(std::min(d / part, bars[s]));
            }
            int left = 40;
            for (const Units times : tries) {
                if (--left < 0 || times < best.run.times) break;
                Chosen chosen = fullest(kinds, pricer, demand, static_cast<int>(s), times);
                if (chosen.run.pattern.copies.empty()) continue;
                if (times > 1 && static_cast<double>(chosen.waste) > bearable) continue;
                if (times > best.run.times || chosen.waste < best.waste) best = std::move(chosen);
                break;
            }
        }
        if (best.run.times == 0 || out.size() + 1 >= fewerThan) return {};
        for (std::size_t i = 0; i < demand.size(); ++i) demand[i] -= best.run.times * best.run.pattern.copies[i];
        bars[static_cast<std::size_t>(best.run.pattern.stock)] -= best.run.times;
        out.push_back(std::move(best.run));
    }
    tidy(out);
    return out;
}

}  // namespace

Solution withFewerPatterns(const BarKinds& kinds, const Solution& solution, PatternPricer& pricer)
{
    Solution best = solution;
    while (joinTwo(best)) {}
    std::vector<Units> demand(kinds.pieces.size(), 0);
    std::vector<Units> bars(kinds.stock.size(), 0);
    for (const PatternRun& run : solution) {
        bars[static_cast<std::size_t>(run.pattern.stock)] += run.times;
        for (std::size_t i = 0; i < demand.size(); ++i) demand[i] += run.times * run.pattern.copies[i];
    }
    for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0, 5.0}) {
        if (best.size() <= 1 || kinds.pieces.size() > 100) break;
        Solution other = rebuilt(kinds, pricer, demand, bars, share, best.size());
        if (other.empty()) continue;
        while (joinTwo(other)) {}
        if (other.size() < best.size() && priceOf(kinds, other) <= priceOf(kinds, best)) best = std::move(other);
    }
    TwoInstead two(kinds);
    while (joinMore(two, best)) {
        while (joinTwo(best)) {}
    }
    tidy(best);
    return best;
}

Solution withLongerRests(const BarKinds& kinds, const Solution& solution)
{
    Solution out = solution;
    std::vector<std::size_t> singles;
    for (std::size_t r = 0; r < out.size(); ++r) {
        if (out[r].times == 1) singles.push_back(r);
    }
    if (singles.size() > kMostRestBars) return out;
    const auto rest = [&](std::size_t r) {
        return capacityOf(kinds, out[r].pattern) - usedWidth(kinds, out[r].pattern);
    };
    const std::size_t kinds1 = kinds.pieces.size() + 1;  // the last stands for no piece
    const auto width = [&](std::size_t i) { return i + 1 == kinds1 ? 0 : kinds.pieces[i].width; };
    // Each change lengthens a rest that was the longer of two: the sum of their squares grows, so it ends.
    bool changed = true;
    for (int round = 0; changed && round < 1000; ++round) {
        changed = false;
        for (const std::size_t from : singles) {
            for (const std::size_t to : singles) {
                const Units spare = rest(to);
                if (from == to || rest(from) < spare || spare == 0) continue;
                Units most = 0;
                std::size_t give = 0;
                std::size_t get = 0;
                for (std::size_t a = 0; a + 1 < kinds1; ++a) {
                    if (out[from].pattern.copies[a] == 0) continue;
                    for (std::size_t b = a + 1; b < kinds1; ++b) {
                        if (b + 1 < kinds1 && out[to].pattern.copies[b] == 0) continue;
                        const Units gain = width(a) - width(b);
                        if (gain > spare || gain <= most) continue;
                        most = gain;
                        give = a;
                        get = b;
                    }
                }
                if (most == 0) continue;
                --out[from].pattern.copies[give];
                ++out[to].pattern.copies[give];
                if (get + 1 < kinds1) {
                    ++out[from].pattern.copies[get];
                    --out[to].pattern.copies[get];
                }
                changed = true;
            }
        }
    }
    // A bar that is wholly emptied need not be taken.
    out.erase(std::remove_if(out.begin(), out.end(), [](const PatternRun& run) {
        return std::all_of(run.pattern.copies.begin(), run.pattern.copies.end(), [](int c) { return c == 0; });
    }), out.end());
    tidy(out);
    return out;
}

}  // namespace yardcast::bars
