#pragma once

#include <string>
#include <vector>

#include "core/fem/mesh.h"
#include "core/structure/strength.h"

/// What of a casting the mesher is told.
namespace yardcast {

/// Element sizes, mm.
struct Fineness {
    double sizeMm = 30.0;      ///< away from everything
    double atRestsMm = 14.0;   ///< along the edges of rests, at best
    double finestMm = 5.0;     ///< at inner corners, at least
    int pointsAtRests = 150;   ///< all edges of rests together get no more places than this
    double chordMm = 0.4;      ///< arcs of the boundary are meshed with chords that leave them by no more than this
    double growth = 0.35;
    double inStripsMm = 18.0;  ///< in strips beside cutouts, at least
    double acrossStrips = 3.0; ///< elements across such a strip
    double atEndsMm = 25.0;    ///< where steps in depth meet the boundary
};
Fineness finenessOf(Refinement refinement);
/// Enough to tell the worst of many loads, not for figures: no finer than its field anywhere but at inner corners.
Fineness coarse();

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

/// The outline with its arcs in as few chords as may be, the lines of zones and rests, and how fine it must be
/// where. `regions` are those of the kinds of section, the deepest first.
MeshPlan meshPlan(const StrengthInput& input, const Fineness& fineness, const std::vector<Region>& regions);

/// The same ring with fewer points: none of the left-out ones lies further than the tolerance from it; corners stay.
Ring withFewerPoints(const Ring& ring, double toleranceMm);

}  // namespace yardcast
