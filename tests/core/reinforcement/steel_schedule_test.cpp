#include "core/reinforcement/steel_schedule.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/castings/counters.h"

namespace yardcast {
namespace {

struct Result {
    SteelSchedule schedule;
    std::vector<Finding> findings;

    std::vector<const Finding*> all(const std::string& code) const
    {
        std::vector<const Finding*> found;
        for (const Finding& f : findings) {
            if (f.code == code) found.push_back(&f);
        }
        return found;
    }
};

Plan planOf(const std::vector<Part>& parts)
{
    Plan plan;
    Mix mix;
    mix.id = "worktop";
    mix.bag.maxAggregateMm = 8;
    plan.mixes = {mix};
    for (const Part& part : parts) plan.parts.push_back(std::make_shared<const Part>(part));
    return plan;
}

Result scheduleOf(const std::vector<Part>& parts)
{
    const Plan plan = planOf(parts);
    std::vector<CastingPtr> castings;
    for (const Part& part : parts) {
        for (const CastingPtr& casting : castingsOf(part)) castings.push_back(casting);
    }
    Result result;
    result.schedule = steelSchedule(plan, castings, result.findings);
    return result;
}

Counter withMesh(Counter counter, Mesh mesh)
{
    counter.steel = Steel{mesh, {}, {}};
    return counter;
}

Counter withBars(Counter counter, std::vector<BarGroup> bars)
{
    counter.steel = Steel{std::nullopt, std::move(bars), {}};
    return counter;
}

TEST(Mesh, ThatFitsOneSheetHasNoLap)
{
    const Result r = scheduleOf({partOf(withMesh(slab(1800, 620, 50), {4, 50, 20, {}}))});
    ASSERT_EQ(r.schedule.meshes.size(), 1U);
    EXPECT_EQ(r.schedule.meshes[0].casting, "C1");
    EXPECT_NEAR(r.schedule.meshes[0].netAreaM2, 1.76 * 0.58, 1e-6);
    EXPECT_NEAR(r.schedule.meshes[0].withLapsM2, r.schedule.meshes[0].netAreaM2, 1e-9);
    EXPECT_NEAR(r.schedule.massKg, 1.76 * 0.58 * 3.9458, 1e-3);
}

TEST(Mesh, LapsWhereThePieceIsLongerThanASheet)
{
    // 3000 x 600 with cover 20: 2960 x 560. Along: 2 sheets of 2000, one lap of 150. Across: 4 sheets of 1000 with
    // 3 laps. The first is better.
    const Result r = scheduleOf({partOf(withMesh(slab(3000, 600, 50), {4, 50, 20, {}}))});
    ASSERT_EQ(r.schedule.meshes.size(), 1U);
    EXPECT_NEAR(r.schedule.meshes[0].withLapsM2, (2.960 + 0.150) * 0.560, 1e-5);
    EXPECT_NEAR(r.schedule.meshAreaM2, r.schedule.meshes[0].withLapsM2, 1e-12);
}

TEST(Mesh, LapsTwoPitchesWhereThatIsMore)
{
    const Result r = scheduleOf({partOf(withMesh(slab(3000, 600, 50), {4, 100, 20, {}}))});
    ASSERT_EQ(r.schedule.meshes.size(), 1U);
    EXPECT_NEAR(r.schedule.meshes[0].withLapsM2, (2.960 + 0.200) * 0.560, 1e-5);
}

TEST(Mesh, LapsBothWays)
{
    // 2960 x 1960: turned, the 2000 covers the 1960 and four rows of 1000 lap thrice: 2960 + 450.
    // Unturned: (2960 + 150) x (1960 + 2 x 150) is more.
    const Result r = scheduleOf({partOf(withMesh(slab(3000, 2000, 50), {4, 50, 20, {}}))});
    ASSERT_EQ(r.schedule.meshes.size(), 1U);
    EXPECT_NEAR(r.schedule.meshes[0].withLapsM2, 3.410 * 1.960, 1e-5);
}

TEST(Bars, AreListedAndTotalledByDiameter)
{
    const Result r = scheduleOf({partOf(withBars(slab(1800, 620, 60), {{{0, 300}, {1800, 300}, 10, 1, {}, 20, {}},
                                                                       {{0, 60}, {1800, 60}, 8, 2, 50.0, 20, {}}})),
                                 partOf(withBars(slab(1000, 620, 60), {{{0, 60}, {1000, 60}, 8, 1, {}, 20, {}}}),
                                        "C2")});
    ASSERT_EQ(r.schedule.bars.size(), 3U);
    EXPECT_EQ(r.schedule.bars[2].casting, "C2");
    ASSERT_EQ(r.schedule.barTotals.size(), 2U);
    EXPECT_EQ(r.schedule.barTotals[0].diameterMm, 8.0);
    EXPECT_NEAR(r.schedule.barTotals[0].lengthM, 2 * 1.76 + 0.96, 1e-9);
    EXPECT_NEAR(r.schedule.barTotals[0].massKg, (2 * 1.76 + 0.96) * 0.39458, 1e-4);
    EXPECT_EQ(r.schedule.barTotals[1].diameterMm, 10.0);
}

TEST(Cover, MeshThatDoesNotFitTheFieldIsAStop)
{
    EXPECT_TRUE(scheduleOf({partOf(withMesh(slab(1000, 600, 28), {4, 50, 20, {}}))}).all("cover_outside").empty());
    const Result r = scheduleOf({partOf(withMesh(slab(1000, 600, 27.9), {4, 50, 20, {}}))});
    const auto found = r.all("cover_outside");
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0]->severity, Severity::stop);
    EXPECT_EQ(found[0]->pointer, "/parts/0/steel/mesh/cover_mm");
}

TEST(Cover, ABarInTheRimMayLieDeeperThanTheField)
{
    Counter counter = rimmedSlab();  // field 40, rim 60 deep and 60 wide
    counter = withBars(counter, {{{60, 30}, {1740, 30}, 8, 1, {}, 20, {}}, {{0, 300}, {1800, 300}, 8, 1, {}, 45, {}}});
    const Result r = scheduleOf({partOf(counter)});
    const auto found = r.all("cover_outside");
    ASSERT_EQ(found.size(), 1U) << "only the one across the field";
    EXPECT_EQ(found[0]->pointer, "/parts/0/steel/bars/1/cover_mm");
    counter = withBars(rimmedSlab(), {{{60, 50}, {1740, 50}, 8, 1, {}, 45, {}}});
    EXPECT_TRUE(scheduleOf({partOf(counter)}).all("cover_outside").empty()) << "rim 60 deep";
}

TEST(Cover, SteelInTheSkinOverACore)
{
    Panel panel;
    panel.lengthMm = 1000;
    panel.thicknessMm = 60;
    panel.heightMm = 600;
    panel.mix = "worktop";
    panel.core = Core{800, 400, 20, 20, {}};  // skins of 20
    panel.steel = Steel{Mesh{4, 50, 15, {}}, {}, {}};
    EXPECT_EQ(scheduleOf({partOf(panel, "P1")}).all("cover_outside").size(), 1U);
    panel.steel->mesh->coverMm = 12;
    EXPECT_TRUE(scheduleOf({partOf(panel, "P1")}).all("cover_outside").empty());
}

TEST(Cover, BelowWhatTheCodeAsksIsOneNoteForThePlan)
{
    const Result r = scheduleOf({partOf(withMesh(slab(1000, 600, 50), {4, 50, 20, {}})),
                                 partOf(withMesh(slab(1000, 600, 50), {4, 50, 15, {}}), "C2"),
                                 partOf(withMesh(slab(1000, 600, 120), {4, 50, 40, {}}), "C3")});
    const auto found = r.all("cover_thin");
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0]->severity, Severity::note);
    EXPECT_THAT(found[0]->subjects, testing::ElementsAre("C1", "C2"));
    EXPECT_NEAR(std::get<double>(found[0]->values.at("least_mm")), 15, 1e-9);
    EXPECT_EQ(found[0]->pointer, "/parts/1/steel/mesh/cover_mm");
}

TEST(Cover, CountsBehindTheSteelToo)
{
    const Result r = scheduleOf({partOf(withMesh(slab(1000, 600, 70), {4, 50, 45, {}}))});
    const auto found = r.all("cover_thin");
    ASSERT_EQ(found.size(), 1U);
    EXPECT_NEAR(std::get<double>(found[0]->values.at("least_mm")), 70 - 45 - 8, 1e-9);
}

double valueOf(const Finding& finding, const char* key) { return std::get<double>(finding.values.at(key)); }

TEST(Cover, IsAskedByTheExposureOfThePlan)
{
    Plan plan = planOf({partOf(withMesh(slab(1000, 600, 120), {4, 50, 30, {}}))});
    const auto asked = [&]() -> std::optional<Finding> {
        std::vector<Finding> findings;
        steelSchedule(plan, castingsOf(*plan.parts[0]), findings);
        for (const Finding& finding : findings) {
            if (finding.code == "cover_thin") return finding;
        }
        return std::nullopt;
    };
    ASSERT_TRUE(asked());
    EXPECT_EQ(valueOf(*asked(), "asked_mm"), 40.0) << "XC4 where the plan does not say";
    EXPECT_EQ(std::get<std::string>(asked()->values.at("exposure")), "XC4");
    plan.assumptions.emplace().exposure = Exposure::xd3;
    EXPECT_EQ(valueOf(*asked(), "asked_mm"), 55.0);
    plan.assumptions->exposure = Exposure::xc1;
    EXPECT_FALSE(asked()) << "25 mm is enough indoors";
}

TEST(Cover, DependsOnWhatTheSteelIs)
{
    const auto codes = [](SteelMaterial material) {
        const Result r = scheduleOf({partOf(withMesh(slab(1000, 600, 50), {4, 50, 20, {}, material}))});
        std::vector<std::string> found;
        for (const Finding& finding : r.findings) found.push_back(finding.code);
        return found;
    };
    using testing::ElementsAre;
    EXPECT_THAT(codes(SteelMaterial::steel), ElementsAre("cover_thin", "slab_thin"));
    EXPECT_THAT(codes(SteelMaterial::galvanised), ElementsAre("cover_zinc", "slab_thin"));
    EXPECT_THAT(codes(SteelMaterial::stainless), ElementsAre("slab_thin"));
    EXPECT_THAT(codes(SteelMaterial::glass), ElementsAre("fibres_not_counted"));
    EXPECT_THAT(codes(SteelMaterial::basalt), ElementsAre("fibres_not_counted"));
}

TEST(Cover, AThinSlabIsNoStructure)
{
    // Twice 40 mm and two wires of 4.
    EXPECT_TRUE(scheduleOf({partOf(withMesh(slab(1000, 600, 88), {4, 50, 40, {}}))}).findings.empty());
    const Result r = scheduleOf({partOf(withMesh(slab(1000, 600, 87), {4, 50, 40, {}}))});
    const auto found = r.all("slab_thin");
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0]->severity, Severity::note);
    EXPECT_EQ(valueOf(*found[0], "asked_mm"), 88.0);
    EXPECT_EQ(valueOf(*found[0], "thickness_mm"), 87.0);
}

TEST(Spacing, AMeshWiderThanThreeTimesTheThicknessIsSaid)
{
    const auto of = [](double pitch) {
        return scheduleOf({partOf(withMesh(slab(1000, 600, 40), {4, pitch, 16, {}}))}).all("mesh_wide").size();
    };
    EXPECT_EQ(of(120), 0U);
    EXPECT_EQ(of(121), 1U);
}

TEST(Anchorage, BarsTooShortToReachTheirStrengthAreOneNote)
{
    const auto of = [](double length) {
        const BarGroup bar{{50, 300}, {50 + length, 300}, 8, 1, {}, 40, {}};
        return scheduleOf({partOf(withBars(slab(2000, 600, 120), {bar}))});
    };
    // C25/30 (8.4): 2 x 0.7 x 322.9 mm.
    EXPECT_TRUE(of(455).all("bars_short").empty());
    const Result r = of(226);
    const auto found = r.all("bars_short");
    ASSERT_EQ(found.size(), 1U);
    EXPECT_NEAR(valueOf(*found[0], "share_percent"), 50, 0.1);
    EXPECT_NEAR(valueOf(*found[0], "anchorage_mm"), 226, 0.1);
}

TEST(Spacing, BelowTwentyMillimetresClearIsACaution)
{
    const auto bars = [](double spacing) {
        return scheduleOf({partOf(withBars(slab(1000, 600, 60), {{{0, 300}, {1000, 300}, 8, 2, spacing, 20, {}}}))});
    };
    EXPECT_TRUE(bars(28).all("bars_close").empty());
    const Result r = bars(27);
    ASSERT_EQ(r.all("bars_close").size(), 1U);
    EXPECT_EQ(r.all("bars_close")[0]->pointer, "/parts/0/steel/bars/0/spacing_mm");
    EXPECT_NEAR(std::get<double>(r.all("bars_close")[0]->values.at("least_mm")), 20, 1e-9);
}

TEST(Spacing, TheAggregateGovernsWhereItIsLarge)
{
    Plan plan = planOf({partOf(withBars(slab(1000, 600, 60), {{{0, 300}, {1000, 300}, 8, 2, 28.0, 20, {}}}))});
    plan.mixes[0].bag.maxAggregateMm = 16;
    std::vector<Finding> findings;
    steelSchedule(plan, castingsOf(*plan.parts[0]), findings);
    ASSERT_FALSE(findings.empty());
    EXPECT_EQ(findings[0].code, "bars_close");
    EXPECT_NEAR(std::get<double>(findings[0].values.at("least_mm")), 21, 1e-9);
}

TEST(Bars, WithoutAPlaceAreSaid)
{
    const Result r = scheduleOf({partOf(withBars(slab(1000, 600, 60), {{{0, 10}, {1000, 10}, 8, 1, {}, 20, {}}}))});
    ASSERT_EQ(r.all("bar_outside").size(), 1U);
    EXPECT_EQ(r.all("bar_outside")[0]->pointer, "/parts/0/steel/bars/0");
    EXPECT_TRUE(r.schedule.bars.empty());
}

TEST(Schedule, OfAPlanWithoutSteelIsEmpty)
{
    const Result r = scheduleOf({partOf(slab(1000, 600, 60)), partOf(Support{}, "S1"), partOf(Front{}, "F1")});
    EXPECT_TRUE(r.schedule.meshes.empty());
    EXPECT_EQ(r.schedule.massKg, 0.0);
    EXPECT_TRUE(r.findings.empty());
}

TEST(Schedule, MassIsThatOfTheCastings)
{
    Counter counter = withMesh(rimmedSlab(), {4, 50, 15, {}});
    counter.steel->bars = {{{0, 30}, {1800, 30}, 8, 1, {}, 20, {}}};
    counter.joints = {Joint{{900, 0}, {900, 620}, {}, {}}};
    double expected = 0.0;
    for (const CastingPtr& casting : castingsOf(partOf(counter))) expected += casting->steelKg;
    const Result r = scheduleOf({partOf(counter)});
    EXPECT_GT(expected, 1.0);
    EXPECT_NEAR(r.schedule.massKg, expected, 1e-9);
    EXPECT_EQ(r.schedule.meshes.size(), 2U);
}

}  // namespace
}  // namespace yardcast
