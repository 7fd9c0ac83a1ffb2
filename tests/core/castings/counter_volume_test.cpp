#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "tests/core/castings/counters.h"

/// Volumes worked by hand; the working stands beside each.
namespace yardcast {
namespace {

constexpr double kPi = std::numbers::pi;

TEST(CounterVolume, PlainSlab)
{
    const auto castings = castingsOf(partOf(slab(1800, 620, 50)));
    ASSERT_EQ(castings.size(), 1U);
    const Casting& c = *castings[0];
    EXPECT_EQ(c.id, "C1");
    EXPECT_EQ(c.mix, "worktop");
    EXPECT_NEAR(c.volumeL, 55.8, 1e-9);  // 18 x 6.2 x 0.5 dm
    EXPECT_NEAR(c.massKg, 55.8 * 2.4, 1e-9);
    EXPECT_NEAR(c.freshKg, 55.8 * 2.5, 1e-9);
    EXPECT_NEAR(c.faceAreaM2, 1.116, 1e-12);
    EXPECT_NEAR(c.edgeLengthMm, 4840, 1e-9);
    EXPECT_EQ(c.cutoutEdgeLengthMm, 0.0);
    EXPECT_EQ(c.deepestMm, 50.0);
    EXPECT_NEAR(c.centroidMm[0], 900, 1e-9);
    EXPECT_NEAR(c.centroidMm[1], 310, 1e-9);
    EXPECT_NEAR(c.centroidMm[2], 900 - 25, 1e-9);
    EXPECT_EQ(c.boundsMm.high, (Point{1800, 620}));
}

TEST(CounterVolume, RimOnFourEdgesCountsItsCornersOnce)
{
    // Field depth everywhere: 1800 x 620 x 40 = 44.64 l. The rim adds 20 mm on 1800 x 620 - 1680 x 500
    // = 276 000 mm2: 5.52 l.
    const auto castings = castingsOf(partOf(rimmedSlab()));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(castings[0]->volumeL, 50.16, 1e-6);
    EXPECT_NEAR(zoneAreaMm2(*castings[0], ZoneKind::rim), 276000, 0.1);
    EXPECT_NEAR(zoneAreaMm2(*castings[0], ZoneKind::field), 840000, 0.1);
    EXPECT_EQ(castings[0]->deepestMm, 60.0);
    // z: (44.64 x 20 + 5.52 x 50) / 50.16 below the face.
    EXPECT_NEAR(castings[0]->centroidMm[2], 900 - (44.64 * 20 + 5.52 * 50) / 50.16, 1e-6);
}

TEST(CounterVolume, RimOnTheFrontOnly)
{
    Counter counter = rimmedSlab();
    counter.rim->edges = std::vector<int>{0};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(castings[0]->volumeL, 44.64 + 1800 * 60 * 20 * 1e-6, 1e-6);
    // y: the rim's 2.16 l stand at y = 30.
    EXPECT_NEAR(castings[0]->centroidMm[1], (44.64 * 310 + 2.16 * 30) / 46.8, 1e-6);
}

TEST(CounterVolume, EdgesNamedTwiceOrOutOfRangeDoNoHarm)
{
    Counter counter = rimmedSlab();
    counter.rim->edges = std::vector<int>{0, 0, -1, 4, 1000000000};
    EXPECT_NEAR(volumeL(counter), 44.64 + 2.16, 1e-6);
    counter.rim->edges = std::vector<int>{};
    EXPECT_NEAR(volumeL(counter), 44.64, 1e-6);
}

TEST(CounterVolume, RimOfAnLClosesTheNotchAtTheReentrantCorner)
{
    // Area 1800 x 600 + 600 x 900 = 1 620 000; the field inside the rim is the L shrunk by 60:
    // 1680 x 480 + 480 x 900 = 1 238 400. Rim 381 600.
    const auto castings = castingsOf(partOf(lShape()));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(zoneAreaMm2(*castings[0], ZoneKind::rim), 381600, 0.1);
    EXPECT_NEAR(castings[0]->volumeL, 64.8 + 381600 * 20 * 1e-6, 1e-6);
}

TEST(CounterVolume, TheNotchStaysOpenWhereOnlyOneEdgeAtTheCornerHasARim)
{
    Counter counter = lShape();
    counter.rim->edges = std::vector<int>{4};  // 1200 long, its back edge
    EXPECT_NEAR(volumeL(counter), 64.8 + 1200 * 60 * 20 * 1e-6, 1e-6);
    counter.rim->edges = std::vector<int>{3, 4};  // with the inner side of the leg: 900 long, and the 60 x 60 kite
    EXPECT_NEAR(volumeL(counter), 64.8 + (1200 * 60 + 900 * 60 + 60 * 60) * 20 * 1e-6, 1e-6);
}

TEST(CounterVolume, ClockwiseOutlinesAreTheSame)
{
    Counter counter = lShape();
    const double expected = volumeL(counter);
    std::reverse(counter.outline.begin(), counter.outline.end());
    EXPECT_NEAR(volumeL(counter), expected, 1e-6);
}

TEST(CounterVolume, CutoutsAreTakenOutOfFieldAndRim)
{
    Counter counter = rimmedSlab();
    Cutout sink = rectangleCutout({600, 300}, {560, 400});
    sink.cornerRadiusMm = 20;
    counter.cutouts = {sink, circleCutout({600, 30}, 35)};  // the tap hole lies in the rim of the front edge
    const double sinkArea = 560 * 400 - (4 - kPi) * 400;
    const double tapArea = kPi / 4 * 35 * 35;
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(castings[0]->volumeL, 50.16 - (sinkArea * 40 + tapArea * 60) * 1e-6, 1e-5);
    EXPECT_NEAR(castings[0]->faceAreaM2, (1116000 - sinkArea - tapArea) * 1e-6, 1e-8);
    // Chords are shorter than their arcs, by less than 1 %.
    const double edge = 2 * (560 + 400) - (8 - 2 * kPi) * 20 + kPi * 35;
    EXPECT_LE(castings[0]->cutoutEdgeLengthMm, edge * 1.001);
    EXPECT_GE(castings[0]->cutoutEdgeLengthMm, edge * 0.99);
}

TEST(CounterVolume, OverlappingCutoutsAreTakenOutOnce)
{
    Counter counter = slab(1000, 600, 40);
    counter.cutouts = {rectangleCutout({400, 300}, {200, 200}), rectangleCutout({500, 300}, {200, 200})};
    EXPECT_NEAR(volumeL(counter), (600000 - 60000) * 40 * 1e-6, 1e-6);
}

TEST(CounterVolume, CutoutRimThatRunsIntoTheEdgeRimIsCountedOnce)
{
    // 1000 x 600, edge rim 60 wide; opening 300 x 400 about (500,300) with a rim of 80, so its ring would reach from
    // y = 20 to 580: between y = 60 and 540 it is new.
    //   middle strip 300 x 480, sides 2 x 80 x 400, and in each corner the arc of radius 80 from its centre's height
    //   down 40 mm: (40 sqrt(80^2 - 40^2) + 80^2 asin(1/2)) / 2; less the opening 300 x 400.
    const double corner = (40 * std::sqrt(4800.0) + 6400 * kPi / 6) / 2;
    const double ring = 300 * 480 + 2 * 80 * 400 + 4 * corner - 300 * 400;
    const double edgeRim = 1000 * 600 - 880 * 480;
    Counter counter = slab(1000, 600, 40);
    counter.rim = Rim{};
    counter.cutouts = {rectangleCutout({500, 300}, {300, 400}, 80)};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(zoneAreaMm2(*castings[0], ZoneKind::rim), edgeRim, 0.1);
    // The chords keep the area of whole quarter arcs, not of the cut ones: off by less than the tolerance along them.
    EXPECT_NEAR(zoneAreaMm2(*castings[0], ZoneKind::cutoutRim), ring, 4 * 80 * kPi / 6 * kArcToleranceMm);
    const double exact = ((600000 - 120000) * 40 + (edgeRim + ring) * 20) * 1e-6;
    EXPECT_NEAR(castings[0]->volumeL, exact, 4 * 80 * kPi / 6 * kArcToleranceMm * 20 * 1e-6);
}

TEST(CounterVolume, CutoutRimIsTheParallelCurve)
{
    // Steiner: ring about 300 x 200 with corners of 20, 50 wide: P d + pi d2, P = 2 (300 + 200) - (8 - 2 pi) 20.
    Counter counter = slab(1000, 700, 40);
    counter.rim = Rim{};
    counter.cutouts = {rectangleCutout({300, 350}, {300, 200}, 50), circleCutout({750, 350}, 200)};
    counter.cutouts[0].cornerRadiusMm = 20;
    counter.cutouts[1].rimMm = 50;
    const double rectangle = (1000 - (8 - 2 * kPi) * 20) * 50 + kPi * 2500;
    const double circle = kPi * (150 * 150 - 100 * 100);
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(zoneAreaMm2(*castings[0], ZoneKind::cutoutRim), rectangle + circle, 0.5);
}

TEST(CounterVolume, RibsThatCrossAreCountedOnce)
{
    // Field 1680 x 500. One rib along x (80 wide, between the rims 1680 x 80), one across (500 x 80), crossing 80 x 80.
    Counter counter = rimmedSlab();
    counter.ribs = {Rib{{0, 310}, {1800, 310}, 80, {}}, Rib{{900, 0}, {900, 620}, 80, {}}};
    const double ribs = 1680 * 80 + 500 * 80 - 80 * 80;
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(zoneAreaMm2(*castings[0], ZoneKind::rib), ribs, 0.1);
    EXPECT_NEAR(castings[0]->volumeL, 50.16 + ribs * 20 * 1e-6, 1e-6);
}

TEST(CounterVolume, RibsAreNotLengthened)
{
    Counter counter = rimmedSlab();
    counter.ribs = {Rib{{400, 310}, {600, 310}, 80, {}}};
    EXPECT_NEAR(volumeL(counter), 50.16 + 200 * 80 * 20 * 1e-6, 1e-6);
}

TEST(CounterVolume, WithoutARimRibsAndCutoutRimsAddNoDepth)
{
    Counter counter = slab(1000, 600, 40);
    counter.ribs = {Rib{{0, 300}, {1000, 300}, 80, {}}};
    counter.cutouts = {rectangleCutout({500, 300}, {200, 200}, 60)};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    ASSERT_EQ(castings[0]->zones.size(), 1U);
    EXPECT_EQ(castings[0]->zones[0].kind, ZoneKind::field);
    EXPECT_NEAR(castings[0]->volumeL, (600000 - 40000) * 40 * 1e-6, 1e-6);
}

TEST(CounterVolume, FillerLiesUnderTheFieldAndWeighsWhereItStays)
{
    Counter counter = rimmedSlab();
    counter.filler = Filler{30, true, {}};
    const auto stays = castingsOf(partOf(counter));
    ASSERT_EQ(stays.size(), 1U);
    EXPECT_NEAR(stays[0]->fillerL, 840000 * 20 * 1e-6, 1e-6);       // 16.8 l
    EXPECT_NEAR(stays[0]->fillerKg, 16.8 * 0.030, 1e-6);
    EXPECT_NEAR(stays[0]->volumeL, 50.16, 1e-6);
    EXPECT_NEAR(stays[0]->massKg, 50.16 * 2.4 + 16.8 * 0.030, 1e-6);
    counter.filler->stays = false;
    const auto taken = castingsOf(partOf(counter));
    ASSERT_EQ(taken.size(), 1U);
    EXPECT_NEAR(taken[0]->fillerL, 16.8, 1e-6);
    EXPECT_EQ(taken[0]->fillerKg, 0.0);
    EXPECT_NEAR(taken[0]->massKg, 50.16 * 2.4, 1e-6);
}

TEST(CounterVolume, PrepSlabOfTheGrillBenchSample)
{
    // 950 x 600, rim 60 wide and deep, field 35: 950 x 600 x 35 + 25 x (950 x 600 - 830 x 480) = 19.95 + 4.29 l.
    Counter counter = slab(950, 600, 35);
    counter.rim = Rim{};
    EXPECT_NEAR(volumeL(counter), 24.24, 1e-6);
}

}  // namespace
}  // namespace yardcast
