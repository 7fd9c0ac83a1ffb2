#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "core/castings/casting.h"

/// Where people take hold of a casting: pure geometry, own frame, mm.
namespace yardcast {

/// The long and the short way of an outline, by the smallest box about it.
struct SlabAxes {
    Point origin;             ///< low corner of the box
    Point along{1.0, 0.0};    ///< unit
    Point across{0.0, 1.0};   ///< unit, to the left of `along`
    double lengthMm = 0.0;
    double widthMm = 0.0;

    Point at(double alongMm, double acrossMm) const { return origin + along * alongMm + across * acrossMm; }
};
SlabAxes slabAxes(const Region& outline);

/// A straight outer edge on which the slab can stand: nothing of it reaches beyond, and its middle lies above the edge.
struct StandingEdge {
    int edge = 0;       ///< of the outline's outer ring, from point `edge` to the next (the longest piece of it)
    Point from;         ///< the whole straight edge, inside to the left
    Point to;
    Point inward() const;
    double lengthMm() const { return distance(from, to); }
};
inline constexpr double kLongEdgeShare = 0.75;
/// Those at least this share of the longest, longest first.
std::vector<StandingEdge> standingEdges(const Region& outline, double leastShare = kLongEdgeShare);
/// The edge that an upright stands on: that at height 0 of its elevation.
std::optional<StandingEdge> baseEdge(const Region& elevation);

/// Hands reach under the edge: middle of the palm from the edge, and what a hand covers (judgement).
inline constexpr double kHandInsetMm = 40.0;
inline constexpr Size kHandMm{100.0, 60.0};

/// First and last concrete on the line from `through` in direction `across` (unit), both ways. Nothing where the line
/// misses the outline.
std::optional<std::pair<Point, Point>> endsOfLine(const Region& outline, Point through, Point across);
/// What a hand covers at a place, its length along `along`; the nearest it can for a place outside (then empty).
Region handRegion(const Region& outline, Point at, Point along);

/// What lies within a strip along the line, cut into `pieces` of equal length; pieces without concrete are left out.
std::vector<Region> stripPieces(const Region& outline, Point from, Point to, double widthMm, int pieces);

/// Whether the concrete (outline and depths) is its own mirror image about the middle of the box, along and across.
struct SlabSymmetry {
    bool along = false;    ///< left and right ends alike
    bool across = false;   ///< front and back alike
};
SlabSymmetry slabSymmetry(const Casting& casting, const SlabAxes& axes);

}  // namespace yardcast
