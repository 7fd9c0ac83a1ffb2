#include <cmath>

#include <gtest/gtest.h>

#include "core/materials/boards.h"
#include "core/mould/fresh_pressure.h"

namespace yardcast {

/// EN 1991-1-1 Table A.1: 25 kN/m3 unhardened. A slab of 50 mm, an upright of 900 mm.
TEST(FreshPressure, Hydrostatic)
{
    EXPECT_NEAR(hydrostaticKpa(50), 1.25, 1e-12);
    EXPECT_NEAR(hydrostaticKpa(900), 22.5, 1e-12);
}

/// DIN 18218:2010, greatest pressure for an end of setting after 5 h and 25 kN/m3 (from memory).
TEST(FreshPressure, Din18218)
{
    EXPECT_NEAR(din18218Kpa(FreshClass::f1, 2.0), 31.0, 1e-12);
    EXPECT_NEAR(din18218Kpa(FreshClass::f2, 2.0), 39.0, 1e-12);
    EXPECT_NEAR(din18218Kpa(FreshClass::f3, 2.0), 46.0, 1e-12);
    EXPECT_NEAR(din18218Kpa(FreshClass::f4, 2.0), 51.0, 1e-12);
    EXPECT_NEAR(din18218Kpa(FreshClass::f5, 2.0), 85.0, 1e-12);
    EXPECT_NEAR(din18218Kpa(FreshClass::f6, 2.0), 101.0, 1e-12);
    EXPECT_NEAR(din18218Kpa(FreshClass::scc, 2.0), 91.0, 1e-12);
    EXPECT_NEAR(din18218Kpa(FreshClass::f1, 0.1), 25.0, 1e-12) << "the least for F1 to F4";
    EXPECT_NEAR(din18218Kpa(FreshClass::f5, 0.0), 30.0, 1e-12) << "the least for F5, F6 and SCC";
    EXPECT_NEAR(din18218Kpa(FreshClass::f3, 2.0, 1.5), 69.0, 1e-12) << "slower setting";
}

/// CIRIA report 108 as an engineers' forum gives it with all inputs (https://www.engineersedge.com/engineering-forum/):
/// wall, C2 0.3, 25 kN/m3, 3 m high, 2 m/h, 15 degrees C: K = 1.3486, 48.09 kPa; hydrostatic 75.
TEST(FreshPressure, Ciria108)
{
    Ciria108 wall;
    wall.heightM = 3.0;
    wall.riseMPerH = 2.0;
    wall.concreteC = 15.0;
    EXPECT_NEAR(std::pow(36.0 / 31.0, 2), 1.3486, 5e-5);
    EXPECT_NEAR(ciria108Kpa(wall), 48.09, 0.005);
    // C1 sqrt R > H: what the concrete weighs.
    wall.heightM = 1.0;
    EXPECT_NEAR(ciria108Kpa(wall), 25.0, 1e-12);
}

/// ACI 347 (formula from a secondary page, limits from memory): 1.2 m/h at 20 degrees C gives 32.1 kPa.
TEST(FreshPressure, Aci347)
{
    EXPECT_NEAR(aci347Kpa(1.2, 20.0, 3.0), 32.1, 0.05);
    EXPECT_NEAR(aci347Kpa(0.5, 20.0, 3.0), 30.0, 1e-12) << "the least";
    EXPECT_NEAR(aci347Kpa(1.2, 20.0, 0.9), 22.5, 1e-12) << "never more than its weight";
}

/// A simple span under an even load (any handbook): 5 q l4 / (384 E I) and q l2 / 8. 18 mm, 600 mm, 2500 MPa, 10 kPa.
TEST(FreshPressure, ABoardBendsAsASimpleSpan)
{
    const BoardBending bending = boardBending(10.0, 600.0, 18.0, 2500.0);
    EXPECT_NEAR(bending.bowMm, 5 * 0.010 * std::pow(600.0, 4) / (384 * 2500 * 486.0), 1e-9);
    EXPECT_NEAR(bending.stressMpa, 450.0 / 54.0, 1e-9);
    EXPECT_NEAR(spanForBowMm(10.0, bending.bowMm, 18.0, 2500.0), 600.0, 1e-9);
}

/// Plausibility, not proof: an estimate of makers (no source) has a board of 16 mm bow between braces 400 / 600 / 800 mm
/// apart by 0.3 / 1.4 / 4.5 mm with 60 mm of concrete, and 0.5 / 2.4 mm at 400 / 600 with 100 mm. It is rounded to a
/// tenth, so a sixth of the smallest figure is the least that can be asked; the modulus behind it is not known.
TEST(FreshPressure, AgreesWithMakersEstimateOfBowingEdges)
{
    struct Row {
        double heightMm;
        double spanMm;
        double bowMm;
    };
    for (const Row& row :
         {Row{60, 400, 0.3}, Row{60, 600, 1.4}, Row{60, 800, 4.5}, Row{100, 400, 0.5}, Row{100, 600, 2.4}}) {
        const double kpa = hydrostaticKpa(row.heightMm) / 2;
        const double bow = boardBending(kpa, row.spanMm, 16.0, kMouldBoardElasticMpa).bowMm;
        EXPECT_NEAR(bow, row.bowMm, row.bowMm / 6) << row.heightMm << " high, " << row.spanMm << " apart";
    }
}

}  // namespace yardcast
