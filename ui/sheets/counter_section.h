#pragma once

#include <optional>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/plan.h"
#include "ui/sheets/drawing_fit.h"

namespace yardcast::ui {

/// A piece of one zone where the section cuts it: along own y, and depths below the face.
struct SectionPiece {
    ZoneKind kind = ZoneKind::field;
    double fromYMm = 0.0;
    double toYMm = 0.0;
    double topMm = 0.0;     ///< depth below the face at which it begins
    double bottomMm = 0.0;  ///< depth at which it ends
};

/// Where a section tells the most: through the middle of the largest cutout, else about a third along the slab.
double sectionXMm(const Counter& counter);
/// What the plane x = `xMm` of the own frame cuts, front to back.
std::vector<SectionPiece> sectionPieces(const std::vector<CastingPtr>& castings, double xMm);
/// Circles are polygons in the castings: brings ends that lie on one to where the circle itself is cut.
void snapToCircles(std::vector<SectionPiece>& pieces, const Counter& counter, double xMm);
/// The section seen from the right, so that the front is on the left: cut concrete hatched, foam with crosses.
ScaledDrawing sectionDrawing(const std::vector<SectionPiece>& pieces);

}  // namespace yardcast::ui
