#include "core/assess/readiness_assessor.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "core/assess/assess.h"
#include "core/assess/assessment_json.h"
#include "core/assess/strength_assessor.h"
#include "core/io/plan_file.h"
#include "core/io/plan_patch.h"
#include "core/plan/edits.h"
#include "tests/core/assess/plans_for_tests.h"

namespace yardcast {
namespace {

AssessmentPtr solved(const Plan& plan, Refinement refinement = Refinement::draft)
{
    const AssessmentPtr base = assess(plan, PriceBook());
    return withStrength(plan, base, *StrengthAssessor().assess(plan, *base, refinement));
}

AssessmentPtr ready(const Plan& plan, Refinement refinement = Refinement::draft)
{
    const AssessmentPtr assessment = solved(plan, refinement);
    return withReadiness(plan, assessment, *ReadinessAssessor().assess(plan, *assessment, {}, refinement));
}

class ReadinessTest : public testing::Test {
protected:
    Plan plan = test::samplePlan("grill-bench");
    std::string counter = firstCounter();

    std::string firstCounter() const
    {
        for (const PartPtr& part : plan.parts) {
            if (part->kind() == PartKind::counter) return part->id;
        }
        return {};
    }
    Plan liftedAt(double ageH) const
    {
        return changeCounter(plan, counter, [&](Counter& c) {
            if (!c.lift) c.lift.emplace();
            c.lift->ageH = ageH;
        });
    }
};

TEST_F(ReadinessTest, HoursAreThoseOfEachCastingAlone)
{
    const AssessmentPtr assessment = solved(plan);
    const auto readiness = ReadinessAssessor().assess(plan, *assessment, {}, Refinement::draft);
    ASSERT_TRUE(readiness);
    std::vector<CastingPtr> castings;
    for (const PlacedCasting& placed : assessment->castings) castings.push_back(placed.casting);
    const auto inputs = strengthInputs(plan, castings);
    ASSERT_EQ(readiness->hours.size(), inputs.size());
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const CastingHoursPtr alone = earliestHours(inputs[i], Refinement::draft);
        ASSERT_EQ(readiness->hours[i]->ways.size(), alone->ways.size());
        EXPECT_EQ(readiness->hours[i]->casting, inputs[i].casting->id);
        for (std::size_t w = 0; w < alone->ways.size(); ++w) {
            EXPECT_EQ(readiness->hours[i]->ways[w].cautiousH, alone->ways[w].cautiousH);
            EXPECT_EQ(readiness->hours[i]->ways[w].likelyH, alone->ways[w].likelyH);
        }
    }
}

TEST_F(ReadinessTest, AnotherHourOrAnotherDayNeedsNoSolving)
{
    // A stop that was asked before anything is solved: what comes back all the same was remembered.
    ReadinessAssessor assessor;
    const AssessmentPtr assessment = solved(plan);
    const auto first = assessor.assess(plan, *assessment, {}, Refinement::draft);
    ASSERT_TRUE(first);
    Plan warm = liftedAt(70.0);
    warm.conditions.highC = 31.0;
    // The hands are those of the plan or chosen by strength; they are the same at 70 h.
    const AssessmentPtr later = solved(warm);
    const auto second = assessor.assess(warm, *later, {}, Refinement::draft);
    ASSERT_TRUE(second);
    ReadinessAssessor fresh;
    const auto anew = fresh.assess(warm, *later, {}, Refinement::draft);
    for (std::size_t i = 0; i < second->hours.size(); ++i) {
        ASSERT_EQ(second->hours[i]->ways.size(), anew->hours[i]->ways.size());
        EXPECT_EQ(second->hours[i]->planH, anew->hours[i]->planH);
        for (std::size_t w = 0; w < anew->hours[i]->ways.size(); ++w) {
            EXPECT_EQ(second->hours[i]->ways[w].cautiousH, anew->hours[i]->ways[w].cautiousH);
            EXPECT_LT(second->hours[i]->ways[w].cautiousH, first->hours[i]->ways[w].cautiousH);
        }
    }
}

TEST_F(ReadinessTest, NothingWhenStopped)
{
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(ReadinessAssessor().assess(plan, *solved(plan), stop.get_token()));
}

TEST_F(ReadinessTest, TheMouldOffTooEarlyIsSaidOnceWithAnEditThatClearsIt)
{
    // A mould that has to stay on long: nothing cracks at 72 h, and yet it is too early.
    plan.assumptions = assumptionsOf(plan);
    plan.assumptions->stripMpa = 25.0;
    const Plan early = liftedAt(72.0);
    const AssessmentPtr assessment = ready(early);
    const auto isEarly = [](const Finding& f) { return f.code == "lifted_early"; };
    const auto found = std::ranges::find_if(assessment->findings, [&](const Finding& f) {
        return isEarly(f) && f.subjects.front() == counter;
    });
    ASSERT_NE(found, assessment->findings.end());
    EXPECT_EQ(found->pointer, "/parts/" + std::to_string(indexOfPart(early, counter)));
    ASSERT_EQ(found->remedies.size(), 1u);
    const PlanReading reading = applyPatch(early, found->remedies.front().edit);
    ASSERT_TRUE(reading.plan);
    const AssessmentPtr after = ready(*reading.plan);
    EXPECT_TRUE(std::ranges::none_of(after->findings, [&](const Finding& f) {
        return isEarly(f) && f.subjects.front() == counter;
    }));
    // A whole hour less is still too early.
    const double age = *numberAt(found->remedies.front().values, "age_h");
    const AssessmentPtr justBefore = ready(liftedAt(age - 1.1));
    EXPECT_TRUE(std::ranges::any_of(justBefore->findings, isEarly));
}

TEST_F(ReadinessTest, WhatCracksGetsItsHoursAndIsNotSaidTwice)
{
    Plan weak = test::samplePlan("corner-kitchen");
    const AssessmentPtr assessment = ready(weak);
    int told = 0;
    for (const Finding& finding : assessment->findings) {
        if (finding.code != "cracks_handling") continue;
        const auto which = strengthCaseOf(wordAt(finding.values, "case"));
        const bool isWay = std::ranges::any_of(kHandlingWays, [&](HandlingWay w) { return caseOfWay(w) == which; });
        if (!isWay) continue;
        ++told;
        const auto cautious = numberAt(finding.values, "cautious_h");
        ASSERT_TRUE(cautious.has_value() || numberAt(finding.values, "never").has_value());
        if (cautious) {
            EXPECT_GT(*cautious, *numberAt(finding.values, "age_h"));
            EXPECT_GE(*numberAt(finding.values, "wait_h"), *cautious);
        }
        EXPECT_TRUE(std::ranges::none_of(assessment->findings, [&](const Finding& other) {
            return (other.code == "lifted_early" || other.code == "never_holds") && other.subjects == finding.subjects;
        }));
    }
    EXPECT_GT(told, 0);
}

TEST_F(ReadinessTest, WhatIsAlikeIsSaidOnce)
{
    Plan kitchen = test::samplePlan("corner-kitchen");
    kitchen.assumptions = assumptionsOf(kitchen);
    kitchen.assumptions->stripMpa = 25.0;
    const AssessmentPtr assessment = solved(kitchen);
    Readiness readiness = *ReadinessAssessor().assess(kitchen, *assessment, {}, Refinement::draft);
    const AssessmentPtr all = withReadiness(kitchen, assessment, readiness);

    // One casting alone is told of in a list of its own: what is told of all must be neither less nor more.
    std::size_t alone = 0;
    for (const CastingHoursPtr& hours : readiness.hours) {
        Readiness one = readiness;
        one.hours = {hours};
        const AssessmentPtr assessed = withReadiness(kitchen, assessment, one);
        for (const Finding& finding : assessed->findings) {
            if (finding.code != "lifted_early" && finding.code != "never_holds") continue;
            EXPECT_EQ(finding.subjects.front(), hours->casting);
            EXPECT_FALSE(numberAt(finding.values, "count"));
            ++alone;
        }
    }
    std::size_t said = 0;
    std::size_t findings = 0;
    std::set<std::string> castings;
    for (const Finding& finding : all->findings) {
        if (finding.code != "lifted_early" && finding.code != "never_holds") continue;
        ++findings;
        const auto count = static_cast<std::size_t>(numberAt(finding.values, "count").value_or(1.0));
        ASSERT_LE(count, finding.subjects.size());
        for (std::size_t i = 0; i < count; ++i) {
            EXPECT_TRUE(castings.insert(finding.subjects[i]).second) << finding.subjects[i];
        }
        said += count;
    }
    EXPECT_EQ(said, alone);
    EXPECT_LT(findings, alone);
}

TEST_F(ReadinessTest, StandsInTheJson)
{
    Plan seasonal = plan;
    MonthWeather april;
    april.month = 4;
    april.lowC = 6.0;
    april.highC = 15.0;
    MonthWeather july;
    july.month = 7;
    july.lowC = 15.0;
    july.highC = 26.0;
    seasonal.season = {april, july};
    const AssessmentPtr assessment = ready(seasonal);
    const auto json = nlohmann::json::parse(assessmentJson(seasonal, *assessment, {}));
    ASSERT_EQ(json["hours"].size(), assessment->castings.size());
    for (const auto& casting : json["hours"]) {
        for (const auto& way : casting["ways"]) {
            if (way["cautious_h"].is_null()) continue;
            EXPECT_LE(way["likely_h"].get<double>(), way["cautious_h"].get<double>());
        }
    }
    ASSERT_EQ(json["gain"].size(), assessment->mixes.size());
    const auto& gain = json["gain"][0];
    EXPECT_EQ(gain["h"].size(), gain["share"].size());
    EXPECT_TRUE(gain["strip_h"].is_number());
    EXPECT_TRUE(gain["carry_h"].is_number());
    ASSERT_EQ(json["season"].size(), 2u);
    EXPECT_GT(json["season"][0]["carry_h"].get<double>(), json["season"][1]["carry_h"].get<double>());
}

TEST_F(ReadinessTest, FrostIsNoMonthForCasting)
{
    Plan seasonal = plan;
    for (const auto& [month, low, high] : {std::tuple(1, -6.0, 2.0), {5, 9.0, 18.0}, {7, 16.0, 27.0}}) {
        MonthWeather weather;
        weather.month = month;
        weather.lowC = low;
        weather.highC = high;
        weather.windKmh = 1.0;
        weather.humidityPercent = 70.0;
        seasonal.season.push_back(weather);
    }
    const AssessmentPtr assessment = ready(seasonal);
    ASSERT_EQ(assessment->season.size(), 3u);
    EXPECT_TRUE(assessment->season[0].frost);
    EXPECT_EQ(assessment->season[0].rank, 0);
    // Calm and damp: the warmer month has the shorter wait.
    EXPECT_EQ(assessment->season[2].rank, 1);
    EXPECT_EQ(assessment->season[1].rank, 2);
}

}  // namespace
}  // namespace yardcast
