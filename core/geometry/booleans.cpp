#include <algorithm>
#include <cmath>
#include <clipper.hpp>

#include "core/geometry/region.h"

namespace yardcast {

namespace {

namespace clip = ClipperLib;

/// A mitred corner reaches out at most this many times the offset; sharper ones are cut off.
constexpr double kMitreLimit = 4.0;
constexpr double kUnitsPerMm = 10000.0;
static_assert(kUnitsPerMm * kLatticeMm == 1.0);

bool representable(Point p)
{
    return std::abs(p.x) <= kLargestCoordinateMm && std::abs(p.y) <= kLargestCoordinateMm;
}

/// Appends the ring, turned to the sense asked for; false when a coordinate is no number or too large.
bool append(clip::Paths& paths, const Ring& ring, bool counterClockwise)
{
    clip::Path path;
    path.reserve(ring.size());
    for (const Point p : ring) {
        if (!representable(p)) return false;
        path.emplace_back(std::llround(p.x * kUnitsPerMm), std::llround(p.y * kUnitsPerMm));
    }
    if ((signedArea(ring) > 0) != counterClockwise) std::reverse(path.begin(), path.end());
    paths.push_back(std::move(path));
    return true;
}

bool append(clip::Paths& paths, const Region& region)
{
    for (const Polygon& polygon : region) {
        if (!append(paths, polygon.outer, true)) return false;
        for (const Ring& hole : polygon.holes) {
            if (!append(paths, hole, false)) return false;
        }
    }
    return true;
}

Ring ringFrom(const clip::Path& path, bool counterClockwise)
{
    Ring ring;
    ring.reserve(path.size());
    for (const clip::IntPoint& p : path)
        ring.push_back({static_cast<double>(p.X) / kUnitsPerMm, static_cast<double>(p.Y) / kUnitsPerMm});
    if ((signedArea(ring) > 0) != counterClockwise) std::reverse(ring.begin(), ring.end());
    return ring;
}

Region regionFrom(const clip::PolyTree& tree)
{
    Region region;
    for (const clip::PolyNode* node = tree.GetFirst(); node != nullptr; node = node->GetNext()) {
        if (node->IsHole() || node->Contour.size() < 3) continue;
        Polygon polygon{ringFrom(node->Contour, true), {}};
        for (const clip::PolyNode* hole : node->Childs) {
            if (hole->Contour.size() >= 3) polygon.holes.push_back(ringFrom(hole->Contour, false));
        }
        region.push_back(std::move(polygon));
    }
    return region;
}

Region execute(clip::ClipType operation, const clip::Paths& subjects, const clip::Paths& clips)
{
    try {
        clip::Clipper clipper;
        clipper.AddPaths(subjects, clip::ptSubject, true);
        clipper.AddPaths(clips, clip::ptClip, true);
        clip::PolyTree tree;
        if (!clipper.Execute(operation, tree, clip::pftNonZero, clip::pftNonZero)) return {};
        return regionFrom(tree);
    } catch (const clip::clipperException&) {
        return {};
    }
}

Region combined(clip::ClipType operation, const Region& a, const Region& b)
{
    clip::Paths subjects;
    clip::Paths clips;
    if (!append(subjects, a) || !append(clips, b)) return {};
    return execute(operation, subjects, clips);
}

}  // namespace

Region regionOf(const Ring& ring) { return uniteRings({ring}); }

Region unite(const Region& a, const Region& b) { return combined(clip::ctUnion, a, b); }

Region uniteRings(const std::vector<Ring>& rings)
{
    clip::Paths subjects;
    for (const Ring& ring : rings) {
        if (!append(subjects, ring, true)) return {};
    }
    return execute(clip::ctUnion, subjects, {});
}

Region subtract(const Region& a, const Region& b) { return combined(clip::ctDifference, a, b); }

Region intersect(const Region& a, const Region& b) { return combined(clip::ctIntersection, a, b); }

Region offset(const Region& region, double distanceMm, OffsetJoin join)
{
    if (!(std::abs(distanceMm) <= kLargestCoordinateMm)) return {};
    clip::Paths paths;
    if (!append(paths, region)) return {};
    try {
        clip::ClipperOffset clipper(kMitreLimit, kArcToleranceMm * kUnitsPerMm);
        clipper.AddPaths(paths, join == OffsetJoin::mitre ? clip::jtMiter : clip::jtRound, clip::etClosedPolygon);
        clip::PolyTree tree;
        clipper.Execute(tree, distanceMm * kUnitsPerMm);
        return regionFrom(tree);
    } catch (const clip::clipperException&) {
        return {};
    }
}

}  // namespace yardcast
