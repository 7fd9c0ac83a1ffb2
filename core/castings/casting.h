#pragma once

#include <array>
#include <memory>
#include <string>
#include <vector>

#include "core/geometry/region.h"
#include "core/plan/plan.h"

namespace yardcast {

enum class ZoneKind { field, rim, cutoutRim, rib, body, filler, core };

/// A prism of one material. For a counter the region lies in the own frame seen from above, and depths are from the
/// face down. For a support or panel the region is the elevation (own x, height above its base) and depths run along
/// own y. Concrete zones of a casting do not overlap, whatever rims and ribs meet. A rebate makes `fromMm` of a counter's
/// concrete more than 0, a drip groove its `toMm` less by `grooveMm`.
struct Zone {
    ZoneKind kind = ZoneKind::body;
    Region region;
    double fromMm = 0.0;
    double toMm = 0.0;
    double grooveMm = 0.0;  ///< depth of the drip groove below it; 0 where there is none

    double depthMm() const { return toMm - fromMm; }
    bool isConcrete() const { return kind != ZoneKind::filler && kind != ZoneKind::core; }
};

/// Steel in one casting, by diameter and material.
struct SteelItem {
    bool mesh = false;
    SteelMaterial material = SteelMaterial::steel;
    double diameterMm = 0.0;
    double pitchMm = 0.0;      ///< mesh only
    double meshAreaM2 = 0.0;   ///< mesh only: net area within the cover
    int count = 0;             ///< bars only
    double lengthMm = 0.0;     ///< bars only: of one bar, cut to the casting
    double massKg = 0.0;
};

/// One piece of concrete to pour, in the own frame of its part. Independent of where the part stands.
struct Casting {
    std::string id;         ///< the part's id, or "C1.1", "C1.2" in order along own x (then y) where joints divide it
    std::string part;
    PartKind kind = PartKind::counter;
    std::string mix;
    Region outline;         ///< counter: plan region with cutouts open; upright: elevation rectangle
    std::vector<Zone> zones;
    std::vector<SteelItem> steel;

    double volumeL = 0.0;           ///< of the concrete body, steel included, foam not
    double concreteKg = 0.0;        ///< hardened, the steel's own volume taken off
    double freshKg = 0.0;           ///< fresh concrete, likewise
    double steelKg = 0.0;
    double fillerKg = 0.0;          ///< foam that stays in the piece (filler or core)
    double fillerL = 0.0;           ///< all foam, also what is taken out again
    double massKg = 0.0;            ///< hardened concrete + steel + foam that stays
    double faceAreaM2 = 0.0;        ///< visible face (counter: top; upright: both large faces)
    double edgeLengthMm = 0.0;      ///< outer edge of the face
    double cutoutEdgeLengthMm = 0.0;
    double deepestMm = 0.0;         ///< thickness at the deepest zone
    std::array<double, 3> centroidMm{};  ///< own frame; z above the datum
    Box boundsMm;                   ///< of the outline region
};

using CastingPtr = std::shared_ptr<const Casting>;

/// The castings of one part (none for fronts and appliances). The part must be usable (validation); a part
/// that is not gives no castings. Pure; independent of the part's placement.
std::vector<CastingPtr> castingsOf(const Part& part);
/// Own-frame centroid brought to plan axes.
std::array<double, 3> centroidInPlan(const Casting& casting, const Part& part);

}  // namespace yardcast
