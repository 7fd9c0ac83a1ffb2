#pragma once

#include <QPointF>
#include <QPolygonF>

#include "core/geometry/region.h"

namespace yardcast::ui {

/// The two views of one plan. Drawing coordinates are mm with y down, so that painters and scenes need no flip:
/// this is the only place where the plan's axes (y away from the person, z up) are turned into them.
class Projection {
public:
    /// Seen from above: x right, y up the sheet.
    static Projection above();
    /// Seen level, along a direction of the plan (degrees counter-clockwise from x; 90 looks away from the person,
    /// so that what is left in plan is left in view). Heights go up the sheet.
    static Projection front(double lookDeg = 90.0);

    bool isAbove() const { return above_; }
    double lookDeg() const { return lookDeg_; }

    QPointF map(Point plan, double zMm = 0.0) const;
    QPolygonF map(const Ring& ring, double zMm = 0.0) const;
    /// From above: the plan point. In elevation: x is the distance along the view, y the height above the datum.
    Point unmap(QPointF drawing) const;
    /// Along the view axis, growing away from the viewer; parts are painted from the farthest to the nearest.
    double depth(Point plan) const;
    /// The direction in plan that runs to the right in this view.
    Point rightwards() const;

    friend bool operator==(const Projection&, const Projection&) = default;

private:
    bool above_ = true;
    double lookDeg_ = 90.0;
};

}  // namespace yardcast::ui
