#include "core/assess/with_cuts.h"

#include <gtest/gtest.h>

#include <cmath>

#include <nlohmann/json.hpp>

#include "core/assess/assess.h"
#include "core/assess/assessment_json.h"
#include "tests/core/assess/plans_for_tests.h"

namespace yardcast {
namespace {

AssessmentPtr cutAssessment(const Plan& plan)
{
    const AssessmentPtr plain = assess(plan, exampleBook());
    return withCuts(plan, plain, exampleBook(), CutSolver().solve(cutJobs(plan, exampleBook(), *plain)));
}

bool isCut(const std::string& item)
{
    return item.rfind("bar_", 0) == 0 || item.rfind("mesh_", 0) == 0 || item.rfind("batten", 0) == 0 ||
           item == "frame_timber";
}

TEST(WithCuts, LinesOfTheSamplesTakeWholeLengthsAndSheetsAndAreNoEstimates)
{
    for (const std::string& name : test::sampleNames()) {
        const Plan plan = test::samplePlan(name);
        const AssessmentPtr assessment = cutAssessment(plan);
        ASSERT_NE(assessment->cuts, nullptr);
        EXPECT_FALSE(assessment->cuts->bars.empty()) << name;
        std::int64_t total = 0;
        for (const ShoppingLine& line : assessment->shopping.lines) {
            total += line.priceMinor;
            if (!isCut(line.item)) continue;
            EXPECT_FALSE(line.estimate) << name << ": " << line.item;
            double bought = line.owned;
            std::int64_t price = 0;
            for (const PackChoice& pack : line.packs) {
                bought += pack.size * pack.count;
                price += pack.priceMinor * pack.count;
            }
            EXPECT_GE(bought, line.need - 1e-6) << name << ": " << line.item;
            EXPECT_EQ(price, line.priceMinor) << name << ": " << line.item;
            EXPECT_NEAR(line.leftover, bought - line.need, 1e-6) << name << ": " << line.item;
        }
        EXPECT_EQ(assessment->shopping.totalMinor, total) << name;
    }
}

TEST(WithCuts, EveryBarOfTheScheduleIsCutOnce)
{
    for (const std::string& name : test::sampleNames()) {
        const Plan plan = test::samplePlan(name);
        const AssessmentPtr assessment = cutAssessment(plan);
        int wanted = 0;
        for (const CastingSteelLayoutPtr& layout : assessment->steel.layouts) {
            for (const BarListRow& row : layout->barList) wanted += row.suggested ? 0 : row.count;
        }
        int cut = 0;
        for (const BarCutsPtr& bars : assessment->cuts->bars) {
            if (bars->job.item.rfind("bar_", 0) != 0) continue;
            for (const BarPattern& pattern : bars->plan.patterns)
                cut += pattern.times * static_cast<int>(pattern.pieces.size());
            for (const BarUnplaced& left : bars->plan.unplaced) cut += left.count;
        }
        EXPECT_EQ(cut, wanted) << name;
    }
}

TEST(WithCuts, TheBudgetIsComparedWithTheNewSum)
{
    Plan plan = test::samplePlan(test::sampleNames().front());
    plan.budget = Budget{};
    plan.budget->limit = 1.0;
    const AssessmentPtr plain = assess(plan, exampleBook());
    const AssessmentPtr cut = cutAssessment(plan);
    ASSERT_NE(plain->shopping.totalMinor, cut->shopping.totalMinor);
    int over = 0;
    for (const Finding& finding : cut->findings) {
        if (finding.code != "over_budget") continue;
        ++over;
        EXPECT_NEAR(std::get<double>(finding.values.at("total")), static_cast<double>(cut->shopping.totalMinor) / 100.0,
                    1e-9);
    }
    EXPECT_EQ(over, 1);
}

TEST(WithCuts, WithoutCutsNothingChanges)
{
    const Plan plan = test::samplePlan(test::sampleNames().front());
    const AssessmentPtr plain = assess(plan, exampleBook());
    EXPECT_EQ(withCuts(plan, plain, exampleBook(), nullptr), plain);
}

TEST(WithCuts, TheJsonHasSheetsAndBars)
{
    const Plan plan = test::samplePlan(test::sampleNames().front());
    const auto json = nlohmann::json::parse(assessmentJson(plan, *cutAssessment(plan), {}));
    const auto& cuts = json.at("cuts");
    ASSERT_FALSE(cuts.at("bars").empty());
    const auto& bar = cuts.at("bars").at(0);
    EXPECT_LE(bar.at("bound_minor").get<double>(), bar.at("price_minor").get<double>());
    EXPECT_TRUE(bar.at("plan").at(0).at("pieces").at(0).contains("for"));
    const AssessmentPtr plain = assess(plan, exampleBook());
    EXPECT_FALSE(nlohmann::json::parse(assessmentJson(plan, *plain, {})).contains("cuts"));
}

}  // namespace
}  // namespace yardcast
