#include "core/mould/mould_estimate.h"

#include <gtest/gtest.h>

#include "tests/core/castings/counters.h"

namespace yardcast {
namespace {

MouldEstimate estimateOf(const std::vector<Part>& parts)
{
    Plan plan;
    std::vector<CastingPtr> castings;
    for (const Part& part : parts) {
        plan.parts.push_back(std::make_shared<const Part>(part));
        for (const CastingPtr& casting : castingsOf(part)) castings.push_back(casting);
    }
    return estimateMoulds(plan, castings);
}

TEST(MouldEstimate, OfACounterWorkedByHand)
{
    Counter counter = rimmedSlab();
    counter.cutouts = {rectangleCutout({600, 310}, {560, 400})};
    counter.filler = Filler{};
    const MouldEstimate e = estimateOf({partOf(counter)});
    ASSERT_EQ(e.castings.size(), 1U);
    const MouldNeed& n = e.castings[0];
    EXPECT_EQ(n.casting, "C1");
    // Boards of 18 and 40 mm beyond them on each side: 116 mm more each way.
    EXPECT_NEAR(n.baseM2, 1.916 * 0.736, 1e-9);
    EXPECT_NEAR(n.sidesM2, 4.840 * 0.060, 1e-9);
    EXPECT_NEAR(n.formersM2, 1.920 * 0.060, 1e-9);
    EXPECT_NEAR(n.boardM2, (n.baseM2 + n.sidesM2 + n.formersM2) * 1.10, 1e-12);
    // 0.215 x 36 mm2 = 7.74 ml a metre, 6.76 m, 1.8 times.
    EXPECT_NEAR(n.siliconeMl, 7.74 * 6.760 * 1.8, 1e-6);
    EXPECT_NEAR(n.releaseMl, 100 * (1.8 * 0.62 - 0.56 * 0.4 + 6.760 * 0.060), 1e-6);
    // 150 mm beyond each side, over the cutouts as well: what curing asks for.
    EXPECT_NEAR(n.sheetingM2, 2.1 * 0.92, 1e-9);
    EXPECT_NEAR(n.sealerL, (1.8 * 0.62 - 0.56 * 0.4 + 6.760 * 0.060) * 2 / 8, 1e-9);
    EXPECT_NEAR(n.foamM2, 1.680 * 0.500 - 0.56 * 0.4, 1e-6);
    EXPECT_NEAR(n.foamThicknessMm, 20, 1e-12);
}

TEST(MouldEstimate, OfASupportCastFlatOrUpright)
{
    Support support;
    support.lengthMm = 600;
    support.heightMm = 840;
    support.widthMm = 100;
    support.core = Core{440, 680, 40, 20, {}};
    const MouldNeed flat = estimateOf({partOf(support, "S1")}).castings.at(0);
    EXPECT_NEAR(flat.baseM2, 0.716 * 0.956, 1e-9);
    EXPECT_NEAR(flat.sidesM2, 2.880 * 0.100, 1e-9);
    EXPECT_NEAR(flat.foamM2, 0.440 * 0.680, 1e-9);
    EXPECT_NEAR(flat.foamThicknessMm, 40, 1e-12);
    EXPECT_NEAR(flat.sealerL, (2 * 0.6 * 0.84 + 2.88 * 0.1) / 4, 1e-9);
    support.cast = UprightCast::upright;
    const MouldNeed upright = estimateOf({partOf(support, "S1")}).castings.at(0);
    EXPECT_NEAR(upright.baseM2, 0.716 * 0.216, 1e-9);
    EXPECT_NEAR(upright.sidesM2, 2 * 0.6 * 0.84 + 2 * 0.84 * 0.1, 1e-9);
    EXPECT_NEAR(upright.releaseMl, 100 * (2 * 0.6 * 0.84 + 2 * 0.84 * 0.1 + 0.6 * 0.1), 1e-6);
    EXPECT_EQ(upright.sealerL, flat.sealerL);
}

TEST(MouldEstimate, AddsUpTheCastings)
{
    Counter counter = rimmedSlab();
    counter.joints = {Joint{{900, 0}, {900, 620}, {}, {}}};
    const MouldEstimate e = estimateOf({partOf(counter), partOf(Support{}, "S1")});
    ASSERT_EQ(e.castings.size(), 3U);
    double board = 0.0;
    double silicone = 0.0;
    double sealer = 0.0;
    for (const MouldNeed& n : e.castings) {
        board += n.boardM2;
        silicone += n.siliconeMl;
        sealer += n.sealerL;
    }
    EXPECT_NEAR(e.boardM2, board, 1e-12);
    EXPECT_NEAR(e.siliconeMl, silicone, 1e-9);
    EXPECT_NEAR(e.sealerL, sealer, 1e-12);
    EXPECT_GT(e.releaseMl, 0.0);
    EXPECT_GT(e.sheetingM2, 0.0);
}

TEST(MouldEstimate, OfNothingIsNothing)
{
    const MouldEstimate e = estimateOf({});
    EXPECT_TRUE(e.castings.empty());
    EXPECT_EQ(e.boardM2, 0.0);
}

}  // namespace
}  // namespace yardcast
