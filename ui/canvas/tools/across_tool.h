#pragma once

#include <optional>

#include "core/plan/plan.h"
#include "ui/canvas/tool.h"

namespace yardcast::ui {

/// A straight line across the counter under the pointer, from edge to edge: a joint that divides it into castings, or a
/// rib. A click puts it square across the shorter way (Shift: the other way); a drag gives its direction.
class AcrossTool : public Tool {
public:
    enum class Makes { joint, rib };
    AcrossTool(ToolHost& host, Makes makes);

    QString name() const override;
    QString hint() const override;
    void deactivate() override;
    void press(const PointerEvent& event) override;
    void move(const PointerEvent& event) override;
    void release(const PointerEvent& event) override;
    void doubleClick(const PointerEvent&) override {}
    void leave() override;
    bool canType() const override { return line_.has_value(); }
    QString typed(const TypedSize& size) override;
    bool isGesturing() const override { return anchor_.has_value(); }
    bool cancel() override;
    void paint(QPainter& painter, const PaintStyle& style) override;
    QRectF paintBounds() const override;

private:
    bool takeCounter(Point inPlan);
    /// The chord through a point of the own frame, across the shorter way or along `way`.
    void aim(Point own, std::optional<Point> way, bool turned);
    void preview();
    void place();
    Plan withLine(const Plan& plan) const;

    Makes makes_;
    std::string counter_;
    Placement frame_;
    SnapTargets targets_;
    std::optional<Point> anchor_;
    std::optional<std::pair<Point, Point>> line_;  ///< own frame
    bool upright_ = true;                          ///< the line runs along own y
};

}  // namespace yardcast::ui
