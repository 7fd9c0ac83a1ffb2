// Figures to reach: the earliest hours of all castings of the large sample, four ways of handling, in under 2 s; under
// 100 ms after a change to one casting. On the meshes of the screen (working, 30 mm), after strength, which has chosen
// the hands; `alone` is without that.

#include <benchmark/benchmark.h>

#include "core/assess/assess.h"
#include "core/assess/readiness_assessor.h"
#include "core/assess/strength_assessor.h"
#include "core/plan/edits.h"
#include "tests/core/assess/plans_for_tests.h"

namespace yardcast {
namespace {

AssessmentPtr solved(const Plan& plan, StrengthAssessor& strength, CaseChoice choice = {})
{
    const AssessmentPtr base = assess(plan, exampleBook());
    return withStrength(plan, base, *strength.assess(plan, *base, Refinement::working, choice));
}

void all(benchmark::State& state)
{
    const Plan plan = test::samplePlan("two-level-bar");
    StrengthAssessor strength;
    const AssessmentPtr assessment = solved(plan, strength);
    for (auto _ : state) benchmark::DoNotOptimize(ReadinessAssessor().assess(plan, *assessment));
    state.counters["castings"] = static_cast<double>(assessment->castings.size());
}

/// Without strength: hands are looked for as well.
void alone(benchmark::State& state)
{
    const Plan plan = test::samplePlan("two-level-bar");
    const AssessmentPtr assessment = assess(plan, exampleBook());
    for (auto _ : state) benchmark::DoNotOptimize(ReadinessAssessor().assess(plan, *assessment));
}

/// Each counter in turn is made a little thicker: the rest is remembered.
void afterAChange(benchmark::State& state, const std::string& counter)
{
    Plan plan = test::samplePlan("two-level-bar");
    StrengthAssessor strength;
    ReadinessAssessor readiness;
    readiness.assess(plan, *solved(plan, strength));
    for (auto _ : state) {
        state.PauseTiming();
        plan = changeCounter(plan, counter, [](Counter& c) { c.thicknessMm += 0.01; });
        const AssessmentPtr assessment = solved(plan, strength);
        state.ResumeTiming();
        benchmark::DoNotOptimize(readiness.assess(plan, *assessment));
    }
}

/// Another day's weather: no casting is solved again.
void afterWeather(benchmark::State& state)
{
    Plan plan = test::samplePlan("two-level-bar");
    StrengthAssessor strength;
    const AssessmentPtr assessment = solved(plan, strength);
    ReadinessAssessor readiness;
    readiness.assess(plan, *assessment);
    for (auto _ : state) {
        plan.conditions.highC = plan.conditions.highC.value_or(20.0) + 0.01;
        benchmark::DoNotOptimize(readiness.assess(plan, *assessment));
    }
}

BENCHMARK(all)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(alone)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(afterAChange, C3, "C3")->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(afterAChange, C5a, "C5a")->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(afterWeather)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
}  // namespace yardcast

BENCHMARK_MAIN();
