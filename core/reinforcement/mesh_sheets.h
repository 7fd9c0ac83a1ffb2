#pragma once

#include "core/plan/parts.h"
#include "core/reinforcement/steel_layout.h"

namespace yardcast {

/// Sheets that a store sells unless said otherwise, mm.
inline constexpr Size kMeshSheet{2000.0, 1000.0};

/// How many pieces of at most `sheetMm`, lapping by `lapMm`, cover `spanMm`, and what is laid in all.
struct LappedSpan {
    int pieces = 1;
    double laidMm = 0.0;
};
LappedSpan lappedSpan(double spanMm, double sheetMm, double lapMm);

/// Lays sheets over what of the outline lies within the mesh's cover, the way round that takes less mesh, each piece
/// trimmed to what it covers, and cuts the pieces from as few sheets as a greedy search finds (guillotine cuts, larger
/// pieces first, turned where that fits better; not proven the least). No pieces for sizes that are no sizes. `height`
/// is left to the caller.
MeshLayout layMesh(const Mesh& mesh, const Region& outline);

}  // namespace yardcast
