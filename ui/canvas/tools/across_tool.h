#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "core/plan/plan.h"
#include "ui/canvas/tool.h"

namespace yardcast::ui {

/// A straight line across the counter under the pointer, from edge to edge: a joint that divides it into castings, or a
/// rib. A click puts it square across the shorter way (Shift: the other way); a drag gives its direction. One that is
/// there already is dragged along, or taken away with Delete.
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
    bool key(QKeyEvent* event) override;
    bool wantsKey(const QKeyEvent& event) const override;
    bool canType() const override { return line_.has_value(); }
    QString typed(const TypedSize& size) override;
    bool isGesturing() const override { return anchor_.has_value(); }
    bool cancel() override;
    void paint(QPainter& painter, const PaintStyle& style) override;
    QRectF paintBounds() const override;

private:
    using Line = std::pair<Point, Point>;

    bool takeCounter(Point inPlan);
    /// The lines the counter has, own frame; and which of them the point is at, or -1.
    std::vector<Line> lines() const;
    int lineAt(Point own) const;
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
    std::optional<Line> line_;  ///< own frame
    int present_ = -1;          ///< which line of the counter is in hand or under the pointer; -1: a new one
    bool upright_ = true;       ///< the line runs along own y
};

}  // namespace yardcast::ui
