#include "ui/window/finding_line.h"

#include <QPainter>

#include "ui/look/severity_mark.h"
#include "ui/look/theme.h"
#include "ui/window/two_lines.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {
constexpr int kMarkPx = 16;
constexpr int kMostLines = 2;
constexpr int kWidestPx = 640;
}

FindingLine::FindingLine(QWidget* parent) : QAbstractButton(parent)
{
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
    setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Preferred);
}

void FindingLine::setFinding(Severity severity, const QString& sentence)
{
    severity_ = severity;
    setText(tr("%1: %2").arg(severityName(severity), sentence));
    setAccessibleName(text());
    setToolTip(tr("%1\nClick to see where.").arg(text()));
    updateGeometry();
    update();
}

QSize FindingLine::sizeHint() const
{
    const int forText = qMin(fontMetrics().horizontalAdvance(text()), kWidestPx);
    return {forText + kMarkPx + 6 * kStepPx, kMostLines * fontMetrics().lineSpacing() + kStepPx};
}

QSize FindingLine::minimumSizeHint() const { return {40 * kStepPx, sizeHint().height()}; }

void FindingLine::paintEvent(QPaintEvent*)
{
    const Ink ink = inkOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (underMouse() || hasFocus()) {
        painter.setPen(hasFocus() ? QPen(ink.chosen, 1.0) : QPen(Qt::NoPen));
        painter.setBrush(mixed(ink.card, ink.hover, 0.5));
        painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 1.5, -0.5, -1.5), kStepPx, kStepPx);
    }
    const int left = 2 * kStepPx;
    paintSeverityMark(painter, QRectF(left, (height() - kMarkPx) / 2.0, kMarkPx, kMarkPx), severity_, ink);
    painter.setPen(colourOf(severity_, ink));
    const int textLeft = left + kMarkPx + 2 * kStepPx;
    const QStringList lines = brokenInTwo(text(), font(), width() - textLeft - kStepPx);
    const int spacing = fontMetrics().lineSpacing();
    int y = (height() - spacing * int(lines.size())) / 2 + fontMetrics().ascent();
    for (const QString& line : lines) {
        painter.drawText(textLeft, y, line);
        y += spacing;
    }
}

void FindingLine::enterEvent(QEnterEvent* event)
{
    update();
    QAbstractButton::enterEvent(event);
}

void FindingLine::leaveEvent(QEvent* event)
{
    update();
    QAbstractButton::leaveEvent(event);
}

}  // namespace yardcast::ui
