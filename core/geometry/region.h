#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "core/geometry/point.h"

namespace yardcast {

/// A closed ring of points, mm; the last point joins the first. May be given in either sense.
using Ring = std::vector<Point>;

/// One connected piece of a plane: an outer ring (counter-clockwise) and holes (clockwise), mm.
struct Polygon {
    Ring outer;
    std::vector<Ring> holes;

    friend bool operator==(const Polygon&, const Polygon&) = default;
};

/// Any set of the plane bounded by straight lines: disjoint polygons. Empty is allowed.
using Region = std::vector<Polygon>;

/// Integrals over a region: area mm2, first moments mm3 and second moments mm4, about the axes of its frame.
struct AreaMoments {
    double areaMm2 = 0.0;
    double firstXMm3 = 0.0;    ///< integral of x
    double firstYMm3 = 0.0;    ///< integral of y
    double secondXxMm4 = 0.0;  ///< integral of x*x
    double secondYyMm4 = 0.0;  ///< integral of y*y
    double secondXyMm4 = 0.0;  ///< integral of x*y

    /// Centroid, or the origin for a region without area.
    Point centroid() const;
};

struct Box {
    Point low;
    Point high;
    double width() const { return high.x - low.x; }
    double height() const { return high.y - low.y; }
    Point centre() const { return {(low.x + high.x) / 2, (low.y + high.y) / 2}; }
    friend bool operator==(const Box&, const Box&) = default;
};

/// Largest distance, mm, between an arc and the chords that stand for it.
inline constexpr double kArcToleranceMm = 0.1;
/// Booleans and offsets work on a lattice of this pitch, mm: results are within it.
inline constexpr double kLatticeMm = 1e-4;
/// Coordinates beyond this, mm, are refused by booleans (they return an empty region). 1 km.
inline constexpr double kLargestCoordinateMm = 1e6;

/// Signed area of a ring, mm2; positive when counter-clockwise.
double signedArea(const Ring& ring);
double perimeterMm(const Ring& ring);
AreaMoments moments(const Polygon& polygon);
AreaMoments moments(const Region& region);
double areaMm2(const Region& region);
/// Sum of the lengths of all boundaries, holes included, mm.
double perimeterMm(const Region& region);
/// Nothing for an empty ring or region.
std::optional<Box> boundsOf(const Ring& ring);
std::optional<Box> boundsOf(const Region& region);
/// True inside or on the boundary of the ring (even-odd rule).
bool contains(const Ring& ring, Point p);
bool contains(const Region& region, Point p);
double distanceToSegment(Point p, Point a, Point b);
double distanceToRing(const Ring& ring, Point p);

/// Indices of two edges of the ring that cross, touch or overlap though they are no neighbours (or neighbours of which
/// one runs back over the other), if any; edge i runs from point i to i+1. Exact on the lattice; repeated points and
/// rings beyond `kLargestCoordinateMm` are passed over.
std::optional<std::pair<int, int>> selfCrossing(const Ring& ring);

/// An axis-parallel rectangle about `centre`, then turned counter-clockwise about it, with corners rounded
/// to `cornerRadiusMm` (cut to half the shorter side). Arcs are flattened within `kArcToleranceMm`, their area kept.
Ring rectangleRing(Point centre, Size size, double turnDeg = 0.0, double cornerRadiusMm = 0.0);
/// A circle as a polygon of the same area (so volumes are exact), within `kArcToleranceMm` of the arc.
Ring circleRing(Point centre, double diameterMm);
/// The strip of `widthMm` centred on the line from a to b, lengthened at both ends by `extendMm`. Empty where a is b.
Ring stripRing(Point a, Point b, double widthMm, double extendMm = 0.0);

/// The set inside the ring (non-zero rule); a clockwise ring is turned round.
Region regionOf(const Ring& ring);
/// Operands need not be disjoint: polygons that overlap count once (non-zero rule), so rings not yet united will do.
Region unite(const Region& a, const Region& b);
Region uniteRings(const std::vector<Ring>& rings);
Region subtract(const Region& a, const Region& b);
Region intersect(const Region& a, const Region& b);
enum class OffsetJoin { mitre, round };
/// Grown (positive) or shrunk (negative) by `distanceMm`. A mitre reaches out at most 4 times the distance; a round
/// join is flattened within `kArcToleranceMm`.
Region offset(const Region& region, double distanceMm, OffsetJoin join);

Ring transformed(const Ring& ring, const Placement& placement);
Region transformed(const Region& region, const Placement& placement);

}  // namespace yardcast
