#pragma once

#include <memory>
#include <optional>

#include <QObject>
#include <QRegion>
#include <QTimer>

#include "ui/canvas/canvas.h"
#include "ui/canvas/overlay.h"
#include "ui/canvas/plan_scene.h"
#include "ui/canvas/sheet_view.h"
#include "ui/canvas/snapper.h"
#include "ui/canvas/tool.h"
#include "ui/canvas/toolbox.h"

namespace yardcast::ui {

class PointerLabel;
class StrengthLegend;
class SelectTool;
class TypedSizeField;

/// What happens inside the canvas: pointer events become a tool's events, and what the tool asks for is answered from
/// the scene, the view and the overlay.
class CanvasHost : public QObject, public ToolHost {
    Q_OBJECT

public:
    CanvasHost(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget& canvas);
    ~CanvasHost() override;

    SheetView& view() { return *view_; }
    const SheetView& view() const { return *view_; }
    const PlanScene& scene() const { return scene_; }
    const Overlay& overlay() const { return overlay_; }
    TypedSizeField& field() { return *field_; }
    Tool& tool() { return *tool_; }
    const Tool& tool() const { return *tool_; }
    const ToolChoice& choice() const { return choice_; }
    /// The select tool while it is in hand, or null.
    SelectTool* selectTool();

    void setProjection(const Projection& projection);
    void setStage(Stage stage);
    Stage stage() const { return stage_; }
    void setInk(const Ink& ink);
    void choose(const ToolChoice& choice);
    void setSnappingOn(bool on) { snapper_.setOn(on); }
    bool isSnappingOn() const { return snapper_.isOn(); }
    bool cancelGesture();
    bool key(QKeyEvent* event);
    /// With the hands on the keys: a click of the tool in hand in the middle of what is in view, or of the one counter
    /// that is chosen. False where nothing is placed by a click.
    bool clickByKey(Qt::KeyboardModifiers modifiers);
    /// A modifier went down or up: the gesture goes on with it, though the pointer rests.
    void modifiersChanged(Qt::KeyboardModifiers modifiers);
    void openField(const QString& text, bool selected);
    void fit();
    void fitWhenShown();
    /// The view has a size now.
    void shown();
    void fitTo(const QRectF& drawing);
    ViewState viewState() const;
    void setViewState(const ViewState& state);
    /// After something from outside the tools (a nudge, a drop) has used the host.
    void settle();
    void setPointer(QPointF viewPx);

    // ToolHost
    PlanDocument& document() override { return document_; }
    Selection& selection() override { return selection_; }
    LiveAssessment& live() override { return live_; }
    const Projection& projection() const override { return projection_; }
    const Ink& ink() const override { return ink_; }
    double mmPerPixel() const override { return view_->mmPerPixel(); }
    Point viewCentre() const override;
    std::vector<Hit> hitsAt(Point at) const override;
    QStringList partsIn(const QRectF& drawing) const override;
    std::optional<Handle> handleAt(Point at) const override;
    std::optional<Dimension> figureAt(Point at) const override;
    void typeOver(const Dimension& dimension) override;
    SnapTargets snapTargets(const QStringList& withoutParts) const override;
    Snap snapPoint(const SnapTargets& targets, Point at, Qt::KeyboardModifiers modifiers,
                   const Placement& frame = {}) override;
    Snap snapMove(const SnapTargets& targets, const Moving& moving, Point by, Qt::KeyboardModifiers modifiers,
                  AxisLock locked = {}, const Placement& frame = {}) override;
    Snap snapAlong(const SnapTargets& targets, Point at, Point direction, Qt::KeyboardModifiers modifiers,
                   const Placement& frame = {}) override;
    double gridMm(Qt::KeyboardModifiers modifiers) const override;
    void clearGuides() override;
    void say(const QString& text) override;
    void sayAtPointer(const QString& text) override;
    void finished(const QStringList& made) override;
    void finishedCutout(const std::string& part, const std::string& cutout) override;
    void finishedFixture(const std::string& fixture) override;
    void setHovered(const Hit& hit) override;
    void setHoveredFigure(const std::optional<Dimension>& figure) override;
    void setChosenCorner(int corner) override;
    void hintChanged() override;
    void repaintOverlay() override;

signals:
    void toolChanged(ToolKind tool);
    void projectionChanged(const Projection& projection);
    void measureTextChanged(const QString& text);
    void hintTextChanged(const QString& hint);
    void viewChanged();
    void pointerMoved(QPointF viewPx);
    void pointerLeft();
    void contextMenuRequested(const QPoint& globalPosition);
    /// What is chosen covers another stretch of the rulers.
    void chosenMoved();

private:
    void press(QMouseEvent* event, bool isDouble);
    void move(QMouseEvent* event);
    void release(QMouseEvent* event);
    void leave();
    void contextMenu(QMouseEvent* event);
    QPointF driftPx() const;
    void drift();
    PointerEvent pointerEvent(const QMouseEvent& event) const;
    Point toPlane(QPointF viewPx) const;

    void planChanged();
    void committedChanged();
    void assessed();
    void viewMoved();
    void swapTool();
    void updateSheet(bool anew);
    void updateLegend();
    void placeLegend();
    QString caseText() const;
    void flushOverlay();
    void repaintLater();
    QString hintOfEmptySheet() const;
    void tellMeasure();
    QRegion regionPx(const std::vector<QRectF>& drawing) const;
    void updateDrawing(const std::vector<QRectF>& drawing);

    PlanDocument& document_;
    Selection& selection_;
    LiveAssessment& live_;
    QWidget& canvas_;
    Projection projection_ = Projection::above();
    Stage stage_ = Stage::layOut;
    Ink ink_ = lightInk();
    Snapper snapper_;

    PlanScene scene_;
    Overlay overlay_;
    SheetView* view_;
    PointerLabel* label_;
    StrengthLegend* legend_;
    TypedSizeField* field_;
    ToolChoice choice_;
    std::unique_ptr<Tool> tool_;
    std::optional<ToolChoice> nextChoice_;

    QPointF pointerPx_;
    bool pointerInside_ = false;
    std::optional<PointerEvent> pressed_;
    bool dragged_ = false;
    bool ignoreRelease_ = false;
    Qt::KeyboardModifiers modifiers_;
    QTimer driftTimer_;

    QString toolText_;
    QString shownText_;
    QRegion coveredPx_;
    bool overlayDirty_ = false;
    bool outlinesDirty_ = false;
    bool flushQueued_ = false;
    bool wasEmpty_ = true;
    bool fitPending_ = true;
    ViewState otherView_;  ///< of the projection that is not shown
};

}  // namespace yardcast::ui
