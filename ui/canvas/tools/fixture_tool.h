#pragma once

#include <optional>

#include "core/plan/plan.h"
#include "ui/canvas/tool.h"

namespace yardcast::ui {

/// Something of the site: a click places it; walls, trees, doors and the like can be dragged to size.
class FixtureTool : public Tool {
public:
    FixtureTool(ToolHost& host, FixtureKind kind);

    QString name() const override;
    QString hint() const override;
    void activate() override;
    void press(const PointerEvent& event) override;
    void move(const PointerEvent& event) override;
    void release(const PointerEvent& event) override;
    void doubleClick(const PointerEvent&) override {}
    bool canType() const override { return true; }
    QString typed(const TypedSize& size) override;
    bool isGesturing() const override { return anchor_.has_value(); }
    bool cancel() override;

private:
    Fixture fixtureIn(const Box& box) const;
    void place(const Fixture& fixture);

    FixtureKind kind_;
    SnapTargets targets_;
    std::optional<Point> anchor_;
    std::optional<Point> hover_;
    Point corner_;
};

}  // namespace yardcast::ui
