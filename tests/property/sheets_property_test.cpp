#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <vector>

#include "core/cutting/sheet_cutting.h"
#include "tests/core/cutting/sheet_replay.h"

namespace yardcast {
namespace {

class Lists {
public:
    explicit Lists(unsigned seed) : random_(seed) {}
    int below(int n) { return static_cast<int>(random_() % static_cast<unsigned>(n)); }
    bool oneIn(int n) { return below(n) == 0; }
    double side(int least, int most) { return least + below(most - least) + (oneIn(4) ? below(1000) / 1000.0 : 0.0); }

    SheetCutting any()
    {
        SheetCutting list;
        list.sawMm = below(50) / 10.0;
        list.trimMm = oneIn(3) ? below(150) / 10.0 : 0.0;
        list.leastStripMm = oneIn(3) ? 60 + below(100) : 0.0;
        list.cutPrice = oneIn(3) ? below(300) / 100.0 : 0.0;
        list.freeCuts = below(6);
        const int stocks = 1 + below(4);
        for (int s = 0; s < stocks; ++s) {
            SheetStock stock;
            stock.size = {side(800, 2600), side(600, 1300)};
            stock.price = oneIn(5) ? 0.0 : 5.0 + below(40);
            if (oneIn(2)) {
                stock.count = below(5);
            }
            list.stock.push_back(stock);
        }
        const int sorts = 1 + below(12);
        for (int p = 0; p < sorts; ++p) {
            list.pieces.push_back({"p", {side(20, 1100), side(20, 700)}, 1 + below(oneIn(4) ? 12 : 3), !oneIn(3)});
        }
        return list;
    }

private:
    std::mt19937 random_;
};

/// Sawn step by step from whole sheets exactly the pieces of the list come out, each a saw width from the next.
TEST(SheetsProperty, ReplayOfTheSawGivesExactlyThePieces)
{
    Lists lists(11);
    for (int run = 0; run < 250; ++run) {
        const SheetCutting list = lists.any();
        ASSERT_TRUE(sheetTroubles(list).empty());
        const SheetPlan plan = cutSheets(list, {60'000});
        ASSERT_EQ(replaySaw(list, plan), "") << "list " << run;
        for (const UnplacedPieces& of : plan.unplaced) {
            const bool uncounted = std::any_of(list.stock.begin(), list.stock.end(), [&](const SheetStock& stock) {
                const SheetPiece& piece = list.pieces[static_cast<std::size_t>(of.piece)];
                const double w = stock.size.width - 2 * list.trimMm;
                const double h = stock.size.depth - 2 * list.trimMm;
                return !stock.count && piece.size.width <= w && piece.size.depth <= h
                    && std::min(piece.size.width, piece.size.depth) >= list.leastStripMm;
            });
            EXPECT_FALSE(uncounted) << "list " << run << ": a piece was left though sheets that hold it never run out";
        }
    }
}

/// All that straight cuts can do with a handful of pieces, by trying everything.
class Everything {
public:
    explicit Everything(const SheetCutting& list) : list_(list)
    {
        for (const SheetPiece& piece : list.pieces) {
            for (int i = 0; i < piece.count; ++i) {
                pieces_.push_back(piece);
            }
        }
        boxes_.resize(std::size_t{1} << pieces_.size());
        for (unsigned set = 1; set < boxes_.size(); ++set) {
            fill(set);
        }
    }

    double leastPrice() const
    {
        std::vector<double> least(boxes_.size(), std::numeric_limits<double>::infinity());
        least[0] = 0.0;
        for (unsigned set = 1; set < boxes_.size(); ++set) {
            for (unsigned part = set; part > 0; part = (part - 1) & set) {
                for (const SheetStock& stock : list_.stock) {
                    if (fits(part, stock.size)) {
                        least[set] = std::min(least[set], stock.price + least[set ^ part]);
                    }
                }
            }
        }
        return least.back();
    }

private:
    void fill(unsigned set)
    {
        std::vector<Size>& boxes = boxes_[set];
        if ((set & (set - 1)) == 0) {
            std::size_t which = 0;
            while (!(set >> which & 1U)) {
                ++which;
            }
            const SheetPiece& piece = pieces_[which];
            boxes.push_back(piece.size);
            if (piece.turn) {
                boxes.push_back({piece.size.depth, piece.size.width});
            }
            return;
        }
        const double saw = list_.sawMm;
        for (unsigned part = (set - 1) & set; part > 0; part = (part - 1) & set) {
            for (const Size& a : boxes_[part]) {
                for (const Size& b : boxes_[set ^ part]) {
                    boxes.push_back({a.width + saw + b.width, std::max(a.depth, b.depth)});
                    boxes.push_back({std::max(a.width, b.width), a.depth + saw + b.depth});
                }
            }
        }
        std::sort(boxes.begin(), boxes.end(), [](const Size& a, const Size& b) {
            return a.width != b.width ? a.width < b.width : a.depth < b.depth;
        });
        std::vector<Size> least;
        for (const Size& box : boxes) {
            if (least.empty() || box.depth < least.back().depth) {
                least.push_back(box);
            }
        }
        boxes = least;
    }
    bool fits(unsigned set, Size sheet) const
    {
        const auto& boxes = boxes_[set];
        return std::any_of(boxes.begin(), boxes.end(), [&](const Size& box) {
            return box.width <= sheet.width && box.depth <= sheet.depth;
        });
    }

    const SheetCutting& list_;
    std::vector<SheetPiece> pieces_;
    std::vector<std::vector<Size>> boxes_;
};

TEST(SheetsProperty, SmallListsCostAsLittleAsTryingEverythingFinds)
{
    Lists lists(23);
    int proven = 0;
    for (int run = 0; run < 150; ++run) {
        SheetCutting list;
        list.sawMm = lists.below(5);
        list.stock = {{{100, 60}, 10.0, {}}};
        if (lists.oneIn(2)) {
            list.stock.push_back({{60.0 + lists.below(60), 40.0 + lists.below(40)}, 3.0 + lists.below(9), {}});
        }
        const int pieces = 2 + lists.below(5);
        for (int p = 0; p < pieces; ++p) {
            list.pieces.push_back({"p", {10.0 + lists.below(60), 10.0 + lists.below(45)}, 1, !lists.oneIn(3)});
        }
        const SheetPlan plan = cutSheets(list, {60'000});
        ASSERT_EQ(replaySaw(list, plan), "") << "list " << run;
        ASSERT_TRUE(plan.unplaced.empty());
        const double least = Everything(list).leastPrice();
        EXPECT_DOUBLE_EQ(plan.price, least) << "list " << run;
        EXPECT_LE(plan.bound, least) << "list " << run;
        proven += plan.proven ? 1 : 0;
    }
    EXPECT_GT(proven, 75);
}

/// Sheets sawn at random into pieces until nothing or little is left over: what they cost, no bound may pass.
class SawnUp {
public:
    SawnUp(Lists& lists, SheetCutting& list, bool wasteful) : lists_(lists), list_(list), wasteful_(wasteful) {}
    void saw(Size part, int depth)
    {
        const bool alongX = lists_.oneIn(2);
        const double whole = alongX ? part.width : part.depth;
        const int least = 30;
        if (depth == 0 || whole < 2 * least + 10) {
            if (!wasteful_ || !lists_.oneIn(8)) {
                const bool turned = lists_.oneIn(2);
                list_.pieces.push_back({"p", turned ? Size{part.depth, part.width} : part, 1, true});
            }
            return;
        }
        const double low = lists_.oneIn(3) ? std::floor((whole - list_.sawMm) / 2.0)
                                           : least + lists_.below(static_cast<int>(whole) - 2 * least - 9);
        const double high = whole - low - list_.sawMm;
        saw(alongX ? Size{low, part.depth} : Size{part.width, low}, depth - 1);
        saw(alongX ? Size{high, part.depth} : Size{part.width, high}, depth - 1);
    }

private:
    Lists& lists_;
    SheetCutting& list_;
    bool wasteful_;
};

TEST(SheetsProperty, NoBoundIsAboveAPlanThatIsKnown)
{
    Lists lists(31);
    int met = 0;
    for (int run = 0; run < 200; ++run) {
        SheetCutting list;
        list.sawMm = lists.below(5);
        const int sorts = 1 + lists.below(3);
        double known = 0.0;
        int sheets = 0;
        SawnUp sawnUp(lists, list, lists.oneIn(2));
        for (int s = 0; s < sorts; ++s) {
            SheetStock stock;
            stock.size = {lists.side(400, 2600), lists.side(300, 1300)};
            const int used = 1 + lists.below(3);
            stock.price = lists.oneIn(4) ? 0.0 : 5.0 + lists.below(40);
            if (stock.price == 0.0 || lists.oneIn(3)) {
                stock.count = used;
            }
            for (int i = 0; i < used; ++i) {
                sawnUp.saw(stock.size, 1 + lists.below(4));
            }
            known += used * stock.price;
            sheets += used;
            list.stock.push_back(stock);
        }
        if (list.pieces.empty()) {
            continue;
        }
        const SheetPlan plan = cutSheets(list, {20'000});
        ASSERT_EQ(replaySaw(list, plan), "") << "list " << run;
        if (plan.unplaced.empty()) {
            EXPECT_LE(plan.bound, known) << "list " << run;
            EXPECT_LE(plan.boundCount, sheets) << "list " << run;
            met += plan.price <= known ? 1 : 0;
        }
    }
    EXPECT_GT(met, 50);
}

}  // namespace
}  // namespace yardcast
