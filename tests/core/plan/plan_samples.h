#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"

/// Small plans the tests of plan and io start from.
namespace yardcast::samples {

inline Part counterPart(const std::string& id, Point at, double width = 1800.0, double depth = 600.0)
{
    Counter counter;
    counter.outline = {{0, 0}, {width, 0}, {width, depth}, {0, depth}};
    counter.thicknessMm = 60.0;
    counter.mix = "worktop";
    Part part;
    part.id = id;
    part.place.at = at;
    part.body = counter;
    return part;
}

inline Part supportPart(const std::string& id, Point at, double length = 100.0, double width = 600.0)
{
    Support support;
    support.lengthMm = length;
    support.widthMm = width;
    support.heightMm = 840.0;
    support.mix = "body";
    Part part;
    part.id = id;
    part.place.at = at;
    part.body = support;
    return part;
}

inline Part appliancePart(const std::string& id, Point at, std::optional<std::string> on = std::nullopt)
{
    Appliance appliance;
    appliance.on = std::move(on);
    appliance.size = {500, 450};
    appliance.heightMm = 300;
    appliance.massKg = 30;
    Part part;
    part.id = id;
    part.place.at = at;
    part.body = appliance;
    return part;
}

inline Part frontPart(const std::string& id, Point at, double span = 1600.0)
{
    Front front;
    front.from = {0, 0};
    front.to = {span, 0};
    Part part;
    part.id = id;
    part.place.at = at;
    part.body = front;
    return part;
}

inline Part panelPart(const std::string& id, Point at)
{
    Panel panel;
    panel.mix = "worktop";
    Part part;
    part.id = id;
    part.place.at = at;
    part.body = panel;
    return part;
}

inline Cutout sink(const std::string& id, Point centre, Size size = {560, 400})
{
    Cutout cutout;
    cutout.id = id;
    cutout.purpose = CutoutPurpose::sink;
    cutout.centre = centre;
    cutout.size = size;
    return cutout;
}

inline Cutout tapHole(const std::string& id, Point centre, double diameter = 35.0)
{
    Cutout cutout;
    cutout.id = id;
    cutout.purpose = CutoutPurpose::tap;
    cutout.shape = CutoutShape::circle;
    cutout.centre = centre;
    cutout.diameterMm = diameter;
    return cutout;
}

inline Mix mix(const std::string& id)
{
    Mix mix;
    mix.id = id;
    return mix;
}

inline void put(Plan& plan, Part part) { plan.parts.push_back(std::make_shared<Part>(std::move(part))); }

/// A counter of 1.8 m with a sink on two supports, its face at 900; the supports reach its underside.
inline Plan twoSupports()
{
    Plan plan;
    plan.title = "Bench by the hedge";
    plan.mixes = {mix("worktop"), mix("body")};
    Part counter = counterPart("C1", {0, 0});
    std::get<Counter>(counter.body).cutouts = {sink("K1", {900, 300})};
    put(plan, counter);
    put(plan, supportPart("S1", {100, 0}));
    put(plan, supportPart("S2", {1600, 0}));
    return plan;
}

template <class Body>
const Body& body(const Plan& plan, const std::string& id)
{
    return std::get<Body>(findPart(plan, id)->body);
}

}  // namespace yardcast::samples
