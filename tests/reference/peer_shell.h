#pragma once

#include <string>
#include <vector>

#include "core/fem/mesh.h"
#include "tests/reference/slab.h"

namespace yardcast::reference {

/// The general solver's own shells: triangles of six nodes (S6) on our mesh with mid-side nodes added.
struct PeerAnswer {
    std::string trouble;              ///< empty when ccx finished and the contact settled
    int runs = 0;
    double lastSeconds = 0.0;         ///< of the last process alone: one linear solution, the contact being known
    double deflectionMm = 0.0;
    double pressN = 0.0;
    TriangleMesh mesh;
    /// One a triangle, at its centroid.
    std::vector<FibreSample> fibres;
    std::string lastDeck;
};

/// Mesh of a slab of one thickness with the rests' edges for lines, nothing refined.
TriangleMesh evenMesh(const Slab& slab, double sizeMm);

/// Own weight on rests that press only, by the same outer loop as the solids. Slabs of one thickness only.
PeerAnswer solvePeer(const Slab& slab, const TriangleMesh& mesh);
/// Seconds of one more process with the deck that settled.
double solvePeerAgain(const PeerAnswer& answer);

}  // namespace yardcast::reference
