#include <algorithm>
#include <cmath>
#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/mould/moulds.h"

namespace yardcast {

namespace {

using testing::ElementsAre;

std::vector<double> lengths(const std::vector<MouldPart>& parts)
{
    std::vector<double> all;
    for (const MouldPart& part : parts) all.push_back(std::round(part.lengthMm * 1000) / 1000);
    return all;
}

Moulding with(SideJoint sides)
{
    Moulding how;
    how.boardMm = 18;
    how.sides = sides;
    return how;
}

}  // namespace

TEST(MouldBoards, OnTheBaseSidesAreAsHighAsTheSlabAndEachCoversTheEndOfTheNext)
{
    const MouldsOfPlan all = mouldsOfParts({partOf(slab(1800, 620, 60))}, with(SideJoint::onBase));
    const Mould& mould = *all.moulds.at(0);
    const auto sides = partsOfKind(mould, MouldPartKind::side);
    EXPECT_THAT(lengths(sides), ElementsAre(1818, 638, 1818, 638)) << "18 more: the thickness of the one it covers";
    for (const MouldPart& side : sides) {
        EXPECT_EQ(side.widthMm, 60);
        EXPECT_EQ(side.thicknessMm, 18);
        EXPECT_EQ(side.fromMm, 0);
        EXPECT_TRUE(side.goodFace);
        EXPECT_FALSE(side.shaped);
    }
    const MouldPart base = partsOfKind(mould, MouldPartKind::base).at(0);
    EXPECT_EQ(base.lengthMm, 1800 + 2 * (18 + 40));
    EXPECT_EQ(base.widthMm, 620 + 2 * (18 + 40));
    EXPECT_TRUE(base.goodFace);
}

TEST(MouldBoards, BesideTheBaseSidesAreHigherByTheBoardAndTheBaseIsTheSlab)
{
    const MouldsOfPlan all = mouldsOfParts({partOf(slab(1800, 620, 60))}, with(SideJoint::besideBase));
    const Mould& mould = *all.moulds.at(0);
    for (const MouldPart& side : partsOfKind(mould, MouldPartKind::side)) {
        EXPECT_EQ(side.widthMm, 78);
        EXPECT_EQ(side.fromMm, -18);
    }
    const MouldPart base = partsOfKind(mould, MouldPartKind::base).at(0);
    EXPECT_EQ(base.lengthMm, 1800);
    EXPECT_EQ(base.widthMm, 620);
    EXPECT_FALSE(base.shaped);
}

TEST(MouldBoards, AtAnInnerCornerOneSideStopsShort)
{
    const MouldsOfPlan all = mouldsOfParts({partOf(lShape())}, with(SideJoint::onBase));
    auto found = lengths(partsOfKind(*all.moulds.at(0), MouldPartKind::side));
    std::sort(found.begin(), found.end());
    // Edges 600 600 900 1200 1500 1800. The mould is mirrored, so that the sides go round the other way: each covers
    // the next at its outer corner (+18); at the inner one the side that runs to it (900) has 0 more, the next 18 less.
    EXPECT_THAT(found, ElementsAre(618, 618, 900, 1200, 1518, 1818));
    Counter small = lShape();
    small.outline = {{0, 0}, {1400, 0}, {1400, 600}, {600, 600}, {600, 1200}, {0, 1200}};
    const MouldPart base = partsOfKind(*mouldsOfParts({partOf(small)}, with(SideJoint::besideBase)).moulds.at(0),
                                       MouldPartKind::base)
                               .at(0);
    EXPECT_TRUE(base.shaped) << "sawn to an L out of a rectangle that a sheet gives";
    EXPECT_EQ(base.lengthMm, 1400);
    EXPECT_EQ(base.widthMm, 1200);
}

TEST(MouldBoards, SlantedCornersAreMitred)
{
    Counter counter = slab(1000, 600, 50);
    counter.outline = {{0, 0}, {1000, 0}, {700, 600}, {0, 600}};
    const MouldsOfPlan all = mouldsOfParts({partOf(counter)}, with(SideJoint::onBase));
    int shaped = 0;
    for (const MouldPart& side : partsOfKind(*all.moulds.at(0), MouldPartKind::side)) shaped += side.shaped ? 1 : 0;
    EXPECT_EQ(shaped, 3) << "the slanted one and both that meet it";
    EXPECT_NEAR(mouldVolumeL(*all.moulds[0]), 0.85 * 0.6 * 50, 1e-3);
}

TEST(MouldBoards, FormersAreBuiltUpOfPliesAndTaperUpwards)
{
    Counter counter = slab(1800, 620, 60);
    counter.cutouts = {rectangleCutout({600, 310}, {560, 400})};
    Moulding how = with(SideJoint::onBase);
    how.draftDeg = 3;
    const MouldsOfPlan all = mouldsOfParts({partOf(counter)}, how);
    const auto plies = partsOfKind(*all.moulds.at(0), MouldPartKind::former);
    ASSERT_EQ(plies.size(), 4U) << "three boards of 18 and 6 mm of foam";
    EXPECT_EQ(plies[2].stuff, MouldStuff::board);
    EXPECT_EQ(plies[3].stuff, MouldStuff::foam);
    EXPECT_NEAR(plies[3].thicknessMm, 6, 1e-9);
    EXPECT_NEAR(plies[0].lengthMm, 560, 1e-6) << "as drawn at the face";
    const double secondMm = 560 - 2 * 18 * std::tan(3 * 3.14159265 / 180);
    EXPECT_EQ(plies[1].lengthMm, std::ceil(secondMm)) << "sawn in whole millimetres, then planed to lean";
    EXPECT_NEAR(boundsOf(plies[1].outline)->width(), secondMm, 1e-3);
    EXPECT_TRUE(plies[1].shaped);
    EXPECT_EQ(plies[0].about, "K1");
    for (std::size_t i = 0; i + 1 < plies.size(); ++i)
        EXPECT_EQ(plies[i].topOutline, plies[i + 1].outline) << "no step between plies";
    how.former = FormerStuff::foam;
    EXPECT_EQ(partsOfKind(*mouldsOfParts({partOf(counter)}, how).moulds.at(0), MouldPartKind::former).size(), 1U);
}

TEST(MouldBoards, AShallowFieldWithoutFillerGetsAHollowOfFoam)
{
    Counter counter = rimmedSlab();
    const auto hollow = partsOfKind(*mouldsOfParts({partOf(counter)}).moulds.at(0), MouldPartKind::filler);
    ASSERT_EQ(hollow.size(), 1U);
    EXPECT_EQ(hollow[0].lengthMm, 1680);
    EXPECT_EQ(hollow[0].widthMm, 500);
    EXPECT_EQ(hollow[0].fromMm, 40);
    EXPECT_EQ(hollow[0].toMm, 60);
    counter.ribs = {Rib{{900, 0}, {900, 620}, 80, {}}};
    EXPECT_EQ(partsOfKind(*mouldsOfParts({partOf(counter)}).moulds.at(0), MouldPartKind::filler).size(), 2U);
}

TEST(MouldBoards, FoamIsHeldDownByBattensAcrossIt)
{
    Counter counter = rimmedSlab();
    counter.filler = Filler{};
    const Mould mould = *mouldsOfParts({partOf(counter)}).moulds.at(0);
    // 1.680 x 0.500 x 20 mm of foam, 20 kg/m3 in 2500.
    EXPECT_NEAR(mould.upliftN, 1.680 * 0.500 * 0.020 * 2480 * 9.81, 0.01);
    EXPECT_NEAR(mould.holdDownN, 1.5 * mould.upliftN, 1e-9);
    const auto battens = partsOfKind(mould, MouldPartKind::holdDown);
    ASSERT_EQ(battens.size(), 1U);
    EXPECT_EQ(battens[0].count, 5) << "1680 less 80 at each end, no more than 400 apart";
    EXPECT_EQ(battens[0].outline.size(), 5U);
    EXPECT_EQ(battens[0].lengthMm, 620 + 2 * (18 + 20));
    EXPECT_GE(mould.screws.holdDowns * 300, mould.holdDownN);
    counter.cast = CounterCast::faceUp;
    const MouldsOfPlan up = mouldsOfParts({partOf(counter)});
    EXPECT_TRUE(partsOfKind(*up.moulds.at(0), MouldPartKind::holdDown).empty());
    EXPECT_TRUE(up.finding("foam_not_held"));
    EXPECT_GE(up.moulds[0]->screws.foam * 300, up.moulds[0]->holdDownN);
}

TEST(MouldBoards, StripsLieWhereGrooveAndRebateAre)
{
    Counter counter = rimmedSlab();
    counter.drip = Drip{{0}, 20, 8, 5, {}};
    counter.rebate = Rebate{{2}, 44, 8, {}};
    const Mould mould = *mouldsOfParts({partOf(counter)}).moulds.at(0);
    const auto drips = partsOfKind(mould, MouldPartKind::drip);
    ASSERT_EQ(drips.size(), 1U);
    EXPECT_NEAR(drips[0].lengthMm, 1800, 1e-3);
    EXPECT_EQ(drips[0].widthMm, 8);
    EXPECT_EQ(drips[0].fromMm, 55);
    EXPECT_EQ(drips[0].toMm, 60);
    EXPECT_EQ(drips[0].about, "front");
    double rebateMm2 = 0.0;
    for (const MouldPart& strip : partsOfKind(mould, MouldPartKind::rebate)) {
        EXPECT_EQ(strip.fromMm, 0);
        EXPECT_EQ(strip.toMm, 8);
        EXPECT_EQ(strip.about, "back");
        rebateMm2 += areaMm2(strip.outline);
    }
    EXPECT_NEAR(rebateMm2, 1800 * 44, 1.0);
    const auto held = partsOfKind(mould, MouldPartKind::holdDown);
    EXPECT_TRUE(std::any_of(held.begin(), held.end(), [](const MouldPart& part) { return part.about == "drip"; }));
}

TEST(MouldBoards, ChamferStripsRunRoundTheFaceButNotBesideARebate)
{
    Moulding how;
    how.edge = EdgeFinish::chamfer;
    how.edgeMm = 8;
    Counter counter = slab(1800, 620, 60);
    EXPECT_EQ(partsOfKind(*mouldsOfParts({partOf(counter)}, how).moulds.at(0), MouldPartKind::chamfer).size(), 4U);
    counter.rebate = Rebate{{2}, 44, 8, {}};
    EXPECT_EQ(partsOfKind(*mouldsOfParts({partOf(counter)}, how).moulds.at(0), MouldPartKind::chamfer).size(), 3U);
    counter.cast = CounterCast::faceUp;
    EXPECT_TRUE(partsOfKind(*mouldsOfParts({partOf(counter)}, how).moulds.at(0), MouldPartKind::chamfer).empty());
}

TEST(MouldBoards, CoresAreHeldOffTheBase)
{
    Support support;
    support.lengthMm = 600;
    support.widthMm = 100;
    support.heightMm = 840;
    support.core = Core{440, 680, 40, 20, {}};
    const Mould mould = *mouldsOfParts({partOf(support, "S1")}).moulds.at(0);
    const auto spacers = partsOfKind(mould, MouldPartKind::spacer);
    ASSERT_EQ(spacers.size(), 1U);
    EXPECT_EQ(spacers[0].count, 6) << "two by three, no more than 350 apart";
    EXPECT_EQ(spacers[0].thicknessMm, 30) << "what is left below the core";
    const auto cores = partsOfKind(mould, MouldPartKind::core);
    ASSERT_EQ(cores.size(), 1U);
    EXPECT_EQ(cores[0].fromMm, 30);
    EXPECT_FALSE(partsOfKind(mould, MouldPartKind::holdDown).empty());
}

TEST(MouldBoards, PressureAndBracketsOfLyingAndStandingMoulds)
{
    const Mould lying = *mouldsOfParts({partOf(slab(1800, 620, 60))}).moulds.at(0);
    EXPECT_EQ(lying.pressure.rule, "hydrostatic");
    EXPECT_NEAR(lying.pressure.pressureKpa, 1.5, 1e-9);
    EXPECT_LE(lying.pressure.bowMm, 1.0);
    EXPECT_EQ(lying.pressure.codeKpa, 0.0);

    Panel panel;
    panel.lengthMm = 1800;
    panel.thicknessMm = 60;
    panel.heightMm = 900;
    panel.cast = UprightCast::upright;
    const Mould standing = *mouldsOfParts({partOf(panel, "P1")}).moulds.at(0);
    EXPECT_TRUE(standing.standing);
    EXPECT_FALSE(standing.mirrored);
    EXPECT_NEAR(standing.pressure.hydrostaticKpa, 22.5, 1e-9);
    EXPECT_EQ(standing.pressure.concreteClass, "F3");
    // 63 l of which 65 % are filled every 8 minutes, over 1.8 x 0.06 m.
    EXPECT_NEAR(standing.pressure.riseMPerH, 63 * 0.65 / 8 * 60 / 1000 / 0.108, 1e-9);
    EXPECT_EQ(standing.pressure.rule, "hydrostatic") << "it rises too fast for the standard to help";
    EXPECT_LT(standing.pressure.bracketMm, lying.pressure.bracketMm);
    EXPECT_LE(standing.pressure.bowMm, 1.0);
}

TEST(MouldBoards, RoundFormersAreSawnFromSquaresOfTheirDiameter)
{
    Counter counter = slab(1200, 620, 54);
    counter.cutouts = {circleCutout({600, 310}, 380), circleCutout({200, 310}, 35)};
    const auto plies = partsOfKind(*mouldsOfParts({partOf(counter)}).moulds.at(0), MouldPartKind::former);
    ASSERT_EQ(plies.size(), 6U);
    EXPECT_EQ(plies[0].lengthMm, 380);
    EXPECT_EQ(plies[0].widthMm, 380);
    EXPECT_EQ(plies[3].lengthMm, 35);
    for (const MouldPart& ply : plies) {
        EXPECT_EQ(ply.lengthMm, std::floor(ply.lengthMm));
        const Box box = boundsOf(ply.outline).value();
        EXPECT_GE(ply.lengthMm, box.width());
        EXPECT_LT(ply.lengthMm, box.width() + 1.2) << "and not more than the next millimetre";
    }
}

TEST(MouldBoards, AMouldThatStandsIsTiedFromStudToStud)
{
    Panel panel;
    panel.lengthMm = 1800;
    panel.thicknessMm = 60;
    panel.heightMm = 900;
    panel.cast = UprightCast::upright;
    const Mould mould = *mouldsOfParts({partOf(panel, "P1")}).moulds.at(0);
    const MouldTies& ties = mould.ties;
    const auto studs = partsOfKind(mould, MouldPartKind::bracket);
    ASSERT_EQ(studs.size(), 2U);
    EXPECT_EQ(studs[0].count, ties.across);
    ASSERT_GE(ties.rows.size(), 3U);
    EXPECT_EQ(ties.rows.front().heightMm, 0.0);
    EXPECT_GT(ties.rows.back().heightMm, 900.0) << "the last passes over the concrete";
    EXPECT_FALSE(ties.rows.back().through);
    EXPECT_TRUE(ties.rows[1].through);
    EXPECT_GT(studs[0].toMm, ties.rows.back().heightMm);
    // Together they hold what presses on the fields of the studs: 25 kN/m3 x 0.9 m / 2 over 0.9 m of one field.
    const double pitchMm = 1800.0 / (ties.across + 1);
    double sumN = 0.0;
    for (const MouldTies::Row& row : ties.rows) {
        sumN += row.forceN;
        EXPECT_LE(row.forceN, 1900.0) << "what a tie is counted on for";
    }
    EXPECT_NEAR(sumN, 0.0225 * 900 / 2 * pitchMm, 0.01 * sumN) << "a sum of 64 steps a row";
    // Beam by hand: the lowest span under the pressure at the base, a batten of 24 x 48 on edge.
    const double span = ties.rows[1].heightMm;
    const double q = 0.0225 * pitchMm;
    const double inertia = 24 * std::pow(48, 3) / 12;
    EXPECT_GE(ties.bowMm, 5 * q * std::pow(span, 4) / (384 * 8000 * inertia) - 1e-9);
    EXPECT_LE(ties.bowMm, 1.0 * 1.001);
    EXPECT_LE(ties.stressMpa, 16 * 0.9 / 1.3 * 1.001);
    EXPECT_GE(ties.footScrews * 300, ties.rows[0].forceN);
    const auto rods = partsOfKind(mould, MouldPartKind::tie);
    EXPECT_EQ(rods.size(), ties.rows.size() - 1);
    for (const MouldPart& rod : rods) EXPECT_EQ(rod.lengthMm, 60 + 2 * (18 + 48 + 25));
    EXPECT_EQ(partsOfKind(mould, MouldPartKind::foot).size(), 1U);
    const MouldPart base = partsOfKind(mould, MouldPartKind::base).at(0);
    EXPECT_GE(boundsOf(base.outline)->high.y, boundsOf(partsOfKind(mould, MouldPartKind::foot)[0].outline)->high.y);
    EXPECT_TRUE(mouldsOfParts({partOf(slab(1800, 620, 60))}).moulds.at(0)->ties.rows.empty());
}

TEST(MouldBoards, WhatOtherCodesSayOfThePressureIsThereToCompare)
{
    Panel panel;
    panel.lengthMm = 1800;
    panel.thicknessMm = 60;
    panel.heightMm = 900;
    panel.cast = UprightCast::upright;
    const MouldPressure column = mouldsOfParts({partOf(panel, "P1")}).moulds.at(0)->pressure;
    EXPECT_NEAR(column.aciKpa, 22.5, 1e-9) << "never more than as a liquid";
    EXPECT_NEAR(column.ciriaKpa, 22.5, 1e-9);
    panel.lengthMm = 2400;
    const MouldPressure wall = mouldsOfParts({partOf(panel, "P1")}).moulds.at(0)->pressure;
    ASSERT_GE(wall.riseMPerH, 2.1);
    EXPECT_EQ(wall.aciKpa, 0.0) << "it rises faster than the formula for walls goes";
}

TEST(MouldBoards, ChamferStripsAreMitredAndGoRoundBends)
{
    Moulding how;
    how.edge = EdgeFinish::chamfer;
    how.edgeMm = 10;
    const auto strips = partsOfKind(*mouldsOfParts({partOf(lShape())}, how).moulds.at(0), MouldPartKind::chamfer);
    ASSERT_EQ(strips.size(), 6U);
    int inner = 0;
    for (const MouldPart& strip : strips) {
        for (const double deg : strip.mitreDeg) {
            EXPECT_NEAR(std::abs(deg), 45.0, 1e-6);
            inner += deg < 0.0 ? 1 : 0;
        }
    }
    EXPECT_EQ(inner, 2) << "both strips at the inner corner";
    // 600 and 900 long, with one inner end each: 10 mm more than the wall is long.
    std::vector<double> found = lengths(strips);
    std::sort(found.begin(), found.end());
    EXPECT_THAT(found, ElementsAre(600, 600, 910, 1210, 1500, 1800));

    Counter counter = slab(1200, 600, 40);
    counter.outline = rectangleRing({600, 300}, {1200, 600}, 0, 150);
    const auto round = partsOfKind(*mouldsOfParts({partOf(counter)}, how).moulds.at(0), MouldPartKind::chamfer);
    ASSERT_EQ(round.size(), 8U);
    int bent = 0;
    for (const MouldPart& strip : round) {
        if (!strip.bent) continue;
        ++bent;
        EXPECT_EQ(strip.lengthMm, std::ceil(strip.insideMm));
        EXPECT_NEAR(strip.insideMm, 150 * 3.14159265 / 2, 0.5);
    }
    EXPECT_EQ(bent, 4);
    counter.outline = circleRing({400, 400}, 800);
    EXPECT_EQ(partsOfKind(*mouldsOfParts({partOf(counter)}, how).moulds.at(0), MouldPartKind::chamfer).size(), 1U);
}

TEST(MouldBoards, ABaseLargerThanASheetIsOfBoardsOnCleats)
{
    Counter counter = lShape();
    counter.outline = {{0, 0}, {1600, 0}, {1600, 600}, {620, 600}, {620, 1500}, {0, 1500}};
    const MouldsOfPlan all = mouldsOfParts({partOf(counter)}, with(SideJoint::onBase));
    const auto bases = partsOfKind(*all.moulds.at(0), MouldPartKind::base);
    ASSERT_EQ(bases.size(), 2U) << "an L of two boards";
    std::vector<double> sizes;
    double mm2 = 0.0;
    for (const MouldPart& base : bases) {
        EXPECT_FALSE(base.shaped);
        EXPECT_LE(base.lengthMm, 2500);
        EXPECT_LE(base.widthMm, 1250);
        mm2 += base.lengthMm * base.widthMm;
    }
    // 1716 x 716 and 736 x 900, or 736 x 1616 and 980 x 716: the same L, 58 mm larger all round.
    EXPECT_NEAR(mm2, 1716 * 716 + 736 * 900, 1.0);
    EXPECT_LT(areaMm2(intersect(bases[0].outline, bases[1].outline)), 1.0);
    ASSERT_EQ(partsOfKind(*all.moulds[0], MouldPartKind::cleat).size(), 1U);
    EXPECT_TRUE(all.finding("base_longer_than_sheet"));
    const auto besides = partsOfKind(*mouldsOfParts({partOf(counter)}, with(SideJoint::besideBase)).moulds.at(0),
                                     MouldPartKind::base);
    ASSERT_EQ(besides.size(), 2U);
    EXPECT_NEAR(besides[0].lengthMm * besides[0].widthMm + besides[1].lengthMm * besides[1].widthMm,
                1600 * 600 + 620 * 900, 1.0);
}

TEST(MouldBoards, TheMakersOwnBracketsAreChecked)
{
    Moulding how;
    how.boardMm = 12;
    how.bracketMm = 900;
    const MouldsOfPlan all = mouldsOfParts({partOf(slab(1800, 620, 60))}, how);
    const Finding* finding = all.finding("side_bows");
    ASSERT_TRUE(finding);
    EXPECT_NEAR(*numberAt(finding->values, "bow_mm"), all.moulds[0]->pressure.bowMm, 1e-9);
    how.bracketMm = *numberAt(finding->values, "wanted_mm");
    EXPECT_FALSE(mouldsOfParts({partOf(slab(1800, 620, 60))}, how).finding("side_bows")) << "what it advises helps";
}

TEST(MouldBoards, HaveNumbersOfTheirOwnInTheOrderOfAssembly)
{
    Counter counter = rimmedSlab();
    counter.filler = Filler{};
    counter.cutouts = {rectangleCutout({600, 310}, {560, 300}, 60)};
    counter.joints = {Joint{{1200, 0}, {1200, 620}, 4, {}}};
    counter.drip = Drip{{0}, 20, 8, 5, {}};
    const MouldsOfPlan all = mouldsOfParts({partOf(counter), partOf(Support{}, "S1")});
    std::set<std::string> names;
    std::size_t count = 0;
    for (const MouldPtr& mould : all.moulds) {
        int step = 1;
        EXPECT_EQ(mould->parts.front().kind, MouldPartKind::base);
        for (const MouldPart& part : mould->parts) {
            names.insert(part.name);
            ++count;
            EXPECT_TRUE(part.step == step || part.step == step + 1) << part.name;
            step = part.step;
            EXPECT_EQ(part.outline.empty(), false) << part.name;
            EXPECT_GT(part.lengthMm, 0.0) << part.name;
            EXPECT_GE(part.lengthMm, part.widthMm - 1e-9) << part.name;
            EXPECT_GT(part.thicknessMm, 0.0) << part.name;
        }
    }
    EXPECT_EQ(names.size(), count);
}

TEST(MouldBoards, FindingsOfWhatTheStoreAndTheSheetsCannotGive)
{
    const MouldsOfPlan all = mouldsOfParts({partOf(slab(2450, 620, 60))});
    ASSERT_TRUE(all.finding("base_longer_than_sheet"));
    EXPECT_NEAR(*numberAt(all.finding("base_longer_than_sheet")->values, "length_mm"), 2450 + 116, 1e-9);
    ASSERT_TRUE(all.finding("strip_below_store"));
    EXPECT_EQ(*numberAt(all.finding("strip_below_store")->values, "strips"), 4.0);
    EXPECT_FALSE(mouldsOfParts({partOf(slab(1800, 620, 80))}).finding("strip_below_store"));
    EXPECT_FALSE(mouldsOfParts({partOf(slab(2384, 620, 80))}).finding("base_longer_than_sheet"));
    Moulding how;
    how.draftDeg = 0.5;
    Counter counter = slab(1800, 620, 60);
    EXPECT_FALSE(mouldsOfParts({partOf(counter)}, how).finding("former_no_draft")) << "no former";
    counter.cutouts = {rectangleCutout({600, 310}, {560, 400})};
    EXPECT_TRUE(mouldsOfParts({partOf(counter)}, how).finding("former_no_draft"));
    how.former = FormerStuff::foam;
    EXPECT_FALSE(mouldsOfParts({partOf(counter)}, how).finding("former_no_draft"));
    counter.steel = Steel{};
    counter.steel->mesh = Mesh{4, 50, 17, {}, SteelMaterial::steel};
    counter.rebate = Rebate{{2}, 44, 8, {}};
    ASSERT_TRUE(mouldsOfParts({partOf(counter)}).finding("rebate_near_steel"));
    counter.steel->mesh->coverMm = 18;
    EXPECT_FALSE(mouldsOfParts({partOf(counter)}).finding("rebate_near_steel"));
}

}  // namespace yardcast
