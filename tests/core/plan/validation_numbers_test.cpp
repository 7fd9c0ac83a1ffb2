#include <limits>

#include "tests/core/plan/validation_tools.h"

namespace yardcast {
namespace {

using namespace samples;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

TEST(Validation, ASoundPlanHasNoFindings)
{
    EXPECT_THAT(foundIn(twoSupports()), IsEmpty());
    EXPECT_THAT(foundIn(panelWith([](Panel&) {})), IsEmpty());
    EXPECT_THAT(foundIn(frontWith([](Front&) {})), IsEmpty());
    EXPECT_THAT(foundIn(applianceWith([](Appliance&) {})), IsEmpty());
    EXPECT_THAT(foundIn(Plan{}), IsEmpty());
}

/// A number that is out of its range by a hair, and the same at the end of the range, which is good.
struct NumberRow {
    const char* name;
    const char* pointer;
    std::function<Plan(double)> plan;
    double bad;
    double good;
    bool usableWhenBad;
};

class Numbers : public ::testing::TestWithParam<NumberRow> {};

TEST_P(Numbers, OutOfRangeIsAStopAtItsPlace)
{
    const NumberRow& row = GetParam();
    const Plan bad = row.plan(row.bad);
    const std::string expected = std::string("number_out_of_range ") + row.pointer;
    EXPECT_THAT(foundIn(bad), Contains(expected));
    EXPECT_EQ(validate(bad).unusableParts.empty() && validate(bad).unusableMixes.empty(), row.usableWhenBad);
    const Finding finding = sole(bad, "number_out_of_range");
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_EQ(mm(finding, "value"), row.bad);
    EXPECT_TRUE(row.bad < mm(finding, "least") || row.bad > mm(finding, "most"));
    EXPECT_NE(word(finding, "unit"), "(none)");
    EXPECT_NE(word(finding, "key"), "(none)");
}

TEST_P(Numbers, TheEndOfTheRangeIsGood)
{
    EXPECT_FALSE(has(GetParam().plan(GetParam().good), "number_out_of_range"));
}

TEST_P(Numbers, NoNumberIsAStopAndNothingThrows)
{
    const NumberRow& row = GetParam();
    for (const double value : {std::nan(""), HUGE_VAL, -HUGE_VAL}) {
        EXPECT_THAT(foundIn(row.plan(value)), Contains(std::string("not_a_number ") + row.pointer));
    }
    for (const double value : {1e308, -1e308, 5e-324, 1e15}) {
        validate(row.plan(value));
    }
}

Plan mixWith(const std::function<void(Mix&)>& change)
{
    return changePlan(twoSupports(), [&](Plan& p) { change(p.mixes[0]); });
}
Plan planWith(const std::function<void(Plan&)>& change) { return changePlan(twoSupports(), change); }

#define COUNTER(member, value) \
    [](double v) { return counterChanged([v](Counter& c) { member = value; }); }

INSTANTIATE_TEST_SUITE_P(
    Validation, Numbers,
    ::testing::Values(
        NumberRow{"ThicknessZero", "/parts/0/thickness_mm", COUNTER(c.thicknessMm, v), 0, 10, false},
        NumberRow{"ThicknessThin", "/parts/0/thickness_mm", COUNTER(c.thicknessMm, v), 9.9, 10, true},
        NumberRow{"ThicknessThick", "/parts/0/thickness_mm", COUNTER(c.thicknessMm, v), 500.1, 500, true},
        NumberRow{"Top", "/parts/0/top_mm", COUNTER(c.topMm, v), 20'000.5, 20'000, false},
        NumberRow{"RimDepth", "/parts/0/rim/depth_mm", COUNTER(c.rim.emplace().depthMm, v), -60, 60, false},
        NumberRow{"RimWidth", "/parts/0/rim/width_mm", COUNTER(c.rim.emplace().widthMm, v), 4.9, 5, true},
        NumberRow{"Filler", "/parts/0/filler/density_kg_m3", COUNTER(c.filler.emplace().densityKgM3, v), 0.9, 1, true},
        NumberRow{"RibWidth", "/parts/0/ribs/0/width_mm",
                  [](double v) {
                      return counterChanged([v](Counter& c) { c.ribs = {Rib{{0, 0}, {0, 600}, v, {}}}; });
                  },
                  0, 5, false},
        NumberRow{"CutoutWidth", "/parts/0/cutouts/0/size/0", COUNTER(c.cutouts[0].size.width, v), -560, 1, false},
        NumberRow{"CutoutRim", "/parts/0/cutouts/0/rim_mm", COUNTER(c.cutouts[0].rimMm, v), -1, 0, true},
        NumberRow{"CutoutRadius", "/parts/0/cutouts/0/corner_radius_mm", COUNTER(c.cutouts[0].cornerRadiusMm, v), -1, 0,
                  true},
        NumberRow{"CutoutTurn", "/parts/0/cutouts/0/turn_deg", COUNTER(c.cutouts[0].turnDeg, v), 40'000, 90, false},
        NumberRow{"Diameter", "/parts/0/cutouts/1/diameter_mm",
                  [](double v) { return addCutout(twoSupports(), "C1", tapHole("K2", {300, 300}, v)); }, 0, 35, false},
        NumberRow{"JointGap", "/parts/0/joints/0/gap_mm",
                  [](double v) {
                      return counterChanged([v](Counter& c) { c.joints = {Joint{{300, 0}, {300, 600}, v, {}}}; });
                  },
                  -0.5, 0, true},
        NumberRow{"MeshBar", "/parts/0/steel/mesh/bar_mm", COUNTER(c.steel.emplace().mesh.emplace().barMm, v), 0, 6,
                  false},
        NumberRow{"MeshPitch", "/parts/0/steel/mesh/pitch_mm", COUNTER(c.steel.emplace().mesh.emplace().pitchMm, v), 0,
                  5, false},
        NumberRow{"MeshCover", "/parts/0/steel/mesh/cover_mm", COUNTER(c.steel.emplace().mesh.emplace().coverMm, v), -1,
                  0, true},
        NumberRow{"BarDiameter", "/parts/0/steel/bars/0/diameter_mm",
                  [](double v) {
                      return counterChanged([v](Counter& c) {
                          c.steel.emplace().bars = {BarGroup{{0, 0}, {100, 0}, v, 1, {}, 20, {}}};
                      });
                  },
                  40.1, 40, true},
        NumberRow{"LoadMass", "/parts/0/loads/0/mass_kg",
                  [](double v) {
                      return counterChanged([v](Counter& c) { c.loads = {{"pot", {300, 300}, {100, 100}, v, {}}}; });
                  },
                  -1, 0, true},
        NumberRow{"LiftAge", "/parts/0/lift/age_h", COUNTER(c.lift.emplace().ageH, v), 0.5, 1, true},
        NumberRow{"At", "/parts/1/at/0",
                  [](double v) { return changePart(twoSupports(), "S1", [v](Part& p) { p.place.at.x = v; }); },
                  100'001, 100'000, false},
        NumberRow{"SupportLength", "/parts/1/length_mm",
                  [](double v) { return supportChanged([v](Support& s) { s.lengthMm = v; }); }, 9.5, 10, true},
        NumberRow{"SupportWidthOfAHair", "/parts/1/width_mm",
                  [](double v) { return supportChanged([v](Support& s) { s.widthMm = v; }); }, 1e-308, 10, false},
        NumberRow{"SupportHeight", "/parts/1/height_mm",
                  [](double v) { return supportChanged([v](Support& s) { s.heightMm = v; }); }, 20'001, 840, false},
        NumberRow{"PadThickness", "/parts/1/pads/thickness_mm",
                  [](double v) { return supportChanged([v](Support& s) { s.pads.emplace().thicknessMm = v; }); }, -0.1,
                  0, true},
        NumberRow{"PanelThickness", "/parts/3/thickness_mm",
                  [](double v) { return panelWith([v](Panel& p) { p.thicknessMm = v; }); }, 501, 500, true},
        NumberRow{"Batten", "/parts/3/batten/width_mm",
                  [](double v) { return frontWith([v](Front& f) { f.batten.widthMm = v; }); }, 4, 5, true},
        NumberRow{"Gap", "/parts/3/batten/gap_mm",
                  [](double v) { return frontWith([v](Front& f) { f.batten.gapMm = v; }); }, -1, 0, true},
        NumberRow{"ApplianceMass", "/parts/3/mass_kg",
                  [](double v) { return applianceWith([v](Appliance& a) { a.massKg = v; }); }, -1, 0, true},
        NumberRow{"ApplianceSize", "/parts/3/size/1",
                  [](double v) { return applianceWith([v](Appliance& a) { a.size.depth = v; }); }, 0, 10, false},
        NumberRow{"BagMass", "/mixes/0/bag/mass_kg",
                  [](double v) { return mixWith([v](Mix& m) { m.bag.massKg = v; }); }, 0,
                   25, false},
        NumberRow{"BagYield", "/mixes/0/bag/yield_l",
                  [](double v) { return mixWith([v](Mix& m) { m.bag.yieldL = v; }); }, -12, 12, false},
        NumberRow{"Percent", "/mixes/0/silica_fume_percent",
                  [](double v) { return mixWith([v](Mix& m) { m.silicaFumePercent = v; }); }, 100.5, 100, true},
        NumberRow{"Allowance", "/mixes/0/allowance_percent",
                  [](double v) { return mixWith([v](Mix& m) { m.allowancePercent = v; }); }, -1, 0, true},
        NumberRow{"BagDensity", "/mixes/0/bag/fresh_density_kg_m3",
                  [](double v) { return mixWith([v](Mix& m) { m.bag.freshDensityKgM3 = v; }); }, 299, 300, true},
        NumberRow{"BagSpread", "/mixes/0/bag/yield_spread_percent",
                  [](double v) { return mixWith([v](Mix& m) { m.bag.yieldSpreadPercent = v; }); }, 50.5, 50, true},
        NumberRow{"RecipeCement", "/mixes/0/recipe/cement_kg_m3",
                  [](double v) { return mixWith([v](Mix& m) { m.recipe.emplace().cementKgM3 = v; }); }, 9, 10, true},
        NumberRow{"RecipeWater", "/mixes/0/recipe/water_l_m3",
                  [](double v) { return mixWith([v](Mix& m) { m.recipe.emplace().waterLM3 = v; }); }, 901, 900, true},
        NumberRow{"RecipeSand", "/mixes/0/recipe/sand_percent",
                  [](double v) { return mixWith([v](Mix& m) { m.recipe.emplace().sandPercent = v; }); }, 101, 100,
                  true},
        NumberRow{"SandMoisture", "/mixes/0/recipe/sand/moisture_percent",
                  [](double v) { return mixWith([v](Mix& m) { m.recipe.emplace().sand.moisturePercent = v; }); }, -1, 0,
                  true},
        NumberRow{"GravelDensity", "/mixes/0/recipe/gravel/density_kg_m3",
                  [](double v) { return mixWith([v](Mix& m) { m.recipe.emplace().gravel.densityKgM3 = v; }); }, 99, 2650,
                  true},
        NumberRow{"RecipeGrain", "/mixes/0/recipe/max_aggregate_mm",
                  [](double v) { return mixWith([v](Mix& m) { m.recipe.emplace().maxAggregateMm = v; }); }, 64, 63,
                  true},
        NumberRow{"CementBag", "/mixes/0/recipe/cement_bag_kg",
                  [](double v) { return mixWith([v](Mix& m) { m.recipe.emplace().cementBagKg = v; }); }, 0.4, 0.5,
                  true},
        NumberRow{"Pigment", "/mixes/0/pigment_percent",
                  [](double v) { return mixWith([v](Mix& m) { m.pigmentPercent = v; }); }, -1, 0, true},
        NumberRow{"Air", "/mixes/0/air_percent",
                  [](double v) { return mixWith([v](Mix& m) { m.airPercent = v; }); }, 50.5, 50, true},
        NumberRow{"TrialBucket", "/mixes/0/trial/bucket_l",
                  [](double v) { return mixWith([v](Mix& m) { m.trial = TrialBatch{v, 22, {}, {}}; }); }, 0, 0.1, false},
        NumberRow{"TrialMass", "/mixes/0/trial/concrete_kg",
                  [](double v) { return mixWith([v](Mix& m) { m.trial = TrialBatch{10, v, {}, {}}; }); }, 5001, 5000,
                  true},
        NumberRow{"TrialWater", "/mixes/0/trial/water_l",
                  [](double v) { return mixWith([v](Mix& m) { m.trial = TrialBatch{10, 22, v, {}}; }); }, 0, 0.01,
                  false},
        NumberRow{"DrumShare", "/mixer/usable_percent",
                  [](double v) { return planWith([v](Plan& p) { p.mixer.emplace().usablePercent = v; }); }, 4, 5, true},
        NumberRow{"Drum", "/mixer/drum_l",
                  [](double v) { return planWith([v](Plan& p) { p.mixer.emplace().drumL = v; }); },
                  4.9, 5, true},
        NumberRow{"Bed", "/assumptions/bed_n_mm3",
                  [](double v) { return planWith([v](Plan& p) { p.assumptions.emplace().bedNMm3 = v; }); }, 0, 0.01,
                  true},
        NumberRow{"StrippingFactor", "/assumptions/stripping_factor",
                  [](double v) { return planWith([v](Plan& p) { p.assumptions.emplace().strippingFactor = v; }); },
                  0.9, 1, true},
        NumberRow{"HandlingFactor", "/assumptions/handling_factor",
                  [](double v) { return planWith([v](Plan& p) { p.assumptions.emplace().handlingFactor = v; }); },
                  5.1, 5, true},
        NumberRow{"Suction", "/assumptions/suction_kpa",
                  [](double v) { return planWith([v](Plan& p) { p.assumptions.emplace().suctionKpa = v; }); }, -0.1, 0,
                  true},
        NumberRow{"CrackSafety", "/assumptions/crack_safety",
                  [](double v) { return planWith([v](Plan& p) { p.assumptions.emplace().crackSafety = v; }); }, 0.5, 1,
                  true},
        NumberRow{"EvenLoad", "/assumptions/even_load_kpa",
                  [](double v) { return planWith([v](Plan& p) { p.assumptions.emplace().evenLoadKpa = v; }); }, 51, 50,
                  true},
        NumberRow{"Person", "/assumptions/person_n",
                  [](double v) { return planWith([v](Plan& p) { p.assumptions.emplace().personN = v; }); }, -1, 0,
                  true},
        NumberRow{"LateCorner", "/assumptions/late_corner_mm",
                  [](double v) { return planWith([v](Plan& p) { p.assumptions.emplace().lateCornerMm = v; }); }, 201,
                  200, true},
        NumberRow{"Humidity", "/conditions/humidity_percent",
                  [](double v) { return planWith([v](Plan& p) { p.conditions.humidityPercent = v; }); }, 101, 100,
                  true},
        NumberRow{"Ice", "/conditions/ice_percent",
                  [](double v) { return planWith([v](Plan& p) { p.conditions.icePercent = v; }); }, 76, 75, true},
        NumberRow{"LiftLimit", "/crew/lift_limit_kg",
                  [](double v) { return planWith([v](Plan& p) { p.crew.liftLimitKg = v; }); }, 0, 25, true},
        NumberRow{"Budget", "/budget/limit",
                  [](double v) { return planWith([v](Plan& p) { p.budget.emplace().limit = v; }); }, -1, 0, true},
        NumberRow{"Price", "/prices/0/pack_size",
                  [](double v) { return planWith([v](Plan& p) { p.prices = {OwnPrice{"mesh", v, 3, {}}}; }); }, 0, 1,
                  true},
        NumberRow{"Owned", "/owned/0/amount",
                  [](double v) { return planWith([v](Plan& p) { p.owned = {Owned{"mesh", v, {}}}; }); }, -1, 0, true},
        NumberRow{"Fall", "/site/ground/fall_percent",
                  [](double v) { return planWith([v](Plan& p) { p.site.ground.emplace().fallPercent = v; }); }, 51, 50,
                  true}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(Validation, CountsThatAreWholeNumbers)
{
    EXPECT_THAT(foundIn(changePlan(twoSupports(), [](Plan& p) { p.crew.people = 0; })),
                ElementsAre("number_out_of_range /crew/people"));
    EXPECT_THAT(foundIn(supportChanged([](Support& s) { s.pads.emplace().count = -2; })),
                ElementsAre("number_out_of_range /parts/1/pads/count"));
    EXPECT_THAT(foundIn(counterChanged([](Counter& c) { c.lift.emplace().people = 0; })),
                ElementsAre("number_out_of_range /parts/0/lift/people"));
    EXPECT_THAT(foundIn(counterChanged([](Counter& c) {
                    c.steel.emplace().bars = {BarGroup{{0, 10}, {100, 10}, 8, 0, {}, 20, {}}};
                })),
                ElementsAre("number_out_of_range /parts/0/steel/bars/0/count"));
}

TEST(Validation, TooManyMembersMakeAPartUnusable)
{
    const auto loads = [](std::size_t count) {
        return counterChanged([=](Counter& c) { c.loads.assign(count, {"pot", {300, 300}, {1, 1}, 1, {}}); });
    };
    const Finding finding = sole(loads(101), "too_many");
    EXPECT_EQ(finding.pointer, "/parts/0/loads");
    EXPECT_EQ(mm(finding, "count"), 101.0);
    EXPECT_EQ(mm(finding, "most"), 100.0);
    EXPECT_FALSE(usable(loads(101), "C1"));
    EXPECT_FALSE(has(loads(100), "too_many"));
}

TEST(Validation, BarsAreCountedOverAllGroups)
{
    const auto bars = [](int count) {
        return counterChanged([=](Counter& c) {
            c.steel.emplace().bars.assign(2, BarGroup{{100, 100}, {1700, 100}, 8, count, 1.0, 20, {}});
        });
    };
    EXPECT_EQ(mm(sole(bars(251), "too_many"), "count"), 502.0);
    EXPECT_FALSE(has(bars(250), "too_many"));
}

TEST(Validation, MoreCementThanTheBagHolds)
{
    const Plan plan = mixWith([](Mix& m) { m.bag.cementKg = 25.1; });
    const Finding finding = sole(plan, "cement_above_bag");
    EXPECT_EQ(finding.pointer, "/mixes/0/bag/cement_kg");
    EXPECT_THAT(finding.subjects, ElementsAre("worktop"));
    EXPECT_EQ(validate(plan).unusableMixes, std::set<std::string>{"worktop"});
    EXPECT_FALSE(has(mixWith([](Mix& m) { m.bag.cementKg = 25; }), "cement_above_bag"));
}

TEST(Validation, HighBelowLow)
{
    const auto temperatures = [](double high, double low) {
        return changePlan(twoSupports(), [&](Plan& p) {
            p.conditions.highC = high;
            p.conditions.lowC = low;
        });
    };
    EXPECT_EQ(sole(temperatures(10, 12), "high_below_low").severity, Severity::caution);
    EXPECT_FALSE(has(temperatures(12, 12), "high_below_low"));
}

TEST(Validation, CurrencyIsACodeOfThreeCapitals)
{
    const auto currency = [](const char* code) {
        return changePlan(twoSupports(), [&](Plan& p) { p.currency = code; });
    };
    for (const char* bad : {"", "eur", "EURO", "E1R", "\xe2\x82\xac"}) {
        EXPECT_TRUE(has(currency(bad), "currency_unknown")) << bad;
    }
    EXPECT_FALSE(has(currency("JPY"), "currency_unknown"));
}

}  // namespace
}  // namespace yardcast
