#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/exports/kitchen_model.h"

namespace yardcast {
namespace {

MouldPart ply(const std::string& about, const Ring& ring, double fromMm, double toMm)
{
    MouldPart part;
    part.kind = MouldPartKind::former;
    part.about = about;
    part.outline = {{ring, {}}};
    part.fromMm = fromMm;
    part.toMm = toMm;
    return part;
}

MouldPtr mouldWith(const std::string& casting, double draftMm, std::vector<MouldPart> parts)
{
    Mould mould;
    mould.casting = casting;
    mould.part = casting;
    mould.cutoutDraftMm = draftMm;
    mould.widthMm = 1000;
    mould.parts = std::move(parts);
    return std::make_shared<const Mould>(std::move(mould));
}

TEST(FormersModel, PliesOfOneOutlineAreABlockWithDraft)
{
    const Ring ring = rectangleRing({300, 200}, {400, 200});
    const auto pieces = formersModel({mouldWith("C1", 2.0, {ply("K1", ring, 0, 18), ply("K1", ring, 18, 36)})});
    ASSERT_EQ(pieces.size(), 1u);
    EXPECT_EQ(pieces[0].id, "C1 K1");
    // A frustum: h / 3 (A + B + sqrt(A B)) holds for similar faces only; the wedge formula for any rectangle.
    const double a = 400, b = 200, c = 396, d = 196;
    EXPECT_NEAR(volumeMm3(pieces[0].solid), 36.0 / 6 * (a * b + c * d + (a + c) * (b + d)), 1e-3);
    EXPECT_TRUE(checkSolid(pieces[0].solid).closed);
    EXPECT_EQ(checkSolid(pieces[0].solid).euler(), 2);
}

TEST(FormersModel, ARoundFormerIsAFrustumOfACone)
{
    const Ring ring = circleRing({0, 0}, 100);
    const auto pieces = formersModel({mouldWith("C1", 3.0, {ply("K1", ring, 0, 40)})});
    ASSERT_EQ(pieces.size(), 1u);
    const double exact = std::numbers::pi * 40 / 3 * (50 * 50 + 47 * 47 + 50 * 47);
    // Chords for the arc: their points lie a little outside, so an inset by the same 3 mm is not quite a circle's.
    EXPECT_NEAR(volumeMm3(pieces[0].solid) / exact, 1.0, 1e-3);
    EXPECT_EQ(checkSolid(pieces[0].solid).euler(), 2);
}

TEST(FormersModel, UnequalPliesAreStepsAndMouldsStandApart)
{
    const Ring low = rectangleRing({300, 200}, {400, 200}, 0, 20);
    const Ring high = rectangleRing({300, 200}, {396, 196}, 0, 18);
    const auto pieces =
        formersModel({mouldWith("C1", 2.0, {ply("K1", high, 18, 40), ply("K1", low, 0, 18), ply("K2", low, 0, 40)}),
                      mouldWith("C2", 0.0, {ply("K1", low, 0, 40)})});
    ASSERT_EQ(pieces.size(), 3u);
    EXPECT_NEAR(volumeMm3(pieces[0].solid), signedArea(low) * 18 + signedArea(high) * 22, 1.0);
    for (const ModelPiece& piece : pieces) {
        SCOPED_TRACE(piece.id);
        EXPECT_TRUE(checkSolid(piece.solid).closed);
        EXPECT_EQ(checkSolid(piece.solid).euler(), 2);
    }
    for (const SolidPoint& p : pieces[2].solid.points) EXPECT_GT(p[0], 1000);
    EXPECT_EQ(formersModel({mouldWith("C1", 2.0, {ply("K1", low, 0, 18)})}, "C9").size(), 0u);
}

TEST(FormersModel, CornersRounderThanTheDraftLeavesAreStepsNotCrossings)
{
    const Ring ring = rectangleRing({0, 0}, {100, 60}, 0, 1.0);
    const auto pieces = formersModel({mouldWith("C1", 3.0, {ply("K1", ring, 0, 40)})});
    ASSERT_EQ(pieces.size(), 1u);
    EXPECT_TRUE(checkSolid(pieces[0].solid).closed);
    EXPECT_NEAR(volumeMm3(pieces[0].solid), signedArea(ring) * 40, 1.0);
}

}  // namespace
}  // namespace yardcast
