#include "core/reinforcement/detailing_rules.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/materials/concrete_strength.h"
#include "core/reinforcement/bar_shapes.h"

namespace yardcast {
namespace {

/// How to Design Concrete Structures using Eurocode 2: Detailing, table 2, good bond: C25/30, fyk 500, cover 25, bars
/// at 150, stressed to 435 MPa (as restated by xcfem/xc, test_anchorage_length_01.py and test_lap_length_01.py).
/// Anchorage is rounded up to 10 mm, laps to the nearest 10. It is met with fctk,0.05 unrounded and alpha6 = sqrt 2 at
/// 50 %.
struct BondRow {
    double diameterMm;
    double straightMm;
    double bentMm;
    double lapHalfMm;
    double lapAllMm;
};

class BondTableEn1992 : public testing::TestWithParam<BondRow> {};

TEST_P(BondTableEn1992, ExactlyAsPrinted)
{
    const BondRow row = GetParam();
    const double fctk = concreteProperties(25).fctk005Mpa;
    BarInConcrete bar;
    bar.diameterMm = row.diameterMm;
    bar.coverMm = 25;
    bar.clearMm = 150 - row.diameterMm;
    const auto up = [](double mm) { return std::ceil(mm / 10) * 10; };
    const auto nearest = [](double mm) { return std::round(mm / 10) * 10; };
    EXPECT_EQ(up(anchorageMm(bar, fctk)), row.straightMm);
    EXPECT_EQ(nearest(lapMm(bar, fctk, 0.5)), row.lapHalfMm);
    EXPECT_EQ(nearest(lapMm(bar, fctk, 1.0)), row.lapAllMm);
    bar.bent = true;
    EXPECT_EQ(up(anchorageMm(bar, fctk)), row.bentMm);
}

INSTANTIATE_TEST_SUITE_P(Sizes, BondTableEn1992,
                         testing::Values(BondRow{8, 230, 320, 320, 340}, BondRow{10, 320, 410, 440, 470},
                                         BondRow{12, 410, 490, 570, 610}, BondRow{16, 600, 650, 840, 890},
                                         BondRow{20, 780, 810, 1100, 1170}, BondRow{25, 1010, 1010, 1430, 1510},
                                         BondRow{32, 1300, 1300, 1830, 1940}, BondRow{40, 1760, 1760, 2480, 2630}));

/// EN 1992-1-1:2004 8.4.2 and the least lengths of 8.4.4 and 8.7.3.
TEST(BondEn1992, PoorBondThickBarsAndLeastLengths)
{
    EXPECT_NEAR(bondStrengthMpa(1.5, 16), 2.25, 1e-12);
    EXPECT_NEAR(bondStrengthMpa(1.5, 16, false), 0.7 * 2.25, 1e-12);
    EXPECT_NEAR(bondStrengthMpa(1.5, 40), 0.92 * 2.25, 1e-12);
    BarInConcrete idle;
    idle.diameterMm = 12;
    idle.stressMpa = 10;
    EXPECT_EQ(anchorageMm(idle, 1.8), 120.0) << "10 bars";
    EXPECT_EQ(lapMm(idle, 1.8, 1.0), 200.0);
    idle.diameterMm = 16;
    EXPECT_EQ(lapMm(idle, 1.8, 1.0), 240.0) << "15 bars";
    idle.diameterMm = 6;
    EXPECT_EQ(anchorageMm(idle, 1.8), 100.0);
}

/// EN 1992-1-1:2004 Table 4.4N, cmin,dur by structural class (public copies; S4 XD1 and XD2 as the full copy has them,
/// 35 and 40), and 4.4.1.1.
TEST(CoverEn1992, Table44N)
{
    const Exposure columns[] = {Exposure::x0, Exposure::xc1, Exposure::xc3, Exposure::xc4,
                                Exposure::xd1, Exposure::xd2, Exposure::xd3};
    const double table[6][7] = {{10, 10, 10, 15, 20, 25, 30}, {10, 10, 15, 20, 25, 30, 35},
                                {10, 10, 20, 25, 30, 35, 40}, {10, 15, 25, 30, 35, 40, 45},
                                {15, 20, 30, 35, 40, 45, 50}, {20, 25, 35, 40, 45, 50, 55}};
    for (int s = 1; s <= 6; ++s) {
        for (int i = 0; i < 7; ++i) EXPECT_EQ(leastCoverForLifeMm(columns[i], s), table[s - 1][i]) << s << ' ' << i;
        EXPECT_EQ(leastCoverForLifeMm(Exposure::xc2, s), leastCoverForLifeMm(Exposure::xc3, s));
        EXPECT_EQ(leastCoverForLifeMm(Exposure::xs1, s), leastCoverForLifeMm(Exposure::xd1, s));
        EXPECT_EQ(leastCoverForLifeMm(Exposure::xs2, s), leastCoverForLifeMm(Exposure::xd2, s));
        EXPECT_EQ(leastCoverForLifeMm(Exposure::xs3, s), leastCoverForLifeMm(Exposure::xd3, s));
    }
    // A counter outdoors: 30 + 10 mm, twice, with steel between, does not fit in 50 mm.
    EXPECT_EQ(coverAsked(Exposure::xc4, 8, 8).leastMm, 30.0);
    EXPECT_EQ(coverAsked(Exposure::xc4, 8, 8).nominalMm, 40.0);
    EXPECT_EQ(coverAsked(Exposure::x0, 25, 20).leastMm, 25.0) << "the bar";
    EXPECT_EQ(coverAsked(Exposure::x0, 25, 40).leastMm, 30.0) << "the bar and coarse aggregate";
    EXPECT_EQ(coverAsked(Exposure::xc4, 8, 8, 3, 5).nominalMm, 30.0);
}

/// EN 1992-1-1:2004 8.2(2) and 9.3.1.1(3) (the latter from memory).
TEST(SpacingEn1992, LeastAndMost)
{
    EXPECT_EQ(leastClearMm(8, 8), 20.0);
    EXPECT_EQ(leastClearMm(25, 8), 25.0);
    EXPECT_EQ(leastClearMm(8, 32), 37.0);
    EXPECT_EQ(mostSpacingMm(50, true), 150.0);
    EXPECT_EQ(mostSpacingMm(50, false), 175.0);
    EXPECT_EQ(mostSpacingMm(200, true), 400.0);
    EXPECT_EQ(mostSpacingMm(200, false), 450.0);
    EXPECT_EQ(meshLapMm(4, 50), 150.0);
    EXPECT_EQ(meshLapMm(4, 100), 200.0);
    EXPECT_EQ(meshLapMm(8, 100), 250.0);
    EXPECT_EQ(meshLapMm(10, 100), 350.0);
}

/// BS 8666:2005 as restated by a cutting and bending works (shape codes with their length formulas); worked by hand.
TEST(BarLengthBs8666, WorkedShapes)
{
    EXPECT_EQ(leastBendRadiusMm(8), 16.0);
    EXPECT_EQ(leastBendRadiusMm(16), 32.0);
    EXPECT_EQ(leastBendRadiusMm(20), 70.0);
    EXPECT_NEAR(leastBendRadiusMm(25), 87, 0.5) << "printed without its half";
    EXPECT_EQ(bentBarLengthMm("00", 8, {.a = 1234}), 1234.0);
    EXPECT_EQ(bentBarLengthMm("11", 8, {.a = 300, .b = 500}), 784.0);
    EXPECT_EQ(scheduledLengthMm(784), 800.0);
    EXPECT_EQ(bentBarLengthMm("21", 8, {.a = 150, .b = 600, .c = 150}), 868.0);
    EXPECT_EQ(scheduledLengthMm(868), 875.0);
    EXPECT_EQ(bentBarLengthMm("51", 6, {.a = 120, .b = 200}), 800.0);
    EXPECT_EQ(scheduledLengthMm(800), 800.0);
    EXPECT_FALSE(bentBarLengthMm("99", 8, {}));
    // What has to fit between two covers is cut short, never long.
    EXPECT_EQ(cutLengthMm(1763.9), 1760.0);
    EXPECT_EQ(cutLengthMm(1765), 1765.0);
}

}  // namespace
}  // namespace yardcast
