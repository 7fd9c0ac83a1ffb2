#pragma once

#include <QByteArray>
#include <QList>
#include <QRect>

class QMainWindow;
class QSettings;

namespace yardcast::ui {

/// The rectangle moved and shrunk so that it lies on one of the screens: the one it shares most with, or the first.
/// Unchanged when it fits already.
QRect clampedToScreens(const QRect& window, const QList<QRect>& screens);

/// Where the window stands and how its cards lie, kept in the settings.
class WindowMemory {
public:
    /// A layout of another version is not brought back: docks would be missing or misplaced.
    static constexpr int kLayoutVersion = 2;

    WindowMemory(QMainWindow& window, QSettings& settings);

    /// Takes note of the layout as built, for `reset`.
    void rememberOriginal();
    void restore();
    void save() const;
    /// The cards as they were built; the window stays where it is.
    void reset();

private:
    QMainWindow& window_;
    QSettings& settings_;
    QByteArray original_;
};

}  // namespace yardcast::ui
