#pragma once

#include <functional>

#include "ui/canvas/gestures/gesture.h"

namespace yardcast::ui {

/// A band drawn over the sheet chooses every part it touches; with Ctrl or Shift, besides what is chosen already.
class BandGesture : public Gesture {
public:
    /// `partsIn` gives the parts that a rectangle (drawing mm) touches.
    using PartsIn = std::function<QStringList(const QRectF&)>;
    BandGesture(ToolHost& host, PartsIn partsIn, Point from, bool add);

    QString name() const override { return {}; }
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize&) override { return {}; }
    bool changesPlan() const override { return false; }
    void cancelled() override;
    void paint(QPainter& painter, const PaintStyle& style) override;
    QRectF paintBounds() const override { return band_; }

private:
    PartsIn partsIn_;
    Point from_;
    QStringList before_;
    QStringList base_;
    QRectF band_;
};

}  // namespace yardcast::ui
