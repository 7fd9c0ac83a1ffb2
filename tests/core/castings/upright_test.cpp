#include <gtest/gtest.h>

#include "tests/core/castings/counters.h"

namespace yardcast {
namespace {

TEST(Support, IsABoxLessItsCore)
{
    Support support;
    support.lengthMm = 600;
    support.widthMm = 100;
    support.heightMm = 840;
    support.baseMm = 10;
    support.mix = "body";
    support.core = Core{440, 680, 40, 20, {}};
    const auto castings = castingsOf(partOf(support, "S1"));
    ASSERT_EQ(castings.size(), 1U);
    const Casting& c = *castings[0];
    EXPECT_EQ(c.id, "S1");
    EXPECT_EQ(c.mix, "body");
    EXPECT_NEAR(c.volumeL, 50.4 - 11.968, 1e-9);
    EXPECT_NEAR(c.fillerL, 11.968, 1e-9);
    EXPECT_NEAR(c.fillerKg, 0.23936, 1e-9);
    EXPECT_NEAR(c.massKg, 38.432 * 2.4 + 0.23936, 1e-9);
    EXPECT_NEAR(c.centroidMm[0], 300, 1e-9);
    EXPECT_NEAR(c.centroidMm[1], 50, 1e-9);
    EXPECT_NEAR(c.centroidMm[2], 10 + 420, 1e-9);
    EXPECT_NEAR(c.faceAreaM2, 2 * 0.6 * 0.84, 1e-12);
    EXPECT_NEAR(c.edgeLengthMm, 2 * (600 + 840), 1e-9);
    EXPECT_EQ(c.deepestMm, 100.0);
}

TEST(Support, CoredPanelOfTheSlopeSample)
{
    // 800 x 600 x 60 with a core that leaves 60 mm all round and 20 mm skins: 28.8 - 680 x 480 x 20 = 22.272 l.
    Support support;
    support.lengthMm = 600;
    support.widthMm = 60;
    support.heightMm = 800;
    support.core = Core{480, 680, 20, 20, {}};
    const auto castings = castingsOf(partOf(support, "S1"));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(castings[0]->volumeL, 28.8 - 6.528, 1e-9);
}

TEST(Support, CoreLargerThanTheBoxIsCutToIt)
{
    Support support;
    support.core = Core{9000, 680, 40, 20, {}};
    const auto castings = castingsOf(partOf(support, "S1"));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(castings[0]->volumeL, (600 * 840 * 100 - 600 * 680 * 40) * 1e-6, 1e-9);
    support.core = Core{9000, 9000, 9000, 20, {}};
    EXPECT_TRUE(castingsOf(partOf(support, "S1")).empty()) << "no concrete is left";
}

TEST(Support, CoreWithoutThicknessIsNone)
{
    Support support;
    support.core = Core{440, 680, 0, 20, {}};
    const auto castings = castingsOf(partOf(support, "S1"));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(castings[0]->volumeL, 50.4, 1e-9);
    EXPECT_EQ(castings[0]->fillerL, 0.0);
}

TEST(Panel, CarriesItsSteel)
{
    Panel panel;
    panel.lengthMm = 1800;
    panel.thicknessMm = 40;
    panel.heightMm = 300;
    panel.baseMm = 900;
    panel.steel = Steel{Mesh{3, 50, 15, {}}, {BarGroup{{0, 150}, {1800, 150}, 6, 1, {}, 15, {}}}, {}};
    const auto castings = castingsOf(partOf(panel, "P1"));
    ASSERT_EQ(castings.size(), 1U);
    const Casting& c = *castings[0];
    EXPECT_EQ(c.kind, PartKind::panel);
    EXPECT_NEAR(c.volumeL, 21.6, 1e-9);
    ASSERT_EQ(c.steel.size(), 2U);
    EXPECT_NEAR(c.steel[0].meshAreaM2, 1.77 * 0.27, 1e-9);
    EXPECT_NEAR(c.steel[1].lengthMm, 1770, 1e-6);
    EXPECT_LT(c.centroidMm[1], 20.0) << "steel nearer to the face than the middle";
    EXPECT_NEAR(c.centroidMm[2], 1050, 1e-6);
}

TEST(CentroidInPlan, FollowsThePlacement)
{
    Support support;
    Part part = partOf(support, "S1");
    part.place = {{1000, 2000}, 90};
    const auto castings = castingsOf(part);
    ASSERT_EQ(castings.size(), 1U);
    const auto centroid = centroidInPlan(*castings[0], part);
    EXPECT_NEAR(centroid[0], 1000 - 50, 1e-9);
    EXPECT_NEAR(centroid[1], 2000 + 300, 1e-9);
    EXPECT_NEAR(centroid[2], 420, 1e-9);
}

TEST(OtherParts, HaveNoCastings)
{
    EXPECT_TRUE(castingsOf(partOf(Front{}, "F1")).empty());
    EXPECT_TRUE(castingsOf(partOf(Appliance{}, "A1")).empty());
}

}  // namespace
}  // namespace yardcast
