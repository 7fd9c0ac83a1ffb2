#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "tests/core/castings/counters.h"

namespace yardcast {
namespace {

/// A counter of random shape with everything in it, often overlapping and sticking out.
Counter randomCounter(std::mt19937& random)
{
    std::uniform_real_distribution<double> unit(0, 1);
    const auto between = [&](double a, double b) { return a + (b - a) * unit(random); };
    Counter counter;
    const int corners = 3 + static_cast<int>(unit(random) * 9);
    for (int i = 0; i < corners; ++i) {
        const double angle = 2 * std::numbers::pi * i / corners;
        counter.outline.push_back(Point{std::cos(angle), std::sin(angle)} * between(300, 1200));
    }
    counter.thicknessMm = between(25, 60);
    counter.rim = Rim{between(30, 90), between(30, 120), std::nullopt, {}};
    if (unit(random) < 0.5) counter.rim->edges = std::vector<int>{0, 2};
    if (unit(random) < 0.5) counter.filler = Filler{20, unit(random) < 0.5, {}};
    const auto anywhere = [&] { return Point{between(-600, 600), between(-600, 600)}; };
    const int ribs = static_cast<int>(unit(random) * 4);
    for (int i = 0; i < ribs; ++i) counter.ribs.push_back({anywhere(), anywhere(), between(40, 120), {}});
    const int cutouts = static_cast<int>(unit(random) * 4);
    for (int i = 0; i < cutouts; ++i) {
        if (unit(random) < 0.5) {
            counter.cutouts.push_back(circleCutout(anywhere(), between(20, 400)));
        } else {
            Cutout c = rectangleCutout(anywhere(), {between(50, 500), between(50, 500)}, between(1, 100));
            c.turnDeg = between(-90, 90);
            c.cornerRadiusMm = between(0, 60);
            counter.cutouts.push_back(c);
        }
    }
    return counter;
}

Counter moved(const Counter& counter, const Placement& placement)
{
    Counter result = counter;
    result.outline = transformed(counter.outline, placement);
    for (Rib& rib : result.ribs) {
        rib.from = placement.toPlan(rib.from);
        rib.to = placement.toPlan(rib.to);
    }
    for (Cutout& cutout : result.cutouts) {
        cutout.centre = placement.toPlan(cutout.centre);
        cutout.turnDeg = cutout.turnDeg.value_or(0) + placement.turnDeg;
    }
    for (Joint& joint : result.joints) {
        joint.from = placement.toPlan(joint.from);
        joint.to = placement.toPlan(joint.to);
    }
    return result;
}

/// The lattice moves boundaries by up to its pitch: 20 m of boundary, 100 mm deep.
constexpr double kLatticeL = 20000 * kLatticeMm * 100 * 1e-6;

TEST(CastingsProperty, ZonesOfConcreteAreDisjointAndCoverTheOutline)
{
    std::mt19937 random(1);
    for (int i = 0; i < 150; ++i) {
        const Counter counter = randomCounter(random);
        for (const CastingPtr& casting : castingsOf(partOf(counter))) {
            double sum = 0.0;
            Region together;
            double foam = 0.0;
            for (const Zone& zone : casting->zones) {
                EXPECT_GT(zone.depthMm(), 0.0);
                if (!zone.isConcrete()) {
                    foam += areaMm2(zone.region);
                    continue;
                }
                sum += areaMm2(zone.region);
                together = unite(together, zone.region);
            }
            const double outline = areaMm2(casting->outline);
            EXPECT_NEAR(sum, outline, 3.0) << i;
            EXPECT_NEAR(areaMm2(together), outline, 3.0) << i;
            if (counter.filler && casting->deepestMm > counter.thicknessMm) {
                EXPECT_NEAR(foam, zoneAreaMm2(*casting, ZoneKind::field), 1e-9);
            }
        }
    }
}

TEST(CastingsProperty, MovingOrTurningThePartChangesNothing)
{
    std::mt19937 random(2);
    for (int i = 0; i < 20; ++i) {
        Part part = partOf(randomCounter(random));
        const auto before = castingsOf(part);
        part.place = {{12345.6, -777}, 37.5};
        const auto after = castingsOf(part);
        ASSERT_EQ(before.size(), after.size());
        for (std::size_t k = 0; k < before.size(); ++k) {
            EXPECT_EQ(before[k]->volumeL, after[k]->volumeL);
            EXPECT_EQ(before[k]->centroidMm, after[k]->centroidMm);
        }
    }
}

TEST(CastingsProperty, MovingOrTurningTheDrawingKeepsItsVolume)
{
    std::mt19937 random(3);
    std::uniform_real_distribution<double> any(-400, 400);
    for (int i = 0; i < 150; ++i) {
        const Counter counter = randomCounter(random);
        const Counter turned = moved(counter, {{any(random), any(random)}, any(random)});
        // Arcs are flattened from other starting points: 2 pi r times the tolerance, 90 mm deep, a few of them.
        EXPECT_NEAR(volumeL(turned), volumeL(counter), 0.01) << i;
    }
}

TEST(CastingsProperty, PiecesTogetherAreTheWholeLessTheGap)
{
    std::mt19937 random(4);
    std::uniform_real_distribution<double> any(-250, 250);
    std::uniform_real_distribution<double> gaps(2, 12);
    int divided = 0;
    for (int i = 0; i < 150; ++i) {
        Counter counter = randomCounter(random);
        double whole = 0.0;
        double inGap = 0.0;
        const Joint joint{{any(random), -3000}, {any(random), 3000}, gaps(random), {}};
        const Region strip = regionOf(stripRing(joint.from, joint.to, *joint.gapMm));
        for (const CastingPtr& casting : castingsOf(partOf(counter))) {
            whole += casting->volumeL;
            for (const Zone& zone : casting->zones) {
                if (zone.isConcrete()) inGap += areaMm2(intersect(zone.region, strip)) * zone.depthMm() * 1e-6;
            }
        }
        counter.joints = {joint};
        const auto pieces = castingsOf(partOf(counter));
        if (pieces.size() > 1) ++divided;
        double sum = 0.0;
        for (const CastingPtr& piece : pieces) sum += piece->volumeL;
        // Each dropped sliver is at most 1 cm2 by 120 mm; few occur.
        const double slivers = 2 * 100.0 * 120 * 1e-6;
        EXPECT_LE(sum, whole - inGap + kLatticeL) << i;
        EXPECT_GE(sum, whole - inGap - slivers - kLatticeL) << i;
    }
    EXPECT_GT(divided, 100);
}

}  // namespace
}  // namespace yardcast
