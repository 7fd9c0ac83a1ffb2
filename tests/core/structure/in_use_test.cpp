#include <cmath>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/structure/design_stress.h"
#include "core/structure/in_use.h"
#include "tests/core/structure/slabs.h"

namespace yardcast {

namespace {

using tests::PlanMaker;
using tests::slab;

CastingStrengthPtr inUse(const PlanMaker& plan, Refinement refinement = Refinement::draft)
{
    return solveStrength(plan.input("C1"), refinement, {true, false});
}

std::vector<std::string> codes(const CastingStrength& strength)
{
    std::vector<std::string> all;
    for (const Finding& finding : strength.findings) all.push_back(finding.code);
    return all;
}

}  // namespace

TEST(InUse, ReactionsSumToTheLoadAndShareByStatics)
{
    Counter counter = slab(1800, 600, 40);
    counter.loads = {{"oven", {500, 300}, {400, 400}, 100, {}}};
    PlanMaker plan;
    plan.counter("C1", counter).wall("S1", 100, 100, 0, 600, 860).wall("S2", 1500, 100, 0, 600, 860);
    const auto strength = inUse(plan);
    const CaseResult* own = strength->find(StrengthCase::ownWeight);
    ASSERT_TRUE(own && own->holds);
    ASSERT_EQ(own->held.size(), 2u);
    const double total = (plan.input("C1").casting->massKg + 100) * kGravityMS2;
    EXPECT_NEAR(own->held[0].forceN + own->held[1].forceN, total, 1e-9 * total);
    // Moment about S2's force of all that acts: where the forces are is the solver's, the balance is not.
    const double lever = own->held[1].centre.x - own->held[0].centre.x;
    const double turning = plan.input("C1").casting->massKg * kGravityMS2 * (own->held[1].centre.x - 900) +
                           100 * kGravityMS2 * (own->held[1].centre.x - 500);
    EXPECT_NEAR(own->held[0].forceN * lever, turning, 1e-6 * turning);
    EXPECT_NEAR(own->held[0].centre.y, 300, 1.0);
}

TEST(InUse, AnApplianceCountsInPlaceOnly)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 600, 40)).wall("S1", 100, 100, 0, 600, 860).wall("S2", 1700, 100, 0, 600, 860);
    const auto without = inUse(plan);
    Appliance grill;
    grill.on = "C1";
    grill.size = {500, 500};
    grill.massKg = 90;
    plan.add("A1", grill, {{650, 50}, 0});
    const auto with = inUse(plan);
    EXPECT_DOUBLE_EQ(with->find(StrengthCase::ownWeight)->usePercent,
                     without->find(StrengthCase::ownWeight)->usePercent);
    EXPECT_GT(with->find(StrengthCase::inPlace)->usePercent, without->find(StrengthCase::inPlace)->usePercent + 5);
}

TEST(InUse, ThePersonIsWorstBesideTheSinkAndGoverns)
{
    Counter counter = slab(1800, 620, 40);
    counter.cutouts = {tests::sink("K1", {900, 290}, {560, 400}, 20)};  // 90 in front, 130 behind
    PlanMaker plan;
    plan.counter("C1", counter).wall("S1", 100, 100, 0, 620, 860).wall("S2", 1700, 100, 0, 620, 860);
    const auto strength = inUse(plan);
    const CaseResult* place = strength->find(StrengthCase::inPlace);
    ASSERT_TRUE(place && place->holds);
    EXPECT_TRUE(place->personGoverns);
    EXPECT_NEAR(place->personAt.x, 900, 1.0);
    EXPECT_LT(place->personAt.y, 90);
    EXPECT_EQ(placeWords(place->place), "strip in front of K1");
    EXPECT_FALSE(place->onFace);

    // The sweep takes the worst of all its spots, solved one by one on the same mesh, within what a coarse mesh may
    // misjudge.
    const StrengthInput input = plan.input("C1");
    const auto body = makeBody(input, Refinement::draft);
    const OnRests rests(*body);
    const std::vector<double> usable = usableStrengthMpa(*body, 672);
    double worst = 0.0;
    const std::vector<Point> spots = personSpots(input);
    EXPECT_GE(spots.size(), 60u);
    for (const Point p : spots) {
        NodeVector load = rests.deadLoad(true);
        rests.addPerson(p, 1000, load);
        const ShellSolution solution = rests.system().solve(load);
        const auto forces = rests.system().forces(solution.displacement);
        const StressField stress = stressField(*body, forces);
        worst = std::max(worst, DesignStress(*body, forces, stress, {p}).greatestUse(usable).percent);
    }
    EXPECT_NEAR(place->usePercent, worst, 0.02 * worst);
}

TEST(InUse, ALightlyHeldWallLiftsOff)
{
    // An oven on the overhang bends the slab over S1: between S1 and S3 it bows up, off S2.
    Counter counter = slab(1800, 600, 40);
    counter.loads = {{"oven", {120, 300}, {200, 400}, 90, {}}};
    PlanMaker plan;
    plan.counter("C1", counter).wall("S1", 500, 100, 0, 600, 860).wall("S2", 1100, 100, 0, 600, 860);
    plan.wall("S3", 1750, 100, 0, 600, 860);
    const auto strength = inUse(plan);
    const CaseResult* own = strength->find(StrengthCase::ownWeight);
    ASSERT_TRUE(own && own->holds);
    ASSERT_EQ(own->held.size(), 3u);
    EXPECT_FALSE(own->held[0].liftedOff);
    EXPECT_TRUE(own->held[1].liftedOff);
    EXPECT_EQ(own->held[1].forceN, 0.0);
    EXPECT_EQ(own->held[1].touchingShare, 0.0);
    EXPECT_FALSE(own->held[2].liftedOff);
    EXPECT_THAT(codes(*strength), testing::Contains("lifts_off"));
}

TEST(InUse, ASlabWhoseWeightIsBeyondItsWallTips)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 600, 40)).wall("S1", 300, 100, 0, 600, 860).wall("S2", 700, 100, 0, 600, 860);
    const auto strength = inUse(plan);
    const CaseResult* own = strength->find(StrengthCase::ownWeight);
    ASSERT_TRUE(own);
    EXPECT_FALSE(own->holds);
    EXPECT_EQ(own->usePercent, 0.0);
    EXPECT_THAT(codes(*strength), testing::Contains("tips"));
    for (const Finding& finding : strength->findings) {
        if (finding.code != "tips") continue;
        EXPECT_EQ(finding.severity, Severity::stop);
    }
}

TEST(InUse, APersonOnALongOverhangTipsWhatLiesStillByItself)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 600, 40)).wall("S1", 600, 100, 0, 600, 860).wall("S2", 1200, 100, 0, 600, 860);
    const auto strength = inUse(plan);
    EXPECT_TRUE(strength->find(StrengthCase::ownWeight)->holds);
    const CaseResult* place = strength->find(StrengthCase::inPlace);
    EXPECT_FALSE(place->holds);
    EXPECT_TRUE(place->personGoverns);
    EXPECT_TRUE(place->personAt.x < 550 || place->personAt.x > 1250) << place->personAt.x;
    EXPECT_THAT(codes(*strength), testing::Contains("tips_in_use"));
    EXPECT_THAT(codes(*strength), testing::Not(testing::Contains("tips")));
}

TEST(InUse, ASlabThatTipsUnderSomebodyIsAlsoSaidToCrackWhereItDoes)
{
    // 20 mm thin over 1500 mm of span, and 500 mm of overhang to tip it by.
    PlanMaker plan;
    plan.counter("C1", slab(2100, 600, 20)).wall("S1", 50, 100, 0, 600, 880).wall("S2", 1550, 100, 0, 600, 880);
    const auto strength = inUse(plan);
    const std::vector<std::string> said = codes(*strength);
    EXPECT_FALSE(strength->find(StrengthCase::inPlace)->holds);
    EXPECT_THAT(said, testing::Contains("tips_in_use"));
    EXPECT_THAT(said, testing::Contains("cracks_surely_in_place"));
}

TEST(InUse, CrackingByItsOwnWeightIsSaidByItself)
{
    PlanMaker plan;
    plan.counter("C1", slab(3000, 600, 20)).wall("S1", 50, 100, 0, 600, 880).wall("S2", 2950, 100, 0, 600, 880);
    const auto strength = inUse(plan);
    // w L2 / 8 on h2 / 6: 2400 kg/m3 over 2.9 m gives 7.4 MPa, far beyond any strength.
    EXPECT_GT(strength->find(StrengthCase::ownWeight)->usePercent, 200.0);
    EXPECT_THAT(codes(*strength), testing::Contains("cracks_by_itself"));
    PlanMaker stout;
    stout.counter("C1", slab(1000, 600, 60)).wall("S1", 50, 100, 0, 600, 840).wall("S2", 950, 100, 0, 600, 840);
    EXPECT_THAT(codes(*inUse(stout)), testing::Not(testing::Contains("cracks_by_itself")));
}

TEST(InUse, NothingUnderItIsSaidAndNotSolved)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 600, 40));
    const auto strength = inUse(plan);
    ASSERT_TRUE(strength);
    EXPECT_FALSE(strength->find(StrengthCase::ownWeight)->holds);
    EXPECT_THAT(codes(*strength), testing::Contains("tips"));
}

TEST(InUse, AnUnknownClassIsTakenForTheLowest)
{
    const auto ownWeightOfClass = [](const std::string& name) {
        PlanMaker plan;
        plan.plan.mixes[0].strengthClass = name;
        plan.counter("C1", slab(1800, 600, 40)).wall("S1", 100, 100, 0, 600, 860).wall("S2", 1700, 100, 0, 600, 860);
        const auto strength = inUse(plan);
        EXPECT_TRUE(strength && strength->whyNot.empty());
        return strength->find(StrengthCase::ownWeight)->strengthMpa;
    };
    EXPECT_GT(ownWeightOfClass("hard"), 0.0);
    EXPECT_DOUBLE_EQ(ownWeightOfClass("hard"), ownWeightOfClass("C12/15")) << "the lowest of EN 1992-1-1 Table 3.1";
    EXPECT_LT(ownWeightOfClass("hard"), ownWeightOfClass("C25/30"));
}

TEST(InUse, GivesUpWhenAsked)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 600, 40)).wall("S1", 100, 100, 0, 600, 860).wall("S2", 1700, 100, 0, 600, 860);
    std::stop_source source;
    source.request_stop();
    EXPECT_FALSE(solveStrength(plan.input("C1"), Refinement::working, {true, false}, source.get_token()));
}

TEST(InUse, FieldRunsOverTheMeshAndAgreesWithTheGreatestUse)
{
    const auto strength = solveStrength(tests::speedSlab().input("C1"), Refinement::working, {true, false});
    for (const CaseResult& result : strength->cases) {
        ASSERT_TRUE(result.field);
        const StrengthField& field = *result.field;
        ASSERT_EQ(field.usePercent.size(), field.mesh.nodes.size());
        double most = 0.0;
        double top = 0.0;
        double bottom = 0.0;
        double down = 0.0;
        for (std::size_t i = 0; i < field.mesh.nodes.size(); ++i) {
            most = std::max(most, field.usePercent[i]);
            top = std::max(top, field.tensionTopMpa[i]);
            bottom = std::max(bottom, field.tensionBottomMpa[i]);
            down = std::max(down, field.downMm[i]);
        }
        // The drawing never shows more than the answer; where a corner governs its node may show a little less.
        EXPECT_LE(most, result.usePercent * (1 + 1e-12));
        EXPECT_GT(most, 0.8 * result.usePercent);
        EXPECT_LE(top, result.tensionTopMpa * (1 + 1e-12));
        EXPECT_LE(bottom, result.tensionBottomMpa * (1 + 1e-12));
        EXPECT_DOUBLE_EQ(down, result.deflectionMm);
    }
}

}  // namespace yardcast
