#include "core/cutting/sheet_fill.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace yardcast::sheets {

namespace {

constexpr int kOrders = 5;
constexpr int kFits = 3;
constexpr int kMostTakenToPack = 10;
constexpr int kMostTakenToPolish = 14;
constexpr int kMostTogether = 3;                  // sheets
constexpr std::uint64_t kPlacesTogether = 60'000;

double key(const Item& item, int order)
{
    const double w = static_cast<double>(item.w);
    const double h = static_cast<double>(item.h);
    switch (order) {
    case 0: return w * h;
    case 1: return std::max(w, h);
    case 2: return std::min(w, h);
    case 3: return w;
    default: return h;
    }
}

}  // namespace

SheetFiller::SheetFiller(const std::vector<Item>& items, const std::vector<Bin>& sheets, CutCosts costs,
                         std::uint64_t seed, std::stop_token stop)
    : items_(items), sheets_(sheets), costs_(costs), dice_(seed), stop_(std::move(stop)), forest_(sheets)
{
    for (int order = 0; order < kOrders; ++order) {
        std::vector<int> sorted(items.size());
        std::iota(sorted.begin(), sorted.end(), 0);
        std::stable_sort(sorted.begin(), sorted.end(), [&](int a, int b) {
            return key(items[static_cast<std::size_t>(a)], order) > key(items[static_cast<std::size_t>(b)], order);
        });
        orders_.push_back(std::move(sorted));
    }
    for (const Item& item : items) {
        left_.push_back(item.count);
    }
    bool anyPaid = false;
    for (const Bin& sheet : sheets) {
        largestSheet_ = std::max(largestSheet_, sheet.area());
        anyFree_ = anyFree_ || sheet.price == 0;
        anyPaid = anyPaid || sheet.price > 0;
    }
    anyFree_ = anyFree_ && anyPaid;
    leftArea_ = areaLeft();
}

SheetFiller::SheetFiller(const SheetFiller& whole, const std::vector<Bin>& sheets, std::uint64_t seed)
    : items_(whole.items_), sheets_(sheets), costs_(whole.costs_), dice_(seed), stop_(whole.stop_),
      orders_(whole.orders_), forest_(sheets), left_(whole.left_), largestSheet_(whole.largestSheet_), anyFree_(whole.anyFree_)
{
}

double SheetFiller::areaLeft() const
{
    double sum = 0.0;
    for (std::size_t i = 0; i < items_.size(); ++i) {
        sum += items_[i].area() * left_[i];
    }
    return sum;
}

void SheetFiller::resume(const SheetForest& forest, const std::vector<int>& left)
{
    forest_ = forest;
    left_ = left;
    leftArea_ = areaLeft();
}

void SheetFiller::construct(int rule)
{
    forest_ = SheetForest(sheets_);
    for (std::size_t i = 0; i < items_.size(); ++i) {
        left_[i] = items_[i].count;
    }
    Rule of;
    of.order = rule % kOrders;
    of.fit = (rule / kOrders) % kFits;
    of.split = (rule / (kOrders * kFits)) % 2;
    if (rule >= kOrders * kFits * 2) {
        of = randomRule();
    }
    recreate(of);
    leftArea_ = areaLeft();
}

SheetFiller::Rule SheetFiller::randomRule()
{
    Rule rule;
    rule.order = dice_.below(kOrders);
    rule.fit = dice_.below(kFits);
    const int split = dice_.below(10);
    rule.split = split < 6 ? 0 : split < 7 ? 1 : 2;
    rule.skipOneIn = dice_.oneIn(2) ? 0 : 12;
    return rule;
}

bool SheetFiller::placeBest(int item, const Rule& rule)
{
    const Item& of = items_[static_cast<std::size_t>(item)];
    double best = std::numeric_limits<double>::max();
    int bestRest = -1;
    bool bestTurned = false;
    const std::vector<int>& rests = forest_.rests();
    tried_ += rests.size();
    for (const int rest : rests) {
        const TreeNode& node = forest_.node(rest);
        for (int turned = 0; turned < (of.turn ? 2 : 1); ++turned) {
            const Um over = node.w - (turned ? of.h : of.w);
            const Um above = node.h - (turned ? of.w : of.h);
            if (over < 0 || above < 0 || (rule.skipOneIn && dice_.oneIn(rule.skipOneIn))) {
                continue;
            }
            double score = 0.0;
            if (rule.fit == 0) {
                score = static_cast<double>(node.w) * static_cast<double>(node.h);
                // Of two ways round, the one that leaves a side flush.
                score += 1e-3 * static_cast<double>(std::min(over, above));
            } else if (rule.fit == 1) {
                score = static_cast<double>(std::min(over, above)) + 1e-3 * static_cast<double>(std::max(over, above));
            } else {
                score = static_cast<double>(std::max(over, above)) + 1e-3 * static_cast<double>(std::min(over, above));
            }
            if (score < best) {
                best = score;
                bestRest = rest;
                bestTurned = turned != 0;
            }
        }
    }
    if (bestRest < 0) {
        return false;
    }
    const TreeNode& node = forest_.node(bestRest);
    const Um w = bestTurned ? of.h : of.w;
    const Um h = bestTurned ? of.w : of.h;
    const double beside = static_cast<double>(node.w - w) * static_cast<double>(node.h);
    const double above = static_cast<double>(node.w) * static_cast<double>(node.h - h);
    const bool columnFirst = rule.split == 0 ? beside > above : rule.split == 1 ? beside <= above : dice_.oneIn(2);
    forest_.insert(bestRest, item, w, h, bestTurned, columnFirst);
    return true;
}

void SheetFiller::recreate(const Rule& rule)
{
    for (const int item : orders_[static_cast<std::size_t>(rule.order)]) {
        int& left = left_[static_cast<std::size_t>(item)];
        while (left > 0 && placeBest(item, rule)) {
            --left;
        }
    }
}

void SheetFiller::ruin(int mostTaken)
{
    const auto taken = [this](int item) { ++left_[static_cast<std::size_t>(item)]; };
    const std::vector<int>& items = forest_.items();
    if (items.empty()) {
        return;
    }
    const int all = static_cast<int>(items.size());
    const int most = std::min(all, std::max(3, std::min(mostTaken, all / 3)));
    int rounds = 1 + dice_.below(most);
    const int kind = dice_.below(8);
    if (kind == 0) {
        forest_.clear(forest_.sheetOf(items[static_cast<std::size_t>(dice_.below(all))]), taken);
        rounds = dice_.below(3);
    }
    if (kind >= 4) {
        rounds = 1 + rounds / 4;
    }
    for (int round = 0; round < rounds && !items.empty(); ++round) {
        int node = items[static_cast<std::size_t>(dice_.below(static_cast<int>(items.size())))];
        if (kind >= 4) {
            for (int up = 1 + dice_.below(3); up > 0 && forest_.node(node).parent >= 0; --up) {
                const int parent = forest_.node(node).parent;
                if (forest_.node(parent).parent < 0) {
                    break;
                }
                node = parent;
            }
        }
        forest_.clear(node, taken);
    }
}

double SheetFiller::cost() const
{
    double together = 0.0;
    for (const int rest : forest_.rests()) {
        const TreeNode& node = forest_.node(rest);
        const double area = static_cast<double>(node.w) * static_cast<double>(node.h);
        together += area * area;
    }
    return areaLeft() - 0.2 * together / largestSheet_;
}

bool SheetFiller::pack(std::uint64_t places)
{
    const int sheets = forest_.sheetCount();
    if (sheets <= kMostTogether) {
        return walk(places, Keep::mostPlaced);
    }
    const std::uint64_t until = tried_ + places;
    if (walk(places / 10, Keep::leastCost)) {
        return true;
    }
    SheetForest best = forest_;
    std::vector<int> bestLeft = left_;
    while (leftArea_ > 0.0 && tried_ < until && !stop_.stop_requested()) {
        packSome(2 + dice_.below(kMostTogether - 1));
        const double area = areaLeft();
        if (area < leftArea_) {
            leftArea_ = area;
            best = forest_;
            bestLeft = left_;
        }
    }
    forest_ = std::move(best);
    left_ = std::move(bestLeft);
    return leftArea_ <= 0.0;
}

/// A few sheets and what is left over, by themselves: a turn over them takes a fraction of one over all.
void SheetFiller::packSome(int sheets)
{
    std::vector<int> some;
    std::vector<Bin> bins;
    while (static_cast<int>(some.size()) < sheets) {
        const int sheet = dice_.below(forest_.sheetCount());
        if (std::find(some.begin(), some.end(), sheet) == some.end()) {
            some.push_back(sheet);
            bins.push_back(sheets_[static_cast<std::size_t>(sheet)]);
        }
    }
    SheetForest forest(bins);
    for (std::size_t i = 0; i < some.size(); ++i) {
        forest.copySheet(forest_, some[i], static_cast<int>(i));
    }
    SheetFiller part(*this, bins, dice_.next());
    part.resume(forest, left_);
    const double before = part.cost();
    part.walk(kPlacesTogether, Keep::leastCost);
    tried_ += part.tried_ + turnWork();
    if (part.cost() > before) {
        return;
    }
    for (std::size_t i = 0; i < some.size(); ++i) {
        forest_.clear(some[i], [](int) {});
        forest_.copySheet(part.forest_, static_cast<int>(i), some[i]);
    }
    left_ = part.left_;
}

bool SheetFiller::walk(std::uint64_t places, Keep keep)
{
    const std::uint64_t from = tried_;
    const std::uint64_t until = tried_ + places;
    SheetForest current = forest_;
    std::vector<int> currentLeft = left_;
    double currentCost = cost();
    SheetForest best = forest_;
    std::vector<int> bestLeft = left_;
    double bestLeftArea = areaLeft();
    double bestCost = currentCost;
    while (bestLeftArea > 0.0 && tried_ < until && !stop_.stop_requested()) {
        forest_ = current;
        left_ = currentLeft;
        tried_ += turnWork();
        ruin(kMostTakenToPack);
        if (dice_.oneIn(6)) {
            tightenAll();
        }
        recreate(randomRule());
        const double now = cost();
        const double gone = static_cast<double>(tried_ - from) / static_cast<double>(places);
        const double allowed = 0.01 * largestSheet_ * std::max(0.0, 1.0 - gone) * dice_.share();
        if (now <= currentCost + allowed) {
            current = forest_;
            currentLeft = left_;
            currentCost = now;
            const double area = areaLeft();
            if (keep == Keep::leastCost ? now < bestCost || area <= 0.0 : area < bestLeftArea) {
                bestLeftArea = area;
                bestCost = now;
                best = forest_;
                bestLeft = left_;
            }
        }
    }
    forest_ = std::move(best);
    left_ = std::move(bestLeft);
    leftArea_ = areaLeft();
    return leftArea_ <= 0.0;
}

FillWorth SheetFiller::worthOf(const SheetForest& forest) const
{
    FillWorth worth;
    double largestFree = 0.0;
    double largestRest = 0.0;   // of a sheet that is paid, else of any
    int settings = 0;
    bool anyPaid = false;
    for (int s = 0; s < forest.sheetCount(); ++s) {
        if (forest.isEmpty(s)) {
            continue;
        }
        const int cuts = forest.cuts(s) + costs_.always;
        worth.price += sheets_[static_cast<std::size_t>(s)].price + costs_.price * std::max(0, cuts - costs_.free);
        worth.cuts += cuts;
        settings += forest.settings(s);
        anyPaid = anyPaid || sheets_[static_cast<std::size_t>(s)].price > 0;
    }
    for (const int rest : forest.rests()) {
        const int sheet = forest.sheetOf(rest);
        if (forest.isEmpty(sheet)) {
            continue;
        }
        const TreeNode& node = forest.node(rest);
        const double area = static_cast<double>(node.w) * static_cast<double>(node.h);
        if (sheets_[static_cast<std::size_t>(sheet)].price > 0) {
            largestRest = std::max(largestRest, area);
        }
        largestFree = std::max(largestFree, area);
    }
    if (!anyPaid) {
        largestRest = largestFree;
    }
    worth.settings = settings;
    worth.rest = largestRest / largestSheet_;
    if (anyFree_) {
        for (const int item : forest.items()) {
            if (sheets_[static_cast<std::size_t>(forest.sheetOf(item))].price > 0) {
                worth.paidArea += items_[static_cast<std::size_t>(forest.node(item).item)].area();
            }
        }
    }
    return worth;
}

/// Copying and judging a filling takes as long as trying some places.
std::uint64_t SheetFiller::turnWork() const
{
    return 10 + forest_.items().size();
}

void SheetFiller::tightenAll()
{
    tried_ += 6 * forest_.items().size();
    for (int s = 0; s < forest_.sheetCount(); ++s) {
        forest_.tighten(s, dice_.oneIn(2));
    }
}

/// One figure for the walk; the best is kept by the full comparison. A cut that is paid weighs like three, a whole sheet
/// that offcuts could have given like eight.
double SheetFiller::polishCost(const FillWorth& worth, double restShare) const
{
    const double paid = costs_.price > 0 ? 3.0 * static_cast<double>(worth.price) / static_cast<double>(costs_.price)
                                         : static_cast<double>(worth.price);
    return paid + worth.troubleAt(restShare) + 8.0 * worth.paidArea / largestSheet_;
}

void SheetFiller::polish(std::uint64_t places)
{
    // Large rests are deep valleys: first for the cuts, then for what is left.
    polishFor(places * 2 / 3, 0.05);
    polishFor(places / 3, 1.0);
    tightenBest();
}

void SheetFiller::polishFor(std::uint64_t places, double restShare)
{
    const std::uint64_t from = tried_;
    const std::uint64_t until = tried_ + places;
    SheetForest current = forest_;
    SheetForest best = forest_;
    FillWorth bestWorth = worthOf(best);
    double currentCost = polishCost(bestWorth, restShare);
    const auto judge = [&] {
        const FillWorth now = worthOf(forest_);
        const double gone = static_cast<double>(tried_ - from) / static_cast<double>(places);
        const double allowed = std::max(0.0, 1.0 - gone) * dice_.share();
        const double nowCost = polishCost(now, restShare);
        if (nowCost <= currentCost + allowed) {
            current = forest_;
            currentCost = nowCost;
        }
        if (now.betterThan(bestWorth)) {
            bestWorth = now;
            best = forest_;
        }
    };
    while (tried_ < until && !stop_.stop_requested()) {
        forest_ = current;
        tried_ += turnWork();
        ruin(kMostTakenToPolish);
        recreate(randomRule());
        bool all = true;
        for (int& left : left_) {
            all = all && left == 0;
            left = 0;
        }
        if (!all) {
            continue;
        }
        if (dice_.oneIn(4)) {
            tightenAll();
        }
        judge();
    }
    forest_ = std::move(best);
}

void SheetFiller::tightenBest()
{
    SheetForest best = forest_;
    FillWorth bestWorth = worthOf(best);
    for (int s = 0; s < best.sheetCount(); ++s) {
        for (const bool restAbove : {true, false}) {
            forest_ = best;
            forest_.tighten(s, restAbove);
            const FillWorth now = worthOf(forest_);
            if (now.betterThan(bestWorth)) {
                bestWorth = now;
                best = forest_;
            }
        }
    }
    forest_ = best;
}

}  // namespace yardcast::sheets
