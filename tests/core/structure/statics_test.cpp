#include <cmath>

#include <gtest/gtest.h>

#include "core/structure/in_use.h"
#include "tests/core/structure/slabs.h"

namespace yardcast {

namespace {

using tests::PlanMaker;
using tests::slab;

const SectionForces* find(const CaseResult& result, const std::string& name)
{
    for (const SectionForces& s : result.sections) {
        if (placeWords(s.name) == name) return &s;
    }
    return nullptr;
}

/// A body with its own weight on its rests.
struct Solved {
    explicit Solved(const StrengthInput& input, Refinement refinement)
        : body(makeBody(input, refinement)), rests(*body), load(rests.deadLoad(true)),
          solution(rests.system().solve(load))
    {
        std::vector<NamedCut> cuts = stripCuts(*body);
        for (NamedCut& cut : restCuts(*body)) cuts.push_back(cut);
        result = caseResult(*body, rests.system(), solution, {}, cuts);
    }

    /// Moment about the line x = at of all that acts left of it, Nmm: from the nodes, so free of any stress.
    double momentLeftOf(double at) const
    {
        double sum = 0.0;
        const auto held = rests.held(solution);
        for (std::size_t i = 0; i < body->mesh().nodes.size(); ++i) {
            const double x = body->mesh().nodes[i].x;
            if (x < at) sum += load[6 * i + 2] * (at - x);
        }
        for (const HeldAt& h : held) {
            if (h.centre.x < at) sum += h.forceN * (at - h.centre.x);
        }
        return sum;
    }

    std::shared_ptr<const Body> body;
    OnRests rests;
    NodeVector load;
    ShellSolution solution;
    CaseResult result;
};

}  // namespace

TEST(Statics, AnEvenlyLoadedSlabOnTwoWallsHasWLSquaredOverEight)
{
    // Knife edges 4 mm wide: the span is from one to the other.
    PlanMaker plan;
    plan.counter("C1", slab(1800, 600, 40)).wall("S1", 100, 4, 0, 600, 860).wall("S2", 1700, 4, 0, 600, 860);
    const StrengthInput input = plan.input("C1");
    const double perMm = input.casting->massKg * kGravityMS2 / 1800;  // N a mm of length
    // Overhangs of 100 take from it; per mm of width.
    const double expected = (perMm * 1600.0 * 1600 / 8 - perMm * 100.0 * 100 / 2) / 600;
    for (const Refinement refinement : {Refinement::draft, Refinement::working, Refinement::printed}) {
        const Solved solved(input, refinement);
        const SectionForces* middle = find(solved.result, "middle of span S1-S2");
        ASSERT_TRUE(middle);
        EXPECT_NEAR(middle->meanMomentN, expected, 0.01 * expected);
        EXPECT_NEAR(middle->widthMm, 600, 1e-3);
        EXPECT_NEAR(middle->meanForceNMm, 0.0, 1e-6);
        // A free slab of this width is a beam but for its edges: 6 M / h2, and 2 % more for the plate's anticlastic
        // edges.
        EXPECT_NEAR(solved.result.tensionBottomMpa, 6 * expected / 1600, 0.03 * 6 * expected / 1600);
        // 5 w L4 / 384 EI of the beam, less what the overhangs lift: w a2 L2 / 16 EI.
        const double ei = solved.result.elasticMpa * 600 * 40.0 * 40 * 40 / 12;
        const double sag = 5 * perMm * std::pow(1600.0, 4) / (384 * ei) - perMm * 1e4 * std::pow(1600.0, 2) / (16 * ei)
                           + perMm * 900 / (4 * 600 * 10.0);  // and the beds give way
        EXPECT_NEAR(solved.result.deflectionMm, sag, 0.02 * sag);
    }
}

TEST(Statics, AnOverhangCarriesItsOwnWeight)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 600, 40)).wall("S1", 400, 100, 0, 600, 860).wall("S2", 1700, 100, 0, 600, 860);
    const StrengthInput input = plan.input("C1");
    const Solved solved(input, Refinement::working);
    const SectionForces* cut = find(solved.result, "overhang beyond S1");
    ASSERT_TRUE(cut);
    const double perMm = input.casting->massKg * kGravityMS2 / 1800 / 600;
    const double expected = -perMm * 350 * 350 / 2;
    EXPECT_NEAR(cut->meanMomentN, expected, 0.02 * -expected);
    // The shear is that of the nodes beyond the cut: half an element of 30 mm less of the overhang, 4 %.
    EXPECT_NEAR(std::abs(cut->meanShearNMm), perMm * 350, 0.05 * perMm * 350);
}

TEST(Statics, MomentsThroughARimmedSlabWithACutoutBalanceWhatActsOnEachSide)
{
    Counter counter = slab(1800, 620, 40);
    counter.rim = Rim{};
    counter.cutouts = {tests::sink("K1", {900, 330}, {560, 400}, 20)};
    counter.loads = {{"oven", {900, 60}, {400, 80}, 80, {}}};
    PlanMaker plan;
    plan.counter("C1", counter).wall("S1", 100, 100, 0, 620, 840).wall("S2", 1700, 100, 0, 620, 840);
    const StrengthInput input = plan.input("C1");
    for (const Refinement refinement : {Refinement::draft, Refinement::working, Refinement::printed}) {
        const Solved solved(input, refinement);
        const SectionForces* middle = find(solved.result, "middle of span S1-S2");
        const SectionForces* front = find(solved.result, "strip in front of K1");
        const SectionForces* behind = find(solved.result, "strip behind K1");
        ASSERT_TRUE(middle && front && behind);
        EXPECT_NEAR(middle->widthMm, 220, 0.1);
        EXPECT_NEAR(front->widthMm, 130, 0.1);
        EXPECT_NEAR(behind->widthMm, 90, 0.1);
        const double balance = solved.momentLeftOf(900) / middle->widthMm;
        EXPECT_NEAR(middle->meanMomentN, balance, 0.005 * balance);
        // What passes through both strips together passes through the slab. Forces in the plane of the slab come to
        // nothing together; the tolerance is their error beside those that bending makes in the rims.
        const double both = front->meanMomentN * 130 + behind->meanMomentN * 90;
        EXPECT_NEAR(both, middle->meanMomentN * 220, 0.01 * both);
        EXPECT_NEAR(front->meanForceNMm * 130 + behind->meanForceNMm * 90, 0.0, 0.03 * both / 60);
    }
}

TEST(Statics, EveryCaseIsInEquilibrium)
{
    Counter counter = slab(1800, 620, 40);
    counter.rim = Rim{};
    counter.cutouts = {tests::sink("K1", {900, 330}, {560, 400}, 20)};
    PlanMaker plan;
    plan.counter("C1", counter).wall("S1", 100, 100, 0, 620, 840).wall("S2", 1700, 100, 0, 620, 840);
    plan.wall("S3", 1000, 100, 0, 620, 840);
    const StrengthInput input = plan.input("C1");
    const auto body = makeBody(input, Refinement::working);
    const OnRests rests(*body);
    std::vector<NodeVector> loads{rests.deadLoad(false), rests.evenLoad()};
    for (const Point p : {Point{50, 50}, Point{900, 60}, Point{1750, 570}}) {
        loads.push_back(rests.deadLoad(true));
        rests.addPerson(p, 1000, loads.back());
    }
    const std::vector<ShellSolution> solutions = rests.system().solve(loads);
    for (std::size_t k = 0; k < loads.size(); ++k) {
        ASSERT_TRUE(solutions[k].settled);
        std::array<double, 6> sum = rests.system().reaction(solutions[k]);
        double force = 0.0;
        for (std::size_t i = 0; i < body->mesh().nodes.size(); ++i) {
            const Point p = body->mesh().nodes[i];
            const double* f = &loads[k][6 * i];
            for (int c = 0; c < 6; ++c) sum[c] += f[c];
            sum[3] += p.y * f[2];
            sum[4] -= p.x * f[2];
            sum[5] += p.x * f[1] - p.y * f[0];
            force += std::abs(f[2]);
        }
        for (int c = 0; c < 3; ++c) EXPECT_NEAR(sum[c], 0.0, 1e-9 * force);
        for (int c = 3; c < 6; ++c) EXPECT_NEAR(sum[c], 0.0, 1e-9 * force * 1800);
        double held = 0.0;
        for (const HeldAt& h : rests.held(solutions[k])) held += h.forceN;
        EXPECT_NEAR(held, force, 1e-9 * force);
    }
}

}  // namespace yardcast
