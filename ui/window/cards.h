#pragma once

class QWidget;

namespace yardcast::ui {

class Canvas;
class Commands;
class FindingsCard;
class LiveCard;
class MouldCard;
struct Workbench;

/// The contents of the docks. The docks own them.
struct Cards {
    QWidget* tray = nullptr;
    LiveCard* lifting = nullptr;
    LiveCard* strength = nullptr;
    LiveCard* concrete = nullptr;
    LiveCard* weather = nullptr;
    LiveCard* pour = nullptr;
    LiveCard* reinforcement = nullptr;
    MouldCard* mould = nullptr;
    LiveCard* cuts = nullptr;
    LiveCard* money = nullptr;
    LiveCard* shopping = nullptr;
    FindingsCard* findings = nullptr;
    QWidget* properties = nullptr;
    QWidget* parts = nullptr;
};
Cards makeCards(Workbench& bench, const Commands& commands, Canvas& canvas);

}  // namespace yardcast::ui
