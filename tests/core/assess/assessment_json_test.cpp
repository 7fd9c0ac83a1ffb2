#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/assess/assess.h"
#include "core/assess/assessment_json.h"
#include "core/plan/edits.h"
#include "tests/core/assess/plans_for_tests.h"

namespace yardcast {
namespace {

using Json = nlohmann::json;

Json jsonOf(const Plan& plan, const FindingWords& words = {})
{
    return Json::parse(assessmentJson(plan, *assess(plan, exampleBook()), words));
}

TEST(AssessmentJson, HasTheKeysOfTheContractThatExist)
{
    const Json json = jsonOf(test::rowOfParts(10));
    EXPECT_EQ(json.at("yardcast_assessment"), 1);
    for (const char* key : {"castings", "mixes", "strength", "steel", "handling", "mould", "front", "shopping", "findings"}) {
        EXPECT_TRUE(json.contains(key)) << key;
    }
    for (const char* key : {"id", "part", "kind", "volume_l", "concrete_kg", "steel_kg", "filler_kg", "mass_kg",
                            "centroid_mm"}) {
        EXPECT_TRUE(json.at("castings").at(0).contains(key)) << key;
    }
    for (const char* key : {"mix", "volume_l", "bags", "extra_cement_kg", "silica_fume_kg", "plasticiser_kg", "water_l",
                            "fibres_kg", "water_cement", "batches", "bags_exact", "net_l", "litres_per_bag",
                            "water_binder", "k_value"}) {
        EXPECT_TRUE(json.at("mixes").at(0).contains(key)) << key;
    }
    for (const char* key : {"casting", "mass_kg", "people", "limit_kg", "grips"}) {
        EXPECT_TRUE(json.at("handling").at(0).contains(key)) << key;
    }
    for (const char* key : {"item", "group", "need", "unit", "packs", "pack", "price_minor", "leftover", "owned",
                            "estimate", "choice"}) {
        EXPECT_TRUE(json.at("shopping").at("lines").at(0).contains(key)) << key;
    }
    for (const char* key : {"code", "severity", "subjects", "text", "source", "remedies"}) {
        EXPECT_TRUE(json.at("findings").at(0).contains(key)) << key;
    }
}

TEST(AssessmentJson, TellsEveryBoardOfEveryMould)
{
    const Plan plan = test::rowOfParts(10);
    const AssessmentPtr assessment = assess(plan, exampleBook());
    const Json mould = jsonOf(plan).at("mould");
    ASSERT_EQ(mould.at("moulds").size(), assessment->castings.size());
    std::size_t parts = 0;
    for (const MouldPtr& one : assessment->moulds) parts += one->parts.size();
    ASSERT_EQ(mould.at("boards").size(), parts);
    for (const Json& board : mould.at("boards")) {
        for (const char* key : {"casting", "name", "length_mm", "width_mm", "thickness_mm", "count", "kind", "about",
                                "step"}) {
            EXPECT_TRUE(board.contains(key)) << key;
        }
        EXPECT_GT(board.at("length_mm").get<double>(), 0.0);
    }
    for (std::size_t i = 0; i < assessment->castings.size(); ++i) {
        const Json& one = mould.at("moulds").at(i);
        const Casting& casting = *assessment->castings[i].casting;
        EXPECT_EQ(one.at("casting"), casting.id);
        // What is poured into the boards, less the draft that the maker chose, is the casting (within the lattice of
        // the booleans).
        EXPECT_NEAR(one.at("volume_l").get<double>() - one.at("draft_l").get<double>(), casting.volumeL, 5e-4);
        for (const char* key : {"mirrored", "handed", "diagonals", "pressure", "twins", "check", "screws"}) {
            EXPECT_TRUE(one.contains(key)) << key;
        }
    }
    EXPECT_EQ(mould.at("estimate"), false);
}

TEST(AssessmentJson, TellsThePourDaysWeatherAndCuring)
{
    Plan plan = test::rowOfParts(10);
    plan.conditions.airC = 24;
    plan.conditions.lowC = 12;
    plan.conditions.highC = 30;
    plan.conditions.concreteC = 25;
    const Json json = jsonOf(plan);
    const Json& weather = json.at("weather");
    EXPECT_NEAR(weather.at("evaporation_kg_m2_h").get<double>(),
                evaporationKgM2H(25, 24, plan.conditions.humidityPercent / 100, plan.conditions.windKmh), 1e-6);
    ASSERT_EQ(weather.at("hours").size(), 24u);
    EXPECT_NEAR(weather.at("hours").at(5).at("air_c").get<double>(), 12, 1e-6);
    EXPECT_NEAR(weather.at("hours").at(15).at("air_c").get<double>(), 30, 1e-6);
    for (const char* key : {"limit_kg_m2_h", "uncertain_percent", "mix_c", "working_minutes", "best_start_h", "frost",
                            "cooling", "work_h"}) {
        EXPECT_TRUE(weather.contains(key)) << key;
    }
    ASSERT_EQ(json.at("curing").size(), json.at("mixes").size());
    EXPECT_GT(json.at("curing").at(0).at("days").get<double>(), 0.0);
    EXPECT_GT(json.at("curing").at(0).at("sheet_m2").get<double>(), 0.0);
}

TEST(AssessmentJson, LeavesOutWhatIsNotComputed)
{
    const Json json = jsonOf(test::rowOfParts(10));
    for (const char* key : {"levels", "days", "cuts"}) {
        EXPECT_FALSE(json.contains(key)) << key;
    }
}

TEST(AssessmentJson, CentroidsAreInPlanAxes)
{
    const Plan plan = test::rowOfParts(5);
    const Json before = jsonOf(plan).at("castings").at(0).at("centroid_mm");
    const Json after = jsonOf(moveParts(plan, {"C1"}, {100, -50})).at("castings").at(0).at("centroid_mm");
    EXPECT_NEAR(after[0].get<double>() - before[0].get<double>(), 100.0, 1e-5);
    EXPECT_NEAR(after[1].get<double>() - before[1].get<double>(), -50.0, 1e-5);
    EXPECT_NEAR(after[2].get<double>(), before[2].get<double>(), 1e-5);
}

TEST(AssessmentJson, PacksTimesPriceAreTheTotal)
{
    const Json shopping = jsonOf(test::rowOfParts(25)).at("shopping");
    std::int64_t total = 0;
    for (const Json& line : shopping.at("lines")) {
        std::int64_t price = 0;
        int packs = 0;
        for (const Json& choice : line.at("choice")) {
            price += choice.at("count").get<int>() * choice.at("price_minor").get<std::int64_t>();
            packs += choice.at("count").get<int>();
        }
        EXPECT_EQ(price, line.at("price_minor").get<std::int64_t>()) << line;
        EXPECT_EQ(packs, line.at("packs").get<int>()) << line;
        EXPECT_EQ(line.at("choice").size() == 1, line.at("pack").is_number()) << line;
        total += price;
    }
    EXPECT_EQ(total, shopping.at("total_minor").get<std::int64_t>());
}

TEST(AssessmentJson, WordsComeFromOutside)
{
    FindingWords words;
    words.text = [](const Finding& finding) { return "text of " + finding.code; };
    words.source = [](const Finding& finding) { return "source of " + finding.code; };
    const Json findings = jsonOf(test::rowOfParts(5), words).at("findings");
    ASSERT_FALSE(findings.empty());
    for (const Json& finding : findings) {
        EXPECT_EQ(finding.at("text"), "text of " + finding.at("code").get<std::string>());
        EXPECT_EQ(finding.at("source"), "source of " + finding.at("code").get<std::string>());
    }
}

TEST(AssessmentJson, EditsOfRemediesAreJson)
{
    Assessment assessment;
    Finding finding;
    finding.code = "c";
    finding.remedies = {{"r", {}, R"([{"op":"replace","path":"/title","value":"x"}])", "0.5 kg"},
                        {"advice", {}, "", ""}};
    assessment.findings = {finding};
    const Json remedies = Json::parse(assessmentJson({}, assessment, {})).at("findings").at(0).at("remedies");
    EXPECT_EQ(remedies.at(0).at("edit").at(0).at("path"), "/title");
    EXPECT_TRUE(remedies.at(1).at("edit").is_null());
    EXPECT_EQ(remedies.at(1).at("text"), "advice");
}

TEST(AssessmentJson, IllFormedTextIsStillJson)
{
    Plan plan = test::rowOfParts(5);
    plan.title = "\xff\xfe";
    EXPECT_NO_THROW(jsonOf(plan));
}

}  // namespace
}  // namespace yardcast
