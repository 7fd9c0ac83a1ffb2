#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>

#include "core/handling/lifting.h"
#include "core/io/plan_patch.h"

namespace yardcast {
namespace {

using testing::ElementsAre;

Plan readOrThrow(const char* parts)
{
    const std::string text = std::string(R"({"yardplan":1,"title":"t","crew":{"people":4,"lift_limit_kg":25},
        "mixes":[{"id":"m","bag":{"mass_kg":25,"yield_l":12,"water_l":2.6,"cement_kg":4.2,"max_aggregate_mm":8},
        "strength_class":"C25/30","cement_speed":"N"}],"parts":[)") + parts + "]}";
    PlanReading reading = readPlan(text);
    if (!reading.plan) throw std::runtime_error("cannot be read");
    return *reading.plan;
}

const char* const kTwoAlike = R"(
    {"id":"C1","kind":"counter","at":[0,0],"turn_deg":0,"top_mm":900,"outline":[[0,0],[1800,0],[1800,600],[0,600]],
     "thickness_mm":50,"mix":"m","cast":"face_down"},
    {"id":"C2","kind":"counter","at":[0,2000],"turn_deg":90,"top_mm":900,"outline":[[0,0],[1800,0],[1800,600],[0,600]],
     "thickness_mm":50,"mix":"m","cast":"face_down"},
    {"id":"S1","kind":"support","at":[0,0],"turn_deg":90,"length_mm":600,"width_mm":100,"base_mm":0,"height_mm":850,
     "mix":"m","cast":"flat"})";

std::vector<CastingPtr> cast(const Plan& plan)
{
    std::vector<CastingPtr> castings;
    for (const PartPtr& part : plan.parts) {
        for (const CastingPtr& casting : castingsOf(*part)) castings.push_back(casting);
    }
    return castings;
}

const Finding* find(const std::vector<Finding>& findings, const std::string& subject)
{
    const auto found = std::find_if(findings.begin(), findings.end(),
                                    [&](const Finding& finding) { return finding.subjects.at(0) == subject; });
    return found == findings.end() ? nullptr : &*found;
}

const Remedy* remedy(const Finding& finding, const std::string& code)
{
    const auto found = std::find_if(finding.remedies.begin(), finding.remedies.end(),
                                    [&](const Remedy& one) { return one.code == code; });
    return found == finding.remedies.end() ? nullptr : &*found;
}

TEST(HeavyFindings, SpeakOnceOfCastingsThatAreAlike)
{
    const Plan plan = readOrThrow(kTwoAlike);
    std::vector<Finding> findings;
    const auto lifts = liftings(plan, cast(plan), findings);
    ASSERT_EQ(findings.size(), 2U);
    const Finding* slabs = find(findings, "C1");
    ASSERT_NE(slabs, nullptr);
    EXPECT_EQ(slabs->code, "too_heavy");
    EXPECT_THAT(slabs->subjects, ElementsAre("C1", "C2"));
    EXPECT_EQ(numberAt(slabs->values, "count"), 2.0);
    EXPECT_THAT(lifts[0].alike, ElementsAre("C2"));
    EXPECT_THAT(lifts[2].alike, ElementsAre());
}

TEST(HeavyFindings, OfferJointsForAllOfThemThatClearThem)
{
    const Plan plan = readOrThrow(kTwoAlike);
    std::vector<Finding> findings;
    liftings(plan, cast(plan), findings);
    const Remedy* joints = remedy(*find(findings, "C1"), "joint_added");
    ASSERT_NE(joints, nullptr);
    EXPECT_EQ(numberAt(joints->values, "joints"), 2.0) << "129.6 kg by 50";
    const PlanReading after = applyPatch(plan, joints->edit);
    ASSERT_TRUE(after.plan);
    std::vector<Finding> left;
    const auto castings = cast(*after.plan);
    EXPECT_EQ(castings.size(), 3U + 3U + 1U);
    const auto lifts = liftings(*after.plan, castings, left);
    EXPECT_EQ(find(left, "C1"), nullptr);
    double heaviest = 0.0;
    for (std::size_t i = 0; i + 1 < lifts.size(); ++i) {
        EXPECT_LE(lifts[i].massKg, lifts[i].limitKg);
        heaviest = std::max(heaviest, lifts[i].massKg);
    }
    EXPECT_DOUBLE_EQ(heaviest, *numberAt(joints->values, "piece_kg"));
}

TEST(HeavyFindings, OfferACoreWithTheMassItBrings)
{
    const Plan plan = readOrThrow(kTwoAlike);
    std::vector<Finding> findings;
    liftings(plan, cast(plan), findings);
    const Finding* support = find(findings, "S1");
    ASSERT_NE(support, nullptr);
    const Remedy* core = remedy(*support, "core_added");
    ASSERT_NE(core, nullptr);
    EXPECT_EQ(numberAt(core->values, "enough"), 0.0) << "122 kg do not come down to 50 with walls of 15 mm";
    const PlanReading after = applyPatch(plan, core->edit);
    ASSERT_TRUE(after.plan);
    EXPECT_DOUBLE_EQ(cast(*after.plan).back()->massKg, *numberAt(core->values, "piece_kg"));
    EXPECT_EQ(remedy(*support, "joint_added"), nullptr);
}

TEST(HeavyFindings, AreTheSameWithAMemoAndFollowTheCrew)
{
    Plan plan = readOrThrow(kTwoAlike);
    const auto castings = cast(plan);
    LiftMemo memo;
    for (const int people : {4, 4, 2, 4}) {
        plan.crew.people = people;
        std::vector<Finding> fresh;
        std::vector<Finding> kept;
        liftings(plan, castings, fresh);
        liftings(plan, castings, kept, &memo);
        EXPECT_EQ(fresh, kept);
    }
    // A support moves under the slab: the joint goes over it though the slab is the same object.
    auto moved = std::make_shared<Part>(*plan.parts[2]);
    moved->place.at = {650, 0};
    plan.parts[2] = moved;
    std::vector<Finding> fresh;
    std::vector<Finding> kept;
    liftings(plan, castings, fresh);
    liftings(plan, castings, kept, &memo);
    EXPECT_EQ(fresh, kept);
}

TEST(Means, AreReckonedForWhatTheCrewCannotLift)
{
    const Plan plan = readOrThrow(kTwoAlike);
    std::vector<Finding> findings;
    const auto lifts = liftings(plan, cast(plan), findings);
    const auto means = [&](LiftMeans which) -> const MeansAdvice* {
        const auto& all = lifts[0].means;
        const auto found = std::find_if(all.begin(), all.end(), [&](const MeansAdvice& a) { return a.means == which; });
        return found == all.end() ? nullptr : &*found;
    };
    EXPECT_EQ(means(LiftMeans::morePeople), nullptr) << "129.6 kg are more than eight at 12.5";
    ASSERT_NE(means(LiftMeans::trolley), nullptr);
    EXPECT_NEAR(means(LiftMeans::trolley)->kgEach, 64.8, 1e-9) << "half of it, about the long edge";
    EXPECT_EQ(means(LiftMeans::trolley)->people, 6);
    EXPECT_FALSE(means(LiftMeans::trolley)->enough);
    ASSERT_NE(means(LiftMeans::hoist), nullptr);
    EXPECT_NEAR(means(LiftMeans::hoist)->kgEach, 129.6 / 2 * 1.1547, 0.01);
    ASSERT_EQ(means(LiftMeans::straps), nullptr) << "more than eight at 14.4 kg";
    EXPECT_EQ(means(LiftMeans::joint)->people, 4);
}

TEST(Limits, NameTheRuleInUse)
{
    Plan plan = readOrThrow(kTwoAlike);
    const auto inUse = [&](double eachKg) {
        plan.crew.liftLimitKg = eachKg;
        std::vector<Finding> findings;
        const auto lifts = liftings(plan, cast(plan), findings);
        std::vector<std::string> words;
        for (const RuleLimit& limit : lifts[0].limits) {
            if (limit.inUse) words.push_back(limitRuleWord(limit.rule));
        }
        return words;
    };
    EXPECT_THAT(inUse(25), ElementsAre("reference_25"));
    EXPECT_THAT(inUse(15), ElementsAre("reference_15"));
    EXPECT_THAT(inUse(40), ElementsAre("plan"));
    std::vector<Finding> findings;
    const auto lifts = liftings(plan, cast(plan), findings);
    // 23 kg x 25/40 x 0.90, for each of four.
    EXPECT_NEAR(lifts[0].find(LimitRule::niosh)->teamKg, 4 * 12.9375, 1e-9);
    EXPECT_EQ(lifts[0].find(LimitRule::niosh)->people, 0);
    EXPECT_NEAR(lifts[0].find(LimitRule::reference15)->teamKg, 30.0, 1e-9);
}

TEST(GripHeavy, WhereOneEndBearsMoreThanAPersonMay)
{
    Plan plan = readOrThrow(R"(
        {"id":"C1","kind":"counter","at":[0,0],"turn_deg":0,"top_mm":900,"outline":[[0,0],[1800,0],[1800,180],[0,180]],
         "thickness_mm":40,"mix":"m","cast":"face_down","lift":{"people":2,"grips":[[830,40],[830,140],[1760,40],[1760,140]]}})");
    std::vector<Finding> findings;
    auto lifts = liftings(plan, cast(plan), findings);
    EXPECT_NEAR(lifts[0].massKg, 31.104, 1e-9);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].code, "grip_heavy");
    // Levers of 70 and 860 mm about the middle at 900.
    EXPECT_NEAR(*numberAt(findings[0].values, "person_kg"), 31.104 * 860 / 930, 1e-9);
    EXPECT_EQ(findings[0].pointer, "/parts/0/lift/grips");
    // Two grips near the middle share that, no one of them is over 25 kg.
    EXPECT_NEAR(*numberAt(findings[0].values, "grip_kg"), 31.104 * 860 / 930 / 2, 1e-6);
    EXPECT_EQ(*numberAt(findings[0].values, "grips_over"), 0);
    EXPECT_EQ(gripsOver({{{0, 0}, 25.0}, {{1, 0}, 25.1}, {{2, 0}, -3.0}, {{3, 0}, 40.0}}, 25.0), (std::vector<std::size_t>{1, 3}));
    // Held at the ends, each bears half.
    plan = readOrThrow(R"(
        {"id":"C1","kind":"counter","at":[0,0],"turn_deg":0,"top_mm":900,"outline":[[0,0],[1800,0],[1800,180],[0,180]],
         "thickness_mm":40,"mix":"m","cast":"face_down","lift":{"people":2,"grips":[[40,40],[40,140],[1760,40],[1760,140]]}})");
    findings.clear();
    liftings(plan, cast(plan), findings);
    EXPECT_TRUE(findings.empty());
}

TEST(Grips, OfADividedCounterHoldTheirOwnPieces)
{
    const Plan plan = readOrThrow(R"(
        {"id":"C1","kind":"counter","at":[0,0],"turn_deg":0,"top_mm":900,"outline":[[0,0],[1800,0],[1800,400],[0,400]],
         "thickness_mm":40,"mix":"m","cast":"face_down","joints":[{"from":[900,0],"to":[900,400]}],
         "lift":{"grips":[[40,200],[800,200],[1000,200],[1700,200]]}})");
    std::vector<Finding> findings;
    const auto lifts = liftings(plan, cast(plan), findings);
    ASSERT_EQ(lifts.size(), 2U);
    EXPECT_THAT(lifts[0].grips, ElementsAre(Point{40, 200}, Point{800, 200}));
    EXPECT_THAT(lifts[1].grips, ElementsAre(Point{1000, 200}, Point{1700, 200}));
    EXPECT_EQ(lifts[1].loads.size(), 2U);
}

TEST(LoadsAt, TakeTheProposedGripsOnlyWhereThePlanHasNone)
{
    const Plan plan = readOrThrow(kTwoAlike);
    std::vector<Finding> findings;
    auto lift = liftings(plan, cast(plan), findings).at(0);
    EXPECT_TRUE(lift.loads.empty());
    const auto loads = lift.loadsAt({{0, 0}, {0, 600}, {1800, 0}, {1800, 600}});
    ASSERT_EQ(loads.size(), 4U);
    EXPECT_NEAR(loads[0].kg, 32.4, 1e-9);
}

}  // namespace
}  // namespace yardcast
