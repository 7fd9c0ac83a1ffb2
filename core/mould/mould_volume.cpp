#include <algorithm>
#include <cmath>
#include <optional>

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

/// Half way between two outlines whose points answer each other; nothing for others.
std::optional<Region> halfWay(const Region& low, const Region& high)
{
    if (low.size() != high.size()) return std::nullopt;
    Region middle = low;
    for (std::size_t i = 0; i < low.size(); ++i) {
        if (low[i].outer.size() != high[i].outer.size() || !low[i].holes.empty() || !high[i].holes.empty())
            return std::nullopt;
        for (std::size_t k = 0; k < low[i].outer.size(); ++k)
            middle[i].outer[k] = (low[i].outer[k] + high[i].outer[k]) * 0.5;
    }
    return middle;
}

/// Simpson's rule, which is exact where sides lean evenly. Where the ends have other corners (formers that run into
/// each other, or small roundings that vanish on the way up) it is the frustum of similar figures, an approximation.
double volumeMm3(const MouldPart& part)
{
    const double low = areaMm2(part.outline);
    const double height = part.toMm - part.fromMm;
    if (part.topOutline.empty()) return low * height;
    const double high = areaMm2(part.topOutline);
    const auto middle = halfWay(part.outline, part.topOutline);
    const double between = middle ? areaMm2(*middle) * 4 : 2 * std::sqrt(low * high) + low + high;
    return (low + between + high) / 6 * height;
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
