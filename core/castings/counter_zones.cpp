#include "core/castings/counter_zones.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/edge_strips.h"

namespace yardcast {

namespace {

/// How far a joint is drawn past its ends at least, so that it cuts through.
constexpr double kLeastJointExtensionMm = 5.0;
/// A joint without a gap still divides.
constexpr double kLeastJointWidthMm = 0.01;

bool isSize(double mm) { return mm > 0.0 && mm <= kLargestCoordinateMm; }
bool isPlace(double mm) { return std::abs(mm) <= kLargestCoordinateMm; }
bool isPlace(Point p) { return isPlace(p.x) && isPlace(p.y); }
bool isPlace(const Ring& ring)
{
    return std::all_of(ring.begin(), ring.end(), [](Point p) { return isPlace(p); });
}

/// The parallel curve of a cutout: the same shape, larger, its corners rounder by the rim.
Ring grownCutoutRing(Cutout cutout, double rimMm)
{
    const double radius = std::clamp(cutout.cornerRadiusMm.value_or(0.0), 0.0,
                                     std::max(0.0, std::min(cutout.size.width, cutout.size.depth) / 2));
    cutout.size.width += 2 * rimMm;
    cutout.size.depth += 2 * rimMm;
    cutout.cornerRadiusMm = radius + rimMm;
    cutout.diameterMm += 2 * rimMm;
    return cutoutRing(cutout);
}

bool isComputable(const Counter& counter)
{
    if (counter.outline.size() < 3 || !isPlace(counter.outline)) return false;
    if (!isSize(counter.thicknessMm) || !isPlace(counter.topMm)) return false;
    if (counter.rim && (!isSize(counter.rim->depthMm) || !isSize(counter.rim->widthMm))) return false;
    if (counter.filler && !(counter.filler->densityKgM3 >= 0.0 && counter.filler->densityKgM3 <= 1e5)) return false;
    if (counter.drip && (!(counter.drip->fromEdgeMm >= 0.0) || !isPlace(counter.drip->fromEdgeMm) ||
                         !isSize(counter.drip->widthMm) || !isSize(counter.drip->depthMm)))
        return false;
    if (counter.rebate && (!isSize(counter.rebate->widthMm) || !isSize(counter.rebate->depthMm))) return false;
    for (const Rib& rib : counter.ribs) {
        if (!isPlace(rib.from) || !isPlace(rib.to) || !isSize(rib.widthMm)) return false;
    }
    for (const Cutout& cutout : counter.cutouts) {
        const double rim = std::max(0.0, cutout.rimMm.value_or(0.0));
        if (!isPlace(rim) || !isPlace(cutoutRing(cutout)) || !isPlace(grownCutoutRing(cutout, rim))) return false;
    }
    for (const Joint& joint : counter.joints) {
        const double gap = joint.gapMm.value_or(kDefaultJointGapMm);
        if (!isPlace(joint.from) || !isPlace(joint.to) || !(gap >= 0.0) || !isPlace(gap)) return false;
    }
    return true;
}

/// Rings as an operand of a boolean, which unites them in passing.
Region asOperand(std::vector<Ring> rings)
{
    Region region;
    region.reserve(rings.size());
    for (Ring& ring : rings) region.push_back({std::move(ring), {}});
    return region;
}

std::vector<Ring> cutoutRimRings(const Counter& counter)
{
    std::vector<Ring> rings;
    for (const Cutout& cutout : counter.cutouts) {
        const double rim = cutout.rimMm.value_or(0.0);
        if (rim > 0.0) rings.push_back(grownCutoutRing(cutout, rim));
    }
    return rings;
}

void addZone(std::vector<Zone>& zones, ZoneKind kind, Region region, double fromMm, double toMm)
{
    if (!region.empty()) zones.push_back({kind, std::move(region), fromMm, toMm});
}

/// Concrete of which a strip is taken away: `depthMm` from the face or from the underside.
struct Cutback {
    Region strips;
    double depthMm = 0.0;
    bool atFace = false;
};

bool hasRoomFor(const Zone& zone, const Cutback& cutback)
{
    return zone.isConcrete() && zone.depthMm() - cutback.depthMm >= kLeastLeftMm;
}

void cutBack(std::vector<Zone>& zones, const Cutback& cutback, bool foamBelowField)
{
    if (cutback.strips.empty()) return;
    std::vector<Zone> made;
    for (Zone& zone : zones) {
        const bool foamBelow = !cutback.atFace && foamBelowField && zone.kind == ZoneKind::field;
        Region lower = hasRoomFor(zone, cutback) && !foamBelow ? intersect(zone.region, cutback.strips) : Region{};
        if (lower.empty()) {
            made.push_back(std::move(zone));
            continue;
        }
        Zone rest = zone;
        rest.region = subtract(zone.region, cutback.strips);
        if (!rest.region.empty()) made.push_back(std::move(rest));
        zone.region = std::move(lower);
        if (cutback.atFace) {
            zone.fromMm += cutback.depthMm;
        } else {
            zone.toMm -= cutback.depthMm;
            zone.grooveMm = cutback.depthMm;
        }
        made.push_back(std::move(zone));
    }
    zones = std::move(made);
}

void cutGrooves(CounterSolid& solid, const Counter& counter)
{
    const bool foamBelowField = counter.filler && solid.deepestMm > counter.thicknessMm;
    if (counter.drip && !counter.drip->edges.empty()) {
        const Drip& drip = *counter.drip;
        const double from = std::max(0.0, drip.fromEdgeMm);
        Region strips = asOperand(stripsAlongEdges(counter.outline, from + drip.widthMm, drip.edges));
        if (from > 0.0) strips = subtract(strips, asOperand(stripsAlongEdges(counter.outline, from, drip.edges)));
        cutBack(solid.zones, {std::move(strips), drip.depthMm, false}, foamBelowField);
    }
    if (counter.rebate && !counter.rebate->edges.empty()) {
        const Rebate& rebate = *counter.rebate;
        cutBack(solid.zones, {asOperand(stripsAlongEdges(counter.outline, rebate.widthMm, rebate.edges)),
                              rebate.depthMm, true}, foamBelowField);
    }
}

void makeZones(CounterSolid& solid, const Counter& counter)
{
    const double thickness = counter.thicknessMm;
    const double deep = counter.rim ? std::max(counter.rim->depthMm, thickness) : thickness;
    solid.deepestMm = thickness;
    if (!(deep > thickness)) {
        addZone(solid.zones, ZoneKind::field, solid.plan, 0.0, thickness);
        return;
    }

    Region field = solid.plan;
    const auto take = [&](ZoneKind kind, std::vector<Ring> rings) {
        if (rings.empty()) return;
        const Region strips = asOperand(std::move(rings));
        Region deepened = intersect(field, strips);
        if (deepened.empty()) return;
        addZone(solid.zones, kind, std::move(deepened), 0.0, deep);
        solid.deepestMm = deep;
        field = subtract(field, strips);
    };
    take(ZoneKind::rim, stripsAlongEdges(counter.outline, counter.rim->widthMm, counter.rim->edges));
    take(ZoneKind::cutoutRim, cutoutRimRings(counter));
    std::vector<Ring> ribs;
    for (const Rib& rib : counter.ribs) ribs.push_back(stripRing(rib.from, rib.to, rib.widthMm));
    take(ZoneKind::rib, std::move(ribs));
    addZone(solid.zones, ZoneKind::field, field, 0.0, thickness);
    if (counter.filler) addZone(solid.zones, ZoneKind::filler, field, thickness, deep);
}

}  // namespace

CounterSolid counterSolid(const Counter& counter)
{
    CounterSolid solid;
    if (!isComputable(counter)) return solid;

    std::vector<Ring> openings;
    for (const Cutout& cutout : counter.cutouts) openings.push_back(cutoutRing(cutout));
    solid.plan = subtract(asOperand({counter.outline}), asOperand(std::move(openings)));
    if (solid.plan.empty()) return solid;

    makeZones(solid, counter);
    cutGrooves(solid, counter);
    return solid;
}

std::vector<Region> counterPieces(const Counter& counter, const Region& plan)
{
    std::vector<Ring> gaps;
    for (const Joint& joint : counter.joints) {
        const double gap = joint.gapMm.value_or(kDefaultJointGapMm);
        gaps.push_back(stripRing(joint.from, joint.to, std::max(gap, kLeastJointWidthMm),
                                 std::max(gap, kLeastJointExtensionMm)));
    }
    const Region divided = gaps.empty() ? plan : subtract(plan, asOperand(std::move(gaps)));

    struct Placed {
        long long x;
        long long y;
        Region region;
    };
    std::vector<Placed> pieces;
    for (const Polygon& polygon : divided) {
        const AreaMoments m = moments(polygon);
        if (!(m.areaMm2 >= kSliverMm2)) continue;
        const Point c = m.centroid();
        pieces.push_back({std::llround(c.x), std::llround(c.y), {polygon}});
    }
    std::stable_sort(pieces.begin(), pieces.end(),
                     [](const Placed& a, const Placed& b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    std::vector<Region> regions;
    for (Placed& piece : pieces) regions.push_back(std::move(piece.region));
    return regions;
}

}  // namespace yardcast
