#include <gtest/gtest.h>

#include <cmath>

#include "core/castings/steel_in_casting.h"
#include "core/materials/concrete_strength.h"
#include "core/materials/materials.h"
#include "core/reinforcement/detailing_rules.h"
#include "core/reinforcement/section.h"

namespace yardcast {
namespace {

const double kMeshArea = barAreaMm2(4) / 50;

std::vector<SteelLayer> meshAt(double depthMm) { return {{kMeshArea, depthMm, 4, 50, 500, 200'000}}; }

double resistance(double depthMm, const std::vector<SteelLayer>& layers, TensionSide side)
{
    return bendingResistance(depthMm, 30, layers, side).momentN;
}

Region rectangle(double width, double depth)
{
    return {Polygon{{{0, 0}, {width, 0}, {width, depth}, {0, depth}}, {}}};
}

TEST(Section, SteelIsWorthWhatItsDistanceFromTheCompressedSideIs)
{
    // 40 mm, mesh 30 below the face: good for the underside, poor for the face.
    const double good = resistance(40, meshAt(30), TensionSide::underside);
    const double poor = resistance(40, meshAt(30), TensionSide::face);
    EXPECT_GT(good, 3 * poor);
    EXPECT_GT(poor, 0.0);
    // By hand, yielding: x = A fyd / (fcd 0.8).
    const double force = kMeshArea * 500 / 1.15;
    EXPECT_NEAR(good, force * (30 - force / 20 / 2), good * 1e-9);
    EXPECT_NEAR(resistance(40, meshAt(10), TensionSide::face), good, good * 1e-9) << "turned over";
}

TEST(Section, MeshAtMidDepthOfAThinSlabCarriesLessThanTheConcreteThatCracks)
{
    const ConcreteProperties c30 = concreteProperties(30);
    const double cracking = crackingMomentN(40, flexuralFactor(40) * c30.fctmMpa);
    // 4 mm at 100 mm, all safety off: 62.8 N/mm on 19 mm of lever arm against 1204 N.
    const auto likely = [&](double depth) {
        const std::vector<SteelLayer> mesh{{barAreaMm2(4) / 100, depth, 4, 100, 500, 200'000}};
        return bendingResistance(40, 30, mesh, TensionSide::underside, {1, 1, 1}).momentN;
    };
    EXPECT_NEAR(cracking, 1204, 2);
    EXPECT_TRUE(breaksWithoutWarning(likely(20), cracking));
    EXPECT_FALSE(breaksWithoutWarning(likely(32), cracking));
}

TEST(Section, LayersAddUpAndThoseInTheCompressedPartCountAsNothing)
{
    const std::vector<SteelLayer> both{{0.5, 30, 6, 50, 500, 200'000}, {0.5, 2, 6, 50, 500, 200'000}};
    const BendingResistance r = bendingResistance(60, 30, both, TensionSide::underside);
    EXPECT_NEAR(r.areaMm2Mm, 0.5, 1e-12) << "2 mm below the face is above the neutral axis";
    EXPECT_NEAR(r.momentN, resistance(60, {both[0]}, TensionSide::underside), 1e-6);
    const std::vector<SteelLayer> two{{0.25, 40, 6, 50, 500, 200'000}, {0.25, 40, 8, 50, 500, 200'000}};
    EXPECT_NEAR(resistance(60, two, TensionSide::underside),
                resistance(60, {{0.5, 40, 6, 50, 500, 200'000}}, TensionSide::underside), 1e-6);
    EXPECT_EQ(resistance(60, {}, TensionSide::underside), 0.0);
    EXPECT_EQ(resistance(60, {{0.5, 70, 6, 50, 500, 200'000}}, TensionSide::underside), 0.0) << "below the slab";
}

TEST(Section, TooMuchSteelDoesNotYield)
{
    // So much of it that the concrete crushes first: no more force than strains allow.
    const BendingResistance r =
        bendingResistance(50, 20, {{4.0, 40, 16, 50, 500, 200'000}}, TensionSide::underside);
    EXPECT_LT(r.tensionNMm, 4.0 * 500 / 1.15 * 0.5);
    EXPECT_NEAR(r.tensionNMm, 0.8 * r.compressedMm * 20 / 1.5, 1e-6) << "equilibrium";
    EXPECT_NEAR(r.tensionNMm, 4.0 * 200'000 * 0.0035 * (40 - r.compressedMm) / r.compressedMm, 1e-6) << "strains";
}

TEST(Section, StrongerConcreteHasALowerBlock)
{
    const BendingResistance c90 = bendingResistance(100, 90, meshAt(80), TensionSide::underside);
    // lambda 0.7, eta 0.8 of EN 1992-1-1 3.1.7(3) at 90 MPa.
    EXPECT_NEAR(c90.compressedMm, c90.tensionNMm / (0.8 * 90 / 1.5 * 0.7), 1e-6);
}

TEST(Section, GlassAndBasaltAreNotCounted)
{
    for (const SteelMaterial material : {SteelMaterial::glass, SteelMaterial::basalt}) {
        EXPECT_FALSE(reinforcementStrength(material).counted);
        Steel steel;
        steel.mesh = Mesh{4, 50, 20, {}, material};
        steel.bars = {BarGroup{{0, 300}, {1800, 300}, 8, 1, {}, 20, {}, material}};
        EXPECT_TRUE(layersAcross(steel, rectangle(1800, 600), {900, 0}, {900, 600}, 600, 1.8).empty());
    }
    for (const SteelMaterial material : {SteelMaterial::steel, SteelMaterial::galvanised, SteelMaterial::stainless})
        EXPECT_EQ(reinforcementStrength(material).fykMpa, 500.0);
}

TEST(LayersAcross, MeshAndBarsOfACut)
{
    Steel steel;
    steel.mesh = Mesh{4, 50, 20, {}};
    steel.bars = {BarGroup{{0, 300}, {1800, 300}, 8, 2, 100.0, 25, {}},     // crosses
                  BarGroup{{900.1, 20}, {900.1, 580}, 8, 1, {}, 25, {}},    // runs along
                  BarGroup{{0, 100}, {800, 100}, 8, 1, {}, 25, {}}};        // ends before
    const auto layers = layersAcross(steel, rectangle(1800, 600), {900, 0}, {900, 600}, 600, 1.8);
    ASSERT_EQ(layers.size(), 2u);
    EXPECT_NEAR(layers[0].areaMm2Mm, 11 * barAreaMm2(4) / 600, 1e-12) << "560 within the cover, at 50";
    EXPECT_EQ(layers[0].depthMm, 24.0);
    EXPECT_NEAR(layers[1].areaMm2Mm, 2 * barAreaMm2(8) / 600, 1e-12);
    EXPECT_EQ(layers[1].depthMm, 29.0);
    EXPECT_EQ(layers[1].spacingMm, 100.0);
}

TEST(LayersAcross, AStripTooNarrowForAWireHasNone)
{
    Steel steel;
    steel.mesh = Mesh{4, 50, 20, {}};
    const Region narrow = rectangle(1800, 89);
    EXPECT_TRUE(layersAcross(steel, narrow, {900, 0}, {900, 89}, 89, 1.8).empty());
    EXPECT_EQ(layersAcross(steel, rectangle(1800, 90), {900, 0}, {900, 90}, 90, 1.8).size(), 1u);
}

TEST(LayersAcross, ASlantingBarCountsByTheSquareOfItsCosine)
{
    Steel steel;
    steel.bars = {BarGroup{{200, -400}, {1600, 1000}, 8, 1, {}, 20, {}}};
    const auto layers = layersAcross(steel, rectangle(1800, 600), {900, 0}, {900, 600}, 600, 1.8);
    ASSERT_EQ(layers.size(), 1u);
    EXPECT_NEAR(layers[0].areaMm2Mm, barAreaMm2(8) / 600 / 2, 1e-9);
}

TEST(LayersAcross, ABarThatHardlyReachesBeyondTheCutCountsForWhatItHolds)
{
    Steel steel;
    steel.bars = {BarGroup{{0, 300}, {1000, 300}, 8, 1, {}, 20, {}}};
    const Region outline = rectangle(1800, 600);
    BarInConcrete held;
    held.diameterMm = 8;
    held.coverMm = 20;
    const double wanted = anchorageMm(held, 1.8);
    ASSERT_GT(wanted, 100.0);
    const auto layers = layersAcross(steel, outline, {900, 0}, {900, 600}, 600, 1.8);
    ASSERT_EQ(layers.size(), 1u);
    EXPECT_NEAR(layers[0].areaMm2Mm, barAreaMm2(8) / 600 * 100 / wanted, 1e-9);
    // Younger concrete holds it less.
    EXPECT_LT(layersAcross(steel, outline, {900, 0}, {900, 600}, 600, 0.9)[0].areaMm2Mm, layers[0].areaMm2Mm * 0.6);
    EXPECT_TRUE(layersAcross(steel, outline, {900, 0}, {900, 200}, 200, 1.8).empty()) << "the cut misses it";
}

}  // namespace
}  // namespace yardcast
