#include "core/io/plan_patch.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/core/io/full_plan.h"

namespace yardcast {
namespace {

Plan fullPlan() { return readPlan(samples::kFullPlan).plan.value(); }

std::string pathTo(const Plan& plan, const std::string& part, const std::string& key)
{
    return "/parts/" + std::to_string(indexOfPart(plan, part)) + "/" + key;
}

std::string firstCounter(const Plan& plan)
{
    for (const PartPtr& part : plan.parts) {
        if (part->kind() == PartKind::counter) return part->id;
    }
    return {};
}

std::string codeOf(const PlanReading& reading) { return reading.problems.empty() ? "" : reading.problems[0].code; }

TEST(PlanPatch, ChangesWhatItNamesAndNothingElse)
{
    const Plan plan = fullPlan();
    const std::string id = firstCounter(plan);
    const PlanReading changed = applyPatch(
        plan, R"([{"op":"replace","path":")" + pathTo(plan, id, "thickness_mm") + R"(","value":47.5}])");
    ASSERT_TRUE(changed.plan) << codeOf(changed);
    EXPECT_EQ(*changed.plan, changeCounter(plan, id, [](Counter& counter) { counter.thicknessMm = 47.5; }));
    for (std::size_t i = 0; i < plan.parts.size(); ++i) {
        EXPECT_EQ(changed.plan->parts[i] == plan.parts[i], plan.parts[i]->id != id) << plan.parts[i]->id;
    }
    // What this version does not know is still in the file.
    EXPECT_EQ(applyPatch(*changed.plan, R"([{"op":"replace","path":")" + pathTo(plan, id, "thickness_mm") +
                                            R"(","value":)" +
                                            std::to_string(std::get<Counter>(findPart(plan, id)->body).thicknessMm) +
                                            "}]")
                  .plan,
              plan);
}

TEST(PlanPatch, AddsAndRemovesParts)
{
    const Plan plan = fullPlan();
    const PlanReading more = applyPatch(plan, R"([{"op":"add","path":"/parts/-","value":
        {"id":"S77","kind":"support","at":[10,20],"length_mm":600,"width_mm":100,"height_mm":840,"mix":"body"}}])");
    ASSERT_TRUE(more.plan) << codeOf(more);
    ASSERT_TRUE(findPart(*more.plan, "S77"));
    EXPECT_EQ(more.plan->parts.size(), plan.parts.size() + 1);
    const PlanReading fewer = applyPatch(
        *more.plan, R"([{"op":"remove","path":"/parts/)" + std::to_string(plan.parts.size()) + R"("}])");
    EXPECT_EQ(fewer.plan, plan);
    EXPECT_EQ(applyPatch(plan, "[]").plan, plan);
}

TEST(PlanPatch, SaysWhyItDoesNotFit)
{
    const Plan plan = fullPlan();
    EXPECT_EQ(codeOf(applyPatch(plan, R"([{"op":"replace","path":"/parts/999/thickness_mm","value":40}])")),
              "patch_fails");
    EXPECT_EQ(codeOf(applyPatch(plan, R"([{"op":"test","path":"/title","value":"another"}])")), "patch_fails");
    EXPECT_EQ(codeOf(applyPatch(plan, R"({"op":"test"})")), "patch_fails");
    EXPECT_EQ(codeOf(applyPatch(plan, R"([{"op":"juggle","path":"/title"}])")), "patch_fails");
    EXPECT_EQ(codeOf(applyPatch(plan, "[{]")), "json_syntax");
    EXPECT_EQ(codeOf(applyPatch(plan, "")), "file_empty");
    const std::string thickness = pathTo(plan, firstCounter(plan), "thickness_mm");
    const PlanReading wrong = applyPatch(plan, R"([{"op":"replace","path":")" + thickness + R"(","value":"thick"}])");
    EXPECT_EQ(codeOf(wrong), "wrong_type");
    EXPECT_EQ(wrong.problems[0].pointer, thickness);
    EXPECT_FALSE(wrong.plan);
    EXPECT_EQ(codeOf(applyPatch(plan, R"([{"op":"remove","path":"/yardplan"}])")), "not_a_plan");
    EXPECT_FALSE(applyPatch(plan, R"([{"op":"replace","path":"","value":[1,2]}])").plan);
}

}  // namespace
}  // namespace yardcast
