#include <algorithm>

#include <gtest/gtest.h>

#include "core/reinforcement/section.h"
#include "core/structure/steel_worth.h"
#include "tests/core/structure/slabs.h"

namespace yardcast {

namespace {

using tests::PlanMaker;

/// 2000 x 600 x 40 on two walls, with a mesh of 5 at 50 at this cover from the face, or none.
PlanMaker simpleSlab(std::optional<double> coverMm)
{
    Counter counter = tests::slab(2000, 600, 40);
    if (coverMm) {
        counter.steel.emplace();
        counter.steel->mesh = Mesh{};
        counter.steel->mesh->barMm = 5;
        counter.steel->mesh->pitchMm = 50;
        counter.steel->mesh->coverMm = *coverMm;
    }
    PlanMaker maker;
    maker.counter("C1", counter).wall("S1", 50, 100, 0, 600, 860).wall("S2", 1950, 100, 0, 600, 860);
    return maker;
}

CastingStrengthPtr inUse(const PlanMaker& maker)
{
    return solveStrength(maker.input("C1"), Refinement::working, {.inUse = true, .handling = false});
}

const SteelCheck* midSpan(const CastingStrength& strength)
{
    for (const SteelCheck& check : strength.steel) {
        if (check.name.kind == PlaceKind::middleOfSpan && !check.tensionAtFace) return &check;
    }
    return nullptr;
}

const Finding* find(const CastingStrength& strength, const std::string& code)
{
    for (const Finding& finding : strength.findings) {
        if (finding.code == code) return &finding;
    }
    return nullptr;
}

}  // namespace

TEST(SteelWorth, LowDownTheMeshCarriesNearTheFaceItDoesNot)
{
    const CastingStrengthPtr low = inUse(simpleSlab(20.0));
    const CastingStrengthPtr high = inUse(simpleSlab(10.0));
    const CastingStrengthPtr none = inUse(simpleSlab(std::nullopt));
    const SteelCheck* atLow = midSpan(*low);
    const SteelCheck* atHigh = midSpan(*high);
    const SteelCheck* without = midSpan(*none);
    ASSERT_TRUE(atLow && atHigh && without);
    EXPECT_GT(atLow->resistanceN, atHigh->resistanceN);
    EXPECT_EQ(without->resistanceN, 0.0);
    EXPECT_EQ(without->steelAreaMm2M, 0.0);
    // The same section cracks at the same moment, whatever the steel.
    EXPECT_NEAR(atLow->crackingMomentN, without->crackingMomentN, 1e-9);
    EXPECT_NEAR(atLow->resistancePlainN, without->resistancePlainN, 1e-9);
    // Where it could lie best is the same for both.
    EXPECT_NEAR(atLow->resistanceBestN, atHigh->resistanceBestN, 1e-9);
}

TEST(SteelWorth, DesignMomentTakesOwnWeightByOnePointThreeFiveAndPeopleByOnePointFive)
{
    const CastingStrengthPtr strength = inUse(simpleSlab(20.0));
    const CaseResult* own = strength->find(StrengthCase::ownWeight);
    const CaseResult* full = strength->find(StrengthCase::inPlace);
    ASSERT_TRUE(own && full);
    const auto at = [](const CaseResult& result) {
        const auto found = std::find_if(result.sections.begin(), result.sections.end(), [](const SectionForces& one) {
            return one.name.kind == PlaceKind::middleOfSpan;
        });
        return found->meanMomentN;
    };
    const SteelCheck* check = midSpan(*strength);
    ASSERT_NE(check, nullptr);
    ASSERT_EQ(check->which, StrengthCase::inPlace);
    EXPECT_NEAR(check->designMomentN, 1.35 * at(*own) + 1.5 * (at(*full) - at(*own)), 1e-9);
}

TEST(SteelWorth, SaysWhenThereIsNoSteelWhereItIsNeeded)
{
    Counter counter = tests::slab(2400, 600, 30);
    PlanMaker maker;
    maker.counter("C1", counter).wall("S1", 50, 100, 0, 600, 870).wall("S2", 2350, 100, 0, 600, 870);
    const CastingStrengthPtr strength = inUse(maker);
    const Finding* missing = find(*strength, "steel_missing");
    ASSERT_NE(missing, nullptr);
    EXPECT_EQ(missing->severity, Severity::caution);
    EXPECT_EQ(find(*strength, "steel_weak"), nullptr);
    EXPECT_EQ(find(*strength, "steel_wrong_side"), nullptr);
}

TEST(SteelWorth, SteelElsewhereIsNoneWhereItIsNeeded)
{
    // Bars at one end only, none across the middle of the span.
    Counter counter = tests::slab(2400, 600, 30);
    counter.steel.emplace();
    BarGroup& bar = counter.steel->bars.emplace_back();
    bar.from = {100, 300};
    bar.to = {600, 300};
    PlanMaker maker;
    maker.counter("C1", counter).wall("S1", 50, 100, 0, 600, 870).wall("S2", 2350, 100, 0, 600, 870);
    const CastingStrengthPtr strength = inUse(maker);
    const Finding* absent = find(*strength, "steel_absent");
    ASSERT_NE(absent, nullptr);
    EXPECT_EQ(std::get<std::string>(absent->values.at("place")), "middle of span S1-S2");
    EXPECT_EQ(find(*strength, "steel_weak"), nullptr) << "none there would read as less with steel than without";
    EXPECT_EQ(find(*strength, "steel_missing"), nullptr);
}

TEST(SteelWorth, SaysWhenTheMeshLiesOnTheWrongSide)
{
    // 50 mm thick, mesh close under the face, pulled at the underside between two walls.
    Counter counter = tests::slab(2600, 600, 50);
    counter.steel.emplace();
    counter.steel->mesh = Mesh{};
    counter.steel->mesh->barMm = 6;
    counter.steel->mesh->pitchMm = 50;
    counter.steel->mesh->coverMm = 3;
    PlanMaker maker;
    maker.counter("C1", counter).wall("S1", 50, 100, 0, 600, 850).wall("S2", 2550, 100, 0, 600, 850);
    const CastingStrengthPtr strength = inUse(maker);
    const Finding* wrong = find(*strength, "steel_wrong_side");
    ASSERT_NE(wrong, nullptr);
    EXPECT_EQ(std::get<double>(wrong->values.at("tension_at_face")), 0.0);
}

TEST(CutDepths, MeasuresFieldAndRimAlongACut)
{
    Counter counter = tests::slab(2000, 600, 30);
    counter.rim = Rim{50, 60, std::nullopt, {}};
    const auto castings = castingsOf(Part{"C1", {}, {}, counter, {}});
    ASSERT_EQ(castings.size(), 1u);
    const auto depths = cutDepths(*castings[0], {1000, 0}, {1000, 600});
    ASSERT_EQ(depths.size(), 2u);
    // 200 samples of 3 mm: exact to half a sample on each of the two borders.
    EXPECT_EQ(depths[0].depthMm, 30);
    EXPECT_NEAR(depths[0].widthMm, 480, 3.0);
    EXPECT_EQ(depths[1].depthMm, 50);
    EXPECT_NEAR(depths[1].widthMm, 120, 3.0);
}

TEST(SteelWorth, OfARimmedCutIsThatOfATee)
{
    // Flush T: field 30 x 480, rims 50 x 120. Hand calculation of the elastic modulus at the underside.
    Counter counter = tests::slab(2000, 600, 30);
    counter.rim = Rim{50, 60, std::nullopt, {}};
    PlanMaker maker;
    maker.counter("C1", counter).wall("S1", 50, 100, 0, 600, 850).wall("S2", 1950, 100, 0, 600, 850);
    const CastingStrengthPtr strength = inUse(maker);
    const SteelCheck* check = midSpan(*strength);
    ASSERT_NE(check, nullptr);
    const double area = 480 * 30 + 120 * 50;
    const double centre = (480 * 30 * 15 + 120 * 50 * 25) / area;
    const double inertia = 480.0 * 30 * 30 * 30 / 3 + 120.0 * 50 * 50 * 50 / 3 - area * centre * centre;
    const double modulus = inertia / (50 - centre) / 600;
    // fctm of C30/37 and eq. 3.23 for the deepest, 50 mm. 1 %: the cut is measured by samples of 3 mm.
    const double expected = modulus * (1.6 - 0.05) * 0.30 * std::pow(30.0, 2.0 / 3.0);
    EXPECT_NEAR(check->crackingMomentN, expected, 0.01 * expected);
}

}  // namespace yardcast
