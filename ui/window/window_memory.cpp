#include "ui/window/window_memory.h"

#include <QGuiApplication>
#include <QMainWindow>
#include <QScreen>
#include <QSettings>

namespace yardcast::ui {

namespace {

constexpr auto kPlace = "window/place";
constexpr auto kMaximised = "window/maximised";
constexpr auto kLayout = "window/layout";
constexpr QSize kUsual{1280, 760};

qint64 area(const QRect& rect) { return rect.isEmpty() ? 0 : qint64(rect.width()) * rect.height(); }

QList<QRect> screenRooms()
{
    QList<QRect> rooms;
    for (const QScreen* screen : QGuiApplication::screens()) rooms.append(screen->availableGeometry());
    return rooms;
}

}  // namespace

QRect clampedToScreens(const QRect& window, const QList<QRect>& screens)
{
    if (screens.isEmpty()) return window;
    QRect room = screens.first();
    for (const QRect& screen : screens) {
        if (area(screen & window) > area(room & window)) room = screen;
    }
    QRect clamped = window;
    clamped.setSize(window.size().boundedTo(room.size()));
    clamped.moveLeft(qBound(room.left(), clamped.left(), room.right() - clamped.width() + 1));
    clamped.moveTop(qBound(room.top(), clamped.top(), room.bottom() - clamped.height() + 1));
    return clamped;
}

WindowMemory::WindowMemory(QMainWindow& window, QSettings& settings) : window_(window), settings_(settings) {}

void WindowMemory::rememberOriginal() { original_ = window_.saveState(kLayoutVersion); }

void WindowMemory::restore()
{
    const QList<QRect> rooms = screenRooms();
    QRect place = settings_.value(kPlace).toRect();
    if (place.isEmpty()) {
        const QRect room = rooms.isEmpty() ? QRect(QPoint(0, 0), kUsual) : rooms.first();
        place = QRect(QPoint(0, 0), kUsual.boundedTo(room.size()));
        place.moveCenter(room.center());
    }
    window_.setGeometry(clampedToScreens(place, rooms));
    if (settings_.value(kMaximised, false).toBool()) window_.setWindowState(Qt::WindowMaximized);
    window_.restoreState(settings_.value(kLayout).toByteArray(), kLayoutVersion);
}

void WindowMemory::save() const
{
    settings_.setValue(kMaximised, window_.isMaximized());
    settings_.setValue(kPlace, window_.isMaximized() ? window_.normalGeometry() : window_.geometry());
    settings_.setValue(kLayout, window_.saveState(kLayoutVersion));
}

void WindowMemory::reset() { window_.restoreState(original_, kLayoutVersion); }

}  // namespace yardcast::ui
