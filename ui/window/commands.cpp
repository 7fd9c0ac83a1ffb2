#include "ui/window/commands.h"

#include <QAction>
#include <QActionGroup>
#include <QCoreApplication>
#include <QKeySequence>
#include <QWidget>

#include "ui/look/icons.h"

namespace yardcast::ui {

namespace {

#define T(text) QT_TRANSLATE_NOOP("yardcast::ui::Commands", text)
using C = Command;
using M = Menu;

constexpr CommandSpec kTable[] = {
    {C::newPlan, M::file, "new", T("&New plan"), "new", "Ctrl+N", "", false,
     T("An empty sheet. Unsaved changes are asked about first.")},
    {C::newFromSample, M::file, "new", T("New from a sa&mple"), "new", "Ctrl+Shift+N", "", false,
     T("A copy of one of the sample kitchens, to try things on.")},
    {C::newWindow, M::file, "new", T("New &window"), "window", "Ctrl+Alt+N", "", false,
     T("A second window; parts can be copied from one to the other.")},
    {C::open, M::file, "open", T("&Open..."), "open", "Ctrl+O", "", false, ""},
    {C::openRecent, M::file, "open", T("Open &recent"), "recent", "Ctrl+Shift+O", "", false, ""},
    {C::save, M::file, "save", T("&Save"), "save", "Ctrl+S", "", false, ""},
    {C::saveAs, M::file, "save", T("Save &as..."), "save", "Ctrl+Shift+S", "", false, ""},
    {C::print, M::file, "print", T("&Print..."), "print", "Ctrl+P", "", false,
     T("The drawing to scale and the shopping list.")},
    {C::printPreview, M::file, "print", T("Print pre&view..."), "print", "Ctrl+Shift+P", "", false, ""},
    {C::exportPdf, M::file, "print", T("Save as P&DF..."), "pdf", "Ctrl+E", "", false,
     T("The same sheets as a file.")},
    {C::exportSvg, M::file, "E&xport for other programs>", T("&Plan as SVG..."), "view-above", "Ctrl+Shift+E", "", false,
     T("The drawing in millimetres, for other programs.")},
    {C::exportDxf, M::file, "E&xport for other programs>", T("Plan as &DXF..."), "view-above", "Ctrl+Alt+E", "", false,
     T("The plan in millimetres with layers, for drawing programs.")},
    {C::exportStl, M::file, "E&xport for other programs>", T("&Kitchen as STL..."), "view-front", "Ctrl+Alt+Shift+E", "",
     false, T("All pieces as bodies in millimetres, for a look in any viewer.")},
    {C::exportMouldSvg, M::file, "E&xport for other programs>", T("&Mould as SVG..."), "mould", "Ctrl+Alt+G", "", false,
     T("The mould of the chosen piece as it lies and as it stands, in millimetres.")},
    {C::exportMouldDxf, M::file, "E&xport for other programs>", T("Mould as D&XF..."), "mould", "Ctrl+Alt+X", "", false,
     T("The mould of the chosen piece, or all moulds, with a layer for each kind of board.")},
    {C::exportFormersStl, M::file, "E&xport for other programs>", T("&Formers as STL..."), "sink", "Ctrl+Alt+F", "", false,
     T("The blocks that make the cutouts, with their draft: of the chosen piece, or all.")},
    {C::exportCutsCsv, M::file, "E&xport for other programs>", T("&Cuts as CSV..."), "list", "Ctrl+Alt+C", "", false,
     T("Every piece with its size, and the sheet or length it is cut from, for a spreadsheet.")},
    {C::readTemperatures, M::file, "read", T("Read &temperatures..."), "weather", "Ctrl+Alt+T", "", false,
     T("A logger's table of hours since the pour and °C: it takes the place of the day's air.")},
    {C::closeWindow, M::file, "close", T("&Close window"), "close", "Ctrl+W", "", false, ""},
    {C::quit, M::file, "close", T("&Quit"), "close", "Ctrl+Q", "", false, ""},

    {C::undo, M::edit, "undo", T("&Undo"), "undo", "Ctrl+Z", "", false, ""},
    {C::redo, M::edit, "undo", T("&Redo"), "redo", "Ctrl+Shift+Z, Ctrl+Y", "", false, ""},
    {C::cut, M::edit, "clipboard", T("Cu&t"), "cut", "Ctrl+X", "", false, ""},
    {C::copy, M::edit, "clipboard", T("&Copy"), "copy", "Ctrl+C", "", false, ""},
    {C::paste, M::edit, "clipboard", T("&Paste"), "paste", "Ctrl+V", "", false, ""},
    {C::duplicate, M::edit, "clipboard", T("&Duplicate"), "duplicate", "Ctrl+D", "", false, ""},
    {C::remove, M::edit, "clipboard", T("De&lete"), "delete", "Del, Backspace", "", false,
     T("Deletes what is chosen: parts, a cutout, a corner, a connection point.")},
    {C::selectAll, M::edit, "choose", T("Select &all"), "select", "Ctrl+A", "", false, ""},
    {C::typeSize, M::edit, "choose", T("Type a &size"), "measure", "L", "", false,
     T("Opens the field at the pointer. While drawing, digits open it by themselves.")},

    {C::choose, M::draw, "choose", T("Choose and mo&ve"), "select", "V", "tool", true,
     T("Click to choose, drag to move. Escape leads back here.")},
    {C::drawCounter, M::draw, "parts", T("&Counter"), "counter", "C", "tool", true,
     T("Drag on the sheet from corner to corner.")},
    {C::drawCounterCorners, M::draw, "parts", T("Counter, corner &by corner"), "counter", "Shift+C", "tool", true,
     T("Click each corner; a click on the first one ends.")},
    {C::drawSupport, M::draw, "parts", T("&Support"), "support", "S", "tool", true, ""},
    {C::drawPanel, M::draw, "parts", T("Upright &panel"), "panel", "P", "tool", true, ""},
    {C::drawFront, M::draw, "parts", T("Batten &front"), "front", "F", "tool", true, ""},
    {C::placeAppliance, M::draw, "parts", T("&Appliance"), "appliance", "A", "tool", true, ""},
    {C::cutSink, M::draw, "cutouts", T("Sin&k cutout"), "sink", "K", "", false,
     T("Drag the opening on a counter.")},
    {C::cutHob, M::draw, "cutouts", T("&Hob cutout"), "hob", "H", "", false, ""},
    {C::cutTap, M::draw, "cutouts", T("&Tap hole"), "tap", "T", "", false, ""},
    {C::cutDrain, M::draw, "cutouts", T("&Drain hole"), "drain", "D", "", false, ""},
    {C::cutOpening, M::draw, "cutouts", T("Other &opening"), "sink", "Shift+O", "", false, ""},
    {C::drawJoint, M::draw, "lines", T("&Joint"), "joint", "J", "tool", true,
     T("Divides a counter into two castings.")},
    {C::drawRib, M::draw, "lines", T("&Rib"), "rib", "R", "tool", true,
     T("A full-depth strip across the field.")},
    {C::measure, M::draw, "lines", T("&Measure"), "measure", "M", "tool", true, ""},
    {C::drawSite, M::draw, "site", T("Site out&line"), "site", "O", "tool", true,
     T("The ground there is, corner by corner.")},
    {C::placeWater, M::draw, "Connections and thin&gs>", T("&Water"), "water", "Shift+W", "", false, ""},
    {C::placeWaste, M::draw, "Connections and thin&gs>", T("Wa&ste water"), "waste", "Shift+S", "", false, ""},
    {C::placePower, M::draw, "Connections and thin&gs>", T("&Power"), "power", "Shift+P", "", false, ""},
    {C::placeGas, M::draw, "Connections and thin&gs>", T("&Gas"), "gas", "Shift+G", "", false, ""},
    {C::placeWall, M::draw, "Connections and thin&gs>", T("W&all"), "wall", "Shift+L", "", false, ""},
    {C::placeTree, M::draw, "Connections and thin&gs>", T("&Tree"), "tree", "Shift+T", "", false, ""},
    {C::placeDoor, M::draw, "Connections and thin&gs>", T("&Door"), "door", "Shift+D", "", false, ""},

    {C::turnLeft, M::arrange, "turn", T("Turn &left 90°"), "turn-left", "Ctrl+Left", "", false, ""},
    {C::turnRight, M::arrange, "turn", T("Turn &right 90°"), "turn-right", "Ctrl+Right", "", false, ""},
    {C::turnBy, M::arrange, "turn", T("&Turn by..."), "turn-left", "Ctrl+T", "", false, ""},
    {C::mirror, M::arrange, "turn", T("&Mirror"), "mirror", "Ctrl+M", "", false,
     T("Left becomes right; the mould is mirrored with it.")},
    {C::alignLeft, M::arrange, "Ali&gn>", T("&Left sides"), "align-left", "Ctrl+Shift+Left", "", false, ""},
    {C::alignCentre, M::arrange, "Ali&gn>", T("&Centres, left to right"), "align-centre", "Ctrl+Shift+H", "", false,
     ""},
    {C::alignRight, M::arrange, "Ali&gn>", T("&Right sides"), "align-right", "Ctrl+Shift+Right", "", false, ""},
    {C::alignFront, M::arrange, "Ali&gn>", T("&Front edges"), "align-front", "Ctrl+Shift+Down", "", false, ""},
    {C::alignMiddle, M::arrange, "Ali&gn>", T("Ce&ntres, front to back"), "align-middle", "Ctrl+Shift+J", "", false,
     ""},
    {C::alignBack, M::arrange, "Ali&gn>", T("&Back edges"), "align-back", "Ctrl+Shift+Up", "", false, ""},
    {C::distributeAcross, M::arrange, "distribute", T("Equal gaps &across"), "distribute-x", "Ctrl+Shift+X", "", false,
     T("The outermost two stay where they are.")},
    {C::distributeDeep, M::arrange, "distribute", T("Equal gaps front to bac&k"), "distribute-y", "Ctrl+Shift+Y", "",
     false, T("The outermost two stay where they are.")},
    {C::raise, M::arrange, "level", T("Rai&se 10 mm"), "raise", "PgUp", "", false, ""},
    {C::lower, M::arrange, "level", T("L&ower 10 mm"), "lower", "PgDown", "", false, ""},

    {C::fromAbove, M::view, "view", T("From &above"), "view-above", "F5", "view", true, ""},
    {C::fromFront, M::view, "view", T("From the &front"), "view-front", "F6", "view", true,
     T("The elevation: heights, levels and fronts.")},
    {C::lookFurtherLeft, M::view, "view", T("Walk round to the &left"), "turn-left", "F7", "", false,
     T("Looks at the kitchen from another side, a quarter turn on.")},
    {C::lookFurtherRight, M::view, "view", T("Walk round to the &right"), "turn-right", "F8", "", false,
     T("Looks at the kitchen from another side, a quarter turn on.")},
    {C::zoomIn, M::view, "zoom", T("Zoom &in"), "zoom-in", "Ctrl++, Ctrl+=", "", false, ""},
    {C::zoomOut, M::view, "zoom", T("Zoom &out"), "zoom-out", "Ctrl+-", "", false, ""},
    {C::zoomFit, M::view, "zoom", T("Zoom to the &whole drawing"), "fit", "Ctrl+0, Home", "", false, ""},
    {C::zoomChosen, M::view, "zoom", T("Zoom to what is c&hosen"), "fit", "Ctrl+9", "", false, ""},
    {C::snapping, M::view, "zoom", T("S&napping"), "snap", "F9", "", true,
     T("Corners, middles, edges, equal gaps, grid. Alt suspends it.")},
    {C::grid, M::view, "zoom", T("Gri&d"), "grid", "Shift+F9", "", true, ""},
    {C::stageLayOut, M::view, "&Stage of the job>", T("&Lay out"), "stage-layout", "Ctrl+1", "stage", true,
     T("The drawing itself.")},
    {C::stageStrength, M::view, "&Stage of the job>", T("St&rength"), "strength", "Ctrl+2", "stage", true,
     T("How much of its strength each piece uses, in place and while it is handled.")},
    {C::stageSteel, M::view, "&Stage of the job>", T("&Steel"), "steel", "Ctrl+3", "stage", true,
     T("Mesh and bars over the drawing.")},
    {C::stageMould, M::view, "&Stage of the job>", T("&Mould"), "mould", "Ctrl+4", "stage", true,
     T("The moulds as one stands in front of them: numbers, hands and twins.")},
    {C::stagePour, M::view, "&Stage of the job>", T("&Pour"), "concrete", "Ctrl+5", "stage", true,
     T("Order of pouring, litres, batches and layers of each casting.")},
    {C::stageLift, M::view, "&Stage of the job>", T("L&ift"), "stage-lift", "Ctrl+6", "stage", true,
     T("Kilograms, people, centres of gravity and grips.")},
    {C::stageBuy, M::view, "&Stage of the job>", T("&Buy"), "money", "Ctrl+7", "stage", true,
     T("The shopping list.")},
    {C::showTray, M::view, "&Cards>", T("Parts &tray"), "counter", "Alt+0", "", true, ""},
    {C::showWeight, M::view, "&Cards>", T("&Weight and lifting"), "weight", "Alt+1", "", true, ""},
    {C::showStrength, M::view, "&Cards>", T("Stren&gth"), "strength", "Alt+9", "", true, ""},
    {C::showConcrete, M::view, "&Cards>", T("&Concrete"), "concrete", "Alt+2", "", true, ""},
    {C::showWeather, M::view, "&Cards>", T("Pour &day"), "weather", "Ctrl+Alt+W", "", true, ""},
    {C::showPour, M::view, "&Cards>", T("P&our plan"), "concrete", "Alt+Shift+2", "", true, ""},
    {C::showSteel, M::view, "&Cards>", T("&Reinforcement"), "mesh", "Alt+3", "", true, ""},
    {C::showMould, M::view, "&Cards>", T("Mou&ld"), "mould", "Alt+Shift+3", "", true, ""},
    {C::showCuts, M::view, "&Cards>", T("C&uts"), "mould", "Alt+Shift+5", "", true, ""},
    {C::showMoney, M::view, "&Cards>", T("&Money"), "money", "Alt+4", "", true, ""},
    {C::showShopping, M::view, "&Cards>", T("&Shopping list"), "list", "Alt+5", "", true, ""},
    {C::showFindings, M::view, "&Cards>", T("&Findings"), "caution", "Alt+6", "", true, ""},
    {C::showProperties, M::view, "&Cards>", T("&Properties"), "settings", "Alt+7", "", true, ""},
    {C::showParts, M::view, "&Cards>", T("P&arts"), "list", "Alt+8", "", true, ""},
    {C::lookAsSystem, M::view, "Li&ght or dark>", T("As the &system"), "settings", "Ctrl+Alt+S", "look", true, ""},
    {C::lookLight, M::view, "Li&ght or dark>", T("&Light"), "light", "Ctrl+Alt+L", "look", true, ""},
    {C::lookDark, M::view, "Li&ght or dark>", T("&Dark"), "dark", "Ctrl+Alt+D", "look", true, ""},
    {C::resetLayout, M::view, "layout", T("Put cards back in &place"), "window", "Ctrl+Alt+R", "", false, ""},

    {C::showKeys, M::help, "help", T("&Keys"), "keys", "F1", "", false, T("Every command with its key.")},
    {C::showHint, M::help, "help", T("What to &try first"), "help", "Shift+F1", "", false, ""},
    {C::showCautions, M::help, "help", T("&Cautions"), "caution", "Ctrl+F1", "", false,
     T("What this program does not know, and what can hurt.")},
    {C::showAbout, M::help, "help", T("&About, sources and licence"), "yardcast", "Ctrl+Shift+F1", "", false, ""},
};

/// Only for the collector of translations: the submenus, which the table names in its sections.
[[maybe_unused]] constexpr const char* kSubmenus[] = {T("E&xport for other programs"), T("Connections and thin&gs"), T("Ali&gn"), T("&Stage of the job"),
                                                      T("&Cards"), T("Li&ght or dark")};
#undef T

}  // namespace

std::span<const CommandSpec> commandTable() { return kTable; }

Command commandOf(Stage stage)
{
    switch (stage) {
    case Stage::layOut: return Command::stageLayOut;
    case Stage::strength: return Command::stageStrength;
    case Stage::steel: return Command::stageSteel;
    case Stage::mould: return Command::stageMould;
    case Stage::pour: return Command::stagePour;
    case Stage::lift: return Command::stageLift;
    case Stage::buy: break;
    }
    return Command::stageBuy;
}

const CommandSpec& specOf(Command command)
{
    for (const CommandSpec& spec : kTable) {
        if (spec.id == command) return spec;
    }
    Q_UNREACHABLE();
}

QString textOf(const CommandSpec& spec) { return QCoreApplication::translate("yardcast::ui::Commands", spec.text); }

QString menuTitle(Menu menu)
{
    switch (menu) {
    case Menu::file: return Commands::tr("&File");
    case Menu::edit: return Commands::tr("&Edit");
    case Menu::draw: return Commands::tr("&Draw");
    case Menu::arrange: return Commands::tr("&Arrange");
    case Menu::view: return Commands::tr("&View");
    case Menu::help: return Commands::tr("&Help");
    }
    return {};
}

QList<QKeySequence> keysOf(const CommandSpec& spec)
{
    QList<QKeySequence> keys;
    for (const QString& one : QString::fromLatin1(spec.keys).split(", ", Qt::SkipEmptyParts)) {
        keys.append(QKeySequence(one, QKeySequence::PortableText));
    }
    return keys;
}

Commands::Commands(QWidget& window) : QObject(&window)
{
    for (const CommandSpec& spec : kTable) {
        auto* action = new QAction(textOf(spec), this);
        action->setObjectName(QString::number(int(spec.id)));
        action->setShortcuts(keysOf(spec));
        action->setShortcutContext(Qt::WindowShortcut);
        action->setCheckable(spec.checkable);
        action->setMenuRole(QAction::NoRole);
        if (*spec.says) action->setStatusTip(QCoreApplication::translate("yardcast::ui::Commands", spec.says));
        QString tip = QString(textOf(spec)).remove('&').remove("...");
        if (*spec.keys) {
            tip = tr("%1 (%2)").arg(tip, action->shortcut().toString(QKeySequence::NativeText));
        }
        if (*spec.says) tip += "\n" + action->statusTip();
        action->setToolTip(tip);
        if (*spec.group) {
            QActionGroup* choices = group(spec.group);
            if (!choices) {
                choices = new QActionGroup(this);
                choices->setObjectName(spec.group);
                groups_.push_back(choices);
            }
            choices->addAction(action);
        }
        window.addAction(action);
        const auto index = size_t(spec.id);
        if (actions_.size() <= index) actions_.resize(index + 1, nullptr);
        actions_[index] = action;
    }
}

QAction* Commands::operator[](Command command) const { return actions_.at(size_t(command)); }

QActionGroup* Commands::group(const char* name) const
{
    for (QActionGroup* group : groups_) {
        if (group->objectName() == QLatin1String(name)) return group;
    }
    return nullptr;
}

void Commands::setInk(const Ink& ink)
{
    for (const CommandSpec& spec : kTable) (*this)[spec.id]->setIcon(icon(spec.icon, ink));
}

}  // namespace yardcast::ui
