#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/readiness/earliest_hours.h"

namespace yardcast {
namespace {

Plan planWith(const char* strengthClass, CementSpeed speed)
{
    Plan plan;
    Mix mix;
    mix.id = "m";
    mix.strengthClass = strengthClass;
    mix.cementSpeed = speed;
    plan.mixes.push_back(mix);
    return plan;
}

double shareAt(const GainCurve& curve, double h)
{
    const auto found = std::ranges::find(curve.h, h);
    EXPECT_NE(found, curve.h.end());
    return curve.share[std::size_t(found - curve.h.begin())];
}

TEST(GainCurves, AreThoseOfEn1992)
{
    // EN 1992-1-1 eq. 3.2 at 1, 2, 3 and 7 days of 20 deg C, worked (three digits): s 0.20, 0.25, 0.38. The day at
    // 20 deg C is worth 0.9981 d by eq. B.10: 0.2 % of the age is up to 0.2 % of the share, hence 0.002.
    const struct {
        CementSpeed speed;
        double day1, day2, day3, day7;
    } worked[] = {{CementSpeed::rapid, 0.424, 0.578, 0.663, 0.819},
                  {CementSpeed::normal, 0.342, 0.504, 0.598, 0.779},
                  {CementSpeed::slow, 0.196, 0.353, 0.458, 0.684}};
    for (const auto& row : worked) {
        const auto curves = gainCurves(planWith("C30/37", row.speed), {"m"}, {});
        ASSERT_EQ(curves.size(), 1u);
        EXPECT_NEAR(shareAt(curves[0], 24), row.day1, 0.002);
        EXPECT_NEAR(shareAt(curves[0], 48), row.day2, 0.002);
        EXPECT_NEAR(shareAt(curves[0], 72), row.day3, 0.002);
        EXPECT_NEAR(shareAt(curves[0], 168), row.day7, 0.002);
        EXPECT_NEAR(shareAt(curves[0], 672), 1.0, 0.002);
        EXPECT_FALSE(curves[0].stripH);
    }
}

TEST(GainCurves, FollowTheReadings)
{
    // 24 h at 12, 18 and 20 deg C each: eq. B.10 gives 2.587 d; C30/37, s 0.25: fcm 21.44 MPa, s 0.20: 24.04 (worked).
    for (const auto& [speed, mpa] : {std::pair(CementSpeed::normal, 21.44), std::pair(CementSpeed::rapid, 24.04)}) {
        Plan plan = planWith("C30/37", speed);
        for (const auto& [h, c] : {std::pair(0.0, 12.0), {24.0, 18.0}, {48.0, 20.0}}) {
            MeasuredTemperature reading;
            reading.h = h;
            reading.c = c;
            plan.conditions.measured.push_back(reading);
        }
        const auto curves = gainCurves(plan, {"m"}, {});
        const auto at = std::size_t(std::ranges::find(curves[0].h, 72.0) - curves[0].h.begin());
        EXPECT_NEAR(curves[0].meanMpa[at], mpa, 0.01);
    }
}

TEST(GainCurves, TellTheLatestOfTheirCastings)
{
    const auto casting = [](const char* mix, double stripH, double tiltH, double carryH) {
        auto hours = std::make_shared<CastingHours>();
        hours->mix = mix;
        for (const auto& [way, h] : {std::pair(HandlingWay::strip, stripH), {HandlingWay::tilt, tiltH},
                                     {HandlingWay::carryFlat, carryH}}) {
            EarliestHour hour;
            hour.way = way;
            hour.cautiousH = hour.likelyH = h;
            hour.cautiousDays = hour.likelyDays = h / 24;
            hours->ways.push_back(hour);
        }
        return hours;
    };
    const auto curves = gainCurves(planWith("C30/37", CementSpeed::normal), {"m", "unknown"},
                                   {casting("m", 60, 30, 40), casting("m", 34, 36, 50), casting("other", 99, 99, 99)});
    ASSERT_EQ(curves.size(), 1u);
    // The first is tilted off at 30, the second lifted off at 34.
    EXPECT_EQ(curves[0].stripH, 34.0);
    EXPECT_EQ(curves[0].tiltH, 36.0);
    EXPECT_EQ(curves[0].carryH, 50.0);
}

}  // namespace
}  // namespace yardcast
