#include "core/pour/mixing_card.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <numeric>
#include <random>

#include "core/io/plan_patch.h"
#include "core/materials/materials.h"
#include "core/pour/batch_shares.h"
#include "core/pour/pour_plan.h"
#include "tests/core/pour/mix_samples.h"
#include "tests/core/pour/pour_fixture.h"

namespace yardcast {
namespace {

struct Cards {
    std::vector<MixQuantities> quantities;
    std::vector<MixingCard> cards;
    std::vector<Finding> findings;

    const Finding* find(const std::string& code) const
    {
        for (const Finding& each : findings) {
            if (each.code == code) return &each;
        }
        return nullptr;
    }
};

Cards cardsOf(const Plan& plan, double litres = 100.0)
{
    std::vector<CastingPtr> castings;
    for (const Mix& mix : plan.mixes) castings.push_back(castingOf("C-" + mix.id, litres, mix.id));
    Cards result;
    result.quantities = mixQuantities(plan, castings, result.findings);
    result.findings.clear();
    result.cards = mixingCards(plan, result.quantities, result.findings);
    return result;
}

Plan planOf(const Mix& mix)
{
    Plan plan;
    plan.mixes = {mix};
    plan.mixer = Mixer{63, 8, 65, {}};
    return plan;
}

/// All batches of a card: kg of each thing, both portions of water and its ice as one.
std::map<std::string, double> summed(const MixingCard& card)
{
    std::map<std::string, double> sums;
    for (const BatchCard* batch : card.batches()) {
        for (const CardStep& step : batch->steps) {
            const bool water = step.what == Ingredient::waterFirst || step.what == Ingredient::waterLast ||
                               step.what == Ingredient::ice;
            if (step.what == Ingredient::ice) sums["ice"] += step.kg * batch->times;
            const std::string name = water ? "water" : std::to_string(static_cast<int>(step.what)) + step.kind;
            sums[name] += step.kg * batch->times;
        }
        sums["litres"] += batch->litres * batch->times;
        sums["bags"] += batch->bags * batch->times;
    }
    return sums;
}

std::string key(Ingredient what, const std::string& kind = {}) { return std::to_string(static_cast<int>(what)) + kind; }

/// What the cards sum to is what the castings need, for any size of drum, mix and job.
TEST(MixingCard, BatchesSumToTheQuantities)
{
    std::mt19937 random(7);
    std::uniform_real_distribution<double> litres(0.5, 400.0);
    std::uniform_real_distribution<double> drum(12.0, 160.0);
    for (int i = 0; i < 60; ++i) {
        Plan plan = planOf(i % 2 == 0 ? bagMix() : recipeMix());
        if (i % 5 == 0) plan.mixes[0].trial = TrialBatch{10, 22.0, {}, {}};
        plan.mixer->drumL = drum(random);
        if (i % 7 == 0) plan.mixer.reset();
        if (i % 3 == 0) plan.conditions.icePercent = 25.0 * (i % 4);
        const double net = litres(random);
        const Cards made = cardsOf(plan, net);
        ASSERT_EQ(made.cards.size(), 1U);
        const MixQuantities& q = made.quantities[0];
        const auto sums = summed(made.cards[0]);
        const auto near = [&](const std::string& name, double expected) {
            const auto found = sums.find(name);
            EXPECT_NEAR(found == sums.end() ? 0.0 : found->second, expected, 1e-9 * (1 + expected)) << name << ' ' << i;
        };
        near("litres", net * 1.08);
        near("litres", q.volumeL);
        near("bags", q.bagsExact);
        near("water", q.waterL);
        near("ice", q.waterL * plan.conditions.icePercent / 100);
        near("ice", q.iceKg);
        near(key(Ingredient::dryMix), q.bagsKg);
        near(key(Ingredient::cement), q.perBag ? q.extraCementKg : q.cementKg);
        near(key(Ingredient::sand), q.sandKg);
        near(key(Ingredient::gravel), q.gravelKg);
        near(key(Ingredient::silicaFume), q.silicaFumeKg);
        near(key(Ingredient::plasticiser), q.plasticiserKg);
        near(key(Ingredient::pigment), q.pigmentKg);
        for (const auto& [kind, kg] : q.fibresByKindKg) near(key(Ingredient::fibres, kind), kg);
        if (plan.mixer) {
            EXPECT_EQ(made.cards[0].count(), q.batches);
        }
    }
}

TEST(MixingCard, NoBatchIsFullerThanTheDrumAllows)
{
    for (double drum = 10; drum < 200; drum += 3.7) {
        for (const Mix& mix : {bagMix(), recipeMix()}) {
            Plan plan = planOf(mix);
            plan.mixer->drumL = drum;
            plan.mixer->usablePercent = 70;
            const Cards made = cardsOf(plan);
            for (const BatchCard* batch : made.cards[0].batches()) EXPECT_LE(batch->litres, drum * 0.70 + 1e-9);
        }
    }
}

TEST(MixingCard, WholeBagsAndTheOddOneWorkedOut)
{
    const Cards made = cardsOf(planOf(bagMix()));  // 40.95 l usable: 3 bags of about 12.6 l; 8.6 bags in all
    const MixingCard& card = made.cards[0];
    EXPECT_EQ(card.full.times, 2);
    EXPECT_EQ(card.odd.times, 1);
    EXPECT_FALSE(card.byHand);
    const auto dry = [](const BatchCard& batch) {
        for (const CardStep& step : batch.steps) {
            if (step.what == Ingredient::dryMix) return step;
        }
        return CardStep{};
    };
    EXPECT_EQ(dry(card.full).wholeBags, 3);
    EXPECT_EQ(dry(card.full).restKg, 0.0);
    EXPECT_EQ(dry(card.odd).wholeBags, 2);
    EXPECT_NEAR(dry(card.odd).restKg, (made.quantities[0].bagsExact - 8) * 25, 1e-9);
}

/// Whatever is asked for: the sum is kept, nothing is fuller than the mixer, nothing too little where there is more than one.
TEST(BatchShares, NoBatchIsTooLittleToMix)
{
    for (const double inBatch : {0.35, 0.9, 1.0, 2.0, 3.0, 4.0, 7.0}) {
        for (double bags = 0.05; bags < 30; bags += 0.0731) {
            const BatchShares shares = shareBatches(bags, inBatch);
            EXPECT_EQ(shares.count(), static_cast<int>(std::ceil(bags / inBatch - 1e-9))) << bags << " by " << inBatch;
            EXPECT_NEAR(shares.full * shares.fullBags + shares.lastButOneBags + shares.lastBags, bags, 1e-9);
            for (const double one : {shares.full > 0 ? shares.fullBags : 0.0, shares.lastButOneBags, shares.lastBags}) {
                EXPECT_LE(one, inBatch + 1e-9);
                const bool enough = one == 0.0 || one >= kLeastBatchShare * inBatch - 1e-9;
                EXPECT_TRUE(enough || shares.count() == 1) << one;
            }
            if (inBatch >= 1.0 && shares.lastButOneBags > 0.0) {
                EXPECT_DOUBLE_EQ(std::round(2 * shares.lastButOneBags), 2 * shares.lastButOneBags) << "only the last is weighed";
            }
        }
    }
}

TEST(BatchShares, ByHand)
{
    // 12.13 bags, three at a time: the fifth would be an eighth of a bag.
    const BatchShares three = shareBatches(12.13, 3);
    EXPECT_EQ(three.full, 3);
    EXPECT_DOUBLE_EQ(three.lastButOneBags, 2.0);
    EXPECT_NEAR(three.lastBags, 1.13, 1e-9);
    EXPECT_NEAR(three.sparedBags, 0.13, 1e-9);
    const BatchShares one = shareBatches(4.2, 1);  // bags one by one: half a bag, and what is left
    EXPECT_EQ(one.full, 3);
    EXPECT_DOUBLE_EQ(one.lastButOneBags, 0.5);
    EXPECT_NEAR(one.lastBags, 0.7, 1e-9);
    const BatchShares enough = shareBatches(13.1, 3);  // more than a third: it stays
    EXPECT_EQ(enough.full, 4);
    EXPECT_EQ(enough.lastButOneBags, 0.0);
    EXPECT_NEAR(enough.lastBags, 1.1, 1e-9);
    const BatchShares weighed = shareBatches(2.0, 0.6);  // less than a bag: all weighed, all alike
    EXPECT_TRUE(weighed.even);
    EXPECT_EQ(weighed.full, 4);
    EXPECT_DOUBLE_EQ(weighed.fullBags, 0.5);
    EXPECT_EQ(weighed.sparedBags, 0.2 >= 0.6 / 3 ? 0.0 : 0.2);
    EXPECT_EQ(shareBatches(0.1, 3).lastBags, 0.1) << "nothing to share it with";
}

/// Where one run makes all, the pour plan mixes the batches of the card; volumes are those of the castings with allowance.
TEST(BatchShares, ThePourPlanMixesWhatTheCardSays)
{
    int shared = 0;
    for (double allowance = 0; allowance < 40; allowance += 1.7) {
        for (Mix mix : {bagMix(), recipeMix()}) {
            mix.allowancePercent = allowance;
            Plan plan = planOf(mix);
            plan.parts = {pour_fixture::slab("A", 61, mix.id), pour_fixture::slab("B", 39.3, mix.id)};
            const std::vector<CastingPtr> castings = pour_fixture::castingsOfPlan(plan);
            std::vector<Finding> findings;
            const std::vector<MixQuantities> quantities = mixQuantities(plan, castings, findings);
            const MixingCard card = mixingCards(plan, quantities, findings).at(0);
            const PourPlan pour = pourPlan(plan, castings, quantities, pour_fixture::evenWeather(600), findings);
            ASSERT_EQ(pour.days.size(), 1u);
            std::vector<double> cardL;
            for (const BatchCard* batch : card.batches()) cardL.insert(cardL.end(), std::size_t(batch->times), batch->litres);
            std::vector<double> pourL;
            for (const PourBatch& batch : pour.days[0].mixed) pourL.push_back(batch.litres);
            EXPECT_THAT(pourL, testing::Pointwise(testing::DoubleNear(1e-9), cardL));
            double castingsL = 0.0;
            for (const CastingPtr& casting : castings) castingsL += casting->volumeL * (1 + allowance / 100);
            EXPECT_NEAR(std::accumulate(cardL.begin(), cardL.end(), 0.0), castingsL, 1e-9 * castingsL);
            shared += card.lastButOne.times + (card.even ? 1 : 0);
        }
    }
    EXPECT_GT(shared, 5);
}

TEST(MixingCard, IceTakesThePlaceOfFirstWater)
{
    Plan plan = planOf(bagMix());
    const BatchCard dry = cardsOf(plan).cards[0].full;
    plan.conditions.icePercent = 75;
    const BatchCard iced = cardsOf(plan).cards[0].full;
    ASSERT_EQ(iced.steps.size(), dry.steps.size() + 1);
    EXPECT_EQ(iced.steps[1].what, Ingredient::ice);
    EXPECT_NEAR(iced.steps[0].kg + iced.steps[1].kg, dry.steps[0].kg, 1e-9);
    EXPECT_NEAR(iced.steps[0].kg, dry.steps[0].kg * 0.05 / 0.80, 1e-9);
    // Water and binder are what they were.
    EXPECT_EQ(iced.litres, dry.litres);
}

TEST(MixingCard, WaterComesFirstAndFibresLast)
{
    for (const Mix& mix : {bagMix(), recipeMix()}) {
        const Cards made = cardsOf(planOf(mix));
        const BatchCard& batch = made.cards[0].full;
        ASSERT_GT(batch.steps.size(), 5U);
        EXPECT_EQ(batch.steps.front().what, Ingredient::waterFirst);
        EXPECT_EQ(batch.steps.back().what, Ingredient::fibres);
        double minutes = 0.0;
        double first = 0.0;
        double last = 0.0;
        for (std::size_t i = 0; i < batch.steps.size(); ++i) {
            minutes += batch.steps[i].mixMinutes;
            if (batch.steps[i].what == Ingredient::waterFirst) first = batch.steps[i].litres;
            if (batch.steps[i].what == Ingredient::waterLast) {
                last = batch.steps[i].litres;
                EXPECT_EQ(batch.steps[i - 1].what, Ingredient::plasticiser) << "stirred into the last water";
            }
        }
        EXPECT_EQ(minutes, batch.minutes);
        EXPECT_NEAR(first, 4 * last, 1e-9);
    }
}

TEST(MixingCard, ByHandWithoutAMixer)
{
    Plan plan = planOf(bagMix());
    plan.mixer.reset();
    const Cards made = cardsOf(plan);
    EXPECT_TRUE(made.cards[0].byHand);
    EXPECT_EQ(made.cards[0].full.bags, 1.0);
    EXPECT_LE(made.cards[0].full.litres, 20.0);
}

TEST(MixingCard, AScoopTooSmallForTheScale)
{
    Mix mix = bagMix();
    mix.pigmentPercent = 0.05;  // 2.6 g a bag
    const Cards made = cardsOf(planOf(mix));
    const Finding* finding = made.find("scoop_small");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->severity, Severity::note);
    EXPECT_EQ(wordAt(finding->values, "item"), "pigment");
    const auto sums = summed(made.cards[0]);
    EXPECT_LT(numberAt(finding->values, "scoop_g").value(), 3 * 2.6 + 1e-9);
    EXPECT_GT(sums.at("litres"), 0.0);
}

TEST(MixingCard, SpreadAndSpareBag)
{
    const auto with = [](double bags, double spread) {
        Mix mix = bagMix();
        mix.extraCementPercent = mix.silicaFumePercent = mix.plasticiserPercent = mix.pigmentPercent = 0;
        mix.allowancePercent = 0;
        mix.fibres.clear();
        mix.bag.yieldSpreadPercent = spread;
        return cardsOf(planOf(mix), bags * 12.0).cards[0];
    };
    // 7.95 bags of 12 l are 95.4 l; 8 bags give 92.16 to 99.84 l.
    EXPECT_NEAR(with(7.95, 4).litresLow, 92.16, 1e-9);
    EXPECT_NEAR(with(7.95, 4).litresHigh, 99.84, 1e-9);
    EXPECT_EQ(with(7.95, 4).spareBags, 1);
    EXPECT_EQ(with(7.2, 4).spareBags, 0);
    EXPECT_EQ(with(7.2, 20).spareBags, 1);
    EXPECT_EQ(with(40, 10).spareBags, 5) << "40 / 0.9 = 44.4";
    EXPECT_EQ(with(7.95, 0).spareBags, 0);
}

TEST(Findings, ALeanMixIsOneFindingASubject)
{
    Mix mix = bagMix();
    mix.maxWaterCement = 2.0;
    mix.bag.waterL = 3.3;
    mix.bag.cementKg = 2.0;
    mix.strengthClass = "C20/25";
    const Cards made = cardsOf(planOf(mix));
    std::map<std::string, int> count;
    for (const Finding& each : made.findings) ++count[each.code];
    EXPECT_EQ(count["exposure_ratio"], 1);
    EXPECT_EQ(count["exposure_cement"], 1);
    EXPECT_EQ(count["exposure_class"], 1);
    EXPECT_EQ(count["exposure_air"], 0) << "not known is not failed";
    EXPECT_EQ(count["exposure_air_unknown"], 1);
    EXPECT_EQ(wordAt(made.find("exposure_class")->values, "least_class"), "C30/37");
}

/// Every remedy offered is an edit of the plan file after which the finding is gone.
TEST(Findings, RemediesClearWhatTheyAreOfferedFor)
{
    Mix wet = bagMix();
    wet.bag.waterL = 3.3;
    Mix lean = bagMix();
    lean.bag.cementKg = 2.4;
    lean.maxWaterCement = 2.0;
    Mix own = recipeMix();
    own.recipe->waterLM3 = 230;
    Mix sweet = bagMix();
    sweet.plasticiserPercent = 7;
    sweet.pigmentPercent = 12;
    int tried = 0;
    for (const Mix& mix : {wet, lean, own, sweet}) {
        const auto findingsOf = [](const Plan& plan) {
            std::vector<Finding> all;
            const auto quantities = mixQuantities(plan, {castingOf("C1", 60, plan.mixes[0].id)}, all);
            mixingCards(plan, quantities, all);
            return all;
        };
        const Plan plan = planOf(mix);
        for (const Finding& finding : findingsOf(plan)) {
            for (const Remedy& remedy : finding.remedies) {
                const PlanReading changed = applyPatch(plan, remedy.edit);
                ASSERT_TRUE(changed.plan.has_value()) << remedy.code << ' ' << remedy.edit;
                for (const Finding& left : findingsOf(*changed.plan)) EXPECT_NE(left.code, finding.code) << remedy.edit;
                ++tried;
            }
        }
    }
    EXPECT_GE(tried, 7);
}

TEST(Findings, AirThatIsKnownIsJudged)
{
    Mix mix = bagMix();
    mix.airPercent = 2.0;
    const Cards low = cardsOf(planOf(mix));
    ASSERT_NE(low.find("exposure_air"), nullptr);
    EXPECT_EQ(low.find("exposure_air")->severity, Severity::caution);
    EXPECT_EQ(low.find("exposure_air_unknown"), nullptr);
    mix.airPercent = 4.0;
    EXPECT_EQ(cardsOf(planOf(mix)).find("exposure_air"), nullptr);
    Plan sheltered = planOf(bagMix());
    sheltered.assumptions.emplace().frost = Frost::none;
    EXPECT_EQ(cardsOf(sheltered).find("exposure_air_unknown"), nullptr);
}

TEST(Findings, AirUnknownIsSaidOnceForAllMixes)
{
    Plan plan = planOf(bagMix());
    plan.mixes.push_back(recipeMix());
    const Cards made = cardsOf(plan);
    const auto said = std::count_if(made.findings.begin(), made.findings.end(),
                                    [](const Finding& f) { return f.code == "exposure_air_unknown"; });
    EXPECT_EQ(said, 1);
    EXPECT_THAT(made.find("exposure_air_unknown")->subjects, testing::ElementsAre("worktop", "own"));
}

TEST(Findings, TooWetByDensity)
{
    Mix mix = bagMix();
    const Charge planned = chargeOf(mix);
    mix.trial = TrialBatch{10, planned.densityKgM3() / 100 * 0.95, {}, {}};
    const Cards made = cardsOf(planOf(mix));
    const Finding* finding = made.find("too_wet_by_density");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->severity, Severity::caution);
    EXPECT_NEAR(numberAt(finding->values, "short_percent").value(), 5.0, 1e-9);
    EXPECT_EQ(wordAt(finding->values, "in"), "bag");
    // The card speaks of the bucket that was weighed, and so does what the ratio is good for.
    EXPECT_EQ(numberAt(finding->values, "water_cement").value(), made.cards[0].check.ratios.waterCement);
    EXPECT_GT(made.cards[0].check.ratios.waterCement, ratiosOf(mix, planned).waterCement + 0.1);
    EXPECT_NE(made.find("ratio_class"), nullptr);
    EXPECT_EQ(made.quantities[0].bagsExact, cardsOf(planOf(bagMix())).quantities[0].bagsExact);
    EXPECT_EQ(made.find("yield_low"), nullptr);
    mix.trial->concreteKg = planned.densityKgM3() / 100 * 1.08;
    const Cards heavy = cardsOf(planOf(mix));
    EXPECT_EQ(heavy.find("too_wet_by_density"), nullptr);
    EXPECT_NE(heavy.find("yield_low"), nullptr);
    EXPECT_GT(heavy.quantities[0].bagsExact, made.quantities[0].bagsExact);
}

}  // namespace
}  // namespace yardcast
