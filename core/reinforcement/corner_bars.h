#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/castings/steel_in_casting.h"

namespace yardcast {

/// A corner of the boundary that points into the concrete: cracks begin there.
struct ReentrantCorner {
    Point at;       ///< on the boundary; the middle of the arc where it is rounded
    Point inward;   ///< unit, the way a crack would run
    std::string of; ///< id of the cutout; empty for the outline
};
/// Of a casting: corners of its rectangular cutouts and of its counter's outline that lie on its boundary.
std::vector<ReentrantCorner> reentrantCorners(const Casting& casting, const Counter& counter);

/// Where a bar straight across the crack lies: `clearMm` from the corner to its side, `anchorageMm` long on either side
/// of the crack or as far as the concrete and the cover `clearMm` allow. Nothing where it has no room.
struct CrossingBar {
    BarStretch piece;
    double shorterSideMm = 0.0;  ///< of the crack
};
std::vector<CrossingBar> barAcross(const ReentrantCorner& corner, const Region& outline, double diameterMm,
                                   double clearMm, double anchorageMm);

/// Whether one of these bars crosses the crack near its start, and within 30 degrees of straight across.
bool isCrossed(const ReentrantCorner& corner, const std::vector<BarStretch>& bars, double clearMm);

}  // namespace yardcast
