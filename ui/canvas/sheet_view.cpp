#include "ui/canvas/sheet_view.h"

#include <algorithm>
#include <cmath>

#include <QGestureEvent>
#include <QHelpEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QPinchGesture>
#include <QPointingDevice>
#include <QScrollBar>
#include <QToolTip>
#include <QWheelEvent>

#include "ui/canvas/grid.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

/// Half the side of the world one can pan over, mm: a kilometre is refused by the geometry anyway.
constexpr double kWorldMm = 200000.0;
constexpr double kZoomPerNotch = 1.2;
constexpr int kFitMarginPx = 56;
constexpr double kClosestFit = 2.0;
constexpr double kScaleBarPx = 160.0;
constexpr double kPaperMarginMm = 800.0;
constexpr double kPaperStepMm = 500.0;
constexpr QSizeF kLeastPaperMm{4000.0, 3000.0};

}  // namespace

QRectF paperFor(const QRectF& content)
{
    QRectF wanted = content.adjusted(-kPaperMarginMm, -kPaperMarginMm, kPaperMarginMm, kPaperMarginMm);
    const double wider = std::max(0.0, (kLeastPaperMm.width() - wanted.width()) / 2.0);
    const double higher = std::max(0.0, (kLeastPaperMm.height() - wanted.height()) / 2.0);
    wanted.adjust(-wider, -higher, wider, higher);
    const auto down = [](double mm) { return std::floor(mm / kPaperStepMm) * kPaperStepMm; };
    const auto up = [](double mm) { return std::ceil(mm / kPaperStepMm) * kPaperStepMm; };
    return {QPointF(down(wanted.left()), down(wanted.top())), QPointF(up(wanted.right()), up(wanted.bottom()))};
}

WheelMeaning meaningOf(const QWheelEvent& event)
{
    const QPointingDevice* device = event.pointingDevice();
    const bool isPad = (device && device->type() == QInputDevice::DeviceType::TouchPad)
        || event.phase() != Qt::NoScrollPhase;
    const bool ctrl = event.modifiers() & Qt::ControlModifier;
    WheelMeaning meaning;
    const QPointF px = event.pixelDelta().isNull() ? QPointF(event.angleDelta()) / 2.0 : QPointF(event.pixelDelta());
    if (isPad && !ctrl) {
        meaning.panPx = px;
        return meaning;
    }
    // Sideways wheels and Alt (which turns the wheel sideways on some systems) have no vertical part.
    const double turn = event.angleDelta().y() != 0 ? event.angleDelta().y() : event.angleDelta().x();
    const double notches = isPad && !event.pixelDelta().isNull() ? px.y() / 60.0 : turn / 120.0;
    meaning.zoomFactor = std::pow(kZoomPerNotch, notches);
    return meaning;
}

SheetView::SheetView(QGraphicsScene* scene, QWidget* parent) : QGraphicsView(scene, parent)
{
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTransformationAnchor(NoAnchor);
    setResizeAnchor(NoAnchor);
    setAlignment(Qt::AlignLeft | Qt::AlignTop);
    setViewportUpdateMode(SmartViewportUpdate);
    setOptimizationFlags(DontSavePainterState);
    setRenderHint(QPainter::Antialiasing);
    setSceneRect(-kWorldMm, -kWorldMm, 2 * kWorldMm, 2 * kWorldMm);
    setFocusPolicy(Qt::NoFocus);
    viewport()->setFocusPolicy(Qt::NoFocus);
    viewport()->setMouseTracking(true);
    viewport()->grabGesture(Qt::PinchGesture);
    setAcceptDrops(false);
    viewport()->setAcceptDrops(false);
    apply();
}

void SheetView::setGridShown(bool shown)
{
    if (gridShown_ == shown) return;
    gridShown_ = shown;
    resetCachedContent();
    viewport()->update();
}

void SheetView::setInk(const Ink& ink)
{
    ink_ = ink;
    viewport()->update();
}

void SheetView::setSheet(const QRectF& sheet)
{
    if (sheet_ == sheet) return;
    sheet_ = sheet;
    viewport()->update();
}

void SheetView::setView(QPointF centreMm, double pixelsPerMm)
{
    const double scale = std::clamp(pixelsPerMm, kLeastPixelsPerMm, kMostPixelsPerMm);
    const double limit = kWorldMm * 0.9;
    centre_ = {std::clamp(centreMm.x(), -limit, limit), std::clamp(centreMm.y(), -limit, limit)};
    pixelsPerMm_ = scale;
    apply();
}

void SheetView::apply()
{
    setTransform(QTransform::fromScale(pixelsPerMm_, pixelsPerMm_));
    const QPointF half(viewport()->width() / 2.0, viewport()->height() / 2.0);
    const QPointF topLeft = centre_ * pixelsPerMm_ - half;
    horizontalScrollBar()->setValue(static_cast<int>(std::lround(topLeft.x())));
    verticalScrollBar()->setValue(static_cast<int>(std::lround(topLeft.y())));
    viewport()->update();
    emit viewChanged();
}

void SheetView::zoomAt(QPointF viewPx, double factor)
{
    const double scale = std::clamp(pixelsPerMm_ * factor, kLeastPixelsPerMm, kMostPixelsPerMm);
    const QPointF off = viewPx - QPointF(viewport()->width() / 2.0, viewport()->height() / 2.0);
    // From the centre kept in mm, not from the scroll bars: whole pixels would drift in a pinch.
    const QPointF under = centre_ + off / pixelsPerMm_;
    setView(under - off / scale, scale);
}

void SheetView::panBy(QPointF px) { setView(centre_ - px / pixelsPerMm_, pixelsPerMm_); }

void SheetView::fit(const QRectF& drawing)
{
    const double width = std::max(1.0, viewport()->width() - 2.0 * kFitMarginPx);
    const double height = std::max(1.0, viewport()->height() - 2.0 * kFitMarginPx);
    const double scale = std::min({width / std::max(drawing.width(), 1.0), height / std::max(drawing.height(), 1.0),
                                   kClosestFit});
    setView(drawing.center(), scale);
}

QPointF SheetView::toDrawing(QPointF viewPx) const
{
    const QPointF scroll(horizontalScrollBar()->value(), verticalScrollBar()->value());
    return (viewPx + scroll) / pixelsPerMm_;
}

QPointF SheetView::toView(QPointF drawing) const
{
    const QPointF scroll(horizontalScrollBar()->value(), verticalScrollBar()->value());
    return drawing * pixelsPerMm_ - scroll;
}

void SheetView::setPanKey(bool held)
{
    panKey_ = held;
    updateCursor();
}

void SheetView::updateCursor()
{
    QCursor cursor = handler_.cursor ? handler_.cursor() : QCursor(Qt::ArrowCursor);
    if (panning_) {
        cursor = Qt::ClosedHandCursor;
    } else if (panKey_) {
        cursor = Qt::OpenHandCursor;
    }
    // Setting it anew at every move costs a trip to the window system.
    if (viewport()->cursor().shape() != cursor.shape()) viewport()->setCursor(cursor);
}

void SheetView::wheelEvent(QWheelEvent* event)
{
    const WheelMeaning meaning = meaningOf(*event);
    if (meaning.zoomFactor != 1.0) zoomAt(event->position(), meaning.zoomFactor);
    if (!meaning.panPx.isNull()) panBy(meaning.panPx);
    event->accept();
}

void SheetView::mousePressEvent(QMouseEvent* event)
{
    if (event->button() == Qt::MiddleButton || (panKey_ && event->button() == Qt::LeftButton)) {
        panning_ = true;
        panFrom_ = event->position();
        updateCursor();
        return;
    }
    if (handler_.press) handler_.press(event);
    updateCursor();
}

void SheetView::mouseMoveEvent(QMouseEvent* event)
{
    if (panning_) {
        panBy(event->position() - panFrom_);
        panFrom_ = event->position();
        return;
    }
    if (handler_.move) handler_.move(event);
    updateCursor();
}

void SheetView::mouseReleaseEvent(QMouseEvent* event)
{
    if (panning_) {
        panning_ = false;
        updateCursor();
        return;
    }
    if (handler_.release) handler_.release(event);
    updateCursor();
}

void SheetView::mouseDoubleClickEvent(QMouseEvent* event)
{
    if (event->button() == Qt::MiddleButton || panKey_) return mousePressEvent(event);
    if (handler_.doubleClick) handler_.doubleClick(event);
    updateCursor();
}

bool SheetView::viewportEvent(QEvent* event)
{
    switch (event->type()) {
    case QEvent::NativeGesture: nativeGesture(static_cast<QNativeGestureEvent*>(event)); return true;
    case QEvent::Gesture:
        if (auto* gesture = static_cast<QGestureEvent*>(event)->gesture(Qt::PinchGesture)) {
            pinch(*static_cast<QPinchGesture*>(gesture));
            return true;
        }
        break;
    case QEvent::ToolTip: {
        const auto* help = static_cast<QHelpEvent*>(event);
        const QString text = handler_.toolTip ? handler_.toolTip(QPointF(help->pos())) : QString();
        QToolTip::showText(help->globalPos(), text, viewport());
        return true;
    }
    case QEvent::Leave:
        if (handler_.leave) handler_.leave();
        break;
    default: break;
    }
    return QGraphicsView::viewportEvent(event);
}

void SheetView::nativeGesture(QNativeGestureEvent* event)
{
    if (event->gestureType() == Qt::ZoomNativeGesture) zoomAt(event->position(), 1.0 + event->value());
    if (event->gestureType() == Qt::PanNativeGesture) panBy(event->delta());
    event->accept();
}

void SheetView::pinch(const QPinchGesture& gesture)
{
    const QPointF at = viewport()->mapFromGlobal(gesture.centerPoint().toPoint());
    if (gesture.changeFlags() & QPinchGesture::ScaleFactorChanged) zoomAt(at, gesture.scaleFactor());
    if (gesture.changeFlags() & QPinchGesture::CenterPointChanged) {
        panBy(gesture.centerPoint() - gesture.lastCenterPoint());
    }
}

void SheetView::resizeEvent(QResizeEvent* event)
{
    QGraphicsView::resizeEvent(event);
    apply();
}

void SheetView::scrollContentsBy(int dx, int dy)
{
    QGraphicsView::scrollContentsBy(dx, dy);
    // The scale bar stays where it is: moved pixels would drag it along.
    viewport()->update();
}

void SheetView::drawGrid(QPainter& painter, const QRectF& rect, double pitchMm, const QColor& colour) const
{
    QPen pen(colour, 1.0);
    pen.setCosmetic(true);
    painter.setPen(pen);
    QList<QLineF> lines;
    for (double x = std::ceil(rect.left() / pitchMm) * pitchMm; x <= rect.right(); x += pitchMm) {
        lines.append(QLineF(x, rect.top(), x, rect.bottom()));
    }
    for (double y = std::ceil(rect.top() / pitchMm) * pitchMm; y <= rect.bottom(); y += pitchMm) {
        lines.append(QLineF(rect.left(), y, rect.right(), y));
    }
    painter.drawLines(lines);
}

void SheetView::drawBackground(QPainter* painter, const QRectF& rect)
{
    painter->setRenderHint(QPainter::Antialiasing, false);
    painter->fillRect(rect, ink_.bench);
    const QRectF paper = rect & sheet_;
    if (!paper.isEmpty()) {
        painter->fillRect(paper, ink_.sheet);
    }
    if (gridShown_ && !paper.isEmpty()) {
        const GridPitch pitch = gridPitch(mmPerPixel());
        QColor fine = ink_.grid;
        fine.setAlphaF(0.55f);
        drawGrid(*painter, paper, pitch.fineMm, fine);
        QColor coarse = ink_.grid;
        coarse = ink_.dark ? coarse.lighter(125) : coarse.darker(107);
        drawGrid(*painter, paper, pitch.coarseMm, coarse);
    }
    QPen edge(ink_.line, 1.0);
    edge.setCosmetic(true);
    painter->setPen(edge);
    painter->setBrush(Qt::NoBrush);
    painter->drawRect(sheet_);
    painter->setRenderHint(QPainter::Antialiasing, true);
}

void SheetView::drawForeground(QPainter* painter, const QRectF& rect)
{
    if (handler_.paintOver) {
        painter->save();
        handler_.paintOver(*painter, rect);
        painter->restore();
    }
    painter->save();
    painter->resetTransform();
    drawHint(*painter);
    drawScaleBar(*painter);
    painter->restore();
}

void SheetView::drawHint(QPainter& painter) const
{
    const QString hint = handler_.hint ? handler_.hint() : QString();
    if (hint.isEmpty()) return;
    QFont font;
    font.setPixelSize(18);
    painter.setFont(font);
    painter.setPen(ink_.pencil);
    painter.drawText(viewport()->rect().adjusted(24, 24, -24, -24), Qt::AlignCenter | Qt::TextWordWrap, hint);
}

void SheetView::drawScaleBar(QPainter& painter) const
{
    const double lengthMm = scaleBarMm(mmPerPixel(), kScaleBarPx);
    const double px = lengthMm * pixelsPerMm_;
    QString text = lengthText(lengthMm);
    if (lengthMm >= 1000.0) {
        text = tr("%1 m").arg(numberText(lengthMm / 1000.0, 0));
    } else if (lengthMm >= 10.0) {
        text = tr("%1 cm").arg(numberText(lengthMm / 10.0, 0));
    }
    QFont font;
    font.setPixelSize(11);
    painter.setFont(font);
    const QFontMetricsF metrics(font);
    const double right = viewport()->width() - 16.0;
    const double bottom = viewport()->height() - 14.0;
    const QRectF bar(right - px, bottom - 5.0, px, 5.0);
    const QRectF plate = bar.adjusted(-8.0, -metrics.height() - 6.0, 8.0, 6.0);
    QColor behind = ink_.sheet;
    behind.setAlphaF(0.85f);
    painter.setPen(Qt::NoPen);
    painter.setBrush(behind);
    painter.drawRoundedRect(plate, 3.0, 3.0);
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(QPen(ink_.ink, 1.0));
    painter.setBrush(ink_.sheet);
    painter.drawRect(bar);
    painter.fillRect(QRectF(bar.left(), bar.top(), px / 2.0, bar.height()), ink_.ink);
    painter.setRenderHint(QPainter::Antialiasing, true);
    painter.drawText(QRectF(plate.left(), plate.top() + 1.0, plate.width(), metrics.height() + 2.0),
                     Qt::AlignCenter, text);
}

}  // namespace yardcast::ui
