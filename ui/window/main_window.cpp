#include "ui/window/main_window.h"

#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QCloseEvent>
#include <QFileInfo>
#include <QMenu>
#include <QMimeData>
#include <QProcess>
#include <QSettings>
#include <QStatusBar>
#include <QVBoxLayout>

#include "ui/canvas/canvas.h"
#include "ui/look/theme.h"
#include "ui/panels/findings_card.h"
#include "ui/panels/mould_card.h"
#include "ui/window/cards.h"
#include "ui/window/commands.h"
#include "ui/window/docks.h"
#include "ui/window/draw_desk.h"
#include "ui/window/edit_desk.h"
#include "ui/window/export_desk.h"
#include "ui/window/field_keys.h"
#include "ui/window/file_desk.h"
#include "ui/window/help_sheets.h"
#include "ui/window/measure_line.h"
#include "ui/window/menus.h"
#include "ui/window/message_bar.h"
#include "ui/window/new_plan.h"
#include "ui/window/print_desk.h"
#include "ui/window/stage_row.h"
#include "ui/window/window_memory.h"
#include "ui/window/workbench.h"

namespace yardcast::ui {

namespace {

constexpr auto kHint = "hint";
constexpr auto kStarted = "started_before";
constexpr auto kAppearance = "appearance";
constexpr QSize kLeast{900, 560};
constexpr int kFreshMs = 700;

/// A local plan file in what is dragged, or empty.
QString draggedFile(const QMimeData& data)
{
    if (data.urls().size() != 1 || !data.urls().first().isLocalFile()) return {};
    const QString file = data.urls().first().toLocalFile();
    return QFileInfo(file).isFile() ? file : QString();
}

}  // namespace

MainWindow::MainWindow(Workbench& bench, Theme& theme, QWidget* parent)
    : QMainWindow(parent), bench_(bench), theme_(theme), commands_(new Commands(*this)),
      messages_(new MessageBar(this)), canvas_(new Canvas(bench.document, bench.selection, bench.live)),
      files_(new FileDesk(*this, bench.document, bench.session, bench.autosave, bench.recent, *messages_)),
      print_(new PrintDesk(*this, *commands_, bench, *messages_, [this] { return draw_->lookDeg(); })),
      export_(new ExportDesk(*this, *commands_, bench, *messages_,
                             [this] { return cards_ ? cards_->mould->shownCasting() : std::string(); })),
      edit_(new EditDesk(*this, *commands_, bench.document, bench.selection, *canvas_)),
      draw_(new DrawDesk(*this, *commands_, *canvas_)), docks_(new Docks(*this, *commands_)),
      measureLine_(new MeasureLine(bench.live)), samples_(new QMenu(this)), recent_(new QMenu(this)),
      memory_(std::make_unique<WindowMemory>(*this, bench.settings))
{
    setObjectName("main-window");
    setMinimumSize(kLeast);
    setAcceptDrops(true);
    auto* middle = new QWidget(this);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(messages_);
    column->addWidget(canvas_, 1);
    setCentralWidget(middle);
    auto* row = new StageRow(*commands_, bench.document, this);
    addToolBar(Qt::TopToolBarArea, row);
    connect(row, &StageRow::titleDone, canvas_, [this] { canvas_->setFocus(); });
    statusBar()->setSizeGripEnabled(false);
    statusBar()->addWidget(measureLine_, 1);
    setContextMenuPolicy(Qt::NoContextMenu);

    buildCards();
    buildMenus(*this, *commands_, {{Command::newFromSample, samples_}, {Command::openRecent, recent_}});
    context_ = buildContextMenu(*this, *commands_);
    connectFiles();
    connectHelp();
    connectLook();
    qApp->installEventFilter(new FieldKeys(this));

    connect(canvas_, &Canvas::measureTextChanged, measureLine_, &MeasureLine::setMeasureText);
    connect(canvas_, &Canvas::hintChanged, measureLine_, &MeasureLine::setHint);
    connect(canvas_, &Canvas::contextMenuRequested, this, [this](const QPoint& at) { context_->popup(at); });
    connect(measureLine_, &MeasureLine::findingChosen, this, [this] {
        docks_->bringForward(Command::showFindings);
        cards_->findings->showFinding(0);
    });
    measureLine_->setHint(canvas_->hint());

    memory_->rememberOriginal();
    memory_->restore();
    freshPlan_.setSingleShot(true);
    freshPlan_.setInterval(kFreshMs);
    canvas_->installEventFilter(this);
    showTitle();
    canvas_->setFocus();
}

MainWindow::~MainWindow() = default;

bool MainWindow::start(const QString& file)
{
    QSettings& settings = bench_.settings;
    const bool firstStart = !settings.value(kStarted, false).toBool();
    settings.setValue(kStarted, true);
    if (file.isEmpty() && firstStart) {
        files_->newFromSample(samplePlans().at(1).file);
    } else {
        bench_.session.startUntitled(emptyPlan());
    }
    const bool opened = file.isEmpty() || files_->open(file);
    if (file.isEmpty()) files_->offerUntitledBackups();
    if (file.isEmpty() && firstStart) showHint();
    return opened;
}

void MainWindow::showStage(Stage stage)
{
    (*commands_)[commandOf(stage)]->trigger();
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    canvas_->cancelGesture();
    if (!files_->mayLeave()) {
        event->ignore();
        return;
    }
    memory_->save();
    bench_.session.close();
    event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event)
{
    if (!draggedFile(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event)
{
    const QString file = draggedFile(*event->mimeData());
    if (file.isEmpty()) return;
    event->acceptProposedAction();
    // After the drop has ended: the question about unsaved work must not hold up the program dragged from.
    QMetaObject::invokeMethod(this, [this, file] { files_->open(file); }, Qt::QueuedConnection);
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event)
{
    // A plan is opened before the desktop has given the window its place: the whole drawing is shown in what it gets.
    if (watched == canvas_ && event->type() == QEvent::Resize && freshPlan_.isActive()) {
        QMetaObject::invokeMethod(canvas_, &Canvas::zoomFit, Qt::QueuedConnection);
    }
    return QMainWindow::eventFilter(watched, event);
}

QMenu* MainWindow::createPopupMenu() { return nullptr; }

void MainWindow::buildCards()
{
    cards_ = std::make_unique<Cards>(makeCards(bench_, *commands_, *canvas_));
    docks_->add(Command::showTray, "tray", cards_->tray, Qt::LeftDockWidgetArea, false);
    const Qt::DockWidgetArea right = Qt::RightDockWidgetArea;
    docks_->add(Command::showWeight, "weight", cards_->lifting, right, true);
    docks_->add(Command::showStrength, "strength", cards_->strength, right, true);
    docks_->add(Command::showConcrete, "concrete", cards_->concrete, right, true);
    docks_->add(Command::showWeather, "weather", cards_->weather, right, true);
    docks_->add(Command::showPour, "pour", cards_->pour, right, true);
    docks_->add(Command::showSteel, "reinforcement", cards_->reinforcement, right, true);
    docks_->add(Command::showMould, "mould", cards_->mould, right, true);
    docks_->add(Command::showCuts, "cuts", cards_->cuts, right, true);
    docks_->add(Command::showMoney, "money", cards_->money, right, true);
    docks_->add(Command::showProperties, "properties", cards_->properties, right, false);
    docks_->add(Command::showParts, "parts", cards_->parts, right, false);
    docks_->add(Command::showFindings, "findings", cards_->findings, right, true);
    docks_->add(Command::showShopping, "shopping", cards_->shopping, right, true);
    docks_->stack({{Command::showWeight, Command::showStrength, Command::showConcrete, Command::showWeather,
                    Command::showPour, Command::showSteel, Command::showMould, Command::showCuts, Command::showMoney},
                   {Command::showProperties, Command::showParts, Command::showFindings, Command::showShopping}});
    setCorner(Qt::TopLeftCorner, Qt::LeftDockWidgetArea);
    setCorner(Qt::TopRightCorner, Qt::RightDockWidgetArea);
    setCorner(Qt::BottomLeftCorner, Qt::LeftDockWidgetArea);
    setCorner(Qt::BottomRightCorner, Qt::RightDockWidgetArea);
    for (const auto& [command, card] :
         std::initializer_list<std::pair<Command, LiveCard*>>{{Command::showWeight, cards_->lifting},
                                                              {Command::showStrength, cards_->strength},
                                                              {Command::showConcrete, cards_->concrete},
                                                              {Command::showWeather, cards_->weather},
                                                              {Command::showPour, cards_->pour},
                                                              {Command::showSteel, cards_->reinforcement},
                                                              {Command::showMould, cards_->mould},
                                                              {Command::showCuts, cards_->cuts},
                                                              {Command::showMoney, cards_->money},
                                                              {Command::showShopping, cards_->shopping},
                                                              {Command::showFindings, cards_->findings}}) {
        connect(card, &LiveCard::openedChanged, docks_, [this, command = command](bool opened) {
            if (opened) docks_->giveRoom(command);
        });
        // Where there is room for its table, a card that comes forward is not left half empty.
        connect(docks_, &Docks::cameForward, card, [this, command = command, card = card](Command shown) {
            if (shown == command && !card->isOpened() && docks_->isRoomy(command)) openStageCard(card);
        });
    }
    docks_->giveWidth(Command::showTray);
    connectStages();
    connect((*commands_)[Command::resetLayout], &QAction::triggered, this, [this] { memory_->reset(); });
}

void MainWindow::connectStages()
{
    connect((*commands_)[Command::stageLayOut], &QAction::triggered, docks_, [this] {
        openStageCard(nullptr);
        docks_->bringForward(Command::showProperties);
        docks_->giveRoom(Command::showProperties);
    });
    const auto opens = [this](Stage stage, Command command, LiveCard* card, Docks::Room room = Docks::Room::table) {
        connect((*commands_)[commandOf(stage)], &QAction::triggered, docks_, [this, command, card, room] {
            docks_->bringForward(command);
            openStageCard(card);
            docks_->giveRoom(command, room);
        });
    };
    opens(Stage::strength, Command::showStrength, cards_->strength);
    opens(Stage::steel, Command::showSteel, cards_->reinforcement);
    opens(Stage::mould, Command::showMould, cards_->mould, Docks::Room::picture);
    opens(Stage::pour, Command::showPour, cards_->pour);
    opens(Stage::lift, Command::showWeight, cards_->lifting, Docks::Room::picture);
    opens(Stage::buy, Command::showShopping, cards_->shopping);
    // What is bought as sheets and lengths stands above the list.
    connect((*commands_)[Command::stageBuy], &QAction::triggered, docks_,
            [this] { docks_->bringForward(Command::showCuts); });
}

void MainWindow::openStageCard(LiveCard* card)
{
    // Only what a stage opened is closed by the next: a card that the person opened stays as it is.
    if (stageCard_ && stageCard_ != card) stageCard_->setOpened(false);
    stageCard_ = card && !card->isOpened() ? card : (card == stageCard_ ? card : nullptr);
    if (card) card->setOpened(true);
}

void MainWindow::connectFiles()
{
    const auto on = [&](Command command, auto act) {
        connect((*commands_)[command], &QAction::triggered, this, act);
    };
    on(Command::newWindow, [] { QProcess::startDetached(QCoreApplication::applicationFilePath(), {}); });
    on(Command::newPlan, [this] { files_->newPlan(); });
    on(Command::open, [this] { files_->openByDialog(); });
    on(Command::readTemperatures, [this] { files_->readTemperaturesByDialog(); });
    on(Command::save, [this] { files_->save(); });
    on(Command::saveAs, [this] { files_->saveAsByDialog(); });
    on(Command::closeWindow, [this] { close(); });
    on(Command::quit, [] { QApplication::closeAllWindows(); });
    on(Command::newFromSample, [this] { samples_->popup(mapToGlobal(canvas_->geometry().center())); });
    on(Command::openRecent, [this] { recent_->popup(mapToGlobal(canvas_->geometry().center())); });
    fillSamples();
    fillRecent();
    connect(&bench_.recent, &RecentFiles::changed, this, &MainWindow::fillRecent);
    connect(files_, &FileDesk::opened, this, [this] {
        canvas_->zoomFit();
        freshPlan_.start();
    });
    connect(&bench_.session, &FileSession::pathChanged, this, &MainWindow::showTitle);
    connect(&bench_.session, &FileSession::modifiedChanged, this, &MainWindow::setWindowModified);
    connect(&bench_.document, &PlanDocument::committedChanged, this, &MainWindow::showTitle);
}

void MainWindow::connectHelp()
{
    const auto on = [&](Command command, auto act) {
        connect((*commands_)[command], &QAction::triggered, this, act);
    };
    on(Command::showKeys, [this] { showKeysSheet(*this); });
    on(Command::showCautions, [this] { showCautionsSheet(*this); });
    on(Command::showAbout, [this] { showAboutSheet(*this); });
    on(Command::showHint, [this] { showHint(); });
}

void MainWindow::connectLook()
{
    static constexpr std::pair<Command, Appearance> kLooks[] = {{Command::lookAsSystem, Appearance::asSystem},
                                                                {Command::lookLight, Appearance::light},
                                                                {Command::lookDark, Appearance::dark}};
    for (const auto& [command, appearance] : kLooks) {
        QAction* action = (*commands_)[command];
        action->setChecked(theme_.appearance() == appearance);
        connect(action, &QAction::triggered, this, [this, appearance = appearance] {
            theme_.setAppearance(appearance);
            bench_.settings.setValue(kAppearance, int(appearance));
        });
    }
    const auto take = [this](const Ink& ink) {
        commands_->setInk(ink);
        canvas_->setInk(ink);
    };
    take(theme_.ink());
    connect(&theme_, &Theme::inkChanged, this, take);
}

void MainWindow::fillRecent()
{
    recent_->clear();
    for (const QString& file : bench_.recent.files()) {
        QString text = QFileInfo(file).fileName();
        QAction* action = recent_->addAction(text.replace('&', "&&"), this, [this, file] { files_->open(file); });
        action->setStatusTip(file);
        action->setToolTip(file);
    }
    recent_->setToolTipsVisible(true);
    const bool any = !recent_->isEmpty();
    if (any) {
        recent_->addSeparator();
        recent_->addAction(tr("Forget these"), &bench_.recent, &RecentFiles::clear);
    }
    recent_->setEnabled(any);
    (*commands_)[Command::openRecent]->setEnabled(any);
}

void MainWindow::fillSamples()
{
    for (const SamplePlan& sample : samplePlans()) {
        samples_->addAction(sample.title, this, [this, file = sample.file] { files_->newFromSample(file); });
    }
}

void MainWindow::showTitle()
{
    QString name = bench_.session.name();
    if (name.isEmpty()) name = QString::fromStdString(bench_.document.committed()->title).simplified();
    if (name.isEmpty()) name = tr("Untitled");
    setWindowTitle(tr("%1[*] – Yardcast").arg(name.replace("[*]", "[*][*]")));
    setWindowFilePath(bench_.session.path());
    setWindowModified(bench_.session.hasUnsavedChanges());
}

void MainWindow::showHint()
{
    messages_->show({kHint, Message::Weight::note,
                     tr("Try: drag an edge of a counter and watch the kilograms. C draws a counter of your own, K a "
                        "sink in it; Ctrl+Z takes it back. F1: all keys."),
                     {}, {{tr("Empty sheet"), [this] { files_->newPlan(); }}, {tr("Got it"), {}}}, {}});
}

}  // namespace yardcast::ui
