#include "tests/core/plan/validation_tools.h"

namespace yardcast {
namespace {

using namespace samples;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

Plan outlined(Ring outline)
{
    return counterChanged([&](Counter& c) {
        c.outline = std::move(outline);
        c.cutouts.clear();
    });
}

TEST(ValidationParts, OutlineWithTwoCorners)
{
    const Plan plan = outlined({{0, 0}, {1800, 600}});
    EXPECT_EQ(sole(plan, "outline_few_corners").pointer, "/parts/0/outline");
    EXPECT_FALSE(usable(plan, "C1"));
    EXPECT_FALSE(has(outlined({{0, 0}, {1800, 0}, {1800, 600}}), "outline_few_corners"));
}

TEST(ValidationParts, OutlineThatCrossesItself)
{
    const Plan plan = outlined({{0, 0}, {1800, 600}, {1800, 0}, {0, 600}});
    const Finding finding = sole(plan, "outline_crosses_itself");
    EXPECT_EQ(mm(finding, "edge"), 0.0);
    EXPECT_EQ(mm(finding, "other_edge"), 2.0);
    EXPECT_FALSE(usable(plan, "C1"));
    EXPECT_FALSE(has(outlined({{0, 0}, {1800, 0}, {1000, 300}, {0, 600}}), "outline_crosses_itself"));
}

TEST(ValidationParts, OutlineWithoutArea)
{
    EXPECT_FALSE(usable(outlined({{0, 0}, {1800, 0}, {1800, 0.001}, {900, 0.002}}), "C1"));
    const Plan plan = outlined({{0, 0}, {9, 0}, {9, 11}, {0, 11}});
    EXPECT_EQ(mm(sole(plan, "outline_no_area"), "area_mm2"), 99.0);
    EXPECT_FALSE(has(outlined({{0, 0}, {10, 0}, {10, 10}, {0, 10}}), "outline_no_area"));
}

TEST(ValidationParts, OutlineLongerThanAnyKitchen)
{
    EXPECT_FALSE(usable(outlined({{0, 0}, {20'001, 0}, {20'001, 600}, {0, 600}}), "C1"));
    EXPECT_TRUE(has(outlined({{0, 0}, {20'001, 0}, {20'001, 600}, {0, 600}}), "outline_too_large"));
    EXPECT_FALSE(has(outlined({{0, 0}, {20'000, 0}, {20'000, 600}, {0, 600}}), "outline_too_large"));
}

TEST(ValidationParts, RimAgainstTheSlab)
{
    const auto rim = [](double depth, double width) {
        return counterChanged([=](Counter& c) { c.rim = Rim{depth, width, {}, {}}; });
    };
    EXPECT_EQ(sole(rim(59, 60), "rim_shallower_than_slab").severity, Severity::stop);
    EXPECT_FALSE(has(rim(60, 60), "rim_shallower_than_slab"));
    EXPECT_EQ(mm(sole(rim(80, 601), "rim_too_wide"), "most_mm"), 600.0);
    EXPECT_FALSE(has(rim(80, 600), "rim_too_wide"));
}

TEST(ValidationParts, RimEdgesNameEdges)
{
    const auto edges = [](std::vector<int> list) {
        return counterChanged([=](Counter& c) { c.rim = Rim{80, 60, list, {}}; });
    };
    EXPECT_THAT(foundIn(edges({0, 4, -1})),
                ElementsAre("rim_edge_unknown /parts/0/rim/edges/1", "rim_edge_unknown /parts/0/rim/edges/2",
                            "support_inside_slab /parts/1", "support_inside_slab /parts/2"));
    EXPECT_FALSE(has(edges({0, 1, 2, 3}), "rim_edge_unknown"));
}

TEST(ValidationParts, DripAndRebateEdgesNameEdges)
{
    const auto drip = [](std::vector<int> edges, double depthMm) {
        return counterChanged([=](Counter& c) { c.drip = Drip{edges, 20, 8, depthMm, {}}; });
    };
    EXPECT_TRUE(has(drip({0, 4}, 5), "drip_edge_unknown"));
    EXPECT_EQ(sole(drip({-1}, 5), "drip_edge_unknown").pointer, "/parts/0/drip/edges/0");
    EXPECT_FALSE(has(drip({0, 3}, 5), "drip_edge_unknown"));
    EXPECT_FALSE(has(drip({0}, 30), "drip_deep"));
    EXPECT_TRUE(has(drip({0}, 31), "drip_deep")) << "the slab is 60 thick";
    const auto rebate = [](std::vector<int> edges, double depthMm) {
        return counterChanged([=](Counter& c) { c.rebate = Rebate{edges, 44, depthMm, {}}; });
    };
    EXPECT_EQ(sole(rebate({2, 7}, 8), "rebate_edge_unknown").pointer, "/parts/0/rebate/edges/1");
    EXPECT_FALSE(has(rebate({2}, 8), "rebate_edge_unknown"));
    EXPECT_TRUE(has(rebate({2}, 31), "rebate_deep"));
    EXPECT_FALSE(usable(counterChanged([](Counter& c) { c.rebate = Rebate{{0}, 0.0, 8, {}}; }), "C1"));
}

TEST(ValidationParts, ADripThatRunsIntoTheFoamIsTold)
{
    const auto plan = [](double fromMm, std::optional<std::vector<int>> rimmed) {
        return counterChanged([=](Counter& c) {
            c.rim = Rim{80, 60, rimmed, {}};
            c.filler = Filler{};
            c.drip = Drip{{0}, fromMm, 8, 5, {}};
        });
    };
    EXPECT_FALSE(has(plan(52, {}), "drip_in_foam"));
    EXPECT_TRUE(has(plan(53, {}), "drip_in_foam"));
    EXPECT_TRUE(has(plan(20, std::vector<int>{2}), "drip_in_foam")) << "no rim along the front";
}

TEST(ValidationParts, WhatNeedsARim)
{
    const auto plan = [](bool rim) {
        return counterChanged([=](Counter& c) {
            c.thicknessMm = 40;
            c.topMm = rim ? 900 : 880;
            if (rim) c.rim = Rim{};
            c.filler = Filler{};
            c.ribs = {Rib{{300, 0}, {300, 600}, 80, {}}};
            c.cutouts[0].rimMm = 50;
        });
    };
    EXPECT_THAT(foundIn(plan(false)), ElementsAre("needs_rim /parts/0/filler", "needs_rim /parts/0/ribs",
                                                  "needs_rim /parts/0/cutouts/0/rim_mm"));
    EXPECT_THAT(foundIn(plan(true)), IsEmpty());
}

TEST(ValidationParts, LinesWithoutLength)
{
    const Plan plan = counterChanged([](Counter& c) {
        c.rim = Rim{60, 60, {}, {}};
        c.thicknessMm = 40;
        c.ribs = {Rib{{300, 0}, {300, 0.5}, 80, {}}, Rib{{300, 0}, {300, 600}, 80, {}}};
        c.joints = {Joint{{5, 5}, {5, 5}, {}, {}}};
        c.steel.emplace().bars = {BarGroup{{9, 9}, {9, 9}, 8, 1, {}, 20, {}}};
    });
    EXPECT_THAT(foundIn(plan), ElementsAre("line_no_length /parts/0/ribs/0", "line_no_length /parts/0/joints/0",
                                           "line_no_length /parts/0/steel/bars/0"));
    EXPECT_FALSE(usable(frontWith([](Front& f) { f.to = f.from; }), "F1"));
    EXPECT_TRUE(has(frontWith([](Front& f) { f.to = f.from; }), "line_no_length"));
    EXPECT_FALSE(has(frontWith([](Front& f) { f.to = {1, 0}; }), "line_no_length"));
}

TEST(ValidationParts, BarsAndCover)
{
    const auto bars = [](Point to, double cover) {
        return counterChanged([=](Counter& c) {
            c.steel.emplace().bars = {BarGroup{{50, 50}, to, 8, 1, {}, cover, {}}};
        });
    };
    EXPECT_EQ(mm(sole(bars({1850, 50}, 20), "bar_outside"), "outside_mm"), 50.0);
    EXPECT_FALSE(has(bars({1800, 50}, 20), "bar_outside"));
    EXPECT_EQ(sole(bars({1700, 50}, 52.5), "cover_beyond_slab").severity, Severity::caution);
    EXPECT_FALSE(has(bars({1700, 50}, 52), "cover_beyond_slab"));
    const auto mesh = [](double cover) {
        return counterChanged([=](Counter& c) { c.steel.emplace().mesh = Mesh{4, 50, cover, {}}; });
    };
    EXPECT_TRUE(has(mesh(52.5), "cover_beyond_slab")) << "two layers cross";
    EXPECT_FALSE(has(mesh(52), "cover_beyond_slab"));
}

TEST(ValidationParts, BarsOfAPanelLieInItsElevation)
{
    const auto bars = [](Point to) {
        return panelWith([=](Panel& p) { p.steel.emplace().bars = {BarGroup{{0, 50}, to, 6, 1, {}, 15, {}}}; });
    };
    EXPECT_TRUE(has(bars({1800, 350}), "bar_outside"));
    EXPECT_FALSE(has(bars({1800, 300}), "bar_outside"));
}

TEST(ValidationParts, CoreAgainstItsSupport)
{
    const auto core = [](double length, double height, double thickness) {
        return supportChanged([=](Support& s) {
            s.lengthMm = 600;
            s.widthMm = 100;
            s.core = Core{length, height, thickness, 20, {}};
        });
    };
    EXPECT_EQ(sole(core(601, 700, 40), "core_too_large").pointer, "/parts/1/core/length_mm");
    EXPECT_FALSE(usable(core(440, 841, 40), "S1"));
    EXPECT_FALSE(usable(core(440, 700, 101), "S1"));
    EXPECT_EQ(mm(sole(core(440, 700, 72), "core_wall_thin"), "wall_mm"), 14.0);
    EXPECT_FALSE(has(core(440, 700, 70), "core_wall_thin"));
    EXPECT_TRUE(has(panelWith([](Panel& p) { p.core = Core{1000, 200, 41, 20, {}}; }), "core_too_large"));
}

TEST(ValidationParts, Fronts)
{
    EXPECT_FALSE(usable(frontWith([](Front& f) { f.topMm = f.bottomMm; }), "F1"));
    EXPECT_TRUE(has(frontWith([](Front& f) { f.topMm = f.bottomMm; }), "front_no_height"));
    EXPECT_FALSE(has(frontWith([](Front& f) { f.topMm = f.bottomMm + 1; }), "front_no_height"));
    const auto doors = [](std::vector<Door> list) { return frontWith([=](Front& f) { f.doors = list; }); };
    EXPECT_EQ(mm(sole(doors({Door{1100, 1620, HingeSide::left, {}}}), "door_outside"), "outside_mm"), 20.0);
    EXPECT_EQ(mm(sole(doors({Door{-30, 300, HingeSide::left, {}}}), "door_outside"), "outside_mm"), 30.0);
    EXPECT_THAT(foundIn(doors({Door{0, 1600, HingeSide::left, {}}})), IsEmpty());
    EXPECT_EQ(sole(doors({Door{500, 500, HingeSide::left, {}}}), "door_no_width").pointer, "/parts/3/doors/0");
    const Finding overlap =
        sole(doors({Door{600, 900, HingeSide::left, {}}, Door{100, 640, HingeSide::left, {}}}), "doors_overlap");
    EXPECT_EQ(overlap.pointer, "/parts/3/doors/1");
    EXPECT_EQ(mm(overlap, "overlap_mm"), 40.0);
    EXPECT_FALSE(
        has(doors({Door{600, 900, HingeSide::left, {}}, Door{100, 600, HingeSide::left, {}}}), "doors_overlap"));
}

TEST(ValidationParts, MixesAreKnown)
{
    const Plan plan = supportChanged([](Support& s) { s.mix = "bodies"; });
    const Finding finding = sole(plan, "mix_unknown");
    EXPECT_EQ(finding.pointer, "/parts/1/mix");
    EXPECT_EQ(word(finding, "mix"), "bodies");
    EXPECT_THAT(finding.subjects, ElementsAre("S1"));
    EXPECT_TRUE(usable(plan, "S1")) << "its volume is known all the same";
    EXPECT_TRUE(has(counterChanged([](Counter& c) { c.mix = ""; }), "mix_unknown"));
}

TEST(ValidationParts, AppliancesStandOnCounters)
{
    const auto on = [](const char* id, Point at) {
        Plan plan = twoSupports();
        put(plan, appliancePart("A1", at, id));
        return plan;
    };
    EXPECT_EQ(word(sole(on("C7", {0, 0}), "on_unknown"), "on"), "C7");
    EXPECT_TRUE(has(on("S1", {0, 0}), "on_unknown"));
    EXPECT_THAT(foundIn(on("C1", {0, 0})), IsEmpty());
    EXPECT_EQ(mm(sole(on("C1", {1320, 0}), "appliance_off_counter"), "outside_mm"), 20.0);
    EXPECT_THAT(foundIn(on("C1", {1301, 0})), IsEmpty());
}

TEST(ValidationParts, TheSite)
{
    const auto site = [](Ring outline) { return setSiteOutline(twoSupports(), std::move(outline)); };
    EXPECT_THAT(foundIn(site({{-10, -10}, {1800, -10}, {1800, 600}, {-10, 600}})), IsEmpty());
    const Finding outside = sole(site({{-10, -10}, {1790, -10}, {1790, 600}, {-10, 600}}), "part_outside_site");
    EXPECT_EQ(outside.severity, Severity::note);
    EXPECT_EQ(mm(outside, "outside_mm"), 10.0);
    EXPECT_EQ(foundIn(site({{0, 0}, {9000, 0}})), std::vector<std::string>{"site_few_corners /site/outline"});
    EXPECT_EQ(foundIn(site({{0, 0}, {9000, 9000}, {9000, 0}, {0, 9000}})),
              std::vector<std::string>{"site_crosses_itself /site/outline"});
}

}  // namespace
}  // namespace yardcast
