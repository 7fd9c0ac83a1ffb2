#include <benchmark/benchmark.h>

#include <cmath>
#include <random>

#include "core/cutting/bar_cutting.h"

using namespace yardcast;

namespace {

/// Invented lists: lengths from a twentieth to six tenths of 3 m, saw 3 mm.
BarCutting list(unsigned seed, int kinds, int pieces, int stocks)
{
    std::mt19937 random(seed);
    const auto upTo = [&](unsigned n) { return static_cast<double>(random() % n); };
    BarCutting out;
    out.sawMm = 3.0;
    for (int s = 0; s < stocks; ++s) {
        const double length = 3000.0 + 1000.0 * s;
        out.stock.push_back({length, std::round(length * (0.22 + 0.005 * upTo(11)) / 1.0) / 100.0, {}});
    }
    for (int k = 0; k < kinds; ++k)
        out.pieces.push_back({"", std::round(150.0 + 0.165 * upTo(10'000)), pieces / kinds});
    if (pieces % kinds > 0) out.pieces.back().count += pieces % kinds;
    return out;
}

/// Counters: lists proven, and the widest gap left open in percent of the price.
void cutMany(benchmark::State& state, int kinds, int pieces, int stocks)
{
    unsigned seed = 0;
    double proven = 0.0;
    double gap = 0.0;
    for (auto _ : state) {
        const BarPlan plan = cutBars(list(++seed % 50, kinds, pieces, stocks));
        proven += plan.proven ? 1.0 : 0.0;
        if (!plan.proven) gap = std::max(gap, (plan.price - plan.bound) / plan.price * 100.0);
    }
    state.counters["proven_share"] = proven / static_cast<double>(state.iterations());
    state.counters["open_gap_percent"] = gap;
}

}  // namespace

BENCHMARK_CAPTURE(cutMany, SixtyOfTwelveLengths, 12, 60, 1)->Unit(benchmark::kMillisecond)->Iterations(50);
BENCHMARK_CAPTURE(cutMany, SixtyOfTwelveFromTwoStocks, 12, 60, 2)->Unit(benchmark::kMillisecond)->Iterations(50);
BENCHMARK_CAPTURE(cutMany, SixtyOfTwelveFromThreeStocks, 12, 60, 3)->Unit(benchmark::kMillisecond)->Iterations(50);
BENCHMARK_CAPTURE(cutMany, ThreeHundredOfFortyLengths, 40, 300, 1)->Unit(benchmark::kMillisecond)->Iterations(10);
BENCHMARK_CAPTURE(cutMany, ThreeHundredOfFortyFromThreeStocks, 40, 300, 3)
    ->Unit(benchmark::kMillisecond)
    ->Iterations(10);

BENCHMARK_MAIN();
