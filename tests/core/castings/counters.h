#pragma once

#include "core/castings/casting.h"
#include "core/plan/parts.h"

/// Parts that several tests start from.
namespace yardcast {

inline Part partOf(PartBody body, const std::string& id = "C1")
{
    Part part;
    part.id = id;
    part.body = std::move(body);
    return part;
}

/// A plain slab without a rim.
inline Counter slab(double length, double depth, double thickness)
{
    Counter counter;
    counter.outline = {{0, 0}, {length, 0}, {length, depth}, {0, depth}};
    counter.thicknessMm = thickness;
    counter.mix = "worktop";
    return counter;
}

/// 1800 x 620 x 40 with a rim 60 deep and 60 wide all round.
inline Counter rimmedSlab()
{
    Counter counter = slab(1800, 620, 40);
    counter.rim = Rim{};
    return counter;
}

/// An L of 1800 x 600 with a leg of 600 x 900 behind its right end; the re-entrant corner is point 4.
inline Counter lShape()
{
    Counter counter;
    counter.outline = {{0, 0}, {1800, 0}, {1800, 1500}, {1200, 1500}, {1200, 600}, {0, 600}};
    counter.thicknessMm = 40;
    counter.rim = Rim{};
    return counter;
}

inline Cutout rectangleCutout(Point centre, Size size, double rimMm = 0)
{
    Cutout cutout;
    cutout.id = "K1";
    cutout.centre = centre;
    cutout.size = size;
    if (rimMm > 0) cutout.rimMm = rimMm;
    return cutout;
}

inline Cutout circleCutout(Point centre, double diameterMm)
{
    Cutout cutout;
    cutout.id = "K2";
    cutout.shape = CutoutShape::circle;
    cutout.centre = centre;
    cutout.diameterMm = diameterMm;
    return cutout;
}

inline double volumeL(const Counter& counter)
{
    double sum = 0.0;
    for (const CastingPtr& casting : castingsOf(partOf(counter))) sum += casting->volumeL;
    return sum;
}

inline double zoneAreaMm2(const Casting& casting, ZoneKind kind)
{
    double sum = 0.0;
    for (const Zone& zone : casting.zones) {
        if (zone.kind == kind) sum += areaMm2(zone.region);
    }
    return sum;
}

}  // namespace yardcast
