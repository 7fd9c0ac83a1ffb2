#include <QContextMenuEvent>
#include <QHelpEvent>
#include <QToolTip>

#include "canvas_fixture.h"

#include "ui/canvas/new_parts.h"
#include "ui/drawing/dimension_painter.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

/// C1 1800 x 600 at the origin with a sink K1 in its middle and a support S1 under its left end; C2 600 x 600 to the
/// right.
Plan kitchen()
{
    Plan plan;
    plan = withNewPart(plan, newPart(plan, PartKind::counter, {{0, 0}, {1800, 600}}));
    Cutout sink = defaultCutout(CutoutPurpose::sink, CutoutShape::rectangle);
    sink.id = "K1";
    sink.centre = {900, 300};
    plan = addCutout(plan, "C1", sink);
    plan = withNewPart(plan, newPart(plan, PartKind::support, {{150, 20}, {250, 580}}));
    plan = withNewPart(plan, newPart(plan, PartKind::counter, {{2200, 0}, {2800, 600}}));
    return plan;
}

const Counter& counterOf(const CanvasFixture& f, const char* id) { return f.body<Counter>(id); }
Box boundsOfPart(const CanvasFixture& f, const char* id) { return *boundsOf(footprint(f.part(id))); }

}  // namespace

class SelectToolTest : public QObject {
    Q_OBJECT

private slots:
    void clickChooses()
    {
        CanvasFixture f(kitchen());
        f.click({500, 100});
        QCOMPARE(f.selection.parts(), QStringList{"C1"});
        f.click({2500, 300});
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
        f.click({2500, 1200});
        QVERIFY(f.selection.isEmpty());
        QCOMPARE(f.undoCount(), 0);
    }

    void aGripIsDraggedWhereTheStageIsAboutLifting()
    {
        Plan plan = changeCounter(kitchen(), "C2", [](Counter& counter) {
            counter.lift.emplace();
            counter.lift->grips = {{150, 150}, {450, 450}};
        });
        CanvasFixture f(plan);
        f.canvas.setStage(Stage::lift);
        f.click({2500, 100});
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
        f.drag({2350, 150}, {2410, 250});
        QCOMPARE(f.undoCount(), 1);
        const std::vector<Point>& grips = counterOf(f, "C2").lift->grips;
        QCOMPARE(int(grips.size()), 2);
        QVERIFY(distance(grips[0], {210, 250}) <= 15.0);  // it snaps
        QCOMPARE(grips[1], (Point{450, 450}));
        QCOMPARE(boundsOfPart(f, "C2").low.x, 2200.0);
        f.document.undoStack()->undo();
        QCOMPARE(counterOf(f, "C2").lift->grips[0], (Point{150, 150}));
    }

    void aGripIsNoHandleWhereTheStageIsAboutTheDrawing()
    {
        Plan plan = changeCounter(kitchen(), "C2", [](Counter& counter) {
            counter.lift.emplace();
            counter.lift->grips = {{150, 150}, {450, 450}};
        });
        CanvasFixture f(plan);
        f.click({2500, 100});
        f.drag({2350, 150}, {2410, 250});
        QCOMPARE(counterOf(f, "C2").lift->grips[0], (Point{150, 150}));
    }

    void secondClickGoesToWhatLiesUnder()
    {
        CanvasFixture f(kitchen());
        // The support's hidden lines are drawn over the counter: it is found first, then the counter, then it again.
        f.click({200, 300});
        const QStringList first = f.selection.parts();
        f.click({200, 300});
        const QStringList second = f.selection.parts();
        QVERIFY(first != second);
        QVERIFY((first + second).contains("C1") && (first + second).contains("S1"));
        f.click({200, 300});
        QCOMPARE(f.selection.parts(), first);
    }

    void cutoutIsChosenThenItsCounter()
    {
        CanvasFixture f(kitchen());
        f.click({800, 300});
        QCOMPARE(f.selection.cutout().cutout, QString("K1"));
        f.click({800, 300});
        QVERIFY(f.selection.cutout().isEmpty());
        QCOMPARE(f.selection.parts(), QStringList{"C1"});
    }

    void ctrlAndShiftAdd()
    {
        CanvasFixture f(kitchen());
        f.click({500, 100});
        f.click({2500, 300}, Qt::ControlModifier);
        QCOMPARE(f.selection.parts(), (QStringList{"C1", "C2"}));
        f.click({500, 100}, Qt::ShiftModifier);
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
    }

    void bandChooses()
    {
        CanvasFixture f(kitchen());
        f.drag({-200, 900}, {2400, 300});
        QCOMPARE(f.selection.parts().size(), 3);
        f.drag({2100, 900}, {2900, 300});
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
        f.dragHalf({-200, 900}, {2400, 300});
        QCOMPARE(f.selection.parts().size(), 3);
        f.key(Qt::Key_Escape);
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
        f.release({2400, 300});
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
    }

    void dragMoves()
    {
        CanvasFixture f(kitchen());
        f.drag({2500, 300}, {2700, 700});
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2400, 400}));
        QCOMPARE(f.undoText(), QString("Move C2 counter"));
        f.document.undoStack()->undo();
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2200, 0}));
    }

    void pressingChoosesAtOnce()
    {
        CanvasFixture f(kitchen());
        f.press({2500, 300});
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
        f.release({2500, 300});
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
    }

    void whatStandsOnACounterGoesWithIt()
    {
        Plan plan = kitchen();
        plan = withNewPart(plan, newPart(plan, PartKind::appliance, {{2300, 100}, {2700, 500}}));
        QCOMPARE(std::get<Appliance>(findPart(plan, "A1")->body).on.value_or(""), std::string("C2"));
        CanvasFixture f(plan);
        f.drag({2230, 550}, {2430, 950});
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2400, 400}));
        QCOMPARE(boundsOfPart(f, "A1").low, (Point{2500, 500}));
        f.key(Qt::Key_Left);
        QCOMPARE(boundsOfPart(f, "A1").low, (Point{2490, 500}));
        // Alone it moves alone.
        f.selection.setParts({"A1"});
        f.key(Qt::Key_Left);
        QCOMPARE(boundsOfPart(f, "A1").low, (Point{2480, 500}));
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2390, 400}));
    }

    void draggingPastTheEdgeOfTheViewBringsMoreOfTheSheet()
    {
        CanvasFixture f(kitchen());
        const double before = f.canvas.viewState().centreMm.x();
        const Point start = boundsOfPart(f, "C2").low;
        const Point edge = f.at(QPointF(f.view().viewport()->width() + 30.0, 200.0));
        f.press({2500, 300});
        f.moveTo({2600, 300});
        f.moveTo(edge);
        const double held = boundsOfPart(f, "C2").low.x;
        QVERIFY(QTest::qWaitFor([&] { return f.canvas.viewState().centreMm.x() > before + 300.0; }, 5000));
        QVERIFY(boundsOfPart(f, "C2").low.x > held + 200.0);  // it stays under the pointer
        f.canvas.cancelGesture();
        const double stopped = f.canvas.viewState().centreMm.x();
        QTest::qWait(60);
        QCOMPARE(f.canvas.viewState().centreMm.x(), stopped);
        QCOMPARE(boundsOfPart(f, "C2").low, start);
    }

    void aSmallSlipIsAClick()
    {
        CanvasFixture f(kitchen());
        f.drag({2500, 300}, {2510, 305});  // 2.5 px
        QCOMPARE(f.undoCount(), 0);
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
    }

    void moveSnapsToTheNeighbour()
    {
        CanvasFixture f(kitchen());
        QSignalSpy measure(&f.canvas, &Canvas::measureTextChanged);
        f.dragHalf({2500, 300}, {2115, 310});  // 385 left, 10 back: its corner comes near (1800, 0)
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{1800, 0}));
        QVERIFY(measure.last().first().toString().contains("corner of C1"));
        f.release({2115, 310});
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{1800, 0}));
    }

    void moveMakesEqualGaps()
    {
        Plan plan = kitchen();
        plan = withNewPart(plan, newPart(plan, PartKind::counter, {{4000, 50}, {4600, 500}}));  // C3
        CanvasFixture f(plan, 0.2, {2500, 500});
        QSignalSpy measure(&f.canvas, &Canvas::measureTextChanged);
        // Free between 1800 and 4000: 2200, less 600: 800 either side, so 2600.
        f.dragHalf({2500, 450}, {2915, 575});
        const QString said = measure.last().first().toString();
        QVERIFY2(said.contains("equal spacing"), qPrintable(said));
        f.release({2915, 575});
        QCOMPARE(boundsOfPart(f, "C2").low.x, 2600.0);
    }

    void shiftKeepsToOneAxis()
    {
        CanvasFixture f(kitchen());
        f.drag({2500, 300}, {2900, 350}, Qt::NoModifier);
        f.document.undoStack()->undo();
        f.selection.setParts({"C2"});
        f.press({2500, 300});
        f.moveTo({2700, 350}, Qt::ShiftModifier);
        f.moveTo({2900, 380}, Qt::ShiftModifier);
        f.release({2900, 380}, Qt::ShiftModifier);
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2600, 0}));
    }

    void typedMove()
    {
        CanvasFixture f(kitchen());
        f.dragHalf({2500, 300}, {2700, 310});
        f.type("250");
        f.release({2700, 310});
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2450, 0}));
        f.dragHalf({2700, 300}, {2800, 310});
        f.type("-50 120");
        f.release({2800, 310});
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2400, 120}));
        QCOMPARE(f.undoCount(), 2);
    }

    void escapeUndoesTheMove()
    {
        CanvasFixture f(kitchen());
        f.dragHalf({2500, 300}, {2700, 700});
        QVERIFY(boundsOfPart(f, "C2").low.x != 2200.0);
        f.key(Qt::Key_Escape);
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2200, 0}));
        f.moveTo({2900, 900});
        f.release({2900, 900});
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2200, 0}));
        QCOMPARE(f.undoCount(), 0);
    }

    void undoDuringTheMoveCancelsItFirst()
    {
        CanvasFixture f(kitchen());
        f.drag({2500, 300}, {2700, 300});
        QCOMPARE(f.undoCount(), 1);
        f.dragHalf({2700, 300}, {2900, 700});
        f.document.undoStack()->undo();
        QVERIFY(!f.canvas.isGesturing());
        f.release({2900, 700});
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2200, 0}));
        f.document.undoStack()->redo();
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2400, 0}));
    }

    void whatIsChosenMovesFromUnderSomethingElse()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C1"});
        f.settle();
        f.drag({200, 300}, {200, 500});  // pressed where the support lies too
        QCOMPARE(boundsOfPart(f, "C1").low.y, 200.0);
        QCOMPARE(boundsOfPart(f, "S1").low.y, 20.0);
    }

    void edgeIsDragged()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C2"});
        f.settle();
        f.dragHalf({2800, 300}, {3052, 333});
        QVERIFY2(f.pointerText().startsWith(QString::fromUtf8("850 \u00d7 600 mm")), qPrintable(f.pointerText()));
        QVERIFY(f.pointerText().contains("kg"));
        f.release({3052, 333});
        QCOMPARE(boundsOfPart(f, "C2").high, (Point{3050, 600}));
        QCOMPARE(f.undoText(), QString("Resize C2 counter"));
        f.document.undoStack()->undo();
        QCOMPARE(boundsOfPart(f, "C2").high, (Point{2800, 600}));
    }

    void edgeIsTyped()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C2"});
        f.settle();
        f.dragHalf({2200, 300}, {2100, 300});  // the left edge
        f.type("1234");
        f.release({2100, 300});
        QCOMPARE(boundsOfPart(f, "C2").width(), 1234.0);
        QCOMPARE(boundsOfPart(f, "C2").high.x, 2800.0);
    }

    void edgeSnapsInLine()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C2"});
        f.settle();
        f.drag({2500, 600}, {2500, 640});
        QCOMPARE(boundsOfPart(f, "C2").high.y, 640.0);
        f.settle();
        f.drag({2500, 640}, {2500, 594});  // within 8 px of the back edge of C1
        QCOMPARE(boundsOfPart(f, "C2").high.y, 600.0);
        f.settle();
        f.drag({2500, 600}, {2500, 577}, Qt::AltModifier);
        QCOMPARE(boundsOfPart(f, "C2").high.y, 577.0);
    }

    void cornerKeepsRightAngles()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C2"});
        f.settle();
        f.drag({2800, 600}, {3000, 900});
        QCOMPARE(boundsOfPart(f, "C2").high, (Point{3000, 900}));
        QCOMPARE(std::abs(signedArea(counterOf(f, "C2").outline)), 800.0 * 900.0);
        f.settle();
        f.dragHalf({3000, 900}, {2900, 800});
        f.type("700 550");
        f.release({2900, 800});
        QCOMPARE(boundsOfPart(f, "C2").width(), 700.0);
        QCOMPARE(boundsOfPart(f, "C2").height(), 550.0);
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2200, 0}));
    }

    void ctrlFreesTheCorner()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C2"});
        f.settle();
        f.drag({2800, 600}, {3000, 900}, Qt::ControlModifier);
        QCOMPARE(counterOf(f, "C2").outline[2], (Point{800, 900}));
        QCOMPARE(counterOf(f, "C2").outline[1], (Point{600, 0}));
    }

    void ctrlDragOfAnEdgeMakesAnEll()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C1"});
        f.settle();
        const double before = signedArea(counterOf(f, "C1").outline);
        f.drag({1500, 600}, {1200, 1400}, Qt::ControlModifier);
        const Counter& ell = counterOf(f, "C1");
        QCOMPARE(ell.outline.size(), std::size_t(6));
        QCOMPARE(signedArea(ell.outline), before + 600.0 * 800.0);
        QCOMPARE(f.undoText(), QString("Step in C1 counter"));
        f.document.undoStack()->undo();
        QCOMPARE(counterOf(f, "C1").outline.size(), std::size_t(4));
    }

    void stepIsTyped()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C1"});
        f.settle();
        f.dragHalf({300, 600}, {500, 900}, Qt::ControlModifier);
        f.type("600 750");
        f.release({500, 900});
        QCOMPARE(signedArea(counterOf(f, "C1").outline), 1800.0 * 600.0 + 600.0 * 750.0);
    }

    void doubleClickMakesACornerAndDeleteTakesItAway()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C2"});
        f.settle();
        f.doubleClick({2400, 600});
        QCOMPARE(counterOf(f, "C2").outline.size(), std::size_t(5));
        QCOMPARE(f.undoText(), QString("New corner in C2 counter"));
        f.settle();
        // It is chosen already: the arrows move it, Delete takes it away.
        f.key(Qt::Key_Up);
        const double bulge = std::ranges::max(counterOf(f, "C2").outline, {}, &Point::y).y;
        QCOMPARE(bulge, 610.0);
        f.key(Qt::Key_Delete);
        QCOMPARE(counterOf(f, "C2").outline.size(), std::size_t(4));
        QCOMPARE(f.committed().parts.size(), std::size_t(3));
    }

    void clickOnACornerThenDelete()
    {
        Plan plan = kitchen();
        plan = insertOutlineCorner(plan, "C2", 2, {300, 700});
        CanvasFixture f(plan);
        f.selection.setParts({"C2"});
        f.settle();
        f.click({2500, 700});
        f.key(Qt::Key_Delete);
        QCOMPARE(counterOf(f, "C2").outline.size(), std::size_t(4));
        f.key(Qt::Key_Delete);  // no corner is chosen any more, and Delete alone is a command of the window
        QCOMPARE(f.committed().parts.size(), std::size_t(3));
    }

    void deleteChosen()
    {
        CanvasFixture f(kitchen());
        f.click({800, 300});
        f.canvas.deleteChosen();
        QVERIFY(counterOf(f, "C1").cutouts.empty());
        QCOMPARE(f.selection.parts(), QStringList{"C1"});
        f.canvas.deleteChosen();
        QCOMPARE(f.committed().parts.size(), std::size_t(2));
        f.document.undoStack()->undo();
        f.document.undoStack()->undo();
        QCOMPARE(counterOf(f, "C1").cutouts.size(), std::size_t(1));
    }

    void cutoutMovesWithinItsCounter()
    {
        CanvasFixture f(kitchen());
        f.dragHalf({900, 400}, {1207, 400});
        QVERIFY2(f.pointerText().contains("in front of it") || f.pointerText().contains("behind it"),
                 qPrintable(f.pointerText()));
        f.release({1207, 400});
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre.y, 300.0);
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre.x, 1210.0);
        QCOMPARE(boundsOfPart(f, "C1").low, (Point{0, 0}));
        f.document.undoStack()->undo();
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre, (Point{900, 300}));
    }

    void cutoutSnapsBackToTheMiddleAndIsTyped()
    {
        CanvasFixture f(kitchen());
        f.drag({900, 400}, {1200, 400});
        f.settle();
        f.drag({1200, 400}, {908, 405});
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre, (Point{900, 300}));
        f.settle();
        f.dragHalf({900, 400}, {700, 400});
        f.type("123");
        f.release({700, 400});
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre, (Point{777, 300}));
    }

    void cutoutIsResizedByItsHandles()
    {
        CanvasFixture f(kitchen());
        f.selection.setCutout({"C1", "K1"});
        f.settle();
        f.drag({1180, 300}, {1280, 300});  // right side
        QCOMPARE(counterOf(f, "C1").cutouts.front().size, (Size{660, 400}));
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre, (Point{950, 300}));
        f.settle();
        f.dragHalf({620, 100}, {600, 60});  // front left corner
        f.type("500 350");
        f.release({600, 60});
        QCOMPARE(counterOf(f, "C1").cutouts.front().size, (Size{500, 350}));
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre, (Point{1030, 325}));
    }

    void roundCutoutByItsDiameter()
    {
        Plan plan = kitchen();
        Cutout round = defaultCutout(CutoutPurpose::other, CutoutShape::circle);  // 200
        round.id = "K2";
        round.centre = {300, 300};
        plan = addCutout(plan, "C2", round);
        CanvasFixture f(plan);
        f.selection.setCutout({"C2", "K2"});
        f.settle();
        f.drag({2600, 300}, {2650, 300});
        QCOMPARE(counterOf(f, "C2").cutouts.front().diameterMm, 300.0);
        f.settle();
        f.dragHalf({2650, 300}, {2630, 300});
        f.type("220");
        f.release({2630, 300});
        QCOMPARE(counterOf(f, "C2").cutouts.front().diameterMm, 220.0);
    }

    void supportIsResizedAtItsEnds()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"S1"});
        f.settle();
        f.drag({200, 580}, {200, 480}, Qt::AltModifier);
        QCOMPARE(f.body<Support>("S1").lengthMm, 460.0);
        QCOMPARE(boundsOfPart(f, "S1").low.y, 20.0);
        f.settle();
        f.dragHalf({200, 20}, {200, 60});
        f.type("500");
        f.release({200, 60});
        QCOMPARE(f.body<Support>("S1").lengthMm, 500.0);
        QCOMPARE(boundsOfPart(f, "S1").high.y, 480.0);
    }

    void frontIsResizedAtItsEnds()
    {
        Plan plan = kitchen();
        plan = withNewPart(plan, newFront(plan, {100, -500}, {1100, -500}));
        CanvasFixture f(plan);
        f.selection.setParts({"F1"});
        f.settle();
        f.drag({1100, -500}, {1300, -500});
        QCOMPARE(distance(f.body<Front>("F1").from, f.body<Front>("F1").to), 1200.0);
        f.settle();
        f.dragHalf({100, -500}, {150, -500});
        f.type("900");
        f.release({150, -500});
        QCOMPARE(distance(f.body<Front>("F1").from, f.body<Front>("F1").to), 900.0);
    }

    void turnInSteps()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C2"});
        f.settle();
        // The handle stands 54 px over the middle of the back edge; 54 px are 216 mm.
        const Point handle{2500, 600 + 216};
        f.dragHalf(handle, {2000, 330});
        QVERIFY2(f.pointerText().contains("90"), qPrintable(f.pointerText()));
        f.release({2000, 330});
        QCOMPARE(f.part("C2").place.turnDeg, 90.0);
        QCOMPARE(f.undoText(), QString("Turn C2 counter"));
        f.document.undoStack()->undo();
        QCOMPARE(f.part("C2").place.turnDeg, 0.0);
        f.settle();
        f.dragHalf(handle, {2000, 330});
        f.type("37");
        f.release({2000, 330});
        QCOMPARE(f.part("C2").place.turnDeg, 37.0);
    }

    void typedSizeOfWhatIsChosen()
    {
        CanvasFixture f(kitchen());
        f.click({2500, 300});
        f.type("850 650");
        QCOMPARE(boundsOfPart(f, "C2").width(), 850.0);
        QCOMPARE(boundsOfPart(f, "C2").height(), 650.0);
        f.selection.setCutout({"C1", "K1"});
        f.type("500");
        QCOMPARE(counterOf(f, "C1").cutouts.front().size, (Size{500, 400}));
        f.selection.clear();
        f.key(Qt::Key_7);
        QVERIFY(!f.field().isOpen());
    }

    void figureIsTypedOver()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C2"});
        f.settle();
        // The figure under the front edge: its line is 24 px out, the figure stands on it.
        const QPointF below = f.px({2500, 0}) + QPointF(0.0, 18.0);
        f.click(f.at(below));
        QVERIFY(f.field().isOpen());
        QCOMPARE(f.field().text(), QString("600"));
        f.typeInField("720");
        QCOMPARE(boundsOfPart(f, "C2").width(), 720.0);
        QCOMPARE(boundsOfPart(f, "C2").low.x, 2200.0);
        QVERIFY(!f.field().isOpen());
    }

    void figureRefusesNonsenseInWords()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C2"});
        f.settle();
        f.click(f.at(f.px({2500, 0}) + QPointF(0.0, 18.0)));
        f.typeInField("0");
        QVERIFY(f.field().isOpen());
        QVERIFY(f.field().fault().contains("at least"));
        QTest::keyClick(f.field().findChild<QLineEdit*>(), Qt::Key_Escape);
        QVERIFY(!f.field().isOpen());
        QCOMPARE(f.undoCount(), 0);
    }

    void nudgesMerge()
    {
        CanvasFixture f(kitchen());
        f.click({2500, 300});
        for (int i = 0; i < 3; ++i) f.key(Qt::Key_Right);
        f.key(Qt::Key_Up, Qt::ShiftModifier);
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2230, 1}));
        QCOMPARE(f.undoCount(), 1);
        f.document.undoStack()->undo();
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2200, 0}));
        f.selection.setCutout({"C1", "K1"});
        f.key(Qt::Key_Left);
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre, (Point{890, 300}));
    }

    void fixtureMovesAndIsNudged()
    {
        Plan plan = kitchen();
        Fixture water;
        water.id = "water";
        water.kind = FixtureKind::water;
        water.at = {500, -500};
        plan = addFixture(plan, water);
        CanvasFixture f(plan);
        f.drag({500, -500}, {800, -300});
        QCOMPARE(f.selection.fixture(), QString("water"));
        QCOMPARE(f.committed().site.fixtures.front().at, (Point{800, -300}));
        f.key(Qt::Key_Down);
        QCOMPARE(f.committed().site.fixtures.front().at, (Point{800, -310}));
        f.canvas.deleteChosen();
        QVERIFY(f.committed().site.fixtures.empty());
    }

    void commandsOnWhatIsChosen()
    {
        CanvasFixture f(kitchen());
        f.selection.setParts({"C2"});
        f.canvas.turnChosen(90.0);
        QCOMPARE(f.part("C2").place.turnDeg, 90.0);
        QCOMPARE(boundsOfPart(f, "C2").centre(), (Point{2500, 300}));
        f.canvas.duplicateChosen();
        QCOMPARE(f.selection.parts(), QStringList{"C3"});
        QCOMPARE(f.committed().parts.size(), std::size_t(4));
        f.canvas.mirrorChosen();
        f.canvas.selectAll();
        QCOMPARE(f.selection.parts().size(), 4);
        while (f.document.undoStack()->canUndo()) f.document.undoStack()->undo();
        QVERIFY(f.committed() == kitchen());
    }

    void hoverTellsAndHighlights()
    {
        CanvasFixture f(kitchen());
        QSignalSpy measure(&f.canvas, &Canvas::measureTextChanged);
        f.hover({2500, 300});
        QCOMPARE(f.selection.hovered(), QString("C2"));
        QVERIFY2(measure.last().first().toString().contains("kg"), qPrintable(measure.last().first().toString()));
        f.hover({2500, 1500});
        QVERIFY(f.selection.hovered().isEmpty());
    }

    void signOfAFindingTellsWhat()
    {
        CanvasFixture f(kitchen());
        f.settle();
        // C2 rests on nothing: a sign stands in its top right corner.
        const QPoint sign = (f.px({2800, 600}) + QPointF(-14.0, 14.0)).toPoint();
        QHelpEvent help(QEvent::ToolTip, sign, f.view().viewport()->mapToGlobal(sign));
        QApplication::sendEvent(f.view().viewport(), &help);
        QVERIFY2(QToolTip::text().contains("C2"), qPrintable(QToolTip::text()));
        const QPoint beside = f.px({2400, 300}).toPoint();
        QHelpEvent nothing(QEvent::ToolTip, beside, f.view().viewport()->mapToGlobal(beside));
        QApplication::sendEvent(f.view().viewport(), &nothing);
        QVERIFY(QTest::qWaitFor([] { return QToolTip::text().isEmpty(); }, 2000));
    }

    void whatAPanelPointsAtIsMarked()
    {
        CanvasFixture f(kitchen());
        f.settle();
        const QImage before = f.canvas.grab().toImage();
        f.selection.setHighlighted({"C2"});
        QCoreApplication::processEvents();
        const QImage marked = f.canvas.grab().toImage();
        QVERIFY(before != marked);
        f.selection.setHighlighted({});
        QCoreApplication::processEvents();
        QVERIFY(f.canvas.grab().toImage() == before);
        // A line of the list of parts under the pointer does it too.
        f.selection.setHovered("C2");
        QCoreApplication::processEvents();
        QVERIFY(f.canvas.grab().toImage() != before);
    }

    void menuKeyAsksForTheMenuAtWhatIsChosen()
    {
        CanvasFixture f(kitchen());
        QSignalSpy menu(&f.canvas, &Canvas::contextMenuRequested);
        f.selection.setParts({"C2"});
        QContextMenuEvent event(QContextMenuEvent::Keyboard, QPoint(5, 5), f.canvas.mapToGlobal(QPoint(5, 5)));
        QApplication::sendEvent(&f.canvas, &event);
        QCOMPARE(menu.count(), 1);
        const QPoint at = f.view().viewport()->mapFromGlobal(menu.first().first().toPoint());
        QVERIFY(QLineF(at, f.px({2500, 300})).length() < 3.0);
    }

    void rightButtonChoosesAndAsksForTheMenu()
    {
        CanvasFixture f(kitchen());
        QSignalSpy menu(&f.canvas, &Canvas::contextMenuRequested);
        f.send(QEvent::MouseButtonPress, {2500, 300}, Qt::RightButton, Qt::RightButton);
        QCOMPARE(menu.count(), 1);
        QCOMPARE(f.selection.parts(), QStringList{"C2"});
        // In the middle of a drag it takes the drag back instead.
        f.dragHalf({2500, 300}, {2700, 500});
        f.send(QEvent::MouseButtonPress, {2700, 500}, Qt::RightButton, Qt::LeftButton | Qt::RightButton);
        QCOMPARE(menu.count(), 1);
        QVERIFY(!f.canvas.isGesturing());
        f.release({2700, 500});
        QCOMPARE(f.undoCount(), 0);
    }

    void whatIsChosenIsAnnounced()
    {
        CanvasFixture f(kitchen());
        QVERIFY(!f.canvas.accessibleName().isEmpty());
        f.selection.setParts({"C2"});
        QVERIFY(f.canvas.accessibleDescription().contains("C2"));
        f.selection.clear();
        QVERIFY(f.canvas.accessibleDescription().contains("Nothing"));
    }
};

QTEST_MAIN(SelectToolTest)
#include "select_tool_test.moc"
