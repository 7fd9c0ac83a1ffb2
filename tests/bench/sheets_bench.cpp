#include <benchmark/benchmark.h>

#include <random>
#include <string>

#include "core/cutting/sheet_cutting.h"
#include "core/cutting/sheet_knapsack.h"

namespace yardcast {
namespace {

/// The mould boards of a kitchen with two slabs and a sink, as a mould list gives them; of our own invention.
SheetCutting kitchen()
{
    SheetCutting list;
    list.sawMm = 4.0;
    list.stock = {{{2500, 1250}, 39.0, {}}};
    list.pieces = {{"base", {1840, 660}, 1},  {"base", {1240, 660}, 1}, {"side", {1840, 80}, 4}, {"end", {624, 80}, 6},
                   {"former", {560, 400}, 2}, {"edge", {560, 60}, 4},   {"edge", {400, 60}, 4}};
    return list;
}

void report(benchmark::State& state, const SheetPlan& plan)
{
    state.counters["sheets"] = plan.count;
    state.counters["bound"] = plan.boundCount;
    state.counters["cuts"] = plan.cuts;
}

void kitchenBoards(benchmark::State& state)
{
    const SheetCutting list = kitchen();
    SheetPlan plan;
    for (auto _ : state) {
        plan = cutSheets(list);
    }
    report(state, plan);
}
BENCHMARK(kitchenBoards)->Unit(benchmark::kMillisecond);

void kitchenBoardsOfThreeSizes(benchmark::State& state)
{
    SheetCutting list = kitchen();
    list.stock.push_back({{1250, 1250}, 22.0, {}});
    list.stock.push_back({{900, 700}, 0.0, 1});
    list.leastStripMm = 100.0;
    SheetPlan plan;
    for (auto _ : state) {
        plan = cutSheets(list);
    }
    report(state, plan);
}
BENCHMARK(kitchenBoardsOfThreeSizes)->Unit(benchmark::kMillisecond);

void randomPieces(benchmark::State& state)
{
    std::mt19937 random(5);
    SheetCutting list;
    list.stock = {{{2500, 1250}, 39.0, {}}};
    for (int i = 0; i < state.range(0); ++i) {
        list.pieces.push_back({"", {80.0 + random() % 900, 60.0 + random() % 600}, 1});
    }
    SheetPlan plan;
    for (auto _ : state) {
        plan = cutSheets(list);
    }
    report(state, plan);
}
BENCHMARK(randomPieces)->Arg(20)->Arg(80)->Arg(150)->Unit(benchmark::kMillisecond);

/// Christofides and Whitlock 1977, example 2 (OR-Library cgcut2), optimum 2892.
void christofidesWhitlock2(benchmark::State& state)
{
    const std::vector<ValuedPiece> pieces{{{21, 22}, 582, 1}, {{31, 13}, 403, 1}, {{9, 35}, 315, 3},  {{9, 24}, 216, 3},
                                          {{30, 7}, 210, 2},  {{11, 13}, 143, 3}, {{10, 14}, 140, 2}, {{14, 8}, 110, 3},
                                          {{12, 8}, 94, 3},   {{13, 7}, 90, 3}};
    for (auto _ : state) {
        state.counters["value"] = guillotineKnapsack({40, 70}, pieces, false, 0.0).value;
    }
}
BENCHMARK(christofidesWhitlock2)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace yardcast

BENCHMARK_MAIN();
