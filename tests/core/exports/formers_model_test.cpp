#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/exports/kitchen_model.h"
#include "tests/samples/sample_files.h"

namespace yardcast {
namespace {

MouldPart ply(const std::string& about, const Ring& ring, double fromMm, double toMm, const Ring& top = {})
{
    MouldPart part;
    part.kind = MouldPartKind::former;
    part.about = about;
    part.outline = {{ring, {}}};
    if (!top.empty()) part.topOutline = {{top, {}}};
    part.fromMm = fromMm;
    part.toMm = toMm;
    return part;
}

MouldPtr mouldWith(const std::string& casting, std::vector<MouldPart> parts)
{
    Mould mould;
    mould.casting = casting;
    mould.part = casting;
    mould.widthMm = 1000;
    mould.parts = std::move(parts);
    return std::make_shared<const Mould>(std::move(mould));
}

TEST(FormersModel, PliesWithDraftAreOneBlock)
{
    const Ring low = rectangleRing({300, 200}, {400, 200});
    const Ring middle = rectangleRing({300, 200}, {398, 198});
    const Ring high = rectangleRing({300, 200}, {396, 196});
    const auto pieces =
        formersModel({mouldWith("C1", {ply("K1", middle, 18, 36, high), ply("K1", low, 0, 18, middle)})});
    ASSERT_EQ(pieces.size(), 1u);
    EXPECT_EQ(pieces[0].id, "C1 K1");
    // The formula of a wedge that is cut off, from any handbook: h / 6 (ab + cd + (a + c)(b + d)).
    const double a = 400, b = 200, c = 396, d = 196;
    EXPECT_NEAR(volumeMm3(pieces[0].solid), 36.0 / 6 * (a * b + c * d + (a + c) * (b + d)), 1e-3);
    EXPECT_TRUE(checkSolid(pieces[0].solid).closed);
    EXPECT_EQ(checkSolid(pieces[0].solid).euler(), 2);
}

TEST(FormersModel, ARoundFormerIsAFrustumOfACone)
{
    // The smaller circle has fewer chords.
    const MouldPart cone = ply("K1", circleRing({0, 0}, 400), 0, 40, circleRing({0, 0}, 200));
    const auto pieces = formersModel({mouldWith("C1", {cone})});
    ASSERT_EQ(pieces.size(), 1u);
    const double exact = std::numbers::pi * 40 / 3 * (200 * 200 + 100 * 100 + 200 * 100);
    // Both faces have the area of their circle, what is between them is within the tolerance of the chords.
    EXPECT_NEAR(volumeMm3(pieces[0].solid) / exact, 1.0, 2 * kArcToleranceMm / 100);
    EXPECT_EQ(checkSolid(pieces[0].solid).euler(), 2);
}

TEST(FormersModel, UnequalPliesAreStepsAndMouldsStandApart)
{
    const Ring low = rectangleRing({300, 200}, {400, 200}, 0, 20);
    const Ring high = rectangleRing({300, 200}, {396, 196}, 0, 18);
    const auto pieces =
        formersModel({mouldWith("C1", {ply("K1", high, 18, 40), ply("K1", low, 0, 18), ply("K2", low, 0, 40)}),
                      mouldWith("C2", {ply("K1", low, 0, 40)})});
    ASSERT_EQ(pieces.size(), 3u);
    EXPECT_NEAR(volumeMm3(pieces[0].solid), signedArea(low) * 18 + signedArea(high) * 22, 1.0);
    for (const ModelPiece& piece : pieces) {
        SCOPED_TRACE(piece.id);
        EXPECT_TRUE(checkSolid(piece.solid).closed);
        EXPECT_EQ(checkSolid(piece.solid).euler(), 2);
    }
    for (const SolidPoint& p : pieces[2].solid.points) EXPECT_GT(p[0], 1000);
    EXPECT_EQ(formersModel({mouldWith("C1", {ply("K1", low, 0, 18)})}, "C9").size(), 0u);
}

TEST(FormersModel, APlyWithAHoleIsABodyOfItsOwn)
{
    MouldPart ring = ply("K1", {}, 0, 18);
    ring.outline = subtract(regionOf(rectangleRing({0, 0}, {100, 60})), regionOf(rectangleRing({0, 0}, {40, 20})));
    const auto pieces = formersModel({mouldWith("C1", {ring, ply("K1", rectangleRing({0, 0}, {90, 50}), 18, 36)})});
    ASSERT_EQ(pieces.size(), 1u);
    EXPECT_TRUE(checkSolid(pieces[0].solid).closed);
    EXPECT_EQ(checkSolid(pieces[0].solid).shells, 2);
    EXPECT_NEAR(volumeMm3(pieces[0].solid), (6000 - 800) * 18 + 4500 * 18, 1e-3);
}

/// Of the moulds that the program makes: one body a cutout, closed, as high as the concrete there, not larger than the
/// cutout at its wide end.
TEST(FormersModel, FormersOfTheSamplesAreClosedBlocksOfTheirCutouts)
{
    int seen = 0;
    for (const std::string& name : test::kSamples) {
        SCOPED_TRACE(name);
        const Plan plan = test::sample(name);
        std::vector<CastingPtr> castings;
        for (const PartPtr& part : plan.parts) {
            for (const CastingPtr& casting : castingsOf(*part)) castings.push_back(casting);
        }
        std::vector<Finding> findings;
        const std::vector<MouldPtr> moulds = mouldsOf(plan, castings, findings);
        for (const ModelPiece& piece : formersModel(moulds)) {
            SCOPED_TRACE(piece.id);
            ++seen;
            EXPECT_TRUE(checkSolid(piece.solid).closed);
            double low = 1e9, high = -1e9;
            for (const SolidPoint& p : piece.solid.points) {
                low = std::min(low, p[2]);
                high = std::max(high, p[2]);
            }
            const std::string casting = piece.id.substr(0, piece.id.find(' '));
            const auto mould = std::find_if(moulds.begin(), moulds.end(),
                                            [&](const MouldPtr& m) { return m->casting == casting; });
            ASSERT_NE(mould, moulds.end());
            EXPECT_GE(low, -1e-9);
            double widestMm2 = 0.0;
            double topMm = 0.0;
            for (const MouldPart& part : (*mould)->parts) {
                if (part.kind != MouldPartKind::former || piece.id != casting + " " + part.about) continue;
                widestMm2 = std::max({widestMm2, areaMm2(part.outline), areaMm2(part.topOutline)});
                topMm = std::max(topMm, part.toMm);
            }
            EXPECT_NEAR(high, topMm, 1e-6);
            const double volume = volumeMm3(piece.solid);
            EXPECT_LE(volume, widestMm2 * (high - low) * (1 + 1e-9));
            EXPECT_GE(volume, 0.5 * widestMm2 * (high - low));
        }
    }
    EXPECT_GE(seen, 4);
}

}  // namespace
}  // namespace yardcast
