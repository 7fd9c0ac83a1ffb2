#pragma once

#include <QList>

class QMainWindow;
class QMenu;
class QString;

namespace yardcast::ui {

class Commands;
enum class Command;

/// The menu bar, built from the command table. Commands that open a list of their own (samples, recent files) get the
/// menu given for them.
struct ListMenu {
    Command command;
    QMenu* menu;
};
void buildMenus(QMainWindow& window, const Commands& commands, const QList<ListMenu>& lists);
/// What the right button offers for what is chosen.
QMenu* buildContextMenu(QMainWindow& window, const Commands& commands);

}  // namespace yardcast::ui
