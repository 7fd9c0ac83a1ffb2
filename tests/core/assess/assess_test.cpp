#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>
#include <map>
#include <random>
#include <set>

#include "core/assess/assess.h"
#include "core/assess/assessment_json.h"
#include "core/plan/edits.h"
#include "tests/core/assess/plans_for_tests.h"

namespace yardcast {
namespace {

using test::rowOfParts;
using test::sampleNames;
using test::samplePlan;

std::map<std::string, CastingPtr> castingsById(const Assessment& assessment)
{
    std::map<std::string, CastingPtr> byId;
    for (const PlacedCasting& placed : assessment.castings) byId[placed.casting->id] = placed.casting;
    return byId;
}

std::string textOf(const Plan& plan, const Assessment& assessment)
{
    return assessmentJson(plan, assessment, {});
}

TEST(Assess, AnEmptyPlanHasNothing)
{
    const AssessmentPtr assessment = assess(Plan{}, exampleBook());
    EXPECT_TRUE(assessment->castings.empty());
    EXPECT_TRUE(assessment->mixes.empty());
    EXPECT_TRUE(assessment->shopping.lines.empty());
    EXPECT_EQ(assessment->count(Severity::stop), 0);
}

TEST(Assess, EverySampleIsComputed)
{
    ASSERT_GE(sampleNames().size(), 3u);
    for (const std::string& name : sampleNames()) {
        const Plan plan = samplePlan(name);
        const AssessmentPtr assessment = assess(plan, exampleBook());
        EXPECT_GT(assessment->volumeL(), 50.0) << name;
        EXPECT_EQ(assessment->handling.size(), assessment->castings.size()) << name;
        EXPECT_GT(assessment->shopping.totalMinor, 0) << name;
    }
}

TEST(Assess, LitresOfCastingsAreThoseOfTheMixes)
{
    for (const std::string& name : sampleNames()) {
        const Plan plan = samplePlan(name);
        const AssessmentPtr assessment = assess(plan, exampleBook());
        double net = 0.0;
        for (const MixQuantities& mix : assessment->mixes) {
            net += mix.netL;
            EXPECT_NEAR(mix.volumeL, mix.netL * (1 + findMix(plan, mix.mix)->allowancePercent / 100), 1e-9);
            EXPECT_GE(mix.bags, mix.bagsExact - 1e-9);
            EXPECT_LT(mix.bags, mix.bagsExact + 1);
        }
        EXPECT_NEAR(net, assessment->volumeL(), 1e-9 * net) << name;
    }
}

TEST(Assess, GravestFirstThenInTheOrderOfTheParts)
{
    for (const std::string& name : sampleNames()) {
        const Plan plan = samplePlan(name);
        const AssessmentPtr assessment = assess(plan, exampleBook());
        const Finding* before = nullptr;
        for (const Finding& finding : assessment->findings) {
            if (before) {
                EXPECT_GE(before->severity, finding.severity) << name;
                const int mine = finding.subjects.empty() ? -1 : indexOfPart(plan, finding.subjects[0]);
                const int theirs = before->subjects.empty() ? -1 : indexOfPart(plan, before->subjects[0]);
                if (before->severity == finding.severity && mine >= 0 && theirs >= 0) {
                    EXPECT_LE(theirs, mine) << name;
                }
            }
            before = &finding;
        }
    }
}

TEST(Assess, APartThatCannotBeComputedTakesNoOtherAlong)
{
    const Plan plan = rowOfParts(10);
    const AssessmentPtr whole = assess(plan, exampleBook());
    for (const double bad : {0.0, -40.0, 1e300, std::numeric_limits<double>::quiet_NaN(),
                             std::numeric_limits<double>::infinity()}) {
        const Plan broken = changeCounter(plan, "C1", [bad](Counter& counter) { counter.thicknessMm = bad; });
        const AssessmentPtr rest = assess(broken, exampleBook());
        EXPECT_EQ(rest->castings.size() + 1, whole->castings.size()) << bad;
        EXPECT_THAT(rest->findings, testing::Contains(testing::AllOf(
                                        testing::Field(&Finding::severity, Severity::stop),
                                        testing::Field(&Finding::subjects, testing::Contains(std::string("C1"))))))
            << bad;
        EXPECT_TRUE(std::isfinite(rest->massKg())) << bad;
        EXPECT_EQ(castingsById(*rest).count("C1"), 0u) << bad;
    }
}

TEST(Assess, AFrontsFindingPointsToItsPart)
{
    Plan plan = rowOfParts(5);
    plan = changePart(plan, "F5", [](Part& part) {
        MeasuredOpening opening;
        opening.bottomMm = opening.topMm = 2110;
        opening.leftMm = opening.rightMm = 780;
        opening.diagonalRisingMm = 2250;
        opening.diagonalFallingMm = 2243;
        std::get<Front>(part.body).measured = opening;
    });
    const AssessmentPtr assessment = assess(plan, exampleBook());
    bool said = false;
    for (const Finding& finding : assessment->findings) {
        if (finding.code != "opening_out_of_square") continue;
        said = true;
        EXPECT_EQ(finding.pointer, "/parts/4");
    }
    EXPECT_TRUE(said);
}

TEST(Memo, WhatOnlyMovedIsNotComputedAgain)
{
    const Plan plan = rowOfParts(20);
    Assessor assessor(exampleBook());
    const auto before = castingsById(*assessor.assess(plan));
    const Plan moved = turnParts(moveParts(plan, {"C1", "S3"}, {10, 20}), {"C2"}, 90, {0, 0});
    const auto after = castingsById(*assessor.assess(moved));
    ASSERT_EQ(before.size(), after.size());
    for (const auto& [id, casting] : before) EXPECT_EQ(casting, after.at(id)) << id;
}

TEST(Memo, OnlyTheChangedCastingIsNew)
{
    const Plan plan = rowOfParts(20);
    Assessor assessor(exampleBook());
    const auto before = castingsById(*assessor.assess(plan));
    const Plan changed = changeCutout(plan, "C2", "K1", [](Cutout& cutout) { cutout.centre.x += 10; });
    const auto after = castingsById(*assessor.assess(changed));
    for (const auto& [id, casting] : before) {
        if (id == "C2") {
            EXPECT_NE(casting, after.at(id));
        } else {
            EXPECT_EQ(casting, after.at(id)) << id;
        }
    }
}

TEST(Memo, AnEqualPlanOfOtherObjectsIsRecognised)
{
    const Plan plan = rowOfParts(10);
    Plan copy = plan;
    for (PartPtr& part : copy.parts) part = std::make_shared<const Part>(*part);
    Assessor assessor(exampleBook());
    const auto before = castingsById(*assessor.assess(plan));
    const auto after = castingsById(*assessor.assess(copy));
    for (const auto& [id, casting] : before) EXPECT_EQ(casting, after.at(id)) << id;
}

TEST(Memo, TheAnswerNeverDependsOnIt)
{
    std::mt19937 random(7);
    Plan plan = samplePlan(sampleNames().front());
    Assessor assessor(exampleBook());
    std::vector<Plan> history{plan};
    for (int step = 0; step < 200; ++step) {
        const auto pick = [&](std::size_t count) {
            return std::uniform_int_distribution<std::size_t>(0, count - 1)(random);
        };
        const double by = std::uniform_real_distribution<double>(-60, 60)(random);
        const std::string id = plan.parts.empty() ? "" : plan.parts[pick(plan.parts.size())]->id;
        switch (pick(7)) {
        case 0: plan = moveParts(plan, {id}, {by, -by}); break;
        case 1: plan = turnParts(plan, {id}, 15, {0, 0}); break;
        case 2: plan = moveOutlineEdge(plan, id, 1, by); break;
        case 3: plan = duplicateParts(plan, {id}, {by * 20, 0}); break;
        case 4: plan = removeParts(plan, {id}); break;
        case 5:
            plan = changePart(plan, id, [by](Part& part) {
                if (auto* support = std::get_if<Support>(&part.body)) support->heightMm += by;
                if (auto* front = std::get_if<Front>(&part.body)) front->to.x += by;
            });
            break;
        default: plan = history[pick(history.size())];
        }
        history.push_back(plan);
        ASSERT_EQ(textOf(plan, *assessor.assess(plan)), textOf(plan, *assess(plan, exampleBook()))) << "step " << step;
    }
}

TEST(Memo, ARenamedPartGivesCastingsOfItsNewName)
{
    const Plan plan = rowOfParts(5);
    Assessor assessor(exampleBook());
    assessor.assess(plan);
    const auto after = castingsById(*assessor.assess(renamePart(plan, "C1", "C99")));
    EXPECT_EQ(after.count("C1"), 0u);
    EXPECT_EQ(after.count("C99"), 1u);
}

}  // namespace
}  // namespace yardcast
