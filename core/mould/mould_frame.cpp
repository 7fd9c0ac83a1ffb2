#include <algorithm>
#include <cmath>

#include "core/castings/counter_zones.h"
#include "core/mould/mould_making.h"

namespace yardcast {

using namespace mould_making;

namespace {

/// Points nearer to each other, or to the line of their neighbours, say nothing, mm.
constexpr double kSamePointMm = 0.01;
constexpr double kStraightMm = 0.02;
constexpr double kSameAreaMm2 = 1.0;

Point originOf(const Casting& casting, const Part& part)
{
    if (isCastUpright(part.body)) return {casting.boundsMm.low.x, 0.0};
    return casting.boundsMm.low;
}

/// The casting's outer ring in the own frame, with the cutouts that come through it closed again; as it is where a
/// cutout divides the slab.
Ring closedOutline(const Casting& casting, const Part& part)
{
    const Ring& outer = casting.outline[0].outer;
    const auto* counter = std::get_if<Counter>(&part.body);
    if (!counter) return outer;
    std::vector<Ring> through;
    for (const Cutout& cutout : counter->cutouts) {
        Ring ring = cutoutRing(cutout);
        const auto in = std::count_if(ring.begin(), ring.end(), [&](Point p) {
            return contains(outer, p) && distanceToRing(outer, p) > kSamePointMm;
        });
        const Box box = *boundsOf(ring);
        const bool apart = box.high.x <= casting.boundsMm.low.x || box.low.x >= casting.boundsMm.high.x ||
                           box.high.y <= casting.boundsMm.low.y || box.low.y >= casting.boundsMm.high.y;
        if (!apart && in < static_cast<std::ptrdiff_t>(ring.size())) through.push_back(std::move(ring));
    }
    if (through.empty()) return outer;
    const Region holes = uniteRings(through);
    for (const Region& piece : counterPieces(*counter, regionOf(counter->outline))) {
        if (areaMm2(intersect(piece, casting.outline)) < areaMm2(casting.outline) - kSameAreaMm2) continue;
        double inner = 0.0;
        for (const Ring& hole : casting.outline[0].holes) inner -= signedArea(hole);
        const double taken = areaMm2(piece) - areaMm2(casting.outline) + std::min(inner, 0.0);
        double cut = 0.0;
        std::vector<Ring> all;
        for (const Cutout& cutout : counter->cutouts) all.push_back(cutoutRing(cutout));
        cut = areaMm2(intersect(piece, uniteRings(all)));
        if (std::abs(taken - cut) <= kSameAreaMm2 && piece.size() == 1) return piece[0].outer;
    }
    return outer;
}

std::vector<Zone> zonesOfStanding(const Casting& casting, double heightMm)
{
    const double width = casting.boundsMm.width();
    const double thickness = casting.deepestMm;
    const Region whole = rectangle({0, 0}, {width, thickness});
    for (const Zone& zone : casting.zones) {
        if (zone.kind != ZoneKind::core) continue;
        const Box box = boundsOf(zone.region).value_or(Box{});
        const Region core = rectangle({box.low.x - casting.boundsMm.low.x, zone.fromMm},
                                      {box.high.x - casting.boundsMm.low.x, zone.toMm});
        const double low = box.low.y - casting.boundsMm.low.y;
        const double high = box.high.y - casting.boundsMm.low.y;
        std::vector<Zone> zones;
        if (low > 0.0) zones.push_back({ZoneKind::body, whole, 0.0, low});
        Region round = subtract(whole, core);
        if (!round.empty()) zones.push_back({ZoneKind::body, std::move(round), low, high});
        zones.push_back({ZoneKind::core, core, low, high});
        if (heightMm > high) zones.push_back({ZoneKind::body, whole, high, heightMm});
        return zones;
    }
    return {{ZoneKind::body, whole, 0.0, heightMm}};
}

}  // namespace

Point toMould(const Casting& casting, const Part& part, Point own)
{
    const Point origin = originOf(casting, part);
    return {isMirrored(part) ? casting.boundsMm.high.x - own.x : own.x - origin.x, own.y - origin.y};
}

Point fromMould(const Casting& casting, const Part& part, Point mould)
{
    const Point origin = originOf(casting, part);
    return {isMirrored(part) ? casting.boundsMm.high.x - mould.x : mould.x + origin.x, mould.y + origin.y};
}

namespace mould_making {

bool isMirrored(const Part& part)
{
    if (const auto* counter = std::get_if<Counter>(&part.body)) return counter->cast == CounterCast::faceDown;
    return !isCastUpright(part.body);
}

Ring ringInMould(const Casting& casting, const Part& part, const Ring& ring)
{
    Ring moved;
    moved.reserve(ring.size());
    for (const Point p : ring) moved.push_back(toMould(casting, part, p));
    if (isMirrored(part)) std::reverse(moved.begin(), moved.end());
    return moved;
}

Region regionInMould(const Casting& casting, const Part& part, const Region& region)
{
    Region moved;
    for (const Polygon& polygon : region) {
        Polygon one{ringInMould(casting, part, polygon.outer), {}};
        for (const Ring& hole : polygon.holes) one.holes.push_back(ringInMould(casting, part, hole));
        moved.push_back(std::move(one));
    }
    return moved;
}

Region rectangle(Point low, Point high)
{
    return {{{low, {high.x, low.y}, high, {low.x, high.y}}, {}}};
}

Ring tidied(Ring ring)
{
    if (signedArea(ring) < 0.0) std::reverse(ring.begin(), ring.end());
    bool changed = true;
    while (changed && ring.size() > 3) {
        changed = false;
        for (std::size_t i = 0; i < ring.size() && ring.size() > 3; ++i) {
            const Point before = ring[(i + ring.size() - 1) % ring.size()];
            const Point after = ring[(i + 1) % ring.size()];
            const bool same = distance(before, ring[i]) < kSamePointMm;
            if (!same && distanceToSegment(ring[i], before, after) >= kStraightMm) continue;
            ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(i));
            changed = true;
        }
    }
    return ring;
}

double Stretch::lengthMm() const
{
    double sum = closed ? distance(points.back(), points.front()) : 0.0;
    for (std::size_t i = 1; i < points.size(); ++i) sum += distance(points[i - 1], points[i]);
    return sum;
}

void layDown(Making& making)
{
    const Casting& casting = making.casting;
    Mould& mould = making.mould;
    mould.casting = casting.id;
    mould.part = casting.part;
    mould.mirrored = isMirrored(making.part);
    mould.standing = isCastUpright(making.part.body);
    const auto* counter = making.counter();
    making.faceUp = counter && counter->cast == CounterCast::faceUp;
    mould.widthMm = casting.boundsMm.width();
    if (mould.standing) {
        mould.heightMm = casting.boundsMm.height();
        mould.depthMm = casting.deepestMm;
        mould.zones = zonesOfStanding(casting, mould.heightMm);
        mould.inside = rectangle({0, 0}, {mould.widthMm, mould.depthMm});
        making.outline = mould.inside[0].outer;
    } else {
        mould.depthMm = casting.boundsMm.height();
        for (const Zone& zone : casting.zones) mould.heightMm = std::max(mould.heightMm, zone.toMm + zone.grooveMm);
        for (const Zone& zone : casting.zones) {
            mould.zones.push_back({zone.kind, regionInMould(casting, making.part, zone.region),
                                   making.lowMm(zone.fromMm, zone.toMm), making.highMm(zone.fromMm, zone.toMm),
                                   zone.grooveMm});
        }
        mould.inside = regionInMould(casting, making.part, casting.outline);
        making.outline = tidied(ringInMould(casting, making.part, closedOutline(casting, making.part)));
    }
    making.outlineRegion = {{making.outline, {}}};
}

}  // namespace mould_making

}  // namespace yardcast
