#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/assess/assess.h"
#include "tests/samples/sample_files.h"

namespace yardcast::test {
namespace {

using testing::UnorderedElementsAre;

std::string word(Severity severity)
{
    switch (severity) {
        case Severity::note: return "note";
        case Severity::caution: return "caution";
        case Severity::stop: return "stop";
    }
    return {};
}

/// "caution heavy A1": the finding with its first subject. Notes only where `notes` asks for them.
std::vector<std::string> findingsOf(const std::string& name, bool notes = false)
{
    std::vector<std::string> lines;
    const AssessmentPtr assessment = assess(sample(name), exampleBook());
    for (const Finding& finding : assessment->findings) {
        if (finding.severity == Severity::note && !notes) continue;
        lines.push_back(word(finding.severity) + " " + finding.code +
                        (finding.subjects.empty() ? "" : " " + finding.subjects.front()));
    }
    return lines;
}

const Finding& theFinding(const Assessment& assessment, const std::string& code)
{
    for (const Finding& finding : assessment.findings) {
        if (finding.code == code) return finding;
    }
    throw std::runtime_error("no finding " + code);
}

double number(const Finding& finding, const std::string& key) { return std::get<double>(finding.values.at(key)); }

// What each sample is meant to have caught, and nothing else that weighs.

TEST(GrillBench, IsTooHeavyForTwoAndALittleOverItsBudget)
{
    EXPECT_THAT(findingsOf("grill-bench"),
                UnorderedElementsAre("caution heavy A1", "caution heavy A2", "caution heavy S1",
                                     "caution over_budget", "caution exposure_class body"));
}

TEST(GrillBench, IsOverByLessThanOneMouldBoard)
{
    const AssessmentPtr assessment = assess(sample("grill-bench"), exampleBook());
    const double over = number(theFinding(*assessment, "over_budget"), "amount");
    EXPECT_GT(over, 0.0);
    EXPECT_LT(over, 39.0) << "one mould board, so that one base for two slabs would bring it under";
}

TEST(GrillBench, MovesTheDoorsEdgesIntoGaps)
{
    EXPECT_THAT(findingsOf("grill-bench", true), testing::Contains("note door_moved F1"));
}

TEST(CornerKitchen, HasAHearthThatThreeCannotLift)
{
    EXPECT_THAT(findingsOf("corner-kitchen"),
                UnorderedElementsAre("stop too_heavy B4", "caution heavy B1", "caution heavy B2.1",
                                     "caution heavy B2.2", "caution heavy B2.3", "caution heavy S1",
                                     "caution exposure_class body"));
    const AssessmentPtr assessment = assess(sample("corner-kitchen"), exampleBook());
    for (const Finding& finding : assessment->findings) {
        if (finding.code != "heavy" || finding.subjects.front() != "S1") continue;
        EXPECT_THAT(finding.subjects, testing::ElementsAre("S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8"));
    }
}

TEST(CornerKitchen, LeavesAlmostNothingOfItsBudget)
{
    EXPECT_THAT(findingsOf("corner-kitchen", true), testing::Contains("note budget_tight"));
}

TEST(TwoLevelBar, HasAFridgeTallerThanTheRoomBelowItsSlab)
{
    const AssessmentPtr assessment = assess(sample("two-level-bar"), exampleBook());
    const Finding& finding = theFinding(*assessment, "parts_collide");
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_THAT(finding.subjects, UnorderedElementsAre("C1b", "G3"));
    EXPECT_NEAR(number(finding, "height_mm"), 30.0, 2.0) << "860 high under 830 clear, the ground within 2 mm";
}

TEST(TwoLevelBar, HasSlabsTooHeavyForFourAndStonesTooLargeForThePanels)
{
    EXPECT_THAT(findingsOf("two-level-bar"),
                UnorderedElementsAre("stop parts_collide C1b", "caution heavy C4", "caution heavy C1a",
                                     "caution heavy C5a",
                                     "caution aggregate_large body", "caution exposure_class body",
                                     "caution evaporation_high"));
}

TEST(TwoLevelBar, IsPouredInDryHeatThatAnEarlyStartSoftens)
{
    const AssessmentPtr assessment = assess(sample("two-level-bar"), exampleBook());
    EXPECT_GT(number(theFinding(*assessment, "evaporation_high"), "evaporation"), 0.5) << "its worktop hardly bleeds";
    EXPECT_LT(assessment->weather.worstAtBestKgM2H, assessment->weather.worstAtPlanKgM2H);
}

TEST(TwoLevelBar, KeepsWithinItsBudgetWithLittleToSpare)
{
    const AssessmentPtr assessment = assess(sample("two-level-bar"), exampleBook());
    const double left = number(theFinding(*assessment, "budget_tight"), "amount");
    EXPECT_GT(left, 0.0);
    EXPECT_LT(left, 144.0) << "a tenth of the limit";
}

}  // namespace
}  // namespace yardcast::test
