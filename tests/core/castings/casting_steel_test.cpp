#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/castings/steel_in_casting.h"
#include "core/materials/materials.h"
#include "tests/core/castings/counters.h"

namespace yardcast {
namespace {

TEST(SteelInCasting, MeshIsTheOutlineWithinTheCoverLessCutoutsGrownByIt)
{
    Counter counter = slab(1800, 620, 50);
    counter.cutouts = {rectangleCutout({600, 300}, {560, 400})};
    counter.steel = Steel{Mesh{4, 50, 20, {}}, {}, {}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    const Casting& c = *castings[0];
    ASSERT_EQ(c.steel.size(), 1U);
    const double net = 1760.0 * 580.0 - 600.0 * 440.0;
    EXPECT_TRUE(c.steel[0].mesh);
    EXPECT_NEAR(c.steel[0].meshAreaM2, net * 1e-6, 1e-6);
    // Two layers of 4 mm wires at 50 mm: 2 x 12.566 / 50 x 7.85 = 3.946 kg/m2.
    EXPECT_NEAR(c.steel[0].massKg, net * 1e-6 * 3.9458, 1e-3);
    const double concrete = (1800 * 620 - 560 * 400) * 50 * 1e-6 - c.steelKg / 7.85;
    EXPECT_NEAR(c.concreteKg, concrete * 2.4, 1e-6);
    EXPECT_NEAR(c.massKg, c.concreteKg + c.steelKg, 1e-9);
}

TEST(SteelInCasting, FibresInResinWeighLessAndTakeTheSameRoom)
{
    Counter counter = slab(1800, 620, 50);
    const auto made = [&](SteelMaterial material) {
        const BarGroup bars{{0, 300}, {1800, 300}, 8, 2, {}, 10, {}, material};
        counter.steel = Steel{Mesh{4, 50, 10, {}, material}, {bars}, {}};
        return castingsOf(partOf(counter))[0];
    };
    const CastingPtr plain = made(SteelMaterial::steel);
    for (const SteelMaterial material : {SteelMaterial::glass, SteelMaterial::basalt}) {
        const CastingPtr light = made(material);
        EXPECT_NEAR(light->steelKg, plain->steelKg * 2100 / 7850, 1e-9);
        EXPECT_NEAR(light->concreteKg, plain->concreteKg, 1e-9);
        EXPECT_EQ(light->steel[0].material, material);
        EXPECT_EQ(light->steel[1].material, material);
        // Nearer to the concrete's own weight, so less of a pull towards the face.
        EXPECT_LT(light->centroidMm[2], plain->centroidMm[2]);
    }
    EXPECT_NEAR(made(SteelMaterial::stainless)->massKg, plain->massKg, 1e-9);
}

TEST(SteelInCasting, BarsAreCutToThePieceAndShareEqualLengths)
{
    Counter counter = slab(1800, 620, 60);
    counter.steel = Steel{std::nullopt, {BarGroup{{-100, 300}, {1900, 300}, 8, 3, 50.0, 20, {}}}, {}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    ASSERT_EQ(castings[0]->steel.size(), 1U);
    EXPECT_EQ(castings[0]->steel[0].count, 3);
    EXPECT_NEAR(castings[0]->steel[0].lengthMm, 1760, 1e-6);
    EXPECT_NEAR(castings[0]->steelKg, 3 * 1.76 * 0.39458, 1e-4);
}

TEST(SteelInCasting, BarsAreDividedByJointsAndCutouts)
{
    Counter counter = slab(1800, 620, 60);
    counter.joints = {Joint{{600, 0}, {600, 620}, {}, {}}};
    counter.cutouts = {rectangleCutout({1200, 310}, {400, 300})};
    counter.steel = Steel{std::nullopt, {BarGroup{{20, 310}, {1780, 310}, 8, 1, {}, 20, {}}}, {}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 2U);
    ASSERT_EQ(castings[0]->steel.size(), 1U);
    EXPECT_NEAR(castings[0]->steel[0].lengthMm, 598 - 40, 1e-6);
    // Right of the joint: 622 to 980 before the opening (1000 less cover), 1420 to 1780 behind it.
    ASSERT_EQ(castings[1]->steel.size(), 2U);
    EXPECT_NEAR(castings[1]->steel[0].lengthMm, 360, 1e-6);
    EXPECT_NEAR(castings[1]->steel[1].lengthMm, 358, 1e-6);
}

TEST(SteelInCasting, ABarAlongTheLineOfTheCoverStays)
{
    Counter counter = slab(1800, 620, 60);
    counter.steel = Steel{std::nullopt, {BarGroup{{0, 20}, {1800, 20}, 8, 1, {}, 20, {}}}, {}};
    for (const double turn : {0.0, 17.0, 33.3, 123.456}) {
        Counter turned = counter;
        const Placement placement{{11.7, -3.3}, turn};
        turned.outline = transformed(counter.outline, placement);
        turned.steel->bars[0].from = placement.toPlan(counter.steel->bars[0].from);
        turned.steel->bars[0].to = placement.toPlan(counter.steel->bars[0].to);
        const auto castings = castingsOf(partOf(turned));
        ASSERT_EQ(castings.size(), 1U);
        ASSERT_EQ(castings[0]->steel.size(), 1U) << turn;
        EXPECT_NEAR(castings[0]->steel[0].lengthMm, 1760, 0.01) << turn;
    }
}

TEST(SteelInCasting, ABarNearerToTheEdgeThanItsCoverHasNoPlace)
{
    Counter counter = slab(1800, 620, 60);
    counter.steel = Steel{std::nullopt, {BarGroup{{0, 15}, {1800, 15}, 8, 1, {}, 20, {}}}, {}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_TRUE(castings[0]->steel.empty());
}

TEST(SteelInCasting, BarsLieSideBySideAboutTheirLine)
{
    const Region outline = regionOf({{0, 0}, {1000, 0}, {1000, 600}, {0, 600}});
    const auto bars = barPieces(BarGroup{{0, 300}, {1000, 300}, 8, 2, {}, 0, {}}, outline);
    ASSERT_EQ(bars.size(), 2U);
    EXPECT_NEAR(std::abs(bars[0].from.y - bars[1].from.y), 40, 1e-9);
    EXPECT_NEAR((bars[0].from.y + bars[1].from.y) / 2, 300, 1e-9);
}

TEST(SteelInCasting, HeavySteelAtTheFrontDrawsTheCentreForward)
{
    Counter counter = slab(1800, 620, 60);
    counter.steel = Steel{std::nullopt, {BarGroup{{0, 30}, {1800, 30}, 16, 1, {}, 20, {}}}, {}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    const double bar = 1.760 * barMassKgM(16);
    const double excess = bar * (1 - 2400.0 / 7850.0);
    const double slabKg = 1800 * 620 * 60 * 2.4e-6;
    EXPECT_NEAR(castings[0]->centroidMm[1], (slabKg * 310 + excess * 30) / (slabKg + excess), 1e-6);
    EXPECT_NEAR(castings[0]->centroidMm[2], 900 - (slabKg * 30 + excess * 28) / (slabKg + excess), 1e-6);
}

TEST(SteelInCasting, BarsKeepTheirCoverFromRoundOpenings)
{
    // A bar 40 mm off the centre of a hole of radius 50: within 70 of the centre it is too near, so it stops at
    // sqrt(70^2 - 40^2) from the middle; chords stand for the circle within 0.1 mm.
    const Region outline = subtract(regionOf({{0, 0}, {1000, 0}, {1000, 600}, {0, 600}}),
                                    regionOf(circleRing({500, 300}, 100)));
    const auto bars = barPieces(BarGroup{{0, 340}, {1000, 340}, 8, 1, {}, 20, {}}, outline);
    ASSERT_EQ(bars.size(), 2U);
    EXPECT_NEAR(bars[0].from.x, 20, 1e-9);
    EXPECT_NEAR(bars[0].to.x, 500 - std::sqrt(70.0 * 70 - 40 * 40), 0.2);
    EXPECT_NEAR(bars[1].from.x, 500 + std::sqrt(70.0 * 70 - 40 * 40), 0.2);
}

TEST(SteelInCasting, EveryPointOfABarKeepsItsCoverAndNoneIsLost)
{
    std::mt19937 random(11);
    std::uniform_real_distribution<double> any(-100, 1100);
    const Region outline = subtract(regionOf({{0, 0}, {1000, 0}, {1000, 1000}, {600, 1000}, {600, 500}, {0, 400}}),
                                    uniteRings({circleRing({300, 200}, 150), circleRing({800, 700}, 90)}));
    const auto clearance = [&](Point p) {
        double least = distanceToRing(outline[0].outer, p);
        for (const Ring& hole : outline[0].holes) least = std::min(least, distanceToRing(hole, p));
        return contains(outline, p) ? least : -least;
    };
    const double cover = 25;
    for (int i = 0; i < 300; ++i) {
        const BarGroup group{{any(random), any(random)}, {any(random), any(random)}, 8, 1, {}, cover, {}};
        const auto bars = barPieces(group, outline);
        const double span = distance(group.from, group.to);
        for (int k = 0; k <= 200; ++k) {
            const Point p = group.from + (group.to - group.from) * (k / 200.0);
            const bool inBar = std::any_of(bars.begin(), bars.end(), [&](const BarStretch& bar) {
                return distanceToSegment(p, bar.from, bar.to) < 1e-6;
            });
            const double clear = clearance(p);
            if (inBar) {
                EXPECT_GE(clear, cover - 0.02);
            }
            // Bars under a millimetre are not kept: only what is well inside must be in a bar.
            if (clear > cover + 1.0 && span > 1.0) {
                EXPECT_TRUE(inBar) << i << ' ' << k;
            }
        }
    }
}

TEST(ClipToRegion, KeepsTheInsideOfARing)
{
    const Region ring = subtract(regionOf({{0, 0}, {100, 0}, {100, 100}, {0, 100}}),
                                 regionOf({{40, 40}, {60, 40}, {60, 60}, {40, 60}}));
    const auto pieces = clipToRegion({-50, 50}, {150, 50}, ring);
    ASSERT_EQ(pieces.size(), 2U);
    EXPECT_NEAR(pieces[0].from.x, 0, 1e-9);
    EXPECT_NEAR(pieces[0].to.x, 40, 1e-9);
    EXPECT_NEAR(pieces[1].lengthMm(), 40, 1e-9);
    EXPECT_TRUE(clipToRegion({-50, 150}, {150, 150}, ring).empty());
    EXPECT_TRUE(clipToRegion({10, 10}, {10, 10}, ring).empty());
    EXPECT_EQ(clipToRegion({10, 10}, {90, 20}, ring).size(), 1U);
}

}  // namespace
}  // namespace yardcast
