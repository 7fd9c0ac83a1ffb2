#include <vector>

#include <gtest/gtest.h>

#include "core/materials/concrete_strength.h"
#include "core/materials/temperature_course.h"

namespace yardcast {
namespace {

/// 24 h at 12, 24 h at 18, 24 h at 20 deg C, read at the beginning of each.
const std::vector<TemperatureReading> kThreeDays{{0, 12}, {24, 18}, {48, 20}};

/// ASTM C1074, M = sum (Ta - T0) dt (form as published by concrete testers; C1074 has a procedure only and no example
/// with figures): T0 -10 and 0 deg C, worked by hand: (22 + 28 + 30) 24 and (12 + 18 + 20) 24.
TEST(NurseSaulC1074, ThreeDays)
{
    EXPECT_NEAR(nurseSaulMaturity(kThreeDays, 72, -10), 1920, 1e-9);
    EXPECT_NEAR(nurseSaulMaturity(kThreeDays, 72, 0), 1200, 1e-9);
    EXPECT_NEAR(nurseSaulMaturity(kThreeDays, 60, 0), 1200 - 12 * 20, 1e-9);
    EXPECT_NEAR(nurseSaulMaturity({{0, -15}, {10, 5}}, 20, -10), 150, 1e-9);
    EXPECT_EQ(nurseSaulMaturity({}, 20, -10), 0.0);
}

/// ASTM C1074 equivalent age, te = sum exp(-Q (1/Ta - 1/Ts)) dt, Q 5000 K (from memory), Ts 20 deg C, worked out
/// independently: 60.22 h.
TEST(EquivalentAgeC1074, ThreeDays)
{
    EXPECT_NEAR(equivalentAgeH(kThreeDays, 72, 5000, 20), 60.22, 0.005);
    EXPECT_NEAR(equivalentAgeH({{0, 20}}, 30, 5000, 20), 30.0, 1e-12);
    EXPECT_NEAR(equivalentAgeH({{0, 23}}, 30, 5000, 23), 30.0, 1e-12);
}

/// EN 1992-1-1 eq. B.10 through the same course: 2.587 d; C30/37 then has a mean of 24.04 (R) and 21.44 MPa (N), worked
/// out independently.
TEST(CourseEn1992, ThreeDays)
{
    TemperatureCourse course;
    course.readings = kThreeDays;
    EXPECT_NEAR(equivalentAgeDays(course, 72), 2.587, 0.0005);
    EXPECT_NEAR(equivalentAgeDays(kThreeDays, 72), 2.587, 0.0005);
    EXPECT_NEAR(strengthAtAge(concreteProperties(30), kRapidCementS, 72, course).fcmMpa, 24.04, 0.005);
    EXPECT_NEAR(strengthAtAge(concreteProperties(30), kNormalCementS, 72, course).fcmMpa, 21.44, 0.005);
}

/// EN 1992-1-1 eq. B.10, rate a day, as a course of one temperature (several open programs agree on the form).
TEST(CourseEn1992, RateADay)
{
    const double c[] = {0, 5, 10, 15, 20, 25, 30, 35, 40};
    const double rate[] = {0.367, 0.478, 0.616, 0.788, 0.9981, 1.255, 1.566, 1.941, 2.388};
    for (int i = 0; i < 9; ++i) {
        TemperatureCourse course;
        course.lowC = course.highC = c[i];
        EXPECT_NEAR(equivalentAgeDays(course, 24), rate[i], 0.0005) << c[i];
    }
}

}  // namespace
}  // namespace yardcast
