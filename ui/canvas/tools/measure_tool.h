#pragma once

#include <optional>

#include "ui/canvas/tool.h"

namespace yardcast::ui {

/// Measures between two points, dragged or clicked; the plan stays as it is. The last measure stays in view.
class MeasureTool : public Tool {
public:
    explicit MeasureTool(ToolHost& host) : Tool(host) {}

    QString name() const override;
    QString hint() const override;
    void activate() override;
    void deactivate() override;
    void press(const PointerEvent& event) override;
    void move(const PointerEvent& event) override;
    void release(const PointerEvent& event) override;
    bool canType() const override { return false; }
    bool isGesturing() const override { return measuring_; }
    bool cancel() override;
    void paint(QPainter& painter, const PaintStyle& style) override;
    QRectF paintBounds() const override;

private:
    Dimension line() const;
    void tell();

    SnapTargets targets_;
    std::optional<Point> from_;
    Point to_;
    bool measuring_ = false;
    bool pressed_ = false;
};

}  // namespace yardcast::ui
