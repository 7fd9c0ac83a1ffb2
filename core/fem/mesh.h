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
    Region domain;                     ///< one connected polygon with its holes; its boundary is kept exactly
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

/// Quality mesh: constrained Delaunay triangulation of a graded lattice, refined. The boundary of the domain is kept
/// to within 0.01 mm. Lines and points are followed where that does not force thin triangles: what lies nearer to
/// something else than a few mm (at most a fifth of the size there) is moved onto it or left out, so what is
/// computed on the mesh must not rely on them being there (see `shell.h`: zones are weighed by area).
/// Deterministic; a mirrored or turned request gives a mesh of the same quality. Angles of the domain itself that are
/// smaller than 15 degrees stay. Empty for a domain without area, with coordinates out of reach or with more than
/// `kMostMeshNodes` nodes to come.
TriangleMesh meshOf(const MeshRequest& request);
inline constexpr int kMostMeshNodes = 60000;

}  // namespace yardcast
