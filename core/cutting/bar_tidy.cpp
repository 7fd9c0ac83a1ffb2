#include "core/cutting/bar_tidy.h"

#include <algorithm>
#include <set>

namespace yardcast::bars {

namespace {

constexpr std::size_t kMostRestBars = 60;

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
