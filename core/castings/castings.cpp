#include <algorithm>
#include <cmath>

#include "core/castings/casting.h"
#include "core/castings/counter_zones.h"
#include "core/castings/steel_in_casting.h"
#include "core/materials/materials.h"

namespace yardcast {

namespace {

constexpr double kLPerMm3 = 1e-6;
constexpr double kKgPerMm3AtOneKgM3 = 1e-9;

/// Masses and their moments about the axes of the outline and along the depth, kg and kg mm.
struct MassMoments {
    double massKg = 0.0;
    Point momentKgMm;
    double depthMomentKgMm = 0.0;

    void add(const Zone& zone, double densityKgM3)
    {
        const AreaMoments m = moments(zone.region);
        const double kgPerMm2 = zone.depthMm() * densityKgM3 * kKgPerMm3AtOneKgM3;
        massKg += m.areaMm2 * kgPerMm2;
        momentKgMm = momentKgMm + Point{m.firstXMm3, m.firstYMm3} * kgPerMm2;
        depthMomentKgMm += m.areaMm2 * kgPerMm2 * (zone.fromMm + zone.toMm) / 2;
    }
};

/// Centre of gravity: in the plane of the outline, and depth from the face.
struct Centre {
    Point inOutline;
    double depthMm = 0.0;
};

/// Volumes, masses and the centre of gravity from zones and steel, which are there already.
Centre weigh(Casting& casting, const SteelInPiece& steel, double foamKgM3, bool foamStays)
{
    MassMoments concrete;
    MassMoments foam;
    for (const Zone& zone : casting.zones) {
        const double litres = areaMm2(zone.region) * zone.depthMm() * kLPerMm3;
        if (zone.isConcrete()) {
            casting.volumeL += litres;
            concrete.add(zone, kHardenedConcreteKgM3);
        } else {
            casting.fillerL += litres;
            if (foamStays) foam.add(zone, foamKgM3);
        }
    }
    const double netL = std::max(0.0, casting.volumeL - steel.volumeL);
    casting.steel = steel.items;
    casting.steelKg = steel.massKg;
    casting.concreteKg = netL * kHardenedConcreteKgM3 / 1000;
    casting.freshKg = netL * kFreshConcreteKgM3 / 1000;
    casting.fillerKg = foam.massKg;
    casting.massKg = casting.concreteKg + casting.steelKg + casting.fillerKg;

    // Steel stands where concrete would.
    const double displacedKgL = kHardenedConcreteKgM3 / 1000;
    const double total = concrete.massKg + foam.massKg + steel.massKg - steel.volumeL * displacedKgL;
    if (!(total > 0.0)) return {};
    return {(concrete.momentKgMm + foam.momentKgMm + steel.momentKgMm - steel.momentLMm * displacedKgL) *
                (1.0 / total),
            (concrete.depthMomentKgMm + foam.depthMomentKgMm + steel.depthMomentKgMm -
             steel.depthMomentLMm * displacedKgL) /
                total};
}

bool isSound(const Casting& casting) { return casting.volumeL > 0.0 && std::isfinite(casting.massKg); }

std::vector<CastingPtr> castingsOfCounter(const Part& part, const Counter& counter)
{
    const CounterSolid solid = counterSolid(counter);
    const std::vector<Region> pieces = counterPieces(counter, solid.plan);
    const bool undivided = counter.joints.empty() && solid.plan.size() == 1;
    std::vector<CastingPtr> castings;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        Casting casting;
        casting.id = pieces.size() == 1 ? part.id : part.id + "." + std::to_string(i + 1);
        casting.part = part.id;
        casting.kind = PartKind::counter;
        casting.mix = counter.mix;
        casting.outline = pieces[i];
        for (const Zone& zone : solid.zones) {
            Region region = undivided ? zone.region : intersect(zone.region, casting.outline);
            if (region.empty()) continue;
            if (zone.isConcrete()) casting.deepestMm = std::max(casting.deepestMm, zone.toMm + zone.grooveMm);
            casting.zones.push_back({zone.kind, std::move(region), zone.fromMm, zone.toMm, zone.grooveMm});
        }
        const SteelInPiece steel = counter.steel ? steelInPiece(*counter.steel, casting.outline) : SteelInPiece{};
        const Filler foam = counter.filler.value_or(Filler{});
        const Centre centre = weigh(casting, steel, foam.densityKgM3, foam.stays);
        casting.centroidMm = {centre.inOutline.x, centre.inOutline.y, counter.topMm - centre.depthMm};
        casting.faceAreaM2 = areaMm2(casting.outline) * 1e-6;
        casting.edgeLengthMm = perimeterMm(casting.outline[0].outer);
        for (const Ring& hole : casting.outline[0].holes) casting.cutoutEdgeLengthMm += perimeterMm(hole);
        casting.boundsMm = boundsOf(casting.outline).value_or(Box{});
        if (isSound(casting)) castings.push_back(std::make_shared<const Casting>(std::move(casting)));
    }
    return castings;
}

/// A support or a panel: a box that stands upright, its elevation along own x, its thickness along own y.
struct Upright {
    double lengthMm = 0.0;
    double heightMm = 0.0;
    double thicknessMm = 0.0;
    double baseMm = 0.0;
    const std::optional<Core>* core = nullptr;
    const std::optional<Steel>* steel = nullptr;
};

bool isComputable(const Upright& upright)
{
    const auto isSize = [](double mm) { return mm > 0.0 && mm <= kLargestCoordinateMm; };
    if (!isSize(upright.lengthMm) || !isSize(upright.heightMm) || !isSize(upright.thicknessMm)) return false;
    if (!(std::abs(upright.baseMm) <= kLargestCoordinateMm)) return false;
    if (!upright.core->has_value()) return true;
    const Core& core = **upright.core;
    const auto isCoreSize = [](double mm) { return mm >= 0.0 && mm <= kLargestCoordinateMm; };
    return isCoreSize(core.lengthMm) && isCoreSize(core.heightMm) && isCoreSize(core.thicknessMm) &&
           core.densityKgM3 >= 0.0 && core.densityKgM3 <= 1e5;
}

std::vector<Zone> uprightZones(const Upright& upright)
{
    const Size size{upright.lengthMm, upright.heightMm};
    const Point centre{size.width / 2, size.depth / 2};
    const Region box = regionOf(rectangleRing(centre, size));
    const double thickness = upright.thicknessMm;
    if (!upright.core->has_value()) return {{ZoneKind::body, box, 0.0, thickness}};
    const Core& core = **upright.core;
    const Size coreSize{std::min(core.lengthMm, size.width), std::min(core.heightMm, size.depth)};
    const Region cored = regionOf(rectangleRing(centre, coreSize));
    const double skin = (thickness - std::min(core.thicknessMm, thickness)) / 2;
    if (cored.empty() || !(thickness > 2 * skin)) return {{ZoneKind::body, box, 0.0, thickness}};

    std::vector<Zone> zones;
    Region round = subtract(box, cored);
    if (!round.empty()) zones.push_back({ZoneKind::body, std::move(round), 0.0, thickness});
    if (skin > 0.0) {
        zones.push_back({ZoneKind::body, cored, 0.0, skin});
        zones.push_back({ZoneKind::body, cored, thickness - skin, thickness});
    }
    zones.push_back({ZoneKind::core, cored, skin, thickness - skin});
    return zones;
}

std::vector<CastingPtr> castingsOfUpright(const Part& part, const std::string& mix, const Upright& upright)
{
    if (!isComputable(upright)) return {};
    Casting casting;
    casting.id = part.id;
    casting.part = part.id;
    casting.kind = part.kind();
    casting.mix = mix;
    const Size size{upright.lengthMm, upright.heightMm};
    casting.outline = regionOf(rectangleRing({size.width / 2, size.depth / 2}, size));
    if (casting.outline.empty()) return {};
    casting.zones = uprightZones(upright);
    const bool reinforced = upright.steel != nullptr && upright.steel->has_value();
    const SteelInPiece steel = reinforced ? steelInPiece(**upright.steel, casting.outline) : SteelInPiece{};
    const double foamKgM3 = upright.core->has_value() ? (*upright.core)->densityKgM3 : 0.0;
    const Centre centre = weigh(casting, steel, foamKgM3, true);
    casting.centroidMm = {centre.inOutline.x, centre.depthMm, upright.baseMm + centre.inOutline.y};
    casting.faceAreaM2 = 2 * areaMm2(casting.outline) * 1e-6;
    casting.edgeLengthMm = perimeterMm(casting.outline);
    casting.deepestMm = upright.thicknessMm;
    casting.boundsMm = boundsOf(casting.outline).value_or(Box{});
    if (!isSound(casting)) return {};
    return {std::make_shared<const Casting>(std::move(casting))};
}

}  // namespace

std::vector<CastingPtr> castingsOf(const Part& part)
{
    if (const auto* counter = std::get_if<Counter>(&part.body)) return castingsOfCounter(part, *counter);
    if (const auto* support = std::get_if<Support>(&part.body)) {
        return castingsOfUpright(part, support->mix,
                                 {support->lengthMm, support->heightMm, support->widthMm, support->baseMm,
                                  &support->core, nullptr});
    }
    if (const auto* panel = std::get_if<Panel>(&part.body)) {
        return castingsOfUpright(part, panel->mix,
                                 {panel->lengthMm, panel->heightMm, panel->thicknessMm, panel->baseMm, &panel->core,
                                  &panel->steel});
    }
    return {};
}

std::array<double, 3> centroidInPlan(const Casting& casting, const Part& part)
{
    const Point inPlan = part.place.toPlan({casting.centroidMm[0], casting.centroidMm[1]});
    return {inPlan.x, inPlan.y, casting.centroidMm[2]};
}

}  // namespace yardcast
