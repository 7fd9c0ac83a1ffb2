#pragma once

#include <array>
#include <vector>

#include "core/geometry/region.h"

namespace yardcast {

/// A place where the mesh has to be finer than elsewhere: elements there are about `sizeMm` long, and grow away
/// from it.
struct FinePlace {
    Point at;
    double sizeMm = 0.0;
};

/// What is to be meshed. All in one plane, mm.
struct MeshRequest {
    Region domain;                     ///< one connected polygon with its holes
    std::vector<Ring> lines;           ///< open polylines that edges should follow: zone boundaries, rests, patches
    std::vector<Point> points;         ///< places where a node should be
    double sizeMm = 30.0;              ///< mean edge length away from everything
    std::vector<FinePlace> fine;
    double growth = 0.35;              ///< how fast the size grows with distance from a fine place
};

/// Triangles that fill a region.
struct TriangleMesh {
    std::vector<Point> nodes;
    std::vector<std::array<int, 3>> triangles;  ///< counter-clockwise
    /// Least angle of any triangle, degrees.
    double leastAngleDeg() const;
    double areaMm2() const;
};

/// Quality mesh: constrained Delaunay triangulation of a graded lattice, refined; exact in steps of 1/256 mm.
/// - The domain's area is kept within 0.05 %. Its straight sides are followed to within 0.01 mm; arcs (runs of short
///   sides that turn less than 30 degrees each) are divided anew by the size there, at least one edge for each 50
///   degrees, and pushed out to keep the area; sides shorter than a twelfth of the size are merged into one point.
/// - No angle under 15 degrees, but where the domain has a sharper corner itself or is narrower than a twenty-fifth of
///   the size (the end of a horn that a cutout leaves of an edge).
/// - The size is lowered where features come close to each other: parts between two boundaries that are narrower than
///   two sizes (and wider than 0.3 of one) get two elements across; a line beside a boundary or another line gets edges
///   no longer than the distance. It is never lowered below a twenty-fifth of `sizeMm`.
/// - Lines and points are followed where that does not force thin triangles: what lies nearer to something else than a
///   fifth of the size asked for there is moved onto it or left out, so what is computed on the mesh must not rely on
///   them being there (see `shell.h`: zones are weighed by area). Where lines cross at less than 30 degrees they end
///   before the crossing.
/// - Deterministic; a mirrored or turned request gives a mesh of the same quality. The lattice keeps its place while a
///   cutout is dragged.
/// Empty for a domain without area, with boundaries that cross each other, with coordinates that are no numbers or out
/// of reach (some 200 m from its middle), or with more than `kMostMeshNodes` nodes to come.
TriangleMesh meshOf(const MeshRequest& request);
inline constexpr int kMostMeshNodes = 60000;

}  // namespace yardcast
