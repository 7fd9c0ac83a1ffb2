#include "core/pour/pour_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <set>

#include "core/io/plan_patch.h"
#include "tests/core/pour/pour_fixture.h"

namespace yardcast {
namespace {

using namespace pour_fixture;
using ::testing::ElementsAre;

TEST(PourPlan, MixesTogetherLargestFirst)
{
    Plan plan = planOf({slab("A", 20, "worktop"), slab("B", 10), slab("C", 30), slab("D", 40, "worktop")});
    EXPECT_THAT(poured(plan, evenWeather(75)).order(), ElementsAre("C", "B", "D", "A"));
}

TEST(PourPlan, ThePlansOwnOrderComesFirst)
{
    Plan plan = planOf({slab("A", 20, "worktop"), slab("B", 10), slab("C", 30), slab("D", 40, "worktop")});
    plan.pouring->order = {"A", "nobody", "B", "A"};
    const Poured result = poured(plan, evenWeather(75));
    EXPECT_THAT(result.order(), ElementsAre("A", "B", "C", "D"));
    const Finding* unknown = result.find("order_unknown");
    ASSERT_NE(unknown, nullptr);
    EXPECT_EQ(unknown->pointer, "/pour/order/1");
    EXPECT_EQ(wordAt(unknown->values, "name"), "nobody");
    ASSERT_NE(result.find("order_twice"), nullptr);
    EXPECT_EQ(result.find("order_twice")->pointer, "/pour/order/3");
    ASSERT_EQ(unknown->remedies.size(), 1u);
    const PlanReading mended = applyPatch(plan, unknown->remedies[0].edit);
    ASSERT_TRUE(mended.plan.has_value());
    EXPECT_THAT(mended.plan->pouring->order, ElementsAre("A", "B"));
}

TEST(PourPlan, AnIdOfAPartStandsForItsCastings)
{
    auto part = std::make_shared<Part>(*slab("A", 40));
    std::get<Counter>(part->body).joints = {{{400, -10}, {400, 1010}, 4.0, {}}};
    Plan plan = planOf({slab("B", 60), part});
    plan.pouring->order = {"A"};
    const Poured result = poured(plan, evenWeather(75));
    ASSERT_EQ(result.castings.size(), 3u);
    EXPECT_THAT(result.order(), ElementsAre("A.1", "A.2", "B"));
    EXPECT_EQ(result.find("order_unknown"), nullptr);
}

TEST(PourPlan, BatchesPassOnFromOneCastingToTheNext)
{
    // 30 l and 10 l in batches of 20 l: the second casting is the rest of the second batch.
    const Poured result = poured(planOf({slab("A", 30), slab("B", 10)}), evenWeather(75));
    ASSERT_EQ(result.pour.days.size(), 1u);
    const PourDay& day = result.pour.days[0];
    EXPECT_EQ(day.batches, 2);
    EXPECT_DOUBLE_EQ(day.endMin, 20.0);
    EXPECT_DOUBLE_EQ(day.castings[0].startMin, 0.0);
    EXPECT_DOUBLE_EQ(day.castings[0].endMin, 20.0);
    EXPECT_DOUBLE_EQ(day.castings[0].longestGapMin, 10.0);
    EXPECT_DOUBLE_EQ(day.castings[1].startMin, 20.0);
    EXPECT_DOUBLE_EQ(day.castings[1].endMin, 20.0);
    EXPECT_DOUBLE_EQ(day.castings[1].longestGapMin, 0.0);
    EXPECT_NEAR(day.castings[1].layers[0].firstBatch, 1.5, 1e-12);
    EXPECT_NEAR(day.castings[1].layers[0].lastBatch, 2.0, 1e-12);
    ASSERT_EQ(day.mixed.size(), 2u);
    ASSERT_EQ(day.mixed[1].into.size(), 2u);
    EXPECT_NEAR(day.mixed[1].into[0].second, 10.0, 1e-9);
    EXPECT_NEAR(day.mixed[1].into[1].second, 10.0, 1e-9);
}

TEST(PourPlan, AnotherMixBeginsABatchOfItsOwn)
{
    const Poured result = poured(planOf({slab("A", 30), slab("B", 10, "worktop")}), evenWeather(75));
    const PourDay& day = result.pour.days.at(0);
    ASSERT_EQ(day.mixed.size(), 3u);
    EXPECT_NEAR(day.mixed[1].litres, 10.0, 1e-9);
    EXPECT_EQ(day.mixed[2].mix, "worktop");
    EXPECT_EQ(day.mixed[2].number, 1);
    EXPECT_DOUBLE_EQ(day.castings[1].startMin, 20.0);
    EXPECT_DOUBLE_EQ(day.castings[1].endMin, 30.0);
}

// A slab of two layers of 20 l each in batches of 10 l: the first layer's batches are covered two batches on, and the mesh is
// laid in between, after the second.
TEST(PourPlan, ALayerIsCoveredByTheLayerAboveIt)
{
    auto part = std::make_shared<Part>(*slab("A", 40));
    Counter& counter = std::get<Counter>(part->body);
    counter.steel = Steel{};
    counter.steel->mesh = Mesh{};
    counter.steel->mesh->coverMm = 25;
    Plan plan = planOf({part});
    plan.pouring->layingMinutes = 7.0;
    const Poured result = poured(plan, evenWeather(75), 10.0);
    const PouredCasting& casting = result.pour.days.at(0).castings.at(0);
    EXPECT_DOUBLE_EQ(casting.longestGapMin, 27.0);
    EXPECT_TRUE(casting.fits);
    EXPECT_DOUBLE_EQ(casting.endMin, 47.0);
    ASSERT_EQ(casting.layers.size(), 3u);
    EXPECT_DOUBLE_EQ(casting.layers[0].toMin, 20.0);
    EXPECT_EQ(casting.layers[1].kind, LayerKind::steel);
    EXPECT_DOUBLE_EQ(casting.layers[1].fromMin, 20.0);
    EXPECT_DOUBLE_EQ(casting.layers[1].toMin, 27.0);
    EXPECT_DOUBLE_EQ(casting.layers[2].fromMin, 37.0);
    EXPECT_DOUBLE_EQ(casting.layers[2].toMin, 47.0);
    EXPECT_DOUBLE_EQ(result.pour.days[0].mixed.at(2).beginMin, 27.0);
    EXPECT_DOUBLE_EQ(result.pour.days[0].endMin, 47.0);
    // In one batch of 40 l the upper half of it waits for the mesh.
    const Poured once = poured(plan, evenWeather(75), 40.0);
    EXPECT_DOUBLE_EQ(once.pour.days.at(0).castings.at(0).longestGapMin, 7.0);
    EXPECT_DOUBLE_EQ(once.pour.days[0].endMin, 17.0);
    // Just short of what it takes.
    const Poured hot = poured(plan, evenWeather(26.9), 10.0);
    EXPECT_FALSE(hot.pour.days.at(0).castings.at(0).fits);
    ASSERT_NE(hot.find("cold_joint_certain"), nullptr);
    EXPECT_EQ(hot.find("cold_joint_certain")->severity, Severity::stop);
}

TEST(PourPlan, NothingIsBegunThatCannotBeFinishedByTheEvening)
{
    // Three castings of one batch of 10 minutes; half an hour a day takes them, 25 minutes do not.
    Plan plan = planOf({slab("A", 20), slab("B", 20), slab("C", 20)});
    plan.pouring->hours = 0.5;
    EXPECT_EQ(poured(plan, evenWeather(75)).pour.days.size(), 1u);
    plan.mixer->batchMinutes = 12.0;
    const Poured two = poured(plan, evenWeather(75));
    ASSERT_EQ(two.pour.days.size(), 2u);
    EXPECT_EQ(two.pour.days[0].castings.size(), 2u);
    EXPECT_EQ(two.pour.days[1].afterDays, 1);
    EXPECT_EQ(two.find("day_too_long"), nullptr);
    EXPECT_EQ(two.find("cold_joint_certain"), nullptr);
}

TEST(PourPlan, ACastingThatOutlastsTheDayIsSaidSoWithTheHoursItTakes)
{
    Plan plan = planOf({slab("A", 100)});  // five batches of 10 minutes
    plan.pouring->hours = 0.5;
    const Poured result = poured(plan, evenWeather(75));
    const Finding* finding = result.find("day_too_long");
    ASSERT_NE(finding, nullptr);
    ASSERT_EQ(finding->remedies.size(), 1u);
    const PlanReading longer = applyPatch(plan, finding->remedies[0].edit);
    ASSERT_TRUE(longer.plan.has_value());
    EXPECT_DOUBLE_EQ(longer.plan->pouring->hours, 1.0);
    EXPECT_EQ(poured(*longer.plan, evenWeather(75)).find("day_too_long"), nullptr);
}

/// 75 minutes until nine, 5 minutes later in the day.
PourWeather hotAfterNine()
{
    PourWeather weather = evenWeather(75);
    for (std::size_t h = 9; h < 24; ++h) weather.hours[h].workingMinutes = 5;
    return weather;
}

TEST(PourPlan, WhatTheHeatWouldCatchBeginsTheNextMorning)
{
    // Two batches each of 20 minutes: the second casting would go in after nine.
    Plan plan = planOf({slab("A", 60), slab("B", 40)}, 20.0);
    const Poured result = poured(plan, hotAfterNine());
    ASSERT_EQ(result.pour.days.size(), 2u);
    EXPECT_EQ(result.pour.days[1].castings.at(0).casting, "B");
    EXPECT_TRUE(result.pour.days[1].castings.at(0).fits);
    EXPECT_EQ(result.find("cold_joint_certain"), nullptr);
}

TEST(PourPlan, RemediesOfAColdJointClearIt)
{
    Plan plan = planOf({slab("A", 40)}, 20.0);
    plan.pouring->startH = 10.0;
    plan.crew.people = 1;
    const Poured result = poured(plan, hotAfterNine());
    const Finding* finding = result.find("cold_joint_certain");
    ASSERT_NE(finding, nullptr);
    int applied = 0;
    for (const Remedy& remedy : finding->remedies) {
        if (remedy.edit.empty()) continue;
        const PlanReading after = applyPatch(plan, remedy.edit);
        ASSERT_TRUE(after.plan.has_value()) << remedy.code;
        const Poured mended = poured(*after.plan, hotAfterNine(), remedy.code == "pour_larger_mixer" ? 40.0 : 20.0);
        EXPECT_EQ(mended.find("cold_joint_certain"), nullptr) << remedy.code;
        ++applied;
    }
    EXPECT_GE(applied, 1);
    EXPECT_EQ(finding->remedies[0].code, "pour_earlier");
    EXPECT_LE(numberAt(finding->remedies[0].values, "start_clock").value_or(99), 8.5);
}

TEST(PourPlan, ColdJointOfABatchThatTakesTooLongIsNotMendedByTheClock)
{
    Plan plan = planOf({slab("A", 40)}, 20.0);
    const Poured result = poured(plan, evenWeather(15));
    const Finding* finding = result.find("cold_joint_certain");
    ASSERT_NE(finding, nullptr);
    for (const Remedy& remedy : finding->remedies) EXPECT_NE(remedy.code, "pour_earlier");
}

/// Concrete that is strong enough long before anybody lifts it: then the plan's own hour decides.
Plan strippedSoon(Plan plan)
{
    plan.assumptions = assumptionsOf(plan);
    plan.assumptions->stripMpa = 1.0;
    return plan;
}

TEST(PourPlan, MouldsAreWaitedForByTheAgeOfLifting)
{
    Plan plan = strippedSoon(planOf({slab("A", 20), slab("B", 20), slab("C", 20)}));
    plan.pouring->moulds = 2;
    const Poured result = poured(plan, evenWeather(75));
    ASSERT_EQ(result.pour.days.size(), 2u);
    EXPECT_EQ(result.pour.days[0].castings.size(), 2u);
    // The first is 48 h old ten minutes past eight on the third day.
    EXPECT_EQ(result.pour.days[1].afterDays, 2);
    EXPECT_NEAR(result.pour.days[1].startH, 8.0 + 10.0 / 60, 1e-9);
    EXPECT_EQ(result.pour.days[1].castings.at(0).casting, "C");
}

TEST(PourPlan, WhatSharesAMouldWaitsForItAndLetsTheOthersGoFirst)
{
    Plan plan = strippedSoon(planOf({slab("A", 20), slab("B", 20), slab("C", 20), slab("D", 20)}));
    plan.moulding = Moulding{};
    plan.moulding->shared = {{{"B", "A", "nobody", "C"}, {}}, {{"C", "D"}, {}}};
    const Poured result = poured(plan, evenWeather(75));
    // B, then A, then C, 48 h after one another; D is in a list with C, which was named before.
    ASSERT_EQ(result.pour.days.size(), 3u);
    ASSERT_EQ(result.pour.days[0].castings.size(), 2u);
    EXPECT_EQ(result.pour.days[0].castings[0].casting, "B");
    EXPECT_EQ(result.pour.days[0].castings[1].casting, "D");
    EXPECT_EQ(result.pour.days[1].castings.at(0).casting, "A");
    EXPECT_EQ(result.pour.days[1].afterDays, 2);
    EXPECT_NEAR(result.pour.days[1].startH, 8.0 + result.pour.days[0].castings[0].endMin / 60, 1e-9);
    EXPECT_EQ(result.pour.days[2].castings.at(0).casting, "C");

    // The maker's own order stands, but for the castings of one mould among themselves.
    plan.pouring->order = {"A", "D", "B"};
    const Poured ordered = poured(plan, evenWeather(75));
    EXPECT_EQ(ordered.pour.days.at(0).castings.at(0).casting, "B");
    EXPECT_EQ(ordered.pour.days.at(0).castings.at(1).casting, "D");
    EXPECT_EQ(ordered.pour.days.at(1).castings.at(0).casting, "A");
}

TEST(PourPlan, MouldsThatComeFreeSoonAfterOneAnotherAreWaitedForTogether)
{
    Plan plan = strippedSoon(planOf({slab("A", 20), slab("B", 20), slab("C", 20), slab("D", 20)}));
    plan.pouring->moulds = 2;
    const Poured result = poured(plan, evenWeather(75));
    ASSERT_EQ(result.pour.days.size(), 2u);
    const PourDay& second = result.pour.days[1];
    ASSERT_EQ(second.castings.size(), 2u);
    // Both are free once the second is 48 h old; no batch is mixed for one of them alone.
    const PourDay& first = result.pour.days[0];
    EXPECT_NEAR(second.startH, first.startH + first.castings.back().endMin / 60, 1e-9);
    EXPECT_EQ(second.batches, first.batches);
    EXPECT_EQ(second.mixed.size(), first.mixed.size());
}

/// The same hour as readiness gives for the compressive strength alone: figures of one plan agree.
TEST(PourPlan, AMouldIsNotFreeBeforeItsConcreteIsStrongEnough)
{
    Plan plan = planOf({slab("A", 20), slab("B", 20)});
    plan.pouring->moulds = 1;
    plan.mixes.front().bag.waterL = 1.8;  // the class stands: 0.43
    plan.conditions.airC = 20;
    const Poured result = poured(plan, evenWeather(75));
    ASSERT_EQ(result.pour.days.size(), 2u);
    // 15 of 25 MPa of C25/30: 3.0232 days at 20 deg C, of which a day there is worth 0.9981 (EN 1992-1-1 eq. 3.2, B.10).
    const double waitH = 3.0232 / 0.9981 * 24;
    const PourDay& first = result.pour.days[0];
    const double freeH = first.startH + first.endMin / 60 + waitH;
    EXPECT_EQ(result.pour.days[1].afterDays, 3);
    EXPECT_NEAR(72 + result.pour.days[1].startH, freeH, 0.02);
}

TEST(PourPlan, AMouldStrippedInTheNightIsPouredInTheMorning)
{
    auto lifted = [](const std::string& id, double ageH) {
        auto part = std::make_shared<Part>(*slab(id, 20));
        std::get<Counter>(part->body).lift = Lift{};
        std::get<Counter>(part->body).lift->ageH = ageH;
        return part;
    };
    Plan plan = strippedSoon(planOf({lifted("A", 40), lifted("B", 40)}));
    plan.pouring->moulds = 1;
    const Poured result = poured(plan, evenWeather(75));
    ASSERT_EQ(result.pour.days.size(), 2u);
    EXPECT_EQ(result.pour.days[1].afterDays, 2);
    EXPECT_DOUBLE_EQ(result.pour.days[1].startH, 8.0);
}

TEST(PourPlan, WithoutAMixerItIsMixedByHand)
{
    Plan plan = planOf({slab("A", 40)});
    plan.mixer.reset();
    const auto castings = castingsOfPlan(plan);
    auto quantities = quantitiesOf(plan, castings, 12.0);
    for (MixQuantities& q : quantities) q.bagsPerBatch = 0;
    std::vector<Finding> findings;
    const PourPlan pour = pourPlan(plan, castings, quantities, evenWeather(75), findings);
    EXPECT_TRUE(pour.handMixed);
    // One bag of 12 l at a time: four batches of 15 minutes.
    EXPECT_EQ(pour.days.at(0).batches, 4);
    EXPECT_DOUBLE_EQ(pour.days.at(0).endMin, 4 * kHandBatchMinutes);
}

TEST(PourPlan, WhatHasNoMixOrNoEndIsLeftOut)
{
    Plan plan = planOf({slab("A", 40), slab("B", 40, "nothing"), slab("C", 20.0 * (kMostBatches + 1))});
    const Poured result = poured(plan, evenWeather(75));
    EXPECT_THAT(result.order(), ElementsAre("A"));
    EXPECT_THAT(result.pour.leftOut, ElementsAre("C", "B"));
}

// A slab of 50 mm presses on its base with 25 kN/m3 x 0.05 m = 1.25 kPa (EN 1991-1-1 Table A.1).
TEST(PourPlan, TheTableBearsTheFreshConcrete)
{
    const Poured result = poured(planOf({slab("A", 100)}), evenWeather(75));
    const PouredCasting& casting = result.pour.days.at(0).castings.at(0);
    EXPECT_NEAR(casting.tableKg, 250.0, 1e-9);
    // The standard reckons with 10 m/s2, we with 9.81: two in a hundred.
    EXPECT_NEAR(casting.tableKpa, 1.25, 0.025);
    ASSERT_NE(result.find("table_load"), nullptr);
    EXPECT_EQ(result.find("uplift"), nullptr);
}

TEST(PourPlan, FoamIsSaidOnceForAll)
{
    auto cored = [](const std::string& id, double heightMm) {
        Part part;
        part.id = id;
        Support support;
        support.core = Core{400, heightMm, 40, 20, {}};
        support.mix = "body";
        part.body = support;
        return std::make_shared<const Part>(part);
    };
    const Poured result = poured(planOf({cored("S1", 300), cored("S2", 600)}), evenWeather(75));
    const Finding* finding = result.find("uplift");
    ASSERT_NE(finding, nullptr);
    EXPECT_THAT(finding->subjects, ElementsAre("S2", "S1"));
    // 9.6 l x 2.28 kg/l x 9.81 (F = V (fresh - foam) g)
    EXPECT_NEAR(numberAt(finding->values, "lift_n").value_or(0), 9.6 * 2.28 * 9.81, 1e-9);
}

// Random kitchens: every casting exactly once, litres kept, nothing begun that cannot be finished.
TEST(PourPlanProperty, EveryCastingOnceAndNothingBegunInVain)
{
    std::mt19937 random(7);
    const auto pick = [&](double low, double high) { return std::uniform_real_distribution<>(low, high)(random); };
    for (int round = 0; round < 60; ++round) {
        std::vector<PartPtr> parts;
        const int count = 1 + static_cast<int>(pick(0, 9));
        for (int i = 0; i < count; ++i) {
            auto part = std::make_shared<Part>(*slab("C" + std::to_string(i), pick(4, 90), i % 3 ? "body" : "worktop"));
            Counter& counter = std::get<Counter>(part->body);
            if (i % 2) {
                counter.rim = Rim{70, 80, std::nullopt, {}};
                counter.filler = Filler{};
                counter.steel = Steel{};
                counter.steel->mesh = Mesh{};
            }
            parts.push_back(part);
        }
        Plan plan = strippedSoon(planOf(std::move(parts), pick(5, 25), 8.0));
        plan.pouring->hours = pick(0.5, 9);
        plan.pouring->startH = pick(5, 13);
        if (round % 2) plan.pouring->moulds = 1 + static_cast<int>(pick(0, 4));
        plan.pouring->order = {"C1", "C0"};
        PourWeather weather = evenWeather(75);
        for (WeatherHour& hour : weather.hours) {
            hour.workingMinutes = 45 + 30 * std::cos((hour.hourOfDay - 4) / 12 * 3.14159265);
        }
        const Poured result = poured(plan, weather, pick(8, 70));

        std::multiset<std::string> seen;
        double calendarH = 0.0;
        std::vector<std::pair<double, double>> inMould;  // from, to in hours since the first midnight
        for (const PourDay& day : result.pour.days) {
            calendarH += 24.0 * day.afterDays;
            double litres = 0.0;
            double layered = 0.0;
            double mixed = 0.0;
            double before = 0.0;
            const double evening = plan.pouring->hours * 60 - (day.startH - plan.pouring->startH) * 60;
            for (const PouredCasting& casting : day.castings) {
                seen.insert(casting.casting);
                litres += casting.litres;
                for (const PourLayer& layer : casting.layers) {
                    layered += layer.litres;
                    EXPECT_LE(layer.fromMin, layer.toMin + 1e-9);
                    EXPECT_GE(layer.fromMin, casting.startMin - 1e-9);
                    EXPECT_LE(layer.toMin, casting.endMin + 1e-9);
                }
                EXPECT_GE(casting.startMin, before - 1e-9);
                EXPECT_LE(casting.startMin, casting.endMin + 1e-9);
                before = casting.endMin;
                // Alone on its day where nothing better can be had; otherwise never begun in vain.
                if (day.castings.size() > 1) {
                    if (&casting != &day.castings.front()) {
                        EXPECT_TRUE(casting.fits);
                        EXPECT_LE(casting.endMin, evening + 1e-6);
                    }
                } else if (!casting.fits) {
                    EXPECT_NE(result.find("cold_joint_certain"), nullptr);
                }
                const double startH = calendarH + day.startH + casting.startMin / 60;
                if (plan.pouring->moulds) {
                    int lying = 0;
                    for (const auto& [from, to] : inMould) lying += from <= startH && startH < to - 1e-6 ? 1 : 0;
                    EXPECT_LT(lying, *plan.pouring->moulds);
                }
                inMould.emplace_back(startH, calendarH + day.startH + casting.endMin / 60 + kDefaultLiftAgeH);
            }
            int number = 0;
            for (const PourBatch& batch : day.mixed) {
                double into = 0.0;
                for (const auto& [casting, castingL] : batch.into) into += castingL;
                EXPECT_NEAR(into, batch.litres, 1e-9);
                EXPECT_GT(batch.litres, 0.0);
                mixed += batch.litres;
                EXPECT_GE(batch.number, 1);
                ++number;
            }
            EXPECT_EQ(number, day.batches);
            // Sums of some hundred litres: the last digits of doubles.
            EXPECT_NEAR(layered, litres, 1e-9);
            EXPECT_NEAR(mixed, litres, 1e-9);
            EXPECT_NEAR(day.litres, litres, 1e-9);
        }
        EXPECT_EQ(seen.size(), result.castings.size());
        for (const CastingPtr& casting : result.castings) EXPECT_EQ(seen.count(casting->id), 1u) << casting->id;
        EXPECT_TRUE(result.pour.leftOut.empty());
        double all = 0.0;
        for (const MixQuantities& q : result.quantities) all += q.volumeL;
        double planned = 0.0;
        for (const PourDay& day : result.pour.days) planned += day.litres;
        EXPECT_NEAR(planned, all, 1e-9);
    }
}

}  // namespace
}  // namespace yardcast
