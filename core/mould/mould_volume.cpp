#include <algorithm>
#include <cmath>

#include "core/mould/mould.h"

namespace yardcast {

namespace {

/// Boards nearer to each other touch, mm.
constexpr double kSlitMm = 0.01;

bool isInside(MouldPartKind kind)
{
    return kind == MouldPartKind::former || kind == MouldPartKind::filler || kind == MouldPartKind::core ||
           kind == MouldPartKind::drip || kind == MouldPartKind::rebate;
}

/// A part whose two ends differ is taken as the frustum of similar figures. That of a rectangle whose sides move in by the
/// same on all four is not quite similar: for 560 x 400 and 1 mm that is 0.02 mm2 of 224 000.
double volumeMm3(const MouldPart& part)
{
    const double low = areaMm2(part.outline);
    const double height = part.toMm - part.fromMm;
    if (part.topOutline.empty()) return low * height;
    const double high = areaMm2(part.topOutline);
    return (low + std::sqrt(low * high) + high) / 3 * height;
}

}  // namespace

double mouldVolumeL(const Mould& mould)
{
    Region sides;
    double topMm = HUGE_VAL;
    double baseMm = 0.0;
    double takenMm3 = 0.0;
    for (const MouldPart& part : mould.parts) {
        if (part.kind == MouldPartKind::side) {
            sides.insert(sides.end(), part.outline.begin(), part.outline.end());
            topMm = std::min(topMm, part.toMm);
        }
        if (part.kind == MouldPartKind::base) baseMm = part.toMm;
        if (isInside(part.kind)) takenMm3 += volumeMm3(part);
    }
    if (sides.empty()) return 0.0;
    // What the boards go round is the hole in them, once slits of the lattice between them are closed.
    double aroundMm2 = 0.0;
    Ring around;
    for (const Polygon& polygon : offset(sides, kSlitMm, OffsetJoin::mitre)) {
        for (const Ring& hole : polygon.holes) {
            if (std::abs(signedArea(hole)) <= aroundMm2) continue;
            aroundMm2 = std::abs(signedArea(hole));
            around = hole;
        }
    }
    aroundMm2 = areaMm2(offset(regionOf(around), kSlitMm, OffsetJoin::mitre));
    if (!(aroundMm2 > 0.0)) return 0.0;
    return (aroundMm2 * (topMm - baseMm) - takenMm3) * 1e-6;
}

}  // namespace yardcast
