// Figure to reach: the moulds of the large sample in under 5 ms, without a memo and without cuts.

#include <benchmark/benchmark.h>

#include "core/castings/casting.h"
#include "core/mould/mould.h"
#include "tests/core/assess/plans_for_tests.h"

namespace yardcast {
namespace {

std::vector<CastingPtr> castingsOfPlan(const Plan& plan)
{
    std::vector<CastingPtr> all;
    for (const PartPtr& part : plan.parts) {
        for (const CastingPtr& casting : castingsOf(*part)) all.push_back(casting);
    }
    return all;
}

void mouldsOfSample(benchmark::State& state, const std::string& name)
{
    const Plan plan = test::samplePlan(name);
    const std::vector<CastingPtr> castings = castingsOfPlan(plan);
    for (auto _ : state) {
        std::vector<Finding> findings;
        benchmark::DoNotOptimize(mouldsOf(plan, castings, findings));
    }
    state.counters["moulds"] = static_cast<double>(castings.size());
}
BENCHMARK_CAPTURE(mouldsOfSample, grill_bench, "grill-bench")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(mouldsOfSample, corner_kitchen, "corner-kitchen")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(mouldsOfSample, two_level_bar, "two-level-bar")->Unit(benchmark::kMillisecond);

/// One frame of a drag: every mould is remembered but for its neighbours' gaps and twins.
void mouldsKnown(benchmark::State& state, const std::string& name)
{
    const Plan plan = test::samplePlan(name);
    const std::vector<CastingPtr> castings = castingsOfPlan(plan);
    std::shared_ptr<MouldMemo> memo;
    for (auto _ : state) {
        std::vector<Finding> findings;
        benchmark::DoNotOptimize(mouldsOf(plan, castings, findings, &memo));
    }
}
BENCHMARK_CAPTURE(mouldsKnown, two_level_bar, "two-level-bar")->Unit(benchmark::kMillisecond);

void mouldsOfARow(benchmark::State& state)
{
    const Plan plan = test::rowOfParts(static_cast<int>(state.range(0)));
    const std::vector<CastingPtr> castings = castingsOfPlan(plan);
    for (auto _ : state) {
        std::vector<Finding> findings;
        benchmark::DoNotOptimize(mouldsOf(plan, castings, findings));
    }
}
BENCHMARK(mouldsOfARow)->Arg(100)->Arg(500)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace yardcast

BENCHMARK_MAIN();
