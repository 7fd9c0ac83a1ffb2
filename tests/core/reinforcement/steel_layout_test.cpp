#include "core/reinforcement/steel_layout.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/castings/steel_in_casting.h"
#include "core/materials/concrete_strength.h"
#include "core/plan/edits.h"
#include "core/reinforcement/detailing_rules.h"
#include "core/reinforcement/mesh_sheets.h"
#include "tests/core/castings/counters.h"

namespace yardcast {
namespace {

const double kFctk = concreteProperties(30).fctk005Mpa;

std::vector<CastingSteelLayout> layoutsOf(const Part& part)
{
    std::vector<CastingSteelLayout> layouts;
    for (const CastingPtr& casting : castingsOf(part)) layouts.push_back(castingSteelLayout(*casting, part, kFctk));
    return layouts;
}

CastingSteelLayout layoutOf(const Counter& counter) { return layoutsOf(partOf(counter)).at(0); }

Counter meshed(Counter counter, Mesh mesh = {4, 50, 20, {}})
{
    counter.steel.emplace().mesh = mesh;
    return counter;
}

/// Pieces lie inside their sheets and not on one another.
void expectSoundCutting(const MeshLayout& mesh)
{
    std::vector<Region> taken(static_cast<std::size_t>(mesh.sheets));
    for (const MeshPiece& piece : mesh.pieces) {
        ASSERT_LT(piece.sheet, mesh.sheets);
        Size size{piece.at.width(), piece.at.height()};
        if (piece.turnedOnSheet) std::swap(size.width, size.depth);
        EXPECT_GE(piece.onSheet.x, -1e-6);
        EXPECT_GE(piece.onSheet.y, -1e-6);
        EXPECT_LE(piece.onSheet.x + size.width, mesh.sheet.width + 1e-3);
        EXPECT_LE(piece.onSheet.y + size.depth, mesh.sheet.depth + 1e-3);
        const Region own = regionOf(rectangleRing(piece.onSheet + Point{size.width / 2, size.depth / 2}, size));
        Region& before = taken[static_cast<std::size_t>(piece.sheet)];
        EXPECT_LT(areaMm2(intersect(before, own)), 1.0);
        before = unite(before, own);
    }
}

TEST(MeshLayout, OnePieceWithinTheCover)
{
    const CastingSteelLayout layout = layoutOf(meshed(slab(1800, 620, 50)));
    ASSERT_EQ(layout.meshes.size(), 1u);
    const MeshLayout& mesh = layout.meshes[0];
    ASSERT_EQ(mesh.pieces.size(), 1u);
    EXPECT_EQ(mesh.sheets, 1);
    EXPECT_NEAR(mesh.pieces[0].at.low.x, 20, 1e-3);
    EXPECT_NEAR(mesh.pieces[0].at.high.x, 1780, 1e-3);
    EXPECT_NEAR(mesh.pieces[0].at.high.y, 600, 1e-3);
    EXPECT_TRUE(mesh.pieces[0].notches.empty());
    EXPECT_EQ(mesh.lapMm, 150.0);
}

TEST(MeshLayout, SheetsLapAndCoverEverything)
{
    for (const Size size : {Size{3000, 600}, Size{3000, 2000}, Size{2055, 620}, Size{5000, 900}, Size{900, 2500}}) {
        const CastingSteelLayout layout = layoutOf(meshed(slab(size.width, size.depth, 50)));
        const MeshLayout& mesh = layout.meshes.at(0);
        Region laid;
        double sum = 0.0;
        for (const MeshPiece& piece : mesh.pieces) {
            laid = unite(laid, piece.shape);
            sum += areaMm2(piece.shape);
            EXPECT_GE(std::min(piece.at.width(), piece.at.height()), 2 * mesh.lapMm - 1e-3) << size.width;
        }
        const double net = (size.width - 40) * (size.depth - 40);
        EXPECT_NEAR(areaMm2(laid), net, 1.0) << size.width;
        EXPECT_GT(sum, net);
        expectSoundCutting(mesh);
    }
    // 2960 x 560: two pieces with one lap between them.
    const auto pieces = layoutOf(meshed(slab(3000, 600, 50))).meshes.at(0).pieces;
    ASSERT_EQ(pieces.size(), 2u);
    EXPECT_NEAR(pieces[0].at.high.x - pieces[1].at.low.x, 150, 1e-3);
    EXPECT_EQ(pieces[0].mark, 1);
    EXPECT_EQ(pieces[1].mark, 2);
}

TEST(MeshLayout, AStubAtTheEndTakesFromItsNeighbour)
{
    const auto pieces = layoutOf(meshed(slab(2055, 620, 50))).meshes.at(0).pieces;  // 15 mm more than a sheet
    ASSERT_EQ(pieces.size(), 2u);
    EXPECT_NEAR(pieces[1].at.width(), 300, 1e-3);
    EXPECT_NEAR(pieces[0].at.high.x - pieces[1].at.low.x, 150, 1e-3);
}

TEST(MeshLayout, SmallPiecesShareASheet)
{
    // 2960 x 440: the second piece, 1110 x 440, lies beside the first, 2000 x 440, on one sheet.
    const MeshLayout mesh = layoutOf(meshed(slab(3000, 480, 50))).meshes.at(0);
    EXPECT_EQ(mesh.sheets, 1);
    expectSoundCutting(mesh);
}

TEST(MeshLayout, CutoutsAreNotches)
{
    Counter counter = meshed(slab(1800, 620, 50));
    counter.cutouts = {rectangleCutout({600, 300}, {560, 400})};
    const MeshLayout mesh = layoutOf(counter).meshes.at(0);
    ASSERT_EQ(mesh.pieces.size(), 1u);
    ASSERT_EQ(mesh.pieces[0].notches.size(), 1u);
    const Box notch = *boundsOf(mesh.pieces[0].notches[0]);
    EXPECT_NEAR(notch.width(), 600, 1e-3);
    EXPECT_NEAR(notch.height(), 440, 1e-3);
    EXPECT_NEAR(areaMm2(mesh.pieces[0].shape), 1760.0 * 580 - 600.0 * 440, 1.0);
}

TEST(MeshLayout, EqualPiecesShareAMark)
{
    Counter counter = meshed(slab(1800, 620, 50));
    counter.joints = {Joint{{900, 0}, {900, 620}, {}, {}}};
    const auto layouts = layoutsOf(partOf(counter));
    ASSERT_EQ(layouts.size(), 2u);
    EXPECT_EQ(layouts[0].casting, "C1.1");
    EXPECT_EQ(layouts[1].casting, "C1.2");
    // Three whole sheets of 1000 and a rest of 900 with laps of 150.
    const auto pieces = layoutOf(meshed(slab(2040, 3490, 50))).meshes.at(0).pieces;
    ASSERT_EQ(pieces.size(), 4u);
    EXPECT_EQ(pieces[0].mark, 1);
    EXPECT_EQ(pieces[1].mark, 1);
    EXPECT_EQ(pieces[2].mark, 1);
    EXPECT_EQ(pieces[3].mark, 2);
}

TEST(BarLayout, MarksAndCutLengths)
{
    Counter counter = slab(1803, 620, 60);
    counter.steel.emplace().bars = {{{0, 60}, {1803, 60}, 8, 2, 50.0, 20, {}},
                                    {{0, 560}, {1803, 560}, 8, 1, {}, 20, {}},
                                    {{0, 300}, {1000, 300}, 10, 1, {}, 20, {}}};
    const CastingSteelLayout layout = layoutOf(counter);
    ASSERT_EQ(layout.bars.size(), 4u);
    ASSERT_EQ(layout.barList.size(), 2u);
    const BarListRow& first = layout.barList[0];
    EXPECT_EQ(first.mark, 1);
    EXPECT_EQ(first.count, 3);
    EXPECT_EQ(first.shapeCode, "00");
    EXPECT_NEAR(first.lengthMm, 1763, 1e-6);
    EXPECT_EQ(first.cutLengthMm, 1760.0) << "never into the cover";
    EXPECT_EQ(first.scheduledLengthMm, 1775.0);
    EXPECT_NEAR(first.massKg, 3 * 1.76 * 0.39458, 1e-4);
    EXPECT_EQ(layout.barList[1].diameterMm, 10.0);
    EXPECT_EQ(layout.bars[0].mark, 1);
    EXPECT_EQ(layout.bars[2].mark, 1);
    EXPECT_EQ(layout.bars[3].mark, 2);
    EXPECT_EQ(layout.bars[1].group, 0);
    EXPECT_EQ(layout.bars[3].group, 2);
}

TEST(SteelHeights, FaceDownIsMeasuredFromTheFace)
{
    const SteelHeight h = layoutOf(meshed(slab(1000, 600, 40), {4, 50, 24, {}})).meshes.at(0).height;
    EXPECT_EQ(h.distanceMm, 24.0);
    EXPECT_EQ(h.spacerMm, 24.0);
    EXPECT_EQ(h.coverBackMm, 40 - 24 - 8.0);
    EXPECT_EQ(h.side, SteelSide::underside);
    EXPECT_EQ(layoutOf(meshed(slab(1000, 600, 40), {4, 50, 16, {}})).meshes.at(0).height.side, SteelSide::middle);
    EXPECT_EQ(layoutOf(meshed(slab(1000, 600, 40), {4, 50, 8, {}})).meshes.at(0).height.side, SteelSide::face);
}

TEST(SteelHeights, FaceUpIsMeasuredFromTheOtherSide)
{
    Counter counter = meshed(rimmedSlab(), {4, 50, 15, {}});  // field 40, rim 60 deep
    counter.cast = CounterCast::faceUp;
    counter.steel->bars = {{{60, 30}, {1740, 30}, 8, 1, {}, 20, {}}};
    const CastingSteelLayout layout = layoutOf(counter);
    EXPECT_FALSE(layout.faceDown);
    EXPECT_EQ(layout.meshes.at(0).height.distanceMm, 60 - 15 - 8.0);
    EXPECT_EQ(layout.meshes[0].height.spacerMm, 40 - 15 - 8.0) << "on the filler";
    EXPECT_EQ(layout.bars.at(0).height.distanceMm, 60 - 20 - 8.0);
    EXPECT_EQ(layout.bars[0].height.spacerMm, 60 - 20 - 8.0) << "in the rim, on the base";
}

TEST(SteelHeights, OfPanels)
{
    Panel panel;
    panel.thicknessMm = 50;
    panel.mix = "worktop";
    panel.steel = Steel{Mesh{4, 50, 15, {}}, {}, {}};
    const CastingSteelLayout flat = layoutsOf(partOf(panel, "P1")).at(0);
    EXPECT_EQ(flat.datum, SteelDatum::mouldBase);
    EXPECT_EQ(flat.meshes.at(0).height.distanceMm, 15.0);
    panel.cast = UprightCast::upright;
    const CastingSteelLayout upright = layoutsOf(partOf(panel, "P1")).at(0);
    EXPECT_EQ(upright.datum, SteelDatum::frontWall);
    EXPECT_EQ(upright.meshes.at(0).height.distanceMm, 15.0);
    EXPECT_TRUE(layoutsOf(partOf(Support{}, "S1")).at(0).bars.empty());
}

Counter sinkSlab()
{
    Counter counter = meshed(slab(1800, 900, 50));
    counter.cutouts = {rectangleCutout({900, 450}, {500, 300})};
    return counter;
}

TEST(CornerBars, OneAcrossEachCrackOfACutout)
{
    const CastingSteelLayout layout = layoutOf(sinkSlab());
    ASSERT_EQ(layout.cornerBars.size(), 4u);
    BarInConcrete held;
    held.diameterMm = 6;
    held.coverMm = 20;
    for (const CornerBar& c : layout.cornerBars) {
        EXPECT_EQ(c.of, "K1");
        EXPECT_EQ(c.bar.group, -1);
        EXPECT_EQ(c.anchorageMm, std::ceil(anchorageMm(held, kFctk)));
        const Point along = c.bar.to - c.bar.from;
        const Point outward = c.corner - Point{900, 450};
        EXPECT_NEAR(dot(along, {outward.x, outward.y * 500 / 300}), 0.0, 1e-6 * length(along)) << "at 45 degrees";
        EXPECT_NEAR(distanceToSegment(c.corner, c.bar.from, c.bar.to), 20 + 3, 1e-6);
        EXPECT_NEAR(c.anchoredShare, 1.0, 1e-9) << "the slab is wide enough";
        EXPECT_NEAR(length(along), 2 * c.anchorageMm, 1e-6);
        EXPECT_EQ(c.bar.height.coverFaceMm, 28.0) << "behind the mesh";
        EXPECT_EQ(c.bar.mark, layout.barList.back().mark);
    }
    EXPECT_TRUE(layout.barList.back().suggested);
    EXPECT_EQ(layout.barList.back().count, 4);
}

TEST(CornerBars, AreClippedInANarrowStripAndSaySo)
{
    Counter counter = sinkSlab();
    counter.cutouts[0].centre.y = 80 + 150;  // 80 mm in front
    const CastingSteelLayout layout = layoutOf(counter);
    ASSERT_EQ(layout.cornerBars.size(), 4u);
    const Region outline = castingsOf(partOf(counter))[0]->outline;
    int narrow = 0;
    for (const CornerBar& c : layout.cornerBars) {
        for (const Point end : {c.bar.from, c.bar.to}) {
            EXPECT_TRUE(contains(outline, end));
            EXPECT_GE(distanceToRing(outline[0].outer, end), 20 - 1e-3);
        }
        if (c.corner.y < 100) {
            ++narrow;
            EXPECT_LT(c.anchoredShare, 0.5);
        }
    }
    EXPECT_EQ(narrow, 2);
}

TEST(CornerBars, StartAtTheArcOfARoundedCorner)
{
    Counter counter = sinkSlab();
    counter.cutouts[0].cornerRadiusMm = 40;
    const CastingSteelLayout layout = layoutOf(counter);
    ASSERT_EQ(layout.cornerBars.size(), 4u);
    const double back = 40 * (1 - std::sqrt(0.5));
    EXPECT_NEAR(layout.cornerBars[0].corner.x, 650 + back, 1e-9);
    EXPECT_NEAR(layout.cornerBars[0].corner.y, 300 + back, 1e-9);
}

TEST(CornerBars, AtTheInnerCornerOfAnOutline)
{
    Counter counter = meshed(slab(1, 1, 50));
    counter.outline = {{0, 0}, {1800, 0}, {1800, 700}, {800, 700}, {800, 1600}, {0, 1600}};
    CastingSteelLayout layout = layoutOf(counter);
    ASSERT_EQ(layout.cornerBars.size(), 1u);
    EXPECT_EQ(layout.cornerBars[0].of, "");
    EXPECT_EQ(layout.cornerBars[0].corner, (Point{800, 700}));
    EXPECT_LT(layout.cornerBars[0].bar.from.y + layout.cornerBars[0].bar.from.x, 1500) << "in the concrete";
    std::reverse(counter.outline.begin(), counter.outline.end());
    EXPECT_EQ(layoutOf(counter).cornerBars.size(), 1u) << "drawn the other way round";
}

TEST(CornerBars, NoneWhereTheMakerHasDrawnOne)
{
    Counter counter = sinkSlab();
    // Diagonally across the left front corner at (650, 300).
    counter.steel->bars = {{{550, 370}, {720, 200}, 6, 1, {}, 20, {}}};
    EXPECT_EQ(layoutOf(counter).cornerBars.size(), 3u);
    // Along the front it does not hold that crack together.
    counter.steel->bars = {{{100, 260}, {1700, 260}, 6, 1, {}, 20, {}}};
    EXPECT_EQ(layoutOf(counter).cornerBars.size(), 4u);
}

TEST(CornerBars, NoneForRoundHolesAndWithoutSteel)
{
    Counter counter = meshed(slab(1800, 900, 50));
    Cutout tap;
    tap.id = "K1";
    tap.shape = CutoutShape::circle;
    tap.centre = {900, 450};
    tap.diameterMm = 300;
    counter.cutouts = {tap};
    EXPECT_TRUE(layoutOf(counter).cornerBars.empty());
    counter = sinkSlab();
    counter.steel.reset();
    EXPECT_TRUE(layoutOf(counter).cornerBars.empty());
}

TEST(CornerBars, OnlyWhereTheCornerLiesOnTheCasting)
{
    Counter counter = sinkSlab();
    counter.joints = {Joint{{900, 0}, {900, 900}, 4.0, {}}};
    const auto layouts = layoutsOf(partOf(counter));
    ASSERT_EQ(layouts.size(), 2u);
    EXPECT_EQ(layouts[0].cornerBars.size(), 2u);
    EXPECT_EQ(layouts[1].cornerBars.size(), 2u);
}

TEST(SteelLayout, AMirroredCounterIsLaidAlike)
{
    Plan plan;
    Counter counter = sinkSlab();
    counter.cutouts[0].centre = {500, 300};
    counter.cutouts[0].turnDeg = 10;
    counter.steel->bars = {{{100, 100}, {1500, 200}, 8, 2, 40.0, 20, {}}};
    plan = addPart(plan, partOf(counter));
    const Plan mirrored = mirrorParts(plan, {"C1"}, 1000);
    const auto before = layoutsOf(*plan.parts[0]).at(0);
    const auto after = layoutsOf(*mirrored.parts[0]).at(0);
    ASSERT_EQ(after.cornerBars.size(), before.cornerBars.size());
    double shares = 0.0;
    double lengths = 0.0;
    for (const CornerBar& c : before.cornerBars) {
        shares += c.anchoredShare;
        lengths += distance(c.bar.from, c.bar.to);
    }
    for (const CornerBar& c : after.cornerBars) {
        shares -= c.anchoredShare;
        lengths -= distance(c.bar.from, c.bar.to);
    }
    EXPECT_NEAR(shares, 0.0, 1e-6);
    EXPECT_NEAR(lengths, 0.0, 1e-3);
    const auto cutLengths = [](const CastingSteelLayout& layout) {
        std::vector<double> all;
        for (const BarListRow& row : layout.barList) {
            all.insert(all.end(), static_cast<std::size_t>(row.count), row.cutLengthMm);
        }
        std::sort(all.begin(), all.end());
        return all;
    };
    EXPECT_EQ(cutLengths(after), cutLengths(before));
}

TEST(SteelLayout, IsWorkedOutAgainOnlyForACastingThatChanged)
{
    const Part part = partOf(sinkSlab());
    const CastingPtr casting = castingsOf(part)[0];
    SteelLayouts known;
    const CastingSteelLayoutPtr first = known.of(casting, part, kFctk);
    known.endRound();
    EXPECT_EQ(known.of(casting, part, kFctk), first);
    known.endRound();
    EXPECT_NE(known.of(casting, part, kFctk / 2), first) << "other concrete";
    known.endRound();
    EXPECT_NE(known.of(castingsOf(part)[0], part, kFctk), first);
    known.endRound();
    known.endRound();
    EXPECT_NE(known.of(casting, part, kFctk), first) << "forgotten meanwhile";
}

TEST(SteelLayout, NonsenseLaysNothing)
{
    for (const double bad : {-1.0, 0.0, std::nan(""), HUGE_VAL}) {
        Counter counter = sinkSlab();
        counter.steel->mesh = Mesh{bad, 50, 20, {}};
        EXPECT_TRUE(layoutOf(counter).meshes.empty()) << bad;
        counter.steel->mesh = Mesh{4, bad, 20, {}};
        EXPECT_TRUE(layoutOf(counter).meshes.empty()) << bad;
        if (bad == 0.0) continue;
        counter.steel->mesh = Mesh{4, 50, bad, {}};
        EXPECT_TRUE(layoutOf(counter).meshes.empty()) << bad;
    }
}

}  // namespace
}  // namespace yardcast
