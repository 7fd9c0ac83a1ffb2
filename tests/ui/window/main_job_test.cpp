// The main job in the real window, by keys and pointer: draw, see the figures change, save, open again, print.
#include "tests/ui/document/session_fixture.h"
#include "tests/ui/sheets/pdf_probe.h"

#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QDockWidget>
#include <QDragEnterEvent>
#include <QGraphicsView>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QPointer>
#include <QPrinter>
#include <QPushButton>
#include <QSettings>
#include <QSignalSpy>
#include <QToolBar>
#include <QUndoStack>

#include "core/assess/assessment.h"
#include "core/io/plan_file.h"
#include "ui/canvas/canvas.h"
#include "ui/look/theme.h"
#include "ui/panels/property_editor.h"
#include "ui/sheets/print_pack.h"
#include "ui/window/commands.h"
#include "ui/window/export_desk.h"
#include "ui/window/file_desk.h"
#include "ui/window/main_window.h"
#include "ui/window/measure_line.h"
#include "ui/window/message_bar.h"
#include "ui/window/page_preview.h"
#include "ui/window/print_desk.h"
#include "ui/window/workbench.h"

using namespace yardcast;
using namespace yardcast::ui;
using namespace yardcast::ui::test;

namespace {

/// A window as a person finds it who has used the program before.
struct Sitting {
    QTemporaryDir folder;
    QSettings settings{folder.filePath("settings.ini"), QSettings::IniFormat};
    std::unique_ptr<Workbench> bench;
    std::unique_ptr<MainWindow> window;

    explicit Sitting(Theme& theme, bool firstStart = false)
    {
        if (!firstStart) settings.setValue("started_before", true);
        bench = std::make_unique<Workbench>(settings);
        window = std::make_unique<MainWindow>(*bench, theme);
        window->resize(1366, 768);
        window->show();
        window->start({});
        if (!QTest::qWaitForWindowActive(window.get())) qFatal("the window did not come forward");
    }

    QWidget* sheet() const { return window->findChild<QGraphicsView*>()->viewport(); }
    const Plan& plan() const { return *bench->document.plan(); }

    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) const
    {
        QWidget* target = QApplication::focusWidget() ? QApplication::focusWidget() : window.get();
        QTest::keyClick(target, key, modifiers);
    }
    /// In pixels of the sheet.
    void drag(QPoint from, QPoint to) const
    {
        QWidget* on = sheet();
        const auto send = [&](QEvent::Type type, QPoint at, Qt::MouseButton button, Qt::MouseButtons buttons) {
            QMouseEvent event(type, QPointF(at), QPointF(on->mapToGlobal(at)), button, buttons, Qt::NoModifier);
            QApplication::sendEvent(on, &event);
        };
        send(QEvent::MouseMove, from, Qt::NoButton, Qt::NoButton);
        send(QEvent::MouseButtonPress, from, Qt::LeftButton, Qt::LeftButton);
        constexpr int kSteps = 12;
        for (int i = 1; i <= kSteps; ++i) {
            send(QEvent::MouseMove, from + (to - from) * i / kSteps, Qt::NoButton, Qt::LeftButton);
        }
        send(QEvent::MouseButtonRelease, to, Qt::LeftButton, Qt::NoButton);
    }
    const Assessment& figures() const
    {
        const bool current = QTest::qWaitFor([&] { return bench->live.assessment() && bench->live.isCurrent(); }, 5000);
        if (!current) qFatal("the figures did not come");
        return *bench->live.assessment();
    }
    bool writesPdf(const QString& file, const QStringList& sheets) const
    {
        QSignalSpy written(&window->prints(), &PrintDesk::written);
        window->prints().writePdf(file, sheets);
        return (!written.empty() || written.wait(60000)) && written.front().front().toBool();
    }
    bool exports(Export what, const QString& file) const
    {
        QSignalSpy written(&window->exports(), &ExportDesk::written);
        window->exports().write(what, file);
        return (!written.empty() || written.wait(60000)) && written.front().front().toBool();
    }
    int count(PartKind kind) const
    {
        int found = 0;
        for (const PartPtr& part : plan().parts) found += part->kind() == kind;
        return found;
    }
};

}  // namespace

class MainJobTest : public QObject {
    Q_OBJECT

    std::unique_ptr<Theme> theme_;

private slots:
    void initTestCase()
    {
        QStandardPaths::setTestModeEnabled(true);
        QCoreApplication::setApplicationName("yardcast-main-job-test");
        theme_ = std::make_unique<Theme>(*qApp, Appearance::light);
    }

    void drawnSavedReopenedPrinted()
    {
        Sitting s(*theme_);
        QVERIFY(QTest::qWaitForWindowExposed(s.window.get()));
        QVERIFY(s.plan().parts.empty());
        const QRect room = s.sheet()->rect();
        const QPoint middle = room.center();

        s.key(Qt::Key_C);
        s.key(Qt::Key_C);
        QCOMPARE(s.window->canvas().tool(), ToolKind::counter);
        QVERIFY(s.window->commands()[Command::drawCounter]->isChecked());
        s.drag(middle + QPoint(-200, 70), middle + QPoint(200, -70));
        QCOMPARE(s.count(PartKind::counter), 1);
        const double slabKg = s.figures().massKg();
        QVERIFY2(slabKg > 5.0, qPrintable(QString::number(slabKg)));

        s.key(Qt::Key_K);
        s.drag(middle + QPoint(-60, 30), middle + QPoint(60, -30));
        const auto& counter = std::get<Counter>(s.plan().parts.front()->body);
        QCOMPARE(int(counter.cutouts.size()), 1);
        QVERIFY(counter.cutouts.front().purpose == CutoutPurpose::sink);
        const double withSinkKg = s.figures().massKg();
        QVERIFY2(withSinkKg < slabKg - 1.0, qPrintable(QString("%1 %2").arg(slabKg).arg(withSinkKg)));

        s.key(Qt::Key_S);
        s.drag(middle + QPoint(-190, 60), middle + QPoint(-160, -60));
        s.key(Qt::Key_S);
        s.drag(middle + QPoint(160, 60), middle + QPoint(190, -60));
        QCOMPARE(s.count(PartKind::support), 2);
        const Assessment& all = s.figures();
        QVERIFY(all.massKg() > withSinkKg);
        QVERIFY(!all.shopping.lines.empty());
        QVERIFY(all.shopping.totalMinor > 0);
        QCOMPARE(int(all.castings.size()), 3);

        // Everything can be taken back and comes again.
        const Plan drawn = s.plan();
        const int steps = s.bench->document.undoStack()->index();
        QCOMPARE(steps, 4);
        for (int i = 0; i < steps; ++i) s.key(Qt::Key_Z, Qt::ControlModifier);
        QVERIFY(s.plan().parts.empty());
        for (int i = 0; i < steps; ++i) s.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
        QVERIFY(s.plan() == drawn);

        const QString file = s.folder.filePath("kitchen.yardplan");
        QVERIFY(s.window->isWindowModified());
        QVERIFY(s.window->files().saveAs(file));
        QVERIFY(!s.window->isWindowModified());
        QVERIFY(s.window->windowTitle().startsWith("kitchen[*]"));

        const QString pdf = s.folder.filePath("pack.pdf");
        QVERIFY(s.writesPdf(pdf, sheetNames()));
        QVERIFY(bytesOf(pdf).startsWith("%PDF-"));
        QVERIFY(QFileInfo(pdf).size() > 5000);
        const QString svg = s.folder.filePath("plan.svg");
        QVERIFY(s.exports(Export::planSvg, svg));
        QVERIFY(bytesOf(svg).contains("<svg"));
        const QString dxf = s.folder.filePath("plan.dxf");
        QVERIFY(s.exports(Export::planDxf, dxf));
        QVERIFY(bytesOf(dxf).contains("AC1015"));
        QVERIFY(bytesOf(dxf).contains("Counters"));
        const QString stl = s.folder.filePath("kitchen.stl");
        QVERIFY(s.exports(Export::kitchenStl, stl));
        QVERIFY(bytesOf(stl).startsWith("Yardcast"));
        QVERIFY(bytesOf(stl).size() > 84 + 12 * 50);
        // One message says what could not be written; nothing is left half.
        const QString nowhere = s.folder.filePath("no/such/folder/kitchen.stl");
        QVERIFY(!s.exports(Export::kitchenStl, nowhere));
        QVERIFY(!QFileInfo::exists(nowhere));
        // Of the piece that is chosen.
        s.bench->selection.setParts({QString::fromStdString(s.plan().parts.front()->id)});
        const std::string casting = s.window->exports().chosenCasting();
        QCOMPARE(QString::fromStdString(casting), QString::fromStdString(s.plan().parts.front()->id));
        const QString mould = s.folder.filePath("mould.dxf");
        QVERIFY(s.exports(Export::mouldDxf, mould));
        QVERIFY(bytesOf(mould).contains("MIRRORED"));
        QVERIFY(bytesOf(mould).contains(QByteArray::fromStdString(casting + "-1")));
        const QString lies = s.folder.filePath("mould.svg");
        QVERIFY(s.exports(Export::mouldSvg, lies));
        QVERIFY(bytesOf(lies).contains("mirrored"));
        const QString formers = s.folder.filePath("formers.stl");
        QVERIFY(s.exports(Export::formersStl, formers));
        QVERIFY(bytesOf(formers).size() > 84 + 12 * 50);
        const QString cuts = s.folder.filePath("cuts.csv");
        QVERIFY(s.exports(Export::cutsCsv, cuts));
        QVERIFY(bytesOf(cuts).startsWith("item,stock,stock_size_mm,for,piece"));
        QVERIFY(bytesOf(cuts).contains(QByteArray::fromStdString("\"" + casting + "\",\"" + casting + "-")));

        QVERIFY(s.window->files().newPlan());
        QVERIFY(s.plan().parts.empty());
        QVERIFY(s.window->files().open(file));
        QVERIFY(s.plan() == drawn);
        QVERIFY(s.window->close());
    }

    void whatIsPrintedSaysFromWhenOnPiecesMayBeLifted()
    {
        Sitting s(*theme_);
        QVERIFY(s.window->files().newFromSample(samplePlans().first().file));
        const QString pdf = s.folder.filePath("lift.pdf");
        // At once: before hours have been found beside the drawing.
        QVERIFY(s.writesPdf(pdf, {"lift"}));
        QString text;
        for (const PdfPage& page : readPdf(pdf)) text += page.text() + ' ';
        QVERIFY(text.contains("holds with the safety kept"));
        QVERIFY(text.contains("Out of the mould", Qt::CaseInsensitive));
        QVERIFY(s.window->close());
    }

    void whatIsPrintedAndSeenBeforeIsPaintedBesideTheWindow()
    {
        Sitting s(*theme_);
        QVERIFY(s.window->files().newFromSample(samplePlans().first().file));
        const QString pdf = s.folder.filePath("printed.pdf");
        const auto printer = std::make_shared<QPrinter>();
        printer->setOutputFormat(QPrinter::PdfFormat);
        printer->setOutputFileName(pdf);
        QSignalSpy written(&s.window->prints(), &PrintDesk::written);
        s.window->prints().printOn(printer, {"shopping", "lift"});
        QVERIFY(s.window->prints().isBusy());
        QVERIFY(written.wait(60000));
        QVERIFY(written.front().front().toBool());
        const auto pages = readPdf(pdf);
        QVERIFY(pages.size() >= 2);

        QSignalSpy previewed(&s.window->prints(), &PrintDesk::previewed);
        s.window->prints().previewSheets({"shopping", "lift"});
        QVERIFY(previewed.wait(60000));
        QPointer<PagePreview> preview = previewed.front().front().value<PagePreview*>();
        QVERIFY(preview && preview->isVisible());
        QCOMPARE(preview->page(), 0);
        QTRY_VERIFY_WITH_TIMEOUT(preview->isPainted(), 20000);
        auto* title = preview->findChild<QLabel*>("pageTitle");
        QVERIFY(title->text().startsWith(QString("Page 1 of %1").arg(pages.size())));
        // Something is on the page: not all of it is paper.
        const QImage first = preview->grab().toImage();
        QTest::keyClick(preview, Qt::Key_PageDown);
        QCOMPARE(preview->page(), 1);
        QTRY_VERIFY_WITH_TIMEOUT(preview->isPainted(), 20000);
        QVERIFY(preview->grab().toImage() != first);
        QTest::keyClick(preview, Qt::Key_Plus, Qt::ControlModifier);
        QVERIFY(preview->zoom() > 1.0);
        QTRY_VERIFY_WITH_TIMEOUT(preview->isPainted(), 20000);
        const QString kept = qEnvironmentVariable("YARDCAST_PICTURES");
        if (!kept.isEmpty()) preview->grab().save(kept + "/preview.png");
        QTest::keyClick(preview, Qt::Key_Escape);
        QTRY_VERIFY(preview.isNull());
        QVERIFY(s.window->close());
    }

    void sheetsAreMadeBesideTheWindowAndCanBeLetGoOf()
    {
        Sitting s(*theme_);
        QVERIFY(s.window->files().newFromSample(samplePlans().back().file));
        const QString pdf = s.folder.filePath("pack.pdf");
        QSignalSpy written(&s.window->prints(), &PrintDesk::written);
        s.window->prints().writePdf(pdf, sheetNames());
        QVERIFY(s.window->prints().isBusy());
        // The window is not waiting: the plan can be changed, and what was asked for stays what it was.
        s.bench->document.apply("title", [](const Plan& plan) {
            Plan changed = plan;
            changed.title = "Changed while it was printed";
            return changed;
        });
        s.window->prints().cancel();
        QVERIFY(!s.window->prints().isBusy());
        QTest::qWait(300);
        QVERIFY(written.empty());
        QVERIFY(!QFileInfo::exists(pdf));

        s.window->prints().writePdf(pdf, {"mix"});
        s.bench->document.undoStack()->undo();
        QVERIFY(written.wait(60000));
        QCOMPARE(written.size(), 1);
        QVERIFY(!s.window->prints().isBusy());
        QString text;
        for (const PdfPage& page : readPdf(pdf)) text += page.text() + ' ';
        QVERIFY(text.contains("Changed while it was printed"));
        QVERIFY(s.window->close());
    }

    void partsGoFromWindowToWindow()
    {
        Sitting from(*theme_);
        Sitting to(*theme_);
        QVERIFY(from.window->files().newFromSample(samplePlans().first().file));
        auto& commands = from.window->commands();
        QVERIFY(!commands[Command::copy]->isEnabled());
        commands[Command::selectAll]->trigger();
        QVERIFY(commands[Command::copy]->isEnabled());
        const size_t parts = from.plan().parts.size();
        QCOMPARE(size_t(from.bench->selection.parts().size()), parts);
        commands[Command::copy]->trigger();
        to.window->commands()[Command::paste]->trigger();
        QCOMPARE(to.plan().parts.size(), parts);
        QCOMPARE(size_t(to.bench->selection.parts().size()), parts);
        to.window->commands()[Command::paste]->trigger();
        QCOMPARE(to.plan().parts.size(), 2 * parts);
        QCOMPARE(to.bench->document.undoStack()->index(), 2);
        commands[Command::cut]->trigger();
        QVERIFY(from.plan().parts.empty());
        QVERIFY(!commands[Command::cut]->isEnabled());
        for (Sitting* one : {&from, &to}) {
            while (one->bench->document.undoStack()->canUndo()) one->bench->document.undoStack()->undo();
            QVERIFY(one->window->close());
        }
    }

    void aStageNeverChangesThePlan()
    {
        Sitting s(*theme_);
        QVERIFY(s.window->files().newFromSample(samplePlans().at(2).file));
        const PlanPtr before = s.bench->document.plan();
        for (const Stage stage : kStages) {
            s.key(Qt::Key(Qt::Key_1 + int(stage)), Qt::ControlModifier);
            QCOMPARE(s.window->canvas().stage(), stage);
        }
        s.key(Qt::Key_F6);
        QVERIFY(!s.window->canvas().projection().isAbove());
        s.key(Qt::Key_F8);
        QCOMPARE(s.window->canvas().projection().lookDeg(), 180.0);
        s.key(Qt::Key_F5);
        QVERIFY(s.window->canvas().projection().isAbove());
        QVERIFY(s.bench->document.plan() == before);
        QVERIFY(!s.window->isWindowModified());
        QVERIFY(s.window->close());
    }

    void aFieldHasTheKeysAndThePlanHasThemAgainAfterwards()
    {
        Sitting s(*theme_);
        QVERIFY(s.window->files().newFromSample(samplePlans().first().file));
        s.window->commands()[Command::selectAll]->trigger();
        auto* title = s.window->findChild<QToolBar*>("stage-row")->findChild<QLineEdit*>();
        title->setFocus();
        title->selectAll();
        QTest::keyClicks(title, "Sunday cook");
        s.key(Qt::Key_Backspace);
        s.key(Qt::Key_Delete);
        QCOMPARE(title->text(), QString("Sunday coo"));
        QVERIFY(!s.plan().parts.empty());
        s.key(Qt::Key_Return);
        QCOMPARE(QString::fromStdString(s.plan().title), QString("Sunday coo"));
        title->setFocus();
        title->selectAll();
        QTest::keyClicks(title, "x");
        s.key(Qt::Key_Escape);
        QCOMPARE(title->text(), QString("Sunday coo"));
        QVERIFY(s.window->canvas().hasFocus());
        s.key(Qt::Key_Delete);
        QVERIFY(s.plan().parts.empty());
        s.key(Qt::Key_Z, Qt::ControlModifier);
        s.key(Qt::Key_Z, Qt::ControlModifier);
        QVERIFY(!s.bench->document.undoStack()->canUndo());
        QVERIFY(s.window->close());
    }

    void whatIsTypedInAFieldIsInTheFileThatIsSaved()
    {
        Sitting s(*theme_);
        const QString file = copyOfSample(s.folder, "grill-bench");
        QVERIFY(s.window->files().open(file));
        s.bench->selection.setParts({"A1"});
        auto* editor = s.window->findChild<PropertyEditor*>();
        QTRY_VERIFY(editor->findChild<QWidget*>("counter.thickness_mm") != nullptr);
        auto* field = editor->findChild<QWidget*>("counter.thickness_mm");
        auto* edit = field->findChild<QLineEdit*>();
        edit->setFocus();
        edit->selectAll();
        QTest::keyClicks(edit, "55");
        // No Enter: the key for saving comes while the field still holds what was typed.
        s.key(Qt::Key_S, Qt::ControlModifier);
        QVERIFY(!s.bench->session.hasUnsavedChanges());
        const PlanReading reading = readPlan(bytesOf(file).toStdString());
        QVERIFY(reading.plan.has_value());
        QCOMPARE(std::get<Counter>(findPart(*reading.plan, "A1")->body).thicknessMm, 55.0);
        // Each change of a field is one step back.
        s.window->canvas().setFocus();
        s.key(Qt::Key_Z, Qt::ControlModifier);
        QVERIFY(!s.bench->document.undoStack()->canUndo());
        s.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
        QVERIFY(!s.bench->session.hasUnsavedChanges());
        QVERIFY(s.window->close());
    }

    void theFirstStartShowsASampleAndAHintOnce()
    {
        Sitting s(*theme_, true);
        QVERIFY(!s.plan().parts.empty());
        QVERIFY(s.bench->session.isUntitled());
        QVERIFY(!s.window->isWindowModified());
        QVERIFY(s.window->messages().isShown("hint"));
        QVERIFY(QApplication::activeModalWidget() == nullptr);
        for (QPushButton* button : s.window->messages().findChildren<QPushButton*>()) {
            if (button->text() == "Got it") button->click();
        }
        QVERIFY(!s.window->messages().isShown("hint"));
        s.window->commands()[Command::showHint]->trigger();
        QVERIFY(s.window->messages().isShown("hint"));
        QVERIFY(s.window->close());
        Workbench bench(s.settings);
        MainWindow again(bench, *theme_);
        QVERIFY(again.start({}));
        QVERIFY(!again.messages().isShown("hint"));
        QVERIFY(bench.document.plan()->parts.empty());
    }

    void everyDockComesAndGoesByItsCommandAndTheLayoutIsRemembered()
    {
        Sitting s(*theme_);
        auto& commands = s.window->commands();
        const auto docks = s.window->findChildren<QDockWidget*>();
        QCOMPARE(int(docks.size()), int(Command::showParts) - int(Command::showTray) + 1);
        for (int id = int(Command::showTray); id <= int(Command::showParts); ++id) {
            QAction* action = commands[Command(id)];
            QVERIFY2(action->isChecked(), qPrintable(action->text()));
            // The first time may only bring it forward.
            action->trigger();
            if (action->isChecked()) action->trigger();
            QVERIFY2(!action->isChecked(), qPrintable(action->text()));
        }
        for (const QDockWidget* dock : docks) QVERIFY2(dock->isHidden(), qPrintable(dock->windowTitle()));
        QVERIFY(s.window->close());
        {
            Workbench bench(s.settings);
            MainWindow again(bench, *theme_);
            for (const QDockWidget* dock : again.findChildren<QDockWidget*>()) {
                QVERIFY2(dock->isHidden(), qPrintable(dock->windowTitle()));
            }
            again.commands()[Command::resetLayout]->trigger();
            for (const QDockWidget* dock : again.findChildren<QDockWidget*>()) {
                QVERIFY2(!dock->isHidden(), qPrintable(dock->windowTitle()));
            }
        }
    }

    void theGravestFindingStandsInWordsAtTheBottom()
    {
        Sitting s(*theme_);
        s.bench->document.apply("counter in the air", [](const Plan& plan) {
            Part part;
            part.id = "C1";
            Counter counter;
            counter.mix = "worktop";
            counter.outline = {{0, 0}, {2400, 0}, {2400, 900}, {0, 900}};
            part.body = counter;
            return addPart(plan, part);
        });
        const Assessment& all = s.figures();
        QVERIFY(!all.findings.empty());
        QVERIFY2(s.window->measureLine().findingSentence().contains("C1"),
                 qPrintable(s.window->measureLine().findingSentence()));
        s.bench->document.undoStack()->undo();
        s.figures();
        QVERIFY(!s.window->measureLine().findingSentence().contains("C1"));
        QVERIFY(s.window->close());
    }

    void aClickOnTheGravestFindingChoosesWhatItSpeaksOf()
    {
        Sitting s(*theme_);
        QVERIFY(s.window->files().newFromSample(samplePlans().at(1).file));
        const Assessment& all = s.figures();
        const QString part = QString::fromStdString(all.findings.front().subjects.front());
        QVERIFY(s.bench->selection.isEmpty());
        QTest::mouseClick(s.window->measureLine().findChild<QAbstractButton*>(), Qt::LeftButton);
        QCOMPARE(s.bench->selection.parts(), QStringList{part});
        QVERIFY(s.window->close());
    }

    void aFileDroppedOnTheWindowIsOpened()
    {
        Sitting s(*theme_);
        const QString file = copyOfSample(s.folder, "grill-bench");
        QMimeData data;
        data.setUrls({QUrl::fromLocalFile(file)});
        QDragEnterEvent enter(QPoint(600, 300), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        // The sheet, which takes things of the tray, leaves files to the window.
        QCoreApplication::sendEvent(&s.window->canvas(), &enter);
        QVERIFY(enter.isAccepted());
        QDropEvent drop(QPointF(600, 300), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QCoreApplication::sendEvent(&s.window->canvas(), &drop);
        QTRY_COMPARE(s.bench->session.path(), file);
        QMimeData two;
        two.setUrls({QUrl::fromLocalFile(file), QUrl::fromLocalFile(file)});
        QDragEnterEvent other(QPoint(600, 300), Qt::CopyAction, &two, Qt::LeftButton, Qt::NoModifier);
        QCoreApplication::sendEvent(&s.window->canvas(), &other);
        QVERIFY(!other.isAccepted());
        QVERIFY(s.window->close());
    }

    void gridAndSnappingFollowTheirCommands()
    {
        Sitting s(*theme_);
        auto& commands = s.window->commands();
        QVERIFY(commands[Command::grid]->isChecked());
        const QImage with = s.sheet()->grab().toImage();
        s.key(Qt::Key_F9, Qt::ShiftModifier);
        QVERIFY(!s.window->canvas().isGridShown());
        QVERIFY(s.sheet()->grab().toImage() != with);
        s.key(Qt::Key_F9, Qt::ShiftModifier);
        QVERIFY(s.sheet()->grab().toImage() == with);
        s.key(Qt::Key_F9);
        QVERIFY(!s.window->canvas().isSnappingOn());
        s.key(Qt::Key_F9);
        QVERIFY(s.window->canvas().isSnappingOn());
        QVERIFY(s.window->close());
    }

    void theWindowFitsASmallScreen()
    {
        Sitting s(*theme_);
        QVERIFY(s.window->minimumSizeHint().width() <= 1366);
        QVERIFY2(s.window->minimumSizeHint().height() <= 740,
                 qPrintable(QString::number(s.window->minimumSizeHint().height())));
        s.window->resize(1366, 740);
        QCoreApplication::processEvents();
        QCOMPARE(s.window->size(), QSize(1366, 740));
        QVERIFY(s.window->canvas().width() >= 700);
        QVERIFY(s.window->close());
    }
};

QTEST_MAIN(MainJobTest)
#include "main_job_test.moc"
