#include "core/pour/weather.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/castings/casting.h"
#include "core/io/plan_patch.h"
#include "core/pour/curing.h"
#include "core/pour/pour_plan.h"

namespace yardcast {
namespace {

Mix plain(const std::string& id = "body")
{
    Mix mix;
    mix.id = id;
    return mix;
}

Mix lowBleed()
{
    Mix mix = plain("worktop");
    mix.silicaFumePercent = 8;
    return mix;
}

Plan planWith(const Conditions& conditions, std::vector<Mix> mixes = {plain()})
{
    Plan plan;
    plan.conditions = conditions;
    plan.mixes = std::move(mixes);
    Part part;
    part.id = "C1";
    part.body = Counter{};
    plan.parts.push_back(std::make_shared<Part>(part));
    return plan;
}

Conditions heat()
{
    Conditions c;
    c.airC = 28;
    c.lowC = 17;
    c.highC = 35;
    c.humidityPercent = 35;
    c.windKmh = 18;
    c.concreteC = 29;
    return c;
}

struct Answer {
    PourWeather weather;
    std::vector<Finding> findings;
    const Finding* find(const std::string& code) const
    {
        const auto found =
            std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
        return found == findings.end() ? nullptr : &*found;
    }
    const Remedy* remedy(const std::string& code, const std::string& of) const
    {
        const Finding* finding = find(code);
        if (!finding) return nullptr;
        const auto& all = finding->remedies;
        const auto found = std::find_if(all.begin(), all.end(), [&](const Remedy& r) { return r.code == of; });
        return found == all.end() ? nullptr : &*found;
    }
};

Answer ask(const Plan& plan)
{
    Answer answer;
    std::vector<std::string> ids;
    for (const Mix& mix : plan.mixes) ids.push_back(mix.id);
    answer.weather = pourWeather(plan, ids, answer.findings);
    return answer;
}

TEST(Weather, PlansOwnConditionsGovernTheFigure)
{
    const Answer answer = ask(planWith(heat()));
    EXPECT_NEAR(answer.weather.evaporationKgM2H, evaporationKgM2H(29, 28, 0.35, 18), 1e-12);
    EXPECT_EQ(answer.weather.limitKgM2H, 1.0);
    EXPECT_EQ(ask(planWith(heat(), {plain(), lowBleed()})).weather.limitKgM2H, 0.5);
    Mix fibres = plain();
    fibres.fibres = {{"AR glass", 3, {}}};
    EXPECT_EQ(ask(planWith(heat(), {fibres})).weather.limitKgM2H, 0.5);
    EXPECT_EQ(ask(planWith(heat(), {})).weather.limitKgM2H, 1.0);
}

TEST(Weather, ConstantAirMakesEveryHourAlikeAndTheOwnStartTheBest)
{
    Conditions c;
    c.airC = 21;
    Plan plan = planWith(c);
    plan.pouring = Pouring{};
    plan.pouring->startH = 9.5;
    const Answer answer = ask(plan);
    ASSERT_EQ(answer.weather.hours.size(), 24u);
    for (const WeatherHour& hour : answer.weather.hours) {
        EXPECT_EQ(hour.airC, 21);
        EXPECT_EQ(hour.humidityPercent, 60);
        EXPECT_NEAR(hour.evaporationKgM2H, answer.weather.evaporationKgM2H, 1e-12);
    }
    EXPECT_EQ(answer.weather.bestStartH, 9.5);
    EXPECT_TRUE(answer.findings.empty());
}

TEST(Weather, AirDriesAsItWarmsWithItsDewPointKept)
{
    const Answer answer = ask(planWith(heat()));
    const double dew = dewPointC(28, 35);
    EXPECT_NEAR(humidityPercentAt(28, dew), 35, 1e-9);
    const WeatherHour& five = answer.weather.hours[5];
    const WeatherHour& three = answer.weather.hours[15];
    EXPECT_NEAR(five.airC, 17, 1e-9);
    EXPECT_NEAR(three.airC, 35, 1e-9);
    EXPECT_GT(five.humidityPercent, 60);
    EXPECT_LT(three.humidityPercent, 25);
    EXPECT_NEAR(dewPointC(17, five.humidityPercent), dew, 1e-6);
    // Half of what the air is warmer.
    EXPECT_NEAR(three.concreteC, 29 + 0.5 * 7, 1e-9);
    EXPECT_NEAR(five.concreteC, 29 - 0.5 * 11, 1e-9);
    EXPECT_GT(three.evaporationKgM2H, five.evaporationKgM2H);
    EXPECT_LT(three.workingMinutes, five.workingMinutes);
}

TEST(Weather, BestStartIsTheLeastOfAllTried)
{
    Plan plan = planWith(heat());
    plan.pouring = Pouring{};
    plan.pouring->startH = 11;
    plan.pouring->hours = 4;
    const Answer answer = ask(plan);
    EXPECT_EQ(answer.weather.workH, 4);
    for (double h = 6; h + 4 <= 21; h += 0.5) {
        EXPECT_GE(worstHour(plan, h, 4).evaporationKgM2H, answer.weather.worstAtBestKgM2H - 1e-9) << h;
    }
    EXPECT_EQ(answer.weather.bestStartH, 6);
    const Remedy* start = answer.remedy("evaporation_high", "start_at_hour");
    ASSERT_NE(start, nullptr);
    EXPECT_EQ(start->edit, R"([{"op":"add","path":"/pour/start_h","value":6}])");
}

TEST(Weather, ColdDaysArePouredInTheirWarmHours)
{
    Conditions c;
    c.airC = 8;
    c.lowC = 1;
    c.highC = 13;
    c.concreteC = 10;
    Plan plan = planWith(c);
    plan.pouring = Pouring{};
    plan.pouring->hours = 3;
    const double best = ask(plan).weather.bestStartH;
    for (double h = best; h <= best + 3; h += 0.25) EXPECT_GE(weatherAt(plan, h).airC, kColdestMixC) << h;
}

TEST(Weather, WorkIsAsLongAsItsBatches)
{
    Plan plan = planWith(heat());
    plan.mixer = Mixer{63, 12, 65, {}};
    MixQuantities mix;
    mix.mix = "body";
    mix.volumeL = 250;
    mix.batches = 10;
    EXPECT_NEAR(workHours(plan, {mix}), 1 + 2.0, 1e-12);
    mix.batches = 500;
    EXPECT_EQ(workHours(plan, {mix}), 9.0);
    // By hand as the mixing cards count: one whole bag fits into the tub of 20 l, so eight goes, not the five that would
    // fill it to the brim.
    plan.mixer.reset();
    mix.bagKg = 25;
    mix.litresPerBag = 12.5;
    mix.bagsExact = 8.0;
    mix.volumeL = 100.0;
    ASSERT_EQ(bagsInBatch(mix), 1.0);
    EXPECT_NEAR(workHours(plan, {mix}), 1 + 8 * kHandBatchMinutes / 60, 1e-12);
    EXPECT_EQ(workHours(plan, {}), 9.0);
}

TEST(Weather, EvaporationIsACautionAtTheLimitAndAStopAtTwice)
{
    Conditions c = heat();
    c.highC = c.lowC = c.airC;
    const double one = evaporationKgM2H(c.concreteC, c.airC, 0.35, 0) / 4.0;
    c.windKmh = 0.99 / one - 4;
    EXPECT_EQ(ask(planWith(c)).find("evaporation_high"), nullptr);
    c.windKmh = 1.01 / one - 4;
    ASSERT_NE(ask(planWith(c)).find("evaporation_high"), nullptr);
    EXPECT_EQ(ask(planWith(c)).find("evaporation_high")->severity, Severity::caution);
    c.windKmh = 2.01 / one - 4;
    EXPECT_EQ(ask(planWith(c)).find("evaporation_high")->severity, Severity::stop);
    // The wind that is still fine, worked out back.
    const Answer answer = ask(planWith(c));
    const Remedy* calm = answer.remedy("evaporation_high", "windbreak");
    ASSERT_NE(calm, nullptr);
    EXPECT_NEAR(std::get<double>(calm->values.at("wind")), 1 / one - 4, 1e-9);
}

TEST(Weather, ColderWaterBringsEvaporationToTheFigureItStates)
{
    Conditions c = heat();
    c.windKmh = 14;
    c.waterC = 18;
    const Answer answer = ask(planWith(c, {lowBleed()}));
    const Remedy* water = answer.remedy("evaporation_high", "water_colder");
    ASSERT_NE(water, nullptr);
    EXPECT_LT(std::get<double>(water->values.at("water_c")), 18);
    EXPECT_LT(std::get<double>(water->values.at("evaporation")),
              std::get<double>(answer.find("evaporation_high")->values.at("evaporation")));
}

TEST(Weather, HotMaterialsAreCooledByWaterThenByIce)
{
    Conditions c = heat();
    c.materialsC = 29;
    c.waterC = 24;
    Answer answer = ask(planWith(c));
    ASSERT_EQ(answer.weather.cooling.size(), 1u);
    EXPECT_TRUE(answer.weather.cooling[0].coldWaterEnough);
    const Charge charge = chargeOf(plain());
    const auto mixed = [&](double waterC) {
        return mixTemperatureC(mixTemperatureInput(charge, *c.materialsC, waterC));
    };
    EXPECT_NEAR(mixed(answer.weather.cooling[0].coldWaterC), 25, 1e-9);
    EXPECT_NEAR(mixed(24), answer.weather.mixC, 1e-9);

    c.materialsC = 37;
    c.waterC = 12;
    answer = ask(planWith(c));
    const Cooling& way = answer.weather.cooling.at(0);
    EXPECT_FALSE(way.coldWaterEnough);
    ASSERT_TRUE(way.iceEnough);
    MixTemperatureInput iced = mixTemperatureInput(charge, 37, 12);
    iced.iceKg = way.icePerBatchKg;
    iced.waterKg -= way.icePerBatchKg;
    // Ice is proportional to the cooling but for the water it becomes: exact.
    EXPECT_NEAR(mixTemperatureC(iced), 25, 1e-9);

    c.materialsC = 60;
    const Cooling none = ask(planWith(c)).weather.cooling.at(0);
    EXPECT_FALSE(none.iceEnough);
    EXPECT_EQ(none.icePerBatchKg, 0.0);
}

/// The edit of a remedy, carried out, gives what its words say.
TEST(Weather, WaterAndIceCanBeDoneNotOnlyTold)
{
    Conditions c = heat();
    c.concreteC = 36;
    c.materialsC = 37;
    c.waterC = 12;
    Plan plan = planWith(c);
    const Answer hot = ask(plan);
    const Remedy* ice = hot.remedy("mix_hot", "ice_for");
    ASSERT_NE(ice, nullptr);
    PlanReading after = applyPatch(plan, ice->edit);
    ASSERT_TRUE(after.plan.has_value());
    EXPECT_EQ(after.plan->conditions.icePercent, std::get<double>(ice->values.at("ice_percent")));
    EXPECT_EQ(after.plan->conditions.concreteC, 25.0);
    const Answer cooled = ask(*after.plan);
    EXPECT_EQ(cooled.find("mix_hot"), nullptr);
    // A whole percent of ice: a little more than is wanted, and by less than one percent of the water.
    EXPECT_LE(cooled.weather.mixC, 25.0 + 1e-9);
    EXPECT_GT(cooled.weather.mixC, 24.0);
    EXPECT_TRUE(cooled.weather.cooling.empty());

    c.materialsC = 29;
    c.waterC = 24;
    plan = planWith(c);
    const Answer warm = ask(plan);
    const Remedy* water = warm.remedy("mix_hot", "water_cold_for");
    ASSERT_NE(water, nullptr);
    after = applyPatch(plan, water->edit);
    ASSERT_TRUE(after.plan.has_value());
    EXPECT_NEAR(ask(*after.plan).weather.mixC, 25.0, 0.1);
}

TEST(Weather, MoreIceThanTheEquationBearsIsSaid)
{
    Conditions c = heat();
    c.icePercent = 20;
    EXPECT_EQ(ask(planWith(c)).find("ice_unsure"), nullptr);
    c.icePercent = 50;
    const Answer answer = ask(planWith(c));
    ASSERT_NE(answer.find("ice_unsure"), nullptr);
    EXPECT_EQ(answer.find("ice_unsure")->pointer, "/conditions/ice_percent");
    EXPECT_LT(answer.weather.mixC, ask(planWith(heat())).weather.mixC - 5);
    Plan wild = planWith(c);
    wild.conditions.icePercent = NAN;
    EXPECT_EQ(iceShareOf(wild), 0.0);
    wild.conditions.icePercent = 1e9;
    EXPECT_EQ(iceShareOf(wild), kMostIceInWater);
}

TEST(Weather, HotAndColdMixesAreNamed)
{
    Conditions c = heat();
    c.concreteC = 36;
    c.materialsC = 38;
    EXPECT_NE(ask(planWith(c)).find("mix_hot"), nullptr);
    c = Conditions{};
    c.airC = 6;
    c.concreteC = 4;
    c.waterC = 6;
    const Answer cold = ask(planWith(c));
    ASSERT_NE(cold.find("mix_cold"), nullptr);
    const Remedy* warm = cold.remedy("mix_cold", "water_warm_for");
    ASSERT_NE(warm, nullptr);
    const MixTemperatureInput in =
        mixTemperatureInput(chargeOf(plain()), 6, std::get<double>(warm->values.at("water_c")));
    EXPECT_NEAR(mixTemperatureC(in), 10, 1e-9);
}

TEST(Weather, StatedTemperatureThatIngredientsContradictIsAsked)
{
    Conditions c;
    c.airC = 20;
    c.concreteC = 30;
    const Answer answer = ask(planWith(c));
    const Remedy* as = answer.remedy("mix_differs", "concrete_as_mixed");
    ASSERT_NE(as, nullptr);
    EXPECT_NEAR(std::get<double>(as->values.at("concrete_c")), answer.weather.mixC, 0.25);
    c.concreteC = 19;
    EXPECT_EQ(ask(planWith(c)).find("mix_differs"), nullptr);
}

TEST(Weather, IceIsForAWholeBatch)
{
    Conditions c = heat();
    c.materialsC = 37;
    c.waterC = 12;
    Plan plan = planWith(c);
    std::vector<Finding> findings;
    const double one = pourWeather(plan, {"body"}, findings).cooling.at(0).icePerBatchKg;
    plan.mixer = Mixer{};
    MixQuantities quantities;
    quantities.mix = "body";
    quantities.bagsPerBatch = 3;
    quantities.batches = 4;
    EXPECT_NEAR(pourWeather(plan, {"body"}, findings, {quantities}).cooling.at(0).icePerBatchKg, 3 * one, 1e-9);
    // By a recipe bags are of cement: two of 25 kg are a seventh of the 350 kg in a cubic metre.
    plan.mixes[0].recipe = Recipe{};
    plan.conditions.waterC = 8;
    plan.conditions.materialsC = 35;
    plan.mixer.reset();
    const Cooling cubic = pourWeather(plan, {"body"}, findings).cooling.at(0);
    ASSERT_GT(cubic.icePerBatchKg, 0.0);
    plan.mixer = Mixer{};
    quantities.perBag = false;
    quantities.bagKg = 25;
    quantities.bagsPerBatch = 2;
    EXPECT_NEAR(pourWeather(plan, {"body"}, findings, {quantities}).cooling.at(0).icePerBatchKg,
                cubic.icePerBatchKg / 7, 1e-9);
}

TEST(Frost, CountsOnlyWhileTheConcreteIsYoung)
{
    Conditions c;
    c.airC = 6;
    c.lowC = -2;
    c.highC = 10;
    c.concreteC = 12;
    Answer answer = ask(planWith(c));
    EXPECT_TRUE(answer.weather.frostTonight);
    EXPECT_LT(answer.weather.frostMpa, kFrostProofMpa);
    EXPECT_GT(answer.weather.frostAtH, 10);
    ASSERT_NE(answer.find("frost_night"), nullptr);
    EXPECT_NE(answer.remedy("frost_night", "keep_warm"), nullptr);
    // A thermometer in the covered mould knows better than the forecast.
    for (double h = 0; h <= 48; h += 6) c.measured.push_back({h, 22, {}});
    answer = ask(planWith(c));
    EXPECT_FALSE(answer.weather.frostTonight);
    EXPECT_EQ(answer.find("frost_night"), nullptr);
    c.measured.clear();
    c.lowC = 0.5;
    EXPECT_EQ(ask(planWith(c)).find("frost_night"), nullptr);
}

TEST(Weather, SaysNothingWhereNothingIsCastAndSurvivesNonsense)
{
    Plan plan = planWith(heat(), {lowBleed()});
    plan.parts.clear();
    EXPECT_TRUE(ask(plan).findings.empty());
    Conditions wild;
    wild.airC = NAN;
    wild.lowC = -1e300;
    wild.highC = INFINITY;
    wild.humidityPercent = -5;
    wild.windKmh = 1e300;
    wild.concreteC = NAN;
    wild.waterC = NAN;
    plan = planWith(wild);
    plan.pouring = Pouring{};
    plan.pouring->startH = NAN;
    plan.pouring->hours = INFINITY;
    const Answer answer = ask(plan);
    EXPECT_EQ(answer.weather.hours.size(), 24u);
    EXPECT_TRUE(std::isfinite(answer.weather.evaporationKgM2H));
}

CastingPtr slabOf(const std::string& mix)
{
    auto casting = std::make_shared<Casting>();
    casting->id = casting->part = "C1";
    casting->mix = mix;
    casting->outline = {{{{0, 0}, {1800, 0}, {1800, 620}, {0, 620}}, {}}};
    return casting;
}

TEST(CuringOfAPlan, FollowsTheDaysAndTheClass)
{
    Conditions c;
    c.airC = 18;
    Plan plan = planWith(c);
    std::vector<Finding> findings;
    std::vector<Curing> list = curing(plan, {slabOf("body")}, findings);
    ASSERT_EQ(list.size(), 1u);
    // N cement just counts as rapid: class 3, 15 to 25 deg C: two days.
    EXPECT_EQ(list[0].days, 2.0);
    EXPECT_NEAR(list[0].surfaceC, 18, 1e-9);
    EXPECT_NEAR(list[0].sheetM2, 2.1 * 0.92, 1e-9);
    EXPECT_TRUE(findings.empty());
    plan.assumptions = Assumptions{};
    plan.assumptions->curingClass = 4;
    EXPECT_EQ(curing(plan, {slabOf("body")}, findings)[0].days, 5.0);
    EXPECT_TRUE(curing(plan, {slabOf("other")}, findings).empty());
}

TEST(CuringOfAPlan, ColdHoursDoNotCount)
{
    Conditions c;
    c.airC = 7;
    c.lowC = 1;
    c.highC = 13;
    std::vector<Finding> findings;
    const Curing cold = curing(planWith(c), {slabOf("body")}, findings).at(0);
    EXPECT_GT(cold.days, cold.countedDays + 0.5);
    EXPECT_EQ(cold.countedDays, curingDays(3, cold.ratio, cold.surfaceC));
    EXPECT_GE(cold.surfaceC, 5.0);
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].code, "curing_stretched");
    c.airC = c.lowC.emplace(2);
    c.highC = 4;
    findings.clear();
    EXPECT_TRUE(std::isinf(curing(planWith(c), {slabOf("body")}, findings).at(0).days));
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].code, "curing_stops");
    findings.clear();
    curing(planWith(heat(), {lowBleed()}), {slabOf("worktop")}, findings);
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].code, "fume_needs_curing");
}

}  // namespace
}  // namespace yardcast
