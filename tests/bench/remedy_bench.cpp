#include <benchmark/benchmark.h>

#include "core/assess/assess.h"
#include "core/assess/strength_assessor.h"
#include "core/remedy/remedies.h"
#include "tests/core/assess/plans_for_tests.h"

// What trying edits costs: the gravest finding of the largest sample by itself (target: under 2 s on two cores), and all
// of them, where edits that several findings share are solved once.
namespace {

using namespace yardcast;

struct Known {
    Plan plan = test::samplePlan("two-level-bar");
    AssessmentPtr assessed;

    Known()
    {
        const AssessmentPtr base = assess(plan, exampleBook());
        assessed = withStrength(plan, base, *StrengthAssessor().assess(plan, *base, Refinement::working));
    }
};

const Known& known()
{
    static const Known one;
    return one;
}

void oneFinding(benchmark::State& state)
{
    const std::vector<Finding> findings =
        RemedyFinder(known().plan, exampleBook(), known().assessed, Refinement::working).findings();
    const auto index = static_cast<std::size_t>(state.range(0));
    if (index >= findings.size()) {
        state.SkipWithError("the sample has fewer findings");
        return;
    }
    for (auto _ : state) {
        RemedyFinder finder(known().plan, exampleBook(), known().assessed, Refinement::working);
        benchmark::DoNotOptimize(finder.remedies(findings[index]));
    }
    state.SetLabel(findings[index].code + " " + findings[index].subjects.front());
}

void allFindings(benchmark::State& state)
{
    std::size_t offered = 0;
    for (auto _ : state) {
        RemedyFinder finder(known().plan, exampleBook(), known().assessed, Refinement::working);
        offered = 0;
        for (const Finding& finding : finder.findings()) offered += finder.remedies(finding).size();
    }
    state.counters["findings"] = static_cast<double>(
        RemedyFinder(known().plan, exampleBook(), known().assessed, Refinement::working).findings().size());
    state.counters["offered"] = static_cast<double>(offered);
}

}  // namespace

BENCHMARK(oneFinding)->Arg(0)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(allFindings)->Unit(benchmark::kMillisecond)->UseRealTime();

BENCHMARK_MAIN();
