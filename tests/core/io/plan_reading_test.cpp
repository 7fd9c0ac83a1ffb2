#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/io/json_text.h"
#include "core/io/plan_file.h"
#include "tests/core/io/full_plan.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast {
namespace {

using namespace samples;
using ::testing::ElementsAre;

std::string word(const Finding& finding, const std::string& key)
{
    const auto found = finding.values.find(key);
    return found == finding.values.end() ? "(none)" : std::get<std::string>(found->second);
}

TEST(PlanReading, EveryKeyArrives)
{
    const PlanReading reading = readPlan(kFullPlan);
    ASSERT_TRUE(reading.problems.empty()) << reading.problems[0].code << " " << reading.problems[0].pointer;
    const Plan& plan = *reading.plan;
    EXPECT_EQ(plan.title, "Kitchen by the pear tree");
    EXPECT_EQ(plan.currency, "CHF");
    EXPECT_EQ(plan.site.outline->at(2), (Point{6000, 4000}));
    EXPECT_EQ(plan.site.ground->levelMm, -12.0);
    EXPECT_EQ(plan.site.ground->fallPercent, 1.5);
    EXPECT_EQ(plan.site.ground->fallTowardsDeg, 250.0);
    ASSERT_EQ(plan.site.fixtures.size(), 8u);
    EXPECT_EQ(plan.site.fixtures[3].kind, FixtureKind::gas);
    EXPECT_EQ(plan.site.fixtures[3].size, (Size{300, 300}));
    EXPECT_FALSE(plan.site.fixtures[0].size);
    EXPECT_EQ(plan.conditions.airC, 24.5);
    EXPECT_EQ(plan.conditions.highC, 29.0);
    EXPECT_EQ(plan.conditions.lowC, 13.0);
    EXPECT_EQ(plan.conditions.humidityPercent, 48.0);
    EXPECT_EQ(plan.conditions.windKmh, 11.0);
    EXPECT_EQ(plan.conditions.concreteC, 23.0);
    EXPECT_EQ(plan.crew.people, 3);
    EXPECT_EQ(plan.crew.liftLimitKg, 22.5);
    EXPECT_EQ(plan.mixer->drumL, 120.0);
    EXPECT_EQ(plan.mixer->batchMinutes, 10.0);
    EXPECT_EQ(plan.budget->limit, 1100.5);
    EXPECT_EQ(plan.budget->quote, 6400.0);
    const Mix& mix = plan.mixes.at(0);
    EXPECT_EQ(mix.bag.massKg, 25.0);
    EXPECT_EQ(mix.bag.yieldL, 11.8);
    EXPECT_EQ(mix.bag.waterL, 2.7);
    EXPECT_EQ(mix.bag.cementKg, 4.4);
    EXPECT_EQ(mix.bag.maxAggregateMm, 4.0);
    EXPECT_EQ(mix.strengthClass, "C30/37");
    EXPECT_EQ(mix.cementSpeed, CementSpeed::rapid);
    EXPECT_EQ(mix.extraCementPercent, 4.0);
    EXPECT_EQ(mix.silicaFumePercent, 8.0);
    EXPECT_EQ(mix.plasticiserPercent, 1.2);
    EXPECT_EQ(mix.fibres.at(1).kind, "PP");
    EXPECT_EQ(mix.fibres.at(1).kgPerM3, 0.9);
    EXPECT_EQ(mix.maxWaterCement, 0.45);
    EXPECT_EQ(mix.allowancePercent, 10.0);
    EXPECT_EQ(mix.pigmentPercent, 2.5);
    EXPECT_EQ(mix.airPercent, 4.5);
    EXPECT_EQ(mix.bag.yieldSpreadPercent, 5.0);
    ASSERT_TRUE(mix.trial);
    EXPECT_EQ(mix.trial->bucketL, 10.0);
    EXPECT_EQ(mix.trial->concreteKg, 22.6);
    EXPECT_EQ(mix.trial->waterL, 2.75);
    const Mix& own = plan.mixes.at(2);
    ASSERT_TRUE(own.recipe);
    EXPECT_EQ(own.recipe->cementKgM3, 360.0);
    EXPECT_EQ(own.recipe->waterLM3, 160.0);
    EXPECT_EQ(own.recipe->sandPercent, 48.0);
    EXPECT_EQ(own.recipe->sand.moisturePercent, 4.0);
    EXPECT_EQ(own.recipe->gravel.densityKgM3, 2700.0);
    EXPECT_EQ(own.recipe->gravel.absorptionPercent, 0.5);
    EXPECT_EQ(maxAggregateMm(own), 16.0);
    EXPECT_EQ(own.recipe->cementBagKg, 20.0);
    // (25 + 2.9) kg at 2240 kg/m3.
    EXPECT_NEAR(bagYieldL(plan.mixes.at(3).bag), 12.4554, 1e-4);
    EXPECT_EQ(plan.conditions.waterC, 12.0);
    EXPECT_EQ(plan.conditions.icePercent, 15.0);
    EXPECT_EQ(plan.conditions.materialsC, 21.0);
    EXPECT_EQ(plan.conditions.measured.at(1).h, 6.5);
    EXPECT_EQ(plan.conditions.measured.at(1).c, 28.0);
    EXPECT_EQ(plan.mixer->usablePercent, 60.0);
    ASSERT_TRUE(plan.pouring);
    EXPECT_EQ(plan.pouring->startH, 6.5);
    EXPECT_EQ(plan.pouring->hours, 7.0);
    EXPECT_EQ(plan.pouring->order, (std::vector<std::string>{"C1", "S1"}));
    EXPECT_EQ(plan.pouring->moulds, 3);
    EXPECT_EQ(plan.pouring->workingMinutes, 60.0);
    EXPECT_EQ(plan.season.at(1).month, 6);
    EXPECT_EQ(plan.season.at(1).lowC, 11.0);
    EXPECT_EQ(plan.season.at(0).windKmh, 12.0);
    ASSERT_TRUE(plan.assumptions);
    EXPECT_EQ(plan.assumptions->bedNMm3, 4.0);
    EXPECT_EQ(plan.assumptions->strippingFactor, 1.4);
    EXPECT_EQ(plan.assumptions->handlingFactor, 1.2);
    EXPECT_EQ(plan.assumptions->mouldSurface, MouldSurface::rough);
    EXPECT_EQ(plan.assumptions->suctionKpa, 2.5);
    EXPECT_EQ(plan.assumptions->crackSafety, 1.7);
    EXPECT_EQ(plan.assumptions->evenLoadKpa, 3.0);
    EXPECT_EQ(plan.assumptions->personN, 900.0);
    EXPECT_EQ(plan.assumptions->exposure, Exposure::xd3);
    EXPECT_EQ(plan.assumptions->lateCornerMm, 15.0);
    EXPECT_EQ(plan.assumptions->frost, Frost::xf4);
    EXPECT_EQ(plan.assumptions->curingClass, 4);
    EXPECT_EQ(plan.assumptions->stripMpa, 12.0);
    EXPECT_EQ(plan.owned.at(0).item, "mesh");
    EXPECT_EQ(plan.owned.at(0).amount, 1.5);
    EXPECT_EQ(plan.prices.at(0).item, "dry_mix");
    EXPECT_EQ(plan.prices.at(0).packSize, 25.0);
    EXPECT_EQ(plan.prices.at(0).price, 5.35);
}

TEST(PlanReading, EveryKeyOfACounterArrives)
{
    const Plan plan = *readPlan(kFullPlan).plan;
    const Part& part = *findPart(plan, "C1");
    EXPECT_EQ(part.name, "long bench");
    EXPECT_EQ(part.place, (Placement{{500, 1200}, 0.5}));
    const auto& c = std::get<Counter>(part.body);
    EXPECT_EQ(c.topMm, 905.0);
    EXPECT_EQ(c.outline.size(), 4u);
    EXPECT_EQ(c.thicknessMm, 38.0);
    EXPECT_EQ(c.rim->depthMm, 70.0);
    EXPECT_EQ(c.rim->widthMm, 55.0);
    EXPECT_THAT(*c.rim->edges, ElementsAre(0, 1, 3));
    EXPECT_EQ(c.filler->densityKgM3, 30.0);
    EXPECT_FALSE(c.filler->stays);
    EXPECT_EQ(c.ribs.at(0).from, (Point{1200, 0}));
    EXPECT_EQ(c.ribs.at(0).to, (Point{1200, 640}));
    EXPECT_EQ(c.ribs.at(0).widthMm, 90.0);
    ASSERT_EQ(c.cutouts.size(), 5u);
    EXPECT_EQ(c.cutouts[0].id, "K1");
    EXPECT_EQ(c.cutouts[0].purpose, CutoutPurpose::sink);
    EXPECT_EQ(c.cutouts[0].shape, CutoutShape::rectangle);
    EXPECT_EQ(c.cutouts[0].centre, (Point{600, 330}));
    EXPECT_EQ(c.cutouts[0].size, (Size{520, 390}));
    EXPECT_EQ(c.cutouts[0].turnDeg, 2.0);
    EXPECT_EQ(c.cutouts[0].cornerRadiusMm, 25.0);
    EXPECT_EQ(c.cutouts[0].rimMm, 50.0);
    EXPECT_EQ(c.cutouts[1].shape, CutoutShape::circle);
    EXPECT_EQ(c.cutouts[1].diameterMm, 35.0);
    EXPECT_FALSE(c.cutouts[1].rimMm);
    EXPECT_EQ(c.joints.at(0).gapMm, 5.0);
    EXPECT_EQ(c.mix, "worktop");
    EXPECT_EQ(c.cast, CounterCast::faceUp);
    EXPECT_EQ(c.steel->mesh->barMm, 3.0);
    EXPECT_EQ(c.steel->mesh->pitchMm, 40.0);
    EXPECT_EQ(c.steel->mesh->coverMm, 18.0);
    EXPECT_EQ(c.steel->mesh->material, SteelMaterial::basalt);
    const BarGroup& bars = c.steel->bars.at(0);
    EXPECT_EQ(bars.diameterMm, 6.0);
    EXPECT_EQ(bars.count, 2);
    EXPECT_EQ(bars.spacingMm, 30.0);
    EXPECT_EQ(bars.coverMm, 25.0);
    EXPECT_EQ(bars.material, SteelMaterial::stainless);
    EXPECT_EQ(c.loads.at(0).name, "oven");
    EXPECT_EQ(c.loads.at(0).centre, (Point{2200, 320}));
    EXPECT_EQ(c.loads.at(0).size, (Size{300, 400}));
    EXPECT_EQ(c.loads.at(0).massKg, 45.0);
    EXPECT_EQ(c.imposed, Imposed::person);
    EXPECT_EQ(c.lift->ageH, 60.0);
    EXPECT_THAT(c.lift->grips, ElementsAre(Point{200, 0}, Point{2200, 0}));
    EXPECT_EQ(c.lift->people, 4);
}

TEST(PlanReading, EveryKeyOfTheOtherKindsArrives)
{
    const Plan plan = *readPlan(kFullPlan).plan;
    const auto& s = body<Support>(plan, "S1");
    EXPECT_EQ(s.lengthMm, 600.0);
    EXPECT_EQ(s.widthMm, 110.0);
    EXPECT_EQ(s.baseMm, 10.0);
    EXPECT_EQ(s.heightMm, 815.0);
    EXPECT_EQ(s.core->lengthMm, 440.0);
    EXPECT_EQ(s.core->heightMm, 640.0);
    EXPECT_EQ(s.core->thicknessMm, 45.0);
    EXPECT_EQ(s.core->densityKgM3, 25.0);
    EXPECT_EQ(s.mix, "body");
    EXPECT_EQ(s.cast, UprightCast::upright);
    EXPECT_EQ(s.pads->count, 3);
    EXPECT_EQ(s.pads->size, (Size{90, 100}));
    EXPECT_EQ(s.pads->thicknessMm, 10.0);
    const auto& p = body<Panel>(plan, "P1");
    EXPECT_EQ(p.lengthMm, 2000.0);
    EXPECT_EQ(p.thicknessMm, 45.0);
    EXPECT_EQ(p.baseMm, 905.0);
    EXPECT_EQ(p.heightMm, 320.0);
    EXPECT_TRUE(p.core);
    EXPECT_TRUE(p.steel->mesh);
    const auto& f = body<Front>(plan, "F1");
    EXPECT_EQ(f.to, (Point{1500, 0}));
    EXPECT_EQ(f.bottomMm, 70.0);
    EXPECT_EQ(f.topMm, 820.0);
    EXPECT_EQ(f.batten.widthMm, 44.0);
    EXPECT_EQ(f.batten.thicknessMm, 26.0);
    EXPECT_EQ(f.batten.gapMm, 7.0);
    EXPECT_EQ(f.batten.run, BattenRun::level);
    EXPECT_EQ(f.batten.bevelDeg, 15.0);
    EXPECT_EQ(f.batten.species, "oak");
    EXPECT_EQ(f.doors.at(0).fromMm, 100.0);
    EXPECT_EQ(f.doors.at(0).toMm, 700.0);
    EXPECT_EQ(f.doors.at(0).hinges, HingeSide::right);
    EXPECT_EQ(f.measured->bottomMm, 1500.0);
    EXPECT_EQ(f.measured->topMm, 1501.0);
    EXPECT_EQ(f.measured->leftMm, 750.0);
    EXPECT_EQ(f.measured->rightMm, 751.0);
    EXPECT_EQ(f.measured->diagonalRisingMm, 1677.0);
    EXPECT_EQ(f.measured->diagonalFallingMm, 1678.0);
    const auto& a = body<Appliance>(plan, "A1");
    EXPECT_EQ(a.on, "C1");
    EXPECT_EQ(a.size, (Size{300, 400}));
    EXPECT_EQ(a.heightMm, 350.0);
    EXPECT_EQ(a.massKg, 45.0);
    EXPECT_EQ(a.surfaceC, 180.0);
    EXPECT_EQ(a.clearanceMm, 60.0);
}

TEST(PlanReading, TheLeastPlanHasTheDocumentedDefaults)
{
    const PlanReading reading = readPlan(R"({"yardplan": 1})");
    ASSERT_TRUE(reading.plan);
    EXPECT_EQ(*reading.plan, Plan{});
}

TEST(PlanReading, TheLeastPartsHaveTheDocumentedDefaults)
{
    const PlanReading reading = readPlan(R"({"yardplan": 1, "mixes": [
        {"id": "m", "bag": {"mass_kg": 25, "yield_l": 12, "water_l": 2.6, "cement_kg": 4}}], "parts": [
        {"id": "C", "kind": "counter", "outline": [[0,0],[1,0],[1,1]], "thickness_mm": 40},
        {"id": "S", "kind": "support", "length_mm": 1, "width_mm": 2, "height_mm": 3},
        {"id": "P", "kind": "panel", "length_mm": 1, "thickness_mm": 2, "height_mm": 3},
        {"id": "F", "kind": "front", "from": [0,0], "to": [1,0]},
        {"id": "A", "kind": "appliance", "size": [1,2]}]})");
    ASSERT_TRUE(reading.plan) << reading.problems[0].code << " " << reading.problems[0].pointer;
    const Plan& plan = *reading.plan;
    EXPECT_EQ(plan.mixes[0].strengthClass, "C25/30");
    EXPECT_EQ(plan.mixes[0].cementSpeed, CementSpeed::normal);
    EXPECT_EQ(plan.mixes[0].extraCementPercent, 0.0);
    EXPECT_EQ(plan.mixes[0].maxWaterCement, 0.50);
    EXPECT_EQ(plan.mixes[0].allowancePercent, 8.0);
    EXPECT_EQ(findPart(plan, "C")->place, Placement{});
    EXPECT_EQ(body<Counter>(plan, "C").topMm, 900.0);
    EXPECT_EQ(body<Counter>(plan, "C").cast, CounterCast::faceDown);
    EXPECT_EQ(body<Support>(plan, "S").cast, UprightCast::flat);
    EXPECT_EQ(body<Front>(plan, "F").batten, Batten{});
    EXPECT_FALSE(body<Appliance>(plan, "A").on);
}

/// Where text of the full plan is replaced, which one problem comes of it.
struct Damage {
    const char* name;
    const char* replace;
    const char* by;
    const char* code;
    const char* pointer;
    const char* key;    ///< of one value
    const char* value;  ///< what it has to be
};

class DamagedPlan : public ::testing::TestWithParam<Damage> {};

TEST_P(DamagedPlan, HasOneProblemAtItsPlace)
{
    const Damage& damage = GetParam();
    std::string text = kFullPlan;
    const std::size_t at = text.find(damage.replace);
    ASSERT_NE(at, std::string::npos);
    text.replace(at, std::string(damage.replace).size(), damage.by);
    const PlanReading reading = readPlan(text);
    EXPECT_FALSE(reading.plan);
    ASSERT_EQ(reading.problems.size(), 1u);
    const Finding& problem = reading.problems[0];
    EXPECT_EQ(problem.code, damage.code);
    EXPECT_EQ(problem.severity, Severity::stop);
    EXPECT_EQ(problem.pointer, damage.pointer);
    if (*damage.key) {
        EXPECT_EQ(word(problem, damage.key), damage.value);
    }
}

INSTANTIATE_TEST_SUITE_P(
    PlanReading, DamagedPlan,
    ::testing::Values(
        Damage{"NoVersion", "\"yardplan\": 1,", "", "not_a_plan", "", "", ""},
        Damage{"VersionZero", "\"yardplan\": 1", "\"yardplan\": 0", "not_a_plan", "/yardplan", "", ""},
        Damage{"VersionBetween", "\"yardplan\": 1", "\"yardplan\": 0.5", "not_a_plan", "/yardplan", "", ""},
        Damage{"VersionText", "\"yardplan\": 1", "\"yardplan\": \"1\"", "wrong_type", "/yardplan", "found", "text"},
        Damage{"NewerVersion", "\"yardplan\": 1", "\"yardplan\": 2", "newer_version", "/yardplan", "", ""},
        Damage{"Comma", "\"currency\": \"CHF\",", "\"currency\": \"CHF\"", "json_syntax", "", "", ""},
        Damage{"Infinite", "\"air_c\": 24.5", "\"air_c\": 1e999", "number_not_finite", "/conditions/air_c", "", ""},
        Damage{"KeyTwice", "\"air_c\": 24.5", "\"air_c\": 1, \"air_c\": 2", "key_twice", "/conditions/air_c", "key",
               "air_c"},
        Damage{"TitleNumber", "\"Kitchen by the pear tree\"", "12", "wrong_type", "/title", "expected", "text"},
        Damage{"NumberText", "\"top_mm\": 905", "\"top_mm\": \"905\"", "wrong_type", "/parts/0/top_mm", "expected",
               "number"},
        Damage{"NumberNull", "\"top_mm\": 905", "\"top_mm\": null", "wrong_type", "/parts/0/top_mm", "found",
               "nothing"},
        Damage{"OptionalNull", "\"rim_mm\": 50", "\"rim_mm\": null", "wrong_type", "/parts/0/cutouts/0/rim_mm",
               "found", "nothing"},
        Damage{"BoolNumber", "\"stays\": false", "\"stays\": 0", "wrong_type", "/parts/0/filler/stays", "expected",
               "yes_no"},
        Damage{"ObjectList", "{\"drum_l\": 120, \"batch_minutes\": 10, \"usable_percent\": 60}", "[120, 10, 60]", "wrong_type", "/mixer",
               "expected", "object"},
        Damage{"ListObject", "[{\"item\": \"mesh\", \"amount\": 1.5}]", "{\"item\": \"mesh\"}", "wrong_type", "/owned",
               "expected", "list"},
        Damage{"PointOfThree", "\"at\": [100, 3900]", "\"at\": [100, 3900, 0]", "wrong_type", "/site/fixtures/0/at",
               "expected", "pair"},
        Damage{"PointOfText", "[2400, 640]", "[2400, \"640\"]", "wrong_type", "/parts/0/outline/2/1", "expected",
               "number"},
        Damage{"HalfPerson", "\"people\": 3", "\"people\": 3.5", "wrong_type", "/crew/people", "expected",
               "whole_number"},
        Damage{"ManyPeople", "\"people\": 3", "\"people\": 3e10", "wrong_type", "/crew/people", "expected",
               "whole_number"},
        Damage{"EdgeText", "\"edges\": [0, 1, 3]", "\"edges\": [0, \"1\"]", "wrong_type", "/parts/0/rim/edges/1",
               "expected", "whole_number"},
        Damage{"NoPartId", "\"id\": \"S1\",", "", "missing_key", "/parts/1/id", "key", "id"},
        Damage{"NoKind", "\"kind\": \"support\",", "", "missing_key", "/parts/1/kind", "expected", "text"},
        Damage{"OddKind", "\"kind\": \"support\"", "\"kind\": \"pillar\"", "unknown_word", "/parts/1/kind", "expected",
               "counter, support, panel, front, appliance"},
        Damage{"OddWord", "\"cast\": \"face_up\"", "\"cast\": \"sideways\"", "unknown_word", "/parts/0/cast", "found",
               "sideways"},
        Damage{"OddSpeed", "\"cement_speed\": \"R\"", "\"cement_speed\": \"fast\"", "unknown_word",
               "/mixes/0/cement_speed", "expected", "S, N, R"},
        Damage{"NoOutline", "\"outline\": [[0, 0], [2400, 0], [2400, 640], [0, 640]],", "", "missing_key",
               "/parts/0/outline", "expected", "list"},
        Damage{"NoThickness", "\"thickness_mm\": 38,", "", "missing_key", "/parts/0/thickness_mm", "expected",
               "number"},
        Damage{"NoSupportLength", "\"length_mm\": 600,", "", "missing_key", "/parts/1/length_mm", "expected", "number"},
        Damage{"NoShape", "\"shape\": \"circle\", \"centre\": [600, 575]", "\"centre\": [600, 575]", "missing_key",
               "/parts/0/cutouts/1/shape", "expected", "text"},
        Damage{"NoDiameter", ", \"diameter_mm\": 35", "", "missing_key", "/parts/0/cutouts/1/diameter_mm", "expected",
               "number"},
        Damage{"NoCutoutSize", ", \"size\": [500, 380]", "", "missing_key", "/parts/0/cutouts/2/size", "expected",
               "pair"},
        Damage{"NoFrontEnd", "\"to\": [1500, 0],", "", "missing_key", "/parts/3/to", "expected", "pair"},
        Damage{"NoBag", "\"mass_kg\": 40, ", "", "missing_key", "/mixes/1/bag/mass_kg", "expected", "number"},
        Damage{"PartTwice", "\"id\": \"P1\"", "\"id\": \"S1\"", "id_twice", "/parts/2/id", "id", "S1"},
        Damage{"MixTwice", "\"id\": \"body\"", "\"id\": \"worktop\"", "id_twice", "/mixes/1/id", "id", "worktop"},
        Damage{"FixtureTwice", "\"id\": \"box\"", "\"id\": \"tap\"", "id_twice", "/site/fixtures/2/id", "id", "tap"},
        Damage{"CutoutTwice", "\"id\": \"K2\"", "\"id\": \"K1\"", "id_twice", "/parts/0/cutouts/1/id", "id", "K1"},
        Damage{"EmptyId", "\"id\": \"A1\"", "\"id\": \"\"", "id_empty", "/parts/4/id", "", ""}),
    [](const auto& row) { return std::string(row.param.name); });

void PrintTo(const Damage& damage, std::ostream* out) { *out << damage.name; }

TEST(PlanReading, AllProblemsAtOnce)
{
    const PlanReading reading = readPlan(R"({"yardplan": 1, "title": 3, "crew": {"people": "two"}, "parts": [
        {"id": "C1", "kind": "counter", "thickness_mm": "thick"},
        {"id": "C1", "kind": "support", "length_mm": true, "width_mm": 1},
        7]})");
    EXPECT_FALSE(reading.plan);
    std::vector<std::string> seen;
    for (const Finding& problem : reading.problems) seen.push_back(problem.code + " " + problem.pointer);
    EXPECT_THAT(seen, ElementsAre("wrong_type /title", "wrong_type /crew/people", "missing_key /parts/0/outline",
                                  "wrong_type /parts/0/thickness_mm", "wrong_type /parts/1/length_mm",
                                  "missing_key /parts/1/height_mm", "wrong_type /parts/2",
                                  "id_twice /parts/1/id"));
    EXPECT_THAT(reading.problems[2].subjects, ElementsAre("C1"));
}

TEST(PlanReading, ANewerFileSaysOnlyThat)
{
    const PlanReading reading = readPlan(R"({"yardplan": 7, "title": {"new": "shape"}})");
    ASSERT_EQ(reading.problems.size(), 1u);
    EXPECT_EQ(reading.problems[0].code, "newer_version");
    EXPECT_EQ(std::get<double>(reading.problems[0].values.at("version")), 7.0);
    EXPECT_EQ(std::get<double>(reading.problems[0].values.at("known_version")), 1.0);
}

TEST(PlanReading, OtherJsonIsNoPlan)
{
    for (const char* text : {"[]", "7", "null", "\"yardplan\"", "{}", "{\"title\": \"x\"}"}) {
        const PlanReading reading = readPlan(text);
        EXPECT_FALSE(reading.plan);
        ASSERT_EQ(reading.problems.size(), 1u) << text;
        EXPECT_EQ(reading.problems[0].code, "not_a_plan");
    }
}

TEST(PlanReading, TooLargeAText)
{
    const PlanReading reading = readPlan(std::string(kLargestPlanBytes + 1, ' '));
    ASSERT_EQ(reading.problems.size(), 1u);
    EXPECT_EQ(reading.problems[0].code, "too_large");
}

TEST(PlanReading, EndlessProblemsAreCounted)
{
    std::string text = R"({"yardplan": 1, "parts": [0)";
    for (int i = 1; i < 2000; ++i) text += ",0";
    text += "]}";
    const PlanReading reading = readPlan(text);
    EXPECT_EQ(reading.problems.size(), 501u);
    EXPECT_EQ(reading.problems.back().code, "more_problems");
    EXPECT_EQ(std::get<double>(reading.problems.back().values.at("count")), 2000.0 - 500.0);
}

TEST(PlanReading, WholeNumbersMayBeWrittenAsDecimals)
{
    const PlanReading reading = readPlan(R"({"yardplan": 1.0, "crew": {"people": 4.0}})");
    ASSERT_TRUE(reading.plan);
    EXPECT_EQ(reading.plan->crew.people, 4);
}

}  // namespace
}  // namespace yardcast
