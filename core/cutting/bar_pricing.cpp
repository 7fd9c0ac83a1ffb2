#include "core/cutting/bar_pricing.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace yardcast::bars {

namespace {

constexpr long long kStepsDown = 4000;
constexpr Units kMostCells = 1 << 16;

}  // namespace

PatternPricer::PatternPricer(const BarKinds& kinds) : kinds_(kinds) {}

void PatternPricer::gather(Units capacity, const std::vector<Units>& values, const std::vector<int>& most)
{
    items_.clear();
    for (std::size_t i = 0; i < kinds_.pieces.size(); ++i) {
        const Units width = kinds_.pieces[i].width;
        if (values[i] <= 0 || most[i] <= 0 || width > capacity) continue;
        const int fit = static_cast<int>(std::min<Units>(most[i], capacity / width));
        items_.push_back({width, values[i], fit, static_cast<int>(i),
                          static_cast<double>(values[i]) / static_cast<double>(width)});
    }
}

Priced PatternPricer::quick(Units capacity, const std::vector<Units>& values, const std::vector<int>& most, Units above)
{
    gather(capacity, values, most);
    std::sort(items_.begin(), items_.end(), [](const Item& a, const Item& b) {
        return a.ratio != b.ratio ? a.ratio > b.ratio : a.kind < b.kind;
    });
    Priced out{{}, above, true, above};
    if (items_.empty()) return out;
    out.sure = goDown(capacity, out);
    out.atMost = out.value;
    return out;
}

/// False when it gave up; `out` then holds the best so far.
bool PatternPricer::goDown(Units capacity, Priced& out)
{
    const int n = static_cast<int>(items_.size());
    chosen_.assign(static_cast<std::size_t>(n), 0);
    Units left = capacity;
    Units value = 0;
    long long steps = 0;
    int at = 0;
    bool down = true;
    while (true) {
        ++steps;
        if (down) {
            // The margin is above what doubles round off, so that no better way is ever cut away.
            const bool hopeless = at == n || (static_cast<double>(value) +
                                              static_cast<double>(left) * items_[static_cast<std::size_t>(at)].ratio) *
                                                     (1.0 + 1e-12) <
                                                 static_cast<double>(out.value) + 1.0;
            if (hopeless) {
                if (value > out.value) {
                    out.value = value;
                    out.copies.assign(kinds_.pieces.size(), 0);
                    for (int i = 0; i < n; ++i) {
                        const auto k = static_cast<std::size_t>(i);
                        if (i < at) out.copies[static_cast<std::size_t>(items_[k].kind)] = chosen_[k];
                    }
                }
                down = false;
                --at;
                continue;
            }
            const Item& item = items_[static_cast<std::size_t>(at)];
            const int take = static_cast<int>(std::min<Units>(item.most, left / item.width));
            chosen_[static_cast<std::size_t>(at)] = take;
            left -= take * item.width;
            value += take * item.value;
            ++at;
            continue;
        }
        while (at >= 0 && chosen_[static_cast<std::size_t>(at)] == 0) --at;
        if (at < 0) break;
        if (steps > kStepsDown) {
            steps_ += steps;
            return false;
        }
        const Item& item = items_[static_cast<std::size_t>(at)];
        --chosen_[static_cast<std::size_t>(at)];
        left += item.width;
        value -= item.value;
        ++at;
        down = true;
    }
    steps_ += steps;
    return true;
}

Units PatternPricer::cellsOf(Units width, bool up) const
{
    return up ? (width + grid_ - 1) / grid_ : width / grid_;
}

void PatternPricer::buildTable(const std::vector<Units>& values, const std::vector<int>& most)
{
    Units largest = 0;
    for (const StockKind& stock : kinds_.stock) largest = std::max(largest, stock.capacity);
    gather(largest, values, most);
    tableItems_ = items_;
    grid_ = 0;
    for (const Item& item : tableItems_) grid_ = std::gcd(grid_, item.width);
    grid_ = std::max<Units>(grid_, 1);
    fine_ = largest / grid_ > kMostCells;
    if (fine_) grid_ = largest / kMostCells + 1;
    // Where widths are rounded down, a capacity is rounded up: no way is lost, so the most value is an upper bound.
    const auto cells = static_cast<std::size_t>(cellsOf(largest, fine_)) + 1;
    table_.assign(1, std::vector<Units>(cells, 0));
    for (const Item& item : tableItems_) {
        std::vector<Units> row = table_.back();
        const Units width = cellsOf(item.width, false);
        int left = item.most;
        for (int part = 1; left > 0; part = std::min(part * 2, left)) {
            part = std::min(part, left);
            left -= part;
            const auto shift = static_cast<std::size_t>(width * part);
            const Units value = item.value * part;
            for (std::size_t at = cells; at-- > shift;) row[at] = std::max(row[at], row[at - shift] + value);
            steps_ += static_cast<long long>(cells);
            if (left == 0) break;
        }
        table_.push_back(std::move(row));
    }
}

Priced PatternPricer::exact(Units capacity, const std::vector<Units>& values, const std::vector<int>& most, Units above)
{
    if (table_.empty()) buildTable(values, most);
    auto at = static_cast<std::size_t>(cellsOf(capacity, fine_));
    const Units value = table_.back()[at];
    Priced out{{}, above, true, std::max(value, above)};
    if (fine_ || value <= above) return out;
    out.value = value;
    out.copies.assign(kinds_.pieces.size(), 0);
    for (std::size_t i = tableItems_.size(); i-- > 0;) {
        const Item& item = tableItems_[i];
        const auto width = static_cast<std::size_t>(cellsOf(item.width, false));
        int copies = 0;
        while (table_[i + 1][at] != table_[i][at - width * static_cast<std::size_t>(copies)] + item.value * copies)
            ++copies;
        out.copies[static_cast<std::size_t>(item.kind)] = copies;
        at -= width * static_cast<std::size_t>(copies);
    }
    return out;
}

}  // namespace yardcast::bars
