#pragma once

#include <memory>

#include <QPointF>
#include <QString>
#include <QWidget>

#include "core/plan/plan.h"
#include "ui/canvas/tool_kind.h"
#include "ui/drawing/projection.h"
#include "ui/look/ink.h"
#include "ui/look/stage.h"

namespace yardcast::ui {

class LiveAssessment;
class PlanDocument;
class Selection;

/// Where a view stands: what lies in its middle (drawing mm) and how large.
struct ViewState {
    QPointF centreMm;
    double pixelsPerMm = 0.0;  ///< 0: fit when first shown
    friend bool operator==(const ViewState&, const ViewState&) = default;
};

/// The drawing: rulers at the edges and the sheet one draws on. The keyboard focus goes to the canvas itself.
/// It changes the plan only through the document, and shows whatever `document.plan()` is.
class Canvas : public QWidget {
    Q_OBJECT

public:
    Canvas(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);
    ~Canvas() override;

    const Projection& projection() const;
    Stage stage() const;
    ToolKind tool() const;
    bool isSnappingOn() const;
    bool isGridShown() const;
    /// One line: what to do now with the tool in hand.
    QString hint() const;
    /// True from the press to the release of a drag, and between the corners of an outline.
    bool isGesturing() const;
    /// Of the view that is shown (each projection remembers its own).
    ViewState viewState() const;
    void setViewState(const ViewState& state);

public slots:
    /// From above or along a direction; drawing tools work from above and turn the view back by themselves.
    void setProjection(const Projection& projection);
    void setStage(Stage stage);
    void setInk(const Ink& ink);
    void setTool(ToolKind tool);
    void setSnappingOn(bool on);
    /// Whether the grid is drawn; snapping to it is another matter.
    void setGridShown(bool shown);

    void zoomIn();
    void zoomOut();
    void zoomFit();
    void zoomToChosen();

    void startAddingPart(PartKind kind);
    void startAddingCutout(CutoutPurpose purpose, CutoutShape shape);
    void startAddingFixture(FixtureKind kind);
    void startSiteOutline();

    void selectAll();
    /// What is chosen moves by this much along the plan's axes (in elevation: along, and up); repeated nudges become
    /// one entry of the undo list.
    void nudge(double rightMm, double upMm);
    /// The chosen corner of an outline, the chosen cutout, the chosen fixture or the chosen parts.
    void deleteChosen();
    void turnChosen(double byDeg);
    void mirrorChosen();
    void duplicateChosen();
    /// Opens the field at the pointer for the size of what is being drawn or is chosen.
    void openTypedSize();
    /// Undoes the gesture in progress; true when there was one. Undo and redo of the document do it by themselves.
    bool cancelGesture();

signals:
    void toolChanged(ToolKind tool);
    void projectionChanged(const Projection& projection);
    void snappingChanged(bool on);
    /// Where the pointer is, what it snapped to, the size of what is being drawn.
    void measureTextChanged(const QString& text);
    void hintChanged(const QString& hint);
    /// Zoom or place of the view changed.
    void viewChanged();
    /// The right button: what is under the pointer has been chosen already.
    void contextMenuRequested(const QPoint& globalPosition);

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dragMoveEvent(QDragMoveEvent* event) override;
    void dragLeaveEvent(QDragLeaveEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    bool isOurs(const QKeyEvent& key) const;
    bool startsSize(const QKeyEvent& key) const;
    void passModifiers(const QKeyEvent& event, bool down);
    void escape();
    void announceChosen();

    class Parts;
    std::unique_ptr<Parts> d_;
};

}  // namespace yardcast::ui
