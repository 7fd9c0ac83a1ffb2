#include "core/cutting/bar_master.h"

#include <algorithm>
#include <cmath>

namespace yardcast::bars {

namespace {

constexpr double kStandInCost = 1000.0;  ///< times the dearest bar
constexpr double kTiny = 1e-9;

}  // namespace

BarMaster::BarMaster(const BarKinds& kinds, const std::vector<Units>& demand, const std::vector<Units>& least,
                     const std::vector<Units>& most)
    : kinds_(kinds)
{
    for (const StockKind& stock : kinds.stock) dearest_ = std::max(dearest_, static_cast<double>(stock.price));
    for (const Units count : demand) right_.push_back(static_cast<double>(count));
    isMost_.assign(demand.size(), false);
    leastRow_.assign(kinds.stock.size(), -1);
    mostRow_.assign(kinds.stock.size(), -1);
    for (std::size_t s = 0; s < kinds.stock.size(); ++s) {
        if (least[s] > 0) {
            leastRow_[s] = static_cast<int>(right_.size());
            right_.push_back(static_cast<double>(least[s]));
            isMost_.push_back(false);
        }
        if (most[s] < kNoLimit) {
            mostRow_[s] = static_cast<int>(right_.size());
            right_.push_back(static_cast<double>(most[s]));
            isMost_.push_back(true);
        }
    }
    rows_ = static_cast<int>(right_.size());
    const auto n = static_cast<std::size_t>(rows_);
    inverse_.assign(n * n, 0.0);
    slackBasic_.assign(n, false);
    for (std::size_t r = 0; r < n; ++r) {
        inverse_[r * n + r] = 1.0;
        basis_.push_back({isMost_[r] ? Basic::Kind::Slack : Basic::Kind::StandIn, static_cast<int>(r)});
        slackBasic_[r] = isMost_[r];
    }
    level_ = right_;
    duals_.assign(n, 0.0);
    price();
}

void BarMaster::add(const Pattern& pattern)
{
    Column column{pattern, {}, 0.0};
    for (std::size_t i = 0; i < pattern.copies.size(); ++i) {
        if (pattern.copies[i] > 0)
            column.entries.push_back({static_cast<int>(i), static_cast<double>(pattern.copies[i])});
    }
    const auto s = static_cast<std::size_t>(pattern.stock);
    if (leastRow_[s] >= 0) column.entries.push_back({leastRow_[s], 1.0});
    if (mostRow_[s] >= 0) column.entries.push_back({mostRow_[s], 1.0});
    column.cost = static_cast<double>(kinds_.stock[s].price) / dearest_;
    columns_.push_back(std::move(column));
    columnBasic_.push_back(false);
}

double BarMaster::rowSign(int row) const
{
    return isMost_[static_cast<std::size_t>(row)] ? 1.0 : -1.0;
}

double BarMaster::costOf(const Basic& basic) const
{
    if (basic.kind == Basic::Kind::Pattern) return columns_[static_cast<std::size_t>(basic.index)].cost;
    return basic.kind == Basic::Kind::StandIn ? kStandInCost : 0.0;
}

void BarMaster::entriesOf(const Basic& basic, std::vector<Entry>& out) const
{
    if (basic.kind == Basic::Kind::Pattern) {
        out = columns_[static_cast<std::size_t>(basic.index)].entries;
    } else {
        out = {{basic.index, basic.kind == Basic::Kind::StandIn ? 1.0 : rowSign(basic.index)}};
    }
}

void BarMaster::price()
{
    const auto n = static_cast<std::size_t>(rows_);
    std::fill(duals_.begin(), duals_.end(), 0.0);
    for (std::size_t r = 0; r < n; ++r) {
        const double cost = costOf(basis_[r]);
        if (cost == 0.0) continue;
        for (std::size_t k = 0; k < n; ++k) duals_[k] += cost * inverse_[r * n + k];
    }
    steps_ += rows_ * rows_;
}

/// The column that gains most a unit; when careful, the first one that gains (Bland's rule: no going in circles).
bool BarMaster::chooseEntering(bool careful, Basic& entering, double& gain) const
{
    gain = kTiny;
    bool found = false;
    const std::size_t count = columns_.size();
    std::size_t seen = 0;
    std::size_t seenWithGain = 0;
    for (; seen < count; ++seen) {
        // Not all of many: the best of the first that gain, going round.
        if (found && ++seenWithGain > 40) break;
        const std::size_t c = careful ? seen : (from_ + seen) % count;
        if (columnBasic_[c]) continue;
        double worth = -columns_[c].cost;
        for (const Entry& entry : columns_[c].entries)
            worth += duals_[static_cast<std::size_t>(entry.row)] * entry.value;
        if (worth <= gain) continue;
        entering = {Basic::Kind::Pattern, static_cast<int>(c)};
        gain = worth;
        found = true;
        if (careful) return true;
    }
    for (int r = 0; r < rows_; ++r) {
        if (slackBasic_[static_cast<std::size_t>(r)]) continue;
        const double worth = duals_[static_cast<std::size_t>(r)] * rowSign(r);
        if (worth <= gain) continue;
        entering = {Basic::Kind::Slack, r};
        gain = worth;
        found = true;
        if (careful) return true;
    }
    steps_ += static_cast<long long>(seen) * 8;
    from_ = count > 0 ? (from_ + seen) % count : 0;
    return found;
}

bool BarMaster::exchange(const Basic& entering, double gain)
{
    const auto n = static_cast<std::size_t>(rows_);
    std::vector<Entry> entries;
    entriesOf(entering, entries);
    std::vector<double> along(n, 0.0);
    for (const Entry& entry : entries) {
        const auto k = static_cast<std::size_t>(entry.row);
        for (std::size_t r = 0; r < n; ++r) along[r] += inverse_[r * n + k] * entry.value;
    }
    std::size_t leaving = n;
    double shortest = 0.0;
    for (std::size_t r = 0; r < n; ++r) {
        if (along[r] <= 1e-9) continue;
        const double ratio = std::max(level_[r], 0.0) / along[r];
        // Stand-ins leave first among equals, then the steadier pivot.
        const bool better = leaving == n || ratio < shortest - 1e-12 ||
                            (ratio < shortest + 1e-12 && along[r] > along[leaving]);
        if (!better) continue;
        shortest = leaving == n ? ratio : std::min(ratio, shortest);
        leaving = r;
    }
    if (leaving == n) return false;
    const auto setBasic = [&](const Basic& basic, bool is) {
        if (basic.kind == Basic::Kind::Pattern) columnBasic_[static_cast<std::size_t>(basic.index)] = is;
        if (basic.kind == Basic::Kind::Slack) slackBasic_[static_cast<std::size_t>(basic.index)] = is;
    };
    setBasic(basis_[leaving], false);
    setBasic(entering, true);
    basis_[leaving] = entering;
    double* const pivotRow = &inverse_[leaving * n];
    const double pivot = along[leaving];
    filled_.clear();
    for (std::size_t k = 0; k < n; ++k) {
        if (pivotRow[k] == 0.0) continue;
        pivotRow[k] /= pivot;
        duals_[k] -= gain * pivotRow[k];  // so that what enters gains nothing any more
        filled_.push_back(k);
    }
    const double step = level_[leaving] / pivot;
    level_[leaving] = step;
    for (std::size_t r = 0; r < n; ++r) {
        if (r == leaving || along[r] == 0.0) continue;
        const double factor = along[r];
        double* const row = &inverse_[r * n];
        for (const std::size_t k : filled_) row[k] -= factor * pivotRow[k];
        level_[r] -= factor * step;
        steps_ += static_cast<long long>(filled_.size());
    }
    steps_ += rows_;
    if (++exchanges_ % (rows_ < 100 ? 100 : 400) == 0) refresh();
    return true;
}

/// Inverts the basis anew, by Gauss and Jordan with the largest pivot of each column.
void BarMaster::refresh()
{
    const auto n = static_cast<std::size_t>(rows_);
    std::vector<double> matrix(n * n, 0.0);
    std::vector<Entry> entries;
    for (std::size_t c = 0; c < n; ++c) {
        entriesOf(basis_[c], entries);
        for (const Entry& entry : entries) matrix[static_cast<std::size_t>(entry.row) * n + c] += entry.value;
    }
    std::vector<double> inverse(n * n, 0.0);
    for (std::size_t r = 0; r < n; ++r) inverse[r * n + r] = 1.0;
    for (std::size_t c = 0; c < n; ++c) {
        std::size_t best = c;
        for (std::size_t r = c + 1; r < n; ++r) {
            if (std::abs(matrix[r * n + c]) > std::abs(matrix[best * n + c])) best = r;
        }
        if (std::abs(matrix[best * n + c]) < 1e-12) return;  // keep what there is
        if (best != c) {
            std::swap_ranges(&matrix[c * n], &matrix[c * n] + n, &matrix[best * n]);
            std::swap_ranges(&inverse[c * n], &inverse[c * n] + n, &inverse[best * n]);
        }
        const double pivot = matrix[c * n + c];
        for (std::size_t k = 0; k < n; ++k) {
            matrix[c * n + k] /= pivot;
            inverse[c * n + k] /= pivot;
        }
        for (std::size_t r = 0; r < n; ++r) {
            const double factor = matrix[r * n + c];
            if (r == c || factor == 0.0) continue;
            steps_ += rows_;
            for (std::size_t k = 0; k < n; ++k) {
                matrix[r * n + k] -= factor * matrix[c * n + k];
                inverse[r * n + k] -= factor * inverse[c * n + k];
            }
        }
    }
    inverse_ = std::move(inverse);
    for (std::size_t r = 0; r < n; ++r) {
        double level = 0.0;
        for (std::size_t k = 0; k < n; ++k) level += inverse_[r * n + k] * right_[k];
        level_[r] = std::abs(level) < 1e-11 ? 0.0 : level;
    }
    price();
}

bool BarMaster::solve(long long mostSteps)
{
    int idle = 0;
    const int most = 200 + 40 * rows_;
    const long long until = steps_ + mostSteps;
    bool optimal = false;
    price();
    for (int round = 0; round < most && steps_ < until; ++round) {
        Basic entering;
        double gain = 0.0;
        if (!chooseEntering(idle > 60, entering, gain)) {
            optimal = true;
            break;
        }
        const double before = objective();
        if (!exchange(entering, gain)) break;
        idle = objective() < before - 1e-12 ? 0 : idle + 1;
    }
    price();
    return optimal;
}

double BarMaster::objective() const
{
    double sum = 0.0;
    for (std::size_t r = 0; r < basis_.size(); ++r) sum += costOf(basis_[r]) * level_[r];
    return sum;
}

double BarMaster::stockDual(int stock) const
{
    const auto s = static_cast<std::size_t>(stock);
    double sum = 0.0;
    if (leastRow_[s] >= 0) sum += duals_[static_cast<std::size_t>(leastRow_[s])];
    if (mostRow_[s] >= 0) sum += duals_[static_cast<std::size_t>(mostRow_[s])];
    return sum;
}

std::vector<double> BarMaster::amounts() const
{
    std::vector<double> out(columns_.size(), 0.0);
    for (std::size_t r = 0; r < basis_.size(); ++r) {
        if (basis_[r].kind == Basic::Kind::Pattern)
            out[static_cast<std::size_t>(basis_[r].index)] = std::max(level_[r], 0.0);
    }
    return out;
}

}  // namespace yardcast::bars
