#pragma once

#include <optional>

#include "core/plan/plan.h"
#include "ui/canvas/tool.h"

namespace yardcast::ui {

/// An outline corner by corner: a counter, or the site. A click on the first corner, Enter or a double click closes it;
/// Backspace takes the last corner back; digits give the next edge its length in the direction of the pointer.
class PolygonTool : public Tool {
public:
    enum class Makes { counter, siteOutline };
    PolygonTool(ToolHost& host, Makes makes);

    QString name() const override;
    QString hint() const override;
    void activate() override;
    void press(const PointerEvent& event) override;
    void move(const PointerEvent& event) override;
    void doubleClick(const PointerEvent& event) override;
    bool key(QKeyEvent* event) override;
    bool wantsKey(const QKeyEvent& event) const override;
    QString typed(const TypedSize& size) override;
    bool isGesturing() const override { return !corners_.empty(); }
    bool cancel() override;
    void paint(QPainter& painter, const PaintStyle& style) override;
    QRectF paintBounds() const override;

private:
    Point next(const PointerEvent& event);
    void add(Point corner);
    void preview();
    void close();
    bool atFirst(Point at) const;
    bool hasOutline() const;

    Makes makes_;
    SnapTargets targets_;
    Ring corners_;
    Point pointer_;
};

}  // namespace yardcast::ui
