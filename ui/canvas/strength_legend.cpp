#include "ui/canvas/strength_legend.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QFontMetrics>
#include <QPainter>

#include "ui/look/theme.h"
#include "ui/look/use_ramp.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

constexpr int kPadPx = 2 * kStepPx;
constexpr int kRampPx = 208;
constexpr int kOverPx = 28;
constexpr int kBarPx = 12;
constexpr int kMarkPx = 14;
constexpr int kTextPx = 12;
/// The figures mostly arrive at once; a mark that comes and goes with each step of a drag would only flicker.
constexpr int kPatienceMs = 150;
constexpr int kTurnMs = 120;

}  // namespace

void paintRunningMark(QPainter& painter, const QRectF& rect, int turn, const QColor& colour)
{
    constexpr int kDots = 8;
    painter.setPen(Qt::NoPen);
    const double radius = rect.width() * 0.38;
    for (int i = 0; i < kDots; ++i) {
        const double angle = 2.0 * std::numbers::pi * i / kDots;
        QColor shade = colour;
        shade.setAlphaF(float(0.15 + 0.85 * ((i - turn % kDots + kDots) % kDots) / (kDots - 1.0)));
        painter.setBrush(shade);
        painter.drawEllipse(rect.center() + radius * QPointF(std::cos(angle), std::sin(angle)), rect.width() * 0.1,
                            rect.width() * 0.1);
    }
}

StrengthLegend::StrengthLegend(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("strengthLegend"));
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setAttribute(Qt::WA_NoSystemBackground);
    setAccessibleName(tr("Use of the strength: pale is little, dark is all, hatched is more than there is"));
    QFont small = font();
    small.setPixelSize(kTextPx);
    setFont(figureFont(small));
    patience_.setSingleShot(true);
    patience_.setInterval(kPatienceMs);
    runs_.setInterval(kTurnMs);
    connect(&patience_, &QTimer::timeout, this, [this] {
        runs_.start();
        fit();
    });
    connect(&runs_, &QTimer::timeout, this, [this] {
        ++turn_;
        update();
    });
    hide();
}

void StrengthLegend::setInk(const Ink& ink)
{
    ink_ = ink;
    update();
}

void StrengthLegend::setLines(const QStringList& lines)
{
    QStringList kept = lines;
    kept.removeAll(QString());
    if (kept == lines_) return;
    lines_ = kept;
    fit();
}

void StrengthLegend::setRampShown(bool shown)
{
    if (shown == rampShown_) return;
    rampShown_ = shown;
    fit();
}

void StrengthLegend::setRefining(bool refining)
{
    if (refining == refining_) return;
    refining_ = refining;
    run();
}

void StrengthLegend::run()
{
    if (refining_ && isVisible()) {
        if (!runs_.isActive()) patience_.start();
        return;
    }
    patience_.stop();
    if (!runs_.isActive()) return;
    runs_.stop();
    fit();
}

void StrengthLegend::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    run();
}

void StrengthLegend::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    run();
}

QSize StrengthLegend::sizeHint() const
{
    const QFontMetrics metrics(font());
    int width = rampShown_ ? kRampPx + kOverPx : 0;
    for (const QString& line : lines_) width = std::max(width, metrics.horizontalAdvance(line));
    int height = int(lines_.size()) * metrics.height();
    if (rampShown_) height += kBarPx + metrics.height() + kStepPx;
    if (runs_.isActive()) {
        height += metrics.height();
        width = std::max(width, kMarkPx + kStepPx + metrics.horizontalAdvance(tr("being refined")));
    }
    return {width + 2 * kPadPx, height + 2 * kPadPx};
}

void StrengthLegend::fit()
{
    resize(sizeHint());
    place(room_);
    update();
}

void StrengthLegend::place(QSize room)
{
    room_ = room;
    constexpr int kGapPx = 3 * kStepPx;
    move(kGapPx, std::max(0, room.height() - height() - kGapPx));
}

void StrengthLegend::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    QColor plate = ink_.sheet;
    plate.setAlphaF(0.92f);
    painter.setPen(QPen(ink_.line, 1.0));
    painter.setBrush(plate);
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4.0, 4.0);
    const QFontMetrics metrics(font());
    int y = kPadPx;
    painter.setPen(ink_.ink);
    for (const QString& line : lines_) {
        painter.drawText(kPadPx, y + metrics.ascent(), line);
        y += metrics.height();
    }
    if (rampShown_) {
        y += kStepPx;
        painter.setRenderHint(QPainter::Antialiasing, false);
        for (int x = 0; x < kRampPx; ++x) {
            painter.fillRect(kPadPx + x, y, 1, kBarPx, useColour(100.0 * x / (kRampPx - 1)));
        }
        const QRect over(kPadPx + kRampPx, y, kOverPx, kBarPx);
        painter.fillRect(over, useColour(100.0));
        painter.setRenderHint(QPainter::Antialiasing);
        painter.save();
        painter.setClipRect(over);
        painter.setPen(QPen(inkOnUse(100.0), 1.0));
        for (int x = -kBarPx; x < kOverPx + kBarPx; x += 6) {
            painter.drawLine(over.left() + x, over.bottom() + 1, over.left() + x + kBarPx, over.top());
        }
        painter.restore();
        painter.setPen(QPen(ink_.pencil, 1.0));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(kPadPx, y, kRampPx + kOverPx, kBarPx));
        y += kBarPx;
        painter.setPen(ink_.ink);
        for (int percent = 0; percent <= 100; percent += 25) {
            const QString figure = percent == 100 ? percentText(percent) : QString::number(percent);
            const int x = kPadPx + kRampPx * percent / 100;
            painter.drawLine(x, y - 3, x, y + 2);
            const int width = metrics.horizontalAdvance(figure);
            painter.drawText(std::max(kPadPx, x - width / 2), y + metrics.ascent() + 1, figure);
        }
        y += metrics.height();
    }
    if (runs_.isActive()) {
        paintRunningMark(painter, QRectF(kPadPx, y, kMarkPx, kMarkPx), turn_, ink_.ink);
        painter.setPen(ink_.pencil);
        painter.drawText(kPadPx + kMarkPx + kStepPx, y + metrics.ascent(), tr("being refined"));
    }
}

}  // namespace yardcast::ui
