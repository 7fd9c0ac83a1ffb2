#include <cmath>

#include <gtest/gtest.h>

#include "tests/core/mould/moulds.h"
#include "tests/property/random_plan.h"

namespace yardcast {

namespace {

// Booleans keep within 1e-4 mm: over the some 50 m of edges that a mould of many plies has, 60 mm high, that is 0.3 ml.
constexpr double kSameL = 5e-4;

/// Formers that run into each other, or whose roundings vanish on the way up, are reckoned as frustums of similar
/// figures: within 2 % of the draft.
double slackL(const Mould& mould)
{
    for (const MouldPart& part : mould.parts) {
        if (part.topOutline.empty()) continue;
        if (part.outline.size() != part.topOutline.size() ||
            part.outline[0].outer.size() != part.topOutline[0].outer.size())
            return kSameL + 0.02 * std::abs(mould.draftL);
    }
    return kSameL;
}

void expectHoldsItsCasting(const MouldsOfPlan& all, const std::string& what)
{
    ASSERT_EQ(all.moulds.size(), all.castings.size()) << what;
    for (std::size_t i = 0; i < all.moulds.size(); ++i) {
        const Mould& mould = *all.moulds[i];
        EXPECT_EQ(mould.casting, all.castings[i]->id);
        EXPECT_NEAR(mouldVolumeL(mould) - mould.draftL, all.castings[i]->volumeL, slackL(mould))
            << what << " " << mould.casting;
        EXPECT_DOUBLE_EQ(mould.volumeL, mouldVolumeL(mould));
    }
}

/// No two parts that keep concrete away are in the same place: the volume counts each of them whole.
void expectNoPartsShareRoom(const Mould& mould, const std::string& what)
{
    std::vector<const MouldPart*> inside;
    for (const MouldPart& part : mould.parts) {
        switch (part.kind) {
        case MouldPartKind::former:
        case MouldPartKind::filler:
        case MouldPartKind::core:
        case MouldPartKind::drip:
        case MouldPartKind::rebate:
        case MouldPartKind::side: inside.push_back(&part); break;
        default: break;
        }
    }
    const bool hasShortEdge = std::any_of(inside.begin(), inside.end(), [](const MouldPart* part) {
        return part->kind == MouldPartKind::side && part->insideMm < part->thicknessMm;
    });
    for (std::size_t i = 0; i < inside.size(); ++i) {
        for (std::size_t j = i + 1; j < inside.size(); ++j) {
            const MouldPart& a = *inside[i];
            const MouldPart& b = *inside[j];
            if (std::min(a.toMm, b.toMm) - std::max(a.fromMm, b.fromMm) < 1e-6) continue;
            // A step in the outline that is shorter than a board is thick cannot be boarded: a finding of its own.
            if (a.kind == b.kind && a.kind == MouldPartKind::side && hasShortEdge) continue;
            const double shared = areaMm2(intersect(a.outline, b.outline));
            // Slivers along edges that touch.
            EXPECT_LT(shared, 1.0) << what << ": " << a.name << " and " << b.name;
        }
    }
}

}  // namespace

TEST(MouldVolume, OfAPlainSlabIsThatOfItsBoards)
{
    Moulding how;
    how.edge = EdgeFinish::sharp;
    const MouldsOfPlan all = mouldsOfParts({partOf(slab(1800, 620, 50))}, how);
    EXPECT_NEAR(all.moulds.at(0)->volumeL, 1.8 * 0.62 * 50, kSameL);
}

TEST(MouldVolume, DraftAddsItsWedgeAllRound)
{
    Moulding how;
    how.draftDeg = 3.0;
    Counter counter = slab(1800, 620, 54);
    counter.cutouts = {rectangleCutout({900, 310}, {560, 400})};
    const MouldsOfPlan all = mouldsOfParts({partOf(counter)}, how);
    const Mould& mould = *all.moulds.at(0);
    // A wedge of t = 54 tan 3 = 2.830 mm at its thick end around 1920 mm, less the corners: 4 t2 / 3 x 54.
    const double t = 54 * std::tan(3.0 * 3.14159265358979 / 180);
    EXPECT_NEAR(mould.draftL, (1920 * 54 * t / 2 - 4 * 54 * t * t / 3) * 1e-6, 1e-4);
    EXPECT_NEAR(mould.cutoutDraftMm, t, 1e-9);
    expectHoldsItsCasting(all, "drafted");
}

TEST(MouldVolume, CastFaceUpTheFaceKeepsTheDrawnSizeAndTheUndersideGetsTheWiderEnd)
{
    Counter counter = rimmedSlab();
    counter.cast = CounterCast::faceUp;
    counter.filler = Filler{};
    counter.cutouts = {rectangleCutout({900, 310}, {560, 300}, 60)};
    const MouldsOfPlan all = mouldsOfParts({partOf(counter)});
    const Mould& mould = *all.moulds.at(0);
    EXPECT_LT(mould.draftL, 0.0);
    expectHoldsItsCasting(all, "face up");
    const auto formers = partsOfKind(mould, MouldPartKind::former);
    ASSERT_EQ(formers.size(), 4U);
    EXPECT_NEAR(areaMm2(formers.back().topOutline), 560 * 300, 1.0);
    EXPECT_GT(areaMm2(formers.front().outline), 560 * 300 + 1000);
}

TEST(MouldVolume, OfEveryWayOfBuilding)
{
    for (const SideJoint sides : {SideJoint::onBase, SideJoint::besideBase}) {
        for (const CounterCast cast : {CounterCast::faceDown, CounterCast::faceUp}) {
            Moulding how;
            how.sides = sides;
            Counter counter = lShape();
            counter.cast = cast;
            counter.filler = Filler{};
            counter.ribs = {Rib{{700, 0}, {700, 600}, 80, {}}};
            counter.cutouts = {rectangleCutout({350, 300}, {300, 250}), circleCutout({1500, 300}, 35)};
            counter.cutouts[0].cornerRadiusMm = 20;
            counter.cutouts[0].turnDeg = 10;
            counter.drip = Drip{{0, 3, 4}, 20, 8, 5, {}};
            counter.rebate = Rebate{{2}, 44, 8, {}};
            expectHoldsItsCasting(mouldsOfParts({partOf(counter)}, how), "L");
            counter.joints = {Joint{{1100, 0}, {1100, 600}, 4.0, {}}};
            expectHoldsItsCasting(mouldsOfParts({partOf(counter)}, how), "L in two");
            counter.cutouts[0].centre = {1100, 300};
            expectHoldsItsCasting(mouldsOfParts({partOf(counter)}, how), "cutout across the joint");
        }
    }
}

TEST(MouldVolume, OfUprightsLyingAndStanding)
{
    for (const UprightCast cast : {UprightCast::flat, UprightCast::upright}) {
        Support support;
        support.lengthMm = 600;
        support.widthMm = 100;
        support.heightMm = 840;
        support.core = Core{440, 680, 40, 20, {}};
        support.cast = cast;
        Panel panel;
        panel.lengthMm = 1800;
        panel.cast = cast;
        expectHoldsItsCasting(mouldsOfParts({partOf(support, "S1"), partOf(panel, "P1")}), "uprights");
    }
}

TEST(MouldVolume, OfARoundedOutline)
{
    Counter counter = slab(1200, 600, 40);
    counter.outline = rectangleRing({600, 300}, {1200, 600}, 0, 150);
    const MouldsOfPlan all = mouldsOfParts({partOf(counter)});
    expectHoldsItsCasting(all, "rounded");
    const auto sides = partsOfKind(*all.moulds[0], MouldPartKind::side);
    ASSERT_EQ(sides.size(), 8U) << "four straight, four bent";
    int bent = 0;
    for (const MouldPart& side : sides) {
        if (!side.bent) continue;
        ++bent;
        EXPECT_EQ(side.lengthMm, 236) << "developed, 235.6, in whole millimetres";
    }
    EXPECT_EQ(bent, 4);

    counter.outline = circleRing({400, 400}, 800);
    const MouldsOfPlan round = mouldsOfParts({partOf(counter)});
    expectHoldsItsCasting(round, "round");
    ASSERT_EQ(partsOfKind(*round.moulds[0], MouldPartKind::side).size(), 1U);
}

TEST(MouldVolume, OfCountersWithoutJointsInManyShapes)
{
    const Ring shapes[] = {
        {{0, 0}, {1600, 0}, {1600, 600}, {620, 600}, {620, 1500}, {0, 1500}},                                // L
        {{0, 0}, {1500, 0}, {1500, 700}, {900, 700}, {900, 600}, {300, 600}, {300, 700}, {0, 700}},          // notch
        {{0, 0}, {1000, 0}, {1000, 400}, {1600, 400}, {1600, 1000}, {500, 1000}, {500, 600}, {0, 600}},      // Z
        {{0, 0}, {2600, 0}, {2600, 600}, {2000, 600}, {2000, 1700}, {1400, 1700}, {1400, 600}, {0, 600}},    // T
        rectangleRing({800, 350}, {1600, 700}, 0, 200),
        circleRing({450, 450}, 900),
    };
    for (const SideJoint sides : {SideJoint::onBase, SideJoint::besideBase}) {
        for (const CounterCast cast : {CounterCast::faceDown, CounterCast::faceUp}) {
            for (const Ring& shape : shapes) {
                Moulding how;
                how.sides = sides;
                how.edge = EdgeFinish::chamfer;
                Counter counter = slab(1600, 700, 50);
                counter.cast = cast;
                counter.outline = shape;
                counter.cutouts = {rectangleCutout({300, 300}, {200, 150})};
                const std::string what = std::to_string(shape.size()) + " corners";
                const MouldsOfPlan all = mouldsOfParts({partOf(counter)}, how);
                expectHoldsItsCasting(all, what);
                expectNoPartsShareRoom(*all.moulds.at(0), what);
                // Whatever its shape, the base carries all of the casting.
                Region base;
                for (const MouldPart& part : partsOfKind(*all.moulds[0], MouldPartKind::base))
                    base = base.empty() ? part.outline : unite(base, part.outline);
                EXPECT_LT(areaMm2(subtract(all.moulds[0]->inside, base)), 1.0) << what;
            }
        }
    }
}

TEST(MouldVolume, OfRandomCounters)
{
    int cutoutsOverEach = 0;
    for (const std::uint32_t seed : random::seeds(150)) {
        random::Source source(seed);
        Counter counter = random::counter(source);
        if (source.chance(40)) {
            const double x = source.between(300, 700, 0.5);
            counter.joints = {Joint{{x, -10}, {x + source.between(0, 60), 3000}, source.between(2, 8), {}}};
        }
        Moulding how;
        how.boardMm = source.between(12, 24);
        how.sides = static_cast<SideJoint>(source.below(2));
        how.draftDeg = source.between(0, 6, 0.5);
        how.former = static_cast<FormerStuff>(source.below(2));
        const MouldsOfPlan all = mouldsOfParts({partOf(counter)}, how);
        const std::string what = "seed " + std::to_string(seed);
        expectHoldsItsCasting(all, what);
        for (const MouldPtr& mould : all.moulds) {
            expectNoPartsShareRoom(*mould, what);
            cutoutsOverEach += static_cast<int>(partsOfKind(*mould, MouldPartKind::former).size());
        }
        if (testing::Test::HasFailure()) break;
    }
    EXPECT_GT(cutoutsOverEach, 0);
}

}  // namespace yardcast
