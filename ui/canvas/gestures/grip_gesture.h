#pragma once

#include <string>
#include <vector>

#include "ui/canvas/gestures/gesture.h"
#include "ui/canvas/snapping.h"

namespace yardcast::ui {

/// Moves one of the places where hands take a counter. Where the plan gives none, those that are proposed become the
/// plan's own with the first move.
class GripGesture : public Gesture {
public:
    /// `grips`: those that are shown, own frame.
    GripGesture(ToolHost& host, std::string part, std::vector<Point> grips, int index, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;

private:
    void preview(Point own);

    std::string part_;
    std::vector<Point> grips_;
    std::size_t index_;
    QString called_;
    Placement place_;
    Point off_;
    SnapTargets targets_;
};

}  // namespace yardcast::ui
