#include "core/materials/temperature_course.h"

#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include <gtest/gtest.h>

namespace yardcast {
namespace {

/// The integral of eq. B.10 by many small steps, with nothing of the code under test but the air itself; the kinks at 0
/// and 80 deg C are met by the steps' size.
double byManySteps(const TemperatureCourse& course, double ageH, int steps)
{
    double sum = 0.0;
    for (int i = 0; i < steps; ++i) {
        const double c = courseAtC(course, (i + 0.5) * ageH / steps);
        if (c >= 0.0) sum += std::exp(13.65 - 4000.0 / (273.0 + std::min(c, 80.0)));
    }
    return sum * ageH / steps / 24;
}

TEST(Air, WaveHasItsExtremesAndWrapsRound)
{
    EXPECT_NEAR(airAtHourC(8, 24, 5), 8, 1e-12);
    EXPECT_NEAR(airAtHourC(8, 24, 15), 24, 1e-12);
    EXPECT_NEAR(airAtHourC(8, 24, 10), 16, 1e-12);
    EXPECT_NEAR(airAtHourC(8, 24, 22), 16, 1e-12);
    EXPECT_NEAR(airAtHourC(8, 24, 5 - 48), 8, 1e-9);
    EXPECT_NEAR(airAtHourC(8, 24, 15 + 240), 24, 1e-9);
    // Half waves: it is warmer at ten in the morning than at midnight, and no step at the joins.
    EXPECT_NEAR(airAtHourC(8, 24, 5 - 1e-6), airAtHourC(8, 24, 5 + 1e-6), 1e-9);
    EXPECT_NEAR(airAtHourC(8, 24, 15 - 1e-6), airAtHourC(8, 24, 15 + 1e-6), 1e-9);
    EXPECT_EQ(airAtHourC(20, 20, 7.3), 20.0);
}

TEST(Course, ConstantAirGivesTheOneTemperatureFigure)
{
    TemperatureCourse course;
    course.lowC = course.highC = 17.5;
    for (const double h : {0.5, 13.0, 48.0, 671.0}) {
        course.startH = 3 + h / 100;
        EXPECT_EQ(equivalentAgeDays(course, h), equivalentAgeDays(h, 17.5)) << h;
    }
    EXPECT_EQ(equivalentAgeDays(course, 0.0), 0.0);
    EXPECT_EQ(equivalentAgeDays(course, -3.0), 0.0);
    EXPECT_EQ(equivalentAgeDays(course, std::numeric_limits<double>::quiet_NaN()), 0.0);
}

TEST(Course, WaveIsIntegratedTo1e6)
{
    struct Case {
        double lowC, highC, startH, ageH;
    };
    // Gentle, steep, through freezing, through freezing and over 80, all frost, low above high.
    for (const Case& c : {Case{10, 22, 8, 36}, Case{2, 38, 13.3, 55}, Case{-9, 6, 10, 40}, Case{-20, 90, 6, 30},
                          Case{-12, -3, 8, 50}, Case{25, 12, 8, 30}, Case{10, 22, 8, 3.5}, Case{14, 31, 23, 672}}) {
        TemperatureCourse course;
        course.lowC = c.lowC;
        course.highC = c.highC;
        course.startH = c.startH;
        // Midpoints: the error falls with the square of the step, at a kink with the step itself times its share.
        const double fine = byManySteps(course, c.ageH, 2'000'000);
        EXPECT_NEAR(equivalentAgeDays(course, c.ageH), fine, 1e-6) << c.lowC << " to " << c.highC;
    }
}

TEST(Course, WarmHoursCountMoreThanTheMean)
{
    TemperatureCourse course;
    course.lowC = 5;
    course.highC = 35;
    EXPECT_GT(equivalentAgeDays(course, 24), equivalentAgeDays(24.0, 20));
    // Poured before the warm hours it is older at noon of the same day than one poured before the night is at midnight.
    course.startH = 9;
    const double morning = equivalentAgeDays(course, 10);
    course.startH = 20;
    EXPECT_GT(morning, 1.3 * equivalentAgeDays(course, 10));
}

TEST(Course, ReadingHoldsUntilTheNext)
{
    TemperatureCourse course;
    course.readings = {{0, 12}, {24, 18}, {48, 20}};
    course.lowC = course.highC = 5;
    EXPECT_EQ(courseAtC(course, 0), 12);
    EXPECT_EQ(courseAtC(course, 23.99), 12);
    EXPECT_EQ(courseAtC(course, 24), 18);
    EXPECT_EQ(courseAtC(course, 71.9), 20);
    EXPECT_EQ(courseAtC(course, 72), 5);
    const double three = equivalentAgeDays(24.0, 12) + equivalentAgeDays(24.0, 18) + equivalentAgeDays(24.0, 20);
    EXPECT_NEAR(equivalentAgeDays(course, 72), three, 1e-12);
    EXPECT_NEAR(equivalentAgeDays(course, 84), three + equivalentAgeDays(12.0, 5), 1e-12);
    EXPECT_NEAR(equivalentAgeDays(course, 30), equivalentAgeDays(24.0, 12) + equivalentAgeDays(6.0, 18), 1e-12);
}

TEST(Course, BeforeTheFirstReadingAirCounts)
{
    TemperatureCourse course;
    course.readings = {{6, 30}};
    course.lowC = course.highC = 10;
    EXPECT_EQ(courseAtC(course, 5.9), 10);
    EXPECT_EQ(courseAtC(course, 6.0), 30);
    EXPECT_EQ(courseAtC(course, 7.0), 10);
    EXPECT_NEAR(equivalentAgeDays(course, 12), equivalentAgeDays(11.0, 10) + equivalentAgeDays(1.0, 30), 1e-12);
    EXPECT_NEAR(equivalentAgeDays(course, 3), equivalentAgeDays(3.0, 10), 1e-12);
}

TEST(Course, HoursToAnAgeAreTheInverse)
{
    TemperatureCourse course;
    course.readings = {{0, 26}, {5, 22}, {9, 17}};
    course.lowC = -3;
    course.highC = 14;
    course.startH = 10;
    for (const double h : {0.5, 5.0, 8.0, 14.0, 30.0, 100.0, 601.3}) {
        const double days = equivalentAgeDays(course, h);
        const double back = hoursToEquivalentAge(course, days);
        EXPECT_NEAR(equivalentAgeDays(course, back), days, 1e-9) << h;
        EXPECT_LE(back, h + 1e-6);
    }
    EXPECT_EQ(hoursToEquivalentAge(course, 0.0), 0.0);
    TemperatureCourse frost;
    frost.lowC = -10;
    frost.highC = -1;
    EXPECT_TRUE(std::isinf(hoursToEquivalentAge(frost, 0.1)));
    EXPECT_TRUE(std::isinf(hoursToEquivalentAge(course, 28.0, 48.0)));
}

TEST(Course, StrengthThroughACourseIsThatOfItsAge)
{
    TemperatureCourse course;
    course.lowC = 8;
    course.highC = 26;
    const ConcreteProperties c25 = concreteProperties(25);
    const StrengthAtAge at = strengthAtAge(c25, kNormalCementS, 48, course);
    EXPECT_EQ(at.ageDays, equivalentAgeDays(course, 48));
    EXPECT_EQ(at.fcmMpa, strengthAtEquivalentAge(c25, kNormalCementS, at.ageDays).fcmMpa);
    course.lowC = course.highC = 20;
    EXPECT_EQ(strengthAtAge(c25, kNormalCementS, 48, course).fctmMpa,
              strengthAtAge(c25, kNormalCementS, 48, 20.0).fctmMpa);
}

}  // namespace
}  // namespace yardcast
