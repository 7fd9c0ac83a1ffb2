// Figures to reach: the largest sample in under 2 ms, 500 parts in under 40 ms, and time that grows linearly.

#include <benchmark/benchmark.h>

#include "core/assess/assess.h"
#include "core/assess/assessment_json.h"
#include "core/plan/edits.h"
#include "core/plan/validation.h"
#include "tests/core/assess/plans_for_tests.h"

namespace yardcast {
namespace {

void sampleWithoutMemo(benchmark::State& state, const std::string& name)
{
    const Plan plan = test::samplePlan(name);
    for (auto _ : state) benchmark::DoNotOptimize(assess(plan, exampleBook()));
    state.counters["parts"] = static_cast<double>(plan.parts.size());
}
BENCHMARK_CAPTURE(sampleWithoutMemo, grill_bench, "grill-bench")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(sampleWithoutMemo, corner_kitchen, "corner-kitchen")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(sampleWithoutMemo, two_level_bar, "two-level-bar")->Unit(benchmark::kMillisecond);

/// One frame of dragging a cutout: one counter is new, the rest is remembered.
void sampleWithMemo(benchmark::State& state, const std::string& name)
{
    const Plan plan = test::samplePlan(name);
    std::string counterId;
    for (const PartPtr& part : plan.parts) {
        const auto* counter = std::get_if<Counter>(&part->body);
        if (counter && !counter->cutouts.empty()) counterId = part->id;
    }
    const std::string cutoutId = std::get<Counter>(findPart(plan, counterId)->body).cutouts.front().id;
    Assessor assessor(exampleBook());
    assessor.assess(plan);
    double by = 0.0;
    for (auto _ : state) {
        by = by < 20 ? by + 1 : 0.0;
        const Plan dragged =
            changeCutout(plan, counterId, cutoutId, [by](Cutout& cutout) { cutout.centre.x += by; });
        benchmark::DoNotOptimize(assessor.assess(dragged));
    }
}
BENCHMARK_CAPTURE(sampleWithMemo, two_level_bar, "two-level-bar")->Unit(benchmark::kMillisecond);

void withoutMemo(benchmark::State& state)
{
    const Plan plan = test::rowOfParts(static_cast<int>(state.range(0)));
    for (auto _ : state) benchmark::DoNotOptimize(assess(plan, exampleBook()));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(withoutMemo)
    ->Arg(50)->Arg(100)->Arg(200)->Arg(500)->Arg(1000)->Arg(2000)
    ->Unit(benchmark::kMillisecond)->Complexity(benchmark::oN);

void withMemoAfterOneChange(benchmark::State& state)
{
    const Plan plan = test::rowOfParts(static_cast<int>(state.range(0)));
    Assessor assessor(exampleBook());
    assessor.assess(plan);
    double by = 0.0;
    for (auto _ : state) {
        by = by < 20 ? by + 1 : 0.0;
        const Plan dragged = changeCutout(plan, "C1", "K1", [by](Cutout& cutout) { cutout.centre.x += by; });
        benchmark::DoNotOptimize(assessor.assess(dragged));
    }
    state.SetComplexityN(state.range(0));
}
BENCHMARK(withMemoAfterOneChange)
    ->Arg(50)->Arg(100)->Arg(200)->Arg(500)->Arg(1000)->Arg(2000)
    ->Unit(benchmark::kMillisecond)->Complexity(benchmark::oN);

void validation(benchmark::State& state)
{
    const Plan plan = test::rowOfParts(static_cast<int>(state.range(0)));
    for (auto _ : state) benchmark::DoNotOptimize(validate(plan));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(validation)->Arg(50)->Arg(500)->Arg(2000)->Unit(benchmark::kMillisecond)->Complexity();

void asJson(benchmark::State& state)
{
    const Plan plan = test::samplePlan("two-level-bar");
    const AssessmentPtr assessment = assess(plan, exampleBook());
    for (auto _ : state) benchmark::DoNotOptimize(assessmentJson(plan, *assessment, {}));
}
BENCHMARK(asJson)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace yardcast

BENCHMARK_MAIN();
