#include <algorithm>

#include "core/plan/validation/report.h"

namespace yardcast::validation {

namespace {

constexpr Range kLength{10.0, kLongestMm, "mm"};
constexpr Range kDepth{10.0, 500.0, "mm"};   ///< of a slab or panel
constexpr Range kLevel{-kLongestMm, kLongestMm, "mm"};
constexpr Range kFoamDensity{1.0, 1000.0, "kg_m3"};

void checkPads(const Pads& pads, Subject& subject)
{
    subject.number("pads/count", pads.count, {1.0, 100.0, "pieces"});
    subject.number("pads/size/0", pads.size.width, {5.0, 2000.0, "mm"});
    subject.number("pads/size/1", pads.size.depth, {5.0, 2000.0, "mm"});
    subject.number("pads/thickness_mm", pads.thicknessMm.value_or(kDefaultPadMm), {0.0, 300.0, "mm"});
}

struct Outer {
    double lengthMm;
    double heightMm;
    double thicknessMm;
};

void checkCore(const Core& core, const Outer& outer, Subject& subject)
{
    const struct {
        const char* key;
        double core;
        double part;
    } sizes[] = {{"core/length_mm", core.lengthMm, outer.lengthMm},
                 {"core/height_mm", core.heightMm, outer.heightMm},
                 {"core/thickness_mm", core.thicknessMm, outer.thicknessMm}};
    for (const auto& size : sizes) {
        if (!subject.number(size.key, size.core, {1.0, kLongestMm, "mm"})) continue;
        if (size.core > size.part) {
            subject.addUnusable("core_too_large", size.key, {{"core_mm", size.core}, {"part_mm", size.part}});
        } else if ((size.part - size.core) / 2 < kLeastWallMm) {
            subject.add("core_wall_thin", Severity::caution, size.key,
                        {{"wall_mm", (size.part - size.core) / 2}, {"least_mm", kLeastWallMm}});
        }
    }
    subject.number("core/density_kg_m3", core.densityKgM3, kFoamDensity);
}

bool hasLength(const char* key, Point from, Point to, Subject& subject)
{
    if (distance(from, to) >= kTouchMm) return true;
    subject.addUnusable("line_no_length", key);
    return false;
}

void checkDoors(const Front& front, double span, Subject& subject)
{
    if (!subject.count("doors", front.doors.size(), kMostMembers)) return;
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < front.doors.size(); ++i) {
        const Door& door = front.doors[i];
        const std::string key = join("doors", i);
        const bool from = subject.number(join(key, "from_mm"), door.fromMm, kLevel);
        const bool to = subject.number(join(key, "to_mm"), door.toMm, kLevel);
        if (!from || !to) continue;
        const double number = static_cast<double>(i + 1);
        if (door.toMm - door.fromMm < kTouchMm) {
            subject.add("door_no_width", Severity::stop, key, {{"door", number}});
            continue;
        }
        const double outside = std::max(-door.fromMm, door.toMm - span);
        if (outside > kTouchMm) {
            subject.add("door_outside", Severity::stop, key, {{"door", number}, {"outside_mm", outside}});
        }
        order.push_back(i);
    }
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return front.doors[a].fromMm < front.doors[b].fromMm; });
    for (std::size_t i = 1; i < order.size(); ++i) {
        const Door& left = front.doors[order[i - 1]];
        const Door& right = front.doors[order[i]];
        const double overlap = std::min(left.toMm, right.toMm) - right.fromMm;
        if (overlap <= kTouchMm) continue;
        const auto [first, second] = std::minmax(order[i - 1], order[i]);
        subject.add("doors_overlap", Severity::stop, join("doors", second),
                    {{"door", static_cast<double>(second + 1)},
                     {"other_door", static_cast<double>(first + 1)},
                     {"overlap_mm", overlap}});
    }
}

}  // namespace

void checkSupport(const Support& support, Subject& subject)
{
    const bool length = subject.number("length_mm", support.lengthMm, kLength);
    const bool width = subject.number("width_mm", support.widthMm, kLength);
    const bool height = subject.number("height_mm", support.heightMm, kLength);
    subject.number("base_mm", support.baseMm, kLevel);
    if (support.core && length && width && height) {
        checkCore(*support.core, {support.lengthMm, support.heightMm, support.widthMm}, subject);
    }
    if (support.pads) checkPads(*support.pads, subject);
}

void checkPanel(const Panel& panel, Subject& subject)
{
    const bool length = subject.number("length_mm", panel.lengthMm, kLength);
    const bool thickness = subject.number("thickness_mm", panel.thicknessMm, kDepth);
    const bool height = subject.number("height_mm", panel.heightMm, kLength);
    subject.number("base_mm", panel.baseMm, kLevel);
    if (!length || !thickness || !height) return;
    if (panel.core) checkCore(*panel.core, {panel.lengthMm, panel.heightMm, panel.thicknessMm}, subject);
    if (panel.steel) {
        const Ring elevation{{0, 0}, {panel.lengthMm, 0}, {panel.lengthMm, panel.heightMm}, {0, panel.heightMm}};
        checkSteel(*panel.steel, panel.thicknessMm, elevation, subject);
    }
}

void checkFront(const Front& front, Subject& subject)
{
    const bool from = subject.point("from", front.from);
    const bool to = subject.point("to", front.to);
    const bool bottom = subject.number("bottom_mm", front.bottomMm, kLevel);
    const bool top = subject.number("top_mm", front.topMm, kLevel);
    if (bottom && top && front.topMm - front.bottomMm < kTouchMm) {
        subject.addUnusable("front_no_height", "top_mm", {{"bottom_mm", front.bottomMm}, {"top_mm", front.topMm}});
    }
    subject.number("batten/width_mm", front.batten.widthMm, {5.0, 1000.0, "mm"});
    subject.number("batten/thickness_mm", front.batten.thicknessMm, {3.0, 200.0, "mm"});
    subject.number("batten/gap_mm", front.batten.gapMm, {0.0, 500.0, "mm"});
    subject.number("batten/bevel_deg", front.batten.bevelDeg, {-60.0, 60.0, "deg"});
    if (front.measured) {
        const MeasuredOpening& m = *front.measured;
        subject.number("measured/bottom_mm", m.bottomMm, kLength);
        subject.number("measured/top_mm", m.topMm, kLength);
        subject.number("measured/left_mm", m.leftMm, kLength);
        subject.number("measured/right_mm", m.rightMm, kLength);
        subject.number("measured/diagonal_rising_mm", m.diagonalRisingMm, {10.0, 2 * kLongestMm, "mm"});
        subject.number("measured/diagonal_falling_mm", m.diagonalFallingMm, {10.0, 2 * kLongestMm, "mm"});
    }
    if (!from || !to || !hasLength("to", front.from, front.to, subject)) return;
    const double span = distance(front.from, front.to);
    if (subject.number("to", span, {1.0, kLongestMm, "mm"})) checkDoors(front, span, subject);
}

void checkAppliance(const Appliance& appliance, Subject& subject)
{
    subject.number("size/0", appliance.size.width, kLength);
    subject.number("size/1", appliance.size.depth, kLength);
    subject.number("height_mm", appliance.heightMm, {0.0, kLongestMm, "mm"});
    subject.number("mass_kg", appliance.massKg, {0.0, 5000.0, "kg"});
    subject.number("surface_c", appliance.surfaceC.value_or(20.0), {-50.0, 1500.0, "c"});
    subject.number("clearance_mm", appliance.clearanceMm.value_or(0.0), {0.0, 5000.0, "mm"});
}

}  // namespace yardcast::validation
