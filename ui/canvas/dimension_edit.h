#pragma once

#include <QString>

#include "core/plan/plan.h"
#include "ui/canvas/typed_size.h"
#include "ui/drawing/dimension_painter.h"

/// What typing over a figure, or typing a size for what is chosen, makes of the plan. Plain functions.
namespace yardcast::ui {

/// The plan in which the dimension measures `valueMm`, or why that cannot be, as a sentence.
struct SizeEdit {
    Plan plan;
    QString fault;
    explicit operator bool() const { return fault.isEmpty(); }
};

/// `oldMm` is what the dimension measures now. An edge of a counter grows at the end that lies farther right or back;
/// a strip beside a cutout moves the cutout; a level raises the part.
SizeEdit withDimension(const Plan& plan, const DimensionTarget& target, double oldMm, double valueMm);

/// Length (and width, depth or thickness) of a part, from above. A counter must have four right-angled sides.
SizeEdit withPartSize(const Plan& plan, const std::string& part, const TypedSize& size);
SizeEdit withCutoutSize(const Plan& plan, const std::string& part, const std::string& cutout, const TypedSize& size);
/// Edge `edge` of the outline so moved that edge `measured` (a neighbour of it) becomes `valueMm` long.
SizeEdit withEdgeLength(const Plan& plan, const std::string& part, int measured, int edge, double valueMm);

/// Outline of four sides, all corners right.
bool isRectangle(const Ring& outline);
/// The index of the neighbour edge whose far end lies farther right or back: the one that gives way when `edge` is
/// given a length.
int givingNeighbour(const Ring& outline, int edge);

/// "1850 620" for what withPartSize would set, or empty where there is no such size.
QString partSizeText(const Part& part);
QString cutoutSizeText(const Cutout& cutout);

}  // namespace yardcast::ui
