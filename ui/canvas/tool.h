#pragma once

#include <optional>

#include <QCursor>
#include <QPointF>
#include <QString>
#include <Qt>

#include "core/geometry/point.h"
#include "ui/drawing/part_painter.h"

class QKeyEvent;
class QPainter;

namespace yardcast::ui {

class PlanDocument;
class Selection;
class LiveAssessment;

/// A pointer event as a tool sees it.
struct PointerEvent {
    Point at;                      ///< Projection::unmap of the pointer: plan mm, or along/height in elevation
    Point snapped;                 ///< the same after snapping (equal to `at` while Alt is held)
    QPointF viewPx;
    Qt::MouseButton button = Qt::NoButton;
    Qt::MouseButtons buttons;
    Qt::KeyboardModifiers modifiers;
};

/// Sizes typed at the pointer: one or two figures in mm.
struct TypedSize {
    double firstMm = 0.0;
    std::optional<double> secondMm;
};

/// What a tool may ask of the canvas; the canvas implements it, so a tool knows no view and no window.
class ToolHost {
public:
    virtual ~ToolHost() = default;
    virtual PlanDocument& document() = 0;
    virtual Selection& selection() = 0;
    virtual LiveAssessment& live() = 0;
    virtual const Projection& projection() const = 0;
    /// mm that one pixel covers now.
    virtual double mmPerPixel() const = 0;
    /// Snaps `at` against everything but the named parts and shows guide lines; Alt suspends.
    virtual Point snap(Point at, const QStringList& withoutParts, Qt::KeyboardModifiers modifiers) = 0;
    virtual void clearGuides() = 0;
    /// Text of the measure line ("1850 x 620 mm, 92 kg, 3 people").
    virtual void say(const QString& text) = 0;
    /// Figures beside the pointer while a gesture runs; empty hides.
    virtual void sayAtPointer(const QString& text) = 0;
    /// Back to the select tool, with what was made chosen.
    virtual void finished(const QStringList& made) = 0;
    virtual void repaintOverlay() = 0;
};

/// One way of using the pointer on the sheet. Tools preview through PlanDocument::preview and end with
/// commitPreview or cancelPreview; Escape always undoes the gesture.
class Tool {
public:
    explicit Tool(ToolHost& host) : host_(host) {}
    virtual ~Tool() = default;

    virtual QString name() const = 0;
    /// One line for the measure line: what to do now.
    virtual QString hint() const = 0;
    virtual QCursor cursor() const { return Qt::CrossCursor; }
    virtual void activate() {}
    virtual void deactivate() { cancel(); }
    virtual void press(const PointerEvent&) {}
    virtual void move(const PointerEvent&) {}
    virtual void release(const PointerEvent&) {}
    virtual void doubleClick(const PointerEvent&) {}
    /// True when the key was used.
    virtual bool key(QKeyEvent*) { return false; }
    /// A size typed while drawing or dragging; true when it made sense.
    virtual bool typed(const TypedSize&) { return false; }
    /// Undoes the gesture in progress; true when there was one.
    virtual bool cancel() { return false; }
    /// Over everything, in drawing mm.
    virtual void paint(QPainter&, const PaintStyle&) {}

protected:
    ToolHost& host() const { return host_; }

private:
    ToolHost& host_;
};

}  // namespace yardcast::ui
