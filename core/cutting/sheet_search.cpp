#include "core/cutting/sheet_search.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/cutting/sheet_bounds.h"

namespace yardcast::sheets {

namespace {

/// Beyond this many pieces the sheets that repeat are settled before the rest is searched.
constexpr int kMostSearched = 240;
constexpr int kRules = 30;
constexpr std::size_t kMostSheets = 400;
constexpr std::size_t kMostTried = 8;
constexpr std::uint64_t kPolishPlaces = 3'000;   // a pair of pieces

std::int64_t total(const std::vector<int>& counts)
{
    std::int64_t sum = 0;
    for (const int count : counts) {
        sum += count;
    }
    return sum;
}

std::vector<int> countsOf(const std::vector<Item>& items)
{
    std::vector<int> counts;
    for (const Item& item : items) {
        counts.push_back(item.count);
    }
    return counts;
}

std::int64_t priceOf(const std::vector<FilledGroup>& groups, const std::vector<Bin>& bins)
{
    std::int64_t price = 0;
    for (const FilledGroup& group : groups) {
        for (std::size_t s = 0; s < group.bins.size(); ++s) {
            if (!group.forest.isEmpty(static_cast<int>(s))) {
                price += bins[static_cast<std::size_t>(group.bins[s])].price * group.times;
            }
        }
    }
    return price;
}

/// Sheet after sheet, each filled as well as a few rules can.
class OneByOne {
public:
    OneByOne(const std::vector<Item>& items, const std::vector<Bin>& bins, CutCosts costs, const std::stop_token& stop)
        : items_(items), bins_(bins), costs_(costs), stop_(stop), left_(countsOf(items))
    {
        for (const Bin& bin : bins) {
            stock_.push_back(bin.most);
        }
    }

    std::vector<FilledGroup> run()
    {
        std::vector<FilledGroup> groups;
        while (total(left_) > 0) {
            Choice best;
            for (const int b : worthTrying()) {
                tryBin(b, best);
            }
            if (best.bin < 0) {
                break;
            }
            std::vector<int> used(items_.size(), 0);
            for (const int node : best.forest.items()) {
                ++used[static_cast<std::size_t>(best.forest.node(node).item)];
            }
            int times = stock_[static_cast<std::size_t>(best.bin)];
            for (std::size_t i = 0; i < items_.size(); ++i) {
                if (used[i] > 0) {
                    times = std::min(times, left_[i] / used[i]);
                }
            }
            for (std::size_t i = 0; i < items_.size(); ++i) {
                left_[i] -= used[i] * times;
            }
            stock_[static_cast<std::size_t>(best.bin)] -= times;
            groups.push_back({std::move(best.forest), {best.bin}, times});
        }
        return groups;
    }
    const std::vector<int>& left() const { return left_; }

private:
    struct Choice {
        int bin = -1;
        bool free = false;
        bool all = false;
        double placed = 0.0;
        double price = 0.0;
        SheetForest forest;
        bool worseThan(const Choice& other) const
        {
            if (bin < 0 || free != other.free) {
                return bin < 0 || other.free;
            }
            if (free) {
                return other.placed > placed;
            }
            if (all && other.all) {
                return other.price < price;
            }
            return other.placed * price > placed * other.price;
        }
    };

    /// Of many sorts of sheet those that cost least by area, and the cheapest that holds the largest piece.
    std::vector<int> worthTrying() const
    {
        const Item* largest = nullptr;
        for (std::size_t i = 0; i < items_.size(); ++i) {
            if (left_[i] > 0 && (!largest || items_[i].area() > largest->area())) {
                largest = &items_[i];
            }
        }
        std::vector<int> out;
        int holds = -1;
        for (std::size_t b = 0; b < bins_.size(); ++b) {
            if (stock_[b] > 0) {
                out.push_back(static_cast<int>(b));
                if (fits(*largest, bins_[b].w, bins_[b].h)
                    && (holds < 0 || bins_[b].price < bins_[static_cast<std::size_t>(holds)].price)) {
                    holds = static_cast<int>(b);
                }
            }
        }
        std::stable_sort(out.begin(), out.end(), [this](int a, int b) {
            const Bin& binA = bins_[static_cast<std::size_t>(a)];
            const Bin& binB = bins_[static_cast<std::size_t>(b)];
            if (binA.price == 0 || binB.price == 0) {
                return binA.price == 0 && (binB.price > 0 || binA.area() > binB.area());
            }
            return static_cast<double>(binA.price) * binB.area() < static_cast<double>(binB.price) * binA.area();
        });
        if (out.size() > kMostTried) {
            out.resize(kMostTried);
            if (holds >= 0) {
                out.push_back(holds);
            }
        }
        return out;
    }

    void tryBin(int b, Choice& best)
    {
        const Bin& bin = bins_[static_cast<std::size_t>(b)];
        std::vector<Item> now = items_;
        double all = 0.0;
        std::int64_t pieces = 0;
        for (std::size_t i = 0; i < now.size(); ++i) {
            const double room = bin.area() / now[i].area() + 1.0;
            now[i].count = static_cast<int>(std::min<double>(left_[i], room));
            all += now[i].area() * left_[i];
            pieces += now[i].count;
        }
        SheetFiller filler(now, {bin}, costs_, 1, stop_);
        const double before = filler.leftArea();
        const int rules = pieces > 20'000 ? 1 : pieces > 2'000 ? 6 : pieces > 400 ? 15 : kRules;
        for (int rule = 0; rule < rules; ++rule) {
            filler.construct(rule);
            Choice choice;
            choice.placed = before - filler.leftArea();
            if (choice.placed <= 0.0) {
                continue;
            }
            choice.bin = b;
            choice.price = static_cast<double>(bin.price);
            choice.free = bin.price == 0;
            choice.all = choice.placed >= all;
            if (best.worseThan(choice)) {
                choice.forest = filler.forest();
                best = std::move(choice);
            }
        }
    }

    const std::vector<Item>& items_;
    const std::vector<Bin>& bins_;
    CutCosts costs_;
    const std::stop_token& stop_;
    std::vector<int> left_;
    std::vector<int> stock_;
};

/// The sheets of a combination, one by one.
std::vector<int> sheetsOf(const std::vector<int>& counts)
{
    std::vector<int> out;
    for (std::size_t b = 0; b < counts.size(); ++b) {
        out.insert(out.end(), static_cast<std::size_t>(counts[b]), static_cast<int>(b));
    }
    return out;
}

std::vector<Bin> binsOf(const std::vector<int>& sheets, const std::vector<Bin>& bins)
{
    std::vector<Bin> out;
    for (const int b : sheets) {
        out.push_back(bins[static_cast<std::size_t>(b)]);
    }
    return out;
}

class Search {
public:
    Search(const std::vector<Item>& items, const std::vector<Bin>& bins, CutCosts costs, std::uint64_t places,
           const std::stop_token& stop)
        : items_(items), bins_(bins), costs_(costs), places_(places), stop_(stop), left_(countsOf(items))
    {
    }

    Filled run()
    {
        OneByOne first(items_, bins_, costs_, stop_);
        groups_ = first.run();
        left_ = first.left();
        settleRepeats();
        if (sheetCount() <= kMostSheets && !rest_.empty()) {
            searchRest();
        }
        Filled filled;
        filled.groups = std::move(settled_);
        for (FilledGroup& group : groups_) {
            filled.groups.push_back(std::move(group));
        }
        filled.left = left_;
        return filled;
    }

private:
    std::size_t sheetCount() const
    {
        std::size_t sum = 0;
        for (const FilledGroup& group : groups_) {
            sum += group.bins.size() * static_cast<std::size_t>(group.times);
        }
        return sum;
    }

    /// Moves sheets that are cut many times alike out of the search, until few enough pieces are left for it.
    void settleRepeats()
    {
        std::int64_t pieces = 0;
        for (const FilledGroup& group : groups_) {
            pieces += static_cast<std::int64_t>(group.forest.items().size()) * group.times;
        }
        for (FilledGroup& group : groups_) {
            const std::int64_t each = static_cast<std::int64_t>(group.forest.items().size());
            if (pieces <= kMostSearched) {
                break;
            }
            const std::int64_t over = (pieces - kMostSearched) / each;
            const int fixed = static_cast<int>(std::min<std::int64_t>(group.times, over));
            if (fixed > 0) {
                settled_.push_back(group);
                settled_.back().times = fixed;
                group.times -= fixed;
                pieces -= each * fixed;
            }
        }
        groups_.erase(std::remove_if(groups_.begin(), groups_.end(), [](const FilledGroup& g) { return g.times == 0; }),
                      groups_.end());
        rest_ = items_;
        restBins_ = bins_;
        for (std::size_t i = 0; i < rest_.size(); ++i) {
            rest_[i].count = left_[i];
        }
        for (const FilledGroup& group : groups_) {
            for (const int node : group.forest.items()) {
                rest_[static_cast<std::size_t>(group.forest.node(node).item)].count += group.times;
            }
        }
        for (const FilledGroup& group : settled_) {
            restBins_[static_cast<std::size_t>(group.bins.front())].most -= group.times;
        }
    }

    /// Tries the combinations that cost less than what there is, then polishes what was found.
    void searchRest()
    {
        const bool allPlaced = total(left_) == 0;
        const std::int64_t limit = allPlaced ? priceOf(groups_, bins_) : std::numeric_limits<std::int64_t>::max();
        std::uint64_t budget = places_ * 4 / 5;
        const std::vector<Item> wanted = withoutNone();
        const std::vector<Measure> all = measures(wanted, restBins_);
        Combinations combinations(restBins_, all);
        bool found = false;
        std::optional<SheetForest> best;
        std::vector<int> bestSheets;
        std::vector<int> bestLeft;
        double bestLeftArea = std::numeric_limits<double>::max();
        constexpr int kMostTries = 24;
        auto following = combinations.next();
        for (int tries = 0; tries < kMostTries && !found && budget > 1'000 && !stop_.stop_requested(); ++tries) {
            const auto next = std::move(following);
            if (!next || next->price >= limit) {
                break;
            }
            following = combinations.next();
            const bool isLast = !following || following->price >= limit;
            const std::vector<int> sheets = sheetsOf(next->counts);
            if (sheets.size() > kMostSheets) {
                break;
            }
            SheetFiller filler(rest_, binsOf(sheets, bins_), costs_, 1 + static_cast<std::uint64_t>(tries), stop_);
            found = packed(filler, isLast ? budget : budget / 3);
            budget -= std::min(budget, filler.placesTried());
            if (found || (!allPlaced && filler.leftArea() < bestLeftArea)) {
                best = filler.forest();
                bestSheets = sheets;
                bestLeft = filler.left();
                bestLeftArea = filler.leftArea();
            }
        }
        if (!found && !allPlaced) {
            found = placeMost(budget, best, bestSheets, bestLeft, bestLeftArea);
        }
        if (!found) {
            mergeGroups(best, bestSheets, bestLeft);
        }
        SheetFiller filler(rest_, binsOf(bestSheets, bins_), costs_, 77, stop_);
        filler.resume(*best, bestLeft);
        if (total(bestLeft) == 0) {
            const auto pieces = static_cast<std::uint64_t>(filler.forest().items().size());
            filler.polish(std::min(places_ * 2 / 5, kPolishPlaces * pieces * pieces));
        }
        groups_.assign(1, {filler.forest(), bestSheets, 1});
        left_ = bestLeft;
    }

    bool packed(SheetFiller& filler, std::uint64_t places)
    {
        SheetForest best;
        std::vector<int> left;
        double leftArea = std::numeric_limits<double>::max();
        for (int rule = 0; rule < kRules && leftArea > 0.0 && filler.placesTried() < places; ++rule) {
            filler.construct(rule);
            if (filler.leftArea() < leftArea) {
                leftArea = filler.leftArea();
                best = filler.forest();
                left = filler.left();
            }
        }
        if (left.empty()) {
            filler.construct(0);
        } else {
            filler.resume(best, left);
        }
        return filler.leftArea() <= 0.0 || filler.pack(places);
    }

    /// Where the stock runs out: all sheets at once, for the least area left over.
    bool placeMost(std::uint64_t budget, std::optional<SheetForest>& best, std::vector<int>& bestSheets,
                   std::vector<int>& bestLeft, double bestLeftArea)
    {
        std::vector<int> counts(restBins_.size(), 0);
        for (const FilledGroup& group : groups_) {
            for (const int b : group.bins) {
                counts[static_cast<std::size_t>(b)] += group.times;
            }
        }
        for (std::size_t b = 0; b < restBins_.size(); ++b) {
            if (restBins_[b].limited) {
                counts[b] = std::min(restBins_[b].most, static_cast<int>(kMostSheets));
            }
        }
        const std::vector<int> sheets = sheetsOf(counts);
        SheetFiller filler(rest_, binsOf(sheets, bins_), costs_, 5, stop_);
        packed(filler, std::max<std::uint64_t>(budget, 1'000));
        double greedyLeft = 0.0;
        for (std::size_t i = 0; i < items_.size(); ++i) {
            greedyLeft += items_[i].area() * left_[i];
        }
        if (filler.leftArea() >= std::min(bestLeftArea, greedyLeft)) {
            return best && bestLeftArea < greedyLeft;
        }
        best = filler.forest();
        bestSheets = sheets;
        bestLeft = filler.left();
        return true;
    }

    /// What was filled one by one as one forest.
    void mergeGroups(std::optional<SheetForest>& best, std::vector<int>& sheets, std::vector<int>& left)
    {
        sheets.clear();
        for (const FilledGroup& group : groups_) {
            for (int time = 0; time < group.times; ++time) {
                sheets.insert(sheets.end(), group.bins.begin(), group.bins.end());
            }
        }
        SheetForest all(binsOf(sheets, bins_));
        int at = 0;
        for (const FilledGroup& group : groups_) {
            for (int time = 0; time < group.times; ++time) {
                for (int s = 0; s < group.forest.sheetCount(); ++s) {
                    all.copySheet(group.forest, s, at++);
                }
            }
        }
        best = std::move(all);
        left = left_;
    }

    std::vector<Item> withoutNone() const
    {
        std::vector<Item> out;
        for (const Item& item : rest_) {
            if (item.count > 0) {
                out.push_back(item);
            }
        }
        return out;
    }

    const std::vector<Item>& items_;
    const std::vector<Bin>& bins_;
    CutCosts costs_;
    std::uint64_t places_;
    const std::stop_token& stop_;
    std::vector<int> left_;
    std::vector<FilledGroup> groups_;
    std::vector<FilledGroup> settled_;
    std::vector<Item> rest_;
    std::vector<Bin> restBins_;
};

}  // namespace

SheetBound sheetBound(const std::vector<Item>& items, const std::vector<Bin>& bins)
{
    if (items.empty() || bins.empty()) {
        return {};
    }
    const std::vector<Measure> all = measures(items, bins);
    const auto bound = [&all](const std::vector<Bin>& priced) -> std::int64_t {
        Combinations combinations(priced, all);
        if (const auto first = combinations.next()) {
            return first->price;
        }
        return combinations.exhausted() ? std::max(combinations.floorPrice(), linearBound(priced, all)) : 0;
    };
    std::vector<Bin> alike = bins;
    for (Bin& bin : alike) {
        bin.price = 1;
    }
    return {bound(bins), static_cast<int>(bound(alike))};
}

std::int64_t sheetsPrice(const Filled& filled, const std::vector<Bin>& bins)
{
    return priceOf(filled.groups, bins);
}

Filled fillSheets(const std::vector<Item>& items, const std::vector<Bin>& bins, CutCosts costs, std::uint64_t places,
                  const std::stop_token& stop)
{
    return Search(items, bins, costs, places, stop).run();
}

}  // namespace yardcast::sheets
