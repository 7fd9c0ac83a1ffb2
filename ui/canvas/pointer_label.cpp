#include "ui/canvas/pointer_label.h"

#include <algorithm>

#include <QFontMetrics>
#include <QPainter>

namespace yardcast::ui {

namespace {

constexpr int kOffRightPx = 18;
constexpr int kOffDownPx = 22;
constexpr int kPadPx = 8;

}  // namespace

QPoint besidePointer(QPoint pointer, QSize size, QSize room)
{
    // It slides along under the pointer at the right edge, and goes over it at the foot: never onto it.
    const int x = pointer.x() + kOffRightPx;
    int y = pointer.y() + kOffDownPx;
    if (y + size.height() > room.height() - 4) y = pointer.y() - kOffDownPx - size.height();
    return {std::clamp(x, 4, std::max(4, room.width() - size.width() - 4)),
            std::clamp(y, 4, std::max(4, room.height() - size.height() - 4))};
}

PointerLabel::PointerLabel(QWidget* parent) : QWidget(parent)
{
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setAttribute(Qt::WA_NoSystemBackground);
    QFont bold = font();
    bold.setPixelSize(13);
    bold.setBold(true);
    setFont(bold);
    hide();
}

void PointerLabel::setInk(const Ink& ink)
{
    ink_ = ink;
    update();
}

void PointerLabel::say(const QString& text)
{
    if (text_ == text) return;
    text_ = text;
    setVisible(!text.isEmpty());
    if (!text.isEmpty()) {
        const QFontMetrics metrics(font());
        resize(metrics.horizontalAdvance(text) + 2 * kPadPx, metrics.height() + kPadPx);
        place();
        update();
    }
}

void PointerLabel::follow(QPoint pointer)
{
    pointer_ = pointer;
    if (isVisible()) place();
}

void PointerLabel::place() { move(besidePointer(pointer_, size(), parentWidget()->size())); }

void PointerLabel::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink_.ink);
    painter.drawRoundedRect(rect(), 4.0, 4.0);
    painter.setPen(ink_.sheet);
    painter.drawText(rect(), Qt::AlignCenter, text_);
}

}  // namespace yardcast::ui
