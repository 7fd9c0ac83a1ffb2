#include "core/materials/concrete_strength.h"

#include <gtest/gtest.h>

#include <cmath>

namespace yardcast {
namespace {

/// EN 1992-1-1:2004 Table 3.1 as printed (seen as restated by an open library of structural codes and in a trade
/// body's tables): fctm and fctk,0.05 to one decimal, Ecm in whole GPa. The standard prints a rounded chain in places,
/// fctk,0.05 from the printed fctm (C25: 0.7 x 2.6 = 1.82), which moves a value by 0.7 x 0.05 more.
struct ClassRow {
    const char* name;
    double fck;
    double fcm;
    double fctm;
    double fctk005;
    double ecmGpa;
};

constexpr double kPrinted = 0.05 + 1e-9;
constexpr double kPrintedChain = kPrinted + 0.7 * kPrinted;

class Table31En1992 : public testing::TestWithParam<ClassRow> {};

TEST_P(Table31En1992, Properties)
{
    const ClassRow row = GetParam();
    const auto concrete = concreteProperties(std::string(row.name));
    ASSERT_TRUE(concrete);
    EXPECT_EQ(concrete->fckMpa, row.fck);
    EXPECT_EQ(concrete->fcmMpa, row.fcm);
    EXPECT_NEAR(concrete->fctmMpa, row.fctm, kPrinted);
    EXPECT_NEAR(concrete->fctk005Mpa, row.fctk005, kPrintedChain);
    EXPECT_NEAR(concrete->ecmMpa, row.ecmGpa * 1000, 500 + 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Classes, Table31En1992,
                         testing::Values(ClassRow{"C12/15", 12, 20, 1.6, 1.1, 27},
                                         ClassRow{"C16/20", 16, 24, 1.9, 1.3, 29},
                                         ClassRow{"C20/25", 20, 28, 2.2, 1.5, 30},
                                         ClassRow{"C25/30", 25, 33, 2.6, 1.8, 31},
                                         ClassRow{"C30/37", 30, 38, 2.9, 2.0, 33},
                                         ClassRow{"C35/45", 35, 43, 3.2, 2.2, 34},
                                         ClassRow{"C40/50", 40, 48, 3.5, 2.5, 35},
                                         ClassRow{"C45/55", 45, 53, 3.8, 2.7, 36},
                                         ClassRow{"C50/60", 50, 58, 4.1, 2.9, 37}));

/// The same restatement unrounded: 2.210, 2.565, 2.896 ... MPa and 29 962, 31 476, 32 837 ... MPa.
TEST(Table31En1992, Unrounded)
{
    const double fck[] = {20, 25, 30, 35, 40, 45, 50};
    const double fctm[] = {2.210, 2.565, 2.896, 3.210, 3.509, 3.795, 4.072};
    const double ecm[] = {29'962, 31'476, 32'837, 34'077, 35'220, 36'283, 37'278};
    for (int i = 0; i < 7; ++i) {
        EXPECT_NEAR(concreteProperties(fck[i]).fctmMpa, fctm[i], 0.0005);
        EXPECT_NEAR(concreteProperties(fck[i]).ecmMpa, ecm[i], 0.5);
    }
    EXPECT_NEAR(concreteProperties(25).fctk005Mpa, 1.795, 0.001);
}

/// Table 3.1 above C50/60, from memory: C60/75 fctm 4.4, Ecm 39; C90/105 fctm 5.0, Ecm 44.
TEST(Table31En1992, HighStrength)
{
    EXPECT_NEAR(concreteProperties(60).fctmMpa, 4.4, kPrinted);
    EXPECT_NEAR(concreteProperties(60).ecmMpa, 39'000, 500);
    EXPECT_NEAR(concreteProperties(90).fctmMpa, 5.0, kPrinted);
    EXPECT_NEAR(concreteProperties(90).ecmMpa, 44'000, 500);
}

/// EN 1992-1-1:2004 eq. 3.2. Two values stand in the tests of the open library fib-international/structuralcodes
/// (s = 0.25: 9 days 0.82617, 56 days 1.07597); the table was worked out from the equation by an independent program.
TEST(StrengthWithAgeEn1992, Shares)
{
    EXPECT_NEAR(strengthShare(9, 0.25), 0.82617, 5e-6);
    EXPECT_NEAR(strengthShare(56, 0.25), 1.07597, 5e-6);
    const double days[] = {1, 2, 3, 7, 14, 90};
    const double rapid[] = {0.424, 0.578, 0.663, 0.819, 0.920, 1.092};
    const double normal[] = {0.342, 0.504, 0.598, 0.779, 0.902, 1.117};
    const double slow[] = {0.196, 0.353, 0.458, 0.684, 0.854, 1.183};
    for (int i = 0; i < 6; ++i) {
        EXPECT_NEAR(strengthShare(days[i], kRapidCementS), rapid[i], 0.0005) << days[i];
        EXPECT_NEAR(strengthShare(days[i], kNormalCementS), normal[i], 0.0005) << days[i];
        EXPECT_NEAR(strengthShare(days[i], kSlowCementS), slow[i], 0.0005) << days[i];
    }
    EXPECT_EQ(strengthShare(28, 0.25), 1.0);
    EXPECT_EQ(strengthShare(0, 0.25), 0.0);
}

/// EN 1992-1-1:2004 eq. B.10, rate a day (several open programs agree on the form; values worked out independently).
/// At 20 deg C it gives 0.9981 and not 1.
TEST(EquivalentAgeEn1992, RateADay)
{
    const double c[] = {0, 5, 10, 15, 25, 30, 35, 40};
    const double rate[] = {0.367, 0.478, 0.616, 0.788, 1.255, 1.566, 1.941, 2.388};
    for (int i = 0; i < 8; ++i) EXPECT_NEAR(equivalentAgeDays(24, c[i]), rate[i], 0.0005) << c[i];
    EXPECT_NEAR(equivalentAgeDays(24, 20), 0.9981, 0.00005);
    EXPECT_EQ(equivalentAgeDays(24, -0.1), 0.0);
    EXPECT_EQ(equivalentAgeDays(24, 90), equivalentAgeDays(24, 80));
}

/// Worked: 24 h at 12, at 18 and at 20 deg C are 2.587 d; C30/37 then has fcm 24.04 (R) and 21.44 MPa (N).
TEST(EquivalentAgeEn1992, ThreeDays)
{
    const double days = equivalentAgeDays(24, 12) + equivalentAgeDays(24, 18) + equivalentAgeDays(24, 20);
    EXPECT_NEAR(days, 2.587, 0.0005);
    EXPECT_NEAR(strengthShare(days, kRapidCementS) * concreteProperties(30).fcmMpa, 24.04, 0.005);
    EXPECT_NEAR(strengthShare(days, kNormalCementS) * concreteProperties(30).fcmMpa, 21.44, 0.005);
}

/// Eq. 3.1, 3.4 and 3.5 for C30/37 N: the exponents before and after 28 days, and no fck(t) until three days
/// (3.1.2(5), from memory).
TEST(StrengthWithAgeEn1992, StripOnDayTwo)
{
    const ConcreteProperties c30 = concreteProperties(30);
    const StrengthAtAge two = strengthAtAge(c30, kNormalCementS, 48 / 0.99812, 20);
    EXPECT_NEAR(two.ageDays, 2.0, 0.0001);
    EXPECT_NEAR(two.share, 0.504, 0.0005);
    EXPECT_NEAR(two.fcmMpa, 0.5041 * 38, 0.01);
    EXPECT_NEAR(two.fctmMpa / c30.fctmMpa, two.share, 1e-12);
    EXPECT_NEAR(two.fctk005Mpa / two.fctmMpa, 0.7, 1e-12);
    EXPECT_NEAR(two.elasticMpa / c30.ecmMpa, std::pow(two.share, 0.3), 1e-12);
    EXPECT_FALSE(two.fckMpa);

    const StrengthAtAge week = strengthAtAge(c30, kNormalCementS, 7 * 24, 20);
    ASSERT_TRUE(week.fckMpa);
    EXPECT_NEAR(*week.fckMpa, week.fcmMpa - 8, 1e-12);
    const StrengthAtAge old = strengthAtAge(c30, kNormalCementS, 90 * 24, 20);
    EXPECT_NEAR(old.fctmMpa / c30.fctmMpa, std::pow(old.share, 2.0 / 3.0), 1e-12);
    EXPECT_EQ(old.fckMpa, 30.0);
}

/// Eq. 3.23 (from memory): 40 mm of C30/37 bears 1.56 x 2.896 = 4.518 MPa in bending.
TEST(FlexuralStrengthEn1992, ThinSlab)
{
    EXPECT_NEAR(flexuralFactor(40) * concreteProperties(30).fctmMpa, 4.518, 0.001);
    EXPECT_EQ(flexuralFactor(600), 1.0);
    EXPECT_EQ(flexuralFactor(900), 1.0);
}

}  // namespace
}  // namespace yardcast
