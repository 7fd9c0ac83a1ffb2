#include "tests/core/plan/validation_tools.h"

namespace yardcast {
namespace {

using namespace samples;
using ::testing::IsEmpty;

Plan withCutouts(std::vector<Cutout> cutouts)
{
    return counterChanged([&](Counter& c) { c.cutouts = std::move(cutouts); });
}

TEST(ValidationLayout, RectangleBesideTheEdge)
{
    EXPECT_THAT(foundIn(withCutouts({sink("K1", {320, 240})})), IsEmpty()) << "40 mm on two sides";
    const Finding narrow = sole(withCutouts({sink("K1", {319, 300})}), "strip_narrow");
    EXPECT_EQ(narrow.severity, Severity::caution);
    EXPECT_EQ(narrow.pointer, "/parts/0/cutouts/0");
    EXPECT_EQ(word(narrow, "cutout"), "K1");
    EXPECT_DOUBLE_EQ(mm(narrow, "strip_mm"), 39.0);
    EXPECT_EQ(mm(narrow, "least_mm"), kLeastStripMm);
}

TEST(ValidationLayout, RectangleBeyondTheEdge)
{
    EXPECT_DOUBLE_EQ(mm(sole(withCutouts({sink("K1", {255, 300})}), "cutout_outside"), "outside_mm"), 25.0);
    EXPECT_EQ(mm(sole(withCutouts({sink("K1", {280, 300})}), "cutout_outside"), "outside_mm"), 0.0);
    EXPECT_FALSE(has(withCutouts({sink("K1", {281, 300})}), "cutout_outside"));
    EXPECT_TRUE(has(withCutouts({sink("K1", {900, 300}, {2000, 900})}), "cutout_outside")) << "larger than the slab";
    EXPECT_TRUE(has(withCutouts({sink("K1", {900, 300}, {2000, 100})}), "cutout_outside")) << "right across";
}

TEST(ValidationLayout, CircleIsMeasuredExactly)
{
    EXPECT_FALSE(has(withCutouts({tapHole("K1", {1700, 200}, 120)}), "strip_narrow"));
    EXPECT_NEAR(mm(sole(withCutouts({tapHole("K1", {1700, 200}, 120.1)}), "strip_narrow"), "strip_mm"), 39.95, 1e-9);
    EXPECT_NEAR(mm(sole(withCutouts({tapHole("K1", {1790, 200}, 40)}), "cutout_outside"), "outside_mm"), 10, 1e-9);
    EXPECT_TRUE(has(withCutouts({tapHole("K1", {2500, 200}, 40)}), "cutout_outside"));
}

TEST(ValidationLayout, InsideCornerOfAnL)
{
    const Ring l{{0, 0}, {1800, 0}, {1800, 600}, {700, 600}, {700, 1400}, {0, 1400}};
    const auto at = [&](Point centre) {
        return counterChanged([&](Counter& c) {
            c.outline = l;
            c.cutouts = {sink("K1", centre, {300, 300})};
        });
    };
    EXPECT_THAT(foundIn(at({510, 410})), IsEmpty());
    const Finding strip = sole(at({530, 430}), "strip_narrow");
    EXPECT_DOUBLE_EQ(mm(strip, "strip_mm"), 20.0 * std::sqrt(2.0)) << "from corner to corner";
    EXPECT_TRUE(has(at({750, 650}), "cutout_outside")) << "the inside corner lies in the cutout";
}

TEST(ValidationLayout, TwoCutouts)
{
    const auto two = [](Cutout a, Cutout b) { return withCutouts({std::move(a), std::move(b)}); };
    EXPECT_THAT(foundIn(two(sink("K1", {500, 300}), sink("K2", {1100, 300}))), IsEmpty());
    const Finding narrow = sole(two(sink("K1", {500, 300}), sink("K2", {1098, 300})), "strip_between_narrow");
    EXPECT_DOUBLE_EQ(mm(narrow, "strip_mm"), 38.0);
    EXPECT_EQ(word(narrow, "cutout"), "K2");
    EXPECT_EQ(word(narrow, "other_cutout"), "K1");
    EXPECT_EQ(narrow.pointer, "/parts/0/cutouts/1");
    EXPECT_EQ(sole(two(sink("K1", {500, 300}), sink("K2", {1040, 300})), "cutouts_overlap").severity, Severity::stop);
    EXPECT_TRUE(has(two(sink("K1", {500, 300}), sink("K2", {500, 300}, {100, 100})), "cutouts_overlap"))
        << "one inside the other";
}

TEST(ValidationLayout, SinkAndTap)
{
    const auto tapAt = [](double y) { return withCutouts({sink("K1", {900, 260}), tapHole("K2", {900, y}, 36)}); };
    EXPECT_FALSE(has(tapAt(518), "strip_between_narrow"));
    EXPECT_NEAR(mm(sole(tapAt(517), "strip_between_narrow"), "strip_mm"), 39.0, 1e-9);
    EXPECT_TRUE(has(tapAt(470), "cutouts_overlap"));
    EXPECT_TRUE(has(tapAt(300), "cutouts_overlap")) << "a tap in the bowl";
    const auto taps = [](double apart) {
        return withCutouts({tapHole("K1", {600, 300}, 36), tapHole("K2", {600 + apart, 300}, 36)});
    };
    EXPECT_FALSE(has(taps(76), "strip_between_narrow"));
    EXPECT_NEAR(mm(sole(taps(75), "strip_between_narrow"), "strip_mm"), 39.0, 1e-9);
    EXPECT_TRUE(has(taps(36), "cutouts_overlap"));
}

TEST(ValidationLayout, CornerRadius)
{
    const auto radius = [](double mm) {
        Cutout cutout = sink("K1", {900, 300});
        cutout.cornerRadiusMm = mm;
        return withCutouts({cutout});
    };
    EXPECT_EQ(mm(sole(radius(201), "corner_radius_large"), "most_mm"), 200.0);
    EXPECT_FALSE(has(radius(200), "corner_radius_large"));
}

Plan jointed(Point from, Point to, std::vector<Cutout> cutouts = {})
{
    return counterChanged([&](Counter& c) {
        c.cutouts = std::move(cutouts);
        c.joints = {Joint{from, to, 4.0, {}}};
    });
}

TEST(ValidationLayout, JointsCutThrough)
{
    EXPECT_THAT(foundIn(jointed({900, 0}, {900, 600})), IsEmpty());
    EXPECT_THAT(foundIn(jointed({900, 700}, {900, -700})), IsEmpty());
    EXPECT_THAT(foundIn(jointed({900, 4}, {900, 596})), IsEmpty()) << "what drawing leaves out is made up for";
    const Finding ends = sole(jointed({900, 0}, {900, 560}), "joint_not_through");
    EXPECT_EQ(mm(ends, "short_mm"), 40.0);
    EXPECT_EQ(mm(ends, "joint"), 1.0);
    EXPECT_TRUE(has(jointed({2000, 0}, {2000, 600}), "joint_outside"));
    EXPECT_FALSE(has(jointed({1799, 0}, {1799, 600}), "joint_outside"));
}

TEST(ValidationLayout, JointsKeepAwayFromCutouts)
{
    EXPECT_EQ(sole(jointed({900, 0}, {900, 600}, {sink("K1", {900, 300})}), "joint_through_cutout").pointer,
              "/parts/0/joints/0");
    const auto besideTap = [](double x) { return jointed({x, 0}, {x, 600}, {tapHole("K1", {300, 300}, 36)}); };
    EXPECT_NEAR(mm(sole(besideTap(359), "joint_near_cutout"), "strip_mm"), 39.0, 1e-9);
    EXPECT_THAT(foundIn(besideTap(360)), IsEmpty());
    const auto besideSink = [](double x) { return jointed({x, 0}, {x, 600}, {sink("K1", {400, 300})}); };
    EXPECT_NEAR(mm(sole(besideSink(721), "joint_near_cutout"), "strip_mm"), 39.0, 1e-9);
    EXPECT_THAT(foundIn(besideSink(722)), IsEmpty());
}

TEST(ValidationLayout, RibsLoadsAndGrips)
{
    const auto rib = [](Point to) {
        return counterChanged([=](Counter& c) {
            c.thicknessMm = 40;
            c.rim = Rim{};
            c.ribs = {Rib{{400, 0}, to, 80, {}}};
        });
    };
    EXPECT_THAT(foundIn(rib({400, 601})), IsEmpty());
    EXPECT_NEAR(mm(sole(rib({400, 630}), "rib_outside"), "outside_mm"), 30.0, 1e-9);
    const auto load = [](Point centre) {
        return counterChanged([=](Counter& c) { c.loads = {{"tub", centre, {300, 200}, 30, {}}}; });
    };
    EXPECT_THAT(foundIn(load({150, 100})), IsEmpty());
    const Finding outside = sole(load({100, 100}), "load_outside");
    EXPECT_EQ(word(outside, "load"), "tub");
    EXPECT_NEAR(mm(outside, "outside_mm"), 50.0, 1e-9);
    const auto grip = [](Point at) {
        return counterChanged([=](Counter& c) { c.lift.emplace().grips = {{0, 0}, at}; });
    };
    EXPECT_THAT(foundIn(grip({1800, 600})), IsEmpty());
    EXPECT_EQ(sole(grip({1810, 300}), "grip_outside").pointer, "/parts/0/lift/grips/1");
}

TEST(ValidationLayout, TurningAndMirroringAPartChangesNothing)
{
    Plan plan = withCutouts({sink("K1", {300, 240}), tapHole("K2", {620, 240})});
    const auto codes = [](const Plan& p) {
        std::vector<std::string> found;
        for (const Finding& f : validate(p).findings) found.push_back(f.code);
        return found;
    };
    const auto before = codes(plan);
    EXPECT_FALSE(before.empty());
    EXPECT_EQ(codes(turnParts(plan, {"C1", "S1", "S2"}, 37, {500, 100})), before);
    EXPECT_EQ(codes(mirrorParts(plan, {"C1", "S1", "S2"}, 12)), before);
}

}  // namespace
}  // namespace yardcast
