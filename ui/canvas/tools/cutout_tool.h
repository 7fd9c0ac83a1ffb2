#pragma once

#include <optional>

#include "core/plan/plan.h"
#include "ui/canvas/tool.h"

namespace yardcast::ui {

/// A cutout in the counter under the pointer: drag it to size (a round one by its diameter, from its centre), or click
/// for the usual size. It snaps to the counter's centre lines and to equal strips.
class CutoutTool : public Tool {
public:
    CutoutTool(ToolHost& host, CutoutPurpose purpose, CutoutShape shape);

    QString name() const override;
    QString hint() const override;
    void deactivate() override;
    void press(const PointerEvent& event) override;
    void move(const PointerEvent& event) override;
    void release(const PointerEvent& event) override;
    void doubleClick(const PointerEvent&) override {}
    void leave() override;
    bool canType() const override { return !counter_.empty(); }
    QString currentSize() const override;
    QString typed(const TypedSize& size) override;
    bool isGesturing() const override { return anchor_.has_value(); }
    bool cancel() override;
    void paint(QPainter& painter, const PaintStyle& style) override;
    QRectF paintBounds() const override;

private:
    /// Takes the counter under the pointer as the one to cut; false when there is none.
    bool takeCounter(Point inPlan);
    Cutout usualAt(Point own) const;
    Cutout dragged() const;
    Point snapOwn(Point inPlan, Qt::KeyboardModifiers modifiers);
    Point snapUsual(Point inPlan, Qt::KeyboardModifiers modifiers);
    void preview(Cutout cutout);
    void place(Cutout cutout);
    void tell(const Cutout& cutout);

    CutoutPurpose purpose_;
    CutoutShape shape_;
    std::string counter_;
    Placement frame_;
    SnapTargets targets_;
    std::optional<Point> anchor_;  ///< own frame
    Point to_;
    std::optional<Cutout> ghost_;
};

}  // namespace yardcast::ui
