#include "core/reinforcement/section_check.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/materials/materials.h"
#include "core/reinforcement/detailing_rules.h"

namespace yardcast {
namespace {

const ConcreteProperties kC30 = concreteProperties(30);
const StrengthAtAge kGrown = strengthAtAge(kC30, kNormalCementS, 28.1 * 24, 20);

std::vector<SteelLayer> mesh(double barMm, double pitchMm, double depthMm)
{
    return {{barAreaMm2(barMm) / pitchMm, depthMm, barMm, pitchMm, 500, 200'000}};
}

TEST(SectionCheck, AThinSlabWithItsMeshInTheMiddle)
{
    // 40 mm, 4 mm at 100 at mid-depth, underside pulled.
    const SectionCheck check = checkSection(40, mesh(4, 100, 20), kGrown, {300, 200, 1, true});
    EXPECT_EQ(check.tension, TensionSide::underside);
    EXPECT_NEAR(check.crackingMomentN, 1.56 * kGrown.fctmMpa * 1600 / 6, 1e-9);
    EXPECT_NEAR(check.resistancePlainN, 0.8 * kGrown.fctk005Mpa / 1.5 * 1600 / 6, 1e-9);
    EXPECT_TRUE(check.breaksWithoutWarning);
    EXPECT_LT(check.resistanceN, check.crackingMomentN);
    // Moved to the underside with 10 mm of cover: axis 28 below the face.
    const double force = barAreaMm2(4) / 100 * 500 / 1.15;
    EXPECT_NEAR(check.resistanceBestN, force * (28 - force / 20 / 2), 1e-6);
    EXPECT_GT(check.resistanceBestN, 1.3 * check.resistanceN);
    EXPECT_NEAR(check.steelAreaMm2M, 125.66, 0.01);
    EXPECT_FALSE(check.cracks);
    EXPECT_EQ(check.crackWidthMm, 0.0);
    EXPECT_EQ(check.softening, 1.0);
    EXPECT_TRUE(check.bears({300, 200, 1, true}));
}

TEST(SectionCheck, TheSideThatIsPulledDecides)
{
    const auto steel = mesh(4, 50, 28);
    const SectionCheck underside = checkSection(40, steel, kGrown, {500, 400, 1, true});
    const SectionCheck face = checkSection(40, steel, kGrown, {-500, -400, 1, true});
    EXPECT_EQ(face.tension, TensionSide::face);
    EXPECT_GT(underside.resistanceN, 2 * face.resistanceN);
    EXPECT_NEAR(face.effectiveDepthMm, 12, 1e-9);
    EXPECT_NEAR(face.resistanceBestN, checkSection(40, mesh(4, 50, 12), kGrown, {-500, -400, 1, true}).resistanceN,
                1e-6);
    EXPECT_NEAR(underside.resistanceBestN, underside.resistanceN, 1e-6) << "it lies at its best already";
}

TEST(SectionCheck, WithoutSteelItIsPlainConcrete)
{
    const SectionCheck check = checkSection(50, {}, kGrown, {400, 300, 5, true});
    EXPECT_EQ(check.resistanceN, 0.0);
    EXPECT_EQ(check.resistanceBestN, 0.0);
    EXPECT_TRUE(check.breaksWithoutWarning);
    EXPECT_NEAR(check.shearResistanceNMm, plainConcreteShearNMm(50, kGrown.fctk005Mpa), 1e-12);
    EXPECT_TRUE(check.bears({400, 300, 5, true})) << "450.5 N by section 12";
    EXPECT_FALSE(check.bears({460, 300, 5, true}));
}

TEST(SectionCheck, CrackedItBendsMoreAndOpens)
{
    const auto steel = mesh(6, 50, 40);
    const SectionCheck check = checkSection(50, steel, kGrown, {4000, 3000, 10, true});
    EXPECT_TRUE(check.cracks);
    EXPECT_FALSE(check.breaksWithoutWarning);
    EXPECT_GT(check.crackWidthMm, 0.02);
    EXPECT_LT(check.crackWidthMm, 0.3);
    // By hand: cracked inertia against h^3/12, between the states by 1 - 0.5 (Mcr/M)^2.
    const double n = 200'000 / kGrown.elasticMpa;
    const double cracked = crackedSection(40, barAreaMm2(6) / 50, n).inertiaMm3;
    const double share = 1 - 0.5 * std::pow(check.crackingMomentN / 3000, 2);
    EXPECT_NEAR(check.softening, share * (50.0 * 50 * 50 / 12) / cracked + 1 - share, 1e-9);
    EXPECT_GT(check.softening, checkSection(50, steel, kGrown, {4000, 3000, 10, false}).softening) << "once only";
}

TEST(SectionCheck, YoungConcreteIsWeaker)
{
    const StrengthAtAge young = strengthAtAge(kC30, kNormalCementS, 48, 20);
    const auto steel = mesh(6, 50, 40);
    const SectionCheck before = checkSection(50, steel, young, {1000, 700, 5, false});
    const SectionCheck after = checkSection(50, steel, kGrown, {1000, 700, 5, false});
    EXPECT_LT(before.resistanceN, after.resistanceN);
    EXPECT_LT(before.crackingMomentN, 0.55 * after.crackingMomentN);
    EXPECT_LT(before.shearResistanceNMm, after.shearResistanceNMm);
    EXPECT_GT(before.resistanceN, 0.0) << "fcm(t) - 8 stands for fck(t)";
}

TEST(SectionCheck, NonsenseBearsNothing)
{
    for (const double depth : {0.0, -5.0, std::nan(""), HUGE_VAL}) {
        const SectionCheck check = checkSection(depth, mesh(4, 50, 20), kGrown, {10, 10, 1, true});
        EXPECT_EQ(check.resistanceN, 0.0);
        EXPECT_FALSE(check.bears({10, 10, 1, true}));
    }
}

}  // namespace
}  // namespace yardcast
