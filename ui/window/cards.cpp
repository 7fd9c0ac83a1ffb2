#include "ui/window/cards.h"

#include <initializer_list>
#include <utility>

#include <QAction>

#include "ui/canvas/canvas.h"
#include "ui/drawing/part_painter.h"
#include "ui/panels/concrete_card.h"
#include "ui/panels/cuts_card.h"
#include "ui/panels/findings_card.h"
#include "ui/panels/lifting_card.h"
#include "ui/panels/money_card.h"
#include "ui/panels/mould_card.h"
#include "ui/panels/parts_outline.h"
#include "ui/panels/parts_tray.h"
#include "ui/panels/pour_card.h"
#include "ui/panels/property_editor.h"
#include "ui/panels/reinforcement_card.h"
#include "ui/panels/shopping_card.h"
#include "ui/panels/strength_card.h"
#include "ui/panels/weather_card.h"
#include "ui/window/commands.h"
#include "ui/window/workbench.h"

namespace yardcast::ui {

namespace {

constexpr std::pair<const char*, Command> kTrayCommands[] = {
    {"counter", Command::drawCounter}, {"support", Command::drawSupport}, {"panel", Command::drawPanel},
    {"front", Command::drawFront},     {"appliance", Command::placeAppliance}, {"sink", Command::cutSink},
    {"hob", Command::cutHob},          {"tap", Command::cutTap},          {"drain", Command::cutDrain},
    {"opening", Command::cutOpening},  {"water", Command::placeWater},    {"waste", Command::placeWaste},
    {"power", Command::placePower},    {"gas", Command::placeGas},        {"wall", Command::placeWall},
    {"tree", Command::placeTree},      {"door", Command::placeDoor}};

/// A click in the tray is the command of the same word: one way to begin, whatever the hand did.
PartsTray* makeTray(const Commands& commands)
{
    auto* tray = new PartsTray;
    for (const auto& [word, command] : kTrayCommands) {
        tray->setKey(word, commands[command]->shortcut());
    }
    QObject::connect(tray, &PartsTray::drawingAsked, tray, [&commands](const QString& asked) {
        for (const auto& [word, command] : kTrayCommands) {
            if (asked == QLatin1String(word)) commands[command]->trigger();
        }
    });
    return tray;
}

/// The view stays as it is while the parts can be seen: a list one reads line by line must not make the sheet jump.
void bringIntoView(const Workbench& bench, Canvas& canvas, const QStringList& ids)
{
    const ViewState state = canvas.viewState();
    if (state.pixelsPerMm <= 0.0) return;
    QRectF seen(QPointF(0.0, 0.0), QSizeF(canvas.size()) / state.pixelsPerMm);
    seen.moveCenter(state.centreMm);
    const Plan& plan = *bench.document.plan();
    for (const QString& id : ids) {
        const Part* part = findPart(plan, id.toStdString());
        if (!part || seen.contains(partShape(plan, *part, canvas.projection()).boundingRect())) continue;
        canvas.zoomToChosen();
        return;
    }
}

}  // namespace

Cards makeCards(Workbench& bench, const Commands& commands, Canvas& canvas)
{
    Cards cards;
    cards.tray = makeTray(commands);
    cards.lifting = new LiftingCard(bench.document, bench.selection, bench.live);
    cards.strength = new StrengthCard(bench.document, bench.selection, bench.live);
    cards.concrete = new ConcreteCard(bench.document, bench.selection, bench.live);
    cards.weather = new WeatherCard(bench.document, bench.selection, bench.live);
    cards.pour = new PourCard(bench.document, bench.selection, bench.live);
    cards.reinforcement = new ReinforcementCard(bench.document, bench.selection, bench.live);
    cards.mould = new MouldCard(bench.document, bench.selection, bench.live);
    cards.cuts = new CutsCard(bench.document, bench.selection, bench.live);
    cards.money = new MoneyCard(bench.document, bench.selection, bench.live);
    cards.shopping = new ShoppingCard(bench.document, bench.selection, bench.live);
    cards.findings = new FindingsCard(bench.document, bench.selection, bench.live);
    cards.properties = new PropertyEditor(bench.document, bench.selection, bench.live);
    auto* outline = new PartsOutline(bench.document, bench.selection, bench.live);
    cards.parts = outline;
    const auto see = [&bench, &canvas](const QStringList& parts) { bringIntoView(bench, canvas, parts); };
    for (LiveCard* card : std::initializer_list<LiveCard*>{cards.lifting, cards.strength, cards.concrete,
                                                           cards.weather, cards.pour,
                                                           cards.reinforcement, cards.mould, cards.cuts, cards.money, cards.shopping,
                                                           cards.findings}) {
        QObject::connect(card, &LiveCard::partsAsked, &canvas, see);
    }
    QObject::connect(outline, &PartsOutline::partsAsked, &canvas, see);
    return cards;
}

}  // namespace yardcast::ui
