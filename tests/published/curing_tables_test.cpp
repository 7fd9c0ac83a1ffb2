#include <cmath>

#include <gtest/gtest.h>

#include "core/materials/concrete_strength.h"
#include "core/pour/curing.h"

namespace yardcast {
namespace {

/// EN 13670 tables F.1 to F.3 (from memory): days by class, surface temperature and strength gain.
TEST(CuringEn13670, Tables)
{
    struct Line {
        int curingClass;
        double c;
        double rapid, medium, slow;
    };
    for (const Line& line : {Line{2, 25, 1.0, 1.5, 2.5}, Line{2, 15, 1.0, 2.5, 5}, Line{2, 10, 1.5, 4, 8},
                             Line{2, 5, 2.0, 5, 11}, Line{3, 25, 1.5, 2.5, 3.5}, Line{3, 15, 2.0, 4, 7},
                             Line{3, 10, 2.5, 7, 12}, Line{3, 5, 3.5, 9, 18}, Line{4, 25, 3, 5, 6},
                             Line{4, 15, 5, 9, 12}, Line{4, 10, 7, 13, 21}, Line{4, 5, 9, 18, 30}}) {
        // At the row's own temperature and just below the next row's.
        for (const double c : {line.c, line.c == 25 ? 40.0 : line.c == 15 ? 24.9 : line.c + 4.9}) {
            EXPECT_EQ(curingDays(line.curingClass, StrengthGain::rapid, c), line.rapid) << line.curingClass << " " << c;
            EXPECT_EQ(curingDays(line.curingClass, StrengthGain::medium, c), line.medium) << line.curingClass;
            EXPECT_EQ(curingDays(line.curingClass, StrengthGain::slow, c), line.slow) << line.curingClass;
        }
    }
    EXPECT_TRUE(std::isinf(curingDays(3, StrengthGain::rapid, 4.9)));
    EXPECT_TRUE(std::isinf(curingDays(3, StrengthGain::verySlow, 20)));
}

/// r = fcm(2)/fcm(28) by eq. 3.2: R 0.58 and N 0.50 (only just) are rapid, S 0.35 is medium.
TEST(CuringEn13670, GainOfCements)
{
    EXPECT_NEAR(strengthRatio(kRapidCementS), 0.578, 0.0005);
    EXPECT_NEAR(strengthRatio(kNormalCementS), 0.504, 0.0005);
    EXPECT_NEAR(strengthRatio(kSlowCementS), 0.353, 0.0005);
    EXPECT_EQ(strengthGain(kRapidCementS), StrengthGain::rapid);
    EXPECT_EQ(strengthGain(kNormalCementS), StrengthGain::rapid);
    EXPECT_EQ(strengthGain(kSlowCementS), StrengthGain::medium);
}

/// Between columns, linear along the row (the tables' note): class 3, 15 deg C, r 0.40 lies halfway from 4 to 2.
TEST(CuringEn13670, BetweenColumns)
{
    EXPECT_NEAR(curingDays(3, 0.40, 18), 3.0, 1e-12);
    EXPECT_NEAR(curingDays(3, 0.30, 18), 4.0, 1e-12);
    EXPECT_NEAR(curingDays(3, 0.50, 18), 2.0, 1e-12);
    EXPECT_NEAR(curingDays(4, 0.225, 7), 24.0, 1e-12);
    EXPECT_EQ(curingDays(3, 0.90, 18), 2.0);
    EXPECT_TRUE(std::isinf(curingDays(3, 0.10, 18)));
}

}  // namespace
}  // namespace yardcast
