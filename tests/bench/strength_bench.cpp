// What solving a slab takes: 2000 x 600 x 30 with a rim, a sink, a tap hole and three walls that press on one side.
// Wanted: own weight under 10 ms while dragging (50 mm), 25 ms at rest (30 mm), 90 ms for paper (20 mm), from the
// plan's input to stresses and sections; the worst of 60 spots for a person under 25 ms more.

#include <benchmark/benchmark.h>

#include "core/structure/in_use.h"
#include "tests/core/structure/slabs.h"

namespace yardcast {
namespace {

Refinement refinementOf(const benchmark::State& state) { return static_cast<Refinement>(state.range(0)); }

void inputs(benchmark::State& state)
{
    const tests::PlanMaker plan = tests::speedSlab();
    const std::vector<CastingPtr> castings = plan.castings();
    for (auto _ : state) benchmark::DoNotOptimize(strengthInputs(plan.plan, castings));
}

void body(benchmark::State& state)
{
    const StrengthInput input = tests::speedSlab().input("C1");
    std::size_t nodes = 0;
    for (auto _ : state) nodes = makeBody(input, refinementOf(state))->mesh().nodes.size();
    state.counters["nodes"] = static_cast<double>(nodes);
}

/// All of the case own weight.
void ownWeight(benchmark::State& state)
{
    const StrengthInput input = tests::speedSlab().input("C1");
    for (auto _ : state) {
        const auto body = makeBody(input, refinementOf(state));
        const OnRests rests(*body);
        const ShellSolution solution = rests.system().solve(rests.deadLoad(false));
        std::vector<NamedCut> cuts = stripCuts(*body);
        for (NamedCut& cut : restCuts(*body)) cuts.push_back(std::move(cut));
        CaseResult result = caseResult(*body, rests.system(), solution, {}, cuts);
        result.held = rests.held(solution);
        benchmark::DoNotOptimize(result);
    }
}

/// Both cases in use, the person's sweep included: less `ownWeight`, it is what the worst spot costs.
void inUse(benchmark::State& state)
{
    const StrengthInput input = tests::speedSlab().input("C1");
    for (auto _ : state) benchmark::DoNotOptimize(solveStrength(input, refinementOf(state), {true, false}));
    state.counters["spots"] = static_cast<double>(personSpots(input).size());
}

void sweep(benchmark::State& state)
{
    const StrengthInput input = tests::speedSlab().input("C1");
    for (auto _ : state) benchmark::DoNotOptimize(worstPersonSpots(input, 1000.0, 5));
}

/// All that is done to it between mould and place: what a search for the earliest hour repeats.
void handling(benchmark::State& state)
{
    const StrengthInput input = tests::speedSlab().input("C1");
    for (auto _ : state) benchmark::DoNotOptimize(solveStrength(input, refinementOf(state), {false, true}));
}

BENCHMARK(inputs)->Unit(benchmark::kMillisecond);
BENCHMARK(body)->DenseRange(0, 2)->Unit(benchmark::kMillisecond);
BENCHMARK(ownWeight)->DenseRange(0, 2)->Unit(benchmark::kMillisecond);
BENCHMARK(sweep)->Unit(benchmark::kMillisecond);
BENCHMARK(inUse)->DenseRange(0, 2)->Unit(benchmark::kMillisecond);
BENCHMARK(handling)->DenseRange(0, 2)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace yardcast

BENCHMARK_MAIN();
