#pragma once

#include <QStringList>

#include "core/plan/plan.h"
#include "ui/canvas/snapping.h"
#include "ui/drawing/projection.h"

namespace yardcast::ui {

/// Corners, middles, edges and bounds of every part, of the site's outline and of its fixtures, in the plane of the
/// view (Projection::unmap), without the named parts. From above, cutouts count too; in elevation parts are their
/// boxes.
SnapTargets targetsOf(const Plan& plan, const Projection& projection, const QStringList& withoutParts);

/// Within one counter, in its own frame: its corners, edges, middles and centre lines, its other cutouts, and its
/// sides as walls for equal gaps.
SnapTargets targetsWithin(const Part& counter, const std::string& withoutCutout);

/// The same seen from another frame; without boxes, which may lie askew there.
SnapTargets inFrame(SnapTargets targets, const Placement& frame);
/// Without what belongs to one owner.
SnapTargets without(SnapTargets targets, const std::string& owner);

/// The box of a part in the plane of the view: bounds of the footprint, or along the view and its heights.
Box viewBox(const Plan& plan, const Part& part, const Projection& projection);

/// Corners and box of parts that are moved as one.
Moving movingOf(const Plan& plan, const QStringList& parts, const Projection& projection);
/// Corners of a box.
Moving movingOf(const Box& box);

}  // namespace yardcast::ui
