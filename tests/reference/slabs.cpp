#include "tests/reference/slabs.h"

#include <utility>

namespace yardcast::reference {

namespace {

Box box(double x0, double y0, double x1, double y1) { return {{x0, y0}, {x1, y1}}; }

/// A rest across the whole depth of 620.
Box across(double x, double width = 100) { return box(x, 0, x + width, 620); }

Slab plainSlab(std::string name)
{
    Slab slab;
    slab.name = std::move(name);
    slab.counter.outline = {{0, 0}, {1800, 0}, {1800, 620}, {0, 620}};
    slab.counter.thicknessMm = 40;
    return slab;
}

void addSink(Slab& slab, Point centre, double rimMm = 0.0)
{
    Cutout sink;
    sink.id = "K1";
    sink.purpose = CutoutPurpose::sink;
    sink.centre = centre;
    sink.size = {560, 400};
    if (rimMm > 0.0) sink.rimMm = rimMm;
    slab.counter.cutouts.push_back(sink);
    const double front = centre.y - 200, back = centre.y + 200;
    slab.cuts.push_back({"strip in front of K1", {centre.x, 0}, {centre.x, front}});
    slab.cuts.push_back({"strip behind K1", {centre.x, back}, {centre.x, 620}});
}

void addCut(Slab& slab, std::string name, double x, double y0 = 0, double y1 = 620)
{
    slab.cuts.push_back({std::move(name), {x, y0}, {x, y1}});
}

void addDeepRim(Slab& slab)
{
    slab.counter.thicknessMm = 30;
    slab.counter.rim = Rim{60, 60, std::nullopt, {}};
}

}  // namespace

Slab sinkSlab()
{
    Slab slab = plainSlab("sink, two rests");
    addSink(slab, {840, 290});
    slab.rests = {across(60), across(1640)};
    addCut(slab, "beside K1", 1300);
    return slab;
}

Slab sinkSlabOnThree()
{
    Slab slab = plainSlab("sink, three rests");
    addSink(slab, {620, 290});
    slab.rests = {across(60), across(1060), across(1640)};
    addCut(slab, "left of K1", 260);
    addCut(slab, "over the middle rest", 1110);
    addCut(slab, "middle of the right span", 1400);
    return slab;
}

Slab rimmedSlab()
{
    Slab slab = plainSlab("rims of 60 x 50");
    slab.counter.rim = Rim{50, 60, std::nullopt, {}};
    addSink(slab, {840, 290}, 60);
    slab.rests = {across(60), across(1640)};
    addCut(slab, "beside K1", 1300);
    return slab;
}

Slab deepRimmedSlab()
{
    Slab slab = plainSlab("field 30, rims of 60 x 60");
    addDeepRim(slab);
    slab.counter.rim->edges = std::vector<int>{0, 1, 3};
    addSink(slab, {620, 310}, 50);
    slab.rests = {across(0), across(1700)};  // only the rims bear
    addCut(slab, "middle of the field", 1250);
    return slab;
}

Slab ribbedSlab()
{
    Slab slab = plainSlab("deep rims and ribs");
    addDeepRim(slab);
    addSink(slab, {620, 310}, 50);
    slab.counter.ribs = {{{1150, 0}, {1150, 620}, 80, {}}, {{1190, 310}, {1800, 310}, 70, {}}};
    slab.rests = {across(60), across(1110, 80), across(1640)};
    addCut(slab, "over the middle rest", 1150);
    addCut(slab, "middle of the right span", 1400);
    return slab;
}

Slab overhangingSlab()
{
    Slab slab = plainSlab("overhang, middle rest without load");
    slab.rests = {across(60), across(400, 80), across(920)};
    addCut(slab, "middle of the span", 650);
    addCut(slab, "beside the last rest", 1100);
    return slab;
}

Slab twistedSlab()
{
    Slab slab = plainSlab("second rest under the front only");
    addSink(slab, {840, 310});
    slab.rests = {across(60), box(1640, 0, 1740, 250)};
    addCut(slab, "beside K1", 1300);
    return slab;
}

Slab cornerSlab()
{
    Slab slab = plainSlab("corner");
    slab.counter.outline = {{0, 0}, {1800, 0}, {1800, 620}, {620, 620}, {620, 1200}, {0, 1200}};
    addDeepRim(slab);
    slab.rests = {box(0, 1040, 620, 1140), across(560), across(1640)};
    addCut(slab, "middle of the right span", 1150);
    slab.cuts.push_back({"middle of the leg", {0, 820}, {620, 820}});
    return slab;
}

std::vector<Slab> allSlabs()
{
    return {sinkSlab(),   sinkSlabOnThree(), rimmedSlab(),  deepRimmedSlab(),
            ribbedSlab(), overhangingSlab(), twistedSlab(), cornerSlab()};
}

}  // namespace yardcast::reference
