#include <QSignalSpy>
#include <QTest>
#include <QUndoStack>

#include "core/plan/edits.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

Part counterPart(const std::string& id)
{
    Counter counter;
    counter.outline = {{0, 0}, {1000, 0}, {1000, 600}, {0, 600}};
    Cutout cutout;
    cutout.id = "K1";
    cutout.centre = {500, 300};
    cutout.size = {300, 200};
    counter.cutouts.push_back(cutout);
    Part part;
    part.id = id;
    part.body = counter;
    return part;
}

Plan twoCounters()
{
    return addPart(addPart(Plan{}, counterPart("C1")), counterPart("C2"));
}

Edit moved(double x)
{
    return [x](const Plan& plan) { return moveParts(plan, {"C1"}, {x, 0}); };
}

double placeOf(const PlanDocument& document) { return findPart(*document.plan(), "C1")->place.at.x; }

}  // namespace

class PlanDocumentTest : public QObject {
    Q_OBJECT

private slots:
    void anEditIsOneEntryWithItsName()
    {
        PlanDocument document;
        document.reset(twoCounters());
        QVERIFY(document.undoStack()->isClean());
        document.apply("Move counter", moved(100));
        QCOMPARE(document.undoStack()->count(), 1);
        QCOMPARE(document.undoStack()->undoText(), QString("Move counter"));
        QCOMPARE(placeOf(document), 100.0);
        document.undoStack()->undo();
        QCOMPARE(placeOf(document), 0.0);
        QVERIFY(document.undoStack()->isClean());
        document.undoStack()->redo();
        QCOMPARE(placeOf(document), 100.0);
    }

    void anEditThatChangesNothingLeavesNoEntry()
    {
        PlanDocument document;
        document.reset(twoCounters());
        document.apply("Nothing", moved(0));
        document.apply("Nobody", [](const Plan& plan) { return moveParts(plan, {"C9"}, {5, 5}); });
        QCOMPARE(document.undoStack()->count(), 0);
    }

    /// However many steps a drag has, it starts from the committed plan and is one entry.
    void aDragDoesNotAddUp()
    {
        PlanDocument document;
        document.reset(twoCounters());
        for (int step = 1; step <= 50; ++step) document.preview(moved(step));
        QVERIFY(document.isPreviewing());
        QCOMPARE(placeOf(document), 50.0);
        QCOMPARE(findPart(*document.committed(), "C1")->place.at.x, 0.0);
        document.commitPreview("Move counter");
        QVERIFY(!document.isPreviewing());
        QCOMPARE(document.undoStack()->count(), 1);
        document.undoStack()->undo();
        QCOMPARE(placeOf(document), 0.0);
    }

    void aCancelledDragLeavesNothing()
    {
        PlanDocument document;
        document.reset(twoCounters());
        const PlanPtr before = document.plan();
        document.preview(moved(70));
        QSignalSpy changed(&document, &PlanDocument::planChanged);
        document.cancelPreview();
        QCOMPARE(changed.count(), 1);
        QCOMPARE(document.plan(), before);
        QCOMPARE(document.undoStack()->count(), 0);
    }

    void aDragBackToItsStartLeavesNoEntry()
    {
        PlanDocument document;
        document.reset(twoCounters());
        document.preview(moved(70));
        document.preview(moved(0));
        document.commitPreview("Move counter");
        QCOMPARE(document.undoStack()->count(), 0);
        QVERIFY(!document.isPreviewing());
    }

    void undoInTheMiddleOfADragEndsIt()
    {
        PlanDocument document;
        document.reset(twoCounters());
        document.apply("Move counter", moved(10));
        document.preview(moved(70));
        document.undoStack()->undo();
        QVERIFY(!document.isPreviewing());
        QCOMPARE(placeOf(document), 0.0);
    }

    void nudgesMergeAndCancelOut()
    {
        PlanDocument document;
        document.reset(twoCounters());
        for (int step = 0; step < 5; ++step) document.apply("Nudge", moved(10), 7);
        QCOMPARE(document.undoStack()->count(), 1);
        QCOMPARE(placeOf(document), 50.0);
        for (int step = 0; step < 5; ++step) document.apply("Nudge", moved(-10), 7);
        QCOMPARE(document.undoStack()->count(), 0);
        QCOMPARE(placeOf(document), 0.0);
    }

    void partsThatDidNotChangeAreShared()
    {
        PlanDocument document;
        document.reset(twoCounters());
        const PartPtr other = document.plan()->parts[1];
        document.apply("Move counter", moved(10));
        QCOMPARE(document.plan()->parts[1], other);
    }

    void whatIsGoneIsNotChosen()
    {
        PlanDocument document;
        document.reset(twoCounters());
        Selection selection(document);
        selection.setCutout({"C1", "K1"});
        QCOMPARE(selection.parts(), QStringList{"C1"});
        QSignalSpy changed(&selection, &Selection::chosenChanged);
        document.apply("Delete cutout", [](const Plan& plan) { return removeCutout(plan, "C1", "K1"); });
        QVERIFY(selection.cutout().isEmpty());
        QCOMPARE(changed.count(), 1);
        selection.setParts({"C1", "C2"});
        document.apply("Delete", [](const Plan& plan) { return removeParts(plan, {"C1"}); });
        QCOMPARE(selection.parts(), QStringList{"C2"});
        document.reset(Plan{});
        QVERIFY(selection.isEmpty());
    }
};

QTEST_GUILESS_MAIN(PlanDocumentTest)
#include "plan_document_test.moc"
