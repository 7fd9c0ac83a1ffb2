#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <clocale>
#include <cmath>
#include <locale>
#include <map>

#include <nlohmann/json.hpp>

#include "core/assess/assess.h"
#include "core/assess/assessment_json.h"
#include "core/assess/strength_assessor.h"

namespace yardcast {
namespace {

using testing::ElementsAre;

nlohmann::json parsed(const Assessment& assessment)
{
    return nlohmann::json::parse(assessmentJson({}, assessment, {}));
}

CaseResult fakeResult(StrengthCase which)
{
    CaseResult result;
    result.which = which;
    result.ageH = 48.0;
    result.factor = 1.3;
    result.suctionKpa = 1.0;
    result.elasticMpa = 27500.5;
    result.deflectionMm = 0.4125;
    result.tensionTopMpa = 1.25;
    result.tensionBottomMpa = 0.5;
    result.strengthMpa = 1.75;
    result.usePercent = 71.4285714285;
    result.at = {900.0, 45.5};
    result.place = {PlaceKind::stripInFront, "K1", ""};
    result.onFace = true;
    result.sections = {{{PlaceKind::middleOfSpan, "S1", "S2"}, {900.0, 0.0}, {900.0, 620.0}, -123.5, 0.25, 0.125, 620.0,
                        1.0, 60.0}};
    result.held = {{"S1", {}, {50.0, 310.0}, 412.5, false, 1.0}, {"S2", {}, {1750.0, 310.0}, 0.0, true, 0.0}};
    return result;
}

CastingStrengthPtr fakeStrength()
{
    auto strength = std::make_shared<CastingStrength>();
    strength->casting = "C1.1";
    strength->part = "C1";
    strength->refinement = Refinement::printed;
    strength->cases = {fakeResult(StrengthCase::ownWeight), fakeResult(StrengthCase::tilt)};
    strength->cases[1].edge = 2;
    SteelCheck check;
    check.which = StrengthCase::inPlace;
    check.name = {PlaceKind::over, "S1", ""};
    check.tensionAtFace = true;
    check.designMomentN = 500.0;
    check.crackingMomentN = 800.0;
    check.resistanceN = 300.0;
    check.breaksWithoutWarning = true;
    strength->steel = {check};
    strength->grips = {{300.0, 60.0}};
    strength->gripsProposed = true;
    return strength;
}

struct Commas : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

/// A slab on two supports, with something heavy on it.
Plan slabOnTwoSupports()
{
    Plan plan;
    Mix mix;
    mix.id = "worktop";
    plan.mixes = {mix};
    Counter counter;
    counter.topMm = 900.0;
    counter.thicknessMm = 40.0;
    counter.outline = {{0, 0}, {1200, 0}, {1200, 600}, {0, 600}};
    counter.mix = "worktop";
    counter.loads = {{"oven", {600, 300}, {300, 300}, 40.0, {}}};
    const auto add = [&](const char* id, Point at, PartBody body) {
        auto part = std::make_shared<Part>();
        part->id = id;
        part->place.at = at;
        part->body = std::move(body);
        plan.parts.push_back(part);
    };
    add("C1", {0, 0}, counter);
    for (const double x : {100.0, 1000.0}) {
        Support support;
        support.lengthMm = 100.0;
        support.widthMm = 600.0;
        support.heightMm = 860.0;
        support.mix = "worktop";
        add(x < 500.0 ? "S1" : "S2", {x, 0.0}, support);
    }
    return plan;
}

TEST(StrengthJson, HasEveryKeyOfTheContractWithItsValue)
{
    Assessment assessment;
    assessment.strength = {fakeStrength()};
    const nlohmann::json json = parsed(assessment).at("strength").at(1);
    EXPECT_EQ(json.at("casting"), "C1.1");
    EXPECT_EQ(json.at("case"), "tilt");
    const std::map<std::string, double> figures{{"age_h", 48.0},          {"factor", 1.3},
                                                {"suction_kpa", 1.0},     {"elastic_mpa", 27500.5},
                                                {"deflection_mm", 0.4125}, {"tension_top_mpa", 1.25},
                                                {"tension_bottom_mpa", 0.5}, {"strength_mpa", 1.75},
                                                {"use_percent", 71.428571}};
    for (const auto& [key, value] : figures) EXPECT_DOUBLE_EQ(json.at(key).get<double>(), value) << key;
    EXPECT_THAT(json.at("where").at("at"), ElementsAre(900.0, 45.5));
    EXPECT_EQ(json.at("where").at("name"), "strip in front of K1");
    const nlohmann::json section = json.at("sections").at(0);
    EXPECT_EQ(section.at("name"), "middle of span S1-S2");
    EXPECT_THAT(section.at("cut").at("from"), ElementsAre(900.0, 0.0));
    EXPECT_THAT(section.at("cut").at("to"), ElementsAre(900.0, 620.0));
    EXPECT_DOUBLE_EQ(section.at("mean_moment_n").get<double>(), -123.5);
    EXPECT_DOUBLE_EQ(section.at("mean_force_n_per_mm").get<double>(), 0.25);
    EXPECT_EQ(json.at("reactions").at(0).at("under"), "S1");
    EXPECT_DOUBLE_EQ(json.at("reactions").at(0).at("n").get<double>(), 412.5);
    EXPECT_THAT(json.at("lifts_off"), ElementsAre("S2"));
    EXPECT_EQ(json.at("governs"), "face");
    EXPECT_EQ(json.at("edge"), 2);
    EXPECT_TRUE(parsed(assessment).at("strength").at(0).at("edge").is_null());
}

TEST(StrengthJson, CasesHaveTheWordsOfTheContract)
{
    auto strength = std::make_shared<CastingStrength>();
    for (const StrengthCase which :
         {StrengthCase::ownWeight, StrengthCase::inPlace, StrengthCase::suction, StrengthCase::tilt,
          StrengthCase::carriedFlat, StrengthCase::carriedOnEdge, StrengthCase::setDown}) {
        strength->cases.push_back(fakeResult(which));
    }
    Assessment assessment;
    assessment.strength = {strength};
    std::vector<std::string> words;
    const nlohmann::json json = parsed(assessment);
    for (const nlohmann::json& one : json.at("strength")) words.push_back(one.at("case"));
    EXPECT_THAT(words, ElementsAre("own_weight", "in_place", "suction", "tilt", "carried_flat", "carried_on_edge",
                                   "set_down"));
}

TEST(StrengthJson, ChecksOfSteelAndGripsAreTold)
{
    Assessment assessment;
    assessment.strength = {fakeStrength(), nullptr};
    const nlohmann::json json = parsed(assessment);
    const nlohmann::json check = json.at("steel").at("checks").at(0);
    EXPECT_EQ(check.at("casting"), "C1.1");
    EXPECT_EQ(check.at("name"), "over S1");
    EXPECT_EQ(check.at("needed_at"), "face");
    EXPECT_TRUE(check.at("breaks_without_warning").get<bool>());
    EXPECT_DOUBLE_EQ(check.at("resistance_n").get<double>(), 300.0);
    const nlohmann::json whole = json.at("strength_castings").at(0);
    EXPECT_EQ(whole.at("refinement"), "printed");
    EXPECT_TRUE(whole.at("grips_proposed").get<bool>());
    EXPECT_THAT(whole.at("grips").at(0), ElementsAre(300.0, 60.0));
    EXPECT_FALSE(json.at("steel").at("fibres_counted").get<bool>());
}

TEST(StrengthJson, WithoutStrengthTheListIsEmpty)
{
    EXPECT_TRUE(parsed({}).at("strength").empty());
}

TEST(StrengthJson, FiguresHaveADecimalPointInAnyLocale)
{
    Assessment assessment;
    assessment.strength = {fakeStrength()};
    const std::string before = assessmentJson({}, assessment, {});
    // Of both kinds of locale: the one of streams, and the one of printf where a system has such a one.
    const std::locale usual = std::locale::global(std::locale(std::locale::classic(), new Commas));
    const char* named = std::setlocale(LC_NUMERIC, nullptr);
    const std::string kept = named ? named : "C";
    for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8"}) {
        if (std::setlocale(LC_NUMERIC, name)) break;
    }
    const std::string after = assessmentJson({}, assessment, {});
    std::setlocale(LC_NUMERIC, kept.c_str());
    std::locale::global(usual);
    EXPECT_EQ(before, after);
    EXPECT_NE(before.find("0.4125"), std::string::npos);
}

TEST(StrengthJson, WhatIsNoNumberIsNull)
{
    auto strength = std::make_shared<CastingStrength>(*fakeStrength());
    strength->cases[0].deflectionMm = std::nan("");
    Assessment assessment;
    assessment.strength = {strength};
    EXPECT_TRUE(parsed(assessment).at("strength").at(0).at("deflection_mm").is_null());
}

/// The true solver: each case of each casting once, and what holds a counter in place carries its weight.
TEST(StrengthJson, TheSolversAnswersAreAllThere)
{
    const Plan plan = slabOnTwoSupports();
    const AssessmentPtr bare = assess(plan, exampleBook());
    const auto solved = StrengthAssessor().assess(plan, *bare, Refinement::draft);
    ASSERT_TRUE(solved);
    const AssessmentPtr whole = withStrength(plan, bare, *solved);
    const nlohmann::json json = nlohmann::json::parse(assessmentJson(plan, *whole, {}));
    std::size_t cases = 0;
    for (const CastingStrengthPtr& one : whole->strength) cases += one->cases.size();
    ASSERT_EQ(json.at("strength").size(), cases);

    const nlohmann::json& slab = json.at("castings").at(0);
    ASSERT_EQ(slab.at("id"), "C1");
    const auto ownWeight = std::find_if(json.at("strength").begin(), json.at("strength").end(), [](const auto& one) {
        return one.at("casting") == "C1" && one.at("case") == "own_weight";
    });
    ASSERT_NE(ownWeight, json.at("strength").end());
    double sum = 0.0;
    for (const nlohmann::json& reaction : ownWeight->at("reactions")) sum += reaction.at("n").get<double>();
    // The solver weighs zones of concrete on its mesh: within half a percent.
    const double weightN = (slab.at("mass_kg").get<double>() + 40.0) * 9.81;
    EXPECT_NEAR(sum, weightN, 0.005 * weightN);
    EXPECT_EQ(ownWeight->at("factor"), 1.0);
    EXPECT_EQ(ownWeight->at("age_h"), 672.0);
    EXPECT_GT(ownWeight->at("use_percent").get<double>(), 0.0);
    EXPECT_FALSE(ownWeight->at("sections").empty());
}

TEST(SteelJson, LayoutsHoldWhatIsCutAndWhereItLies)
{
    Assessment assessment;
    auto layout = std::make_shared<CastingSteelLayout>();
    layout->casting = "C1";
    layout->part = "C1";
    MeshLayout mesh;
    mesh.barMm = 4.0;
    mesh.pitchMm = 50.0;
    mesh.sheets = 1;
    mesh.lapMm = 150.0;
    mesh.material = SteelMaterial::stainless;
    mesh.height.distanceMm = 20.0;
    mesh.height.side = SteelSide::middle;
    MeshPiece piece;
    piece.at = {{20.0, 20.0}, {1780.0, 600.0}};
    mesh.pieces = {piece};
    layout->meshes = {mesh};
    LaidBar bar;
    bar.from = {40.0, 30.0};
    bar.to = {1760.0, 30.0};
    bar.diameterMm = 8.0;
    layout->bars = {bar};
    CornerBar corner;
    corner.bar = bar;
    corner.of = "K1";
    corner.anchoredShare = 0.75;
    layout->cornerBars = {corner};
    layout->barList = {{1, SteelMaterial::steel, 8.0, "00", 1, 1723.0, 1720.0, 1725.0, 0.68, false}};
    assessment.steel.layouts = {layout};
    const nlohmann::json json = parsed(assessment).at("steel").at("layouts").at(0);
    EXPECT_EQ(json.at("datum"), "mould_base");
    EXPECT_TRUE(json.at("face_down").get<bool>());
    const nlohmann::json laid = json.at("mesh").at(0);
    EXPECT_EQ(laid.at("material"), "stainless");
    EXPECT_DOUBLE_EQ(laid.at("lap_mm").get<double>(), 150.0);
    EXPECT_DOUBLE_EQ(laid.at("height").at("from_datum_mm").get<double>(), 20.0);
    EXPECT_EQ(laid.at("height").at("side"), "middle");
    EXPECT_THAT(laid.at("pieces").at(0).at("at"), ElementsAre(20.0, 20.0));
    EXPECT_THAT(laid.at("pieces").at(0).at("size"), ElementsAre(1760.0, 580.0));
    EXPECT_THAT(json.at("bars").at(0).at("to"), ElementsAre(1760.0, 30.0));
    EXPECT_EQ(json.at("corner_bars").at(0).at("of"), "K1");
    EXPECT_DOUBLE_EQ(json.at("bar_list").at(0).at("cut_length_mm").get<double>(), 1720.0);
    EXPECT_EQ(json.at("bar_list").at(0).at("shape_code"), "00");
}

}  // namespace
}  // namespace yardcast
