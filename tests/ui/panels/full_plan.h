#pragma once

#include "core/plan/edits.h"
#include "core/plan/plan.h"

namespace yardcast::ui {

/// A plan in which every optional thing of the file format is there.
inline Plan fullPlan()
{
    Plan plan;
    plan.title = "Everything";
    plan.site.outline = {{{-1000, -1000}, {5000, -1000}, {5000, 4000}, {-1000, 4000}}};
    plan.site.ground = Ground{10.0, 1.5, 270.0, {}};
    plan.site.fixtures = {Fixture{"W1", FixtureKind::water, {100, 2000}, std::nullopt, {}},
                          Fixture{"X1", FixtureKind::wall, {0, 3000}, Size{3000, 200}, {}}};
    plan.conditions.highC = 25.0;
    plan.conditions.lowC = 12.0;
    plan.conditions.materialsC = 18.0;
    plan.conditions.measured = {MeasuredTemperature{0.0, 21.0, {}}, MeasuredTemperature{24.0, 17.0, {}}};
    plan.season = {MonthWeather{4, 6.0, 15.0, 60.0, 8.0, {}}, MonthWeather{5, 9.0, 19.0, 60.0, 8.0, {}}};
    plan.mixer = Mixer{};
    plan.assumptions = Assumptions{.suctionKpa = 1.5, .personN = 1200.0, .source = {}};
    plan.budget = Budget{900.0, 5200.0, {}};
    Mix worktop;
    worktop.id = "worktop";
    worktop.fibres = {Fibre{"AR glass", 3.0, {}}};
    worktop.silicaFumePercent = 5.0;
    worktop.bag.freshDensityKgM3 = 2250.0;
    worktop.trial = TrialBatch{10.0, 22.5, 2.7, {}};
    Mix body;
    body.id = "body";
    body.bag.freshDensityKgM3 = 2250.0;
    Mix own;
    own.id = "own";
    own.recipe = Recipe{};
    plan.mixes = {worktop, body, own};
    plan.pouring = Pouring{.order = {"C1"}, .moulds = 3, .source = {}};
    plan.moulding = Moulding{.bracketMm = 400.0,
                             .offcuts = {Offcut{{900, 420}, 18.0, 2, {}}},
                             .shared = {SharedMould{{"C1.1", "C1.2"}, {}}},
                             .source = {}};
    plan.owned = {Owned{"mesh", 1.0, {}}};
    plan.prices = {OwnPrice{"mesh", 2.0, 14.0, {}}};

    Counter counter;
    counter.outline = {{0, 0}, {1800, 0}, {1800, 620}, {0, 620}};
    counter.mix = "worktop";
    counter.rim = Rim{60.0, 60.0, std::vector<int>{0, 1, 3}, {}};
    counter.filler = Filler{};
    counter.ribs = {Rib{{900, 0}, {900, 620}, 80.0, {}}};
    Cutout sink;
    sink.id = "K1";
    sink.purpose = CutoutPurpose::sink;
    sink.centre = {450, 310};
    sink.size = {460, 380};
    sink.turnDeg = 0.0;
    sink.cornerRadiusMm = 20.0;
    sink.rimMm = 50.0;
    Cutout tap;
    tap.id = "K2";
    tap.purpose = CutoutPurpose::tap;
    tap.shape = CutoutShape::circle;
    tap.centre = {450, 560};
    tap.diameterMm = 35.0;
    counter.cutouts = {sink, tap};
    counter.joints = {Joint{{1200, 0}, {1200, 620}, 5.0, {}}};
    Steel steel;
    steel.mesh = Mesh{};
    steel.bars = {BarGroup{{60, 60}, {1100, 60}, 8.0, 2, 50.0, 25.0, {}}};
    counter.steel = steel;
    counter.loads = {PlacedLoad{"oven", {1500, 310}, {400, 400}, 60.0, {}}};
    counter.imposed = Imposed::worktop;
    counter.lift = Lift{72.0, {{100, 0}, {1700, 0}}, 4, CarryWay::onEdge, {}};
    counter.drip = Drip{{0, 1}, 15.0, 10.0, 6.0, {}};
    counter.rebate = Rebate{{2}, 52.0, 10.0, {}};
    plan = addPart(plan, Part{"C1", "Sink slab", {{0, 0}, 0.0}, counter, {}});

    Counter second;
    second.outline = {{0, 0}, {900, 0}, {900, 620}, {0, 620}};
    second.mix = "body";
    plan = addPart(plan, Part{"C2", std::nullopt, {{1900, 0}, 0.0}, second, {}});

    Support support;
    support.mix = "body";
    support.core = Core{440.0, 680.0, 40.0, 20.0, {}};
    support.pads = Pads{4, {80, 80}, 8.0, {}};
    plan = addPart(plan, Part{"S1", "Left leg", {{0, 0}, 0.0}, support, {}});

    Panel panel;
    panel.mix = "body";
    panel.core = Core{1500.0, 200.0, 20.0, 20.0, {}};
    panel.steel = steel;
    plan = addPart(plan, Part{"P1", "Splash panel", {{0, 640}, 0.0}, panel, {}});

    Front front;
    front.to = {1800, 0};
    front.batten.species = "larch";
    front.doors = {Door{100.0, 700.0, HingeSide::left, {}}};
    front.measured = MeasuredOpening{1801, 1800, 780, 781, 1962, 1963, {}};
    plan = addPart(plan, Part{"F1", "Front", {{0, 0}, 0.0}, front, {}});

    Appliance grill;
    grill.on = "C1";
    grill.size = {500, 400};
    grill.heightMm = 300.0;
    grill.massKg = 22.0;
    grill.surfaceC = 180.0;
    grill.clearanceMm = 150.0;
    return addPart(plan, Part{"A1", "Grill (invented)", {{1200, 100}, 0.0}, grill, {}});
}

}  // namespace yardcast::ui
