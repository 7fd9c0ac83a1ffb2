
#include "tests/core/plan/validation_tools.h"

namespace yardcast {
namespace {

using namespace samples;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

TEST(ValidationNeighbours, ACounterThatRestsOnNothing)
{
    const Finding finding = sole(removeParts(twoSupports(), {"S1", "S2"}), "counter_unsupported");
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_EQ(finding.pointer, "/parts/0");
    EXPECT_EQ(mm(finding, "underside_mm"), 840.0);
    EXPECT_FALSE(has(removeParts(twoSupports(), {"S2"}), "counter_unsupported"));
    EXPECT_TRUE(has(moveParts(twoSupports(), {"C1"}, {0, 600}), "counter_unsupported")) << "touching is no rest";
    EXPECT_FALSE(has(moveParts(twoSupports(), {"C1"}, {0, 590}), "counter_unsupported"));
}

TEST(ValidationNeighbours, APanelCarriesToo)
{
    Plan plan = removeParts(twoSupports(), {"S1", "S2"});
    Part panel = panelPart("P1", {0, 0});
    std::get<Panel>(panel.body).baseMm = 0;
    std::get<Panel>(panel.body).heightMm = 840;
    put(plan, panel);
    EXPECT_THAT(foundIn(plan), IsEmpty());
}

TEST(ValidationNeighbours, ASupportInACutoutCarriesNothing)
{
    Plan plan = removeParts(twoSupports(), {"S1", "S2"});
    put(plan, supportPart("S3", {850, 250}, 100, 100));
    EXPECT_TRUE(has(plan, "counter_unsupported"));
}

TEST(ValidationNeighbours, ASupportThatEndsInsideTheSlab)
{
    const auto height = [](double mm) { return supportChanged([=](Support& s) { s.heightMm = mm; }); };
    EXPECT_THAT(foundIn(height(841)), IsEmpty()) << "a hair";
    const Finding inside = sole(height(860), "support_inside_slab");
    EXPECT_EQ(inside.severity, Severity::stop);
    EXPECT_EQ(mm(inside, "inside_mm"), 20.0);
    EXPECT_EQ(inside.pointer, "/parts/1");
    EXPECT_THAT(inside.subjects, ElementsAre("S1", "C1"));
    EXPECT_TRUE(has(height(901), "support_inside_slab"));
    EXPECT_TRUE(has(height(1100), "parts_collide")) << "right through the slab";
    EXPECT_FALSE(has(height(1100), "support_inside_slab"));
}

TEST(ValidationNeighbours, TheRimCountsForTheUnderside)
{
    const Plan plan = counterChanged([](Counter& c) { c.rim = Rim{80, 60, {}, {}}; });
    EXPECT_EQ(mm(sole(changePart(plan, "S2", [](Part& p) { std::get<Support>(p.body).heightMm = 820; }),
                      "support_inside_slab"),
                 "inside_mm"),
              20.0);
}

TEST(ValidationNeighbours, ASupportThatEndsUnderTheSlab)
{
    const auto support = [](double height, std::optional<double> pad) {
        return supportChanged([=](Support& s) {
            s.heightMm = height;
            if (pad) s.pads.emplace().thicknessMm = pad;
        });
    };
    EXPECT_THAT(foundIn(support(825, {})), IsEmpty());
    const Finding shortBy = sole(support(824, {}), "support_short");
    EXPECT_EQ(shortBy.severity, Severity::caution);
    EXPECT_EQ(mm(shortBy, "gap_mm"), 16.0);
    EXPECT_EQ(mm(shortBy, "allowed_mm"), 15.0);
    EXPECT_THAT(shortBy.subjects, ElementsAre("S1", "C1"));
    EXPECT_THAT(foundIn(support(817, 8.0)), IsEmpty()) << "pads and bedding make it up";
    EXPECT_TRUE(has(support(816, 8.0), "support_short"));
}

TEST(ValidationNeighbours, SupportsOfALowerCounterAreNotShortForTheUpper)
{
    Plan plan = twoSupports();
    Part bar = counterPart("C2", {0, 0}, 1800, 300);
    std::get<Counter>(bar.body).topMm = 1100;
    put(plan, bar);
    put(plan, supportPart("S3", {800, 620}, 100, 100));
    EXPECT_THAT(foundIn(plan), ElementsAre("counter_unsupported /parts/3"));
}

TEST(ValidationNeighbours, PartsInOnePlaceCollide)
{
    const auto second = [](Part part) {
        Plan plan = twoSupports();
        put(plan, std::move(part));
        return plan;
    };
    const Finding finding = sole(second(supportPart("S3", {180, 100}, 100, 100)), "parts_collide");
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_EQ(finding.pointer, "/parts/3");
    EXPECT_THAT(finding.subjects, ElementsAre("S1", "S3"));
    EXPECT_EQ(mm(finding, "overlap_mm"), 20.0);
    EXPECT_EQ(mm(finding, "height_mm"), 840.0);
    EXPECT_THAT(foundIn(second(supportPart("S3", {200, 100}, 100, 100))), IsEmpty()) << "touching is fine";
    EXPECT_THAT(foundIn(second(supportPart("S3", {199, 100}, 100, 100))), IsEmpty()) << "and so is a hair";
    EXPECT_TRUE(has(second(counterPart("C2", {1790, 0})), "parts_collide"));
    EXPECT_FALSE(has(second(panelPart("P1", {0, 0})), "parts_collide")) << "it stands on the counter";
    EXPECT_TRUE(has(raiseParts(second(panelPart("P1", {0, 0})), {"P1"}, -30), "parts_collide"));
    EXPECT_TRUE(has(second(appliancePart("A1", {150, 0})), "parts_collide"));
    EXPECT_FALSE(has(second(appliancePart("A1", {200, 0})), "parts_collide")) << "it fits under the counter";
}

TEST(ValidationNeighbours, AnApplianceTooTallForItsPlace)
{
    const auto fridge = [](double height) {
        Plan plan = twoSupports();
        Part part = appliancePart("A1", {700, 20});
        std::get<Appliance>(part.body).heightMm = height;
        put(plan, part);
        return plan;
    };
    EXPECT_THAT(foundIn(fridge(840)), IsEmpty());
    const Finding finding = sole(fridge(860), "parts_collide");
    EXPECT_EQ(mm(finding, "height_mm"), 20.0);
    EXPECT_THAT(finding.subjects, ElementsAre("C1", "A1"));
}

TEST(ValidationNeighbours, AnApplianceMayStandThroughACutout)
{
    Plan plan = twoSupports();
    Part grill = appliancePart("A1", {640, 110});
    std::get<Appliance>(grill.body).size = {520, 380};
    std::get<Appliance>(grill.body).heightMm = 1000;
    put(plan, grill);
    EXPECT_THAT(foundIn(plan), IsEmpty());
    EXPECT_TRUE(has(moveParts(plan, {"A1"}, {30, 0}), "parts_collide"));
}

TEST(ValidationNeighbours, AppliancesOnACounterCollideWithEachOther)
{
    Plan plan = twoSupports();
    put(plan, appliancePart("A1", {0, 0}, "C1"));
    put(plan, appliancePart("A2", {500, 0}, "C1"));
    EXPECT_THAT(foundIn(plan), IsEmpty());
    EXPECT_TRUE(has(moveParts(plan, {"A2"}, {-10, 0}), "parts_collide"));
}

TEST(ValidationNeighbours, TurnedPartsAreComparedByTheirShape)
{
    Plan plan;
    plan.mixes = {mix("body")};
    Part a = supportPart("S1", {0, 0}, 600, 100);
    a.place.turnDeg = 45;
    Part b = supportPart("S2", {200, 0}, 100, 100);
    put(plan, a);
    put(plan, b);
    EXPECT_THAT(foundIn(plan), IsEmpty()) << "only the boxes overlap";
    EXPECT_TRUE(has(moveParts(plan, {"S2"}, {-100, 60}), "parts_collide"));
}

TEST(ValidationNeighbours, WallsAndTrees)
{
    const auto fixture = [](FixtureKind kind, Point at) {
        Fixture f;
        f.id = "W";
        f.kind = kind;
        f.at = at;
        f.size = Size{5000, 200};
        return addFixture(twoSupports(), f);
    };
    EXPECT_THAT(foundIn(fixture(FixtureKind::wall, {0, 600})), IsEmpty());
    const auto findings = validate(fixture(FixtureKind::wall, {0, 590})).findings;
    ASSERT_EQ(findings.size(), 3u) << "the counter and both supports";
    EXPECT_EQ(findings[0].code, "part_meets_fixture");
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_EQ(word(findings[0], "fixture"), "W");
    EXPECT_EQ(mm(findings[0], "overlap_mm"), 10.0);
    EXPECT_FALSE(has(fixture(FixtureKind::door, {0, 590}), "part_meets_fixture"));
}

TEST(ValidationNeighbours, UnusablePartsAreLeftOut)
{
    const Plan plan = changePart(twoSupports(), "S1", [](Part& p) { std::get<Support>(p.body).lengthMm = -5; });
    EXPECT_THAT(foundIn(plan), ElementsAre("number_out_of_range /parts/1/length_mm"));
    EXPECT_EQ(validate(plan).unusableParts, std::set<std::string>{"S1"});
}

TEST(ValidationNeighbours, AThousandPartsInARowAreSound)
{
    Plan plan;
    plan.mixes = {mix("worktop"), mix("body")};
    for (int i = 0; i < 334; ++i) {
        const Point at{(i % 30) * 2000.0, (i / 30) * 2000.0};
        put(plan, counterPart("C" + std::to_string(i), at));
        put(plan, supportPart("S" + std::to_string(2 * i), at));
        put(plan, supportPart("S" + std::to_string(2 * i + 1), at + Point{1700, 0}));
    }
    EXPECT_THAT(foundIn(plan), IsEmpty());
}

TEST(ValidationNeighbours, ManyPartsInOnePlaceEndInTime)
{
    Plan plan;
    plan.mixes = {mix("body")};
    for (int i = 0; i < 20'000; ++i) put(plan, supportPart("S" + std::to_string(i), {0, 0}));
    const Validation validation = validate(plan);
    EXPECT_TRUE(has(plan, "not_all_compared"));
    EXPECT_LT(validation.findings.size(), 25'000u);
}

}  // namespace
}  // namespace yardcast
