#include "core/reinforcement/corner_bars.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

/// A boundary point may be this far off: arcs are chords, and cutouts cut through joints.
constexpr double kOnBoundaryMm = 1.0;
/// Inside the concrete just beyond the corner.
constexpr double kBeyondMm = 5.0;
/// How far beyond the clear distance a bar may lie and still hold the corner together; common practice, no source.
constexpr double kNearCornerMm = 60.0;
const double kCosineNearAcross = std::sqrt(3.0) / 2;

double distanceToBoundary(const Region& region, Point p)
{
    double least = HUGE_VAL;
    for (const Polygon& polygon : region) {
        least = std::min(least, distanceToRing(polygon.outer, p));
        for (const Ring& hole : polygon.holes) least = std::min(least, distanceToRing(hole, p));
    }
    return least;
}

void addIfOnBoundary(const Casting& casting, const ReentrantCorner& corner, std::vector<ReentrantCorner>& corners)
{
    if (distanceToBoundary(casting.outline, corner.at) > kOnBoundaryMm) return;
    if (!contains(casting.outline, corner.at + corner.inward * kBeyondMm)) return;
    if (contains(casting.outline, corner.at - corner.inward * kBeyondMm)) return;
    corners.push_back(corner);
}

}  // namespace

std::vector<ReentrantCorner> reentrantCorners(const Casting& casting, const Counter& counter)
{
    std::vector<ReentrantCorner> corners;
    for (const Cutout& cutout : counter.cutouts) {
        if (cutout.shape != CutoutShape::rectangle) continue;
        const auto [sine, cosine] = sineCosineDeg(cutout.turnDeg.value_or(0.0));
        const double halfX = cutout.size.width / 2;
        const double halfY = cutout.size.depth / 2;
        if (!(halfX > 0.0 && halfY > 0.0)) continue;
        const double radius = std::clamp(cutout.cornerRadiusMm.value_or(0.0), 0.0, std::min(halfX, halfY));
        // From the corner of the rectangle to the middle of its arc, along each side.
        const double back = radius * (1 - std::sqrt(0.5));
        for (const Point side : {Point{-1, -1}, Point{1, -1}, Point{1, 1}, Point{-1, 1}}) {
            const auto turned = [&, s = sine, c = cosine](Point p) {
                return Point{p.x * c - p.y * s, p.x * s + p.y * c};
            };
            const Point own{side.x * (halfX - back), side.y * (halfY - back)};
            addIfOnBoundary(casting, {cutout.centre + turned(own), turned(side) * std::sqrt(0.5), cutout.id}, corners);
        }
    }
    const Ring& ring = counter.outline;
    const double sense = signedArea(ring) < 0.0 ? -1.0 : 1.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point before = ring[i] - ring[(i + ring.size() - 1) % ring.size()];
        const Point after = ring[(i + 1) % ring.size()] - ring[i];
        const double lengths = length(before) * length(after);
        // Less than some 10 degrees is a bend, not a corner.
        if (!(lengths > 0.0) || sense * cross(before, after) > -0.17 * lengths) continue;
        const Point bisector = before * (1 / length(before)) - after * (1 / length(after));
        if (!(length(bisector) > 0.0)) continue;
        addIfOnBoundary(casting, {ring[i], bisector * (1 / length(bisector)), {}}, corners);
    }
    return corners;
}

std::vector<CrossingBar> barAcross(const ReentrantCorner& corner, const Region& outline, double diameterMm,
                                   double clearMm, double anchorageMm)
{
    const Point middle = corner.at + corner.inward * (clearMm + diameterMm / 2);
    const Point along = leftNormal(corner.inward);
    BarGroup wanted;
    wanted.from = middle - along * anchorageMm;
    wanted.to = middle + along * anchorageMm;
    wanted.diameterMm = diameterMm;
    wanted.coverMm = clearMm;
    for (const BarStretch& piece : barPieces(wanted, outline)) {
        const double before = dot(middle - piece.from, along);
        const double after = dot(piece.to - middle, along);
        const double shorter = std::min(before, after);
        if (shorter >= 3 * diameterMm) return {{piece, shorter}};
    }
    return {};
}

bool isCrossed(const ReentrantCorner& corner, const std::vector<BarStretch>& bars, double clearMm)
{
    const Point crack = corner.inward * (clearMm + kNearCornerMm);
    return std::any_of(bars.begin(), bars.end(), [&](const BarStretch& bar) {
        const Point along = bar.to - bar.from;
        const double denominator = cross(along, crack);
        if (std::abs(denominator) < kCosineNearAcross * length(along) * length(crack)) return false;
        const double onBar = cross(corner.at - bar.from, crack) / denominator;
        const double onCrack = cross(corner.at - bar.from, along) / denominator;
        return onBar >= 0.0 && onBar <= 1.0 && onCrack >= 0.0 && onCrack <= 1.0;
    });
}

}  // namespace yardcast
