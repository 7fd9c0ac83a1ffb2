#include "ui/window/menus.h"

#include <map>

#include <QAction>
#include <QCoreApplication>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>

#include "ui/window/commands.h"

namespace yardcast::ui {

namespace {

/// A command whose own menu hangs in the menu bar: the action stays for its key, the menu carries its text.
bool addList(QMenu& menu, const QList<ListMenu>& lists, const CommandSpec& spec, const Commands& commands)
{
    for (const ListMenu& list : lists) {
        if (list.command != spec.id) continue;
        list.menu->setTitle(textOf(spec));
        menu.addMenu(list.menu);
        QObject::connect(commands[spec.id], &QAction::changed, list.menu, [action = commands[spec.id], list] {
            list.menu->setIcon(action->icon());
        });
        return true;
    }
    return false;
}

}  // namespace

void buildMenus(QMainWindow& window, const Commands& commands, const QList<ListMenu>& lists)
{
    std::map<Menu, QMenu*> menus;
    std::map<QString, QMenu*> submenus;
    std::map<Menu, QString> lastSection;
    for (const CommandSpec& spec : commandTable()) {
        QMenu*& menu = menus[spec.menu];
        if (!menu) menu = window.menuBar()->addMenu(menuTitle(spec.menu));
        QString section = QString::fromUtf8(spec.section);
        QString& last = lastSection[spec.menu];
        const bool opensSubmenu = section.endsWith('>');
        // Submenus that follow each other stand together.
        if (!last.isEmpty() && last != section && !(opensSubmenu && last.endsWith('>'))) menu->addSeparator();
        last = section;
        QMenu* place = menu;
        if (opensSubmenu) {
            QMenu*& submenu = submenus[section];
            if (!submenu) {
                const QByteArray title = section.chopped(1).toUtf8();
                submenu = menu->addMenu(QCoreApplication::translate("yardcast::ui::Commands", title.constData()));
            }
            place = submenu;
        }
        if (!addList(*place, lists, spec, commands)) place->addAction(commands[spec.id]);
    }
}

QMenu* buildContextMenu(QMainWindow& window, const Commands& commands)
{
    auto* menu = new QMenu(&window);
    const auto add = [&](std::initializer_list<Command> some) {
        if (!menu->isEmpty()) menu->addSeparator();
        for (const Command command : some) menu->addAction(commands[command]);
    };
    add({Command::typeSize});
    add({Command::cut, Command::copy, Command::paste, Command::duplicate, Command::remove});
    add({Command::turnLeft, Command::turnRight, Command::turnBy, Command::mirror});
    add({Command::raise, Command::lower});
    add({Command::zoomChosen, Command::showProperties});
    return menu;
}

}  // namespace yardcast::ui
