#pragma once

#include <optional>
#include <vector>

#include <QPointF>
#include <QString>
#include <Qt>

#include "ui/canvas/snapping.h"

namespace yardcast::ui {

/// Snapping as the hand meets it: a radius in pixels, suspended by Alt or switched off, and with guides that stay to be
/// shown until the next snap.
class Snapper {
public:
    void setOn(bool on) { on_ = on; }
    bool isOn() const { return on_; }
    void setMmPerPixel(double mmPerPixel) { mmPerPixel_ = mmPerPixel; }

    /// Pitch of the grid; 0 while snapping is suspended.
    double gridMm(Qt::KeyboardModifiers modifiers) const;
    /// As the plain functions; suspended, they give whole mm. `frame` is where the frame of targets and point lies.
    Snap point(const SnapTargets& targets, Point at, Qt::KeyboardModifiers modifiers, const Placement& frame);
    Snap move(const SnapTargets& targets, const Moving& moving, Point by, Qt::KeyboardModifiers modifiers,
              AxisLock locked, const Placement& frame);
    Snap along(const SnapTargets& targets, Point at, Point direction, Qt::KeyboardModifiers modifiers,
               const Placement& frame);

    void clear();
    bool isShowing() const { return !guides_.empty() || ring_.has_value(); }
    const std::vector<Guide>& guides() const { return guides_; }
    /// Where a point has snapped to, plane of the view.
    const std::optional<Point>& ring() const { return ring_; }
    /// "corner of C1", "equal spacing"; empty for no snap.
    const QString& called() const { return called_; }

private:
    bool isSuspended(Qt::KeyboardModifiers modifiers) const;
    SnapReach reach() const;
    void keep(const Snap& snap, const Placement& frame, std::optional<Point> ring);

    bool on_ = true;
    double mmPerPixel_ = 5.0;
    std::vector<Guide> guides_;
    std::optional<Point> ring_;
    QString called_;
};

}  // namespace yardcast::ui
