#include <gtest/gtest.h>

#include "core/assess/assess.h"
#include "core/assess/strength_assessor.h"
#include "core/io/plan_patch.h"
#include "core/remedy/remedies.h"
#include "core/remedy/trial.h"
#include "tests/core/structure/slabs.h"

namespace yardcast {

namespace {

/// A slab that is thicker than it needs to be, on three walls.
Plan stoutSlab()
{
    tests::PlanMaker maker;
    Counter counter = tests::slab(1600, 600, 70);
    counter.lift = Lift{72.0, {}, 4, CarryWay::flat, {}};
    maker.counter("C1", counter).wall("S1", 50, 100, 0, 600, 830).wall("S2", 800, 100, 0, 600, 830);
    maker.wall("S3", 1550, 100, 0, 600, 830);
    return maker.plan;
}

std::vector<CastingStrengthPtr> solved(const Plan& plan)
{
    const AssessmentPtr base = assess(plan, exampleBook());
    return *strengthOfPart(plan, *base, "C1", Refinement::working, {}, {});
}

}  // namespace

TEST(SearchCounter, FindsAFormThatHoldsAndIsLighter)
{
    const Plan before = stoutSlab();
    int steps = 0;
    const auto answer = searchCounter(before, exampleBook(), "C1", SearchGoal::lightest,
                                      [&](const SearchStep& step) {
                                          ++steps;
                                          EXPECT_LE(step.tried, step.of);
                                      });
    ASSERT_TRUE(answer.has_value());
    EXPECT_EQ(answer->tried, steps);
    EXPECT_LT(answer->addedKg, 0.0);
    EXPECT_TRUE(complaintsOf(solved(answer->plan)).empty());
    EXPECT_LE(answer->usePercent, 100.0);
    const PlanReading patched = applyPatch(before, answer->remedy.edit);
    ASSERT_TRUE(patched.plan.has_value());
    EXPECT_EQ(*patched.plan, answer->plan);
}

TEST(SearchCounter, LightestIsNoHeavierAndCheapestNoDearer)
{
    const Plan before = stoutSlab();
    const auto light = searchCounter(before, exampleBook(), "C1", SearchGoal::lightest, {});
    const auto cheap = searchCounter(before, exampleBook(), "C1", SearchGoal::cheapest, {});
    ASSERT_TRUE(light && cheap);
    EXPECT_LE(light->massKg, cheap->massKg + 1e-9);
    EXPECT_LE(cheap->addedMinor, light->addedMinor);
}

TEST(SearchCounter, GivesNothingForOtherPartsAndWhenAskedToStop)
{
    const Plan plan = stoutSlab();
    EXPECT_FALSE(searchCounter(plan, exampleBook(), "S1", SearchGoal::lightest, {}).has_value());
    EXPECT_FALSE(searchCounter(plan, exampleBook(), "C9", SearchGoal::lightest, {}).has_value());
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(
        searchCounter(plan, exampleBook(), "C1", SearchGoal::lightest, {}, stop.get_token()).has_value());
}

}  // namespace yardcast
