#include "ui/canvas/ruler.h"

#include <cmath>

#include <QPainter>
#include <QPaintEvent>

#include "ui/canvas/grid.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

Ruler::Ruler(Qt::Orientation orientation, QWidget* parent) : QWidget(parent), orientation_(orientation)
{
    setAttribute(Qt::WA_OpaquePaintEvent);
    if (isLevel()) {
        setFixedHeight(kRulerPx);
    } else {
        setFixedWidth(kRulerPx);
    }
}

void Ruler::setInk(const Ink& ink)
{
    ink_ = ink;
    update();
}

void Ruler::setView(double startMm, double pixelsPerMm)
{
    if (startMm_ == startMm && pixelsPerMm_ == pixelsPerMm) return;
    startMm_ = startMm;
    pixelsPerMm_ = pixelsPerMm;
    update();
}

QRect Ruler::strip(double px) const
{
    const int at = static_cast<int>(std::floor(px)) - 5;
    return isLevel() ? QRect(at, 0, 11, height()) : QRect(0, at, width(), 11);
}

void Ruler::setPointer(double px)
{
    if (pointerPx_ == px) return;
    update(strip(pointerPx_));
    pointerPx_ = px;
    update(strip(pointerPx_));
}

void Ruler::setBand(double fromPx, double toPx)
{
    if (bandFrom_ == fromPx && bandTo_ == toPx) return;
    bandFrom_ = fromPx;
    bandTo_ = toPx;
    update();
}

void Ruler::paintEvent(QPaintEvent* event)
{
    QPainter painter(this);
    painter.fillRect(event->rect(), ink_.card);
    // Everything is painted as a level ruler; an upright one is turned.
    double runPx = width();
    if (!isLevel()) {
        painter.translate(0.0, height());
        painter.rotate(-90.0);
        runPx = height();
    }
    const auto along = [&](double px) { return isLevel() ? px : runPx - px; };

    if (bandTo_ > bandFrom_) {
        QColor band = ink_.chosen;
        band.setAlphaF(0.16f);
        const double from = isLevel() ? bandFrom_ : along(bandTo_);
        painter.fillRect(QRectF(from, 0.0, bandTo_ - bandFrom_, kRulerPx - 1.0), band);
    }

    QFont font;
    font.setPixelSize(10);
    painter.setFont(font);
    const RulerPitch pitch = rulerPitch(1.0 / pixelsPerMm_);
    // startMm_ is at the left end of a level ruler and at the top of an upright one, whose turned left end is its foot.
    const double leftMm = isLevel() ? startMm_ : startMm_ - runPx / pixelsPerMm_;
    const double rightMm = leftMm + runPx / pixelsPerMm_;
    const int ticksPerLabel = static_cast<int>(std::lround(pitch.labelMm / pitch.tickMm));
    const auto first = static_cast<long long>(std::floor(leftMm / pitch.tickMm)) - ticksPerLabel;
    const auto last = static_cast<long long>(std::ceil(rightMm / pitch.tickMm));
    for (long long tick = first; tick <= last; ++tick) {
        const double mm = static_cast<double>(tick) * pitch.tickMm;
        const double px = std::round((mm - leftMm) * pixelsPerMm_) + 0.5;
        const bool labelled = tick % ticksPerLabel == 0;
        const bool middle = ticksPerLabel % 2 == 0 && tick % (ticksPerLabel / 2) == 0;
        const double reach = labelled ? kRulerPx - 1.0 : middle ? 8.0 : 5.0;
        painter.setPen(labelled ? ink_.line : ink_.pencil);
        painter.drawLine(QPointF(px, kRulerPx - 1.0), QPointF(px, kRulerPx - 1.0 - reach));
        if (!labelled) continue;
        painter.setPen(ink_.pencil);
        painter.drawText(QPointF(px + 3.0, 11.0), shortNumberText(mm / 10.0, 1));
    }
    painter.setPen(ink_.line);
    painter.drawLine(QPointF(0.0, kRulerPx - 0.5), QPointF(runPx, kRulerPx - 0.5));

    if (pointerPx_ >= 0.0) {
        painter.setRenderHint(QPainter::Antialiasing);
        const double px = along(pointerPx_);
        painter.setPen(Qt::NoPen);
        painter.setBrush(ink_.chosen);
        painter.drawPolygon(QPolygonF{QPointF(px, kRulerPx - 1.0), QPointF(px - 4.0, kRulerPx - 8.0),
                                      QPointF(px + 4.0, kRulerPx - 8.0)});
    }
}

}  // namespace yardcast::ui
