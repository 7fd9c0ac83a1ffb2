#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/cutting/bar_cutting.h"
#include "tests/core/cutting/bar_checks.h"

using namespace yardcast;

namespace {

/// A list as they come: few or many lengths, long or short pieces, saw and trim, offcuts, names that repeat lengths.
BarCutting randomList(unsigned seed)
{
    std::mt19937 random(seed);
    const auto upTo = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    BarCutting out;
    out.sawMm = upTo(3) == 0 ? 0.0 : 0.1 * upTo(50);
    out.trimMm = upTo(3) == 0 ? 5.0 : 0.0;
    const int stocks = 1 + upTo(4);
    for (int s = 0; s < stocks; ++s) {
        const double length = 1000.0 + 500.0 * upTo(8);
        out.stock.push_back({length, std::round(length * (20 + upTo(10)) / 100.0) / 100.0, {}});
    }
    for (int offcuts = upTo(4); offcuts > 0; --offcuts) out.stock.push_back({300.0 + upTo(1500), 0.0, 1 + upTo(3)});
    const int pieces = 1 + upTo(14);
    const int longest = 200 + upTo(2500);
    for (int p = 0; p < pieces; ++p) {
        const double length = upTo(4) == 0 && p > 0 ? out.pieces[0].lengthMm : 20.0 + 0.1 * upTo(longest * 10);
        out.pieces.push_back({std::to_string(p), length, 1 + upTo(9)});
    }
    return out;
}

}  // namespace

TEST(BarsProperty, EveryPieceOnceSawWidthRespectedBoundBelowPrice)
{
    for (unsigned seed = 1; seed <= 300; ++seed) {
        const BarCutting list = randomList(seed);
        ASSERT_TRUE(barTroubles(list).empty());
        const BarPlan plan = cutBars(list);
        ASSERT_EQ(whatIsWrong(list, plan), "") << "seed " << seed;
    }
}

TEST(BarsProperty, TheSameListGivesTheSamePlan)
{
    for (unsigned seed = 1; seed <= 20; ++seed) {
        const BarCutting list = randomList(seed);
        ASSERT_EQ(cutBars(list), cutBars(list)) << "seed " << seed;
    }
}

TEST(BarsProperty, MorePiecesNeverCostLessWhereProven)
{
    for (unsigned seed = 1; seed <= 60; ++seed) {
        BarCutting list = randomList(seed);
        const BarPlan before = cutBars(list);
        ++list.pieces[0].count;
        const BarPlan after = cutBars(list);
        if (!before.proven || !after.unplaced.empty()) continue;
        ASSERT_GE(after.price, before.price - 1e-9) << "seed " << seed;
    }
}
