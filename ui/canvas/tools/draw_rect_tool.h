#pragma once

#include <optional>

#include "core/plan/plan.h"
#include "ui/canvas/tool.h"

namespace yardcast::ui {

/// Counters, supports, panels and appliances: drag from corner to corner. A click places the default size; digits
/// before the press place the typed size.
class DrawRectTool : public Tool {
public:
    DrawRectTool(ToolHost& host, PartKind kind);

    QString name() const override;
    QString hint() const override;
    void activate() override;
    void press(const PointerEvent& event) override;
    void move(const PointerEvent& event) override;
    void release(const PointerEvent& event) override;
    void doubleClick(const PointerEvent&) override {}
    bool canType() const override { return true; }
    QString currentSize() const override;
    QString typed(const TypedSize& size) override;
    bool isGesturing() const override { return anchor_.has_value(); }
    bool cancel() override;

private:
    Box boxTo(Point corner) const;
    void preview(const Box& box);
    void place(const Box& box);
    void place(const Part& part);

    PartKind kind_;
    SnapTargets targets_;
    std::optional<Point> anchor_;
    std::optional<Point> hover_;
    Point corner_;
};

}  // namespace yardcast::ui
