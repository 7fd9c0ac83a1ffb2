#include "ui/canvas/gestures/band_gesture.h"

#include <QCoreApplication>

#include "ui/document/selection.h"

namespace yardcast::ui {

BandGesture::BandGesture(ToolHost& host, PartsIn partsIn, Point from, bool add)
    : Gesture(host), partsIn_(std::move(partsIn)), from_(from), before_(host.selection().parts())
{
    if (add) base_ = before_;
}

void BandGesture::move(const PointerEvent& event)
{
    const QPointF a(from_.x, -from_.y);
    const QPointF b(event.at.x, -event.at.y);
    band_ = QRectF(a, b).normalized();
    QStringList chosen = base_;
    for (const QString& id : partsIn_(band_)) {
        if (!chosen.contains(id)) chosen << id;
    }
    host().selection().setParts(chosen);
    host().say(chosen.size() == 1 ? QCoreApplication::translate("Gestures", "1 part chosen")
                                  : QCoreApplication::translate("Gestures", "%1 parts chosen").arg(chosen.size()));
    host().repaintOverlay();
}

void BandGesture::cancelled() { host().selection().setParts(before_); }

void BandGesture::paint(QPainter& painter, const PaintStyle& style)
{
    QColor fill = style.ink.chosen;
    fill.setAlphaF(0.10f);
    painter.setPen(style.pen(style.ink.chosen, 1.0));
    painter.setBrush(fill);
    painter.drawRect(band_);
}

}  // namespace yardcast::ui
