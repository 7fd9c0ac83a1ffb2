#include "canvas_fixture.h"

using namespace yardcast;
using namespace yardcast::ui;

/// The canvas in its states, for looking at: with YARDCAST_PICTURES set the pictures are kept. It fails when a state
/// paints nothing.
class CanvasPicturesTest : public QObject {
    Q_OBJECT

private:
    static void look(CanvasFixture& fixture, const QString& name)
    {
        fixture.settle();
        const QImage picture = fixture.canvas.grab().toImage();
        QSet<QRgb> colours;
        for (int y = 0; y < picture.height(); y += 3) {
            for (int x = 0; x < picture.width(); x += 3) colours.insert(picture.pixel(x, y));
        }
        QVERIFY2(colours.size() > 8, "the canvas is all but empty");
        keepPicture(fixture.canvas, name);
    }

private slots:
    void empty()
    {
        CanvasFixture fixture;
        fixture.canvas.zoomFit();
        look(fixture, "empty");
    }

    void samples_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<bool>("dark");
        for (const char* name : {"grill-bench", "corner-kitchen", "two-level-bar"}) {
            QTest::addRow("%s", name) << QString(name) << false;
            QTest::addRow("%s dark", name) << QString(name) << true;
        }
    }

    void samples()
    {
        QFETCH(QString, name);
        QFETCH(bool, dark);
        CanvasFixture fixture(samplePlan(name.toStdString() + ".yardplan"));
        if (dark) fixture.canvas.setInk(darkInk());
        fixture.canvas.zoomFit();
        const QString suffix = dark ? "-dark" : "";
        look(fixture, name + suffix);
        const QString first = QString::fromStdString(fixture.plan().parts.front()->id);
        fixture.selection.setParts({first});
        look(fixture, name + "-chosen" + suffix);
        fixture.selection.clear();
        for (const Stage stage : {Stage::steel, Stage::pour, Stage::lift}) {
            fixture.canvas.setStage(stage);
            look(fixture, name + "-stage" + QString::number(static_cast<int>(stage)) + suffix);
        }
        fixture.canvas.setStage(Stage::layOut);
        fixture.canvas.setProjection(Projection::front());
        fixture.selection.setParts({first});
        look(fixture, name + "-front" + suffix);
    }

    void gestures()
    {
        CanvasFixture fixture;
        fixture.canvas.setTool(ToolKind::counter);
        fixture.dragHalf({0, 0}, {1850, 620});
        look(fixture, "drawing");
        fixture.release({1850, 620});
        fixture.canvas.startAddingCutout(CutoutPurpose::sink, CutoutShape::rectangle);
        fixture.hover({925, 312});
        look(fixture, "cutout-ghost");
        fixture.click({925, 312});
        look(fixture, "cutout-chosen");
        fixture.canvas.setTool(ToolKind::support);
        fixture.click({200, 300});
        fixture.canvas.setTool(ToolKind::support);
        fixture.click({1650, 300});
        fixture.selection.setParts({"C1"});
        fixture.settle();
        fixture.dragHalf({1500, 620}, {1250, 1200}, Qt::ControlModifier);
        look(fixture, "step");
        fixture.key(Qt::Key_Escape);
        fixture.release({1250, 1200});
        fixture.canvas.setTool(ToolKind::counter);
        fixture.drag({2200, 0}, {2800, 620});
        fixture.dragHalf({2500, 300}, {2450, 303});
        look(fixture, "moving");
        QTest::keyClicks(&fixture.canvas, "1");
        QTest::keyClicks(fixture.field().findChild<QLineEdit*>(), ".850");
        QTest::keyClick(fixture.field().findChild<QLineEdit*>(), Qt::Key_Return);
        look(fixture, "fault");
    }
};

QTEST_MAIN(CanvasPicturesTest)
#include "pictures_test.moc"
