#pragma once

#include "ui/canvas/gestures/gesture.h"

namespace yardcast::ui {

/// Parts moved as one: over the plan, or along and up in elevation. Shift keeps to one axis.
class MoveGesture : public Gesture {
public:
    MoveGesture(ToolHost& host, QStringList parts, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;

private:
    void preview(Point by);

    QStringList parts_;
    std::vector<std::string> moved_;  ///< the parts and what stands on them
    Point from_;
    QString called_;
    Moving moving_;
    SnapTargets targets_;
    Point by_;
};

/// A cutout moved within its counter.
class CutoutMoveGesture : public Gesture {
public:
    CutoutMoveGesture(ToolHost& host, std::string part, std::string cutout, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;

private:
    void preview(Point ownBy);

    std::string part_;
    std::string cutout_;
    Point from_;
    QString called_;
    Placement frame_;
    Moving moving_;
    SnapTargets targets_;
    Point by_;
};

/// A fixture of the site moved.
class FixtureMoveGesture : public Gesture {
public:
    FixtureMoveGesture(ToolHost& host, std::string fixture, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;

private:
    void preview(Point by);

    std::string fixture_;
    Point from_;
    Moving moving_;
    SnapTargets targets_;
    Point by_;
};

/// The way of a typed move: one figure goes on in the direction of the drag, two are right and back (or up).
Point typedWay(const TypedSize& size, Point dragged);
/// The axis that Shift keeps still.
AxisLock lockFor(Point by, Qt::KeyboardModifiers modifiers);
/// What is left of a cutout's counter beside it, smallest first in words: "40 mm in front".
QString stripsText(const Counter& counter, const Cutout& cutout);

}  // namespace yardcast::ui
