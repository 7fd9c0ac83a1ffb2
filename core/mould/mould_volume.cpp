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

/// Whether each side of one ring runs as the side of the other that is `shift` further.
bool sidesAnswer(const Ring& low, const Ring& high, std::size_t shift)
{
    constexpr double kSameDirection = 1e-3;
    const std::size_t n = low.size();
    for (std::size_t i = 0; i < n; ++i) {
        const Point a = low[(i + 1) % n] - low[i];
        const Point b = high[(i + 1 + shift) % n] - high[(i + shift) % n];
        if (!(dot(a, b) > 0.0) || std::abs(cross(a, b)) > kSameDirection * length(a) * length(b)) return false;
    }
    return true;
}

/// Half way between two outlines whose sides answer each other (booleans may begin a ring elsewhere); nothing for
/// others.
std::optional<Region> halfWay(const Region& low, const Region& high)
{
    if (low.size() != high.size()) return std::nullopt;
    Region middle = low;
    for (std::size_t i = 0; i < low.size(); ++i) {
        const Ring& top = high[i].outer;
        const std::size_t n = top.size();
        if (low[i].outer.size() != n || !low[i].holes.empty() || !high[i].holes.empty()) return std::nullopt;
        std::size_t shift = 0;
        while (shift < n && !sidesAnswer(low[i].outer, top, shift)) ++shift;
        if (shift == n) return std::nullopt;
        for (std::size_t k = 0; k < n; ++k) middle[i].outer[k] = (low[i].outer[k] + top[(shift + k) % n]) * 0.5;
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
