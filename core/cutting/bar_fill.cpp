#include "core/cutting/bar_fill.h"

#include <algorithm>
#include <string>
#include <unordered_map>

namespace yardcast::bars {

namespace {

constexpr std::size_t kMostWays = 4000;
constexpr std::size_t kMostRemembered = 200'000;
constexpr Units kPiecesToRelax = 14;

struct Way {
    Pattern pattern;
    Wide waste = 0;
};

class Filling {
public:
    Filling(const BarKinds& kinds, Relaxation& relaxation, const Limits& limits, const Relaxed& relaxed, Wide allowed,
            long long mostSteps)
        : kinds_(kinds), relaxation_(relaxation), limits_(limits), relaxed_(relaxed), allowed_(allowed),
          mostSteps_(mostSteps), used_(kinds.stock.size(), 0)
    {
        steepest_.assign(kinds.pieces.size() + 1, 0.0);
        for (std::size_t i = kinds.pieces.size(); i-- > 0;) {
            const double slope = static_cast<double>(relaxed.values[i]) / static_cast<double>(kinds.pieces[i].width);
            steepest_[i] = std::max(steepest_[i + 1], slope);
        }
    }

    FillAnswer run(const std::vector<Units>& demand, Wide budget)
    {
        left_ = demand;
        return go(budget);
    }
    const Solution& solution() const { return solution_; }
    long long steps() const { return steps_; }

private:
    FillAnswer go(Wide budget);
    void collect(std::size_t stock, std::size_t longest, Wide budget, std::vector<Way>& ways);
    void extend(std::size_t kind, Units room, Wide value, Wide least);
    bool noBetterExchange(Units room) const;
    std::string state() const;
    bool relaxedCannot();

    const BarKinds& kinds_;
    Relaxation& relaxation_;
    const Limits& limits_;
    const Relaxed& relaxed_;
    const Wide allowed_;                ///< worth of all bars together
    const long long mostSteps_;
    long long steps_ = 0;
    bool overflow_ = false;
    std::vector<double> steepest_;      ///< value a width, the most from this kind on
    std::vector<Units> left_;
    std::vector<Units> used_;
    Solution solution_;
    std::unordered_map<std::string, Wide> failed_;  ///< the budget that was not enough
    // of the bar being filled
    Pattern current_;
    std::vector<Way>* ways_ = nullptr;
    Wide surcharge_ = 0;
    Units peak_ = 0;
};

std::string Filling::state() const
{
    std::string out;
    const auto put = [&](Units number) {
        do {
            out += static_cast<char>((number & 127) | (number > 127 ? 128 : 0));
            number >>= 7;
        } while (number > 0);
    };
    for (const Units count : left_) put(count);
    for (std::size_t s = 0; s < used_.size(); ++s) {
        if (limits_.most[s] < kNoLimit || limits_.least[s] > 0) put(used_[s]);
    }
    return out;
}

/// True when no piece that is left (beside those in the bar) fits into what is left of it, alone or for a shorter one.
bool Filling::noBetterExchange(Units room) const
{
    for (std::size_t i = 0; i < left_.size(); ++i) {
        if (left_[i] > current_.copies[i] && kinds_.pieces[i].width <= room) return false;
        if (current_.copies[i] == 0) continue;
        for (std::size_t j = i; j-- > 0;) {
            if (kinds_.pieces[j].width - kinds_.pieces[i].width > room) break;
            if (left_[j] > current_.copies[j]) return false;
        }
    }
    return true;
}

void Filling::extend(std::size_t kind, Units room, Wide value, Wide least)
{
    if (overflow_) return;
    if (++steps_ > mostSteps_) {
        overflow_ = true;
        return;
    }
    while (kind < left_.size() && (left_[kind] == 0 || kinds_.pieces[kind].width > room)) ++kind;
    if (kind == left_.size()) {
        if (value < least || !noBetterExchange(room)) return;
        if (ways_->size() >= kMostWays) {
            overflow_ = true;
            return;
        }
        ways_->push_back({current_, peak_ - value + surcharge_});
        return;
    }
    const double possible = static_cast<double>(value) + static_cast<double>(room) * steepest_[kind];
    if (possible * (1.0 + 1e-12) + 1.0 < static_cast<double>(least)) return;
    const Units most = std::min(left_[kind] - current_.copies[kind], room / kinds_.pieces[kind].width);
    const int before = current_.copies[kind];
    for (Units take = most; take >= 0; --take) {
        current_.copies[kind] = before + static_cast<int>(take);
        extend(kind + 1, room - take * kinds_.pieces[kind].width,
               value + static_cast<Wide>(take) * relaxed_.values[kind], least);
    }
    current_.copies[kind] = before;
}

void Filling::collect(std::size_t stock, std::size_t longest, Wide budget, std::vector<Way>& ways)
{
    const Units width = kinds_.pieces[longest].width;
    if (used_[stock] >= limits_.most[stock] || kinds_.stock[stock].capacity < width) return;
    const Units rest = relaxed_.rest[stock];
    surcharge_ = rest > 0 && used_[stock] >= limits_.least[stock] ? rest : 0;
    if (surcharge_ > budget) return;
    peak_ = relaxed_.peak[stock];
    ways_ = &ways;
    current_ = {static_cast<int>(stock), std::vector<int>(left_.size(), 0)};
    current_.copies[longest] = 1;
    extend(longest, kinds_.stock[stock].capacity - width, relaxed_.values[longest], peak_ + surcharge_ - budget);
}

/// Whether what is left costs too much by a linear program of its own. Only worth its while where much is left.
bool Filling::relaxedCannot()
{
    Units pieces = 0;
    for (const Units count : left_) pieces += count;
    if (pieces < kPiecesToRelax || solution_.empty()) return false;
    Limits rest = limits_;
    Wide spent = 0;
    for (std::size_t s = 0; s < used_.size(); ++s) {
        if (rest.most[s] < kNoLimit) rest.most[s] -= used_[s];
        rest.least[s] = std::max<Units>(rest.least[s] - used_[s], 0);
        spent += static_cast<Wide>(used_[s]) * relaxation_.worths().ofStock(static_cast<int>(s));
    }
    const long long before = relaxation_.steps();
    const bool cannot = spent + relaxation_.solve(left_, rest, allowed_ - spent + 1, false).lower > allowed_;
    steps_ += (relaxation_.steps() - before) / 8;
    return cannot;
}

FillAnswer Filling::go(Wide budget)
{
    std::size_t longest = 0;
    while (longest < left_.size() && left_[longest] == 0) ++longest;
    if (longest == left_.size()) return FillAnswer::Found;
    if (steps_ > mostSteps_) return FillAnswer::Unknown;
    const std::string key = state();
    if (const auto known = failed_.find(key); known != failed_.end() && budget <= known->second)
        return FillAnswer::None;

    if (relaxedCannot()) {
        if (failed_.size() < kMostRemembered) failed_[key] = std::max(failed_[key], budget);
        return FillAnswer::None;
    }
    std::vector<Way> ways;
    for (std::size_t s = 0; s < kinds_.stock.size(); ++s) collect(s, longest, budget, ways);
    if (overflow_) return FillAnswer::Unknown;
    std::sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) {
        return a.waste != b.waste ? a.waste < b.waste : b.pattern < a.pattern;
    });
    for (const Way& way : ways) {
        const auto s = static_cast<std::size_t>(way.pattern.stock);
        for (std::size_t i = 0; i < left_.size(); ++i) left_[i] -= way.pattern.copies[i];
        ++used_[s];
        solution_.push_back({way.pattern, 1});
        const FillAnswer answer = go(budget - way.waste);
        if (answer == FillAnswer::Found) return answer;
        solution_.pop_back();
        --used_[s];
        for (std::size_t i = 0; i < left_.size(); ++i) left_[i] += way.pattern.copies[i];
        if (answer == FillAnswer::Unknown) return answer;
    }
    if (failed_.size() < kMostRemembered) {
        Wide& known = failed_[key];
        known = std::max(known, budget);
    }
    return FillAnswer::None;
}

}  // namespace

FillAnswer fillBars(const BarKinds& kinds, Relaxation& relaxation, const std::vector<Units>& demand,
                    const Limits& limits, const Relaxed& relaxed, Units below, long long mostSteps, long long& steps,
                    Solution& found)
{
    Units pieces = 0;
    for (const Units count : demand) pieces += count;
    if (pieces > 4000) return FillAnswer::Unknown;  // it goes down one level a bar
    // A cheaper plan costs a step less at least; the rounding of prices to worths is at most one a bar.
    const Wide allowed = relaxation.worths().worthOf(below - kinds.priceStep) + 1;
    const Wide budget = allowed - relaxed.lower;
    if (budget < 0) return FillAnswer::None;
    Filling filling(kinds, relaxation, limits, relaxed, allowed, mostSteps);
    const FillAnswer answer = filling.run(demand, budget);
    steps += filling.steps();
    if (answer == FillAnswer::Found) found = filling.solution();
    return answer;
}

}  // namespace yardcast::bars
