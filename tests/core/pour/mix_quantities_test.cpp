#include "core/pour/mix_quantities.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace yardcast {
namespace {

Mix worktop()
{
    Mix mix;
    mix.id = "worktop";
    mix.bag = Bag{25, 12.0, 2.6, 4.2, 8, {}, 4, {}};
    mix.extraCementPercent = 4;
    mix.silicaFumePercent = 8;
    mix.plasticiserPercent = 1;
    mix.fibres = {Fibre{"AR glass", 3, {}}};
    mix.maxWaterCement = 0.50;
    mix.allowancePercent = 8;
    return mix;
}

CastingPtr casting(const std::string& id, double litres, const std::string& mix = "worktop", double thicknessMm = 40)
{
    auto c = std::make_shared<Casting>();
    c->id = id;
    c->part = id;
    c->mix = mix;
    c->volumeL = litres;
    c->zones = {{ZoneKind::field, {}, 0, thicknessMm}, {ZoneKind::filler, {}, thicknessMm, thicknessMm + 5}};
    return c;
}

struct Result {
    std::vector<MixQuantities> mixes;
    std::vector<Finding> findings;

    const Finding* find(const std::string& code) const
    {
        for (const Finding& f : findings) {
            if (f.code == code) return &f;
        }
        return nullptr;
    }
    double value(const std::string& code, const std::string& key) const
    {
        const Finding* f = find(code);
        return f != nullptr && f->values.count(key) > 0 ? std::get<double>(f->values.at(key)) : NAN;
    }
};

Result quantities(const Plan& plan, const std::vector<CastingPtr>& castings)
{
    Result result;
    result.mixes = mixQuantities(plan, castings, result.findings);
    return result;
}

Plan planWith(const Mix& mix)
{
    Plan plan;
    plan.mixes = {mix};
    return plan;
}

TEST(MixQuantities, WorkedByHand)
{
    // One bag: extra cement 4 % of 25 = 1.0; cement 4.2 + 1.0 = 5.2; fume 8 % = 0.416; plasticiser 1 % = 0.052 kg.
    // Litres 12 + 1.0 / 3.15 + 0.416 / 2.2 + 0.052 / 1.07 = 12 + 0.317460 + 0.189091 + 0.048598 = 12.555149;
    // fibres 3 kg/m3 of 2.68 kg/l are 0.00111940 of the volume: 12.555149 / 0.99888060 = 12.569219 l.
    const Result r = quantities(planWith(worktop()), {casting("C1", 60), casting("C2", 40)});
    ASSERT_EQ(r.mixes.size(), 1U);
    const MixQuantities& q = r.mixes[0];
    EXPECT_EQ(q.mix, "worktop");
    EXPECT_NEAR(q.netL, 100, 1e-9);
    EXPECT_NEAR(q.volumeL, 108, 1e-9);
    EXPECT_NEAR(q.litresPerBag, 12.569219, 1e-5);
    EXPECT_NEAR(q.bagsExact, 8.592419, 1e-5);
    EXPECT_EQ(q.bags, 9);
    EXPECT_NEAR(q.bagsKg, 214.8105, 1e-3);
    EXPECT_NEAR(q.extraCementKg, 8.592419, 1e-5);
    EXPECT_NEAR(q.silicaFumeKg, 3.574446, 1e-5);
    EXPECT_NEAR(q.plasticiserKg, 0.446806, 1e-5);
    EXPECT_NEAR(q.waterL, 22.340290, 1e-4);
    EXPECT_NEAR(q.fibresKg, 0.324, 1e-9);  // 3 kg/m3 of 108 l
    ASSERT_EQ(q.fibresByKindKg.size(), 1U);
    EXPECT_EQ(q.fibresByKindKg[0].first, "AR glass");
    EXPECT_NEAR(q.fibresByKindKg[0].second, 0.324, 1e-9);
    // Water 2.6 + 0.65 x 0.052 = 2.6338: over 5.2 is 0.5065; with k = 1 over 5.616 is 0.46898.
    EXPECT_NEAR(q.waterCement, 0.506500, 1e-6);
    EXPECT_EQ(q.kValue, 1.0);
    EXPECT_NEAR(q.waterBinder, 0.468982, 1e-6);
    // (25 + 1 + 0.416 + 0.052 + 0.037708 + 2.6) / 12.569219.
    EXPECT_NEAR(q.freshDensityKgM3, 2315.626, 0.01);
    ASSERT_EQ(q.castingLitres.size(), 2U);
    EXPECT_EQ(q.castingLitres[1].first, "C2");
    EXPECT_NEAR(q.castingLitres[1].second, 43.2, 1e-9);
    EXPECT_EQ(q.batches, 0) << "no mixer";
    EXPECT_TRUE(r.findings.empty());
}

TEST(MixQuantities, VolumesAddUp)
{
    const Result r = quantities(planWith(worktop()), {casting("C1", 100)});
    ASSERT_EQ(r.mixes.size(), 1U);
    const MixQuantities& q = r.mixes[0];
    const double litres = q.bagsExact * 12.0 + q.extraCementKg / 3.15 + q.silicaFumeKg / 2.2 +
                          q.plasticiserKg / 1.07 + q.fibresKg / 2.68;
    EXPECT_NEAR(litres, q.volumeL, 1e-9);
}

TEST(MixQuantities, OnlyMixesInUseInThePlansOrder)
{
    Plan plan;
    Mix a = worktop();
    a.id = "a";
    Mix b = worktop();
    b.id = "b";
    Mix c = worktop();
    c.id = "c";
    plan.mixes = {c, b, a};
    const Result r = quantities(plan, {casting("C1", 10, "a"), casting("C2", 10, "c"), casting("C3", 10, "gone")});
    ASSERT_EQ(r.mixes.size(), 2U);
    EXPECT_EQ(r.mixes[0].mix, "c");
    EXPECT_EQ(r.mixes[1].mix, "a");
}

TEST(MixQuantities, AnIdThatComesTwiceIsTheFirst)
{
    Plan plan;
    Mix second = worktop();
    second.bag.yieldL = 6;
    plan.mixes = {worktop(), second};
    const Result r = quantities(plan, {casting("C1", 100)});
    ASSERT_EQ(r.mixes.size(), 1U);
    EXPECT_NEAR(r.mixes[0].litresPerBag, 12.569219, 1e-5);
}

TEST(MixQuantities, ExactlyWholeBagsAreNotRoundedUp)
{
    Mix mix = worktop();
    mix.extraCementPercent = mix.silicaFumePercent = mix.plasticiserPercent = mix.allowancePercent = 0;
    mix.fibres.clear();
    const Result r = quantities(planWith(mix), {casting("C1", 36)});
    ASSERT_EQ(r.mixes.size(), 1U);
    EXPECT_EQ(r.mixes[0].bags, 3);
    EXPECT_EQ(r.mixes[0].kValue, 0.0);
    EXPECT_EQ(r.mixes[0].waterBinder, r.mixes[0].waterCement);
}

TEST(WaterCement, OverTheLimitIsACautionThatNamesTheWaterThatWouldDo)
{
    Mix mix = worktop();
    mix.bag.waterL = 3.0;
    const Result r = quantities(planWith(mix), {casting("C1", 100)});
    const Finding* f = r.find("water_cement_over");
    ASSERT_NE(f, nullptr);
    EXPECT_EQ(f->severity, Severity::caution);
    EXPECT_EQ(f->pointer, "/mixes/0/bag/water_l");
    EXPECT_THAT(f->subjects, testing::ElementsAre("worktop"));
    // Limit 0.50 x 5.616 - 0.65 x 0.052 = 2.7742 l.
    const double most = r.value("water_cement_over", "most_water_l");
    EXPECT_NEAR(most, 2.7742, 1e-9);
    mix.bag.waterL = most;
    const Result after = quantities(planWith(mix), {casting("C1", 100)});
    EXPECT_EQ(after.find("water_cement_over"), nullptr);
    EXPECT_NEAR(after.mixes.at(0).waterBinder, 0.50, 1e-12);
}

TEST(SilicaFume, CountsUpToElevenPercentOfTheCement)
{
    Mix mix = worktop();
    mix.silicaFumePercent = 11;
    const Result at = quantities(planWith(mix), {casting("C1", 100)});
    EXPECT_EQ(at.find("fume_over"), nullptr);
    mix.silicaFumePercent = 20;
    const Result over = quantities(planWith(mix), {casting("C1", 100)});
    const Finding* f = over.find("fume_over");
    ASSERT_NE(f, nullptr);
    EXPECT_EQ(f->severity, Severity::note);
    EXPECT_EQ(over.mixes.at(0).waterBinder, at.mixes.at(0).waterBinder);
}

TEST(SilicaFume, CountsTwiceWhereALowRatioIsSpecified)
{
    Mix mix = worktop();
    mix.maxWaterCement = 0.45;
    const Result r = quantities(planWith(mix), {casting("C1", 100)});
    EXPECT_EQ(r.mixes.at(0).kValue, 2.0);
    EXPECT_NEAR(r.mixes.at(0).waterBinder, 2.6338 / (5.2 + 2 * 0.416), 1e-9);
}

TEST(Aggregate, AboveAThirdOfTheThinnestConcreteIsACaution)
{
    EXPECT_EQ(quantities(planWith(worktop()), {casting("C1", 100, "worktop", 24)}).find("aggregate_large"), nullptr);
    const Result r =
        quantities(planWith(worktop()), {casting("C1", 100, "worktop", 40), casting("C2", 10, "worktop", 20)});
    const Finding* f = r.find("aggregate_large");
    ASSERT_NE(f, nullptr) << "the filler's 5 mm do not count, the 20 mm do";
    EXPECT_THAT(f->subjects, testing::ElementsAre("worktop", "C2"));
    EXPECT_NEAR(r.value("aggregate_large", "thickness_mm"), 20, 1e-12);
}

TEST(StrengthClass, OneNobodyKnowsIsSaid)
{
    Plan plan;
    plan.mixes = {worktop()};
    plan.mixes[0].strengthClass = "C30/37";
    EXPECT_EQ(quantities(plan, {casting("C1", 60)}).find("strength_class_unknown"), nullptr);
    for (const char* unknown : {"C99/100", "hard", ""}) {
        plan.mixes[0].strengthClass = unknown;
        const Result result = quantities(plan, {casting("C1", 60)});
        const Finding* finding = result.find("strength_class_unknown");
        ASSERT_NE(finding, nullptr) << unknown;
        EXPECT_EQ(finding->pointer, "/mixes/0/strength_class");
        EXPECT_EQ(std::get<std::string>(finding->values.at("class")), unknown);
        EXPECT_EQ(finding->severity, Severity::stop) << "nothing is lifted by a class that nobody knows";
        EXPECT_EQ(wordAt(finding->values, "taken"), "C12/15");
        EXPECT_TRUE(finding->remedies.empty());
    }
    plan.mixes[0].strengthClass = "C30";
    const Result result = quantities(plan, {casting("C1", 60)});
    const Finding* finding = result.find("strength_class_unknown");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(wordAt(finding->values, "taken"), "C25/30");
    ASSERT_EQ(finding->remedies.size(), 2u);
    EXPECT_EQ(finding->remedies[1].edit, R"([{"op":"add","path":"/mixes/0/strength_class","value":"C30/37"}])");
}

TEST(Batches, TakeWholeBagsWhereOneFits)
{
    Plan plan = planWith(worktop());
    plan.mixer = Mixer{63, 8, 65, {}};  // usable 40.95 l: 3 bags of 12.57
    const Result r = quantities(plan, {casting("C1", 100)});
    ASSERT_EQ(r.mixes.size(), 1U);
    EXPECT_NEAR(r.mixes[0].usableDrumL, 40.95, 1e-9);
    EXPECT_EQ(r.mixes[0].bagsPerBatch, 3.0);
    EXPECT_EQ(r.mixes[0].batches, 3);  // 8.59 bags
    EXPECT_EQ(r.find("mixer_small"), nullptr);
}

TEST(Batches, OfPartBagsInASmallDrum)
{
    Plan plan = planWith(worktop());
    plan.mixer = Mixer{15, 8, 65, {}};
    const Result r = quantities(plan, {casting("C1", 100)});
    ASSERT_EQ(r.mixes.size(), 1U);
    EXPECT_NEAR(r.mixes[0].bagsPerBatch, 9.75 / 12.569219, 1e-6);
    EXPECT_EQ(r.mixes[0].batches, 12);  // 108 / 9.75 = 11.08
    ASSERT_NE(r.find("mixer_small"), nullptr);
    EXPECT_EQ(r.find("mixer_small")->pointer, "/mixer/drum_l");
}

TEST(MixQuantities, BrokenNumbersGiveNoEntryAndNoNan)
{
    const double bad[] = {0.0, -1.0, NAN, HUGE_VAL, 1e300};
    for (const double v : bad) {
        for (int field = 0; field < 10; ++field) {
            Plan plan = planWith(worktop());
            plan.mixer = Mixer{};
            Mix& m = plan.mixes[0];
            double* fields[] = {&m.bag.massKg,           &m.bag.yieldL,          &m.bag.waterL,
                                &m.bag.cementKg,         &m.bag.maxAggregateMm,  &m.extraCementPercent,
                                &m.silicaFumePercent,    &m.plasticiserPercent,  &m.fibres[0].kgPerM3,
                                &m.allowancePercent};
            *fields[field] = v;
            for (const MixQuantities& q : quantities(plan, {casting("C1", 100)}).mixes) {
                for (const double value : {q.volumeL, q.litresPerBag, q.bagsExact, q.waterL, q.waterCement,
                                           q.waterBinder, q.freshDensityKgM3, q.bagsPerBatch})
                    EXPECT_TRUE(std::isfinite(value)) << field << ' ' << v;
                EXPECT_GT(q.litresPerBag, 0.0);
            }
        }
        Plan plan = planWith(worktop());
        plan.mixer = Mixer{v, 8, 65, {}};
        EXPECT_EQ(quantities(plan, {casting("C1", 100)}).mixes.at(0).batches, 0);
    }
}

}  // namespace
}  // namespace yardcast
