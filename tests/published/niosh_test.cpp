#include <gtest/gtest.h>

#include <cmath>

#include "core/handling/grip_loads.h"
#include "core/handling/niosh.h"

/// Waters, Putz-Anderson, Garg: Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) 94-110, revised
/// 9/2021 (doi 10.26616/NIOSHPUB94110revised092021). Equation and Table 5 were checked against a public transcription; the
/// numbers of the two examples are from memory (that they exist, and on which pages, was checked).
namespace yardcast {
namespace {

constexpr double kCmPerInch = 2.54;
constexpr double kKgPerLb = 0.45359237;

/// What the manual prints: multipliers to two decimals, and the limit in lb.
struct Printed {
    double horizontal, vertical, travel, asymmetry, frequency, coupling, limitLb, index;
};

NioshLift inches(double h, double v, double d, double twist)
{
    return {h * kCmPerInch, v * kCmPerInch, d * kCmPerInch, twist, 0.1, LiftDuration::hour, Coupling::fair};
}

void expectExample(const NioshLift& lift, double loadLb, const Printed& printed)
{
    const NioshLimit limit = nioshLimit(lift);
    // Half of the last printed digit; the metric equation has 25 cm for 10 in (1.6 %), 0.003 a cm for 0.0075 an inch (1.6 %
    // of what is taken off: up to 0.004), 75 cm for 30 in (0.0036) and 4.5 for 1.8 in (1.6 % of that term: below 0.002); for
    // H = 23 in the manual's table prints 0.44 where the formula has 0.4348, 0.0052 off.
    EXPECT_NEAR(limit.horizontal, printed.horizontal, 0.0053 + 0.016 * printed.horizontal);
    EXPECT_NEAR(limit.vertical, printed.vertical, 0.005 + 0.004 + 0.0037);
    EXPECT_NEAR(limit.travel, printed.travel, 0.007);
    EXPECT_NEAR(limit.asymmetry, printed.asymmetry, 0.005);
    EXPECT_NEAR(limit.frequency, printed.frequency, 1e-12);
    EXPECT_NEAR(limit.coupling, printed.coupling, 1e-12);
    // The manual multiplies the rounded multipliers: what it prints follows from them to the digit.
    const double product = 51.0 * printed.horizontal * printed.vertical * printed.travel * printed.asymmetry *
        printed.frequency * printed.coupling;
    EXPECT_NEAR(product, printed.limitLb, 0.06);
    EXPECT_NEAR(loadLb / product, printed.index, 0.05);
    // In all 6 %: 2.8 % of the horizontal multiplier, 1.7 % of the vertical, 0.6 % of travel and 0.6 % of 23 kg for 51 lb.
    EXPECT_NEAR(limit.limitKg / kKgPerLb, printed.limitLb, 0.06 * printed.limitLb);
}

TEST(NioshManual, LoadingPunchPressStockPages33To37)
{
    expectExample(inches(23, 15, 49, 0), 44, {0.44, 0.89, 0.86, 1.0, 1.0, 0.95, 16.3, 2.7});
    expectExample(inches(23, 64, 49, 0), 44, {0.44, 0.75, 0.86, 1.0, 1.0, 1.00, 14.5, 3.0});
}

TEST(NioshManual, BagsIntoAHopperPages41To43)
{
    expectExample(inches(18, 15, 21, 45), 40, {0.56, 0.89, 0.91, 0.86, 1.0, 0.95, 18.9, 2.1});
}

TEST(NioshManual, TableFive)
{
    const auto frequency = [](double lifts, LiftDuration duration, double verticalCm) {
        NioshLift lift;
        lift.liftsPerMinute = lifts;
        lift.duration = duration;
        lift.verticalCm = verticalCm;
        return nioshLimit(lift).frequency;
    };
    const auto hour = LiftDuration::hour;
    const auto two = LiftDuration::twoHours;
    const auto day = LiftDuration::day;
    EXPECT_EQ(frequency(0.0, hour, 75), 1.00) << "fewer than one in five minutes count as that";
    EXPECT_EQ(frequency(0.2, two, 20), 0.95);
    EXPECT_EQ(frequency(0.2, day, 20), 0.85);
    EXPECT_EQ(frequency(0.5, day, 75), 0.81);
    EXPECT_EQ(frequency(1, two, 75), 0.88);
    EXPECT_EQ(frequency(4, hour, 75), 0.84);
    EXPECT_EQ(frequency(6, day, 20), 0.27);
    EXPECT_EQ(frequency(8, two, 20), 0.35);
    EXPECT_EQ(frequency(9, day, 20), 0.00);
    EXPECT_EQ(frequency(9, day, 75), 0.15);
    EXPECT_EQ(frequency(10, day, 75), 0.13);
    EXPECT_EQ(frequency(11, two, 20), 0.00);
    EXPECT_EQ(frequency(11, two, 75), 0.23);
    EXPECT_EQ(frequency(12, hour, 20), 0.37);
    EXPECT_EQ(frequency(12, two, 75), 0.21);
    EXPECT_EQ(frequency(13, hour, 20), 0.00);
    EXPECT_EQ(frequency(13, hour, 75), 0.34);
    EXPECT_EQ(frequency(15, hour, 75), 0.28);
    EXPECT_EQ(frequency(15.1, hour, 75), 0.00);
    // The manual's rule for 10 a minute in 8 of 15 minutes gives F = 5.33: between the rows.
    EXPECT_NEAR(frequency(16.0 / 3, hour, 75), 0.80 - 0.05 / 3, 1e-12);
}

/// Computed from the metric equation: 23 x 25/40 x 0.90.
TEST(NioshManual, MetricEquation)
{
    NioshLift lift;
    lift.horizontalCm = 40;
    EXPECT_NEAR(nioshLimit(lift).limitKg, 12.94, 0.005);
    lift = NioshLift{};
    lift.coupling = Coupling::good;
    EXPECT_NEAR(nioshLimit(lift).limitKg, 23.0, 1e-9) << "nothing takes away from the load constant";
}

TEST(NioshManual, NothingBeyondItsBounds)
{
    const auto limit = [](auto change) {
        NioshLift lift;
        change(lift);
        return nioshLimit(lift).limitKg;
    };
    EXPECT_GT(limit([](NioshLift& l) { l.horizontalCm = 63; }), 0.0);
    EXPECT_EQ(limit([](NioshLift& l) { l.horizontalCm = 63.1; }), 0.0);
    EXPECT_EQ(limit([](NioshLift& l) { l.verticalCm = 175.1; }), 0.0);
    EXPECT_EQ(limit([](NioshLift& l) { l.verticalCm = -1; }), 0.0);
    EXPECT_EQ(limit([](NioshLift& l) { l.travelCm = 175.1; }), 0.0);
    EXPECT_GT(limit([](NioshLift& l) { l.asymmetryDeg = 135; }), 0.0);
    EXPECT_EQ(limit([](NioshLift& l) { l.asymmetryDeg = 135.1; }), 0.0);
    EXPECT_EQ(limit([](NioshLift& l) { l.horizontalCm = NAN; }), 0.0);
    EXPECT_EQ(limit([](NioshLift& l) { l.liftsPerMinute = NAN; }), 0.0);
}

/// 1 / cos(beta / 2): 45 degrees from level gives the root of two (seen restated); the others follow from the cosine.
TEST(Slings, PullMoreTheWiderTheySpread)
{
    EXPECT_NEAR(slingFactor(0), 1.0, 1e-12);
    EXPECT_NEAR(slingFactor(30), 1.035, 5e-4);
    EXPECT_NEAR(slingFactor(60), 1.155, 5e-4);
    EXPECT_NEAR(slingFactor(90), 1.414, 5e-4);
    EXPECT_NEAR(slingFactor(120), 2.0, 1e-9);
    EXPECT_EQ(slingFactor(180), 0.0);
    EXPECT_EQ(slingFactor(NAN), 0.0);
}

}  // namespace
}  // namespace yardcast
