#include <QLabel>

#include "tests/ui/canvas/canvas_fixture.h"
#include "ui/canvas/strength_legend.h"
#include "ui/live/strength_choice.h"
#include "ui/look/use_ramp.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

Plan oneSlab()
{
    Counter counter;
    counter.outline = {{0, 0}, {1600, 0}, {1600, 600}, {0, 600}};
    counter.thicknessMm = 60.0;
    counter.topMm = 900.0;
    counter.mix = "worktop";
    Plan plan;
    plan.mixes.emplace_back().id = "worktop";
    Part slab;
    slab.id = "C1";
    slab.body = counter;
    plan.parts.push_back(std::make_shared<const Part>(slab));
    return plan;
}

QString measured(QSignalSpy& spy)
{
    return spy.isEmpty() ? QString() : spy.last().first().toString().replace(QChar(0xa0), u' ');
}

}  // namespace

class StrengthStageTest : public QObject {
    Q_OBJECT

private slots:
    void theSlabIsColouredAtItsStageOnly()
    {
        CanvasFixture f(oneSlab(), 0.4, {800, 300});
        f.settle();
        const QPoint at = f.px({160, 450}).toPoint();
        const auto colour = [&] { return f.view().viewport()->grab().toImage().pixelColor(at); };
        const QColor before = colour();
        f.canvas.setStage(Stage::strength);
        f.settle();
        // A tenth of the way to 160 %.
        const QColor wanted = useColour(16.0);
        const QColor there = colour();
        QVERIFY2(std::abs(there.red() - wanted.red()) <= 8 && std::abs(there.blue() - wanted.blue()) <= 8,
                 qPrintable(there.name() + u' ' + wanted.name()));
        keepPicture(f.canvas, QStringLiteral("strength"));
        f.canvas.setStage(Stage::layOut);
        QCOMPARE(colour(), before);
    }

    void theLegendSaysWhatIsShown()
    {
        CanvasFixture f(oneSlab(), 0.4, {800, 300});
        auto* legend = f.canvas.findChild<StrengthLegend*>();
        f.settle();
        QVERIFY(!legend->isVisible());
        f.canvas.setStage(Stage::strength);
        f.settle();
        QVERIFY(legend->isVisible());
        QCOMPARE(legend->lines().size(), 1);
        const QString before = legend->lines().first();
        f.live.strengthChoice().setWhich(StrengthCase::tilt);
        QVERIFY(legend->lines().first() != before);
        f.canvas.setProjection(Projection::front());
        f.settle();
        QCOMPARE(legend->lines().size(), 2);
        QVERIFY(legend->lines().last().contains("times"));
        f.document.reset({});
        QTRY_VERIFY(!legend->isVisible());
    }

    void aMarkRunsWhileFiguresAreRefined()
    {
        CanvasFixture f(oneSlab(), 0.4, {800, 300});
        auto* legend = f.canvas.findChild<StrengthLegend*>();
        f.canvas.setStage(Stage::strength);
        f.settle();
        QVERIFY(!legend->isRunning());
        f.document.preview([](const Plan& plan) {
            return changeCounter(plan, "C1", [](Counter& counter) { counter.thicknessMm = 70.0; });
        });
        QTRY_VERIFY(legend->isRunning());
        f.document.commitPreview("thicker");
        QTRY_VERIFY(!legend->isRunning());
    }

    void hoveringGivesTheFiguresOfThePlace()
    {
        CanvasFixture f(oneSlab(), 0.4, {800, 300});
        f.canvas.setStage(Stage::strength);
        f.settle();
        QSignalSpy spy(&f.canvas, &Canvas::measureTextChanged);
        f.hover({800, 300});
        const QString said = measured(spy);
        QVERIFY2(said.contains("80 %") && said.contains("1.00 MPa") && said.contains("underside") &&
                     said.contains("0.50 mm"),
                 qPrintable(said));
        f.hover({800, 900});
        QVERIFY(!measured(spy).contains("MPa"));
        f.canvas.setStage(Stage::layOut);
        f.hover({810, 300});
        QVERIFY(!measured(spy).contains("MPa"));
    }

    void theChosenCaseIsPainted()
    {
        CanvasFixture f(oneSlab(), 0.4, {800, 300});
        f.canvas.setStage(Stage::strength);
        f.settle();
        const QPoint at = f.px({1300, 450}).toPoint();
        const auto lightness = [&] { return f.view().viewport()->grab().toImage().pixelColor(at).lightness(); };
        const int worst = lightness();
        f.live.strengthChoice().setWhich(StrengthCase::tilt);
        QCoreApplication::processEvents();
        // Half as much is used: paler.
        QVERIFY(lightness() > worst + 20);
    }
};

QTEST_MAIN(StrengthStageTest)
#include "strength_stage_test.moc"
