#pragma once

#include "core/geometry/point.h"

namespace yardcast::ui {

class PlanDocument;
class Projection;
class Selection;

/// Commands on what is chosen, each one entry of the undo list; nothing chosen: nothing happens.

/// By mm in the plane of the view. A chosen corner of an outline (-1: none) moves alone.
void nudgeChosen(PlanDocument& document, const Selection& selection, const Projection& projection, int corner,
                 Point by);
void deleteChosen(PlanDocument& document, Selection& selection);
/// Counter-clockwise about the middle of their bounds; a cutout about its own middle.
void turnChosen(PlanDocument& document, const Selection& selection, double byDeg);
/// Left and right change sides, within the bounds of what is chosen.
void mirrorChosen(PlanDocument& document, const Selection& selection);
/// Copies lie beside, and are chosen then.
void duplicateChosen(PlanDocument& document, Selection& selection);

}  // namespace yardcast::ui
