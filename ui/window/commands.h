#pragma once

#include <span>
#include <vector>

#include <QObject>
#include <QString>

#include "ui/look/stage.h"

class QAction;
class QActionGroup;
class QKeySequence;
class QWidget;

namespace yardcast::ui {

struct Ink;

/// Every command of the window. The table in commands.cpp gives each its text, icon, keys and place in a menu; a test
/// holds that keys are unique and that texts and icons exist.
enum class Command {
    // File
    newWindow, newPlan, newFromSample, open, openRecent, save, saveAs, print, printPreview, exportPdf, exportSvg,
    exportDxf, exportStl, exportMouldSvg, exportMouldDxf, exportFormersStl, exportCutsCsv, readTemperatures,
    closeWindow, quit,
    // Edit
    undo, redo, cut, copy, paste, duplicate, remove, selectAll, typeSize,
    // Draw
    choose, drawCounter, drawCounterCorners, drawSupport, drawPanel, drawFront, placeAppliance, cutSink, cutHob,
    cutTap, cutDrain, cutOpening, drawJoint, drawRib, measure, drawSite, placeWater, placeWaste, placePower, placeGas,
    placeWall, placeTree, placeDoor,
    // Arrange
    turnLeft, turnRight, turnBy, mirror, alignLeft, alignCentre, alignRight, alignFront, alignMiddle, alignBack,
    distributeAcross, distributeDeep, raise, lower,
    // View
    fromAbove, fromFront, lookFurtherLeft, lookFurtherRight, zoomIn, zoomOut, zoomFit, zoomChosen, snapping, grid,
    stageLayOut, stageStrength, stageSteel, stageMould, stagePour, stageLift, stageBuy,
    showTray, showWeight, showStrength, showConcrete, showWeather, showPour, showSteel, showMould, showCuts, showMoney, showShopping,
    showFindings, showProperties, showParts,
    lookAsSystem, lookLight, lookDark, resetLayout,
    // Help
    showKeys, showHint, showCautions, showAbout
};

enum class Menu { file, edit, draw, arrange, view, help };

struct CommandSpec {
    Command id;
    Menu menu;
    const char* section;   ///< a new word begins a new section of the menu; "Name>" makes a submenu called Name
    const char* text;      ///< source text, translated in the context "yardcast::ui::Commands"
    const char* icon;      ///< resources/icons/NAME.svg
    const char* keys;      ///< portable text, several with ", "
    const char* group;     ///< choices that exclude each other share a word; otherwise empty
    bool checkable;
    const char* says;      ///< one sentence for the tool tip and the keys sheet; may be empty
};

/// The whole table, in the order of the menus.
std::span<const CommandSpec> commandTable();
const CommandSpec& specOf(Command command);
Command commandOf(Stage stage);
QString textOf(const CommandSpec& spec);
QString menuTitle(Menu menu);
QList<QKeySequence> keysOf(const CommandSpec& spec);

/// One QAction a command, owned by `window`, so that the keys work wherever the focus is. A field that has the focus
/// keeps the keys it types with: Qt asks it first (ShortcutOverride).
class Commands : public QObject {
    Q_OBJECT

public:
    explicit Commands(QWidget& window);

    QAction* operator[](Command command) const;
    QActionGroup* group(const char* name) const;
    /// Icons in the colours of the surface.
    void setInk(const Ink& ink);

private:
    std::vector<QAction*> actions_;
    std::vector<QActionGroup*> groups_;
};

}  // namespace yardcast::ui
