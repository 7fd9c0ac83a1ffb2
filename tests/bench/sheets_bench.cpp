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

struct Board {
    Size size;
    int count = 1;
};

/// As the store saws them: five cuts of a sheet free, nothing below 80 mm.
SheetCutting boardsOf(const std::vector<Board>& boards)
{
    SheetCutting list;
    list.sawMm = 4.0;
    list.stock = {{{2500, 1250}, 3900, {}}};
    list.cutPrice = 80;
    list.freeCuts = 5;
    list.leastStripMm = 80.0;
    for (const Board& board : boards) {
        list.pieces.push_back({"", board.size, board.count});
    }
    return list;
}

/// The mould boards of the sample with a corner, and an offcut at hand.
void cornerBoards(benchmark::State& state)
{
    SheetCutting list = boardsOf({
        {{1366, 766}, 1}, {{1016, 916}, 1}, {{1116, 766}, 1}, {{916, 716}, 8}, {{816, 766}, 1}, {{766, 766}, 1},
        {{460, 410}, 1}, {{458.113, 408.113}, 1}, {{456.227, 406.227}, 1}, {{1268, 60}, 2}, {{918, 70}, 2},
        {{1018, 60}, 2}, {{818, 70}, 2}, {{818, 60}, 16}, {{718, 60}, 2}, {{668, 60}, 10}, {{618, 60}, 16},
        {{34.926, 34.926}, 1}, {{33.04, 33.04}, 1}, {{31.153, 31.153}, 1}});
    list.stock.push_back({{900, 600}, 0, 1});
    SheetPlan plan;
    for (auto _ : state) {
        plan = cutSheets(list);
    }
    report(state, plan);
    state.counters["proven"] = plan.proven ? 1 : 0;
}
BENCHMARK(cornerBoards)->Unit(benchmark::kMillisecond);

/// The mould boards of the large sample.
void twoLevelBoards(benchmark::State& state)
{
    const SheetCutting list = boardsOf({
        {{1416, 796}, 1}, {{1266, 796}, 2}, {{1766, 566}, 2}, {{1116, 796}, 1}, {{966, 916}, 1}, {{946, 736}, 8},
        {{780, 520}, 1}, {{778.113, 518.113}, 1}, {{776.227, 516.227}, 1}, {{1156, 316}, 4}, {{1318, 250}, 2},
        {{1116, 272}, 1}, {{1416, 166}, 1}, {{718, 280}, 2}, {{379.902, 379.902}, 1}, {{816, 176}, 1},
        {{378.016, 378.016}, 1}, {{376.129, 376.129}, 1}, {{1668, 60}, 4}, {{1318, 60}, 2}, {{1168, 60}, 4},
        {{1058, 60}, 8}, {{1018, 60}, 2}, {{868, 70}, 2}, {{818, 70}, 2}, {{848, 60}, 16}, {{1018, 44}, 2},
        {{698, 60}, 8}, {{638, 60}, 16}, {{468, 60}, 4}, {{280, 78}, 2}, {{250, 68}, 2}, {{218, 60}, 8},
        {{174, 44}, 2}, {{59.903, 59.903}, 1}, {{58.017, 58.017}, 1}, {{56.13, 56.13}, 1}, {{60, 24}, 1},
        {{58.113, 22.113}, 1}, {{34.926, 34.926}, 1}, {{56.227, 20.227}, 1}, {{33.04, 33.04}, 1},
        {{31.153, 31.153}, 1}});
    SheetPlan plan;
    for (auto _ : state) {
        plan = cutSheets(list);
    }
    report(state, plan);
    state.counters["proven"] = plan.proven ? 1 : 0;
}
BENCHMARK(twoLevelBoards)->Unit(benchmark::kMillisecond);

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
