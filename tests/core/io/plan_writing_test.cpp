#include <functional>

#include <gtest/gtest.h>

#include "core/io/json_text.h"
#include "core/io/plan_file.h"
#include "core/plan/edits.h"
#include "tests/core/io/full_plan.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast {
namespace {

using namespace samples;

Plan read(const std::string& text)
{
    PlanReading reading = readPlan(text);
    for (const Finding& problem : reading.problems) ADD_FAILURE() << problem.code << " " << problem.pointer;
    return reading.plan ? *reading.plan : Plan{};
}

Json written(const Plan& plan) { return Json::parse(writePlan(plan)); }

TEST(PlanWriting, AFileThatWasOnlyReadComesOutTheSame)
{
    EXPECT_EQ(written(read(kFullPlan)), Json::parse(kFullPlan)) << "keys, their order, values and tokens";
}

TEST(PlanWriting, WritingIsStable)
{
    const std::string once = writePlan(read(kFullPlan));
    EXPECT_EQ(writePlan(read(once)), once);
    EXPECT_EQ(once.back(), '\n');
}

/// A plan text with an unknown key put first and another last in every object.
Json withUnknownKeys(const Json& value, int& count)
{
    if (value.is_array()) {
        Json list = Json::array();
        for (const Json& element : value) list.push_back(withUnknownKeys(element, count));
        return list;
    }
    if (!value.is_object()) return value;
    Json object = Json::object();
    object["x_first"] = Json{{"n", ++count}, {"deep", Json::array({1.0, nullptr, "x"})}};
    for (const auto& [key, member] : value.items()) object[key] = withUnknownKeys(member, count);
    object["note/last~"] = ++count;
    return object;
}

TEST(PlanWriting, UnknownKeysStayInPlaceAtEveryLevel)
{
    int count = 0;
    const Json strange = withUnknownKeys(Json::parse(kFullPlan), count);
    EXPECT_GT(count, 80);
    const Plan plan = read(strange.dump());
    EXPECT_EQ(written(plan), strange);
    EXPECT_EQ(read(writePlan(plan)), plan);
    EXPECT_FALSE(plan == read(kFullPlan)) << "unknown keys are part of a plan";
}

TEST(PlanWriting, UnknownKeysStayWhenValuesChange)
{
    int count = 0;
    Json expected = withUnknownKeys(Json::parse(kFullPlan), count);
    Plan plan = read(expected.dump());
    plan = changeCounter(plan, "C1", [](Counter& c) { c.rim->depthMm = 80; });
    plan = changeCutout(plan, "C1", "K1", [](Cutout& c) { c.centre = {610, 330.5}; });
    plan = moveParts(plan, {"S1"}, {0.25, 0});
    expected["parts"][0]["rim"]["depth_mm"] = 80;
    expected["parts"][0]["cutouts"][0]["centre"] = Json::array({610, 330.5});
    expected["parts"][1]["at"] = Json::array({600.25, 1200});
    EXPECT_EQ(written(plan), expected);
}

TEST(PlanWriting, RemovedPartsAndCutoutsLeaveNothingBehind)
{
    Json expected = Json::parse(kFullPlan);
    Plan plan = removeCutout(removeParts(read(kFullPlan), {"S1", "P1"}), "C1", "K1");
    expected["parts"].erase(2);
    expected["parts"].erase(1);
    expected["parts"][0]["cutouts"].erase(0);
    EXPECT_EQ(written(plan), expected);
}

TEST(PlanWriting, NumbersKeepTheirTokens)
{
    const std::string text = R"({"yardplan": 1.0, "crew": {"people": 4.0, "lift_limit_kg": 25.0},
        "conditions": {"air_c": 20, "wind_kmh": 2.5, "concrete_c": 1e2}})";
    EXPECT_EQ(writePlan(read(text)), R"({
  "yardplan": 1.0,
  "crew": {
    "people": 4.0,
    "lift_limit_kg": 25.0
  },
  "conditions": {
    "air_c": 20,
    "wind_kmh": 2.5,
    "concrete_c": 100.0
  }
}
)");
}

TEST(PlanWriting, ChangedNumbersAreWrittenShort)
{
    Plan plan = read(R"({"yardplan": 1, "conditions": {"air_c": 20.0, "wind_kmh": 2.5}})");
    plan.conditions.airC = 21.0;
    plan.conditions.windKmh = 0.1 + 0.2;
    const std::string text = writePlan(plan);
    EXPECT_NE(text.find("\"air_c\": 21,"), std::string::npos) << text;
    EXPECT_EQ(read(text).conditions.windKmh, 0.1 + 0.2);
}

TEST(PlanWriting, AbsentKeysStayAbsentUntilTheySayMore)
{
    const std::string least = R"({"yardplan": 1, "parts": [{"id": "A1", "kind": "appliance", "size": [5, 6]}]})";
    Plan plan = read(least);
    EXPECT_EQ(written(plan), Json::parse(least));
    plan.currency = "USD";
    plan.crew.people = 3;
    plan = moveParts(plan, {"A1"}, {10, 0});
    EXPECT_EQ(written(plan).dump(),
              R"({"yardplan":1,"parts":[{"id":"A1","kind":"appliance","size":[5,6],"at":[10,0]}],)"
              R"("currency":"USD","crew":{"people":3,"lift_limit_kg":25}})");
}

TEST(PlanWriting, EmptyListsThatStoodThereStay)
{
    const std::string text =
        R"({"yardplan":1,"site":{"fixtures":[]},"mixes":[],"parts":[{"id":"C1","kind":"counter",)"
        R"("outline":[],"thickness_mm":4,"cutouts":[],"steel":{"bars":[]},"ribs":[]}],"owned":[]})";
    EXPECT_EQ(written(read(text)).dump(), text);
}

TEST(PlanWriting, OptionalKeysGoWithTheirValue)
{
    Json expected = Json::parse(kFullPlan);
    Plan plan = changeCounter(read(kFullPlan), "C1", [](Counter& c) {
        c.rim.reset();
        c.cutouts[0].rimMm.reset();
        c.lift->people.reset();
        c.steel->mesh.reset();
        c.ribs.clear();
    });
    plan.mixer.reset();
    plan = changePart(plan, "C1", [](Part& p) { p.name.reset(); });
    expected.erase("mixer");
    Json& counter = expected["parts"][0];
    counter.erase("name");
    counter.erase("rim");
    counter["cutouts"][0].erase("rim_mm");
    counter["lift"].erase("people");
    counter["steel"].erase("mesh");
    counter["ribs"] = Json::array();
    EXPECT_EQ(written(plan), expected);
}

TEST(PlanWriting, WhatWasMadeInTheProgramHasEveryKeyInTheOrderOfTheContract)
{
    Plan plan = twoSupports();
    plan.title = "New";
    const Json json = written(plan);
    std::vector<std::string> keys;
    for (const auto& [key, member] : json.items()) keys.push_back(key);
    EXPECT_EQ(keys, (std::vector<std::string>{"yardplan", "title", "currency", "site", "conditions", "crew", "mixes",
                                              "parts"}));
    keys.clear();
    for (const auto& [key, member] : json["parts"][0].items()) keys.push_back(key);
    EXPECT_EQ(keys, (std::vector<std::string>{"id", "kind", "at", "turn_deg", "top_mm", "outline", "thickness_mm",
                                              "cutouts", "mix", "cast"}));
    EXPECT_EQ(read(writePlan(plan)), plan);
}

TEST(PlanWriting, NumbersThatAreNoneDoNotSpoilTheFile)
{
    Plan plan = moveParts(read(kFullPlan), {"S1"}, {std::nan(""), 0});
    plan = changeCounter(plan, "C1", [](Counter& c) { c.outline.push_back({INFINITY, 1}); });
    const Plan again = read(writePlan(plan));
    EXPECT_EQ(findPart(again, "S1")->place.at, (Point{600, 1200})) << "what the file had";
    EXPECT_EQ(body<Counter>(again, "C1").outline.back(), (Point{0, 1}));
}

TEST(PlanWriting, StringsThatAreNoUtf8DoNotSpoilTheFile)
{
    Plan plan = twoSupports();
    plan.title = "caf\xe9";
    EXPECT_EQ(read(writePlan(plan)).title, "caf\xEF\xBF\xBD");
}

TEST(PlanWriting, CopiesTakeUnknownKeysAlong)
{
    const Plan plan = read(R"({"yardplan": 1, "parts": [
        {"id": "A1", "mine": {"k": 1}, "kind": "appliance", "size": [5, 6]}]})");
    const Json json = written(duplicateParts(plan, {"A1"}, {7, 0}));
    EXPECT_EQ(json["parts"][1].dump(),
              R"({"id":"A2","mine":{"k":1},"kind":"appliance","size":[5,6],"at":[7,0]})");
}

TEST(PlanWriting, ByteOrderMarkIsNotWritten)
{
    const Plan plan = read(std::string("\xEF\xBB\xBF") + kFullPlan);
    EXPECT_EQ(writePlan(plan), writePlan(read(kFullPlan)));
}

}  // namespace
}  // namespace yardcast
