#pragma once

#include "ui/canvas/gestures/gesture.h"

namespace yardcast::ui {

/// In elevation: the top or the foot of a part dragged up or down. The top of a support, panel or front is its height;
/// its foot moves while the top stays; the underside of a counter is its rim's depth, or its thickness.
class LevelGesture : public Gesture {
public:
    LevelGesture(ToolHost& host, std::string part, bool top, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;
    QString currentSize() const override;

private:
    void preview(double heightMm);

    std::string part_;
    bool top_;
    QString called_;
    double lowMm_ = 0.0;
    double highMm_ = 0.0;
    double x_ = 0.0;
    double off_ = 0.0;
    double heightMm_ = 0.0;
    SnapTargets targets_;
};

}  // namespace yardcast::ui
