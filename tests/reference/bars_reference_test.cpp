#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <sstream>

#include "core/cutting/bar_cutting.h"
#include "tests/core/cutting/bar_checks.h"
#include "tests/reference/linear_solver.h"

using namespace yardcast;

namespace {

/// Lengths, saw and prices are whole here, so that the program below has no rounding of its own.
BarCutting wholeList(unsigned seed, int kinds, int stocks, int mostOfAKind)
{
    std::mt19937 random(seed);
    const auto from = [&](int low, int high) {
        return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
    };
    BarCutting out;
    out.sawMm = from(0, 4);
    for (int s = 0; s < stocks; ++s) {
        const int length = 2400 + 600 * s;
        out.stock.push_back({static_cast<double>(length), std::round(length * from(20, 28) / 1000.0), {}});
    }
    if (seed % 3 == 0) out.stock.push_back({static_cast<double>(from(700, 1500)), 0.0, from(1, 2)});
    for (int k = 0; k < kinds; ++k) {
        out.pieces.push_back({"p" + std::to_string(k), static_cast<double>(from(390, 1900)), from(1, mostOfAKind)});
    }
    return out;
}

/// The integer program over every way of cutting every stock, written out.
class WayProgram {
public:
    explicit WayProgram(const BarCutting& list) : list_(list), rows_(list.pieces.size()), limits_(list.stock.size())
    {
        for (std::size_t s = 0; s < list.stock.size(); ++s) {
            std::vector<int> copies(list.pieces.size(), 0);
            extend(s, 0, list.stock[s].lengthMm + list.sawMm, copies);
        }
    }
    std::string text() const
    {
        std::ostringstream out;
        out << "Minimize\nprice:" << price_.str() << "\nSubject To\n";
        for (std::size_t p = 0; p < rows_.size(); ++p)
            out << 'd' << p << ':' << rows_[p] << " >= " << list_.pieces[p].count << '\n';
        for (std::size_t s = 0; s < limits_.size(); ++s) {
            if (list_.stock[s].count && !limits_[s].empty())
                out << 's' << s << ':' << limits_[s] << " <= " << *list_.stock[s].count << '\n';
        }
        out << "General\n" << names_.str() << "\nEnd\n";
        return out.str();
    }
    int ways() const { return ways_; }

private:
    void extend(std::size_t stock, std::size_t piece, double room, std::vector<int>& copies)
    {
        if (piece == copies.size()) {
            add(stock, copies);
            return;
        }
        const double width = list_.pieces[piece].lengthMm + list_.sawMm;
        int most = 0;
        while (most < list_.pieces[piece].count && (most + 1) * width <= room) ++most;
        for (int n = most; n >= 0; --n) {
            copies[piece] = n;
            extend(stock, piece + 1, room - n * width, copies);
        }
        copies[piece] = 0;
    }
    void add(std::size_t stock, const std::vector<int>& copies)
    {
        const std::string name = "x" + std::to_string(ways_);
        bool any = false;
        for (std::size_t p = 0; p < copies.size(); ++p) {
            if (copies[p] == 0) continue;
            any = true;
            rows_[p] += " + " + std::to_string(copies[p]) + ' ' + name + broken(ways_);
        }
        if (!any) return;
        price_ << " + " << list_.stock[stock].price << ' ' << name << broken(ways_);
        limits_[stock] += " + " + name + broken(ways_);
        names_ << name << '\n';
        ++ways_;
    }
    /// Lines of the format may not be long.
    static const char* broken(int at) { return at % 20 == 19 ? "\n" : ""; }

    const BarCutting& list_;
    std::vector<std::string> rows_;
    std::vector<std::string> limits_;
    std::ostringstream price_;
    std::ostringstream names_;
    int ways_ = 0;
};

void compare(unsigned firstSeed, unsigned lastSeed, int kinds, int stocks, int mostOfAKind)
{
    int compared = 0;
    for (unsigned seed = firstSeed; seed <= lastSeed; ++seed) {
        const BarCutting list = wholeList(seed, kinds, stocks, mostOfAKind);
        const BarPlan plan = cutBars(list);
        ASSERT_EQ(whatIsWrong(list, plan), "") << "seed " << seed;
        const auto least = reference::leastOf(WayProgram(list).text());
        if (!least) continue;
        ++compared;
        // All prices are whole: half a unit is far from both sides.
        if (plan.proven) {
            EXPECT_NEAR(plan.price, *least, 0.5) << "seed " << seed;
        }
        EXPECT_LE(plan.bound, *least + 1e-6) << "seed " << seed;
        EXPECT_GE(plan.price, *least - 0.5) << "seed " << seed;
        EXPECT_TRUE(plan.proven) << "seed " << seed;
    }
    EXPECT_GE(compared, static_cast<int>(lastSeed - firstSeed) / 2) << "too few were solved by the other in time";
}

}  // namespace

TEST(BarsAgainstAnIntegerSolver, OneStockFewKinds)
{
    if (!reference::integerSolverIsThere()) GTEST_SKIP() << reference::kNoIntegerSolver;
    compare(1, 20, 6, 1, 9);
}

TEST(BarsAgainstAnIntegerSolver, SeveralStocks)
{
    if (!reference::integerSolverIsThere()) GTEST_SKIP() << reference::kNoIntegerSolver;
    compare(101, 120, 6, 3, 6);
}

TEST(BarsAgainstAnIntegerSolver, TwelveKinds)
{
    if (!reference::integerSolverIsThere()) GTEST_SKIP() << reference::kNoIntegerSolver;
    compare(201, 206, 12, 1, 8);
}
