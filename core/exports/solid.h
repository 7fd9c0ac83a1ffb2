#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/geometry/region.h"

/// Bodies as triangles, for a look at the kitchen in any viewer.
namespace yardcast {

using SolidPoint = std::array<double, 3>;

/// A body bounded by triangles that turn counter-clockwise seen from outside, mm.
struct Solid {
    std::vector<SolidPoint> points;
    std::vector<std::array<int, 3>> triangles;
};

/// Upright in a frame of its own: `region` from height `fromMm` to `toMm`.
struct Prism {
    Region region;
    double fromMm = 0.0;
    double toMm = 0.0;
};

/// Prisms that do not overlap as one body: where they touch there is no wall. Prisms with equal regions stand over each
/// other; other regions have to be disjoint. Every edge is shared by exactly two triangles, also where prisms of
/// different height meet; hollows that are closed all round are shells of their own, turned inside. Where two parts
/// would touch along a line only, they are drawn `kPinchMm` apart there. Borders closer than 0.006 mm are taken as one.
/// Nothing where there is no prism with a volume, or where borders cross each other.
std::optional<Solid> solidOfPrisms(const std::vector<Prism>& prisms);
inline constexpr double kPinchMm = 0.002;

/// A ring at a height.
struct RingAt {
    Ring ring;
    double heightMm = 0.0;
};

/// A body through rings over each other, lowest first, for formers with draft. Each ring has to go once round the
/// middle of the first one, as those of convex cutouts do; they may have different numbers of points. Two rings at one
/// height make a step. Nothing where they do not, or heights fall.
std::optional<Solid> solidThrough(const std::vector<RingAt>& rings);

/// An upright box on a rectangle or any ring.
std::optional<Solid> solidOfRing(const Ring& ring, double fromMm, double toMm);

/// Adds `other` as a shell of its own.
void append(Solid& solid, const Solid& other);

/// By the divergence theorem, mm3; negative where triangles are turned inside.
double volumeMm3(const Solid& solid);

/// What holds the triangles together.
struct SolidCheck {
    bool closed = false;        ///< every edge belongs to exactly two triangles, which run along it in opposite ways
    int points = 0;             ///< that triangles use
    int edges = 0;
    int triangles = 0;
    int shells = 0;             ///< parts that are not joined by edges
    int euler() const { return points - edges + triangles; }
};
SolidCheck checkSolid(const Solid& solid);

}  // namespace yardcast
