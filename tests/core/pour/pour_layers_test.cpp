#include <gtest/gtest.h>

#include <numeric>

#include "core/pour/pour_plan.h"

namespace yardcast {
namespace {

Part counterPart(CounterCast cast, bool mesh)
{
    Part part;
    part.id = "C1";
    Counter counter;
    counter.outline = {{0, 0}, {1000, 0}, {1000, 600}, {0, 600}};
    counter.thicknessMm = 40;
    counter.rim = Rim{60, 100, std::nullopt, {}};
    counter.filler = Filler{};
    counter.cast = cast;
    counter.mix = "body";
    if (mesh) {
        counter.steel = Steel{};
        counter.steel->mesh = Mesh{};
        counter.steel->mesh->coverMm = 22;
        counter.steel->mesh->barMm = 4;
    }
    part.body = counter;
    return part;
}

Part supportPart(UprightCast cast)
{
    Part part;
    part.id = "S1";
    Support support;
    support.lengthMm = 600;
    support.heightMm = 800;
    support.widthMm = 100;
    support.core = Core{400, 600, 40, 20, {}};
    support.cast = cast;
    support.mix = "body";
    part.body = support;
    return part;
}

struct Expected {
    LayerKind kind;
    double fromMm;
    double toMm;
    double litres;
};

void expectLayers(const std::vector<PourLayer>& layers, const std::vector<Expected>& expected)
{
    ASSERT_EQ(layers.size(), expected.size());
    for (std::size_t i = 0; i < layers.size(); ++i) {
        SCOPED_TRACE(i);
        EXPECT_STREQ(layerKindWord(layers[i].kind), layerKindWord(expected[i].kind));
        EXPECT_NEAR(layers[i].fromMm, expected[i].fromMm, 1e-9);
        EXPECT_NEAR(layers[i].toMm, expected[i].toMm, 1e-9);
        EXPECT_NEAR(layers[i].litres, expected[i].litres, 1e-9);
    }
}

double litresOf(const std::vector<PourLayer>& layers)
{
    return std::accumulate(layers.begin(), layers.end(), 0.0,
                           [](double sum, const PourLayer& layer) { return sum + layer.litres; });
}

TEST(PourLayers, FaceDownTheSteelLiesOnTheFirstLayerAtItsOwnHeight)
{
    const Part part = counterPart(CounterCast::faceDown, true);
    const auto castings = castingsOf(part);
    ASSERT_EQ(castings.size(), 1u);
    // 1.0 x 0.6 m; inside the rim 0.8 x 0.4 m of foam: all 22 mm 13.2 l, 18 mm 10.8 l, the rim's 0.28 m2 by 20 mm 5.6 l.
    ASSERT_NEAR(castings[0]->volumeL, 29.6, 1e-9);
    expectLayers(pourLayers(*castings[0], part, 29.6), {{LayerKind::first, 0, 22, 13.2},
                                                        {LayerKind::steel, 22, 30, 0},
                                                        {LayerKind::second, 22, 40, 10.8},
                                                        {LayerKind::filler, 40, 60, 0},
                                                        {LayerKind::rim, 40, 60, 5.6}});
}

TEST(PourLayers, FaceUpTheFoamComesFirstAndTheRimBesideIt)
{
    const Part part = counterPart(CounterCast::faceUp, true);
    const auto castings = castingsOf(part);
    // Steel 22 to 30 mm below the face is 30 to 38 mm above the base of a piece 60 mm deep.
    expectLayers(pourLayers(*castings[0], part, 29.6), {{LayerKind::filler, 0, 20, 0},
                                                        {LayerKind::rim, 0, 20, 5.6},
                                                        {LayerKind::second, 20, 30, 6.0},
                                                        {LayerKind::steel, 30, 38, 0},
                                                        {LayerKind::second, 30, 60, 18.0}});
}

TEST(PourLayers, BarsOfTheRimAreHungBeforeItIsFilled)
{
    Part part = counterPart(CounterCast::faceDown, true);
    BarGroup bars;
    bars.from = {50, 50};
    bars.to = {950, 50};
    bars.coverMm = 44;
    std::get<Counter>(part.body).steel->bars = {bars};
    const auto castings = castingsOf(part);
    expectLayers(pourLayers(*castings[0], part, 29.6), {{LayerKind::first, 0, 22, 13.2},
                                                        {LayerKind::steel, 22, 30, 0},
                                                        {LayerKind::second, 22, 40, 10.8},
                                                        {LayerKind::steel, 44, 52, 0},
                                                        {LayerKind::filler, 40, 60, 0},
                                                        {LayerKind::rim, 40, 60, 5.6}});
}

TEST(PourLayers, WithoutSteelTheFieldIsOneLayer)
{
    const Part part = counterPart(CounterCast::faceDown, false);
    const auto castings = castingsOf(part);
    expectLayers(pourLayers(*castings[0], part, 29.6),
                 {{LayerKind::first, 0, 40, 24.0}, {LayerKind::filler, 40, 60, 0}, {LayerKind::rim, 40, 60, 5.6}});
}

TEST(PourLayers, AnUprightCastFlatHasTwoLeavesAboutItsCore)
{
    const Part part = supportPart(UprightCast::flat);
    const auto castings = castingsOf(part);
    // 0.6 x 0.8 m, 100 mm; core 0.4 x 0.6 m, 40 mm: leaves of 30 mm 14.4 l each, about the core 0.24 m2 by 40 mm 9.6 l.
    expectLayers(pourLayers(*castings[0], part, 38.4), {{LayerKind::first, 0, 30, 14.4},
                                                        {LayerKind::filler, 30, 70, 0},
                                                        {LayerKind::rim, 30, 70, 9.6},
                                                        {LayerKind::second, 70, 100, 14.4}});
}

TEST(PourLayers, AStandingUprightIsOneLayerRoundACoreThatIsThereAlready)
{
    const Part part = supportPart(UprightCast::upright);
    const auto castings = castingsOf(part);
    expectLayers(pourLayers(*castings[0], part, 38.4),
                 {{LayerKind::filler, 100, 700, 0}, {LayerKind::whole, 0, 800, 38.4}});
}

TEST(PourLayers, LitresSumToWhatIsMixedWhateverTheAllowance)
{
    for (const bool mesh : {false, true}) {
        for (const CounterCast cast : {CounterCast::faceDown, CounterCast::faceUp}) {
            const Part part = counterPart(cast, mesh);
            const auto casting = castingsOf(part)[0];
            const double litres = casting->volumeL * 1.13;
            // Sums of a few numbers of this size: the last digits of a double.
            EXPECT_NEAR(litresOf(pourLayers(*casting, part, litres)), litres, 1e-12);
        }
    }
}

TEST(PourLayers, ZonesWithoutAreaStillGetTheirLitres)
{
    Casting casting;
    casting.deepestMm = 50;
    Part part;
    part.body = Counter{};
    const auto layers = pourLayers(casting, part, 12.5);
    ASSERT_EQ(layers.size(), 1u);
    EXPECT_EQ(layers[0].kind, LayerKind::whole);
    EXPECT_DOUBLE_EQ(layers[0].litres, 12.5);
}

// A core of 600 x 400 x 20 mm, 30 kg/m3, in concrete of 2300 kg/m3, by hand: 4.8 l x 2.27 kg/l x 9.81 = 106.89 N.
TEST(Uplift, ByHand)
{
    const Uplift uplift = upliftOf(0.6 * 0.4 * 0.02 * 1000, 30, 2300);
    EXPECT_NEAR(uplift.litres, 4.8, 1e-12);
    EXPECT_NEAR(uplift.forceN, 106.9, 0.05);              // given to a tenth of a newton
    EXPECT_NEAR(uplift.forceN / 9.81, 10.9, 0.05);     // given to a tenth of a kilogram
    EXPECT_NEAR(uplift.holdN, 1.5 * uplift.forceN, 1e-9);
    EXPECT_EQ(uplift.fixings, 4);                         // one would do; two battens have four ends
}

TEST(Uplift, FixingsHoldWhatTheyAreCountedFor)
{
    for (const double litres : {1.0, 15.6, 40.0, 130.0}) {
        const Uplift uplift = upliftOf(litres, 20, 2300);
        EXPECT_GE(uplift.fixings * kFixingN, uplift.holdN);
        EXPECT_EQ(uplift.fixings % 2, 0);
        if (uplift.fixings > kLeastFixings) {
            EXPECT_LT((uplift.fixings - 2) * kFixingN, uplift.holdN);
        }
    }
}

TEST(Uplift, NoneWithoutFoamOrWhereItSinks)
{
    EXPECT_EQ(upliftOf(0, 20, 2300).fixings, 0);
    EXPECT_EQ(upliftOf(10, 2300, 2300).fixings, 0);
    EXPECT_EQ(upliftOf(10, 20, 0).fixings, 0);
}

}  // namespace
}  // namespace yardcast
