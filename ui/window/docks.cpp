#include "ui/window/docks.h"

#include <QAction>
#include <QDockWidget>
#include <QList>
#include <QMainWindow>
#include <QScrollArea>

#include "ui/look/quiet_style.h"
#include "ui/window/commands.h"

namespace yardcast::ui {

namespace {

/// A card with its big figure and three lines, and one that is opened to a table.
constexpr int kClosedPx = 210;
constexpr int kTablePx = 460;
constexpr int kRoomyPx = 400;
/// A card with a picture above its table, and what is then left for the one below.
constexpr int kPicturePx = 560;
constexpr int kBelowPicturePx = 110;

/// Behind another card of the same stack: shown as a tab, but nothing of it can be seen.
bool liesBehind(const QDockWidget& dock) { return !dock.isHidden() && dock.visibleRegion().isEmpty(); }

/// A card needs no more room than is left for it: what does not fit is scrolled to.
QWidget* scrolled(QWidget* content)
{
    auto* area = new QScrollArea;
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFocusPolicy(Qt::NoFocus);
    area->setMinimumWidth(content->minimumSizeHint().width());
    area->viewport()->setAutoFillBackground(false);
    area->setWidget(content);
    content->setAutoFillBackground(false);
    return area;
}

/// Seven names and more share one row of tabs: a short word each, no two of which begin alike. The title bar says it in
/// full.
QString tabName(Command command)
{
    switch (command) {
    case Command::showWeight: return Docks::tr("Lifting");
    case Command::showConcrete: return Docks::tr("Mix");
    case Command::showWeather: return Docks::tr("Weather");
    case Command::showPour: return Docks::tr("Pours");
    case Command::showSteel: return Docks::tr("Steel");
    case Command::showShopping: return Docks::tr("Shopping");
    default: return textOf(specOf(command)).remove('&');
    }
}

}  // namespace

Docks::Docks(QMainWindow& window, const Commands& commands) : QObject(&window), window_(window), commands_(commands)
{
    window.setDockOptions(QMainWindow::AnimatedDocks | QMainWindow::AllowNestedDocks | QMainWindow::AllowTabbedDocks |
                          QMainWindow::GroupedDragging);
    window.setTabPosition(Qt::AllDockWidgetAreas, QTabWidget::North);
}

QDockWidget* Docks::add(Command command, const char* name, QWidget* content, Qt::DockWidgetArea area, bool scrolls)
{
    auto* dock = new QDockWidget(tabName(command), &window_);
    dock->setProperty(kWholeTitle, textOf(specOf(command)).remove('&'));
    dock->setObjectName(name);
    dock->setWidget(scrolls ? scrolled(content) : content);
    window_.addDockWidget(area, dock);
    entries_.push_back({command, dock});
    QAction* action = commands_[command];
    action->setChecked(true);
    connect(dock->toggleViewAction(), &QAction::toggled, action, &QAction::setChecked);
    connect(dock, &QDockWidget::visibilityChanged, this, [this, command](bool visible) {
        if (visible) emit cameForward(command);
    });
    connect(action, &QAction::triggered, this, [this, command, dock, action] {
        if (dock->isHidden() || liesBehind(*dock)) {
            bringForward(command);
        } else {
            dock->hide();
        }
        action->setChecked(!dock->isHidden());
    });
    return dock;
}

void Docks::bringForward(Command command)
{
    QDockWidget* dock = find(command);
    if (!dock) return;
    dock->show();
    dock->raise();
}

void Docks::giveRoom(Command command, Room room)
{
    QDockWidget* dock = find(command);
    const bool tall = room == Room::picture;
    if (!dock || dock->isFloating() || dock->height() >= (tall ? kPicturePx - kClosedPx / 4 : kRoomyPx)) return;
    // All of the column are named: told of one alone, the layout gives it only a part of what is asked.
    QList<QDockWidget*> column{dock};
    QList<int> heights{tall ? kPicturePx : kTablePx};
    const QList<QDockWidget*> sameStack = window_.tabifiedDockWidgets(dock);
    for (const Entry& entry : entries_) {
        QDockWidget* other = entry.dock;
        if (other == dock || sameStack.contains(other) || other->isHidden() || other->isFloating() ||
            liesBehind(*other) || window_.dockWidgetArea(other) != window_.dockWidgetArea(dock)) {
            continue;
        }
        column.append(other);
        heights.append(tall ? kBelowPicturePx : kClosedPx);
    }
    window_.resizeDocks(column, heights, Qt::Vertical);
}

void Docks::stack(const std::vector<std::vector<Command>>& lists)
{
    // Split before stacking: what is split off a stack becomes one more card of the stack.
    for (size_t i = 1; i < lists.size(); ++i) {
        window_.splitDockWidget(find(lists[i - 1].front()), find(lists[i].front()), Qt::Vertical);
    }
    for (const std::vector<Command>& list : lists) {
        for (size_t i = 1; i < list.size(); ++i) window_.tabifyDockWidget(find(list[i - 1]), find(list[i]));
    }
    QList<QDockWidget*> fronts;
    QList<int> heights;
    for (const std::vector<Command>& list : lists) {
        QDockWidget* front = find(list.front());
        front->raise();
        fronts.append(front);
        heights.append(fronts.size() == 1 ? kClosedPx : kTablePx);
    }
    window_.resizeDocks(fronts, heights, Qt::Vertical);
}

void Docks::giveWidth(Command command)
{
    QDockWidget* dock = find(command);
    if (dock) window_.resizeDocks({dock}, {dock->widget()->sizeHint().width()}, Qt::Horizontal);
}

bool Docks::isRoomy(Command command) const
{
    const QDockWidget* dock = find(command);
    return dock && dock->isVisible() && dock->height() >= kRoomyPx;
}

QDockWidget* Docks::find(Command command) const
{
    for (const Entry& entry : entries_) {
        if (entry.command == command) return entry.dock;
    }
    return nullptr;
}

}  // namespace yardcast::ui
