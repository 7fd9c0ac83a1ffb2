#pragma once

#include <string>
#include <vector>

#include <QtTest>

#include "core/io/plan_file.h"

namespace yardcast::ui {

/// The plans that come with the program, and the names they are tested under.
inline std::vector<std::string> samplePlanNames()
{
    return {"grill-bench", "corner-kitchen", "two-level-bar"};
}

/// Fails loudly where the file is missing or unreadable: a test on an empty plan would prove nothing.
inline Plan samplePlan(const std::string& name)
{
    const std::string path = std::string(YARDCAST_SOURCE_DIR) + "/sample-projects/" + name + ".yardplan";
    const FileText file = readFile(path);
    if (!file.text) {
        qFatal("cannot read %s", path.c_str());
    }
    const PlanReading reading = readPlan(*file.text);
    if (!reading.plan || reading.plan->parts.empty()) {
        qFatal("%s is no plan with parts", path.c_str());
    }
    return *reading.plan;
}

inline PartPtr makePart(const std::string& id, PartBody body, Placement place = {})
{
    Part part;
    part.id = id;
    part.place = place;
    part.body = std::move(body);
    return std::make_shared<const Part>(std::move(part));
}

/// A counter of 1800 x 600 with a sink of 500 x 400 about (700, 310), a tap hole of 35 and a rim all round.
inline Counter sinkCounter()
{
    Counter counter;
    counter.topMm = 900.0;
    counter.outline = {{0, 0}, {1800, 0}, {1800, 600}, {0, 600}};
    counter.thicknessMm = 40.0;
    counter.rim = Rim{};
    Cutout sink;
    sink.id = "K1";
    sink.purpose = CutoutPurpose::sink;
    sink.centre = {700, 310};
    sink.size = {500, 400};
    Cutout tap;
    tap.id = "K2";
    tap.purpose = CutoutPurpose::tap;
    tap.shape = CutoutShape::circle;
    tap.centre = {1100, 540};
    tap.diameterMm = 35.0;
    counter.cutouts = {sink, tap};
    return counter;
}

}  // namespace yardcast::ui
