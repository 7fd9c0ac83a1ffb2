#include "tests/core/assess/plans_for_tests.h"

#include <algorithm>
#include <filesystem>
#include <stdexcept>

#include "core/io/plan_file.h"

namespace yardcast::test {

namespace {

Counter sinkCounter(double lengthMm, const std::string& mix)
{
    Counter counter;
    counter.outline = {{0, 0}, {lengthMm, 0}, {lengthMm, 620}, {0, 620}};
    counter.thicknessMm = 40;
    counter.rim = Rim{};
    counter.filler = Filler{};
    counter.mix = mix;
    Cutout sink;
    sink.id = "K1";
    sink.purpose = CutoutPurpose::sink;
    sink.centre = {lengthMm / 2, 310};
    sink.size = {460, 380};
    sink.cornerRadiusMm = 20;
    sink.rimMm = 50;
    counter.cutouts = {sink};
    counter.steel = Steel{};
    counter.steel->mesh = Mesh{};
    BarGroup bars;
    bars.from = {60, 60};
    bars.to = {lengthMm - 60, 60};
    bars.count = 2;
    counter.steel->bars = {bars};
    return counter;
}

Support coredSupport(const std::string& mix)
{
    Support support;
    support.lengthMm = 560;
    support.widthMm = 100;
    support.heightMm = 840;
    support.core = Core{400, 680, 40, 20, {}};
    support.pads = Pads{};
    support.mix = mix;
    return support;
}

Front battenFront(double lengthMm)
{
    Front front;
    front.to = {lengthMm, 0};
    Door door;
    door.fromMm = 200;
    door.toMm = 700;
    front.doors = {door};
    return front;
}

}  // namespace

std::vector<std::string> sampleNames()
{
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(YARDCAST_SOURCE_DIR "/sample-projects")) {
        if (entry.path().extension() == ".yardplan") names.push_back(entry.path().stem().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

Plan samplePlan(const std::string& name)
{
    const FileText file = readFile(YARDCAST_SOURCE_DIR "/sample-projects/" + name + ".yardplan");
    if (!file.text) throw std::runtime_error(name + ": " + file.error);
    PlanReading reading = readPlan(*file.text);
    if (!reading.plan) throw std::runtime_error(name + ": " + reading.problems.at(0).code);
    return std::move(*reading.plan);
}

Plan rowOfParts(int parts)
{
    Plan plan;
    plan.title = "Row";
    plan.mixer = Mixer{};
    plan.budget = Budget{1000.0, 5000.0, {}};
    Mix worktop;
    worktop.id = "worktop";
    worktop.extraCementPercent = 4;
    worktop.silicaFumePercent = 8;
    worktop.plasticiserPercent = 1;
    worktop.fibres = {{"AR glass", 3.0, {}}};
    Mix body;
    body.id = "body";
    plan.mixes = {worktop, body};
    for (int i = 0; i < parts; ++i) {
        Part part;
        const int kitchen = i / 5;
        const double x = 2500.0 * (kitchen % 20);
        const double y = 3000.0 * (kitchen / 20);
        switch (i % 5) {
        case 0:
        case 1:
            part.id = "C" + std::to_string(i + 1);
            part.place.at = {x + (i % 5) * 1110.0, y};
            // Every length its own, so that no two parts are alike.
            part.body = sinkCounter(1000.0 + 0.05 * i, "worktop");
            break;
        case 2:
        case 3:
            part.id = "S" + std::to_string(i + 1);
            part.place = {{x + 200.0 + (i % 5 - 2) * 1110.0, y + 30.0}, 90.0};
            part.body = coredSupport("body");
            break;
        default:
            part.id = "F" + std::to_string(i + 1);
            part.place.at = {x, y - 40.0};
            part.body = battenFront(2110.0 + 0.1 * i);
        }
        plan.parts.push_back(std::make_shared<const Part>(std::move(part)));
    }
    return plan;
}

}  // namespace yardcast::test
