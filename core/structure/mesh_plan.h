#pragma once

#include <string>
#include <vector>

#include "core/fem/mesh.h"
#include "core/structure/strength.h"

/// What of a casting the mesher is told.
namespace yardcast {

/// A run of boundary points that turns into the concrete: one point where it is sharp, else an arc.
struct InnerArc {
    std::vector<Point> points;
    Point before;  ///< neighbours on the ring
    Point after;
};

struct MeshPlan {
    MeshRequest request;
    std::vector<InnerArc> arcs;
};

/// The outline with its arcs in as few chords as `kChordMm` allows, the lines of zones and rests, and how fine it must be
/// where. `regions` are those of the kinds of section, the deepest first.
MeshPlan meshPlan(const StrengthInput& input, Refinement refinement, const std::vector<Region>& regions);

/// Arcs of the boundary are meshed with chords that leave them by no more than this, mm.
inline constexpr double kChordMm = 0.4;
/// The same ring with fewer points: none of the left-out ones lies further than the tolerance from it; corners stay.
Ring withFewerPoints(const Ring& ring, double toleranceMm);

}  // namespace yardcast
