#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/plan.h"
#include "core/structure/strength.h"

/// Plans for the tests of strength: of our own invention.
namespace yardcast::tests {

inline std::vector<Point> box(double width, double depth) { return {{0, 0}, {width, 0}, {width, depth}, {0, depth}}; }

inline Counter slab(double width, double depth, double thickness)
{
    Counter counter;
    counter.topMm = 900.0;
    counter.outline = box(width, depth);
    counter.thicknessMm = thickness;
    counter.mix = "M";
    return counter;
}

inline Cutout sink(std::string id, Point centre, Size size, double radius)
{
    Cutout cutout;
    cutout.id = std::move(id);
    cutout.purpose = CutoutPurpose::sink;
    cutout.centre = centre;
    cutout.size = size;
    cutout.cornerRadiusMm = radius;
    return cutout;
}

inline Cutout tap(std::string id, Point centre, double diameter)
{
    Cutout cutout;
    cutout.id = std::move(id);
    cutout.purpose = CutoutPurpose::tap;
    cutout.shape = CutoutShape::circle;
    cutout.centre = centre;
    cutout.diameterMm = diameter;
    return cutout;
}

class PlanMaker {
public:
    PlanMaker()
    {
        Mix mix;
        mix.id = "M";
        mix.strengthClass = "C30/37";
        plan.mixes.push_back(mix);
    }

    PlanMaker& counter(std::string id, Counter body, Placement place = {})
    {
        return add(std::move(id), std::move(body), place);
    }
    /// A support whose long side runs along y (away from the person) when `turnDeg` is 90.
    PlanMaker& support(std::string id, Point at, double length, double width, double top, double turnDeg = 0.0)
    {
        Support body;
        body.lengthMm = length;
        body.widthMm = width;
        body.baseMm = 0.0;
        body.heightMm = top;
        body.mix = "M";
        return add(std::move(id), body, {at, turnDeg});
    }
    /// A wall under a slab along y: from x - width/2 to x + width/2, from y0 to y1.
    PlanMaker& wall(std::string id, double x, double width, double y0, double y1, double top)
    {
        return support(std::move(id), {x + width / 2, y0}, y1 - y0, width, top, 90.0);
    }
    PlanMaker& add(std::string id, PartBody body, Placement place)
    {
        Part part;
        part.id = std::move(id);
        part.body = std::move(body);
        part.place = place;
        plan.parts.push_back(std::make_shared<const Part>(std::move(part)));
        return *this;
    }

    std::vector<CastingPtr> castings() const
    {
        std::vector<CastingPtr> all;
        for (const PartPtr& part : plan.parts) {
            for (CastingPtr& casting : castingsOf(*part)) all.push_back(std::move(casting));
        }
        return all;
    }
    std::vector<StrengthInput> inputs() const { return strengthInputs(plan, castings()); }
    StrengthInput input(const std::string& casting) const
    {
        for (StrengthInput& input : inputs()) {
            if (input.casting->id == casting) return std::move(input);
        }
        return {};
    }

    Plan plan;
};

/// The slab that the figures of speed are for: 2000 x 600 x 30 with a rim 60 wide and 50 deep, a sink, a tap hole and
/// three walls.
inline PlanMaker speedSlab(double sinkX = 750.0)
{
    Counter counter = slab(2000, 600, 30);
    counter.rim = Rim{};
    counter.rim->depthMm = 50;
    counter.rim->widthMm = 60;
    counter.cutouts = {sink("K1", {sinkX, 300}, {560, 400}, 20), tap("K2", {sinkX, 550}, 35)};
    PlanMaker maker;
    maker.counter("C1", counter);
    maker.wall("S1", 300, 100, 0, 600, 850).wall("S2", 1200, 100, 0, 600, 850).wall("S3", 1800, 100, 0, 600, 850);
    return maker;
}

}  // namespace yardcast::tests
