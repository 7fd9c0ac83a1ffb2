#pragma once

#include <functional>
#include <utility>

#include <QGraphicsView>
#include <QKeyEvent>

#include "ui/look/ink.h"

class QNativeGestureEvent;
class QPinchGesture;

namespace yardcast::ui {

/// What a wheel event means: a mouse wheel zooms at the pointer; two fingers on a trackpad pan, with Ctrl they zoom.
struct WheelMeaning {
    double zoomFactor = 1.0;
    QPointF panPx;
};
WheelMeaning meaningOf(const QWheelEvent& event);

/// The sheet for a drawing of these bounds: room all round, and never less than 4 x 3 m.
QRectF paperFor(const QRectF& content);

inline constexpr double kLeastPixelsPerMm = 0.005;  ///< 200 m across 1000 px
inline constexpr double kMostPixelsPerMm = 20.0;

/// The sheet on the bench: zoom, pan, grid, scale bar. It knows nothing of plans or tools: pointer events go to the
/// handler, and what lies over the drawing is painted by the painter it is given.
class SheetView : public QGraphicsView {
    Q_OBJECT

public:
    /// Pointer events in viewport pixels; return true when used.
    struct Handler {
        std::function<void(QMouseEvent*)> press;
        std::function<void(QMouseEvent*)> move;
        std::function<void(QMouseEvent*)> release;
        std::function<void(QMouseEvent*)> doubleClick;
        std::function<void()> leave;
        /// With what has to be painted, drawing mm.
        std::function<void(QPainter&, const QRectF&)> paintOver;
        std::function<QCursor()> cursor;
        /// What to do next, in the middle of an empty sheet.
        std::function<QString()> hint;
        /// What is to be read about the place, or nothing.
        std::function<QString(QPointF)> toolTip;
    };

    explicit SheetView(QGraphicsScene* scene, QWidget* parent = nullptr);

    void setHandler(Handler handler) { handler_ = std::move(handler); }
    void setInk(const Ink& ink);
    /// Whether the grid is drawn; snapping to it is another matter.
    bool isGridShown() const { return gridShown_; }
    void setGridShown(bool shown);
    /// The paper, drawing mm.
    void setSheet(const QRectF& sheet);
    const QRectF& sheet() const { return sheet_; }

    double pixelsPerMm() const { return pixelsPerMm_; }
    double mmPerPixel() const { return 1.0 / pixelsPerMm_; }
    QPointF centreMm() const { return centre_; }
    void setView(QPointF centreMm, double pixelsPerMm);
    /// Zoomed so that what lies under `viewPx` stays there.
    void zoomAt(QPointF viewPx, double factor);
    void panBy(QPointF px);
    /// All of the rectangle in view, with a margin; never closer than 2 px a mm.
    void fit(const QRectF& drawing);

    QPointF toDrawing(QPointF viewPx) const;
    QPointF toView(QPointF drawing) const;

    /// Space is held: the left button pans.
    void setPanKey(bool held);
    bool isPanning() const { return panning_; }
    void updateCursor();

signals:
    void viewChanged();

protected:
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    bool viewportEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override { event->ignore(); }
    void keyReleaseEvent(QKeyEvent* event) override { event->ignore(); }
    void drawBackground(QPainter* painter, const QRectF& rect) override;
    void drawForeground(QPainter* painter, const QRectF& rect) override;
    void scrollContentsBy(int dx, int dy) override;

private:
    void apply();
    void drawHint(QPainter& painter) const;
    void nativeGesture(QNativeGestureEvent* event);
    void pinch(const QPinchGesture& gesture);
    void drawGrid(QPainter& painter, const QRectF& rect, double pitchMm, const QColor& colour) const;
    void drawScaleBar(QPainter& painter) const;

    Handler handler_;
    bool gridShown_ = true;
    Ink ink_ = lightInk();
    QRectF sheet_;
    QPointF centre_;
    double pixelsPerMm_ = 0.2;
    bool panKey_ = false;
    bool panning_ = false;
    QPointF panFrom_;
};

}  // namespace yardcast::ui
