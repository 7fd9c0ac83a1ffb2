#pragma once

#include <vector>

#include "core/castings/casting.h"
#include "core/plan/parts.h"
#include "core/reinforcement/steel_layout.h"
#include "ui/sheets/drawing_fit.h"
#include "ui/sheets/handedness.h"
#include "ui/sheets/own_drawing.h"

namespace yardcast::ui {

/// How a casting lies while its steel is laid: seen from above, mirrored where its face lies on the mould base.
Seen seenOf(const CastingSteelLayout& layout);
/// The marked corner in the own frame: the front left one of a counter as it stands; of a panel the left end of its
/// foot, seen from the front.
Point markedCorner(const Casting& casting);

/// One casting with its steel. As it lies in the mould, or (for what is drawn beside the plan) as it stands; never both
/// on one sheet. `sectionX` (own frame) is marked with A where it is asked for.
struct SteelDrawingOptions {
    Seen seen = Seen::inTheMould;
    bool withSection = false;
    double sectionXMm = 0.0;
    FrontMark front = FrontMark::yes;
};
ScaledDrawing steelDrawing(const Part& part, const CastingPtr& casting, const CastingSteelLayout& layout,
                           const SteelDrawingOptions& options);

/// Where the section shows the most steel: beside the middle of the largest cutout, clear of it.
double steelSectionXMm(const Casting& casting, const CastingSteelLayout& layout);
/// The section as it lies while poured, the mould base below: steel with its heights above the base. Seen so that the
/// front (of a panel the foot) is on the left.
ScaledDrawing steelSection(const CastingPtr& casting, const CastingSteelLayout& layout, double xMm);

/// What the sheets of mesh are cut into; each sheet with its pieces and their marks, to scale, and what is cut away from
/// a piece with its distances from the corner of the dot. Pieces are seen as the slab is in its mould.
ScaledDrawing meshCutDrawing(const MeshLayout& mesh, Seen seen);

}  // namespace yardcast::ui
