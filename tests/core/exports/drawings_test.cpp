#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "core/exports/drawings.h"
#include "tests/core/exports/read_dxf.h"
#include "tests/samples/sample_files.h"

namespace yardcast {
namespace {

const DrawingWords kWords{"from above", "in the mould", "MIRRORED", "not mirrored", "front edge"};

std::vector<CastingPtr> castingsOfAll(const Plan& plan)
{
    std::vector<CastingPtr> all;
    for (const PartPtr& part : plan.parts) {
        for (const CastingPtr& casting : castingsOf(*part)) all.push_back(casting);
    }
    return all;
}

/// Six decimals in the file.
constexpr double kRoundMm = 1e-6;

TEST(Dxf, WhatIsWrittenIsReadBack)
{
    DxfDrawing drawing;
    drawing.layers = {{"Counters", 7, false}, {"Rims and ribs", 8, true}};
    drawing.outlines.push_back({"Counters", {{{0, 0}, 0.0}, {{100.5, 0}, 0.41421356}, {{120, 20.25}, 0.0}}, true});
    drawing.addLine("Rims and ribs", {-1e5, 3}, {4, 0.1 + 0.2});
    drawing.circles.push_back({"Counters", {12, 13}, 35});
    drawing.texts.push_back({"Counters", {7, 8}, 40, "Bar K\xC3\xBC" "che \xE2\x80\x93 1/2\n"});
    const test::ReadDxf back = test::readDxf(dxfText(drawing));
    ASSERT_TRUE(back.read);
    EXPECT_EQ(back.unit, 4);
    EXPECT_EQ(back.version, "AC1015");
    EXPECT_EQ(back.dashed.count("Counters"), 1u);
    EXPECT_FALSE(back.dashed.at("Counters"));
    EXPECT_TRUE(back.dashed.at("Rims and ribs"));
    ASSERT_EQ(back.drawing.outlines.size(), 2u);
    for (std::size_t i = 0; i < 2; ++i) {
        const DxfDrawing::Outline& read = back.drawing.outlines[i];
        EXPECT_EQ(read.layer, drawing.outlines[i].layer);
        EXPECT_EQ(read.closed, drawing.outlines[i].closed);
        ASSERT_EQ(read.corners.size(), drawing.outlines[i].corners.size());
        for (std::size_t k = 0; k < read.corners.size(); ++k) {
            EXPECT_NEAR(distance(read.corners[k].at, drawing.outlines[i].corners[k].at), 0.0, kRoundMm);
            EXPECT_NEAR(read.corners[k].bulge, drawing.outlines[i].corners[k].bulge, kRoundMm);
        }
    }
    ASSERT_EQ(back.drawing.circles.size(), 1u);
    EXPECT_DOUBLE_EQ(back.drawing.circles[0].diameterMm, 35);
    ASSERT_EQ(back.drawing.texts.size(), 1u);
    EXPECT_EQ(back.drawing.texts[0].text, "Bar K\\U+00FCche \\U+2013 1/2?");
    EXPECT_DOUBLE_EQ(back.drawing.texts[0].heightMm, 40);
}

TEST(Dxf, PlansOfTheSamplesHaveEveryPieceClosedOnItsLayer)
{
    int arcsSeen = 0;
    for (const std::string& name : test::kSamples) {
        SCOPED_TRACE(name);
        const Plan plan = test::sample(name);
        const std::vector<CastingPtr> castings = castingsOfAll(plan);
        const test::ReadDxf back = test::readDxf(dxfText(planDrawing(plan, castings, kWords)));
        ASSERT_TRUE(back.read);
        EXPECT_EQ(back.unit, 4);
        EXPECT_TRUE(back.other.empty());
        for (const DxfDrawing::Outline& outline : back.drawing.outlines) {
            EXPECT_TRUE(outline.closed);
            EXPECT_EQ(back.dashed.count(outline.layer), 1u) << outline.layer;
        }
        double faceMm2 = 0.0;
        std::size_t counters = 0, supports = 0, panels = 0, appliances = 0, fronts = 0;
        for (const CastingPtr& casting : castings) {
            if (casting->kind != PartKind::counter) continue;
            ++counters;
            faceMm2 += areaMm2(casting->outline);
        }
        for (const PartPtr& part : plan.parts) {
            supports += part->kind() == PartKind::support;
            panels += part->kind() == PartKind::panel;
            appliances += part->kind() == PartKind::appliance;
            fronts += part->kind() == PartKind::front;
        }
        const auto on = [&](const char* layer) { return test::outlinesOn(back.drawing, layer); };
        EXPECT_EQ(on("Counters").size(), counters);
        EXPECT_EQ(on("Supports").size(), supports);
        EXPECT_EQ(on("Panels").size(), panels);
        EXPECT_EQ(on("Appliances").size(), appliances);
        EXPECT_EQ(on("Fronts").size(), fronts);
        double drawnMm2 = 0.0;
        for (const DxfDrawing::Outline* outline : on("Counters")) drawnMm2 += test::areaWithArcsMm2(*outline);
        for (const DxfDrawing::Outline* outline : on("Cutouts")) {
            drawnMm2 -= std::abs(test::areaWithArcsMm2(*outline));
            for (const DxfDrawing::Corner& corner : outline->corners) arcsSeen += corner.bulge != 0.0;
        }
        for (const DxfDrawing::Circle& circle : back.drawing.circles) {
            if (circle.layer == "Cutouts") drawnMm2 -= std::numbers::pi / 4 * circle.diameterMm * circle.diameterMm;
        }
        // Chords that stand for arcs keep their area; six decimals and the lattice of 1e-4 mm remain.
        EXPECT_NEAR(drawnMm2 / faceMm2, 1.0, 1e-6);
        const std::string head = plan.title + " - from above";
        EXPECT_TRUE(std::any_of(back.drawing.texts.begin(), back.drawing.texts.end(),
                                [&](const DxfDrawing::Text& t) { return t.text == head; }));
        const std::string only = castings.front()->part;
        const DxfDrawing one = planDrawing(plan, castings, kWords, only);
        EXPECT_LT(one.outlines.size(), back.drawing.outlines.size());
        EXPECT_GE(one.outlines.size(), 1u);
    }
    EXPECT_GT(arcsSeen, 0);
}

MouldPtr aMould(const std::string& casting, bool mirrored)
{
    Mould mould;
    mould.casting = casting;
    mould.part = casting;
    mould.mirrored = mirrored;
    mould.widthMm = 600;
    mould.depthMm = 400;
    const auto box = [](double x0, double y0, double x1, double y1) {
        return regionOf({{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}});
    };
    mould.inside = subtract(box(0, 0, 600, 400), box(100, 100, 300, 250));
    const auto add = [&](MouldPartKind kind, const std::string& name, Region outline) {
        MouldPart part;
        part.kind = kind;
        part.name = name;
        part.outline = std::move(outline);
        mould.parts.push_back(std::move(part));
    };
    add(MouldPartKind::base, casting + "-1", box(-18, -18, 618, 418));
    add(MouldPartKind::side, casting + "-2", box(-18, -18, 618, 0));
    add(MouldPartKind::former, casting + "-3", box(100, 100, 300, 250));
    add(MouldPartKind::bracket, casting + "-4", unite(box(0, -100, 40, -18), box(300, -100, 340, -18)));
    mould.diagonals.push_back({{0, 0}, {600, 400}, std::hypot(600, 400)});
    return std::make_shared<const Mould>(std::move(mould));
}

TEST(Dxf, MouldsStandBesideEachOtherAndSayWhetherTheyAreMirrored)
{
    const DxfDrawing drawing = mouldDrawing({aMould("C1", true), aMould("S1", false)}, kWords);
    const test::ReadDxf back = test::readDxf(dxfText(drawing));
    ASSERT_TRUE(back.read);
    const auto on = [&](const char* layer) { return test::outlinesOn(back.drawing, layer); };
    ASSERT_EQ(on("Base boards").size(), 2u);
    EXPECT_EQ(on("Sides").size(), 2u);
    EXPECT_EQ(on("Formers").size(), 2u);
    EXPECT_EQ(on("Brackets").size(), 4u);
    EXPECT_EQ(on("Casting").size(), 4u);  // edge and cutout of each
    ASSERT_EQ(on("Diagonals").size(), 2u);
    EXPECT_NEAR(distance(on("Diagonals")[0]->corners[0].at, on("Diagonals")[0]->corners[1].at), std::hypot(600, 400),
                1e-5);
    const auto boxOf = [](const DxfDrawing::Outline& outline) {
        Ring ring;
        for (const DxfDrawing::Corner& c : outline.corners) ring.push_back(c.at);
        return *boundsOf(ring);
    };
    EXPECT_GT(boxOf(*on("Base boards")[1]).low.x, boxOf(*on("Base boards")[0]).high.x);
    EXPECT_NEAR(boxOf(*on("Base boards")[1]).width(), 636, kRoundMm);
    // Each number stands on its board.
    for (const DxfDrawing::Text& text : back.drawing.texts) {
        if (text.text != "S1-1") continue;
        EXPECT_NEAR(distance(text.middle, boxOf(*on("Base boards")[1]).centre()), 0.0, kRoundMm);
    }
    const auto countOf = [&](const std::string& words) {
        return std::count_if(back.drawing.texts.begin(), back.drawing.texts.end(),
                             [&](const DxfDrawing::Text& t) { return t.text == words; });
    };
    EXPECT_EQ(countOf("MIRRORED"), 1);
    EXPECT_EQ(countOf("not mirrored"), 1);
    EXPECT_EQ(countOf("C1 - in the mould"), 1);
    EXPECT_EQ(countOf("C1-3"), 1);
    EXPECT_EQ(countOf("front edge"), 2);
    EXPECT_TRUE(mouldDrawing({aMould("C1", true)}, kWords, "C2").outlines.empty());
    for (const DxfDrawing::Outline& outline : drawing.outlines) EXPECT_EQ(back.dashed.count(outline.layer), 1u);
}

TEST(Dxf, EveryPieceOfTheSamplesMouldsIsDrawnClosedOnALayerWithItsNumber)
{
    for (const std::string& name : test::kSamples) {
        SCOPED_TRACE(name);
        const Plan plan = test::sample(name);
        std::vector<Finding> findings;
        const std::vector<MouldPtr> moulds = mouldsOf(plan, castingsOfAll(plan), findings);
        const test::ReadDxf back = test::readDxf(dxfText(mouldDrawing(moulds, kWords)));
        ASSERT_TRUE(back.read);
        std::set<std::string> texts;
        int mirrored = 0;
        for (const DxfDrawing::Text& text : back.drawing.texts) {
            texts.insert(text.text);
            mirrored += text.text == "MIRRORED";
        }
        std::size_t bases = 0;
        double baseMm2 = 0.0;
        int wanted = 0;
        for (const MouldPtr& mould : moulds) {
            wanted += mould->mirrored;
            for (const MouldPart& part : mould->parts) {
                EXPECT_EQ(texts.count(part.name), part.outline.empty() ? 0u : 1u) << part.name;
                if (part.kind != MouldPartKind::base) continue;
                bases += part.outline.size();
                baseMm2 += areaMm2(part.outline);
            }
        }
        EXPECT_EQ(mirrored, wanted);
        double drawnMm2 = 0.0;
        EXPECT_EQ(test::outlinesOn(back.drawing, "Base boards").size(), bases);
        for (const DxfDrawing::Outline* base : test::outlinesOn(back.drawing, "Base boards"))
            drawnMm2 += test::areaWithArcsMm2(*base);
        EXPECT_NEAR(drawnMm2 / baseMm2, 1.0, 1e-6);
        for (const DxfDrawing::Outline& outline : back.drawing.outlines) {
            EXPECT_EQ(outline.closed, outline.layer != "Diagonals");
            EXPECT_EQ(back.dashed.count(outline.layer), 1u) << outline.layer;
        }
    }
}

}  // namespace
}  // namespace yardcast
