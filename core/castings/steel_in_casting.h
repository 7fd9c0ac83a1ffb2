#pragma once

#include <vector>

#include "core/castings/casting.h"
#include "core/plan/parts.h"

namespace yardcast {

/// Straight piece of bar, in the plane of the casting's outline, mm.
struct BarStretch {
    Point from;
    Point to;
    double lengthMm() const { return distance(from, to); }
};

/// The parts of the segment from-to that lie in the region (its boundary included), in order from `from`. Pieces
/// shorter than `kShortestBarMm` are dropped.
std::vector<BarStretch> clipToRegion(Point from, Point to, const Region& region);
inline constexpr double kShortestBarMm = 1.0;

/// The bars of a group in a piece with this outline: side by side about the line from-to, cut to what lies inside
/// the outline and no nearer to its boundary than the cover. Empty for sizes that are no sizes and for more than
/// `kMostBars` bars.
std::vector<BarStretch> barPieces(const BarGroup& group, const Region& outline);
inline constexpr int kMostBars = 1000;
inline constexpr double kDefaultBarSpacingMm = 40.0;

/// kg/m3: steel of any kind 7850 (EN 10080; stainless weighs 0.6 % more); bars and grids of glass or basalt fibre in
/// resin 2100 (from memory: 1900 to 2200).
double reinforcementKgM3(SteelMaterial material);

/// Steel of one piece, and the moments of its mass for the centre of gravity: kg mm in the plane of the outline, and
/// along the depth from the face.
struct SteelInPiece {
    std::vector<SteelItem> items;
    double massKg = 0.0;
    Point momentKgMm;
    double depthMomentKgMm = 0.0;
    double volumeL = 0.0;       ///< of concrete that it takes the place of
    Point momentLMm;            ///< likewise
    double depthMomentLMm = 0.0;

    void add(double itemKg, SteelMaterial material, Point at, double depthMm);
};

/// Mesh: net area is the outline (cutouts open) shrunk by the cover. Bars: as `barPieces`, equal lengths together.
SteelInPiece steelInPiece(const Steel& steel, const Region& outline);

}  // namespace yardcast
