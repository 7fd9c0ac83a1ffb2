#include <algorithm>
#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/assess/assess.h"
#include "core/assess/strength_assessor.h"
#include "core/io/plan_patch.h"
#include "core/remedy/attempts.h"
#include "core/remedy/remedies.h"
#include "core/remedy/trial.h"
#include "tests/core/structure/slabs.h"

namespace yardcast {

namespace {

struct Judged {
    Plan plan;
    AssessmentPtr assessed;

    const Finding* find(const std::string& code, const std::string& which = {}) const
    {
        for (const Finding& finding : assessed->findings) {
            if (finding.code != code) continue;
            const auto word = finding.values.find("case");
            if (which.empty() || (word != finding.values.end() && std::get<std::string>(word->second) == which)) {
                return &finding;
            }
        }
        return nullptr;
    }
    std::vector<Remedy> remedies(const Finding& finding, std::stop_token stop = {}) const
    {
        return RemedyFinder(plan, exampleBook(), assessed, Refinement::working).remedies(finding, stop);
    }
};

Judged judge(const Plan& plan)
{
    const AssessmentPtr base = assess(plan, exampleBook());
    StrengthAssessor assessor;
    const auto strengths = assessor.assess(plan, *base, Refinement::working);
    return {plan, withStrength(plan, base, *strengths)};
}

/// A long thin slab with a sink near its front edge, on two walls: too weak in use and in the hands.
Plan weakSlab()
{
    tests::PlanMaker maker;
    Counter counter = tests::slab(2300, 600, 30);
    counter.cutouts.push_back(tests::sink("K1", {1150, 270}, {560, 400}, 20));
    counter.lift = Lift{30.0, {}, 2, CarryWay::flat, {}};
    maker.counter("C1", counter).wall("S1", 100, 100, 0, 600, 870).wall("S2", 2200, 100, 0, 600, 870);
    return maker.plan;
}

}  // namespace

TEST(TriedRemedies, ClearTheFindingWhenTheirEditIsApplied)
{
    const Judged before = judge(weakSlab());
    int offered = 0;
    RemedyFinder finder(before.plan, exampleBook(), before.assessed, Refinement::working);
    FoundRemedies found;
    for (const Finding& finding : finder.findings()) {
        found[complaintOf(finding)] = finder.remedies(finding);
        for (const Remedy& remedy : found[complaintOf(finding)]) {
            SCOPED_TRACE(finding.code + " by " + remedy.code);
            if (remedy.values.count("use_before_percent") > 0) {
                EXPECT_LT(std::get<double>(remedy.values.at("use_percent")),
                          std::get<double>(remedy.values.at("use_before_percent")));
                continue;
            }
            ++offered;
            const PlanReading after = applyPatch(before.plan, remedy.edit);
            ASSERT_TRUE(after.plan.has_value());
            const Judged then = judge(*after.plan);
            const Complaints complaints = complaintsOf(then.assessed->findings);
            EXPECT_EQ(complaints.count(complaintOf(finding)), 0u);
            EXPECT_NEAR(then.assessed->massKg() - before.assessed->massKg(),
                        std::get<double>(remedy.values.at("added_kg")), 1e-9);
            EXPECT_NEAR(static_cast<double>(then.assessed->shopping.totalMinor - before.assessed->shopping.totalMinor),
                        std::get<double>(remedy.values.at("added_minor")), 0.5);
        }
    }
    EXPECT_GT(offered, 0);
    const AssessmentPtr with = withRemedies(before.assessed, found);
    for (const Finding& finding : with->findings) {
        const auto remedies = found.find(complaintOf(finding));
        if (remedies != found.end()) {
            EXPECT_EQ(finding.remedies, remedies->second);
        }
    }
}

TEST(TriedRemedies, AreRankedByWhatTheyAddAndNoneComesTwice)
{
    const Judged before = judge(weakSlab());
    RemedyFinder finder(before.plan, exampleBook(), before.assessed, Refinement::working);
    for (const Finding& finding : finder.findings()) {
        const std::vector<Remedy> remedies = finder.remedies(finding);
        std::set<std::string> kinds;
        double last = -1e9;
        for (const Remedy& remedy : remedies) {
            EXPECT_TRUE(kinds.insert(remedy.code).second) << remedy.code;
            const double kg = std::get<double>(remedy.values.at("added_kg"));
            EXPECT_GE(kg, last);
            last = kg;
        }
        EXPECT_LE(remedies.size(), kMostRemedies);
    }
}

TEST(TriedRemedies, OfferWaitingWhereAYoungSlabIsTooWeakToBeHandled)
{
    tests::PlanMaker maker;
    Counter counter = tests::slab(1500, 600, 40);
    counter.lift = Lift{14.0, {}, 4, CarryWay::flat, {}};
    maker.counter("C1", counter).wall("S1", 100, 100, 0, 600, 860).wall("S2", 1400, 100, 0, 600, 860);
    const Judged before = judge(maker.plan);
    const Finding* finding = before.find("cracks_handling");
    ASSERT_NE(finding, nullptr);
    const std::vector<Remedy> remedies = before.remedies(*finding);
    EXPECT_TRUE(std::any_of(remedies.begin(), remedies.end(),
                            [](const Remedy& remedy) { return remedy.code == "wait_longer"; }));
}

TEST(TriedRemedies, OfferARibWhereTheFieldDoesNotTouchItsRest)
{
    tests::PlanMaker maker;
    Counter counter = tests::slab(2000, 600, 30);
    counter.rim = Rim{60, 60, std::nullopt, {}};
    counter.filler = Filler{};
    maker.counter("C1", counter).wall("S1", 30, 60, 0, 600, 840).wall("S2", 1000, 100, 80, 520, 840);
    maker.wall("S3", 1970, 60, 0, 600, 840);
    const Judged before = judge(maker.plan);
    const Finding* finding = before.find("rest_on_foam");
    ASSERT_NE(finding, nullptr);
    ASSERT_EQ(finding->severity, Severity::caution);
    const std::vector<Remedy> remedies = before.remedies(*finding);
    ASSERT_EQ(remedies.size(), 1u);
    EXPECT_EQ(remedies[0].code, "rib_over");
}

TEST(TriedRemedies, AreNoneForOtherFindingsAndWhenAskedToStop)
{
    const Judged before = judge(weakSlab());
    Finding other;
    other.code = "heavy";  // about the same casting, but nothing of its strength
    other.severity = Severity::caution;
    other.subjects = {"C1"};
    EXPECT_TRUE(before.remedies(other).empty());

    const auto finding = std::find_if(before.assessed->findings.begin(), before.assessed->findings.end(), isWorthTrying);
    ASSERT_NE(finding, before.assessed->findings.end());
    std::stop_source stop;
    stop.request_stop();
    EXPECT_TRUE(before.remedies(*finding, stop.get_token()).empty());
}

TEST(ChangeDepth, KeepsTheFaceAndShortensWhatBears)
{
    const Plan before = weakSlab();
    const Plan after = changeDepth(before, "C1", [](Counter& counter) { counter.thicknessMm += 10; });
    EXPECT_EQ(std::get<Counter>(findPart(after, "C1")->body).topMm, 900.0);
    EXPECT_EQ(std::get<Support>(findPart(after, "S1")->body).heightMm, 860.0);
    EXPECT_EQ(std::get<Support>(findPart(after, "S2")->body).heightMm, 860.0);
}

}  // namespace yardcast
