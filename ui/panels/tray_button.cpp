#include "ui/panels/tray_button.h"

#include <QDrag>
#include <QKeyEvent>
#include <QMimeData>
#include <QMouseEvent>
#include <QPainter>

#include "ui/look/theme.h"
#include "ui/panels/parts_tray.h"

namespace yardcast::ui {

namespace {
constexpr int kIconPx = 24;
constexpr int kHeightPx = 32;
constexpr int kDragAfterPx = 4;
}  // namespace

TrayButton::TrayButton(const QString& word, const QString& text, QWidget* parent) : QAbstractButton(parent), word_(word)
{
    setObjectName(word);
    setText(text);
    setAccessibleName(text);
    setAttribute(Qt::WA_Hover);
    setFocusPolicy(Qt::TabFocus);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    setKey({});
}

void TrayButton::setKey(const QKeySequence& key)
{
    key_ = key.toString(QKeySequence::NativeText);
    setToolTip(key_.isEmpty() ? tr("%1: drag it onto the sheet, or click and draw it there").arg(text())
                              : tr("%1 (%2): drag it onto the sheet, or click and draw it there").arg(text(), key_));
    update();
}

QSize TrayButton::sizeHint() const
{
    const int words = fontMetrics().horizontalAdvance(text()) + fontMetrics().horizontalAdvance(key_);
    return {2 * kStepPx + kIconPx + 2 * kStepPx + words + 4 * kStepPx, kHeightPx};
}

QSize TrayButton::minimumSizeHint() const { return {kIconPx + 3 * kStepPx, kHeightPx}; }

void TrayButton::paintEvent(QPaintEvent*)
{
    const Ink ink = inkOf(palette());
    QPainter painter(this);
    if (underMouse() || isDown()) painter.fillRect(rect(), mixed(ink.card, ink.ink, isDown() ? 0.12 : 0.06));
    if (hasFocus()) {
        painter.setPen(QPen(ink.chosen, 2));
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
    const bool roomForWord = width() >= sizeHint().width() - fontMetrics().horizontalAdvance(key_);
    const bool roomForKey = width() >= sizeHint().width();
    const int left = roomForWord ? 2 * kStepPx : (width() - kIconPx) / 2;
    icon().paint(&painter, QRect(left, (height() - kIconPx) / 2, kIconPx, kIconPx));
    if (!roomForWord) return;
    const QRect words = rect().adjusted(left + kIconPx + 2 * kStepPx, 0, -2 * kStepPx, 0);
    painter.setPen(ink.ink);
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter, text());
    if (!roomForKey) return;
    painter.setPen(ink.pencil);
    painter.drawText(words, Qt::AlignRight | Qt::AlignVCenter, key_);
}

void TrayButton::mousePressEvent(QMouseEvent* event)
{
    pressedAt_ = event->position().toPoint();
    QAbstractButton::mousePressEvent(event);
}

void TrayButton::mouseMoveEvent(QMouseEvent* event)
{
    if (!event->buttons().testFlag(Qt::LeftButton) || !isDown() ||
        (event->position().toPoint() - pressedAt_).manhattanLength() < kDragAfterPx) {
        QAbstractButton::mouseMoveEvent(event);
        return;
    }
    setDown(false);
    auto* carried = new QMimeData;
    carried->setData(QLatin1String(kTrayMime), word_.toUtf8());
    auto* drag = new QDrag(this);
    drag->setMimeData(carried);
    drag->setPixmap(icon().pixmap(QSize(2 * kIconPx, 2 * kIconPx), devicePixelRatioF()));
    drag->setHotSpot(QPoint(kIconPx, kIconPx));
    drag->exec(Qt::CopyAction);
}

void TrayButton::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        click();
    } else if (event->key() == Qt::Key_Down || event->key() == Qt::Key_Up) {
        focusNextPrevChild(event->key() == Qt::Key_Down);
    } else {
        QAbstractButton::keyPressEvent(event);
    }
}

}  // namespace yardcast::ui
