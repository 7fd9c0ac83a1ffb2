#pragma once

#include <memory>
#include <optional>

#include "core/plan/plan.h"
#include "ui/canvas/gestures/gesture.h"
#include "ui/canvas/tool.h"

namespace yardcast::ui {

/// Chooses by click and band, and starts the gesture that fits what is dragged: a handle, a cutout, parts, an edge with
/// Ctrl, or nothing (a band).
class SelectTool : public Tool {
public:
    explicit SelectTool(ToolHost& host);
    ~SelectTool() override;

    QString name() const override;
    QString hint() const override;
    QCursor cursor() const override { return cursor_; }
    void deactivate() override;
    void press(const PointerEvent& event) override;
    void move(const PointerEvent& event) override;
    void release(const PointerEvent& event) override;
    void doubleClick(const PointerEvent& event) override;
    void leave() override;
    bool key(QKeyEvent* event) override;
    bool wantsKey(const QKeyEvent& event) const override;
    bool canType() const override;
    QString currentSize() const override;
    QString typed(const TypedSize& size) override;
    bool isGesturing() const override { return gesture_ != nullptr; }
    bool cancel() override;
    void paint(QPainter& painter, const PaintStyle& style) override;
    QRectF paintBounds() const override;

    /// The corner a click has chosen, to be deleted or nudged; -1: none.
    int chosenCorner() const { return corner_; }
    bool removeChosenCorner();
    void dropCorner();

private:
    /// What the button went down on.
    struct Press {
        PointerEvent event;
        std::vector<Hit> hits;
        std::optional<Handle> handle;
        std::optional<Dimension> figure;
        bool adds = false;
        bool choseNow = false;  ///< the press itself has chosen; the click has nothing left to do
    };

    std::unique_ptr<Gesture> gestureFor(const Press& press);
    std::unique_ptr<Gesture> handleGesture(const Handle& handle, const PointerEvent& event);
    /// The edge of the chosen counter within reach of the pointer, or -1.
    int edgeAt(Point at, Point* foot = nullptr) const;
    void click(const Press& press);
    void choose(const Hit& hit);
    bool isChosen(const Hit& hit) const;
    void hover(const PointerEvent& event);
    void finishGesture();
    const QString& called(const Hit& hit);

    std::unique_ptr<Gesture> gesture_;
    std::optional<Press> press_;
    std::optional<Point> lastClick_;
    QCursor cursor_;
    int corner_ = -1;
    Hit saidOf_;
    PlanPtr saidIn_;
    QString said_;
};

}  // namespace yardcast::ui
