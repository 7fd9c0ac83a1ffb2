#include "tests/ui/document/session_fixture.h"

#include <QElapsedTimer>
#include <QProcess>
#include <QSignalSpy>
#include <QUndoStack>

#include "core/io/plan_file.h"
#include "ui/document/autosave.h"
#include "ui/document/backups.h"

using namespace yardcast;
using namespace yardcast::ui;
using namespace yardcast::ui::test;

namespace {

double firstXOfBackup(const QString& file)
{
    const FileText text = readFile(corePath(file));
    const PlanReading reading = text.text ? readPlan(*text.text) : PlanReading{};
    return reading.plan ? firstX(*reading.plan) : std::nan("");
}

/// A window without a window.
struct Desk {
    PlanDocument document;
    FileSession session{document};
    Autosave autosave{document, session};
};

}  // namespace

class AutosaveTest : public QObject {
    Q_OBJECT

private slots:
    void initTestCase()
    {
        QStandardPaths::setTestModeEnabled(true);
        QCoreApplication::setApplicationName("yardcast-autosave-test");
    }
    void init() { QDir(backupFolder()).removeRecursively(); }
    void cleanupTestCase() { QDir(backupFolder()).removeRecursively(); }

    void aChangeIsBackedUpBesideTheFileWithinThreeSeconds()
    {
        QTemporaryDir folder;
        Desk desk;
        const QString file = copyOfSample(folder, "grill-bench");
        QVERIFY(desk.session.open(file).opened);
        QSignalSpy written(&desk.autosave, &Autosave::written);
        QElapsedTimer since;
        since.start();
        nudgeFirst(desk.document);
        QVERIFY(written.wait(3000));
        QVERIFY(since.elapsed() <= 3000);
        QCOMPARE(desk.autosave.backup(), folder.filePath(".kitchen.yardplan.autosave"));
        QCOMPARE(firstXOfBackup(desk.autosave.backup()), firstX(*desk.document.plan()));
        QCOMPARE(bytesOf(file), bytesOf(sample("grill-bench")));
    }

    void aBusyHandDoesNotPutTheBackupOff()
    {
        QTemporaryDir folder;
        Desk desk;
        QVERIFY(desk.session.open(copyOfSample(folder, "grill-bench")).opened);
        QSignalSpy written(&desk.autosave, &Autosave::written);
        QElapsedTimer since;
        since.start();
        while (written.isEmpty() && since.elapsed() < 6000) {
            nudgeFirst(desk.document);
            QTest::qWait(50);
        }
        QVERIFY2(since.elapsed() <= 3000, qPrintable(QString::number(since.elapsed())));
    }

    void openingAloneWritesNothing()
    {
        QTemporaryDir folder;
        Desk desk;
        QVERIFY(desk.session.open(copyOfSample(folder, "grill-bench")).opened);
        desk.autosave.flush();
        QVERIFY(desk.autosave.backup().isEmpty());
        QVERIFY(QDir(folder.path()).entryList({".*.autosave*"}, QDir::Files | QDir::Hidden).isEmpty());
    }

    void savingRemovesTheBackup()
    {
        QTemporaryDir folder;
        Desk desk;
        QVERIFY(desk.session.open(copyOfSample(folder, "grill-bench")).opened);
        nudgeFirst(desk.document);
        desk.autosave.flush();
        const QString backup = desk.autosave.backup();
        QVERIFY(QFile::exists(backup));
        nudgeFirst(desk.document);
        QVERIFY(desk.session.save().isSaved());
        QVERIFY(!QFile::exists(backup));
        QTest::qWait(Autosave::kDelayMs + 300);
        QVERIFY(!QFile::exists(backup));
    }

    void aFailedSaveKeepsTheBackup()
    {
        QTemporaryDir folder;
        Desk desk;
        QVERIFY(desk.session.open(copyOfSample(folder, "grill-bench")).opened);
        nudgeFirst(desk.document);
        desk.autosave.flush();
        QVERIFY(QDir(folder.path()).mkdir("folder.yardplan"));
        QCOMPARE(desk.session.saveAs(folder.filePath("folder.yardplan")).result, SaveResult::failed);
        QVERIFY(QFile::exists(desk.autosave.backup()));
    }

    void goingBackToTheSavedStateNeedsNoBackup()
    {
        QTemporaryDir folder;
        Desk desk;
        QVERIFY(desk.session.open(copyOfSample(folder, "grill-bench")).opened);
        nudgeFirst(desk.document);
        desk.autosave.flush();
        const QString backup = desk.autosave.backup();
        desk.document.undoStack()->undo();
        desk.autosave.flush();
        QVERIFY(!QFile::exists(backup));
    }

    void aBackupOfAnEarlierCrashIsNeverWrittenOver()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        const QByteArray old = bytesOf(sample("corner-kitchen"));
        writeBytes(siblingBackup(file), old);
        Desk desk;
        QVERIFY(desk.session.open(file).opened);
        nudgeFirst(desk.document);
        desk.autosave.flush();
        QCOMPARE(desk.autosave.backup(), siblingBackup(file, 2));
        QCOMPARE(bytesOf(siblingBackup(file)), old);
        QVERIFY(desk.session.save().isSaved());
        QCOMPARE(bytesOf(siblingBackup(file)), old);
        QVERIFY(!QFile::exists(siblingBackup(file, 2)));
    }

    void aRestoredBackupGoesWithTheSave()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        QTest::qWait(20);
        writeBytes(siblingBackup(file), bytesOf(sample("corner-kitchen")));
        Desk desk;
        QVERIFY(desk.session.open(file).opened);
        const QList<Backup> found = backupsOf(file, desk.session.ownsLock());
        QCOMPARE(found.size(), 1);
        QCOMPARE(found.first().of, file);
        const PlanReading reading = readPlan(*readFile(corePath(found.first().file)).text);
        QVERIFY(reading.plan.has_value());
        desk.document.apply("restore", [&](const Plan&) { return *reading.plan; });
        desk.autosave.adopt(found.first());
        QVERIFY(QFile::exists(found.first().file));
        QVERIFY(desk.session.save().isSaved());
        QVERIFY(!QFile::exists(found.first().file));
    }

    void whatIsOfferedIsNewerAndOther()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        QVERIFY(backupsOf(file, true).isEmpty());
        QTest::qWait(20);
        writeBytes(siblingBackup(file), bytesOf(file));
        QVERIFY(backupsOf(file, true).isEmpty());
        writeBytes(siblingBackup(file), bytesOf(sample("corner-kitchen")));
        QCOMPARE(backupsOf(file, true).size(), 1);
        QVERIFY(backupsOf(file, false).isEmpty());
        QTest::qWait(20);
        writeBytes(file, bytesOf(sample("two-level-bar")));
        QVERIFY(backupsOf(file, true).isEmpty());
        QVERIFY(QFile::exists(siblingBackup(file)));
    }

    void aPlanWithoutAFileIsBackedUpInTheFolderOfTheProgram()
    {
        Desk desk;
        QVERIFY(desk.session.isUntitled());
        desk.document.apply("title", [](const Plan& plan) {
            return changePlan(plan, [](Plan& p) { p.title = "first try"; });
        });
        desk.autosave.flush();
        QVERIFY(desk.autosave.backup().startsWith(backupFolder()));
        QVERIFY(QFile::exists(desk.autosave.backup()));
        // While this window lives the backup is no other window's business.
        QVERIFY(untitledBackups().isEmpty());
        QTemporaryDir folder;
        const QString backup = desk.autosave.backup();
        QVERIFY(desk.session.saveAs(folder.filePath("named")).isSaved());
        QVERIFY(!QFile::exists(backup));
    }

    void aFolderThatCannotBeWrittenFallsBackToTheFolderOfTheProgram()
    {
        QTemporaryDir folder;
        QVERIFY(QDir(folder.path()).mkdir("gone"));
        const QString file = folder.filePath("gone/kitchen.yardplan");
        QVERIFY(QFile::copy(sample("grill-bench"), file));
        Desk desk;
        QVERIFY(desk.session.open(file).opened);
        // Taken away rather than write-protected: protection does not hold for the superuser.
        QVERIFY(QDir(folder.filePath("gone")).removeRecursively());
        nudgeFirst(desk.document);
        QSignalSpy failed(&desk.autosave, &Autosave::failed);
        desk.autosave.flush();
        QCOMPARE(failed.count(), 0);
        QVERIFY(desk.autosave.backup().startsWith(backupFolder()));
        QCOMPARE(firstXOfBackup(desk.autosave.backup()), firstX(*desk.document.plan()));
    }

    void deathOfTheProcessLosesAtMostFiveSeconds_data()
    {
        QTest::addColumn<bool>("untitled");
        QTest::newRow("named") << false;
        QTest::newRow("untitled") << true;
    }
    void deathOfTheProcessLosesAtMostFiveSeconds()
    {
        QFETCH(bool, untitled);
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        QProcess child;
        child.start(AUTOSAVE_CHILD, {untitled ? sample("grill-bench") : file, untitled ? "untitled" : "named"});
        QVERIFY2(child.waitForStarted(), qPrintable(child.errorString()));
        // The child tells each change; the time it is heard here is not before the change was made.
        QElapsedTimer clock;
        clock.start();
        QList<qint64> heardAtMs;
        while (clock.elapsed() < 9000) {
            child.waitForReadyRead(100);
            while (child.canReadLine()) {
                child.readLine();
                heardAtMs.append(clock.elapsed());
            }
        }
        QVERIFY(child.state() == QProcess::Running);
        const qint64 killedAtMs = clock.elapsed();
        child.kill();
        child.waitForFinished();
        QCOMPARE(child.exitStatus(), QProcess::CrashExit);
        const int mustBeThere =
            int(std::ranges::count_if(heardAtMs, [&](qint64 heard) { return killedAtMs - heard >= 5000; }));
        QVERIFY2(mustBeThere >= 10, qPrintable(QString::number(mustBeThere)));

        Desk desk;
        QList<Backup> found;
        double start = 0.0;
        if (untitled) {
            found = untitledBackups();
            QVERIFY(desk.session.open(file).opened);
        } else {
            QVERIFY(desk.session.open(file).opened);
            QVERIFY2(desk.session.ownsLock(), "the lock of a dead process must not hold");
            found = backupsOf(file, desk.session.ownsLock());
            QCOMPARE(bytesOf(file), bytesOf(sample("grill-bench")));
        }
        start = firstX(*desk.document.plan());
        QCOMPARE(found.size(), 1);
        const double recovered = firstXOfBackup(found.first().file) - start;
        QVERIFY2(recovered >= mustBeThere,
                 qPrintable(QString("%1 of at least %2").arg(recovered).arg(mustBeThere)));
        qInfo("changes made %lld, older than 5 s %d, recovered %.0f", heardAtMs.size(), mustBeThere, recovered);
        desk.session.close();
    }
};

QTEST_GUILESS_MAIN(AutosaveTest)
#include "autosave_test.moc"
