#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>

#include "tests/core/castings/counters.h"

namespace yardcast {
namespace {

const double kBad[] = {std::numeric_limits<double>::quiet_NaN(), HUGE_VAL, -HUGE_VAL, 1e300, -1e300, 1e12};

void expectSoundNumbers(const std::vector<CastingPtr>& castings)
{
    for (const CastingPtr& c : castings) {
        for (const double value : {c->volumeL, c->concreteKg, c->steelKg, c->fillerKg, c->fillerL, c->massKg,
                                   c->faceAreaM2, c->edgeLengthMm, c->centroidMm[0], c->centroidMm[1],
                                   c->centroidMm[2], c->deepestMm}) {
            EXPECT_TRUE(std::isfinite(value));
        }
        EXPECT_GT(c->volumeL, 0.0);
        EXPECT_GE(c->concreteKg, 0.0);
    }
}

Counter everything()
{
    Counter counter = rimmedSlab();
    counter.filler = Filler{};
    counter.ribs = {Rib{{900, 0}, {900, 620}, 80, {}}};
    counter.cutouts = {rectangleCutout({600, 300}, {560, 400}, 60), circleCutout({1200, 300}, 35)};
    counter.joints = {Joint{{900, 0}, {900, 620}, 4.0, {}}};
    counter.steel = Steel{Mesh{}, {BarGroup{{0, 40}, {1800, 40}, 8, 2, 40.0, 20, {}}}, {}};
    return counter;
}

TEST(BrokenSizes, NoNumberOfACounterMakesNanOrACrash)
{
    const std::function<void(Counter&, double)> setters[] = {
        [](Counter& c, double v) { c.topMm = v; },
        [](Counter& c, double v) { c.outline[2].x = v; },
        [](Counter& c, double v) { c.thicknessMm = v; },
        [](Counter& c, double v) { c.rim->depthMm = v; },
        [](Counter& c, double v) { c.rim->widthMm = v; },
        [](Counter& c, double v) { c.filler->densityKgM3 = v; },
        [](Counter& c, double v) { c.ribs[0].from.y = v; },
        [](Counter& c, double v) { c.ribs[0].widthMm = v; },
        [](Counter& c, double v) { c.cutouts[0].centre.x = v; },
        [](Counter& c, double v) { c.cutouts[0].size.width = v; },
        [](Counter& c, double v) { c.cutouts[0].turnDeg = v; },
        [](Counter& c, double v) { c.cutouts[0].cornerRadiusMm = v; },
        [](Counter& c, double v) { c.cutouts[0].rimMm = v; },
        [](Counter& c, double v) { c.cutouts[1].diameterMm = v; },
        [](Counter& c, double v) { c.joints[0].from.x = v; },
        [](Counter& c, double v) { c.joints[0].gapMm = v; },
        [](Counter& c, double v) { c.steel->mesh->barMm = v; },
        [](Counter& c, double v) { c.steel->mesh->pitchMm = v; },
        [](Counter& c, double v) { c.steel->mesh->coverMm = v; },
        [](Counter& c, double v) { c.steel->bars[0].from.x = v; },
        [](Counter& c, double v) { c.steel->bars[0].diameterMm = v; },
        [](Counter& c, double v) { c.steel->bars[0].spacingMm = v; },
        [](Counter& c, double v) { c.steel->bars[0].coverMm = v; },
    };
    for (const auto& set : setters) {
        for (const double bad : {kBad[0], kBad[1], kBad[2], kBad[3], kBad[4], kBad[5], 0.0, -1.0, 1e-9}) {
            Counter counter = everything();
            set(counter, bad);
            expectSoundNumbers(castingsOf(partOf(counter)));
        }
    }
}

TEST(BrokenSizes, GiveNoCastings)
{
    Counter counter = slab(1800, 620, 40);
    counter.thicknessMm = 0;
    EXPECT_TRUE(castingsOf(partOf(counter)).empty());
    counter = slab(1800, 620, 40);
    counter.outline.resize(2);
    EXPECT_TRUE(castingsOf(partOf(counter)).empty());
    counter.outline = {{0, 0}, {100, 0}, {200, 0}};
    EXPECT_TRUE(castingsOf(partOf(counter)).empty());
    counter = slab(1800, 620, 40);
    counter.cutouts = {rectangleCutout({900, 300}, {5000, 5000})};
    EXPECT_TRUE(castingsOf(partOf(counter)).empty()) << "all is cut out";
    counter = slab(1800, 620, 40);
    counter.cutouts = {rectangleCutout({NAN, 300}, {50, 50})};
    EXPECT_TRUE(castingsOf(partOf(counter)).empty()) << "a cutout that cannot be placed is not passed over in silence";
}

TEST(BrokenSizes, OfUprights)
{
    for (const double bad : {kBad[0], kBad[1], kBad[2], kBad[3], kBad[4], kBad[5], 0.0, -1.0}) {
        for (int field = 0; field < 3; ++field) {
            Support support;
            (field == 0 ? support.lengthMm : field == 1 ? support.widthMm : support.heightMm) = bad;
            EXPECT_TRUE(castingsOf(partOf(support)).empty());
        }
        for (int field = 0; field < 4; ++field) {
            Support support;
            support.core = Core{440, 680, 40, 20, {}};
            (field == 0   ? support.core->lengthMm
             : field == 1 ? support.core->heightMm
             : field == 2 ? support.core->thicknessMm
                          : support.core->densityKgM3) = bad;
            expectSoundNumbers(castingsOf(partOf(support)));
        }
    }
}

TEST(BrokenSizes, SelfCrossingOutlineStillGivesSoundNumbers)
{
    Counter counter = everything();
    counter.outline = {{0, 0}, {1800, 620}, {1800, 0}, {0, 620}};
    expectSoundNumbers(castingsOf(partOf(counter)));
}

TEST(BrokenSizes, MoreBarsThanAnyoneLaysAreRefused)
{
    Counter counter = slab(1800, 620, 60);
    counter.steel = Steel{std::nullopt, {BarGroup{{0, 300}, {1800, 300}, 8, 2000000000, {}, 20, {}}}, {}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_TRUE(castings[0]->steel.empty());
}

}  // namespace
}  // namespace yardcast
