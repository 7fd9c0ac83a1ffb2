#pragma once

#include <optional>

#include "core/plan/plan.h"
#include "ui/canvas/tool.h"

namespace yardcast::ui {

/// A batten front: drag from one end to the other. A click places one of the usual length.
class FrontTool : public Tool {
public:
    explicit FrontTool(ToolHost& host);

    QString name() const override;
    QString hint() const override;
    void activate() override;
    void press(const PointerEvent& event) override;
    void move(const PointerEvent& event) override;
    void release(const PointerEvent& event) override;
    void doubleClick(const PointerEvent&) override {}
    bool canType() const override { return true; }
    QString typed(const TypedSize& size) override;
    bool isGesturing() const override { return from_.has_value(); }
    bool cancel() override;

private:
    void preview();
    void place(Point from, Point to);

    SnapTargets targets_;
    std::optional<Point> from_;
    std::optional<Point> hover_;
    Point to_;
};

}  // namespace yardcast::ui
