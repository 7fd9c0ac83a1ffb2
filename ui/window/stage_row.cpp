#include "ui/window/stage_row.h"

#include <QAction>
#include <QKeyEvent>
#include <QLineEdit>
#include <QToolButton>

#include "core/plan/edits.h"
#include "ui/document/plan_document.h"
#include "ui/look/theme.h"
#include "ui/window/commands.h"

namespace yardcast::ui {

namespace {

constexpr int kTitlePx = 230;

QToolButton* buttonFor(QAction* action, Qt::ToolButtonStyle style, QWidget* parent)
{
    auto* button = new QToolButton(parent);
    button->setDefaultAction(action);
    button->setToolButtonStyle(style);
    button->setAutoRaise(true);
    button->setFocusPolicy(Qt::TabFocus);
    button->setMinimumSize(kTargetPx, kTargetPx);
    return button;
}

QWidget* gap(QWidget* parent, bool stretches)
{
    auto* room = new QWidget(parent);
    room->setFixedHeight(1);
    room->setSizePolicy(stretches ? QSizePolicy::Expanding : QSizePolicy::Fixed, QSizePolicy::Fixed);
    if (!stretches) room->setFixedWidth(3 * kStepPx);
    return room;
}

}  // namespace

StageRow::StageRow(const Commands& commands, PlanDocument& document, QWidget* parent)
    : QToolBar(tr("Stages of the job"), parent), document_(document), title_(new QLineEdit(this))
{
    setObjectName("stage-row");
    setMovable(false);
    setFloatable(false);
    setContextMenuPolicy(Qt::PreventContextMenu);
    setIconSize({24, 24});

    title_->setFrame(false);
    title_->setFixedWidth(kTitlePx);
    title_->setPlaceholderText(tr("Title of the plan"));
    title_->setAccessibleName(title_->placeholderText());
    title_->setToolTip(tr("Title of the plan; it stands on every sheet. Click to change it."));
    QFont strong = title_->font();
    strong.setWeight(QFont::DemiBold);
    title_->setFont(strong);
    title_->installEventFilter(this);
    connect(title_, &QLineEdit::editingFinished, this, &StageRow::takeTitle);
    connect(title_, &QLineEdit::returnPressed, this, &StageRow::titleDone);
    connect(&document, &PlanDocument::committedChanged, this, &StageRow::showTitle);
    addWidget(title_);
    addWidget(gap(this, false));
    addWidget(buttonFor(commands[Command::undo], Qt::ToolButtonIconOnly, this));
    addWidget(buttonFor(commands[Command::redo], Qt::ToolButtonIconOnly, this));
    addWidget(gap(this, true));
    int number = 0;
    for (const Stage stage : kStages) {
        const Command command = commandOf(stage);
        auto* button = buttonFor(commands[command], Qt::ToolButtonTextOnly, this);
        const QString words = tr("%1  %2").arg(++number).arg(textOf(specOf(command)).remove('&'));
        button->setText(words);
        button->setAccessibleName(words);
        // The action would write its own text back whenever it changes.
        connect(commands[command], &QAction::changed, button, [button, words] { button->setText(words); });
        addWidget(button);
    }
    addWidget(gap(this, true));
    addWidget(buttonFor(commands[Command::fromAbove], Qt::ToolButtonIconOnly, this));
    addWidget(buttonFor(commands[Command::fromFront], Qt::ToolButtonIconOnly, this));
    addWidget(gap(this, false));
    auto* print = buttonFor(commands[Command::print], Qt::ToolButtonTextBesideIcon, this);
    print->setText(tr("Print"));
    connect(commands[Command::print], &QAction::changed, print, [print] { print->setText(StageRow::tr("Print")); });
    addWidget(print);
    showTitle();
}

bool StageRow::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == title_ && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        showTitle();
        emit titleDone();
        return true;
    }
    return QToolBar::eventFilter(watched, event);
}

void StageRow::showTitle()
{
    const QString title = QString::fromStdString(document_.committed()->title);
    if (title_->text() == title) return;
    title_->setText(title);
    title_->setCursorPosition(0);
}

void StageRow::takeTitle()
{
    const std::string title = title_->text().simplified().toStdString();
    document_.apply(tr("Change the title"),
                    [&](const Plan& plan) { return changePlan(plan, [&](Plan& p) { p.title = title; }); });
    showTitle();
}

}  // namespace yardcast::ui
