#pragma once

#include "core/plan/plan.h"
#include "ui/canvas/gestures/gesture.h"

namespace yardcast::ui {

/// What the gestures on the outline of one counter share: the counter as it was, and the figures at the pointer.
class OutlineGesture : public Gesture {
public:
    OutlineGesture(ToolHost& host, std::string part);

protected:
    const Ring& outline() const { return outline_; }
    const Placement& frame() const { return frame_; }
    const std::string& part() const { return part_; }
    const QString& called() const { return called_; }
    SnapTargets& targets() { return targets_; }
    bool isValid() const { return outline_.size() >= 3; }
    Point point(int index) const;
    /// Unit vector out of the slab across an edge, in the own frame.
    Point outwards(int edge) const;
    /// Lengths of the named edges of the plan as it is now, and what the counter weighs.
    void tell(const std::vector<int>& edges);

private:
    std::string part_;
    QString called_;
    Ring outline_;
    Placement frame_;
    SnapTargets targets_;  ///< in the own frame: the rest of the plan and the counter's own still corners
};

/// An edge moved across its own direction; its neighbours follow.
class EdgeGesture : public OutlineGesture {
public:
    EdgeGesture(ToolHost& host, std::string part, int edge, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;
    QString currentSize() const override;

private:
    int measured() const;
    void preview(double outwardsMm);

    int edge_;
    Point grip_;  ///< where the edge was taken, own frame, on the edge
    Point off_;   ///< from there to the pointer
};

/// A corner moved: where it is right-angled both its edges move and stay straight; Ctrl (or any other corner) moves
/// the corner alone.
class CornerGesture : public OutlineGesture {
public:
    CornerGesture(ToolHost& host, std::string part, int corner, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;
    QString currentSize() const override;

private:
    bool keepsRight(Qt::KeyboardModifiers modifiers) const;
    void preview(Point toOwn, bool keepRight);

    int corner_;
    Point off_;
    bool right_ = false;
};

/// A stretch of an edge pulled out (or pushed in) as a step: a rectangle becomes an L. The step's free corner follows
/// the pointer; taken in the middle third, a stretch of the middle moves and the outline becomes a T or a U.
class StepGesture : public OutlineGesture {
public:
    StepGesture(ToolHost& host, std::string part, int edge, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;

private:
    void preview(double alongMm, double outwardsMm);

    int edge_;
    double span_ = 0.0;
    enum class Where { start, middle, end } where_ = Where::end;
    double along_ = 0.0;
    double outwards_ = 0.0;
};

}  // namespace yardcast::ui
