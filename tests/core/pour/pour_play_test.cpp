#include "core/pour/pour_play.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/io/plan_patch.h"
#include "core/pour/play_draws.h"
#include "core/pour/pour_trials.h"
#include "tests/core/pour/pour_fixture.h"

namespace yardcast {
namespace {

using namespace pour_fixture;

PourSpread noSpread() { return {0.0, 0.0, 0.0, 0.0, 0.0}; }

struct Game {
    Plan plan;
    double batchL = 20.0;
    std::function<PourWeather(const Plan&)> weatherOf = [](const Plan&) { return evenWeather(75); };
    double iceCoolsK = 0.0;

    PourPlayPtr play(int plays, const PourSpread& spread, std::uint64_t seed = 1, std::stop_token stop = {}) const
    {
        const auto castings = castingsOfPlan(plan);
        const auto quantities = quantitiesOf(plan, castings, batchL);
        const PlayWorld world{weatherOf, [this](const Plan& of, double waterC, double iceShare) {
                                  return iceShare > 0.0 ? iceCoolsK : (of.conditions.waterC - waterC) * 0.3;
                              }};
        return playPourIn(world, plan, castings, quantities, plays, seed, stop, spread);
    }
};

double phi(double x) { return 0.5 * std::erfc(-x / std::sqrt(2.0)); }

TEST(PlayDraws, LogarithmAndExponentialAreThoseOfTheLibrary)
{
    for (double x = -40; x <= 40; x += 0.37) {
        EXPECT_NEAR(ownExp(x) / std::exp(x), 1.0, 4e-15);  // a few units in the last place
        EXPECT_NEAR(ownLog(std::exp(x)), x, 1e-14);
    }
}

TEST(PlayDraws, NormalIsTheInverseOfTheErrorFunction)
{
    for (const double p : {1e-14, 1e-9, 1e-4, 0.02, 0.2, 0.5, 0.6, 0.925, 0.99, 0.9999}) {
        EXPECT_NEAR(phi(normalOf(p)) / p, 1.0, 1e-12) << p;  // the algorithm claims 1e-16 of the deviate
    }
}

TEST(PlayDraws, SharesAreEvenAndDrawsDoNotHangTogether)
{
    double sum = 0.0;
    double squares = 0.0;
    double crossed = 0.0;
    const int count = 20000;
    for (int i = 0; i < count; ++i) {
        const PlayDraws draws(3, static_cast<std::uint64_t>(i));
        const double a = draws.normal(Draw::batch, 0);
        const double b = draws.normal(Draw::batch, 1);
        sum += a;
        squares += a * a;
        crossed += a * b;
    }
    // Four standard errors of a mean of normals, of their squares, of their products.
    EXPECT_NEAR(sum / count, 0.0, 4 / std::sqrt(count));
    EXPECT_NEAR(squares / count, 1.0, 4 * std::sqrt(2.0 / count));
    EXPECT_NEAR(crossed / count, 0.0, 4 / std::sqrt(count));
}

TEST(PourPlay, WithoutSpreadItIsCertainEitherWay)
{
    Game game{planOf({slab("A", 40)}, 20.0)};
    game.weatherOf = [](const Plan&) { return evenWeather(20.5); };
    EXPECT_DOUBLE_EQ(game.play(50, noSpread())->castings.at(0).chance, 0.0);
    game.weatherOf = [](const Plan&) { return evenWeather(19.5); };
    EXPECT_DOUBLE_EQ(game.play(50, noSpread())->castings.at(0).chance, 1.0);
    EXPECT_DOUBLE_EQ(game.play(50, noSpread())->anyChance, 1.0);
}

/// Steel between the layers is time that the layer below waits: 10 + 10 minutes of two batches, and the laying.
TEST(PourPlay, LayingSteelIsPlayedToo)
{
    auto part = std::make_shared<Part>(*slab("A", 40));
    std::get<Counter>(part->body).steel = Steel{};
    std::get<Counter>(part->body).steel->mesh = Mesh{};
    std::get<Counter>(part->body).steel->mesh->coverMm = 25;
    Game game{planOf({part}, 10.0)};
    game.plan.pouring->layingMinutes = 7.0;
    game.weatherOf = [](const Plan&) { return evenWeather(17.5); };
    EXPECT_DOUBLE_EQ(game.play(50, noSpread())->castings.at(0).chance, 0.0);
    game.weatherOf = [](const Plan&) { return evenWeather(16.5); };
    EXPECT_DOUBLE_EQ(game.play(50, noSpread())->castings.at(0).chance, 1.0);
    PourSpread laying = noSpread();
    laying.layingShare = 0.25;
    game.weatherOf = [](const Plan&) { return evenWeather(17.0); };
    // The median of a log-normal factor of mean 1 lies below 1: less than half of the plays are late.
    const double chance = game.play(2000, laying)->castings.at(0).chance;
    EXPECT_GT(chance, 0.40);
    EXPECT_LT(chance, 0.50);
}

TEST(PourPlay, OneBatchHasNoJoint)
{
    Game game{planOf({slab("A", 20), slab("B", 19)}, 60.0)};
    game.weatherOf = [](const Plan&) { return evenWeather(5); };
    const PourPlayPtr play = game.play(500, PourSpread{});
    EXPECT_DOUBLE_EQ(play->anyChance, 0.0);
    EXPECT_TRUE(play->tried.empty());
    EXPECT_GT(play->castings.at(0).error, 0.0);  // none in 500 is not never
}

// Two batches: a cold joint where the second takes longer than the concrete can be worked. Both log-normal, so the
// logarithm of their ratio is normal and the chance is known.
TEST(PourPlay, TwoBatchesAsTheLogNormalHasIt)
{
    for (const double workingMin : {18.0, 22.0, 27.0}) {
        Game game{planOf({slab("A", 40)}, 20.0)};
        game.weatherOf = [=](const Plan&) { return evenWeather(workingMin); };
        PourSpread spread;
        spread.slipShare = 0.0;
        spread.airC = 0.0;
        const double sd = std::sqrt(std::log(1 + 0.25 * 0.25) + std::log(1 + 0.20 * 0.20));
        const double mean = std::log(20.0) - std::log(1 + 0.25 * 0.25) / 2 - std::log(workingMin) +
                            std::log(1 + 0.20 * 0.20) / 2;
        const double expected = phi(mean / sd);
        const PourPlayPtr play = game.play(20000, spread);
        // Three and a half standard errors of the count.
        EXPECT_NEAR(play->castings.at(0).chance, expected, 3.5 * std::sqrt(expected * (1 - expected) / 20000));
    }
}

// The same with slips: a share of batches takes three times as long.
TEST(PourPlay, SlipsAddTheirShare)
{
    Game game{planOf({slab("A", 40)}, 20.0)};
    game.weatherOf = [](const Plan&) { return evenWeather(40); };
    PourSpread spread = noSpread();
    spread.slipShare = 0.10;
    const double share = game.play(20000, spread)->castings.at(0).chance;
    EXPECT_NEAR(share, 0.10, 3.5 * std::sqrt(0.1 * 0.9 / 20000));
}

// Warmer air by one standard deviation is half a one of concrete: 20 min at 20 deg C, gap 20: half the plays.
TEST(PourPlay, TheAirOfTheDayMovesTheWorkingTime)
{
    Game game{planOf({slab("A", 40)}, 20.0)};
    PourSpread spread = noSpread();
    spread.airC = 4.0;
    game.weatherOf = [](const Plan&) { return evenWeather(20 * std::exp2(0.5 * 4.0 / 10)); };
    // The concrete has to be 2 K warmer, the air 4 K: one standard deviation.
    EXPECT_NEAR(game.play(20000, spread)->castings.at(0).chance, 1 - phi(1.0),
                3.5 * std::sqrt(0.159 * 0.841 / 20000));
}

TEST(PourPlay, SameSeedSameAnswerAndAnotherSeedAnother)
{
    Game game{planOf({slab("A", 40), slab("B", 70)}, 20.0)};
    game.weatherOf = [](const Plan&) { return evenWeather(40); };
    const PourPlayPtr first = game.play(700, PourSpread{}, 5);
    const PourPlayPtr again = game.play(700, PourSpread{}, 5);
    const PourPlayPtr other = game.play(700, PourSpread{}, 6);
    ASSERT_EQ(first->castings.size(), 2u);
    for (std::size_t i = 0; i < 2; ++i) EXPECT_EQ(first->castings[i].chance, again->castings[i].chance);
    EXPECT_EQ(first->tried.size(), again->tried.size());
    EXPECT_TRUE(first->castings[0].chance != other->castings[0].chance ||
                first->castings[1].chance != other->castings[1].chance);
}

TEST(PourPlay, MorePlaysErrLess)
{
    Game game{planOf({slab("A", 40)}, 20.0)};
    game.weatherOf = [](const Plan&) { return evenWeather(22); };
    const double few = game.play(200, PourSpread{})->castings.at(0).error;
    const double many = game.play(20000, PourSpread{})->castings.at(0).error;
    // As the root of the count, for the same share; the share itself differs a little.
    EXPECT_NEAR(few / many, 10.0, 1.5);
}

TEST(PourPlay, SlowerBatchesNeverLowerTheChance)
{
    double before = 0.0;
    for (double minutes = 10; minutes <= 40; minutes += 3) {
        Game game{planOf({slab("A", 55)}, minutes)};
        game.weatherOf = [](const Plan&) { return evenWeather(30); };
        const double chance = game.play(1000, PourSpread{})->castings.at(0).chance;
        EXPECT_GE(chance, before) << minutes;
        before = chance;
    }
    EXPECT_GT(before, 0.5);
}

TEST(PourPlay, ChangesAreTriedAndTheirEditsGiveWhatTheySay)
{
    Game game{planOf({slab("A", 40), slab("B", 55)}, 20.0)};
    game.plan.conditions.waterC = 18;
    game.plan.pouring->startH = 10;
    game.iceCoolsK = 6;
    // Cooler in the morning; water of 5 deg C gives 3.9 K.
    game.weatherOf = [](const Plan& plan) {
        PourWeather weather = evenWeather(30);
        for (WeatherHour& hour : weather.hours) {
            const double warmer = (hour.hourOfDay - 10) + plan.conditions.concreteC - 20;
            hour.workingMinutes = 30 * std::exp2(-warmer / 10);
        }
        return weather;
    };
    const PourPlayPtr play = game.play(2000, PourSpread{});
    ASSERT_GT(play->anyChance, 0.1);
    double before = 0.0;
    for (const TriedChange& tried : play->tried) {
        SCOPED_TRACE(playChangeWord(tried.change));
        EXPECT_GE(tried.anyChance, before);
        before = tried.anyChance;
        const PlanReading after = applyPatch(game.plan, tried.edit);
        ASSERT_TRUE(after.plan.has_value());
        Game changed = game;
        changed.plan = *after.plan;
        if (tried.change == PlayChange::largerMixer) {
            EXPECT_GT(changed.plan.mixer->drumL, game.plan.mixer->drumL);
            continue;
        }
        // The same draws: the plan that the edit makes has the very chance it was offered with.
        EXPECT_DOUBLE_EQ(changed.play(2000, PourSpread{})->anyChance, tried.anyChance);
        if (tried.change == PlayChange::iceWater) {
            EXPECT_EQ(changed.plan.conditions.icePercent, 20.0);
            EXPECT_NEAR(changed.plan.conditions.concreteC, game.plan.conditions.concreteC - 6, 0.051);
        }
        if (tried.change == PlayChange::iceWater || tried.change == PlayChange::coolerWater ||
            tried.change == PlayChange::earlierStart ||
            tried.change == PlayChange::oneMoreHand) {
            EXPECT_LT(tried.anyChance, play->anyChance);
        }
    }
    EXPECT_GE(play->tried.size(), 5u);
    ASSERT_FALSE(play->findings.empty());
    EXPECT_EQ(play->findings[0].code, "cold_joint_likely");
    ASSERT_FALSE(play->findings[0].remedies.empty());
    const auto& values = play->findings[0].remedies[0].values;
    EXPECT_LT(numberAt(values, "chance_after_percent").value_or(100),
              numberAt(values, "chance_before_percent").value_or(0));
}

TEST(PourPlay, StoppedOrEmptyGivesNothing)
{
    Game game{planOf({slab("A", 40)}, 20.0)};
    std::stop_source source;
    source.request_stop();
    EXPECT_EQ(game.play(2000, PourSpread{}, 1, source.get_token()), nullptr);
    Game empty{planOf({})};
    EXPECT_EQ(empty.play(10, PourSpread{}), nullptr);
}

}  // namespace
}  // namespace yardcast
