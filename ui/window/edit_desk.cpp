#include "ui/window/edit_desk.h"

#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QUndoStack>

#include "ui/canvas/canvas.h"
#include "ui/document/clipboard.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"
#include "ui/window/angle_field.h"
#include "ui/window/commands.h"

namespace yardcast::ui {

namespace {

constexpr double kRaiseMm = 10.0;
/// Each paste lies a hand's breadth beside the last, so that it is seen.
constexpr Point kPasteStepMm{100.0, -100.0};
constexpr int kRaiseMergeId = 7001;

}  // namespace

EditDesk::EditDesk(QWidget& window, const Commands& commands, PlanDocument& document, Selection& selection,
                   Canvas& canvas)
    : QObject(&window), window_(window), commands_(commands), document_(document), selection_(selection),
      canvas_(canvas)
{
    const auto on = [&](Command command, auto act) { connect(commands[command], &QAction::triggered, this, act); };
    on(Command::undo, [this] { undoStep(false); });
    on(Command::redo, [this] { undoStep(true); });
    on(Command::cut, [this] { cut(); });
    on(Command::copy, [this] { copy(); });
    on(Command::paste, [this] { paste(); });
    on(Command::duplicate, [this] { canvas_.duplicateChosen(); });
    on(Command::remove, [this] { canvas_.deleteChosen(); });
    on(Command::selectAll, [this] { canvas_.selectAll(); });
    on(Command::typeSize, [this] { canvas_.openTypedSize(); });
    on(Command::turnLeft, [this] { canvas_.turnChosen(90.0); });
    on(Command::turnRight, [this] { canvas_.turnChosen(-90.0); });
    on(Command::turnBy, [this] { turnBy(); });
    on(Command::mirror, [this] { canvas_.mirrorChosen(); });
    on(Command::alignLeft, [this] { align(AlignTo::left, tr("Align left sides")); });
    on(Command::alignCentre, [this] { align(AlignTo::centreX, tr("Align centres")); });
    on(Command::alignRight, [this] { align(AlignTo::right, tr("Align right sides")); });
    on(Command::alignFront, [this] { align(AlignTo::front, tr("Align front edges")); });
    on(Command::alignMiddle, [this] { align(AlignTo::centreY, tr("Align centres")); });
    on(Command::alignBack, [this] { align(AlignTo::back, tr("Align back edges")); });
    on(Command::distributeAcross, [this] { distribute(Axis::x, tr("Equal gaps across")); });
    on(Command::distributeDeep, [this] { distribute(Axis::y, tr("Equal gaps front to back")); });
    on(Command::raise, [this] { raise(kRaiseMm); });
    on(Command::lower, [this] { raise(-kRaiseMm); });

    QUndoStack* stack = document.undoStack();
    connect(stack, &QUndoStack::indexChanged, this, &EditDesk::enable);
    connect(stack, &QUndoStack::cleanChanged, this, &EditDesk::enable);
    connect(&selection, &Selection::chosenChanged, this, &EditDesk::enable);
    connect(&document, &PlanDocument::committedChanged, this, &EditDesk::enable);
    connect(QApplication::clipboard(), &QClipboard::dataChanged, this, &EditDesk::enable);
    enable();
}

bool EditDesk::copy()
{
    std::unique_ptr<QMimeData> data = partsToMime(*document_.plan(), selection_.parts());
    if (!data) return false;
    pastes_ = 0;
    QApplication::clipboard()->setMimeData(data.release());
    return true;
}

void EditDesk::cut()
{
    if (!copy()) return;
    const Ids ids = chosen();
    document_.apply(tr("Cut %n part(s)", nullptr, int(ids.size())),
                    [&](const Plan& plan) { return removeParts(plan, ids); });
}

void EditDesk::paste()
{
    const std::vector<Part> parts = partsFromMime(QApplication::clipboard()->mimeData());
    if (parts.empty()) return;
    ++pastes_;
    const Point by{kPasteStepMm.x * pastes_, kPasteStepMm.y * pastes_};
    Ids made;
    document_.apply(tr("Paste %n part(s)", nullptr, int(parts.size())),
                    [&](const Plan& plan) { return insertParts(plan, parts, by, &made); });
    QStringList ids;
    for (const std::string& id : made) ids.append(QString::fromStdString(id));
    selection_.setParts(ids);
}

void EditDesk::align(AlignTo line, const QString& name)
{
    document_.apply(name, [&](const Plan& plan) { return alignParts(plan, chosen(), line); });
}

void EditDesk::distribute(Axis axis, const QString& name)
{
    document_.apply(name, [&](const Plan& plan) { return distributeParts(plan, chosen(), axis); });
}

void EditDesk::raise(double byMm)
{
    document_.apply(byMm > 0.0 ? tr("Raise") : tr("Lower"),
                    [&](const Plan& plan) { return raiseParts(plan, chosen(), byMm); }, kRaiseMergeId);
}

void EditDesk::turnBy()
{
    if (selection_.parts().isEmpty()) return;
    auto* field = new AngleField(&window_);
    connect(field, &AngleField::entered, &canvas_, &Canvas::turnChosen);
    field->openOver(canvas_);
}

void EditDesk::undoStep(bool forward)
{
    canvas_.cancelGesture();
    if (forward) {
        document_.undoStack()->redo();
    } else {
        document_.undoStack()->undo();
    }
}

void EditDesk::enable()
{
    const QUndoStack* stack = document_.undoStack();
    const auto name = [&](Command command, const QString& step, bool can, const QString& pattern) {
        QAction* action = commands_[command];
        action->setEnabled(can);
        const QString plain = textOf(specOf(command));
        const QString text = can && !step.isEmpty() ? pattern.arg(plain, step) : plain;
        if (action->text() == text) return;
        action->setText(text);
        action->setToolTip(tr("%1 (%2)").arg(QString(text).remove('&'),
                                             action->shortcut().toString(QKeySequence::NativeText)));
    };
    name(Command::undo, stack->undoText(), stack->canUndo(), tr("%1: %2"));
    name(Command::redo, stack->redoText(), stack->canRedo(), tr("%1: %2"));

    const int parts = int(selection_.parts().size());
    const bool wholeParts = parts > 0 && selection_.cutout().isEmpty();
    for (const Command command : {Command::cut, Command::copy, Command::turnLeft, Command::turnRight, Command::turnBy,
                                  Command::mirror, Command::raise, Command::lower}) {
        commands_[command]->setEnabled(wholeParts);
    }
    for (const Command command : {Command::duplicate, Command::remove, Command::typeSize}) {
        commands_[command]->setEnabled(!selection_.isEmpty());
    }
    for (const Command command : {Command::alignLeft, Command::alignCentre, Command::alignRight, Command::alignFront,
                                  Command::alignMiddle, Command::alignBack}) {
        commands_[command]->setEnabled(parts >= 2);
    }
    for (const Command command : {Command::distributeAcross, Command::distributeDeep}) {
        commands_[command]->setEnabled(parts >= 3);
    }
    commands_[Command::selectAll]->setEnabled(!document_.plan()->parts.empty());
    commands_[Command::paste]->setEnabled(mayHoldParts(QApplication::clipboard()->mimeData()));
}

Ids EditDesk::chosen() const
{
    Ids ids;
    for (const QString& id : selection_.parts()) ids.push_back(id.toStdString());
    return ids;
}

}  // namespace yardcast::ui
