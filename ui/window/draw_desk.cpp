#include "ui/window/draw_desk.h"

#include <cmath>

#include <QAction>
#include <QActionGroup>

#include "ui/canvas/canvas.h"
#include "ui/window/commands.h"

namespace yardcast::ui {

namespace {

struct ToolCommand {
    Command command;
    ToolKind tool;
};
constexpr ToolCommand kToolCommands[] = {
    {Command::choose, ToolKind::select},         {Command::drawCounter, ToolKind::counter},
    {Command::drawCounterCorners, ToolKind::counterPolygon}, {Command::drawSupport, ToolKind::support},
    {Command::drawPanel, ToolKind::panel},       {Command::drawFront, ToolKind::front},
    {Command::placeAppliance, ToolKind::appliance}, {Command::drawJoint, ToolKind::joint},
    {Command::drawRib, ToolKind::rib},           {Command::measure, ToolKind::measure},
    {Command::drawSite, ToolKind::siteOutline}};

constexpr double kQuarterTurnDeg = 90.0;

}  // namespace

DrawDesk::DrawDesk(QObject& owner, const Commands& commands, Canvas& canvas)
    : QObject(&owner), commands_(commands), canvas_(canvas)
{
    connectTools();
    connectView();
    showTool(canvas.tool());
    showProjection();
    commands[Command::snapping]->setChecked(canvas.isSnappingOn());
    commands[Command::grid]->setChecked(canvas.isGridShown());
    commands[Command::stageLayOut]->setChecked(true);
}

void DrawDesk::connectTools()
{
    const auto on = [&](Command command, auto act) { connect(commands_[command], &QAction::triggered, this, act); };
    for (const auto& [command, tool] : kToolCommands) {
        on(command, [this, tool = tool] {
            canvas_.setTool(tool);
            canvas_.setFocus();
            // The key of the tool in hand, pressed again, would take its tick away.
            showTool(canvas_.tool());
        });
    }
    const auto cutout = [&](Command command, CutoutPurpose purpose, CutoutShape shape) {
        on(command, [this, purpose, shape] {
            canvas_.startAddingCutout(purpose, shape);
            canvas_.setFocus();
        });
    };
    cutout(Command::cutSink, CutoutPurpose::sink, CutoutShape::rectangle);
    cutout(Command::cutHob, CutoutPurpose::hob, CutoutShape::rectangle);
    cutout(Command::cutTap, CutoutPurpose::tap, CutoutShape::circle);
    cutout(Command::cutDrain, CutoutPurpose::drain, CutoutShape::circle);
    cutout(Command::cutOpening, CutoutPurpose::other, CutoutShape::rectangle);
    const auto fixture = [&](Command command, FixtureKind kind) {
        on(command, [this, kind] {
            canvas_.startAddingFixture(kind);
            canvas_.setFocus();
        });
    };
    fixture(Command::placeWater, FixtureKind::water);
    fixture(Command::placeWaste, FixtureKind::waste);
    fixture(Command::placePower, FixtureKind::power);
    fixture(Command::placeGas, FixtureKind::gas);
    fixture(Command::placeWall, FixtureKind::wall);
    fixture(Command::placeTree, FixtureKind::tree);
    fixture(Command::placeDoor, FixtureKind::door);
    commands_.group("tool")->setExclusionPolicy(QActionGroup::ExclusionPolicy::ExclusiveOptional);
    connect(&canvas_, &Canvas::toolChanged, this, &DrawDesk::showTool);
}

void DrawDesk::connectView()
{
    const auto on = [&](Command command, auto act) { connect(commands_[command], &QAction::triggered, this, act); };
    on(Command::fromAbove, [this] { canvas_.setProjection(Projection::above()); });
    on(Command::fromFront, [this] { canvas_.setProjection(Projection::front(lookDeg_)); });
    on(Command::lookFurtherLeft, [this] { walkRound(-kQuarterTurnDeg); });
    on(Command::lookFurtherRight, [this] { walkRound(kQuarterTurnDeg); });
    on(Command::zoomIn, [this] { canvas_.zoomIn(); });
    on(Command::zoomOut, [this] { canvas_.zoomOut(); });
    on(Command::zoomFit, [this] { canvas_.zoomFit(); });
    on(Command::zoomChosen, [this] { canvas_.zoomToChosen(); });
    connect(commands_[Command::snapping], &QAction::toggled, &canvas_, &Canvas::setSnappingOn);
    connect(commands_[Command::grid], &QAction::toggled, &canvas_, &Canvas::setGridShown);
    connect(&canvas_, &Canvas::snappingChanged, commands_[Command::snapping], &QAction::setChecked);
    connect(&canvas_, &Canvas::projectionChanged, this, &DrawDesk::showProjection);
    for (const Stage stage : kStages) {
        on(commandOf(stage), [this, stage] { canvas_.setStage(stage); });
    }
}

void DrawDesk::showTool(ToolKind tool)
{
    for (const auto& [command, kind] : kToolCommands) commands_[command]->setChecked(kind == tool);
}

void DrawDesk::showProjection()
{
    const Projection& projection = canvas_.projection();
    if (!projection.isAbove()) lookDeg_ = projection.lookDeg();
    commands_[Command::fromAbove]->setChecked(projection.isAbove());
    commands_[Command::fromFront]->setChecked(!projection.isAbove());
    commands_[Command::lookFurtherLeft]->setEnabled(!projection.isAbove());
    commands_[Command::lookFurtherRight]->setEnabled(!projection.isAbove());
}

void DrawDesk::walkRound(double byDeg)
{
    const double look = std::fmod(lookDeg_ + byDeg + 360.0, 360.0);
    canvas_.setProjection(Projection::front(look));
}

}  // namespace yardcast::ui
