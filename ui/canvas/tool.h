#pragma once

#include <optional>
#include <string>
#include <vector>

#include <QCursor>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <QStringList>
#include <Qt>

#include "core/geometry/point.h"
#include "ui/canvas/handles.h"
#include "ui/canvas/hit.h"
#include "ui/canvas/snapping.h"
#include "ui/canvas/typed_size.h"
#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/part_painter.h"

class QKeyEvent;
class QPainter;

namespace yardcast::ui {

class PlanDocument;
class Selection;
class LiveAssessment;

/// A pointer event as a tool sees it. Points are Projection::unmap of the pointer: plan mm, or along and height in
/// elevation.
struct PointerEvent {
    Point at;
    Point pressedAt;               ///< where the button went down (equal to `at` without a button)
    QPointF viewPx;
    bool dragged = false;          ///< the pointer has been more than 4 px away since the press
    Qt::MouseButton button = Qt::NoButton;
    Qt::MouseButtons buttons;
    Qt::KeyboardModifiers modifiers;
};

/// What a tool may ask of the canvas; the canvas implements it, so a tool knows no view and no window.
class ToolHost {
public:
    virtual ~ToolHost() = default;
    virtual PlanDocument& document() = 0;
    virtual Selection& selection() = 0;
    virtual LiveAssessment& live() = 0;
    virtual const Projection& projection() const = 0;
    virtual const Ink& ink() const = 0;
    /// mm that one pixel covers now.
    virtual double mmPerPixel() const = 0;
    /// The middle of what is in view: where things go that are placed without the pointer.
    virtual Point viewCentre() const = 0;
    /// What lies under the point, uppermost first; thin things are widened to what a hand can hit.
    virtual std::vector<Hit> hitsAt(Point at) const = 0;
    /// Parts whose shape the rectangle (drawing mm) touches.
    virtual QStringList partsIn(const QRectF& drawing) const = 0;
    /// The handle or the figure of a dimension under the pointer, if any.
    virtual std::optional<Handle> handleAt(Point at) const = 0;
    virtual std::optional<Dimension> figureAt(Point at) const = 0;
    /// Opens the field over the figure, to type another.
    virtual void typeOver(const Dimension& dimension) = 0;

    /// Everything that may be snapped to but the named parts, as the committed plan is.
    virtual SnapTargets snapTargets(const QStringList& withoutParts) const = 0;
    /// The snaps, with the radius and the grid of the zoom; Alt (or snapping switched off) gives whole mm only. Guides
    /// are shown and named in the measure line. `frame` is where the frame of the targets and of the point lies.
    virtual Snap snapPoint(const SnapTargets& targets, Point at, Qt::KeyboardModifiers modifiers,
                           const Placement& frame = {}) = 0;
    virtual Snap snapMove(const SnapTargets& targets, const Moving& moving, Point by, Qt::KeyboardModifiers modifiers,
                          AxisLock locked = {}, const Placement& frame = {}) = 0;
    virtual Snap snapAlong(const SnapTargets& targets, Point at, Point direction, Qt::KeyboardModifiers modifiers,
                           const Placement& frame = {}) = 0;
    /// Pitch of the grid that snaps hold to now; 0 while Alt suspends them.
    virtual double gridMm(Qt::KeyboardModifiers modifiers) const = 0;
    virtual void clearGuides() = 0;

    /// Text of the measure line ("1850 x 620 mm, 92 kg, 3 people").
    virtual void say(const QString& text) = 0;
    /// Figures beside the pointer while a gesture runs; empty hides.
    virtual void sayAtPointer(const QString& text) = 0;
    /// Back to the select tool, with what was made chosen.
    virtual void finished(const QStringList& made) = 0;
    virtual void finishedCutout(const std::string& part, const std::string& cutout) = 0;
    virtual void finishedFixture(const std::string& fixture) = 0;
    virtual void setHovered(const Hit& hit) = 0;
    virtual void setHoveredFigure(const std::optional<Dimension>& figure) = 0;
    /// The chosen corner of a chosen outline (-1: none), for the marks.
    virtual void setChosenCorner(int corner) = 0;
    virtual void hintChanged() = 0;
    /// What the tool paints, or the marks of what is chosen, has changed.
    virtual void repaintOverlay() = 0;
};

/// One way of using the pointer on the sheet. Tools preview through PlanDocument::preview and end with
/// commitPreview or cancelPreview; Escape always undoes the gesture.
class Tool {
public:
    explicit Tool(ToolHost& host) : host_(host) {}
    virtual ~Tool() = default;
    Tool(const Tool&) = delete;
    Tool& operator=(const Tool&) = delete;

    virtual QString name() const = 0;
    /// One line for the measure line: what to do now.
    virtual QString hint() const = 0;
    virtual QCursor cursor() const { return Qt::CrossCursor; }
    virtual void activate() {}
    virtual void deactivate() { cancel(); }
    virtual void press(const PointerEvent&) {}
    virtual void move(const PointerEvent&) {}
    virtual void release(const PointerEvent&) {}
    virtual void doubleClick(const PointerEvent& event) { press(event); }
    /// The pointer has left the sheet.
    virtual void leave() {}
    /// True when the key was used.
    virtual bool key(QKeyEvent*) { return false; }
    /// True when this key belongs to the tool now, even where it is a command of the window.
    virtual bool wantsKey(const QKeyEvent&) const { return false; }
    /// True while there is something whose size can be typed.
    virtual bool canType() const { return isGesturing(); }
    /// The size as it is, for the field to start with.
    virtual QString currentSize() const { return {}; }
    /// A size typed while drawing or dragging: empty when it was applied, or why not, in words.
    virtual QString typed(const TypedSize&) { return {}; }
    virtual bool isGesturing() const = 0;
    /// Undoes the gesture in progress; true when there was one.
    virtual bool cancel() { return false; }
    /// Over everything, in drawing mm.
    virtual void paint(QPainter&, const PaintStyle&) {}
    /// Bounds of what `paint` covers, in drawing mm, without the width of its lines.
    virtual QRectF paintBounds() const { return {}; }

protected:
    ToolHost& host() const { return host_; }

private:
    ToolHost& host_;
};

}  // namespace yardcast::ui
