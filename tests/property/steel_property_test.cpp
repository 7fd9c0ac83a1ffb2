#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/castings/steel_in_casting.h"
#include "core/plan/edits.h"
#include "core/reinforcement/steel_layout.h"
#include "tests/property/random_plan.h"

namespace yardcast {
namespace {

constexpr double kFctk005Mpa = 1.8;
/// Booleans work on a lattice of 1e-4 mm: along some 20 m of edges that is 2 mm2, and a piece or two more.
constexpr double kAreaSlackMm2 = 10.0;
/// A bar's end may lie on the line of the cover, and arcs are chords to 0.1 mm.
constexpr double kLineSlackMm = 0.15;

struct Laid {
    CastingPtr casting;
    CastingSteelLayout layout;
};

std::vector<Laid> laidIn(const Part& part)
{
    std::vector<Laid> all;
    for (const CastingPtr& casting : castingsOf(part))
        all.push_back({casting, castingSteelLayout(*casting, part, kFctk005Mpa)});
    return all;
}

Part partFrom(random::Source& source)
{
    Part part;
    part.id = "C1";
    Counter counter = random::counter(source);
    if (!counter.steel) counter.steel.emplace().mesh = Mesh{};
    part.body = counter;
    return part;
}

double distanceToBoundary(const Region& region, Point p)
{
    double least = HUGE_VAL;
    for (const Polygon& polygon : region) {
        least = std::min(least, distanceToRing(polygon.outer, p));
        for (const Ring& hole : polygon.holes) least = std::min(least, distanceToRing(hole, p));
    }
    return least;
}

void expectInside(const Region& outline, Point end, double coverMm)
{
    EXPECT_TRUE(contains(outline, end) || distanceToBoundary(outline, end) < kLineSlackMm);
    EXPECT_GE(distanceToBoundary(outline, end), coverMm - kLineSlackMm);
}

void expectMeshSound(const MeshLayout& mesh, const Region& net)
{
    Region laid;
    std::vector<Region> taken(static_cast<std::size_t>(mesh.sheets));
    for (const MeshPiece& piece : mesh.pieces) {
        laid = unite(laid, piece.shape);
        Size size{piece.at.width(), piece.at.height()};
        if (piece.turnedOnSheet) std::swap(size.width, size.depth);
        const Region own = regionOf(rectangleRing(piece.onSheet + Point{size.width / 2, size.depth / 2}, size));
        const Box box = boundsOf(own).value();
        EXPECT_GE(std::min(box.low.x, box.low.y), -1e-3);
        EXPECT_LE(box.high.x, mesh.sheet.width + 1e-3);
        EXPECT_LE(box.high.y, mesh.sheet.depth + 1e-3);
        ASSERT_LT(piece.sheet, mesh.sheets);
        Region& before = taken[static_cast<std::size_t>(piece.sheet)];
        EXPECT_LT(areaMm2(intersect(before, own)), kAreaSlackMm2);
        before = unite(before, own);
        double notches = 0.0;
        for (const Ring& notch : piece.notches) notches += std::abs(signedArea(notch));
        // Notches below 25 mm2 are not listed; there are a few at most.
        EXPECT_NEAR(areaMm2(piece.shape) + notches, piece.at.width() * piece.at.height(), 200.0);
    }
    EXPECT_LT(areaMm2(subtract(laid, net)), kAreaSlackMm2) << "mesh beyond its cover";
    for (const Polygon& bare : subtract(net, laid)) {
        const Box box = boundsOf(Region{bare}).value();
        EXPECT_LT(std::min(box.width(), box.height()), mesh.pitchMm) << "left without mesh";
    }
}

TEST(SteelProperty, MeshCoversWhatItCanAndIsCutFromItsSheets)
{
    for (const auto seed : random::seeds(300)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        const Part part = partFrom(source);
        for (const Laid& one : laidIn(part)) {
            const auto& planned = std::get<Counter>(part.body).steel->mesh;
            for (const MeshLayout& mesh : one.layout.meshes)
                expectMeshSound(mesh, offset(one.casting->outline, -planned->coverMm, OffsetJoin::mitre));
        }
    }
}

TEST(SteelProperty, BarsLieWithinTheirCoverAndAreListed)
{
    for (const auto seed : random::seeds(300)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        const Part part = partFrom(source);
        for (const Laid& one : laidIn(part)) {
            for (const LaidBar& bar : one.layout.bars) {
                expectInside(one.casting->outline, bar.from, bar.height.coverFaceMm);
                expectInside(one.casting->outline, bar.to, bar.height.coverFaceMm);
            }
            for (const CornerBar& corner : one.layout.cornerBars) {
                EXPECT_GT(corner.anchoredShare, 0.0);
                EXPECT_LE(corner.anchoredShare, 1.0);
                expectInside(one.casting->outline, corner.bar.from, 0.0);
                expectInside(one.casting->outline, corner.bar.to, 0.0);
                EXPECT_LT(distanceToSegment(corner.corner, corner.bar.from, corner.bar.to), 60.0);
                EXPECT_LE(distance(corner.bar.from, corner.bar.to), 2 * corner.anchorageMm + 1e-6);
            }
            int listed = 0;
            for (const BarListRow& row : one.layout.barList) {
                listed += row.count;
                EXPECT_LE(row.cutLengthMm, row.lengthMm + 1e-6);
                EXPECT_GE(row.cutLengthMm, row.lengthMm - 5.0);
                EXPECT_GE(row.scheduledLengthMm, row.cutLengthMm);
            }
            EXPECT_EQ(listed, static_cast<int>(one.layout.bars.size() + one.layout.cornerBars.size()));
        }
    }
}

TEST(SteelProperty, AMirroredCounterTakesTheSameSteel)
{
    for (const auto seed : random::seeds(200)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        Plan plan;
        plan.parts = {std::make_shared<const Part>(partFrom(source))};
        const auto sums = [](const Part& part) {
            struct {
                double barMm = 0.0;
                double cornerMm = 0.0;
                double meshMm2 = 0.0;
            } sum;
            for (const Laid& one : laidIn(part)) {
                for (const LaidBar& bar : one.layout.bars) sum.barMm += distance(bar.from, bar.to);
                for (const CornerBar& c : one.layout.cornerBars) sum.cornerMm += distance(c.bar.from, c.bar.to);
                Region laid;
                for (const MeshLayout& mesh : one.layout.meshes) {
                    for (const MeshPiece& piece : mesh.pieces) laid = unite(laid, piece.shape);
                }
                sum.meshMm2 += areaMm2(laid);
            }
            return sum;
        };
        const auto before = sums(*plan.parts[0]);
        const auto after = sums(*mirrorParts(plan, {"C1"}, 300).parts[0]);
        EXPECT_NEAR(after.barMm, before.barMm, 0.5);
        EXPECT_NEAR(after.cornerMm, before.cornerMm, 0.5);
        // Sheets begin at the left, so strips too narrow for a wire may be left out at another place.
        EXPECT_NEAR(after.meshMm2, before.meshMm2, 0.02 * before.meshMm2 + kAreaSlackMm2);
    }
}

}  // namespace
}  // namespace yardcast
