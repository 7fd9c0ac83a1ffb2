// Figures to reach for the slab of the trials (2000 x 600, hole 560 x 400 with r = 20, tap hole d 35, a rim of 60, three
// lines of support), graded to 8 mm at the corners of the hole: about 2 to 4 ms at 30 mm.

#include <benchmark/benchmark.h>

#include "core/fem/mesh.h"

namespace yardcast {
namespace {

MeshRequest trialSlab(double sizeMm)
{
    MeshRequest request;
    request.domain = {{{{0, 0}, {2000, 0}, {2000, 600}, {0, 600}}, {}}};
    request.domain = subtract(request.domain, regionOf(rectangleRing({900, 300}, {560, 400}, 0, 20)));
    request.domain = subtract(request.domain, regionOf(circleRing({1320, 480}, 35)));
    request.lines = {{{60, 60}, {1940, 60}, {1940, 540}, {60, 540}, {60, 60}},
                     {{300, 0}, {300, 600}}, {{1200, 0}, {1200, 600}}, {{1800, 0}, {1800, 600}}};
    request.sizeMm = sizeMm;
    for (const double x : {620.0, 1180.0})
        for (const double y : {100.0, 500.0}) request.fine.push_back({{x, y}, 8});
    return request;
}

void meshTrialSlab(benchmark::State& state)
{
    const MeshRequest request = trialSlab(double(state.range(0)));
    TriangleMesh mesh;
    for (auto _ : state) {
        mesh = meshOf(request);
        benchmark::DoNotOptimize(mesh);
    }
    state.counters["nodes"] = double(mesh.nodes.size());
    state.counters["triangles"] = double(mesh.triangles.size());
    state.counters["least_angle_deg"] = mesh.leastAngleDeg();
}
BENCHMARK(meshTrialSlab)->Arg(80)->Arg(50)->Arg(30)->Arg(20)->Arg(10)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace yardcast

BENCHMARK_MAIN();
