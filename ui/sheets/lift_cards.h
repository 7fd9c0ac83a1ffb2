#pragma once

#include <vector>

#include <QRectF>

#include "core/assess/assessment.h"
#include "ui/sheets/sheet_page.h"

class QPainter;

/// The lifting card of each piece: what to hold, where, and how much of it each hand bears.
namespace yardcast::ui {

/// What is drawn over a piece that is lifted.
struct LiftSketch {
    std::vector<GripLoad> grips;
    bool numbered = false;      ///< grips carry their numbers, in the order given
    int tiltEdge = -1;          ///< of the outline's outer ring; -1: not known
    bool proposed = false;      ///< the grips are the program's
};
/// Grips of the plan or, where it has none, those proposed; the edge the solver tilts it about.
LiftSketch liftSketch(const Assessment& assessment, const CastingLift& lift, bool numbered);
/// The piece as it stands (a counter from above, an upright from its broad side), to fit the box.
void paintLiftSketch(QPainter& painter, const QRectF& box, const Casting& casting, const LiftSketch& sketch);

/// Uprights that one row of a list and one card serve; counters never.
bool areAlikeUprights(const Casting& a, const Casting& b);

/// One card for each counter casting and for each kind of upright, several on a page.
std::vector<SheetPage> liftCardPages(const Plan& plan, const Assessment& assessment);

}  // namespace yardcast::ui
