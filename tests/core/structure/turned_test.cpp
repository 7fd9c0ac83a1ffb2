#include <cmath>

#include <gtest/gtest.h>

#include "core/structure/in_use.h"
#include "tests/core/structure/slabs.h"

namespace yardcast {

namespace {

/// A lopsided kitchen: rim on two sides, sink off the middle, two loads; `mirror` turns left into right.
tests::PlanMaker kitchen(const Placement& whole, bool mirror)
{
    constexpr double kLength = 1900;
    const auto x = [&](double mm) { return mirror ? kLength - mm : mm; };
    Counter counter = tests::slab(kLength, 620, 40);
    counter.rim = Rim{};
    if (mirror) {
        counter.outline = {{0, 0}, {kLength, 0}, {kLength, 620}, {0, 620}};
        counter.rim->edges = {{0, 1}};
    } else {
        counter.rim->edges = {{0, 3}};
    }
    counter.cutouts = {tests::sink("K1", {x(820), 300}, {500, 380}, 20), tests::tap("K2", {x(820), 545}, 35)};
    counter.ribs = {{{x(300), 0}, {x(300), 620}, 80, {}}, {{x(1500), 0}, {x(1500), 620}, 80, {}}};
    counter.loads = {{"oven", {x(1250), 300}, {300, 400}, 60, {}}};
    tests::PlanMaker plan;
    plan.counter("C1", counter, whole);
    for (const auto& [id, at] : {std::pair{"S1", 300.0}, std::pair{"S2", 1500.0}}) {
        Support support;
        support.lengthMm = 620;
        support.widthMm = 100;
        support.heightMm = 840;
        support.mix = "M";
        plan.add(id, support, {whole.toPlan({x(at) + 50, 0}), whole.turnDeg + 90});
    }
    return plan;
}

const char* const kSections[] = {"strip in front of K1", "strip behind K1", "over S1", "over S2"};

double sectionOf(const CaseResult& result, const std::string& name)
{
    for (const SectionForces& s : result.sections) {
        if (placeWords(s.name) == name) return s.meanMomentN;
    }
    ADD_FAILURE() << name;
    return 0.0;
}

}  // namespace

TEST(Turned, TheAnswerDoesNotDependOnHowTheKitchenStands)
{
    const auto here = solveStrength(kitchen({}, false).input("C1"), Refinement::draft, {true, false});
    for (const double turn : {90.0, 180.0, 33.0, 251.7}) {
        const StrengthInput turned = kitchen({{777.7, -123.4}, turn}, false).input("C1");
        const auto there = solveStrength(turned, Refinement::draft, {true, false});
        ASSERT_EQ(here->cases.size(), there->cases.size());
        for (std::size_t i = 0; i < here->cases.size(); ++i) {
            const CaseResult& a = here->cases[i];
            const CaseResult& b = there->cases[i];
            // Footprints come back into the own frame to the lattice of booleans, 1e-4 mm; quarter turns exactly.
            const double tolerance = std::fmod(turn, 90.0) == 0.0 ? 1e-9 : 1e-5;
            EXPECT_NEAR(a.usePercent, b.usePercent, tolerance * a.usePercent) << turn;
            EXPECT_NEAR(a.deflectionMm, b.deflectionMm, tolerance * a.deflectionMm) << turn;
            for (const char* name : kSections) {
                const double m = sectionOf(a, name);
                EXPECT_NEAR(m, sectionOf(b, name), tolerance * std::abs(m)) << name << turn;
            }
            for (std::size_t k = 0; k < a.held.size(); ++k)
                EXPECT_NEAR(a.held[k].forceN, b.held[k].forceN, tolerance * a.held[k].forceN);
        }
    }
}

TEST(Turned, AMirroredKitchenHasTheMirroredAnswer)
{
    const auto left = solveStrength(kitchen({}, false).input("C1"), Refinement::working, {true, false});
    const auto right = solveStrength(kitchen({}, true).input("C1"), Refinement::working, {true, false});
    for (std::size_t i = 0; i < left->cases.size(); ++i) {
        const CaseResult& a = left->cases[i];
        const CaseResult& b = right->cases[i];
        // The mesh of a mirrored request is another one: what differs is the error of the mesh.
        EXPECT_NEAR(a.usePercent, b.usePercent, 0.02 * a.usePercent);
        EXPECT_NEAR(a.deflectionMm, b.deflectionMm, 0.01 * a.deflectionMm);
        const double scale = std::abs(sectionOf(a, "strip in front of K1"));
        for (const char* name : kSections) EXPECT_NEAR(sectionOf(a, name), sectionOf(b, name), 0.02 * scale) << name;
        for (std::size_t k = 0; k < a.held.size(); ++k) {
            EXPECT_NEAR(a.held[k].forceN, b.held[k].forceN, 0.005 * (a.held[0].forceN + a.held[1].forceN));
            EXPECT_NEAR(a.held[k].centre.x, 1900 - b.held[k].centre.x, 2.0);
        }
        EXPECT_EQ(placeWords(a.place), placeWords(b.place));
    }
    EXPECT_NEAR(sectionOf(left->cases[0], "strip left of K1"), sectionOf(right->cases[0], "strip right of K1"),
                0.02 * std::abs(sectionOf(left->cases[0], "strip in front of K1")));
}

TEST(Turned, EqualInputsGiveEqualAnswers)
{
    const StrengthInput input = kitchen({}, false).input("C1");
    const auto first = solveStrength(input, Refinement::draft, {true, false});
    const auto second = solveStrength(input, Refinement::draft, {true, false});
    for (std::size_t i = 0; i < first->cases.size(); ++i) {
        EXPECT_EQ(first->cases[i].usePercent, second->cases[i].usePercent);
        EXPECT_EQ(first->cases[i].deflectionMm, second->cases[i].deflectionMm);
        EXPECT_EQ(first->cases[i].field->usePercent, second->cases[i].field->usePercent);
    }
}

}  // namespace yardcast
