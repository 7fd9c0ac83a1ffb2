#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>

#include "core/purchase/shopping.h"

namespace yardcast {

namespace {

/// Sizes and needs are compared in whole millionths of a unit, so that 0.1 + 0.2 covers 0.3.
constexpr double kStepsPerUnit = 1e6;
/// Beyond this many packs no count is given (it would not fit the whole numbers used here, nor any yard).
constexpr double kMostPacks = 1e7;

struct PackSize {
    std::int64_t steps = 0;
    std::int64_t priceMinor = 0;
    std::size_t index = 0;
    std::int64_t most = 0;  ///< more of these never pays
};

/// Search over counts. The pack with the lowest price per unit fills what the others leave; of each other size no more
/// than `most` are tried, because a larger number can be exchanged for whole packs of the first at no higher price.
class PackSearch {
public:
    PackSearch(std::int64_t needSteps, std::vector<PackSize> sizes) : need_(needSteps), sizes_(std::move(sizes))
    {
        counts_.assign(sizes_.size(), 0);
    }

    std::vector<std::int64_t> run()
    {
        choose(1, need_, 0);
        return best_;
    }

private:
    void choose(std::size_t next, std::int64_t remaining, std::int64_t price)
    {
        if (next == sizes_.size() || remaining <= 0) {
            counts_[0] = remaining > 0 ? (remaining + sizes_[0].steps - 1) / sizes_[0].steps : 0;
            consider(price + counts_[0] * sizes_[0].priceMinor, counts_[0] * sizes_[0].steps - remaining);
            return;
        }
        const PackSize& size = sizes_[next];
        const std::int64_t most = std::min(size.most, (remaining + size.steps - 1) / size.steps);
        for (std::int64_t count = 0; count <= most; ++count) {
            const std::int64_t left = remaining - count * size.steps;
            const std::int64_t spent = price + count * size.priceMinor;
            // What is left costs at least the lowest price per unit; the bound rises with the count.
            const double bound = static_cast<double>(spent) + static_cast<double>(std::max<std::int64_t>(left, 0)) *
                                                                  static_cast<double>(sizes_[0].priceMinor) /
                                                                  static_cast<double>(sizes_[0].steps);
            if (!best_.empty() && bound > static_cast<double>(bestPrice_) * (1 + 1e-12) + 1e-6) break;
            counts_[next] = count;
            choose(next + 1, left, spent);
        }
        counts_[next] = 0;
    }

    void consider(std::int64_t price, std::int64_t leftover)
    {
        if (!best_.empty() && (price > bestPrice_ || (price == bestPrice_ && leftover >= bestLeftover_))) return;
        bestPrice_ = price;
        bestLeftover_ = leftover;
        best_ = counts_;
    }

    std::int64_t need_;
    std::vector<PackSize> sizes_;
    std::vector<std::int64_t> counts_;
    std::vector<std::int64_t> best_;
    std::int64_t bestPrice_ = 0;
    std::int64_t bestLeftover_ = 0;
};

bool cheaperPerUnit(const PackSize& a, const PackSize& b)
{
    const double left = static_cast<double>(a.priceMinor) * static_cast<double>(b.steps);
    const double right = static_cast<double>(b.priceMinor) * static_cast<double>(a.steps);
    if (left != right) return left < right;
    return a.steps < b.steps;
}

std::vector<PackSize> usableSizes(const std::vector<Pack>& packs)
{
    std::vector<PackSize> sizes;
    for (std::size_t i = 0; i < packs.size(); ++i) {
        const double steps = std::round(packs[i].size * kStepsPerUnit);
        if (!(steps >= 1.0) || steps > 1e15 || packs[i].priceMinor < 0) continue;
        sizes.push_back({static_cast<std::int64_t>(steps), packs[i].priceMinor, i, 0});
    }
    std::sort(sizes.begin(), sizes.end(), cheaperPerUnit);
    // Of two packs of one size only the cheaper can ever be chosen.
    std::vector<PackSize> distinct;
    for (const PackSize& size : sizes) {
        const bool known = std::any_of(distinct.begin(), distinct.end(),
                                       [&](const PackSize& other) { return other.steps == size.steps; });
        if (!known) distinct.push_back(size);
    }
    for (PackSize& size : distinct) size.most = distinct[0].steps / std::gcd(distinct[0].steps, size.steps) - 1;
    return distinct;
}

}  // namespace

std::vector<PackChoice> cheapestPacks(double need, const std::vector<Pack>& packs)
{
    const std::vector<PackSize> sizes = usableSizes(packs);
    if (sizes.empty() || !(need > 0.0)) return {};
    const double needSteps = std::ceil(need * kStepsPerUnit * (1 - 1e-12) - 0.5);
    if (needSteps < 1.0) return {};
    const auto least = std::min_element(sizes.begin(), sizes.end(),
                                        [](const PackSize& a, const PackSize& b) { return a.steps < b.steps; });
    if (needSteps > 1e15 || needSteps / static_cast<double>(least->steps) > kMostPacks) return {};

    const std::vector<std::int64_t> counts = PackSearch(static_cast<std::int64_t>(needSteps), sizes).run();
    std::vector<PackChoice> choices;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        if (counts[i] == 0) continue;
        choices.push_back({packs[sizes[i].index].size, static_cast<int>(counts[i]), sizes[i].priceMinor});
    }
    std::sort(choices.begin(), choices.end(), [](const PackChoice& a, const PackChoice& b) { return a.size > b.size; });
    return choices;
}

}  // namespace yardcast
