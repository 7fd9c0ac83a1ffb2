#include <algorithm>

#include <gtest/gtest.h>

#include "core/structure/body.h"
#include "core/structure/in_use.h"
#include "core/structure/places.h"
#include "tests/core/structure/slabs.h"

namespace yardcast {

namespace {

using tests::PlanMaker;
using tests::slab;

std::vector<Finding> findingsOf(const PlanMaker& plan)
{
    std::vector<Finding> findings;
    addBearingFindings(plan.input("C1"), findings);
    return findings;
}

const Finding* find(const std::vector<Finding>& findings, const std::string& code)
{
    for (const Finding& finding : findings) {
        if (finding.code == code) return &finding;
    }
    return nullptr;
}

double number(const Finding& finding, const std::string& key) { return std::get<double>(finding.values.at(key)); }

}  // namespace

TEST(BearingFindings, GroovesThatTheStrengthLeavesOutAreTold)
{
    Counter counter = slab(1200, 620, 40);
    PlanMaker plain;
    plain.counter("C1", counter);
    EXPECT_FALSE(find(findingsOf(plain), "grooves_not_solved"));
    counter.drip = Drip{{0}, 20, 8, 5, {}};
    counter.rebate = Rebate{{2}, 44, 8, {}};
    PlanMaker plan;
    plan.counter("C1", counter);
    const auto findings = findingsOf(plan);
    const Finding* told = find(findings, "grooves_not_solved");
    ASSERT_TRUE(told);
    EXPECT_EQ(number(*told, "thickness_mm"), 40);
    EXPECT_NEAR(number(*told, "left_mm"), 32, 1e-9) << "the rebate takes more than the groove";
    EXPECT_NEAR(number(*told, "more_percent"), 100 * (40.0 * 40 / (32 * 32) - 1), 1e-9);

    // The body has one kind of section as before, and the mass of what is there.
    const auto body = makeBody(plan.input("C1"), Refinement::draft);
    ASSERT_TRUE(body);
    EXPECT_EQ(body->kindCount(), 1);
    EXPECT_EQ(body->massKg, plan.input("C1").casting->massKg);
    EXPECT_LT(body->massKg, plain.input("C1").casting->massKg);
}

TEST(BearingFindings, AWallUnderFoamAlone)
{
    Counter counter = slab(1200, 620, 40);
    counter.rim = Rim{};
    counter.filler = Filler{};
    PlanMaker plan;
    plan.counter("C1", counter).wall("S1", 600, 100, 100, 520, 840);
    const auto findings = findingsOf(plan);
    const Finding* foam = find(findings, "rest_on_foam");
    ASSERT_TRUE(foam);
    EXPECT_EQ(foam->severity, Severity::caution);
    EXPECT_NEAR(number(*foam, "touched_percent"), 0.0, 1e-6);

    // Reaching under both rims it is worth a note.
    PlanMaker longer;
    longer.counter("C1", counter).wall("S1", 600, 100, 0, 620, 840);
    const auto notes = findingsOf(longer);
    foam = find(notes, "rest_on_foam");
    ASSERT_TRUE(foam);
    EXPECT_EQ(foam->severity, Severity::note);
    EXPECT_NEAR(number(*foam, "touched_percent"), 100.0 * 120 / 620, 0.01);

    // A rib over it ends that.
    counter.ribs = {{{600, 0}, {600, 620}, 120, {}}};
    PlanMaker ribbed;
    ribbed.counter("C1", counter).wall("S1", 600, 100, 0, 620, 840);
    EXPECT_FALSE(find(findingsOf(ribbed), "rest_on_foam"));
}

TEST(BearingFindings, AWallSharedByTwoSlabsIsShort)
{
    Counter counter = slab(2000, 600, 40);
    counter.joints = {{{1000, 0}, {1000, 600}, 4.0, {}}};
    PlanMaker plan;
    plan.counter("C1", counter).wall("S1", 100, 60, 0, 600, 860).wall("S2", 1000, 60, 0, 600, 860);
    std::vector<Finding> findings;
    addBearingFindings(plan.input("C1.1"), findings);
    const Finding* bearing = find(findings, "bearing_short");
    ASSERT_TRUE(bearing);
    EXPECT_NEAR(number(*bearing, "bearing_mm"), 28, 1e-3);
    EXPECT_EQ(std::get<std::string>(bearing->values.at("under")), "S2");
}

TEST(BearingFindings, AnOverhangOfMoreThanAThird)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 600, 40)).wall("S1", 60, 100, 260, 600, 860).wall("S2", 1740, 100, 260, 600, 860);
    const auto findings = findingsOf(plan);
    const Finding* overhang = find(findings, "overhang_long");
    ASSERT_TRUE(overhang);
    EXPECT_NEAR(number(*overhang, "overhang_mm"), 260, 1e-3);
    EXPECT_NEAR(number(*overhang, "usual_mm"), 200, 1e-3);
    PlanMaker less;
    less.counter("C1", slab(1800, 600, 40)).wall("S1", 60, 100, 190, 600, 860).wall("S2", 1740, 100, 190, 600, 860);
    EXPECT_FALSE(find(findingsOf(less), "overhang_long"));
}

TEST(BearingFindings, APostIsSaidToBeOverhungOnce)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 600, 40)).wall("S1", 900, 100, 250, 350, 860);
    const auto findings = findingsOf(plan);
    EXPECT_EQ(std::count_if(findings.begin(), findings.end(),
                            [](const Finding& finding) { return finding.code == "overhang_long"; }),
              1);
    EXPECT_NEAR(number(*find(findings, "overhang_long"), "overhang_mm"), 850, 1e-3) << "of 1800, not 250 of 600";
}

TEST(BearingFindings, AnEdgePastTwoPostsBendsBetweenThem)
{
    PlanMaker plan;
    plan.counter("C1", slab(1800, 600, 40))
        .wall("S1", 100, 100, 50, 150, 860)
        .wall("S2", 1700, 100, 50, 150, 860)
        .wall("S3", 100, 100, 450, 550, 860)
        .wall("S4", 1700, 100, 450, 550, 860);
    const auto body = makeBody(plan.input("C1"), Refinement::draft);
    ASSERT_TRUE(body);
    EXPECT_EQ(placeAt(*body, {900, 0}, -1).kind, PlaceKind::middleOfSpan);
    EXPECT_EQ(placeAt(*body, {900, 600}, -1).kind, PlaceKind::middleOfSpan);
    EXPECT_EQ(placeAt(*body, {20, 300}, -1), (PlaceName{PlaceKind::middleOfSpan, "S1", "S3"}));
    EXPECT_EQ(placeAt(*body, {15, 20}, -1).kind, PlaceKind::overhang) << "the very corner";
    PlanMaker far;
    far.counter("C1", slab(1800, 900, 40)).wall("S1", 100, 100, 50, 150, 860).wall("S2", 1700, 100, 50, 150, 860);
    const auto reaching = makeBody(far.input("C1"), Refinement::draft);
    ASSERT_TRUE(reaching);
    EXPECT_EQ(placeAt(*reaching, {900, 800}, -1).kind, PlaceKind::overhang) << "750 past posts that are 1500 apart";
}

TEST(BearingFindings, CurlingGrowsWithTheSquareOfTheLength)
{
    EXPECT_NEAR(curlMm(2000, 40), 1e-4 / 40 * 4e6 / 8, 1e-12);
    EXPECT_NEAR(curlMm(2000, 40), 4 * curlMm(1000, 40), 1e-12);
    PlanMaker plan;
    plan.counter("C1", slab(2400, 600, 30)).wall("S1", 60, 100, 0, 600, 870);
    EXPECT_TRUE(find(findingsOf(plan), "curls"));
    PlanMaker small;
    small.counter("C1", slab(1000, 600, 40)).wall("S1", 60, 100, 0, 600, 860);
    EXPECT_FALSE(find(findingsOf(small), "curls"));
}

}  // namespace yardcast
