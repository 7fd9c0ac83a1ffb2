#include "core/remedy/attempt_tools.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace yardcast {

namespace {

/// As validation has it: bedding and a pad make up for a support that ends below the slab.
constexpr double kBearsWithinMm = kBeddingMm + kDefaultPadMm;
/// A strip that gives way keeps at least this. Common practice, no source.
constexpr double kLeastStripMm = 75.0;
constexpr double kStripBarMm = 8.0;
constexpr double kStripBarSpacingMm = 40.0;
constexpr double kStripBarEndMm = 30.0;
/// How far the bars go beyond the cutout to be anchored, in diameters. Common practice, no source.
constexpr double kStripBarAnchorage = 40.0;

struct Clearances {
    double front = 0.0;
    double behind = 0.0;
    double left = 0.0;
    double right = 0.0;
};

/// Strips about a cutout, by boxes.
std::optional<Clearances> clearancesOf(const Counter& counter, const Cutout& cutout)
{
    const auto slab = boundsOf(Ring(counter.outline));
    const auto hole = boundsOf(cutoutRing(cutout));
    if (!slab || !hole) return std::nullopt;
    return Clearances{hole->low.y - slab->low.y, slab->high.y - hole->high.y, hole->low.x - slab->low.x,
                      slab->high.x - hole->high.x};
}

}  // namespace

const CaseResult* worstCase(const CastingStrength& strength, const Finding& finding)
{
    const std::string word = wordAt(finding.values, "case");
    const auto found = std::find_if(strength.cases.begin(), strength.cases.end(),
                                    [&](const CaseResult& result) { return word == strengthCaseWord(result.which); });
    if (found != strength.cases.end()) return &*found;
    return strength.worst();
}

bool isPulledAtFace(const Finding& finding) { return numberAt(finding.values, "tension_at_face").value_or(0.0) > 0.0; }

const Cutout* findCutout(const Counter& counter, const std::string& id)
{
    const auto found = std::find_if(counter.cutouts.begin(), counter.cutouts.end(),
                                    [&](const Cutout& cutout) { return cutout.id == id; });
    return found == counter.cutouts.end() ? nullptr : &*found;
}

std::vector<const Part*> bearersOf(const Plan& plan, const Part& counter)
{
    std::vector<const Part*> bearers;
    const double underside = levelsOf(plan, counter).lowMm;
    const Region slab = regionOf(footprint(counter));
    for (const PartPtr& part : plan.parts) {
        if (part->kind() != PartKind::support && part->kind() != PartKind::panel) continue;
        const double gap = underside - levelsOf(plan, *part).highMm;
        if (gap < -1.0 || gap > kBearsWithinMm) continue;
        if (!intersect(slab, regionOf(footprint(*part))).empty()) bearers.push_back(part.get());
    }
    return bearers;
}

const Part* nearestBearer(const Plan& plan, const Part& counter, Point own)
{
    const Part* nearest = nullptr;
    double least = std::numeric_limits<double>::infinity();
    for (const Part* bearer : bearersOf(plan, counter)) {
        const double away = std::abs(counter.place.toOwn(middleOf(*bearer)).x - own.x);
        if (away < least) {
            least = away;
            nearest = bearer;
        }
    }
    return nearest;
}

Point middleOf(const Part& part)
{
    const auto box = boundsOf(footprint(part));
    return box ? box->centre() : part.place.at;
}

Point awayFromStrip(const Counter& counter, const Cutout& cutout, PlaceKind strip)
{
    const auto clear = clearancesOf(counter, cutout);
    if (!clear) return {};
    const auto wayOf = [](double opposite, Point way) { return opposite > kLeastStripMm ? way : Point{}; };
    switch (strip) {
    case PlaceKind::stripInFront: return wayOf(clear->behind, {0.0, 1.0});
    case PlaceKind::stripBehind: return wayOf(clear->front, {0.0, -1.0});
    case PlaceKind::stripLeft: return wayOf(clear->right, {1.0, 0.0});
    case PlaceKind::stripRight: return wayOf(clear->left, {-1.0, 0.0});
    case PlaceKind::corner:
        return clear->front < clear->behind ? wayOf(clear->behind, {0.0, 1.0}) : wayOf(clear->front, {0.0, -1.0});
    default: return {};
    }
}

std::optional<Rib> ribAlong(const Part& counterPart, const Counter& counter, const Part& under, double widthMm)
{
    Ring ring = footprint(under);
    if (ring.size() < 4) return std::nullopt;
    for (Point& p : ring) p = counterPart.place.toOwn(p);
    const double first = distance(ring[0], ring[1]);
    const double second = distance(ring[1], ring[2]);
    const bool alongFirst = first >= second;
    Point from = (alongFirst ? ring[0] + ring[3] : ring[0] + ring[1]) * 0.5;
    Point to = (alongFirst ? ring[1] + ring[2] : ring[2] + ring[3]) * 0.5;
    const double length = distance(from, to);
    const auto slab = boundsOf(Ring(counter.outline));
    if (!(length > 0.0) || !slab) return std::nullopt;
    // Right across the slab, so that it meets the rims at both ends, but not beyond the outline.
    const Point along = (to - from) * (1.0 / length);
    const auto reach = [&](Point way) {
        double share = std::numeric_limits<double>::infinity();
        if (way.x > 1e-9) share = std::min(share, (slab->high.x - from.x) / way.x);
        if (way.x < -1e-9) share = std::min(share, (slab->low.x - from.x) / way.x);
        if (way.y > 1e-9) share = std::min(share, (slab->high.y - from.y) / way.y);
        if (way.y < -1e-9) share = std::min(share, (slab->low.y - from.y) / way.y);
        return share;
    };
    const double forwards = reach(along);
    const double backwards = reach(along * -1.0);
    if (!std::isfinite(forwards) || !std::isfinite(backwards) || forwards + backwards <= 0.0) return std::nullopt;
    const Point start = from - along * backwards;
    const Point end = from + along * forwards;
    return Rib{start, end, std::max(widthMm, std::min(first, second)), {}};
}

std::optional<BarGroup> barsAlongStrip(const Counter& counter, const PlaceName& place, const Finding& finding)
{
    const Cutout* cutout = findCutout(counter, place.a);
    if (cutout == nullptr) return std::nullopt;
    const auto clear = clearancesOf(counter, *cutout);
    const auto slab = boundsOf(Ring(counter.outline));
    const auto hole = boundsOf(cutoutRing(*cutout));
    if (!clear || !slab || !hole) return std::nullopt;
    const double anchor = kStripBarAnchorage * kStripBarMm;
    const double fromX = std::max(slab->low.x + kStripBarEndMm, hole->low.x - anchor);
    const double toX = std::min(slab->high.x - kStripBarEndMm, hole->high.x + anchor);
    const double fromY = std::max(slab->low.y + kStripBarEndMm, hole->low.y - anchor);
    const double toY = std::min(slab->high.y - kStripBarEndMm, hole->high.y + anchor);

    BarGroup bars;
    bars.diameterMm = kStripBarMm;
    bars.spacingMm = kStripBarSpacingMm;
    double strip = 0.0;
    switch (place.kind) {
    case PlaceKind::stripInFront:
        strip = clear->front;
        bars.from = {fromX, slab->low.y + strip / 2};
        bars.to = {toX, slab->low.y + strip / 2};
        break;
    case PlaceKind::stripBehind:
        strip = clear->behind;
        bars.from = {fromX, slab->high.y - strip / 2};
        bars.to = {toX, slab->high.y - strip / 2};
        break;
    case PlaceKind::stripLeft:
        strip = clear->left;
        bars.from = {slab->low.x + strip / 2, fromY};
        bars.to = {slab->low.x + strip / 2, toY};
        break;
    case PlaceKind::stripRight:
        strip = clear->right;
        bars.from = {slab->high.x - strip / 2, fromY};
        bars.to = {slab->high.x - strip / 2, toY};
        break;
    default: return std::nullopt;
    }
    bars.count = strip >= 2 * kStripBarEndMm + kStripBarSpacingMm ? 2 : 1;
    const bool atFace = isPulledAtFace(finding);
    const bool deep = counter.rim && cutout->rimMm.value_or(0.0) > 0.0;
    const double depth = deep ? fullDepthMm(counter) : counter.thicknessMm;
    bars.coverMm = atFace ? kLeastCoverMm : std::max(kLeastCoverMm, depth - kLeastCoverMm - kStripBarMm);
    return bars;
}

}  // namespace yardcast
