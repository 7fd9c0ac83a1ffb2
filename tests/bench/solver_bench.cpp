// Figures to reach for the example slab (2000 x 600 x 30, rim 50, cutout, tap hole, three rests, 8 mm at the corners of
// the cutout), from the outline to the stresses: 50 mm in under 10 ms, 30 mm in under 25 ms, 20 mm in under 90 ms; 60
// more places of a person at 30 mm in under 25 ms. Eigen's sparse Cholesky on the same equations stands beside as a
// peer.

#include <benchmark/benchmark.h>

#include <Eigen/SparseCholesky>

#include "core/fem/shell_element.h"
#include "tests/core/fem/example_slab.h"

namespace yardcast {
namespace {

using namespace testing_shells;

ExampleSlab slabOf(double sizeMm, Rests rests)
{
    return exampleSlab(sizeMm, rests, meshOf(exampleSlabRequest(sizeMm, true, rests)));
}

std::unique_ptr<ShellSystem> systemOf(const ExampleSlab& slab)
{
    return ShellSystem::make(slab.model, slab.springs, slab.beds);
}

void fromOutlineToStresses(benchmark::State& state, Rests rests)
{
    const double size = double(state.range(0));
    std::size_t nodes = 0;
    std::size_t beds = 0;
    for (auto _ : state) {
        const ExampleSlab slab = slabOf(size, rests);
        const auto system = systemOf(slab);
        const ShellSolution solution = system->solve(slab.load());
        if (!solution.settled) state.SkipWithError("not settled");
        benchmark::DoNotOptimize(system->forces(solution.displacement));
        nodes = slab.model.mesh.nodes.size();
        beds = slab.beds.size();
    }
    state.counters["nodes"] = double(nodes);
    state.counters["beds"] = double(beds);
}
BENCHMARK_CAPTURE(fromOutlineToStresses, lines, Rests::lines)->Arg(50)->Arg(30)->Arg(20)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(fromOutlineToStresses, edges, Rests::edges)->Arg(50)->Arg(30)->Arg(20)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(fromOutlineToStresses, areas, Rests::areas)->Arg(50)->Arg(30)->Arg(20)->Unit(benchmark::kMillisecond);

void factorWithContact(benchmark::State& state)
{
    const ExampleSlab slab = slabOf(double(state.range(0)), Rests::edges);
    for (auto _ : state) benchmark::DoNotOptimize(systemOf(slab));
}
BENCHMARK(factorWithContact)->Arg(50)->Arg(30)->Arg(20)->Unit(benchmark::kMillisecond);

void solveOneLoad(benchmark::State& state)
{
    const ExampleSlab slab = slabOf(double(state.range(0)), Rests::edges);
    const auto system = systemOf(slab);
    const NodeVector load = slab.load();
    for (auto _ : state) benchmark::DoNotOptimize(system->solve(load));
}
BENCHMARK(solveOneLoad)->Arg(50)->Arg(30)->Arg(20)->Unit(benchmark::kMillisecond);

void sixtyPlacesOfAPerson(benchmark::State& state, Rests rests)
{
    const ExampleSlab slab = slabOf(double(state.range(0)), rests);
    const auto system = systemOf(slab);
    for (auto _ : state) benchmark::DoNotOptimize(system->solve(slab.loadsWithPerson(60)));
}
BENCHMARK_CAPTURE(sixtyPlacesOfAPerson, edges, Rests::edges)->Arg(50)->Arg(30)->Arg(20)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(sixtyPlacesOfAPerson, areas, Rests::areas)->Arg(50)->Arg(30)->Arg(20)->Unit(benchmark::kMillisecond);

/// The same work as `factorWithContact` without the flexibility of the beds: stiffness of the triangles, assembly,
/// order, factor. Only half of the symmetric matrix is given.
void peerFactor(benchmark::State& state)
{
    const ExampleSlab slab = slabOf(double(state.range(0)), Rests::edges);
    const TriangleMesh& mesh = slab.model.mesh;
    const Eigen::Index freedoms = Eigen::Index(mesh.nodes.size()) * 6;
    double apart = 0.0;
    for (auto _ : state) {
        std::vector<Eigen::Triplet<double>> entries;
        entries.reserve(mesh.triangles.size() * 18 * 19 / 2);
        for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
            const auto& nodes = mesh.triangles[t];
            fem::ElementStiffness k;
            fem::elementStiffness({mesh.nodes[std::size_t(nodes[0])], mesh.nodes[std::size_t(nodes[1])],
                                   mesh.nodes[std::size_t(nodes[2])]},
                                  slab.model.sections[t], slab.model.elasticMpa, slab.model.poisson, k);
            for (int i = 0; i < 18; ++i)
                for (int j = 0; j < 18; ++j) {
                    const int row = nodes[std::size_t(i / 6)] * 6 + i % 6;
                    const int column = nodes[std::size_t(j / 6)] * 6 + j % 6;
                    if (row >= column) entries.emplace_back(row, column, k[std::size_t(i * 18 + j)]);
                }
        }
        for (const NodeSpring& s : slab.springs)
            for (int i = 0; i < 6; ++i)
                entries.emplace_back(s.node * 6 + i, s.node * 6 + i, s.stiffness[std::size_t(i)]);
        for (const ContactSpring& c : slab.beds) entries.emplace_back(c.node * 6 + 2, c.node * 6 + 2, c.stiffnessNMm);
        Eigen::SparseMatrix<double> matrix(freedoms, freedoms);
        matrix.setFromTriplets(entries.begin(), entries.end());
        const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factor(matrix);
        if (factor.info() != Eigen::Success) state.SkipWithError("peer failed");
        state.PauseTiming();
        // All beds press under a load that is the matrix times a settlement of 1, so that both solve the same.
        Eigen::VectorXd load = Eigen::VectorXd::Zero(freedoms);
        for (const ContactSpring& c : slab.beds) load[c.node * 6 + 2] -= c.stiffnessNMm;
        load[100 * 6 + 2] -= 0.01;
        const Eigen::VectorXd theirs = factor.solve(load);
        const ShellSolution ours = systemOf(slab)->solve(NodeVector(load.data(), load.data() + load.size()));
        apart = (theirs - Eigen::Map<const Eigen::VectorXd>(ours.displacement.data(), freedoms)).cwiseAbs().maxCoeff();
        if (apart > 1e-7) state.SkipWithError("answers differ");
        state.ResumeTiming();
    }
    state.counters["apart"] = apart;
}
BENCHMARK(peerFactor)->Arg(50)->Arg(30)->Arg(20)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace yardcast

BENCHMARK_MAIN();
