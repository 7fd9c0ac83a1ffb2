#include "tests/reference/slab.h"

#include <algorithm>
#include <cmath>

#include "core/castings/counter_zones.h"
#include "core/materials/materials.h"

namespace yardcast::reference {

double weightNMm3() { return kHardenedConcreteKgM3 * 9.81e-9; }

std::vector<Zone> zonesOf(const Slab& slab)
{
    std::vector<Zone> zones = counterSolid(slab.counter).zones;
    std::erase_if(zones, [](const Zone& zone) { return !zone.isConcrete(); });
    return zones;
}

double depthAt(const std::vector<Zone>& zones, Point place)
{
    for (const Zone& zone : zones) {
        if (contains(zone.region, place)) return zone.toMm;
    }
    return 0.0;
}

double tensionMpa(const std::array<double, 3>& stress)
{
    return (stress[0] + stress[1]) / 2 + std::hypot((stress[0] - stress[1]) / 2, stress[2]);
}

namespace {

/// Corners where the region on the left turns to the right.
void addReentrantCorners(const Ring& ring, std::vector<Point>& corners)
{
    const std::size_t n = ring.size();
    for (std::size_t i = 0; i < n; ++i) {
        const Point before = ring[i] - ring[(i + n - 1) % n];
        const Point after = ring[(i + 1) % n] - ring[i];
        if (cross(before, after) < 0.0) corners.push_back(ring[i]);
    }
}

bool isNear(const std::vector<Ring>& rings, Point place, double withinMm)
{
    return std::any_of(rings.begin(), rings.end(),
                       [&](const Ring& ring) { return distanceToRing(ring, place) < withinMm; });
}

}  // namespace

CornerZones::CornerZones(const Slab& slab, double withinMm) : withinMm_(withinMm)
{
    const CounterSolid solid = counterSolid(slab.counter);
    for (const Polygon& polygon : solid.plan) {
        addReentrantCorners(polygon.outer, corners_);
        for (const Ring& hole : polygon.holes) addReentrantCorners(hole, corners_);
    }
    for (const Box& rest : slab.rests)
        rests_.push_back({rest.low, {rest.high.x, rest.low.y}, rest.high, {rest.low.x, rest.high.y}});
    Region deep;
    for (const Zone& zone : solid.zones) {
        if (zone.isConcrete() && zone.kind != ZoneKind::field) deep = unite(deep, zone.region);
    }
    // Edges of the deep strips that are edges of the slab are no steps.
    for (const Zone& zone : solid.zones) {
        if (zone.kind != ZoneKind::field || deep.empty()) continue;
        for (const Polygon& polygon : zone.region) {
            steps_.push_back(polygon.outer);
            steps_.insert(steps_.end(), polygon.holes.begin(), polygon.holes.end());
        }
    }
}

bool CornerZones::spoilFace(Point place) const
{
    return std::any_of(corners_.begin(), corners_.end(),
                       [&](Point corner) { return distance(corner, place) < withinMm_; }) ||
           isNear(rests_, place, withinMm_);
}

bool CornerZones::spoilUnderside(Point place) const { return spoilFace(place) || isNear(steps_, place, withinMm_); }

}  // namespace yardcast::reference
