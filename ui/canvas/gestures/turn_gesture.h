#pragma once

#include "ui/canvas/gestures/gesture.h"

namespace yardcast::ui {

/// Parts turned as one about the middle of their bounds, in steps of 15 degrees; Alt: whole degrees.
class TurnGesture : public Gesture {
public:
    TurnGesture(ToolHost& host, QStringList parts, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;
    void paint(QPainter& painter, const PaintStyle& style) override;
    QRectF paintBounds() const override;

private:
    void preview(double deg);

    QStringList parts_;
    QString called_;
    Point about_;
    Point from_;
    double deg_ = 0.0;
};

}  // namespace yardcast::ui
