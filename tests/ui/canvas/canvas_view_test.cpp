#include <QDragEnterEvent>
#include <QMimeData>
#include <QPointingDevice>
#include <QScreen>
#include <QWheelEvent>

#include "canvas_fixture.h"
#include "ui/canvas/grid.h"
#include "ui/canvas/new_parts.h"
#include "ui/canvas/strength_legend.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

Plan twoCounters()
{
    Plan plan;
    plan = withNewPart(plan, newPart(plan, PartKind::counter, {{0, 0}, {1800, 600}}));
    plan = withNewPart(plan, newPart(plan, PartKind::counter, {{2200, 0}, {2800, 600}}));
    return plan;
}

Box boundsOfPart(const CanvasFixture& f, const char* id) { return *boundsOf(footprint(f.part(id))); }

bool isNear(Point a, Point b, double within) { return distance(a, b) <= within; }

void wheel(CanvasFixture& f, Point at, QPoint pixels, QPoint angle, Qt::KeyboardModifiers modifiers = {},
           Qt::ScrollPhase phase = Qt::NoScrollPhase)
{
    QWidget* viewport = f.view().viewport();
    const QPointF local = f.px(at);
    QWheelEvent event(local, viewport->mapToGlobal(local), pixels, angle, Qt::NoButton, modifiers, phase, false);
    QApplication::sendEvent(viewport, &event);
}

/// What stands on the screen, painted bit by bit as it changed.
QImage screenOf(CanvasFixture& f)
{
    QCoreApplication::processEvents();
    return f.canvas.screen()->grabWindow(f.canvas.winId()).toImage().convertToFormat(QImage::Format_RGB32);
}

int differentPixels(const QImage& a, const QImage& b)
{
    if (a.size() != b.size()) return -1;
    int count = 0;
    for (int y = 0; y < a.height(); ++y) {
        for (int x = 0; x < a.width(); ++x) {
            const QColor p = a.pixelColor(x, y);
            const QColor q = b.pixelColor(x, y);
            const int off = std::abs(p.red() - q.red()) + std::abs(p.green() - q.green())
                + std::abs(p.blue() - q.blue());
            if (off > 60) ++count;
        }
    }
    return count;
}

}  // namespace

class CanvasViewTest : public QObject {
    Q_OBJECT

private:
    /// The same picture whether it was painted bit by bit or at once.
    void compare(CanvasFixture& f, const char* when)
    {
        f.canvas.findChild<PointerLabel*>()->say({});
        // Its mark runs by the clock, not by what happens on the sheet.
        f.canvas.findChild<StrengthLegend*>()->setRefining(false);
        // Strength, hours and remedies come when they are found: both pictures must be of the same figures.
        QImage bits;
        QImage whole;
        AssessmentPtr seen;
        do {
            seen = f.live.assessment();
            QCoreApplication::processEvents();
            bits = screenOf(f);
            whole = f.canvas.grab().toImage().convertToFormat(QImage::Format_RGB32);
        } while (f.live.assessment() != seen);
        const int count = differentPixels(bits, whole);
        if (count != 0) {
            keepPicture(f.canvas, QString("whole-%1").arg(when));
            const QString folder = qEnvironmentVariable("YARDCAST_PICTURES");
            if (!folder.isEmpty()) bits.save(QDir(folder).filePath(QString("bits-%1.png").arg(when)));
        }
        QVERIFY2(count == 0, qPrintable(QString("%1: %2 pixels were left stale").arg(when).arg(count)));
    }

private slots:
    void wheelZoomsAtThePointer()
    {
        CanvasFixture f(twoCounters());
        const Point at{1730, 420};
        const double before = f.view().pixelsPerMm();
        const QPointF px = f.px(at);
        wheel(f, at, {}, {0, 120});
        QVERIFY(f.view().pixelsPerMm() > before * 1.15);
        QVERIFY(isNear(f.at(px), at, 1.5 / f.view().pixelsPerMm()));
        for (int i = 0; i < 40; ++i) wheel(f, f.at(px), {}, {0, 15});
        for (int i = 0; i < 40; ++i) wheel(f, f.at(px), {}, {0, -15});
        // No drift: the same point is still under the pointer, to the pixel.
        QVERIFY(isNear(f.at(px), at, 2.0 / f.view().pixelsPerMm()));
    }

    void zoomHasLimits()
    {
        CanvasFixture f(twoCounters());
        for (int i = 0; i < 200; ++i) wheel(f, {500, 300}, {}, {0, 1200});
        QCOMPARE(f.view().pixelsPerMm(), kMostPixelsPerMm);
        for (int i = 0; i < 200; ++i) wheel(f, {500, 300}, {}, {0, -1200});
        QCOMPARE(f.view().pixelsPerMm(), kLeastPixelsPerMm);
    }

    void twoFingersPanAndWithCtrlZoom()
    {
        CanvasFixture f(twoCounters());
        const double scale = f.view().pixelsPerMm();
        const Point under = f.at({300, 300});
        wheel(f, {500, 300}, {40, -24}, {40, -24}, {}, Qt::ScrollUpdate);
        QCOMPARE(f.view().pixelsPerMm(), scale);
        QVERIFY(isNear(f.at({340, 276}), under, 1.0 / scale));
        wheel(f, {500, 300}, {0, 60}, {0, 60}, Qt::ControlModifier, Qt::ScrollUpdate);
        QVERIFY(f.view().pixelsPerMm() > scale);
    }

    void middleButtonAndSpacePan()
    {
        CanvasFixture f(twoCounters());
        const auto panned = [&](const auto& pan) {
            const Point before = f.at({300, 300});
            pan();
            return f.at({300, 300}) - before;
        };
        const QPointF a(300, 300);
        const QPointF b(360, 340);
        const auto mouse = [&](QEvent::Type type, QPointF px, Qt::MouseButton button, Qt::MouseButtons buttons) {
            QMouseEvent event(type, px, f.view().viewport()->mapToGlobal(px), button, buttons, Qt::NoModifier);
            QApplication::sendEvent(f.view().viewport(), &event);
        };
        const Point middle = panned([&] {
            mouse(QEvent::MouseButtonPress, a, Qt::MiddleButton, Qt::MiddleButton);
            mouse(QEvent::MouseMove, b, Qt::NoButton, Qt::MiddleButton);
            mouse(QEvent::MouseButtonRelease, b, Qt::MiddleButton, Qt::NoButton);
        });
        QVERIFY(isNear(middle, {-240, 160}, 6.0));
        const Point space = panned([&] {
            QTest::keyPress(&f.canvas, Qt::Key_Space);
            mouse(QEvent::MouseButtonPress, a, Qt::LeftButton, Qt::LeftButton);
            mouse(QEvent::MouseMove, b, Qt::NoButton, Qt::LeftButton);
            mouse(QEvent::MouseButtonRelease, b, Qt::LeftButton, Qt::NoButton);
            QTest::keyRelease(&f.canvas, Qt::Key_Space);
        });
        QVERIFY(isNear(space, {-240, 160}, 6.0));
        QVERIFY(f.selection.isEmpty());
        QCOMPARE(f.undoCount(), 0);
    }

    void fitShowsEverything()
    {
        CanvasFixture f(twoCounters(), 1.0, {9000, 9000});
        f.canvas.zoomFit();
        for (const Point p : {Point{0, 0}, Point{2800, 600}}) {
            QVERIFY(f.view().viewport()->rect().contains(f.px(p).toPoint()));
        }
        f.selection.setParts({"C2"});
        const double all = f.view().pixelsPerMm();
        f.canvas.zoomToChosen();
        QVERIFY(f.view().pixelsPerMm() > all);
        QVERIFY(isNear(f.at(QPointF(f.view().viewport()->rect().center())), {2500, 300}, 5.0));
    }

    void aChangeOfThePlanKeepsTheView()
    {
        CanvasFixture f(twoCounters());
        const ViewState before = f.canvas.viewState();
        f.document.apply("Away", [](const Plan& plan) { return moveParts(plan, {"C2"}, {4000, 3000}); });
        f.document.undoStack()->undo();
        f.document.apply("Gone", [](const Plan& plan) { return removeParts(plan, {"C1", "C2"}); });
        QCOMPARE(f.canvas.viewState(), before);
        f.canvas.resize(900, 600);
        QCoreApplication::processEvents();
        QCOMPARE(f.canvas.viewState(), before);
    }

    void eachProjectionRemembersItsView()
    {
        CanvasFixture f(twoCounters());
        const ViewState above = f.canvas.viewState();
        QSignalSpy turned(&f.canvas, &Canvas::projectionChanged);
        f.canvas.setProjection(Projection::front());
        f.canvas.zoomIn();
        const ViewState front = f.canvas.viewState();
        f.canvas.setProjection(Projection::above());
        QCOMPARE(f.canvas.viewState(), above);
        f.canvas.setProjection(Projection::front());
        QCOMPARE(f.canvas.viewState(), front);
        QCOMPARE(turned.count(), 3);
    }

    void drawingTurnsTheViewBack()
    {
        CanvasFixture f(twoCounters());
        f.canvas.setProjection(Projection::front());
        f.canvas.setTool(ToolKind::counter);
        QVERIFY(f.canvas.projection().isAbove());
        f.canvas.setProjection(Projection::front());
        QCOMPARE(f.canvas.tool(), ToolKind::select);
    }

    void gridSuitsEveryZoom()
    {
        for (double scale = kLeastPixelsPerMm; scale <= kMostPixelsPerMm; scale *= 1.07) {
            const GridPitch grid = gridPitch(1.0 / scale);
            QVERIFY(grid.fineMm * scale >= kLeastLinePx);
            QVERIFY(grid.fineMm * scale < kLeastLinePx * 5.1 || grid.fineMm == 1.0);
            QVERIFY(grid.snapMm >= 1.0 && grid.snapMm <= grid.fineMm);
            // A pointer is never farther than the snap radius from the grid.
            QVERIFY(grid.snapMm * scale / 2.0 < 8.0 || grid.snapMm == 1.0);
            const RulerPitch ruler = rulerPitch(1.0 / scale);
            QVERIFY(ruler.labelMm * scale >= 50.0);
            QVERIFY(ruler.tickMm * scale >= 4.0);
            const double bar = scaleBarMm(1.0 / scale, 160.0) * scale;
            QVERIFY(bar <= 160.0 && bar >= 60.0);
        }
    }

    void onlyChangedPartsAreTouched()
    {
        CanvasFixture f(samplePlan("two-level-bar.yardplan"));
        // The scene belongs to the view; its items stay the same objects but for what changed.
        const QList<QGraphicsItem*> before = f.view().scene()->items();
        f.document.apply("Move", [](const Plan& plan) { return moveParts(plan, {plan.parts[0]->id}, {10, 0}); });
        const QList<QGraphicsItem*> after = f.view().scene()->items();
        QCOMPARE(QSet<QGraphicsItem*>(before.begin(), before.end()), QSet<QGraphicsItem*>(after.begin(), after.end()));
    }

    void paintedBitByBitAsAtOnce_data()
    {
        QTest::addColumn<int>("stage");
        QTest::addColumn<bool>("above");
        for (const Stage stage : kStages) {
            QTest::addRow("above, stage %d", static_cast<int>(stage)) << static_cast<int>(stage) << true;
        }
        QTest::addRow("elevation") << static_cast<int>(Stage::layOut) << false;
        QTest::addRow("elevation, strength") << static_cast<int>(Stage::strength) << false;
        QTest::addRow("elevation, lift") << static_cast<int>(Stage::lift) << false;
    }

    void paintedBitByBitAsAtOnce()
    {
        QFETCH(int, stage);
        QFETCH(bool, above);
        CanvasFixture f(samplePlan("corner-kitchen.yardplan"), 0.22, {1700, 1300});
        f.canvas.setStage(static_cast<Stage>(stage));
        if (!above) f.canvas.setProjection(Projection::front());
        f.settle();
        compare(f, "at first");
        // Each piece painted alone shows what it shows in the whole.
        QWidget* viewport = f.view().viewport();
        for (int y = 0; y < viewport->height(); y += 170) {
            for (int x = 0; x < viewport->width(); x += 230) viewport->repaint(x, y, 230, 170);
        }
        compare(f, "piece by piece");

        const Plan& plan = f.plan();
        const auto grip = [&](const std::string& id) {
            const Part& part = *findPart(plan, id);
            const Box box = *boundsOf(footprint(part));
            const Levels levels = levelsOf(plan, part);
            if (above) return Point{box.low.x + 40, box.low.y + 60};
            return Point{box.centre().x, (levels.lowMm + levels.highMm) / 2};
        };
        const Point at = grip("B1");
        f.click(at);
        f.settle();
        compare(f, "chosen");
        f.dragHalf(at, at + Point{-330, 260});
        f.settle();
        compare(f, "in a drag");
        for (int i = 0; i < 12; ++i) {
            f.moveTo(at + Point{-330.0 + i * 55, 260.0 - i * 30});
            QCoreApplication::processEvents();
        }
        f.settle();
        compare(f, "after many steps");
        f.release(at + Point{275, -70});
        f.settle();
        compare(f, "let go");
        f.document.undoStack()->undo();
        f.settle();
        compare(f, "undone");
        for (const Point p : {Point{1900, 2300}, Point{2700, 1500}, Point{300, 300}, Point{2800, 800}}) {
            f.hover(p);
            QCoreApplication::processEvents();
        }
        f.selection.clear();
        f.settle();
        compare(f, "hovered about");
        if (above) {
            f.canvas.startAddingCutout(CutoutPurpose::sink, CutoutShape::rectangle);
            for (const Point p : {Point{900, 2300}, Point{2000, 2350}, Point{2900, 1700}, Point{600, 600}}) {
                f.hover(p);
                QCoreApplication::processEvents();
            }
            f.settle();
            compare(f, "a ghost about");
            f.canvas.setTool(ToolKind::counter);
            f.dragHalf({300, 300}, {1500, 900});
            f.moveTo({800, 500});
            f.settle();
            compare(f, "drawing");
            f.key(Qt::Key_Escape);
            f.release({800, 500});
            f.settle();
            compare(f, "drawing cancelled");
        }
        f.canvas.zoomIn();
        f.settle();
        compare(f, "zoomed");
    }

    // Things from the tray
    void dropFromTheTray_data()
    {
        QTest::addColumn<QString>("word");
        QTest::addColumn<QString>("made");
        QTest::newRow("counter") << "counter" << "C3";
        QTest::newRow("support") << "support" << "S1";
        QTest::newRow("panel") << "panel" << "P1";
        QTest::newRow("front") << "front" << "F1";
        QTest::newRow("appliance") << "appliance" << "A1";
    }

    void dropFromTheTray()
    {
        QFETCH(QString, word);
        QFETCH(QString, made);
        CanvasFixture f(twoCounters());
        drop(f, word, {900, 305}, true);
        QVERIFY(findPart(f.committed(), made.toStdString()) != nullptr);
        QCOMPARE(f.selection.parts(), QStringList{made});
        QCOMPARE(f.undoCount(), 1);
        f.document.undoStack()->undo();
        QVERIFY(f.committed() == twoCounters());
    }

    void sinkFromTheTray()
    {
        CanvasFixture f(twoCounters());
        drop(f, "sink", {905, 305}, true);
        const auto& counter = f.body<Counter>("C1");
        QCOMPARE(counter.cutouts.size(), std::size_t(1));
        QCOMPARE(counter.cutouts.front().centre, (Point{900, 300}));
        drop(f, "sink", {900, 1500}, true);  // beside every counter
        QCOMPARE(f.undoCount(), 1);
        QVERIFY(!f.document.isPreviewing());
    }

    void waterFromTheTray()
    {
        CanvasFixture f(twoCounters());
        drop(f, "water", {500, 1200}, true);
        QCOMPARE(f.committed().site.fixtures.size(), std::size_t(1));
        QCOMPARE(f.committed().site.fixtures.front().kind, FixtureKind::water);
    }

    void leavingTakesItBack()
    {
        CanvasFixture f(twoCounters());
        drop(f, "counter", {900, 1500}, false);
        QVERIFY(f.plan() == twoCounters());
        QCOMPARE(f.undoCount(), 0);
    }

    void otherThingsAreRefused()
    {
        CanvasFixture f(twoCounters());
        QMimeData data;
        data.setText("counter");
        QDragEnterEvent enter({300, 300}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        enter.ignore();
        QApplication::sendEvent(&f.canvas, &enter);
        QVERIFY(!enter.isAccepted());
        data.setData(kPartKindMime, "no such thing");
        QDragEnterEvent again({300, 300}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        again.ignore();
        QApplication::sendEvent(&f.canvas, &again);
        QVERIFY(!again.isAccepted());
    }

    // Elevation
    void elevationMovesAlongAndUp()
    {
        CanvasFixture f(twoCounters());
        f.canvas.setProjection(Projection::front());
        f.canvas.setViewState({QPointF(1400, -500), 0.3});
        f.drag({900, 880}, {1000, 980});
        QCOMPARE(f.body<Counter>("C1").topMm, 1000.0);
        QCOMPARE(boundsOfPart(f, "C1").low, (Point{100, 0}));
        f.document.undoStack()->undo();
        QCOMPARE(f.body<Counter>("C1").topMm, 900.0);
        QCOMPARE(boundsOfPart(f, "C1").low, (Point{0, 0}));
    }

    void elevationChangesHeights()
    {
        Plan plan = twoCounters();
        plan = withNewPart(plan, newPart(plan, PartKind::support, {{3300, 0}, {3500, 600}}));  // 860 high
        CanvasFixture f(plan);
        f.canvas.setProjection(Projection::front());
        f.canvas.setViewState({QPointF(2500, -500), 0.3});
        f.selection.setParts({"S1"});
        f.settle();
        f.dragHalf({3400, 860}, {3400, 1003});
        QVERIFY2(f.pointerText().contains("1000 mm high"), qPrintable(f.pointerText()));
        f.release({3400, 1003});
        QCOMPARE(f.body<Support>("S1").heightMm, 1000.0);
        QCOMPARE(f.body<Support>("S1").baseMm, 0.0);
        f.settle();
        f.dragHalf({3400, 0}, {3400, 60});
        f.type("900");
        f.release({3400, 60});
        QCOMPARE(f.body<Support>("S1").heightMm, 900.0);
        QCOMPARE(f.body<Support>("S1").baseMm, 100.0);
        f.settle();
        f.dragHalf({3400, 1000}, {3400, 1200});
        f.key(Qt::Key_Escape);
        f.release({3400, 1200});
        QCOMPARE(f.body<Support>("S1").heightMm, 900.0);
    }

    void elevationSnapsToLevels()
    {
        CanvasFixture f(twoCounters());
        f.document.apply("Raise", [](const Plan& plan) { return raiseParts(plan, {"C2"}, 200.0); });
        f.canvas.setProjection(Projection::front());
        f.canvas.setViewState({QPointF(1400, -700), 0.3});
        QSignalSpy measure(&f.canvas, &Canvas::measureTextChanged);
        f.dragHalf({2500, 1080}, {2503, 893});  // within 8 px of the level of C1
        QVERIFY2(measure.last().first().toString().contains("C1"), qPrintable(measure.last().first().toString()));
        f.release({2503, 893});
        QCOMPARE(f.body<Counter>("C2").topMm, 900.0);
    }

    void elevationFigureIsTypedOver()
    {
        CanvasFixture f(twoCounters());
        f.canvas.setProjection(Projection::front());
        f.canvas.setViewState({QPointF(1400, -500), 0.3});
        f.selection.setParts({"C2"});
        f.settle();
        // The level stands to the right of the part, half way up, turned.
        const QPointF beside = f.px({2800, 450}) + QPointF(18.0, 0.0);
        f.click(f.at(beside));
        QVERIFY(f.field().isOpen());
        QCOMPARE(f.field().text(), QString("900"));
        f.typeInField("96 cm");
        QCOMPARE(f.body<Counter>("C2").topMm, 960.0);
    }

    void elevationNudges()
    {
        CanvasFixture f(twoCounters());
        f.canvas.setProjection(Projection::front());
        f.selection.setParts({"C2"});
        f.key(Qt::Key_Up);
        f.key(Qt::Key_Right);
        QCOMPARE(f.body<Counter>("C2").topMm, 910.0);
        QCOMPARE(boundsOfPart(f, "C2").low.x, 2210.0);
    }

    void elevationFromTheSide()
    {
        CanvasFixture f(twoCounters());
        f.canvas.setProjection(Projection::front(180.0));  // looking to the left: right in view is back in plan
        f.canvas.setViewState({QPointF(300, -500), 0.3});
        f.selection.setParts({"C2"});
        f.key(Qt::Key_Right);
        QCOMPARE(boundsOfPart(f, "C2").low, (Point{2200, 10}));
    }

private:
    static void drop(CanvasFixture& f, const QString& word, Point at, bool letGo)
    {
        QMimeData data;
        data.setData(kPartKindMime, word.toUtf8());
        const QPoint to = f.view().viewport()->mapTo(&f.canvas, f.px(at).toPoint());
        QDragEnterEvent enter(to, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&f.canvas, &enter);
        QVERIFY(enter.isAccepted());
        QDragMoveEvent move(to, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&f.canvas, &move);
        if (letGo) {
            QDropEvent dropped(to, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
            QApplication::sendEvent(&f.canvas, &dropped);
        } else {
            QDragLeaveEvent leave;
            QApplication::sendEvent(&f.canvas, &leave);
        }
        QCoreApplication::processEvents();
    }
};

QTEST_MAIN(CanvasViewTest)
#include "canvas_view_test.moc"
