#include "tests/property/random_plan.h"

#include <cstdlib>

#include "core/plan/edits.h"

namespace yardcast::random {

namespace {

Point point(Source& s, double reach = 3000.0) { return {s.between(0, reach, 0.5), s.between(0, reach, 0.5)}; }

Core core(Source& s, double length, double height, double thickness)
{
    Core core;
    core.lengthMm = length - s.between(40, 80);
    core.heightMm = height - s.between(40, 80);
    core.thicknessMm = thickness - s.between(30, 35);
    core.densityKgM3 = s.between(15, 40);
    return core;
}

SteelMaterial material(Source& s) { return static_cast<SteelMaterial>(s.below(5)); }

Steel steel(Source& s)
{
    Steel steel;
    if (s.chance(60)) steel.mesh = Mesh{s.between(2, 6), s.between(30, 100), s.between(10, 25), {}, material(s)};
    for (auto n = s.below(3); n > 0; --n) {
        BarGroup bars;
        bars.from = point(s, 900);
        bars.to = point(s, 900);
        bars.diameterMm = s.between(6, 12);
        bars.count = static_cast<int>(1 + s.below(3));
        if (s.chance(50)) bars.spacingMm = s.between(20, 60);
        bars.coverMm = s.between(15, 30);
        bars.material = material(s);
        steel.bars.push_back(bars);
    }
    return steel;
}

Cutout cutout(Source& s, const std::string& id, double width, double depth)
{
    Cutout cutout;
    cutout.id = id;
    cutout.purpose = static_cast<CutoutPurpose>(s.below(5));
    cutout.centre = {s.between(0.25 * width, 0.75 * width, 0.5), s.between(0.3 * depth, 0.7 * depth, 0.5)};
    if (s.chance(50)) {
        cutout.size = {s.between(60, 300, 0.25), s.between(60, 250)};
        if (s.chance(40)) cutout.turnDeg = s.between(-90, 90, 0.5);
        if (s.chance(40)) cutout.cornerRadiusMm = s.between(0, 30);
    } else {
        cutout.shape = CutoutShape::circle;
        cutout.diameterMm = s.between(30, 150, 0.1);
    }
    if (s.chance(30)) cutout.rimMm = s.between(0, 60);
    return cutout;
}

Support support(Source& s)
{
    Support support;
    support.lengthMm = s.between(200, 700);
    support.widthMm = s.between(60, 150);
    support.baseMm = s.between(0, 20);
    support.heightMm = s.between(300, 1050, 0.5);
    if (s.chance(40)) support.core = core(s, support.lengthMm, support.heightMm, support.widthMm);
    support.mix = "body";
    support.cast = static_cast<UprightCast>(s.below(2));
    if (s.chance(50)) support.pads = Pads{static_cast<int>(1 + s.below(6)), {80, s.between(60, 120)}, {}, {}};
    return support;
}

Panel panel(Source& s)
{
    Panel panel;
    panel.lengthMm = s.between(800, 2500);
    panel.thicknessMm = s.between(40, 70);
    panel.baseMm = s.between(0, 900);
    panel.heightMm = s.between(200, 900);
    if (s.chance(30)) panel.core = core(s, panel.lengthMm, panel.heightMm, panel.thicknessMm);
    panel.mix = "worktop";
    panel.cast = static_cast<UprightCast>(s.below(2));
    if (s.chance(40)) panel.steel = steel(s);
    return panel;
}

Front front(Source& s)
{
    Front front;
    front.from = point(s, 400);
    front.to = front.from + Point{s.between(300, 2000), s.between(0, 50)};
    front.batten.run = static_cast<BattenRun>(s.below(2));
    front.batten.gapMm = s.between(4, 12, 0.5);
    front.batten.species = s.one(std::vector<std::string>{"", "larch", "oak"});
    if (s.chance(50)) front.doors.push_back(Door{s.between(0, 100), s.between(150, 280), HingeSide::right, {}});
    if (s.chance(30)) front.measured = MeasuredOpening{1500, 1501, 780, 781, 1690, 1692, {}};
    return front;
}

Appliance appliance(Source& s)
{
    Appliance appliance;
    appliance.size = {s.between(200, 800), s.between(200, 700)};
    appliance.heightMm = s.between(50, 900);
    appliance.massKg = s.between(0, 120, 0.5);
    if (s.chance(30)) appliance.surfaceC = s.between(20, 300);
    if (s.chance(30)) appliance.clearanceMm = s.between(0, 200);
    return appliance;
}

Mix mix(Source& s, const std::string& id)
{
    Mix mix;
    mix.id = id;
    mix.cementSpeed = static_cast<CementSpeed>(s.below(3));
    mix.extraCementPercent = s.between(0, 6, 0.5);
    mix.silicaFumePercent = s.between(0, 10, 0.5);
    if (s.chance(60)) mix.fibres.push_back(Fibre{"AR glass", s.between(0, 5, 0.1), {}});
    return mix;
}

Site site(Source& s)
{
    Site site;
    if (s.chance(50)) site.outline = {{{-100, -100}, {8000, -100}, {8000, 6000}, {-100, 6000}}};
    if (s.chance(50)) site.ground = Ground{s.between(-50, 50), s.between(0, 3, 0.25), s.between(0, 359), {}};
    for (auto n = s.below(4); n > 0; --n) {
        Fixture fixture;
        fixture.id = "X" + std::to_string(n);
        fixture.kind = static_cast<FixtureKind>(s.below(8));
        fixture.at = point(s, 8000);
        if (s.chance(50)) fixture.size = Size{s.between(50, 4000), s.between(50, 300)};
        site.fixtures.push_back(fixture);
    }
    return site;
}

}  // namespace

std::vector<std::uint32_t> seeds(std::uint32_t count)
{
    if (const char* given = std::getenv("YARDCAST_SEED")) {
        return {static_cast<std::uint32_t>(std::strtoul(given, nullptr, 10))};
    }
    constexpr std::uint32_t kMany = 20;
    const char* every = std::getenv("YARDCAST_EVERY");
    const unsigned long asked = every ? std::strtoul(every, nullptr, 10) : 1;
    const std::uint32_t step = count < kMany || asked < 1 || asked > count ? 1 : static_cast<std::uint32_t>(asked);
    std::vector<std::uint32_t> all;
    for (std::uint32_t seed = 1; seed <= count; seed += step) all.push_back(seed);
    return all;
}

Counter counter(Source& s)
{
    Counter c;
    const double width = s.between(1000, 3000, 0.5);
    const double depth = s.between(500, 800, 0.5);
    c.outline = {{0, 0}, {width, 0}, {width, depth}, {0, depth}};
    if (s.chance(30)) {
        const double leg = s.between(500, 800);
        c.outline = {{0, 0}, {width, 0}, {width, depth}, {leg, depth}, {leg, depth + 700}, {0, depth + 700}};
    }
    c.topMm = s.between(800, 1100, 0.5);
    c.thicknessMm = s.between(30, 80, 0.5);
    if (s.chance(60)) {
        c.rim = Rim{c.thicknessMm + s.between(0, 40), s.between(40, 80), {}, {}};
        if (s.chance(50)) c.rim->edges = std::vector<int>{0, static_cast<int>(1 + s.below(3))};
    }
    if (s.chance(50)) c.filler = Filler{s.between(15, 40), s.chance(50), {}};
    for (auto n = s.below(2); n > 0; --n) {
        const double x = s.between(100, width - 100);
        c.ribs.push_back(Rib{{x, 0}, {x, depth}, s.between(50, 120), {}});
    }
    for (std::uint32_t n = s.below(4), i = 1; i <= n; ++i) {
        c.cutouts.push_back(cutout(s, "K" + std::to_string(i), width, depth));
    }
    c.mix = "worktop";
    c.cast = static_cast<CounterCast>(s.below(2));
    if (s.chance(60)) c.steel = steel(s);
    if (s.chance(30)) c.loads.push_back({"oven", {width / 2, depth / 2}, {300, 300}, s.between(10, 90), {}});
    if (s.chance(30)) c.imposed = Imposed::person;
    if (s.chance(30)) c.lift = Lift{s.between(24, 96), {{0, 0}, {width, 0}}, 4, static_cast<CarryWay>(s.below(2)), {}};
    const auto anEdge = [&] { return static_cast<int>(s.below(static_cast<std::uint32_t>(c.outline.size()))); };
    if (s.chance(30)) c.drip = Drip{{anEdge(), anEdge()}, s.between(0, 30), s.between(5, 12), s.between(3, 8, 0.5), {}};
    if (s.chance(30)) c.rebate = Rebate{{anEdge(), anEdge()}, s.between(30, 60), s.between(4, 12, 0.5), {}};
    return c;
}

Part part(Source& s, PartKind kind)
{
    Part part;
    if (s.chance(30)) part.name = "Stück Nr. " + std::to_string(s.below(100));
    part.place.at = point(s, 6000);
    if (s.chance(50)) part.place.turnDeg = s.chance(50) ? 90.0 * s.below(4) : s.between(0, 359, 0.25);
    switch (kind) {
    case PartKind::counter: part.body = counter(s); break;
    case PartKind::support: part.body = support(s); break;
    case PartKind::panel: part.body = panel(s); break;
    case PartKind::front: part.body = front(s); break;
    case PartKind::appliance: part.body = appliance(s); break;
    }
    return part;
}

Plan plan(Source& s)
{
    Plan plan;
    plan.title = s.one(std::vector<std::string>{"", "Küche", "a \"quoted\"\n title", "\xF0\x9F\x8D\x90"});
    plan.currency = s.one(std::vector<std::string>{"EUR", "JPY"});
    plan.site = site(s);
    plan.conditions.airC = s.between(5, 35, 0.5);
    if (s.chance(50)) plan.conditions.highC = s.between(20, 38);
    plan.crew.people = static_cast<int>(1 + s.below(5));
    if (s.chance(50)) plan.mixer = Mixer{s.between(50, 200), s.between(5, 12, 0.5), 65, {}};
    if (s.chance(50)) plan.budget = Budget{s.between(100, 2000, 0.01), {}, {}};
    if (s.chance(50)) {
        Assumptions own;
        own.strippingFactor = s.between(1, 2, 0.1);
        own.mouldSurface = static_cast<MouldSurface>(s.below(3));
        if (s.chance(50)) own.suctionKpa = s.between(0, 4, 0.1);
        if (s.chance(50)) own.personN = s.between(500, 2000);
        own.exposure = static_cast<Exposure>(s.below(11));
        plan.assumptions = own;
    }
    plan.mixes = {mix(s, "worktop"), mix(s, "body")};
    const auto count = 1 + s.below(10);
    for (std::uint32_t i = 0; i < count; ++i) {
        plan = addPart(plan, part(s, static_cast<PartKind>(s.below(5))));
        auto* appliance = std::get_if<Appliance>(&plan.parts.back()->body);
        if (!appliance || !findPart(plan, "C1")) continue;
        plan = changePart(plan, plan.parts.back()->id, [](Part& p) { std::get<Appliance>(p.body).on = "C1"; });
    }
    if (s.chance(30)) plan.owned.push_back(Owned{"mesh", s.between(0, 4, 0.1), {}});
    if (s.chance(30)) plan.prices.push_back(OwnPrice{"dry_mix", 25, s.between(3, 9, 0.01), {}});
    return plan;
}

}  // namespace yardcast::random
