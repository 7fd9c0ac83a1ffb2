#include <algorithm>
#include <cmath>

#include "core/plan/validation/report.h"

namespace yardcast::validation {

namespace {

constexpr double kLeastAreaMm2 = 100.0;

constexpr Range kDepth{10.0, 500.0, "mm"};
constexpr Range kStrip{5.0, 5000.0, "mm"};  ///< width of a rim, rib or rebate
constexpr Range kGroove{1.0, 500.0, "mm"};  ///< width and depth of a drip groove, depth of a rebate

void checkOutline(const Counter& counter, Subject& subject)
{
    const Ring& outline = counter.outline;
    if (!subject.count("outline", outline.size(), kMostCorners) || !subject.points("outline", outline)) return;
    if (outline.size() < 3) {
        subject.addUnusable("outline_few_corners", "outline", {{"count", static_cast<double>(outline.size())}});
        return;
    }
    const Box box = *boundsOf(outline);
    if (box.width() > kLongestMm || box.height() > kLongestMm) {
        subject.addUnusable("outline_too_large", "outline",
                            {{"width_mm", box.width()}, {"depth_mm", box.height()}, {"most_mm", kLongestMm}});
        return;
    }
    if (const auto crossing = selfCrossing(outline)) {
        subject.addUnusable("outline_crosses_itself", "outline",
                            {{"edge", static_cast<double>(crossing->first)},
                             {"other_edge", static_cast<double>(crossing->second)}});
        return;
    }
    const double area = std::abs(signedArea(outline));
    if (area < kLeastAreaMm2) subject.addUnusable("outline_no_area", "outline", {{"area_mm2", area}});
}

/// Lists of edges name edges of the outline.
void checkEdges(const char* code, Severity severity, const std::string& key, const std::vector<int>& edges,
                const Counter& counter, Subject& subject)
{
    if (!subject.count(key, edges.size(), kMostCorners)) return;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const int edge = edges[i];
        if (edge >= 0 && static_cast<std::size_t>(edge) < counter.outline.size()) continue;
        subject.add(code, severity, join(key, i),
                    {{"edge", static_cast<double>(edge)},
                     {"last_edge", static_cast<double>(counter.outline.size()) - 1.0}});
    }
}

void checkRim(const Counter& counter, Subject& subject)
{
    const Rim& rim = *counter.rim;
    const bool depth = subject.number("rim/depth_mm", rim.depthMm, kDepth);
    const bool width = subject.number("rim/width_mm", rim.widthMm, kStrip);
    if (depth && rim.depthMm < counter.thicknessMm) {
        subject.add("rim_shallower_than_slab", Severity::stop, "rim/depth_mm",
                    {{"depth_mm", rim.depthMm}, {"thickness_mm", counter.thicknessMm}});
    }
    if (const auto box = boundsOf(counter.outline); width && box && subject.usable()) {
        const double most = std::min(box->width(), box->height());
        if (rim.widthMm > most) {
            subject.add("rim_too_wide", Severity::caution, "rim/width_mm",
                        {{"width_mm", rim.widthMm}, {"most_mm", most}});
        }
    }
    if (rim.edges) checkEdges("rim_edge_unknown", Severity::stop, "rim/edges", *rim.edges, counter, subject);
}

void checkDrip(const Counter& counter, Subject& subject)
{
    const Drip& drip = *counter.drip;
    const bool from = subject.number("drip/from_edge_mm", drip.fromEdgeMm, {0.0, kLongestMm, "mm"});
    const bool width = subject.number("drip/width_mm", drip.widthMm, kGroove);
    const bool depth = subject.number("drip/depth_mm", drip.depthMm, kGroove);
    checkEdges("drip_edge_unknown", Severity::stop, "drip/edges", drip.edges, counter, subject);
    if (!from || !width || !depth || !subject.usable()) return;
    if (drip.depthMm > fullDepthMm(counter) / 2) {
        subject.add("drip_deep", Severity::caution, "drip/depth_mm",
                    {{"depth_mm", drip.depthMm}, {"thickness_mm", fullDepthMm(counter)}});
    }
    const double reach = drip.fromEdgeMm + drip.widthMm;
    const bool foamBelow = counter.filler && counter.rim && counter.rim->depthMm > counter.thicknessMm;
    if (!foamBelow) return;
    for (const int edge : drip.edges) {
        const auto& chosen = counter.rim->edges;
        const bool rimmed = !chosen || std::find(chosen->begin(), chosen->end(), edge) != chosen->end();
        if (rimmed && reach <= counter.rim->widthMm) continue;
        subject.add("drip_in_foam", Severity::caution, "drip",
                    {{"reach_mm", reach}, {"rim_mm", rimmed ? counter.rim->widthMm : 0.0},
                     {"edge", static_cast<double>(edge)}});
        return;
    }
}

void checkRebate(const Counter& counter, Subject& subject)
{
    const Rebate& rebate = *counter.rebate;
    const bool width = subject.number("rebate/width_mm", rebate.widthMm, kStrip);
    const bool depth = subject.number("rebate/depth_mm", rebate.depthMm, kGroove);
    checkEdges("rebate_edge_unknown", Severity::stop, "rebate/edges", rebate.edges, counter, subject);
    if (!width || !depth || !subject.usable()) return;
    if (rebate.depthMm > counter.thicknessMm / 2) {
        subject.add("rebate_deep", Severity::caution, "rebate/depth_mm",
                    {{"depth_mm", rebate.depthMm}, {"thickness_mm", counter.thicknessMm}});
    }
}

/// A line that is one; `key` names the object it belongs to.
bool checkLine(const std::string& key, Point from, Point to, Subject& subject)
{
    const bool begin = subject.point(join(key, "from"), from);
    const bool end = subject.point(join(key, "to"), to);
    if (!begin || !end) return false;
    if (distance(from, to) >= kTouchMm) return true;
    subject.add("line_no_length", Severity::stop, key);
    return false;
}

void checkCutout(const Cutout& cutout, const std::string& key, Subject& subject)
{
    subject.point(join(key, "centre"), cutout.centre);
    constexpr Range kOpening{1.0, kLongestMm, "mm"};
    if (cutout.shape == CutoutShape::circle) {
        subject.number(join(key, "diameter_mm"), cutout.diameterMm, kOpening);
    } else {
        const bool width = subject.number(join(key, "size/0"), cutout.size.width, kOpening);
        const bool depth = subject.number(join(key, "size/1"), cutout.size.depth, kOpening);
        const double radius = cutout.cornerRadiusMm.value_or(0.0);
        const double most = std::min(cutout.size.width, cutout.size.depth) / 2;
        if (subject.number(join(key, "corner_radius_mm"), radius, {0.0, kLongestMm, "mm"}) && width && depth
            && radius > most + 1e-9) {
            subject.add("corner_radius_large", Severity::caution, join(key, "corner_radius_mm"),
                        {{"cutout", cutout.id}, {"radius_mm", radius}, {"most_mm", most}});
        }
    }
    subject.number(join(key, "turn_deg"), cutout.turnDeg.value_or(0.0), {-36'000.0, 36'000.0, "deg"});
    subject.number(join(key, "rim_mm"), cutout.rimMm.value_or(0.0), {0.0, 5000.0, "mm"});
}

void checkMembers(const Counter& counter, Subject& subject)
{
    if (!subject.count("ribs", counter.ribs.size(), kMostMembers)
        || !subject.count("cutouts", counter.cutouts.size(), kMostMembers)
        || !subject.count("joints", counter.joints.size(), kMostMembers)
        || !subject.count("loads", counter.loads.size(), kMostMembers)) {
        return;
    }
    for (std::size_t i = 0; i < counter.ribs.size(); ++i) {
        const std::string key = join("ribs", i);
        checkLine(key, counter.ribs[i].from, counter.ribs[i].to, subject);
        subject.number(join(key, "width_mm"), counter.ribs[i].widthMm, kStrip);
    }
    for (std::size_t i = 0; i < counter.cutouts.size(); ++i) {
        checkCutout(counter.cutouts[i], join("cutouts", i), subject);
    }
    for (std::size_t i = 0; i < counter.joints.size(); ++i) {
        const Joint& joint = counter.joints[i];
        checkLine(join("joints", i), joint.from, joint.to, subject);
        subject.number(join(join("joints", i), "gap_mm"), joint.gapMm.value_or(kDefaultJointGapMm), {0.0, 100.0, "mm"});
    }
    for (std::size_t i = 0; i < counter.loads.size(); ++i) {
        const PlacedLoad& load = counter.loads[i];
        const std::string key = join("loads", i);
        subject.point(join(key, "centre"), load.centre);
        subject.number(join(key, "size/0"), load.size.width, {0.0, kLongestMm, "mm"});
        subject.number(join(key, "size/1"), load.size.depth, {0.0, kLongestMm, "mm"});
        subject.number(join(key, "mass_kg"), load.massKg, {0.0, 5000.0, "kg"});
    }
}

void checkLift(const Lift& lift, Subject& subject)
{
    subject.number("lift/age_h", lift.ageH.value_or(kDefaultLiftAgeH), {1.0, 20'000.0, "h"});
    subject.number("lift/people", lift.people.value_or(1), {1.0, 50.0, "people"});
    if (subject.count("lift/grips", lift.grips.size(), kMostMembers)) subject.points("lift/grips", lift.grips);
}

/// Filler, ribs and the rims of cutouts are as deep as the rim; without one they have no depth.
void checkNeedsRim(const Counter& counter, Subject& subject)
{
    if (counter.rim && counter.rim->depthMm > counter.thicknessMm) return;
    const auto needs = [&](const char* what, const std::string& key) {
        subject.add("needs_rim", Severity::caution, key, {{"what", std::string(what)}});
    };
    if (counter.filler) needs("filler", "filler");
    if (!counter.ribs.empty()) needs("ribs", "ribs");
    for (std::size_t i = 0; i < counter.cutouts.size(); ++i) {
        if (counter.cutouts[i].rimMm.value_or(0.0) > 0.0) needs("cutout_rim", join(join("cutouts", i), "rim_mm"));
    }
}

}  // namespace

void checkSteel(const Steel& steel, double depthMm, const Ring& outline, Subject& subject)
{
    constexpr Range kCover{0.0, 500.0, "mm"};
    const auto checkCover = [&](const std::string& key, double coverMm, double barMm) {
        if (coverMm + barMm <= depthMm) return;
        subject.add("cover_beyond_slab", Severity::caution, key,
                    {{"cover_mm", coverMm}, {"bar_mm", barMm}, {"thickness_mm", depthMm}});
    };
    if (steel.mesh) {
        const bool bar = subject.number("steel/mesh/bar_mm", steel.mesh->barMm, {0.5, 20.0, "mm"});
        subject.number("steel/mesh/pitch_mm", steel.mesh->pitchMm, {5.0, 500.0, "mm"});
        const bool cover = subject.number("steel/mesh/cover_mm", steel.mesh->coverMm, kCover);
        // Two layers of bars cross.
        if (bar && cover) checkCover("steel/mesh/cover_mm", steel.mesh->coverMm, 2 * steel.mesh->barMm);
    }
    if (!subject.count("steel/bars", steel.bars.size(), kMostMembers)) return;
    std::size_t all = 0;
    for (const BarGroup& bars : steel.bars) all += static_cast<std::size_t>(std::max(bars.count, 0));
    if (!subject.count("steel/bars", all, kMostBars)) return;
    for (std::size_t i = 0; i < steel.bars.size(); ++i) {
        const BarGroup& bars = steel.bars[i];
        const std::string key = join("steel/bars", i);
        const bool line = checkLine(key, bars.from, bars.to, subject);
        const bool bar = subject.number(join(key, "diameter_mm"), bars.diameterMm, {1.0, 40.0, "mm"});
        subject.number(join(key, "count"), bars.count, {1.0, static_cast<double>(kMostBars), "pieces"});
        subject.number(join(key, "spacing_mm"), bars.spacingMm.value_or(40.0), {0.0, 5000.0, "mm"});
        const bool cover = subject.number(join(key, "cover_mm"), bars.coverMm, kCover);
        if (bar && cover) checkCover(join(key, "cover_mm"), bars.coverMm, bars.diameterMm);
        if (!line || !subject.usable()) continue;
        double outside = 0.0;
        for (const Point end : {bars.from, bars.to}) {
            if (!contains(outline, end)) outside = std::max(outside, distanceToRing(outline, end));
        }
        if (outside > kTouchMm) subject.add("bar_outside", Severity::caution, key, {{"outside_mm", outside}});
    }
}

void checkCounter(const Counter& counter, Subject& subject)
{
    subject.number("top_mm", counter.topMm, {-kLongestMm, kLongestMm, "mm"});
    const bool thickness = subject.number("thickness_mm", counter.thicknessMm, kDepth);
    checkOutline(counter, subject);
    if (counter.rim) checkRim(counter, subject);
    if (counter.drip) checkDrip(counter, subject);
    if (counter.rebate) checkRebate(counter, subject);
    if (counter.filler) subject.number("filler/density_kg_m3", counter.filler->densityKgM3, {1.0, 1000.0, "kg_m3"});
    checkMembers(counter, subject);
    if (counter.steel && thickness) checkSteel(*counter.steel, fullDepthMm(counter), counter.outline, subject);
    if (counter.lift) checkLift(*counter.lift, subject);
    if (!subject.usable()) return;
    checkNeedsRim(counter, subject);
    checkLayoutOfCounter(counter, subject);
}

}  // namespace yardcast::validation
