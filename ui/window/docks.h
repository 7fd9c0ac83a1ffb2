#pragma once

#include <vector>

#include <QObject>
#include <QtGlobal>

class QDockWidget;
class QMainWindow;
class QWidget;

namespace yardcast::ui {

class Commands;
enum class Command;

/// The cards at the edges of the window. Each can be moved, stacked, floated and closed; its command shows it, brings
/// it forward when it lies behind another, and hides it when it is in front.
class Docks : public QObject {
    Q_OBJECT

public:
    Docks(QMainWindow& window, const Commands& commands);

    /// `scrolls`: the content knows no scrolling of its own.
    QDockWidget* add(Command command, const char* name, QWidget* content, Qt::DockWidgetArea area, bool scrolls);
    void bringForward(Command command);
    /// What a card asks for: a table, or a picture above one.
    enum class Room { table, picture };
    /// Makes the card at least as tall as that, at the cost of its neighbours.
    void giveRoom(Command command, Room room = Room::table);
    /// As wide as its content asks for.
    void giveWidth(Command command);
    /// Tall enough for a table.
    bool isRoomy(Command command) const;
    /// Those of a list lie one behind the other, the first in front; lists lie below each other.
    void stack(const std::vector<std::vector<Command>>& lists);

signals:
    /// Shown, or before the others of its stack now.
    void cameForward(Command command);

private:
    struct Entry {
        Command command;
        QDockWidget* dock;
    };
    QDockWidget* find(Command command) const;

    QMainWindow& window_;
    const Commands& commands_;
    std::vector<Entry> entries_;
};

}  // namespace yardcast::ui
