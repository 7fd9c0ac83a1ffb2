#include "ui/canvas/snap_targets.h"

#include <algorithm>

namespace yardcast::ui {

namespace {

Ring cornersOf(const Box& box)
{
    return {box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}};
}

void addRing(SnapTargets& targets, const Ring& ring, const std::string& owner)
{
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i];
        const Point b = ring[(i + 1) % ring.size()];
        targets.corners.push_back({a, owner});
        targets.middles.push_back({(a + b) * 0.5, owner});
        targets.edges.push_back({a, b, owner});
    }
}

void addShape(SnapTargets& targets, const Ring& ring, const std::string& owner)
{
    addRing(targets, ring, owner);
    if (const auto box = boundsOf(ring)) {
        targets.middles.push_back({box->centre(), owner});
        targets.boxes.push_back({*box, owner});
    }
}

/// The four sides of a rectangular cutout; a round one has a centre and bounds, and no corners.
Ring sidesOf(const Cutout& cutout)
{
    return rectangleRing(cutout.centre, cutout.size, cutout.turnDeg.value_or(0.0));
}

void addCutout(SnapTargets& targets, const Cutout& cutout, const Placement& place, const std::string& owner,
               bool withBox)
{
    if (cutout.shape == CutoutShape::circle) {
        targets.middles.push_back({place.toPlan(cutout.centre), owner});
        const Point half{cutout.diameterMm / 2, cutout.diameterMm / 2};
        const Point centre = place.toPlan(cutout.centre);
        if (withBox) targets.boxes.push_back({{centre - half, centre + half}, owner});
        return;
    }
    const Ring ring = transformed(sidesOf(cutout), place);
    addRing(targets, ring, owner);
    targets.middles.push_back({place.toPlan(cutout.centre), owner});
    const auto box = boundsOf(ring);
    if (withBox && box) targets.boxes.push_back({*box, owner});
}

}  // namespace

Box viewBox(const Plan& plan, const Part& part, const Projection& projection)
{
    const Ring ring = footprint(part);
    if (projection.isAbove()) return boundsOf(ring).value_or(Box{});
    Ring seen;
    const Levels levels = levelsOf(plan, part);
    for (const Point& p : ring) {
        for (const double z : {levels.lowMm, levels.highMm}) seen.push_back(projection.unmap(projection.map(p, z)));
    }
    return boundsOf(seen).value_or(Box{});
}

SnapTargets targetsOf(const Plan& plan, const Projection& projection, const QStringList& withoutParts)
{
    SnapTargets targets;
    for (const PartPtr& part : plan.parts) {
        if (withoutParts.contains(QString::fromStdString(part->id))) continue;
        if (!projection.isAbove()) {
            addShape(targets, cornersOf(viewBox(plan, *part, projection)), part->id);
            continue;
        }
        addShape(targets, footprint(*part), part->id);
        if (const auto* counter = std::get_if<Counter>(&part->body)) {
            for (const Cutout& cutout : counter->cutouts) addCutout(targets, cutout, part->place, part->id, false);
        }
    }
    if (!projection.isAbove()) return targets;
    if (plan.site.outline) addRing(targets, *plan.site.outline, {});
    for (const Fixture& fixture : plan.site.fixtures) {
        if (fixture.size) {
            addShape(targets, cornersOf({fixture.at, fixture.at + Point{fixture.size->width, fixture.size->depth}}),
                     fixture.id);
        } else {
            targets.middles.push_back({fixture.at, fixture.id});
        }
    }
    return targets;
}

SnapTargets targetsWithin(const Part& part, const std::string& withoutCutout)
{
    SnapTargets targets;
    const auto* counter = std::get_if<Counter>(&part.body);
    if (!counter) return targets;
    addShape(targets, counter->outline, part.id);
    if (const auto box = boundsOf(counter->outline)) {
        // The slab is no neighbour of what lies in it, its sides are.
        targets.boxes.back().box = *box;
        const Point low = box->low;
        const Point high = box->high;
        targets.boxes.push_back({{low, {low.x, high.y}}, part.id});
        targets.boxes.push_back({{{high.x, low.y}, high}, part.id});
        targets.boxes.push_back({{low, {high.x, low.y}}, part.id});
        targets.boxes.push_back({{{low.x, high.y}, high}, part.id});
    }
    for (const Cutout& cutout : counter->cutouts) {
        if (cutout.id != withoutCutout) addCutout(targets, cutout, {}, part.id, true);
    }
    return targets;
}

SnapTargets inFrame(SnapTargets targets, const Placement& frame)
{
    for (SnapPoint& p : targets.corners) p.at = frame.toOwn(p.at);
    for (SnapPoint& p : targets.middles) p.at = frame.toOwn(p.at);
    for (SnapEdge& e : targets.edges) {
        e.a = frame.toOwn(e.a);
        e.b = frame.toOwn(e.b);
    }
    targets.boxes.clear();
    return targets;
}

SnapTargets without(SnapTargets targets, const std::string& owner)
{
    const auto own = [&](const auto& target) { return target.owner == owner; };
    std::erase_if(targets.corners, own);
    std::erase_if(targets.middles, own);
    std::erase_if(targets.edges, own);
    std::erase_if(targets.boxes, own);
    return targets;
}

Moving movingOf(const Box& box) { return {cornersOf(box), box}; }

Moving movingOf(const Plan& plan, const QStringList& parts, const Projection& projection)
{
    Moving moving;
    bool first = true;
    for (const QString& id : parts) {
        const Part* part = findPart(plan, id.toStdString());
        if (!part) continue;
        const Box box = viewBox(plan, *part, projection);
        const Ring ring = projection.isAbove() ? footprint(*part) : cornersOf(box);
        moving.corners.insert(moving.corners.end(), ring.begin(), ring.end());
        if (first) {
            moving.box = box;
        } else {
            moving.box.low = {std::min(moving.box.low.x, box.low.x), std::min(moving.box.low.y, box.low.y)};
            moving.box.high = {std::max(moving.box.high.x, box.high.x), std::max(moving.box.high.y, box.high.y)};
        }
        first = false;
    }
    return moving;
}

}  // namespace yardcast::ui
