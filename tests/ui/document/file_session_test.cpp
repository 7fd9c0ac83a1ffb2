#include "tests/ui/document/session_fixture.h"

#include <QLockFile>
#include <QSettings>
#include <QSignalSpy>
#include <QUndoStack>

#include "core/io/plan_file.h"
#include "ui/document/backups.h"
#include "ui/document/recent_files.h"

using namespace yardcast;
using namespace yardcast::ui;
using namespace yardcast::ui::test;

class FileSessionTest : public QObject {
    Q_OBJECT

private slots:
    void initTestCase() { QStandardPaths::setTestModeEnabled(true); }

    void savingWithoutAChangeKeepsEveryByte_data()
    {
        QTest::addColumn<QString>("name");
        for (const char* name : {"grill-bench", "corner-kitchen", "two-level-bar"}) QTest::newRow(name) << name;
    }
    void savingWithoutAChangeKeepsEveryByte()
    {
        QFETCH(QString, name);
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, name);
        PlanDocument document;
        FileSession session(document);
        QVERIFY(session.open(file).opened);
        QVERIFY(!session.hasUnsavedChanges());
        QCOMPARE(session.name(), QString("kitchen"));
        QVERIFY(session.saveAs(folder.filePath("again")).isSaved());
        QCOMPARE(session.path(), folder.filePath("again.yardplan"));
        PlanDocument other;
        FileSession reopened(other);
        QVERIFY(reopened.open(folder.filePath("again.yardplan")).opened);
        QVERIFY(*other.plan() == *document.plan());
        QVERIFY(reopened.saveAs(folder.filePath("third")).isSaved());
        QCOMPARE(bytesOf(folder.filePath("third.yardplan")), bytesOf(folder.filePath("again.yardplan")));
    }

    void savesAndReopensWhatWasChanged()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        PlanDocument document;
        FileSession session(document);
        QVERIFY(session.open(file).opened);
        const double before = firstX(*document.plan());
        nudgeFirst(document);
        QVERIFY(session.hasUnsavedChanges());
        QSignalSpy saved(&session, &FileSession::saved);
        QVERIFY(session.save().isSaved());
        QCOMPARE(saved.count(), 1);
        QVERIFY(!session.hasUnsavedChanges());
        PlanDocument again;
        FileSession second(again);
        QVERIFY(second.open(file).opened);
        QCOMPARE(firstX(*again.plan()), before + 1.0);
        QVERIFY(*again.plan() == *document.plan());
    }

    void goingBackToTheSavedStateIsNoChange()
    {
        QTemporaryDir folder;
        PlanDocument document;
        FileSession session(document);
        QSignalSpy modified(&session, &FileSession::modifiedChanged);
        QVERIFY(session.open(copyOfSample(folder, "grill-bench")).opened);
        nudgeFirst(document);
        QVERIFY(session.save().isSaved());
        document.undoStack()->undo();
        QVERIFY(session.hasUnsavedChanges());
        document.undoStack()->redo();
        QVERIFY(!session.hasUnsavedChanges());
        QCOMPARE(modified.count(), 4);
    }

    void unknownKeysSurvive()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        QByteArray text = bytesOf(file);
        const qsizetype brace = text.indexOf('{');
        text.insert(brace + 1, "\n  \"pet\": {\"cat\": [1, 2, 3]},");
        writeBytes(file, text);
        PlanDocument document;
        FileSession session(document);
        QVERIFY(session.open(file).opened);
        nudgeFirst(document);
        QVERIFY(session.save().isSaved());
        QVERIFY(bytesOf(file).contains("\"pet\""));
        QVERIFY(bytesOf(file).contains("\"cat\""));
    }

    void aBrokenFileLeavesThePlanAlone_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<int>("leastProblems");
        QTest::newRow("no JSON") << QByteArray("not a plan") << 1;
        QTest::newRow("half a file") << bytesOf(sample("grill-bench")).left(700) << 1;
        QTest::newRow("newer version") << QByteArray(R"({"yardplan": 99, "parts": []})") << 1;
        QTest::newRow("three problems") << QByteArray(R"({"yardplan": 1, "title": 7, "crew": {"people": "two"},
            "parts": [{"id": "S1", "kind": "pillar", "at": [0, 0], "turn_deg": 0}]})") << 3;
    }
    void aBrokenFileLeavesThePlanAlone()
    {
        QFETCH(QByteArray, text);
        QFETCH(int, leastProblems);
        QTemporaryDir folder;
        PlanDocument document;
        FileSession session(document);
        const QString good = copyOfSample(folder, "grill-bench");
        QVERIFY(session.open(good).opened);
        nudgeFirst(document);
        const PlanPtr before = document.plan();
        const QString bad = folder.filePath("bad.yardplan");
        writeBytes(bad, text);
        QSignalSpy leaving(&session, &FileSession::leaving);
        const OpenOutcome outcome = session.open(bad);
        QVERIFY(!outcome.opened);
        QVERIFY2(int(outcome.problems.size()) >= leastProblems, qPrintable(QString::number(outcome.problems.size())));
        QCOMPARE(leaving.count(), 0);
        QVERIFY(document.plan() == before);
        QCOMPARE(session.path(), good);
        QVERIFY(session.hasUnsavedChanges());
        QCOMPARE(bytesOf(bad), text);
    }

    void aMissingFileSaysWhy()
    {
        QTemporaryDir folder;
        PlanDocument document;
        FileSession session(document);
        const OpenOutcome outcome = session.open(folder.filePath("nowhere.yardplan"));
        QVERIFY(!outcome.opened);
        QVERIFY(!outcome.reason.isEmpty());
        QVERIFY(session.isUntitled());
    }

    void aFailedSaveLeavesTheOldFileWholeAndTheChangesUnsaved()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        PlanDocument document;
        FileSession session(document);
        QVERIFY(session.open(file).opened);
        nudgeFirst(document);
        // A folder in the way of the new file fails for the superuser too, as permissions would not.
        QVERIFY(QDir(folder.path()).mkdir("folder.yardplan"));
        const SaveOutcome outcome = session.saveAs(folder.filePath("folder.yardplan"));
        QCOMPARE(outcome.result, SaveResult::failed);
        QVERIFY(!outcome.reason.isEmpty());
        QVERIFY(session.hasUnsavedChanges());
        QCOMPARE(session.path(), file);
        QCOMPARE(bytesOf(file), bytesOf(sample("grill-bench")));
        QCOMPARE(session.saveAs(folder.filePath("no/such/folder.yardplan")).result, SaveResult::failed);
    }

    void untitledCannotBeSavedWithoutAName()
    {
        PlanDocument document;
        FileSession session(document);
        QCOMPARE(session.save().result, SaveResult::failed);
    }

    void whatOthersWroteIsNotOverwrittenUnasked()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        PlanDocument document;
        FileSession session(document);
        QVERIFY(session.open(file).opened);
        nudgeFirst(document);
        QSignalSpy changed(&session, &FileSession::changedOnDiskChanged);
        const QByteArray theirs = bytesOf(sample("corner-kitchen"));
        writeBytes(file, theirs);
        QCOMPARE(session.save().result, SaveResult::changedOnDisk);
        QVERIFY(session.changedOnDisk());
        QCOMPARE(changed.count(), 1);
        QCOMPARE(bytesOf(file), theirs);
        QVERIFY(session.hasUnsavedChanges());
        QVERIFY(session.save(true).isSaved());
        QVERIFY(!session.changedOnDisk());
        QVERIFY(bytesOf(file) != theirs);
        QVERIFY(session.save().isSaved());
    }

    void theWatcherSeesReplacedFiles()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        PlanDocument document;
        FileSession session(document);
        QVERIFY(session.open(file).opened);
        // The second time proves that the watch outlives a replaced file.
        for (const char* name : {"corner-kitchen", "two-level-bar"}) {
            writeBytes(folder.filePath("new"), bytesOf(sample(name)));
            QVERIFY(QFile::remove(file));
            QVERIFY(QFile::rename(folder.filePath("new"), file));
            QTRY_VERIFY_WITH_TIMEOUT(session.changedOnDisk(), 5000);
            QVERIFY(session.readAgain("read again").opened);
            QVERIFY(!session.changedOnDisk());
        }
    }

    void aTouchedFileIsNoChange()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        PlanDocument document;
        FileSession session(document);
        QVERIFY(session.open(file).opened);
        QTest::qWait(20);
        writeBytes(file, bytesOf(file));
        session.lookAtDisk();
        QVERIFY(!session.changedOnDisk());
    }

    void readingAgainIsOneStepBack()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        PlanDocument document;
        FileSession session(document);
        QVERIFY(session.open(file).opened);
        nudgeFirst(document);
        const Plan mine = *document.plan();
        writeBytes(file, bytesOf(sample("corner-kitchen")));
        QVERIFY(session.readAgain("read again").opened);
        QVERIFY(!session.hasUnsavedChanges());
        QVERIFY(!(*document.plan() == mine));
        document.undoStack()->undo();
        QVERIFY(*document.plan() == mine);
        QVERIFY(session.hasUnsavedChanges());
    }

    void aDeletedFileIsWrittenAnew()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        PlanDocument document;
        FileSession session(document);
        QVERIFY(session.open(file).opened);
        QVERIFY(QFile::remove(file));
        QVERIFY(session.save().isSaved());
        QVERIFY(QFile::exists(file));
    }

    void twoWindowsOfOneFileKnowOfEachOther()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench");
        PlanDocument documentA;
        FileSession a(documentA);
        QVERIFY(a.open(file).opened);
        QVERIFY(!a.otherWindow());
        QVERIFY(a.ownsLock());
        PlanDocument documentB;
        FileSession b(documentB);
        QVERIFY(b.open(file).opened);
        QVERIFY(b.otherWindow().has_value());
        QCOMPARE(b.otherWindow()->process, QCoreApplication::applicationPid());
        QVERIFY(!b.ownsLock());
        a.close();
        QVERIFY(b.open(file).opened);
        QVERIFY(!b.otherWindow());
        b.close();
        QVERIFY(!QFile::exists(lockOfPlan(file)));
    }

    void lettersOutsideAsciiInTheName()
    {
        QTemporaryDir folder;
        const QString file = copyOfSample(folder, "grill-bench",
                                          QString::fromUtf8("K\u00fcche \u2014 \u6c34.yardplan"));
        PlanDocument document;
        FileSession session(document);
        QVERIFY(session.open(file).opened);
        nudgeFirst(document);
        QVERIFY(session.save().isSaved());
        QVERIFY(bytesOf(file) != bytesOf(sample("grill-bench")));
    }

    void recentFilesAreNewestFirstWithoutTwins()
    {
        QTemporaryDir folder;
        QSettings settings(folder.filePath("settings.ini"), QSettings::IniFormat);
        RecentFiles recent(settings);
        QStringList made;
        for (int i = 0; i < RecentFiles::kMost + 3; ++i) {
            const QString file = folder.filePath(QString("plan%1.yardplan").arg(i));
            writeBytes(file, "{}");
            recent.add(file);
            made.prepend(file);
        }
        QCOMPARE(recent.files(), made.mid(0, RecentFiles::kMost));
        recent.add(made[4]);
        QCOMPARE(recent.files().first(), made[4]);
        QCOMPARE(recent.files().count(made[4]), 1);
        QVERIFY(QFile::remove(made[4]));
        QVERIFY(!recent.files().contains(made[4]));
        RecentFiles again(settings);
        QCOMPARE(again.files(), recent.files());
        recent.clear();
        QVERIFY(recent.files().isEmpty());
    }
};

QTEST_GUILESS_MAIN(FileSessionTest)
#include "file_session_test.moc"
