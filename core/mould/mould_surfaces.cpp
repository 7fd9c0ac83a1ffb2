#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/mould/mould_making.h"

namespace yardcast {

using namespace mould_making;

namespace {

/// What is squeezed out and wiped off; trade practice: 20 to 25 m of a cartridge that would do for 40 m.
constexpr double kSiliconeInPractice = 1.8;
/// A bead that only seals, where the edges are left sharp or chamfered. Common practice, no source.
constexpr double kSealRadiusMm = 2.0;
/// From memory; common practice.
constexpr double kReleaseMlPerM2 = 100.0;
constexpr double kLPerMm3 = 1e-6;

/// Of a fillet of radius r between two boards at a right angle: (1 - pi/4) r2.
double filletAreaMm2(double radiusMm) { return (1.0 - std::numbers::pi / 4) * radiusMm * radiusMm; }

bool isStrip(MouldPartKind kind)
{
    return kind == MouldPartKind::chamfer || kind == MouldPartKind::drip || kind == MouldPartKind::rebate;
}

std::size_t nearest(const Ring& ring, Point to)
{
    const auto found = std::min_element(ring.begin(), ring.end(), [&](Point a, Point b) {
        return distance(a, to) < distance(b, to);
    });
    return static_cast<std::size_t>(found - ring.begin());
}

void measureDiagonals(Making& making)
{
    const Ring& ring = making.outline;
    const Box box = boundsOf(ring).value_or(Box{});
    const auto add = [&](Point a, Point b) {
        const Point from = ring[nearest(ring, a)];
        const Point to = ring[nearest(ring, b)];
        if (distance(from, to) > 0.0) making.mould.diagonals.push_back({from, to, distance(from, to)});
    };
    add(box.low, box.high);
    add({box.high.x, box.low.y}, {box.low.x, box.high.y});
}

}  // namespace

namespace mould_making {

void reckonSurfaces(Making& making)
{
    Mould& mould = making.mould;
    const Moulding& how = making.how;
    measureDiagonals(making);
    double chamferedMm = 0.0;
    double aroundMm = 0.0;
    double formersMm = 0.0;
    double formerFootMm2 = 0.0;
    std::size_t corners = 0;
    for (const MouldPart& part : mould.parts) {
        if (part.kind == MouldPartKind::chamfer) chamferedMm += part.insideMm;
        if (part.kind == MouldPartKind::side) {
            aroundMm += part.insideMm;
            ++corners;
        }
        if (isStrip(part.kind)) mould.waxedMm += perimeterMm(part.outline);
        if (part.kind == MouldPartKind::former && part.fromMm == 0.0) {
            formersMm += perimeterMm(part.outline);
            formerFootMm2 += areaMm2(part.outline);
        }
    }
    mould.waxedMm += formersMm;
    if (corners < 2) corners = 0;
    const double uprightMm = static_cast<double>(corners) * mould.heightMm;
    mould.sealedMm = aroundMm - chamferedMm + formersMm + uprightMm;
    const bool filleted = how.edge == EdgeFinish::fillet && how.edgeMm > kSealRadiusMm && !making.faceUp;
    const double radius = filleted ? how.edgeMm : kSealRadiusMm;
    mould.siliconeMl = filletAreaMm2(radius) * mould.sealedMm * 1e-3 * kSiliconeInPractice;
    mould.edgesL = (filletAreaMm2(radius) * mould.sealedMm + how.edgeMm * how.edgeMm / 2 * chamferedMm) * kLPerMm3;
    mould.touchedM2 = (areaMm2(making.outlineRegion) - formerFootMm2 + (aroundMm + formersMm) * mould.heightMm) * 1e-6;
    mould.releaseMl = mould.touchedM2 * kReleaseMlPerM2;
}

}  // namespace mould_making

}  // namespace yardcast
