#include "tests/ui/document/session_fixture.h"

#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QSettings>
#include <QTimer>
#include <QUndoStack>
#include <QWidget>

#include "core/io/plan_file.h"
#include "ui/window/file_desk.h"
#include "ui/window/message_bar.h"
#include "ui/window/workbench.h"

using namespace yardcast;
using namespace yardcast::ui;
using namespace yardcast::ui::test;

namespace {

struct Desk {
    QTemporaryDir folder;
    QSettings settings{folder.filePath("settings.ini"), QSettings::IniFormat};
    Workbench bench{settings};
    QWidget window;
    MessageBar messages{&window};
    FileDesk files{window, bench.document, bench.session, bench.autosave, bench.recent, messages};

    QString text(const QString& id) const
    {
        QStringList words;
        const auto* strip = messages.findChild<QWidget*>(id);
        if (!strip) return {};
        for (const QLabel* label : strip->findChildren<QLabel*>()) words.append(label->text());
        return words.join("\n");
    }
    void answer(const QString& id, const QString& start)
    {
        const auto* strip = messages.findChild<QWidget*>(id);
        QVERIFY2(strip, qPrintable("no message " + id));
        for (QPushButton* button : strip->findChildren<QPushButton*>()) {
            if (button->text().startsWith(start)) return button->click();
        }
        QFAIL(qPrintable("no answer " + start));
    }
};

/// Answers the one modal question that comes next. Tells through `asked` whether it came.
void answerNextBox(QMessageBox::StandardButton button, bool& asked)
{
    auto* timer = new QTimer(qApp);
    QObject::connect(timer, &QTimer::timeout, qApp, [timer, button, &asked] {
        auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
        if (!box) return;
        asked = true;
        timer->deleteLater();
        box->button(button)->click();
    });
    timer->start(10);
}

}  // namespace

class FileDeskTest : public QObject {
    Q_OBJECT

private slots:
    void initTestCase()
    {
        QStandardPaths::setTestModeEnabled(true);
        QCoreApplication::setApplicationName("yardcast-file-desk-test");
    }
    void init() { QDir(backupFolder()).removeRecursively(); }
    void cleanupTestCase() { QDir(backupFolder()).removeRecursively(); }

    void aLoggersTableIsOneEdit()
    {
        Desk desk;
        QVERIFY(desk.files.open(copyOfSample(desk.folder, "grill-bench")));
        const auto write = [&](const char* name, const char* text) {
            const QString path = desk.folder.filePath(name);
            QFile file(path);
            if (!file.open(QIODevice::WriteOnly)) qFatal("cannot write");
            file.write(text);
            return path;
        };
        const std::vector<MeasuredTemperature> before = desk.bench.document.plan()->conditions.measured;
        QVERIFY(desk.files.readTemperatures(write("log.csv", "h;c\r\n0;21,5\r\n12;17\r\n")));
        const Conditions& day = desk.bench.document.plan()->conditions;
        QCOMPARE(day.measured.size(), std::size_t(2));
        QCOMPARE(day.measured[0].c, 21.5);
        QCOMPARE(desk.bench.document.undoStack()->count(), 1);
        QVERIFY(desk.text("temperatures").contains("2 readings"));
        desk.bench.document.undoStack()->undo();
        QVERIFY(desk.bench.document.plan()->conditions.measured == before);

        QVERIFY(!desk.files.readTemperatures(write("bad.csv", "0,12\n1,warm\n")));
        QVERIFY(desk.bench.document.plan()->conditions.measured == before);
        QVERIFY(desk.text("temperatures").contains("Line 2"));
        QVERIFY(!desk.files.readTemperatures(desk.folder.filePath("none.csv")));
    }

    void nothingIsAskedWhenNothingIsUnsaved()
    {
        Desk desk;
        QVERIFY(desk.files.open(copyOfSample(desk.folder, "grill-bench")));
        nudgeFirst(desk.bench.document);
        desk.bench.document.undoStack()->undo();
        QVERIFY(desk.files.newPlan());
        QVERIFY(desk.bench.session.isUntitled());
        QVERIFY(desk.bench.document.plan()->parts.empty());
    }

    void unsavedWorkIsAskedAbout_data()
    {
        QTest::addColumn<int>("button");
        QTest::addColumn<bool>("left");
        QTest::addColumn<bool>("written");
        QTest::newRow("save") << int(QMessageBox::Save) << true << true;
        QTest::newRow("give up") << int(QMessageBox::Discard) << true << false;
        QTest::newRow("stay") << int(QMessageBox::Cancel) << false << false;
    }
    void unsavedWorkIsAskedAbout()
    {
        QFETCH(int, button);
        QFETCH(bool, left);
        QFETCH(bool, written);
        Desk desk;
        const QString file = copyOfSample(desk.folder, "grill-bench");
        QVERIFY(desk.files.open(file));
        const QByteArray before = bytesOf(file);
        nudgeFirst(desk.bench.document);
        const PlanPtr mine = desk.bench.document.plan();
        bool asked = false;
        answerNextBox(QMessageBox::StandardButton(button), asked);
        QCOMPARE(desk.files.open(copyOfSample(desk.folder, "corner-kitchen", "other.yardplan")), left);
        QVERIFY(asked);
        QCOMPARE(bytesOf(file) != before, written);
        QCOMPARE(desk.bench.document.plan() == mine, !left);
        QCOMPARE(desk.bench.session.path() == file, !left);
        desk.bench.session.close();
    }

    void everyProblemOfABrokenFileStandsInOneMessage()
    {
        Desk desk;
        const QString good = copyOfSample(desk.folder, "grill-bench");
        QVERIFY(desk.files.open(good));
        const PlanPtr before = desk.bench.document.plan();
        const QString bad = desk.folder.filePath("bad.yardplan");
        writeBytes(bad, R"({"yardplan": 1, "title": 7, "crew": {"people": "two"},
                            "parts": [{"id": "S1", "kind": "pillar", "at": [0, 0]}]})");
        QVERIFY(!desk.files.open(bad));
        QVERIFY(desk.bench.document.plan() == before);
        QCOMPARE(desk.bench.session.path(), good);
        const QString text = desk.text("problems");
        for (const char* pointer : {"/title", "/crew/people", "/parts/0/kind"}) {
            QVERIFY2(text.contains(pointer), qPrintable(text));
        }
        QVERIFY(text.contains("bad.yardplan"));
        QVERIFY(desk.files.open(good));
        QVERIFY(!desk.messages.isShown("problems"));
    }

    void aCrashedWindowsWorkIsOfferedAndRestoredAsOneStep()
    {
        Desk desk;
        const QString file = copyOfSample(desk.folder, "grill-bench");
        QTest::qWait(20);
        const QString backup = siblingBackup(file);
        writeBytes(backup, bytesOf(sample("corner-kitchen")));
        QVERIFY(desk.files.open(file));
        QVERIFY(desk.messages.isShown("backup"));
        const size_t parts = desk.bench.document.plan()->parts.size();
        desk.answer("backup", "Restore the work of " + QTime::currentTime().toString("HH:"));
        QVERIFY(desk.bench.document.plan()->parts.size() != parts);
        QVERIFY(desk.bench.session.hasUnsavedChanges());
        QVERIFY(QFile::exists(backup));
        desk.bench.document.undoStack()->undo();
        QCOMPARE(desk.bench.document.plan()->parts.size(), parts);
        desk.bench.document.undoStack()->redo();
        QVERIFY(desk.files.save());
        QVERIFY(!QFile::exists(backup));
        desk.bench.session.close();
    }

    void aBackupThatIsLeftStays()
    {
        Desk desk;
        const QString file = copyOfSample(desk.folder, "grill-bench");
        QTest::qWait(20);
        writeBytes(siblingBackup(file), bytesOf(sample("corner-kitchen")));
        QVERIFY(desk.files.open(file));
        desk.answer("backup", "Leave it");
        nudgeFirst(desk.bench.document);
        desk.bench.autosave.flush();
        QVERIFY(desk.files.save());
        QCOMPARE(bytesOf(siblingBackup(file)), bytesOf(sample("corner-kitchen")));
        desk.bench.session.close();
    }

    void aBackupIsDeletedWhenThePersonSaysSo()
    {
        Desk desk;
        const QString file = copyOfSample(desk.folder, "grill-bench");
        QTest::qWait(20);
        writeBytes(siblingBackup(file), bytesOf(sample("corner-kitchen")));
        QVERIFY(desk.files.open(file));
        desk.answer("backup", "Delete it");
        QVERIFY(!QFile::exists(siblingBackup(file)));
        desk.bench.session.close();
    }

    void workThatWasNeverSavedIsOfferedAtTheStart()
    {
        QVERIFY(QDir().mkpath(backupFolder()));
        // The name of a process that no longer lives.
        writeBytes(untitledBackup(QDateTime::currentDateTime(), "1-gone"), bytesOf(sample("corner-kitchen")));
        Desk desk;
        desk.files.offerUntitledBackups();
        desk.answer("backup", "Restore");
        QVERIFY(!desk.bench.document.plan()->parts.empty());
        QVERIFY(desk.bench.session.isUntitled());
        QVERIFY(desk.bench.session.hasUnsavedChanges());
        QVERIFY(desk.files.saveAs(desk.folder.filePath("rescued.yardplan")));
        QVERIFY(untitledBackups().isEmpty());
        desk.bench.session.close();
    }

    void aFileChangedByOthersIsNotOverwrittenUnasked()
    {
        Desk desk;
        const QString file = copyOfSample(desk.folder, "grill-bench");
        QVERIFY(desk.files.open(file));
        nudgeFirst(desk.bench.document);
        writeBytes(file, bytesOf(sample("corner-kitchen")));
        QVERIFY(!desk.files.save());
        QCOMPARE(bytesOf(file), bytesOf(sample("corner-kitchen")));
        desk.answer("disk", "Overwrite it");
        QVERIFY(bytesOf(file) != bytesOf(sample("corner-kitchen")));
        QVERIFY(!desk.bench.session.hasUnsavedChanges());
        QVERIFY(!desk.messages.isShown("disk"));

        writeBytes(file, bytesOf(sample("corner-kitchen")));
        desk.bench.session.lookAtDisk();
        desk.answer("disk", "Read it again");
        const PlanReading theirs = readPlan(bytesOf(file).toStdString());
        QVERIFY(*desk.bench.document.plan() == *theirs.plan);
        desk.bench.session.close();
    }

    void twoWindowsOfOneFileAreTold()
    {
        Desk first;
        Desk second;
        const QString file = copyOfSample(first.folder, "grill-bench");
        QVERIFY(first.files.open(file));
        QVERIFY(!first.messages.isShown("other-window"));
        QVERIFY(second.files.open(file));
        QVERIFY(second.messages.isShown("other-window"));
        first.bench.session.close();
        second.bench.session.close();
    }

    void everySampleOpensAsACopyWithoutAFile()
    {
        Desk desk;
        QVERIFY(samplePlans().size() >= 3);
        for (const SamplePlan& one : samplePlans()) {
            QVERIFY2(desk.files.newFromSample(one.file), qPrintable(one.file));
            QVERIFY(desk.bench.session.isUntitled());
            QVERIFY(!desk.bench.session.hasUnsavedChanges());
            QVERIFY(!desk.bench.document.plan()->parts.empty());
            QVERIFY(desk.messages.shown().isEmpty());
        }
    }

    void aFailedSaveSaysWhyAndKeepsTheWork()
    {
        Desk desk;
        QVERIFY(desk.files.newFromSample(samplePlans().first().file));
        nudgeFirst(desk.bench.document);
        QVERIFY(!desk.files.saveAs(desk.folder.filePath("no/such/place.yardplan")));
        QVERIFY(desk.messages.isShown("saving"));
        QVERIFY(desk.bench.session.hasUnsavedChanges());
        QVERIFY(desk.files.saveAs(desk.folder.filePath("place.yardplan")));
        QVERIFY(!desk.messages.isShown("saving"));
        QCOMPARE(desk.bench.recent.files(), QStringList{desk.folder.filePath("place.yardplan")});
        desk.bench.session.close();
    }
};

QTEST_MAIN(FileDeskTest)
#include "file_desk_test.moc"
