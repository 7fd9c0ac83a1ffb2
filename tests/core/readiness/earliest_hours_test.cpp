#include "core/readiness/earliest_hours.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/pour/cement_speed.h"
#include "tests/core/structure/handling_samples.h"

namespace yardcast {
namespace {

using enum HandlingWay;

/// Nothing waits for the mould to come off here, so that the tension decides.
StrengthInput withoutMould(StrengthInput input)
{
    input.assumptions.stripMpa = 1.0;
    return input;
}

/// Weak enough to matter: long and thin, with a sink.
StrengthInput weakSlab(double lengthMm = 2000.0, double thicknessMm = 30.0)
{
    Counter counter = slab(lengthMm, 620, thicknessMm);
    Cutout sink;
    sink.id = "K1";
    sink.purpose = CutoutPurpose::sink;
    sink.centre = {800, 300};
    sink.size = {500, 400};
    sink.cornerRadiusMm = 20;
    counter.cutouts.push_back(sink);
    return withoutMould(inputOf(counter));
}

CastingStrengthPtr solvedAt(StrengthInput input, double ageH)
{
    input.liftAgeH = ageH;
    return solveStrength(input, Refinement::draft, {.inUse = false, .handling = true});
}

double useAt(const StrengthInput& input, HandlingWay way, double ageH)
{
    const CastingStrengthPtr solved = solvedAt(input, ageH);
    const CaseResult* result = solved->find(caseOfWay(way));
    return result ? result->usePercent : std::nan("");
}

/// The slow way: bisection with all of the solver, mesh and choice of hands included, at every age.
double byBisectionH(const StrengthInput& input, HandlingWay way)
{
    double low = 1.0;
    double high = kFullAgeH - 1.0;
    while (high - low > 0.02) {
        const double middle = (low + high) / 2;
        (useAt(input, way, middle) > 100.0 ? low : high) = middle;
    }
    return (low + high) / 2;
}

const EarliestHour& hourOf(const CastingHoursPtr& hours, HandlingWay way)
{
    const EarliestHour* found = hours->find(way);
    EXPECT_NE(found, nullptr);
    return *found;
}

TEST(EarliestHours, AreWhatBisectionWithTheWholeSolverFinds)
{
    const StrengthInput input = weakSlab();
    const CastingHoursPtr hours = earliestHours(input);
    int compared = 0;
    for (const EarliestHour& hour : hours->ways) {
        if (hour.byCompression || !std::isfinite(hour.cautiousH)) continue;
        SCOPED_TRACE(handlingWayWord(hour.way));
        // 0.1 h is what they are found to.
        EXPECT_NEAR(hour.cautiousH, byBisectionH(input, hour.way), 0.1);
        ++compared;
    }
    EXPECT_GE(compared, 2);
}

TEST(EarliestHours, SolvedAtTheCautiousHourTheUseIsWhole)
{
    int compared = 0;
    for (const double lengthMm : {1600.0, 2000.0, 2400.0}) {
        const StrengthInput input = weakSlab(lengthMm);
        const CastingHoursPtr hours = earliestHours(input);
        for (const EarliestHour& hour : hours->ways) {
            if (hour.byCompression || !std::isfinite(hour.cautiousH)) continue;
            SCOPED_TRACE(handlingWayWord(hour.way) + std::string(" of ") + std::to_string(lengthMm));
            // Near day one a tenth of an hour is worth less than half a percent of strength.
            EXPECT_NEAR(useAt(input, hour.way, hour.cautiousH), 100.0, 1.0);
            EXPECT_GT(useAt(input, hour.way, hour.cautiousH - 2.0), 100.0);
            EXPECT_LT(useAt(input, hour.way, hour.cautiousH + 2.0), 100.0);
            ++compared;
        }
    }
    EXPECT_GE(compared, 5);
}

TEST(EarliestHours, LikelyIsWhereTheMeanInPlaceOfTheFractileBearsIt)
{
    const StrengthInput input = weakSlab();
    const CastingHoursPtr hours = earliestHours(input);
    for (const EarliestHour& hour : hours->ways) {
        if (hour.byCompression || !std::isfinite(hour.likelyH)) continue;
        SCOPED_TRACE(handlingWayWord(hour.way));
        EXPECT_LT(hour.likelyH, hour.cautiousH);
        // The fractile is 0.7 of the mean (EN 1992-1-1 table 3.1).
        EXPECT_NEAR(useAt(input, hour.way, hour.likelyH), 100.0 / 0.7, 1.5);
    }
}

TEST(EarliestHours, NothingLeavesTheMouldBeforeItsCompressiveStrengthIsReached)
{
    StrengthInput input = inputOf(slab(900, 600, 50));
    input.assumptions.stripMpa = 15.0;
    const CastingHoursPtr hours = earliestHours(input);
    ASSERT_EQ(hours->ways.size(), 4u);
    for (const EarliestHour& hour : hours->ways) {
        EXPECT_TRUE(hour.byCompression);
        // Eq. 3.1 and 3.2 of EN 1992-1-1 by hand: C25/30, fcm 33; share 15/33; s 0.25:
        // t = 28 / (1 - ln(0.4545) / 0.25)^2 = 1.6236 d; at 20 deg C a day is worth 0.9981 d (eq. B.10).
        EXPECT_NEAR(hour.likelyDays, 1.6236, 1e-3);
        EXPECT_NEAR(hour.likelyH, 1.6236 * 24 / 0.9981, 0.05);
        // Counted on are 25 of 33 MPa: share 15/25; t = 28 / (1 - ln(0.6) / 0.25)^2 = 3.0232 d.
        EXPECT_NEAR(hour.cautiousDays, 3.0232, 1e-3);
        EXPECT_NEAR(hour.cautiousH, 3.0232 * 24 / 0.9981, 0.05);
    }
    input.assumptions.stripMpa = 25.5;
    const CastingHoursPtr weak = earliestHours(input);
    EXPECT_TRUE(std::isfinite(hourOf(weak, strip).likelyH));
    EXPECT_FALSE(std::isfinite(hourOf(weak, strip).cautiousH));
    ASSERT_EQ(weak->findings.size(), 1u);
    EXPECT_EQ(weak->findings.front().code, "never_strong");
    EXPECT_EQ(weak->findings.front().severity, Severity::caution);
    EXPECT_EQ(numberAt(weak->findings.front().values, "fck_mpa"), 25.0);
    input.assumptions.stripMpa = 33.5;
    EXPECT_EQ(earliestHours(input)->findings.front().severity, Severity::stop);
}

TEST(EarliestHours, WaterTakesStrengthAwayFromBothOrFromTheCautiousHourAlone)
{
    // Byhand as above: a mean of 0.6 of 33 MPa takes 15/19.8 of it, counted on 15/15.
    StrengthInput input = inputOf(slab(900, 600, 50));
    input.assumptions.stripMpa = 15.0;
    const EarliestHour dry = hourOf(earliestHours(input), strip);
    input.likelyShare = input.cautiousShare = 0.6;
    const EarliestHour wet = hourOf(earliestHours(input), strip);
    EXPECT_NEAR(wet.likelyDays, ageOfShareDays(15 / 19.8, kNormalCementS), 1e-3);
    EXPECT_NEAR(wet.cautiousDays, 28.0, 1e-3);
    EXPECT_GT(wet.likelyH, dry.likelyH + 24);
    input.likelyShare = 1.0;
    const EarliestHour unsure = hourOf(earliestHours(input), strip);
    EXPECT_EQ(unsure.likelyH, dry.likelyH);
    EXPECT_NEAR(unsure.cautiousDays, 28.0, 1e-3);

    // And where tension decides.
    StrengthInput slim = weakSlab();
    const EarliestHour before = hourOf(earliestHours(slim), carryFlat);
    slim.cautiousShare = 0.8;
    const EarliestHour after = hourOf(earliestHours(slim), carryFlat);
    EXPECT_EQ(after.likelyH, before.likelyH);
    EXPECT_GT(after.cautiousH, before.cautiousH + 1);
    slim.likelyShare = 0.8;
    EXPECT_GT(hourOf(earliestHours(slim), carryFlat).likelyH, before.likelyH + 1);
}

TEST(EarliestHours, WarmerIsEarlierAndAgesDoNotKnowTheWeather)
{
    StrengthInput input = weakSlab();
    double before = HUGE_VAL;
    const double days = hourOf(earliestHours(input), strip).cautiousDays;
    for (const double c : {8.0, 14.0, 20.0, 27.0}) {
        input.course.lowC = input.course.highC = c;
        const EarliestHour hour = hourOf(earliestHours(input), strip);
        EXPECT_LT(hour.cautiousH, before);
        EXPECT_EQ(hour.cautiousDays, days);
        // Constant temperature: the rate of eq. B.10 itself.
        EXPECT_NEAR(hour.cautiousH, days * 24 / std::exp(13.65 - 4000 / (273 + c)), 0.01);
        before = hour.cautiousH;
    }
}

TEST(EarliestHours, StrongerQuickerAndThickerIsEarlier)
{
    const StrengthInput weak = weakSlab();
    const double plain = hourOf(earliestHours(weak), strip).cautiousH;
    StrengthInput strong = weak;
    strong.strengthClass = "C40/50";
    EXPECT_LT(hourOf(earliestHours(strong), strip).cautiousH, plain);
    StrengthInput quick = weak;
    quick.cementSpeed = CementSpeed::rapid;
    EXPECT_LT(hourOf(earliestHours(quick), strip).cautiousH, plain);
    StrengthInput bold = weak;
    bold.assumptions.crackSafety = 1.2;
    EXPECT_LT(hourOf(earliestHours(bold), strip).cautiousH, plain);
    EXPECT_LT(hourOf(earliestHours(weakSlab(2000, 36)), strip).cautiousH, plain);
    StrengthInput sticky = weak;
    sticky.assumptions.suctionKpa = 2.0;
    EXPECT_GT(hourOf(earliestHours(sticky), strip).cautiousH, plain);
}

TEST(EarliestHours, NeverIsSaidWhereTheClassIsNotEnough)
{
    StrengthInput input = weakSlab();
    input.assumptions.suctionKpa = 15.0;
    const CastingHoursPtr hours = earliestHours(input);
    const EarliestHour& off = hourOf(hours, strip);
    EXPECT_FALSE(std::isfinite(off.cautiousH));
    EXPECT_TRUE(off.possible);
    EXPECT_GT(off.tensionMpa, 0.0);
    EXPECT_GT(useAt(input, strip, kFullAgeH), 100.0);
    // It can be tilted off: that is no reason to say that it never holds.
    EXPECT_EQ(hours->outOfMould()->way, tilt);
    EXPECT_TRUE(std::ranges::none_of(hours->findings, [](const Finding& f) { return f.code == "never_holds"; }));

    StrengthInput heavy = weakSlab(2600, 30);
    heavy.assumptions.handlingFactor = 5.0;
    const CastingHoursPtr never = earliestHours(heavy);
    ASSERT_EQ(never->findings.size(), 1u);
    EXPECT_EQ(never->findings.front().code, "never_holds");
    EXPECT_EQ(wordAt(never->findings.front().values, "way"), "carry_flat");
    EXPECT_FALSE(numberAt(never->findings.front().values, "cautious_h"));
}

TEST(EarliestHours, LiftedEarlyIsACautionBeforeTheCautiousHourAndAStopBeforeTheLikelyOne)
{
    StrengthInput input = weakSlab(2400, 30);
    const CastingHoursPtr known = earliestHours(input);
    const EarliestHour last = *known->governing();
    ASSERT_TRUE(std::isfinite(last.cautiousH));
    ASSERT_FALSE(last.byCompression);
    const auto findingsAt = [&](double h) {
        input.liftAgeH = h;
        return earliestHours(input)->findings;
    };
    EXPECT_TRUE(findingsAt(last.cautiousH + 0.5).empty());
    const auto between = findingsAt((last.likelyH + last.cautiousH) / 2);
    ASSERT_EQ(between.size(), 1u);
    EXPECT_EQ(between.front().code, "lifted_early");
    EXPECT_EQ(between.front().severity, Severity::caution);
    EXPECT_EQ(between.front().subjects, std::vector<std::string>{"C1"});
    const auto early = findingsAt(last.likelyH - 1.0);
    ASSERT_EQ(early.size(), 1u);
    EXPECT_EQ(early.front().severity, Severity::stop);
    EXPECT_NEAR(*numberAt(early.front().values, "cautious_h"), last.cautiousH, 0.1);
    // Whether the mould may come off is a rule of thumb of the mean: a caution, not a stop.
    StrengthInput soft = inputOf(slab(900, 600, 50));
    soft.liftAgeH = 20.0;
    const auto soon = earliestHours(soft)->findings;
    ASSERT_EQ(soon.size(), 1u);
    EXPECT_EQ(soon.front().severity, Severity::caution);
    EXPECT_EQ(numberAt(soon.front().values, "by_compression"), 1.0);
}

TEST(EarliestHours, WhatIsPlannedDecides)
{
    StrengthInput input = weakSlab();
    EXPECT_EQ(earliestHours(input)->carry, carryFlat);
    std::get<Counter>(input.body).lift = Lift{};
    std::get<Counter>(input.body).lift->carry = CarryWay::onEdge;
    const CastingHoursPtr hours = earliestHours(input);
    EXPECT_EQ(hours->carry, carryOnEdge);
    EXPECT_NE(hours->governing()->way, carryFlat);
}

TEST(EarliestHours, CastUprightIsOnlyStrippedAndCarriedOnItsBase)
{
    Support support;
    support.mix = kMixId;
    support.cast = UprightCast::upright;
    Part part;
    part.id = "S1";
    part.body = support;
    const CastingHoursPtr hours = earliestHours(inputOf(std::move(part)));
    ASSERT_EQ(hours->ways.size(), 2u);
    EXPECT_EQ(hours->ways[0].way, strip);
    EXPECT_EQ(hours->ways[1].way, carryOnEdge);
    EXPECT_EQ(hours->carry, carryOnEdge);
}

TEST(EarliestHours, SaysWhyNot)
{
    StrengthInput input = weakSlab();
    input.strengthClass = "C1000";
    const CastingHoursPtr hours = earliestHours(input);
    EXPECT_EQ(hours->whyNot, "class_unknown");
    EXPECT_TRUE(hours->ways.empty());
    std::stop_source stop;
    stop.request_stop();
    EXPECT_EQ(earliestHours(weakSlab(), Refinement::draft, stop.get_token()), nullptr);
}

TEST(AgeOfShare, IsTheInverseOfEq32)
{
    for (const double s : {kRapidCementS, kNormalCementS, kSlowCementS}) {
        for (const double days : {0.5, 1.0, 3.0, 7.0, 28.0, 90.0}) {
            EXPECT_NEAR(ageOfShareDays(strengthShare(days, s), s), days, 1e-9 * days);
        }
        // Never more than e^s, however old.
        EXPECT_FALSE(std::isfinite(ageOfShareDays(std::exp(s) * 1.001, s)));
    }
}

}  // namespace
}  // namespace yardcast
