#include "canvas_fixture.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

Plan withCounter()
{
    Plan plan;
    Mix mix;
    mix.id = "worktop";
    plan.mixes.push_back(mix);
    auto part = std::make_shared<Part>();
    part->id = "C1";
    Counter counter;
    counter.outline = {{0, 0}, {1800, 0}, {1800, 600}, {0, 600}};
    counter.mix = "worktop";
    part->body = counter;
    plan.parts.push_back(part);
    return plan;
}

const Counter& counterOf(const CanvasFixture& f, const char* id) { return f.body<Counter>(id); }

Box boundsOfPart(const CanvasFixture& f, const char* id) { return *boundsOf(footprint(f.part(id))); }

}  // namespace

/// Every tool that draws: it draws, takes typed sizes, snaps, cancels, and undoes.
class DrawToolsTest : public QObject {
    Q_OBJECT

private slots:
    // Counter
    void counterIsDrawnByDragging()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        f.drag({0, 0}, {1850, 620});
        QCOMPARE(f.committed().parts.size(), std::size_t(1));
        const Box box = boundsOfPart(f, "C1");
        QCOMPARE(box.low, (Point{0, 0}));
        QCOMPARE(box.high, (Point{1850, 620}));
        QCOMPARE(f.selection.parts(), QStringList{"C1"});
        QCOMPARE(f.canvas.tool(), ToolKind::select);
        QCOMPARE(f.undoText(), QString("Add counter"));
        f.document.undoStack()->undo();
        QVERIFY(f.committed().parts.empty());
        QVERIFY(f.committed().mixes.empty());
    }

    void drawnWithoutThePointer()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        QTest::keyClick(&f.canvas, Qt::Key_Return);
        QCOMPARE(f.committed().parts.size(), std::size_t(1));
        QCOMPARE(f.selection.parts(), QStringList{"C1"});
        // A cutout goes into the middle of the counter that is chosen.
        f.canvas.startAddingCutout(CutoutPurpose::sink, CutoutShape::rectangle);
        QTest::keyClick(&f.canvas, Qt::Key_Return);
        QCOMPARE(counterOf(f, "C1").cutouts.size(), std::size_t(1));
        const Point middle = boundsOfPart(f, "C1").centre();
        const Point centre = f.part("C1").place.toPlan(counterOf(f, "C1").cutouts[0].centre);
        // Snaps to a middle or to the grid of the zoom.
        QVERIFY2(distance(centre, middle) <= 60.0, qPrintable(QString::number(distance(centre, middle))));
        f.canvas.setTool(ToolKind::support);
        QTest::keyClick(&f.canvas, Qt::Key_Return);
        QCOMPARE(f.committed().parts.size(), std::size_t(2));
        // In hand is the tool that moves: there Enter places nothing.
        QTest::keyClick(&f.canvas, Qt::Key_Return);
        QCOMPARE(f.committed().parts.size(), std::size_t(2));
    }

    void counterTellsSizeAndMassWhileDragging()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        QSignalSpy measure(&f.canvas, &Canvas::measureTextChanged);
        f.dragHalf({0, 0}, {1000, 500});
        QVERIFY2(f.pointerText().startsWith(QString::fromUtf8("1000 \u00d7 500 mm")), qPrintable(f.pointerText()));
        QVERIFY(f.pointerText().contains("kg"));
        QVERIFY(f.pointerText().contains("people"));
        QVERIFY(measure.last().first().toString().contains("kg"));
        QCOMPARE(f.plan().parts.size(), std::size_t(1));       // seen
        QVERIFY(f.committed().parts.empty());                  // not yet done
        f.release({1000, 500});
        QVERIFY(f.pointerText().isEmpty());
    }

    void counterDraggedLeftAndDown()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        f.drag({1500, 900}, {500, 300});
        QCOMPARE(boundsOfPart(f, "C1").low, (Point{500, 300}));
        QCOMPARE(boundsOfPart(f, "C1").high, (Point{1500, 900}));
    }

    void counterByClickHasTheUsualSize()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        f.click({1000, 500});
        const Box box = boundsOfPart(f, "C1");
        QCOMPARE(box.width(), 1800.0);
        QCOMPARE(box.height(), 620.0);
        QCOMPARE(box.centre(), (Point{1000, 500}));
    }

    void counterTypedWhileDragging()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        f.dragHalf({0, 0}, {900, 400});
        f.type("1850 620");
        f.release({900, 400});
        QCOMPARE(f.committed().parts.size(), std::size_t(1));
        QCOMPARE(boundsOfPart(f, "C1").high, (Point{1850, 620}));
        QVERIFY(!f.field().isOpen());
        QCOMPARE(f.undoCount(), 1);
    }

    void counterTypedKeepsTheWayOfTheDrag()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        f.dragHalf({1500, 900}, {900, 600});
        f.type("100 cm x 50 cm");
        f.release({900, 600});
        QCOMPARE(boundsOfPart(f, "C1").high, (Point{1500, 900}));
        QCOMPARE(boundsOfPart(f, "C1").low, (Point{500, 400}));
    }

    void counterTypedBeforeThePress()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        f.hover({400, 200});
        f.type("1,85 m");
        QCOMPARE(boundsOfPart(f, "C1").width(), 1850.0);
        QCOMPARE(boundsOfPart(f, "C1").height(), 620.0);
        QCOMPARE(boundsOfPart(f, "C1").low, (Point{400, 200}));
    }

    void counterTypedInTwoHands()
    {
        // The button is let go before the figure is typed to its end.
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        f.dragHalf({0, 0}, {900, 400});
        QTest::keyClicks(&f.canvas, "1");
        f.release({900, 400});
        QVERIFY(f.committed().parts.empty());
        f.typeInField("200x500");
        QCOMPARE(boundsOfPart(f, "C1").high, (Point{1200, 500}));
    }

    void badSizeIsSaidAndNothingIsLost()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        f.dragHalf({0, 0}, {900, 400});
        f.type("1.850");
        QVERIFY(f.field().isOpen());
        QVERIFY(!f.field().fault().isEmpty());
        QVERIFY(f.committed().parts.empty());
        QCOMPARE(f.plan().parts.size(), std::size_t(1));  // the gesture waits
        QTest::keyClick(f.field().findChild<QLineEdit*>(), Qt::Key_Escape);
        QVERIFY(f.plan().parts.empty());
        f.release({900, 400});
        QVERIFY(f.committed().parts.empty());
    }

    void closingInTheMiddleOfEverything()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        f.dragHalf({0, 0}, {900, 400});
        QTest::keyClicks(&f.canvas, "1");
        QVERIFY(f.field().isOpen());
        // The canvas goes while the field has the focus and the gesture waits.
    }

    void counterSnapsToAnother()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::counter);
        QSignalSpy measure(&f.canvas, &Canvas::measureTextChanged);
        // 8 px are 32 mm here.
        f.hover({1815, 612});
        const QString said = measure.last().first().toString();
        QVERIFY2(said.contains("corner of C1"), qPrintable(said));
        f.drag({1815, 12}, {2613, 615});
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{1800, 0}));
        QCOMPARE(boundsOfPart(f, "C2").high.y, 600.0);
    }

    void altSuspendsSnapping()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::counter);
        f.drag({1812, 12}, {2612, 616}, Qt::AltModifier);
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{1812, 12}));
        QCOMPARE(boundsOfPart(f, "C2").high, (Point{2612, 616}));
    }

    void snappingSwitchedOff()
    {
        CanvasFixture f(withCounter());
        QSignalSpy changed(&f.canvas, &Canvas::snappingChanged);
        f.canvas.setSnappingOn(false);
        QCOMPARE(changed.count(), 1);
        f.canvas.setTool(ToolKind::counter);
        f.drag({1812, 12}, {2612, 616});
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{1812, 12}));
    }

    void escapeUndoesTheDrag()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counter);
        f.dragHalf({0, 0}, {900, 400});
        QVERIFY(f.canvas.isGesturing());
        f.key(Qt::Key_Escape);
        QVERIFY(!f.canvas.isGesturing());
        QVERIFY(f.plan().parts.empty());
        f.moveTo({1000, 500});
        f.release({1000, 500});
        QVERIFY(f.committed().parts.empty());
        QCOMPARE(f.canvas.tool(), ToolKind::counter);  // the tool stays in hand
        f.key(Qt::Key_Escape);
        QCOMPARE(f.canvas.tool(), ToolKind::select);
    }

    void tooSmallIsSaid()
    {
        CanvasFixture f({}, 2.0, {0, 0});
        f.canvas.setTool(ToolKind::counter);
        QSignalSpy measure(&f.canvas, &Canvas::measureTextChanged);
        f.drag({0, 0}, {200, 10});
        QVERIFY(f.committed().parts.empty());
        QVERIFY(measure.last().first().toString().contains("too small"));
    }

    void undoDuringTheDragCancelsIt()
    {
        CanvasFixture f(withCounter());
        f.document.apply("Raise", [](const Plan& plan) { return raiseParts(plan, {"C1"}, 50.0); });
        f.canvas.setTool(ToolKind::counter);
        f.dragHalf({0, 1000}, {900, 1400});
        f.document.undoStack()->undo();
        QVERIFY(!f.canvas.isGesturing());
        f.moveTo({1000, 1500});
        f.release({1000, 1500});
        QCOMPARE(f.committed().parts.size(), std::size_t(1));
        QCOMPARE(counterOf(f, "C1").topMm, 900.0);
    }

    void losingTheFocusCancels()
    {
        CanvasFixture f;
        QLineEdit other;
        f.canvas.setTool(ToolKind::counter);
        f.dragHalf({0, 0}, {900, 400});
        QFocusEvent out(QEvent::FocusOut, Qt::ActiveWindowFocusReason);
        QApplication::sendEvent(&f.canvas, &out);
        QVERIFY(!f.canvas.isGesturing());
        f.release({900, 400});
        QVERIFY(f.committed().parts.empty());
    }

    // Supports, panels, fronts, appliances
    void supportByClickUnderACounter()
    {
        CanvasFixture f(withCounter());
        f.canvas.startAddingPart(PartKind::support);
        QCOMPARE(f.canvas.tool(), ToolKind::support);
        f.click({500, 250});
        QCOMPARE(f.body<Support>("S1").heightMm, 860.0);
        QCOMPARE(boundsOfPart(f, "S1").low.y, 20.0);
        QCOMPARE(boundsOfPart(f, "S1").high.y, 580.0);
        f.document.undoStack()->undo();
        QCOMPARE(f.committed().parts.size(), std::size_t(1));
    }

    void supportByDragAndTyped()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::support);
        f.drag({0, 0}, {600, 4});  // as a line: the usual width
        QCOMPARE(f.body<Support>("S1").lengthMm, 600.0);
        QCOMPARE(f.body<Support>("S1").widthMm, 100.0);
        f.canvas.setTool(ToolKind::support);
        f.dragHalf({1000, 0}, {1004, 500});
        f.type("640");
        f.release({1004, 500});
        QCOMPARE(f.body<Support>("S2").lengthMm, 640.0);
        QCOMPARE(boundsOfPart(f, "S2").height(), 640.0);  // the way it was dragged
    }

    void panelOnTheBackEdge()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::panel);
        f.click({900, 300});
        QCOMPARE(f.body<Panel>("P1").baseMm, 900.0);
        QCOMPARE(boundsOfPart(f, "P1").high, (Point{1800, 600}));
    }

    void frontBetweenTwoPoints()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::front);
        f.dragHalf({100, 50}, {1300, 50});
        QVERIFY2(f.pointerText().contains("1200"), qPrintable(f.pointerText()));
        f.release({1300, 50});
        const auto& front = f.body<Front>("F1");
        QCOMPARE(distance(front.from, front.to), 1200.0);
        QCOMPARE(front.topMm, 860.0);
        f.canvas.setTool(ToolKind::front);
        f.dragHalf({100, 1050}, {1300, 1050});
        f.type("1444");
        f.release({1300, 1050});
        QCOMPARE(distance(f.body<Front>("F2").from, f.body<Front>("F2").to), 1444.0);
        f.canvas.setTool(ToolKind::front);
        f.dragHalf({100, 1400}, {1300, 1400});
        f.key(Qt::Key_Escape);
        f.release({1300, 1400});
        QCOMPARE(f.committed().parts.size(), std::size_t(3));
    }

    void applianceByDrag()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::appliance);
        f.drag({600, 100}, {1100, 500});
        QCOMPARE(f.body<Appliance>("A1").size, (Size{500, 400}));
        QCOMPARE(f.body<Appliance>("A1").on.value_or(""), std::string("C1"));
    }

    // Counter by corners, site outline
    void polygonByCorners()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counterPolygon);
        const Ring corners{{0, 0}, {2000, 0}, {2000, 1500}, {1400, 1500}, {1400, 600}};
        for (const Point p : corners) f.click(p);
        QVERIFY(f.canvas.isGesturing());
        f.hover({0, 600});
        QVERIFY2(f.pointerText().contains("kg"), qPrintable(f.pointerText()));
        f.click({0, 600});
        f.click({4, 4});  // the first corner closes
        QVERIFY(!f.canvas.isGesturing());
        const Counter& counter = counterOf(f, "C1");
        QCOMPARE(counter.outline.size(), std::size_t(6));
        QCOMPARE(signedArea(counter.outline), 2000.0 * 600.0 + 600.0 * 900.0);
        QCOMPARE(f.selection.parts(), QStringList{"C1"});
        f.document.undoStack()->undo();
        QVERIFY(f.committed().parts.empty());
    }

    void polygonByTypedLengths()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counterPolygon);
        f.click({0, 0});
        f.hover({500, 0});
        f.type("1850");
        f.hover({1850, 300});
        f.type("620");
        f.hover({1000, 620});
        f.type("1850");
        f.key(Qt::Key_Return);
        QCOMPARE(boundsOfPart(f, "C1").width(), 1850.0);
        QCOMPARE(boundsOfPart(f, "C1").height(), 620.0);
    }

    void polygonTakesBackACornerAndCancels()
    {
        CanvasFixture f;
        f.canvas.setTool(ToolKind::counterPolygon);
        for (const Point p : {Point{0, 0}, Point{1000, 0}, Point{1000, 500}, Point{500, 900}}) f.click(p);
        f.key(Qt::Key_Backspace);
        f.click({0, 500});
        f.key(Qt::Key_Return);
        QCOMPARE(counterOf(f, "C1").outline.size(), std::size_t(4));
        QCOMPARE(boundsOfPart(f, "C1").height(), 500.0);
        f.canvas.setTool(ToolKind::counterPolygon);
        for (const Point p : {Point{2000, 0}, Point{2500, 0}, Point{2500, 500}}) f.click(p);
        f.key(Qt::Key_Escape);
        QCOMPARE(f.plan().parts.size(), std::size_t(1));
        QVERIFY(!f.canvas.isGesturing());
    }

    void siteOutline()
    {
        CanvasFixture f;
        f.canvas.startSiteOutline();
        for (const Point p : {Point{0, 0}, Point{2000, 0}, Point{2000, 1500}, Point{0, 1500}}) f.click(p);
        f.key(Qt::Key_Return);
        QVERIFY(f.committed().site.outline.has_value());
        QCOMPARE(f.committed().site.outline->size(), std::size_t(4));
        QCOMPARE(f.undoText(), QString("Site outline"));
        f.canvas.startSiteOutline();
        f.key(Qt::Key_Delete);
        QVERIFY(!f.committed().site.outline.has_value());
        f.document.undoStack()->undo();
        QVERIFY(f.committed().site.outline.has_value());
        f.document.undoStack()->undo();
        QVERIFY(!f.committed().site.outline.has_value());
    }

    // Cutouts
    void sinkByClickSnapsToTheCentre()
    {
        CanvasFixture f(withCounter());
        f.canvas.startAddingCutout(CutoutPurpose::sink, CutoutShape::rectangle);
        f.hover({910, 295});
        QVERIFY2(f.pointerText().contains("kg"), qPrintable(f.pointerText()));
        f.click({910, 295});
        const Cutout& sink = counterOf(f, "C1").cutouts.front();
        QCOMPARE(sink.centre, (Point{900, 300}));
        QCOMPARE(sink.size, (Size{560, 400}));
        QCOMPARE(sink.cornerRadiusMm.value_or(0.0), 20.0);
        QCOMPARE(f.selection.cutout().cutout, QString::fromStdString(sink.id));
        f.document.undoStack()->undo();
        QVERIFY(counterOf(f, "C1").cutouts.empty());
    }

    void hobByDraggingAndTyping()
    {
        CanvasFixture f(withCounter());
        f.canvas.startAddingCutout(CutoutPurpose::hob, CutoutShape::rectangle);
        f.dragHalf({200, 100}, {700, 480});
        QVERIFY2(f.pointerText().startsWith(QString::fromUtf8("500 \u00d7 380 mm")), qPrintable(f.pointerText()));
        f.release({700, 480});
        QCOMPARE(counterOf(f, "C1").cutouts.front().size, (Size{500, 380}));
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre, (Point{450, 290}));
        f.canvas.startAddingCutout(CutoutPurpose::hob, CutoutShape::rectangle);
        f.dragHalf({1000, 100}, {1300, 400});
        f.type("560 490");
        f.release({1300, 400});
        const Cutout& second = counterOf(f, "C1").cutouts.back();
        QCOMPARE(second.size, (Size{560, 490}));
        QCOMPARE(second.centre, (Point{1280, 345}));
    }

    void tapHoleByClickAndTyped()
    {
        CanvasFixture f(withCounter(), 1.0, {900, 300});
        f.canvas.startAddingCutout(CutoutPurpose::tap, CutoutShape::circle);
        f.click({700, 520});
        QCOMPARE(counterOf(f, "C1").cutouts.front().diameterMm, 35.0);
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre, (Point{700, 520}));
        f.canvas.startAddingCutout(CutoutPurpose::tap, CutoutShape::circle);
        f.hover({1100, 520});
        f.type("32");
        QCOMPARE(counterOf(f, "C1").cutouts.back().diameterMm, 32.0);
        f.canvas.startAddingCutout(CutoutPurpose::drain, CutoutShape::circle);
        f.drag({300, 300}, {360, 300});
        QCOMPARE(counterOf(f, "C1").cutouts.back().diameterMm, 120.0);
    }

    void cutoutOutsideEveryCounterIsRefused()
    {
        CanvasFixture f(withCounter());
        f.canvas.startAddingCutout(CutoutPurpose::sink, CutoutShape::rectangle);
        QSignalSpy measure(&f.canvas, &Canvas::measureTextChanged);
        f.click({2500, 1200});
        QVERIFY(counterOf(f, "C1").cutouts.empty());
        QVERIFY(measure.last().first().toString().contains("counter"));
        QCOMPARE(f.canvas.tool(), ToolKind::cutout);
    }

    void cutoutCancels()
    {
        CanvasFixture f(withCounter());
        f.canvas.startAddingCutout(CutoutPurpose::sink, CutoutShape::rectangle);
        f.dragHalf({300, 100}, {800, 500});
        QCOMPARE(std::get<Counter>(f.plan().parts.front()->body).cutouts.size(), std::size_t(1));
        f.key(Qt::Key_Escape);
        f.release({800, 500});
        QVERIFY(counterOf(f, "C1").cutouts.empty());
        QCOMPARE(f.undoCount(), 0);
    }

    void cutoutInATurnedCounter()
    {
        Plan plan = withCounter();
        plan = turnParts(plan, {"C1"}, 90.0, {0, 0});  // now from (-600, 0) to (0, 1800)
        CanvasFixture f(plan, 0.25, {-300, 900});
        f.canvas.startAddingCutout(CutoutPurpose::sink, CutoutShape::rectangle);
        f.click({-310, 905});
        QCOMPARE(counterOf(f, "C1").cutouts.front().centre, (Point{900, 300}));
    }

    // Joints and ribs
    void jointAcrossTheCounter()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::joint);
        f.hover({1000, 200});
        QVERIFY2(f.pointerText().contains(" + "), qPrintable(f.pointerText()));  // the masses of both castings
        f.click({1000, 200});
        QCOMPARE(counterOf(f, "C1").joints.size(), std::size_t(1));
        const Joint& joint = counterOf(f, "C1").joints.front();
        QCOMPARE(joint.from.x, 1000.0);
        QCOMPARE(joint.to.x, 1000.0);
        QCOMPARE(std::abs(joint.to.y - joint.from.y), 600.0);
        f.document.undoStack()->undo();
        QVERIFY(counterOf(f, "C1").joints.empty());
    }

    void jointTypedAndSnappedAndCancelled()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::joint);
        f.hover({700, 200});
        f.type("650");
        QCOMPARE(counterOf(f, "C1").joints.front().from.x, 650.0);
        f.canvas.setTool(ToolKind::joint);
        f.click({910, 320});  // near the middle
        QCOMPARE(counterOf(f, "C1").joints.back().from.x, 900.0);
        f.canvas.setTool(ToolKind::joint);
        f.press({300, 200});
        f.key(Qt::Key_Escape);
        f.release({300, 200});
        QCOMPARE(counterOf(f, "C1").joints.size(), std::size_t(2));
        f.canvas.setTool(ToolKind::select);
        QVERIFY(!f.document.isPreviewing());
    }

    void jointIsDraggedAndDeleted()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::joint);
        f.click({1000, 200});
        f.canvas.setTool(ToolKind::joint);
        f.hover({1005, 400});
        QVERIFY(f.canvas.hint().contains("Delete"));
        f.drag({1005, 400}, {1203, 450});
        QCOMPARE(counterOf(f, "C1").joints.size(), std::size_t(1));
        QCOMPARE(counterOf(f, "C1").joints.front().from.x, 1200.0);
        QCOMPARE(f.undoText(), QString("Move joint"));
        f.canvas.setTool(ToolKind::joint);
        f.dragHalf({1200, 400}, {1500, 450});
        f.key(Qt::Key_Escape);
        f.release({1500, 450});
        QCOMPARE(counterOf(f, "C1").joints.front().from.x, 1200.0);
        f.hover({1200, 300});
        f.key(Qt::Key_Delete);
        QVERIFY(counterOf(f, "C1").joints.empty());
        QCOMPARE(f.committed().parts.size(), std::size_t(1));
        f.document.undoStack()->undo();
        QCOMPARE(counterOf(f, "C1").joints.size(), std::size_t(1));
    }

    void jointTheOtherWay()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::joint);
        f.click({1000, 200}, Qt::ShiftModifier);
        const Joint& joint = counterOf(f, "C1").joints.front();
        QCOMPARE(joint.from.y, joint.to.y);
        QCOMPARE(std::abs(joint.to.x - joint.from.x), 1800.0);
    }

    void rib()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::rib);
        f.click({500, 200});
        QCOMPARE(counterOf(f, "C1").ribs.size(), std::size_t(1));
        QCOMPARE(counterOf(f, "C1").ribs.front().from.x, 500.0);
        f.document.undoStack()->undo();
        QVERIFY(counterOf(f, "C1").ribs.empty());
        f.canvas.setTool(ToolKind::rib);
        f.hover({700, 200});
        f.canvas.setTool(ToolKind::select);
        QVERIFY(f.plan() == f.committed());
    }

    // Site
    void waterByClickAndTyped()
    {
        CanvasFixture f;
        f.canvas.startAddingFixture(FixtureKind::water);
        f.click({1200, 300});
        QCOMPARE(f.committed().site.fixtures.front().at, (Point{1200, 300}));
        QCOMPARE(f.selection.fixture(), QString("water"));
        f.canvas.startAddingFixture(FixtureKind::power);
        f.hover({100, 100});
        f.type("1500 250");
        QCOMPARE(f.committed().site.fixtures.back().at, (Point{1500, 250}));
        f.document.undoStack()->undo();
        QCOMPARE(f.committed().site.fixtures.size(), std::size_t(1));
    }

    void wallByDrag()
    {
        CanvasFixture f;
        f.canvas.startAddingFixture(FixtureKind::wall);
        f.drag({0, 1000}, {2000, 1240});
        QCOMPARE(*f.committed().site.fixtures.front().size, (Size{2000, 240}));
        f.canvas.startAddingFixture(FixtureKind::wall);
        f.dragHalf({0, 0}, {1000, 200});
        f.key(Qt::Key_Escape);
        f.release({1000, 200});
        QCOMPARE(f.committed().site.fixtures.size(), std::size_t(1));
    }

    // Measuring
    void measure()
    {
        CanvasFixture f(withCounter());
        f.canvas.setTool(ToolKind::measure);
        QSignalSpy text(&f.canvas, &Canvas::measureTextChanged);
        f.click({10, 10});      // snaps to the corner
        f.hover({1790, 590});
        QVERIFY2(f.pointerText().contains("1897"), qPrintable(f.pointerText()));  // sqrt(1800^2 + 600^2) = 1897.4
        f.click({1790, 590});
        QVERIFY(text.last().first().toString().contains("1800"));
        QCOMPARE(f.undoCount(), 0);
        f.drag({0, 0}, {0, 600});
        QVERIFY2(text.last().first().toString().contains("600"), qPrintable(text.last().first().toString()));
        f.click({500, 1000});
        QVERIFY(f.canvas.isGesturing());
        f.key(Qt::Key_Escape);
        QVERIFY(!f.canvas.isGesturing());
    }
};

QTEST_MAIN(DrawToolsTest)
#include "draw_tools_test.moc"
