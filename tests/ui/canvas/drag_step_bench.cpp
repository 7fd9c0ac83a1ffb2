#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <numbers>

#include "canvas_fixture.h"

using namespace yardcast;
using namespace yardcast::ui;

/// How long one step of a drag takes on the canvas, from the pointer event to the repainted picture: median and 95th
/// percentile for moving a counter, resizing it, and moving its sink. With --check it fails past 8 ms at the median or
/// 16 ms at the 95th percentile.
namespace {

struct Times {
    std::vector<double> wallMs;
    std::vector<double> ownMs;  ///< processor time of the thread of the window: what a busy machine does not change
};

double at(std::vector<double> ms, double share)
{
    std::ranges::sort(ms);
    return ms[static_cast<std::size_t>(share * static_cast<double>(ms.size() - 1))];
}

double threadMs()
{
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

/// A drag that circles about where it began; every step is painted before the next.
Times measure(CanvasFixture& fixture, Point from, int steps)
{
    Times times;
    fixture.press(from);
    fixture.moveTo(from + Point{60.0, 0.0});
    QCoreApplication::processEvents();
    for (int i = 0; i < steps; ++i) {
        const double angle = 2.0 * std::numbers::pi * i / 48.0;
        const Point to = from + Point{60.0 * std::cos(angle), 60.0 * std::sin(angle)};
        QElapsedTimer timer;
        timer.start();
        const double before = threadMs();
        fixture.moveTo(to);
        QCoreApplication::processEvents();
        times.ownMs.push_back(threadMs() - before);
        times.wallMs.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    }
    fixture.canvas.cancelGesture();
    fixture.release(from);
    return times;
}

/// A plan of many parts: the sample over and over, side by side.
Plan many(const Plan& sample, std::size_t parts)
{
    Plan plan = sample;
    const std::size_t each = sample.parts.size();
    for (int copy = 1; plan.parts.size() < parts; ++copy) {
        for (std::size_t i = 0; i < each && plan.parts.size() < parts; ++i) {
            auto part = std::make_shared<Part>(*sample.parts[i]);
            part->id += "x" + std::to_string(copy);
            part->place.at.x += 8000.0 * (copy % 6);
            part->place.at.y += 5000.0 * (copy / 6);
            if (auto* appliance = std::get_if<Appliance>(&part->body)) appliance->on.reset();
            plan.parts.push_back(part);
        }
    }
    return plan;
}

bool report(const char* what, const Times& times)
{
    const double median = at(times.wallMs, 0.5);
    const double high = at(times.wallMs, 0.95);
    std::printf("%-28s median %6.2f ms   p95 %6.2f ms   worst %6.2f ms   processor: median %6.2f ms   p95 %6.2f ms\n",
                what, median, high, at(times.wallMs, 1.0), at(times.ownMs, 0.5), at(times.ownMs, 0.95));
    return median < 8.0 && high < 16.0;
}

}  // namespace

int main(int argc, char** argv)
{
    if (qgetenv("QT_QPA_PLATFORM").isEmpty()) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    const bool check = application.arguments().contains("--check");
    bool good = true;
    const Plan sample = samplePlan("two-level-bar.yardplan");
    for (const std::size_t parts : {sample.parts.size(), std::size_t(500)}) {
        CanvasFixture fixture(many(sample, parts));
        fixture.canvas.resize(1366 - 340, 768 - 90);
        fixture.canvas.zoomFit();
        if (parts > sample.parts.size()) fixture.canvas.setViewState({QPointF(3000, -2000), 0.15});
        fixture.settle();
        std::printf("%zu parts, canvas %d x %d\n", parts, fixture.canvas.width(), fixture.canvas.height());
        std::optional<CutoutRef> sink;
        for (const PartPtr& part : fixture.plan().parts) {
            const auto* counter = std::get_if<Counter>(&part->body);
            if (counter && !counter->cutouts.empty()) {
                sink = CutoutRef{QString::fromStdString(part->id), QString::fromStdString(counter->cutouts.front().id)};
                break;
            }
        }
        if (!sink) qFatal("the sample has no cutout");
        const Part& part = *findPart(fixture.plan(), sink->part.toStdString());
        const auto& counter = std::get<Counter>(part.body);
        const Point cutoutCentre = part.place.toPlan(counter.cutouts.front().centre);
        const Point edge = part.place.toPlan((counter.outline[0] + counter.outline[1]) * 0.5);

        fixture.selection.setParts({sink->part});
        fixture.settle();
        good &= report("move a counter", measure(fixture, part.place.toPlan({60.0, 60.0}), 300));
        fixture.selection.setParts({sink->part});
        fixture.settle();
        good &= report("resize a counter by an edge", measure(fixture, edge, 300));
        fixture.selection.setCutout(*sink);
        fixture.settle();
        good &= report("move a sink", measure(fixture, cutoutCentre, 300));
        fixture.canvas.setStage(Stage::lift);
        fixture.settle();
        good &= report("move a sink, stage Lift", measure(fixture, cutoutCentre, 300));
    }
    return check && !good ? 1 : 0;
}
