#include <algorithm>
#include <cmath>
#include <map>

#include <QGuiApplication>
#include <QImage>
#include <QPainter>
#include <QtTest>

#include "sample_plans.h"
#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/level_marks.h"

using namespace yardcast;
using namespace yardcast::ui;
using What = DimensionTarget::What;

namespace {

const Dimension* find(const std::vector<Dimension>& all, What what, const std::string& cutout = {}, int index = -1)
{
    const auto found = std::find_if(all.begin(), all.end(), [&](const Dimension& one) {
        return one.target.what == what && one.target.cutout == cutout && (index < 0 || one.target.index == index);
    });
    return found == all.end() ? nullptr : &*found;
}

double valueOf(const std::vector<Dimension>& all, What what, const std::string& cutout = {}, int index = -1)
{
    const Dimension* dimension = find(all, what, cutout, index);
    return dimension ? dimension->valueMm : -1.0;
}

PaintStyle paperStyle(double mmPerUnit)
{
    PaintStyle style;
    style.ink = paperInk();
    style.onPaper = true;
    style.mmPerUnit = mmPerUnit;
    return style;
}

/// Along the text of the figure, from its left to its right.
QPointF readingDirection(const QPainterPath& figure)
{
    const QPolygonF box = figure.toSubpathPolygons().first();
    const QPointF along = box[1] - box[0];
    return along / std::hypot(along.x(), along.y());
}

}  // namespace

class DimensionTest : public QObject {
    Q_OBJECT

private slots:
    void valuesAreThePartsOwn_data()
    {
        QTest::addColumn<double>("turnDeg");
        QTest::newRow("straight") << 0.0;
        QTest::newRow("turned") << 33.0;
    }

    void valuesAreThePartsOwn()
    {
        QFETCH(double, turnDeg);
        Plan plan;
        plan.parts = {makePart("C1", sinkCounter(), {{250, -40}, turnDeg})};
        const auto all = partDimensions(plan, *plan.parts[0], Projection::above());
        QCOMPARE(valueOf(all, What::edgeLength, {}, 0), 1800.0);
        QCOMPARE(valueOf(all, What::edgeLength, {}, 1), 600.0);
        QCOMPARE(valueOf(all, What::cutoutWidth, "K1"), 500.0);
        QCOMPARE(valueOf(all, What::cutoutDepth, "K1"), 400.0);
        QCOMPARE(valueOf(all, What::cutoutFromLeft, "K1"), 450.0);
        QCOMPARE(valueOf(all, What::cutoutFromRight, "K1"), 850.0);
        QCOMPARE(valueOf(all, What::cutoutFromFront, "K1"), 110.0);
        QCOMPARE(valueOf(all, What::cutoutFromBack, "K1"), 90.0);
        QCOMPARE(valueOf(all, What::cutoutDiameter, "K2"), 35.0);
        QCOMPARE(valueOf(all, What::cutoutFromBack, "K2"), 42.5);
        // Drawn from above nothing is foreshortened: the ends are as far apart as the value says.
        for (const Dimension& one : all) {
            QVERIFY(std::fabs(std::hypot(one.b.x() - one.a.x(), one.b.y() - one.a.y()) - one.valueMm) < 1e-6);
        }
    }

    void edgesOfAnLAreAllThere()
    {
        Counter counter;
        counter.outline = {{0, 0}, {2000, 0}, {2000, 1500}, {1350, 1500}, {1350, 650}, {0, 650}};
        Plan plan;
        plan.parts = {makePart("C1", counter)};
        const auto all = partDimensions(plan, *plan.parts[0], Projection::above());
        const std::vector<double> expected{2000, 1500, 650, 850, 1350, 650};
        for (int i = 0; i < 6; ++i) {
            QCOMPARE(valueOf(all, What::edgeLength, {}, i), expected[static_cast<std::size_t>(i)]);
        }
    }

    void dimensionLinesOfEdgesLieOutside()
    {
        for (const bool clockwise : {false, true}) {
            Counter counter = sinkCounter();
            if (clockwise) {
                std::reverse(counter.outline.begin(), counter.outline.end());
            }
            Plan plan;
            plan.parts = {makePart("C1", counter)};
            const QPainterPath slab = partShape(plan, *plan.parts[0], Projection::above());
            for (const Dimension& one : partDimensions(plan, *plan.parts[0], Projection::above())) {
                if (one.target.what != What::edgeLength) {
                    continue;
                }
                const QPointF along = (one.b - one.a) / one.valueMm;
                const QPointF left(along.y(), -along.x());
                QVERIFY(!slab.contains((one.a + one.b) / 2.0 + left * one.offsetUnits));
            }
        }
    }

    void elevationSaysHeightAndLevel()
    {
        Plan plan;
        Support support;
        support.baseMm = 20.0;
        support.heightMm = 820.0;
        plan.parts = {makePart("C1", sinkCounter()), makePart("S1", support)};
        const Projection front = Projection::front();
        const auto counter = partDimensions(plan, *plan.parts[0], front);
        QCOMPARE(valueOf(counter, What::height), 60.0);
        QCOMPARE(valueOf(counter, What::level), 900.0);
        const auto upright = partDimensions(plan, *plan.parts[1], front);
        QCOMPARE(valueOf(upright, What::height), 820.0);
        QCOMPARE(valueOf(upright, What::level), 840.0);
    }

    void figuresAreReadFromBelowOrRight()
    {
        QImage image(600, 600, QImage::Format_RGB32);
        QPainter painter(&image);
        painter.translate(300, 300);
        const PaintStyle style = paperStyle(4.0);
        for (int degrees = 0; degrees < 360; degrees += 15) {
            const double angle = degrees * 3.14159265358979323846 / 180.0;
            Dimension dimension;
            dimension.a = QPointF(0, 0);
            dimension.b = QPointF(200.0 * std::cos(angle), 200.0 * std::sin(angle));
            dimension.valueMm = 200.0;
            const QPointF reading = readingDirection(paintDimension(painter, dimension, style));
            // To the right, or straight up the sheet (read from the right); never leftwards, never downwards only.
            QVERIFY2(reading.x() > 1e-6 || reading.y() < -0.999, qPrintable(QString::number(degrees)));
        }
    }

    void figuresSayWholeMillimetresOrOneDecimal()
    {
        const auto figure = [](double value, What what = What::edgeLength) {
            Dimension dimension;
            dimension.valueMm = value;
            dimension.target.what = what;
            return dimensionFigure(dimension);
        };
        QCOMPARE(figure(35.0, What::cutoutDiameter), QString(QChar(0x00D8)) + QStringLiteral("35"));
        QCOMPARE(figure(1800.0), QStringLiteral("1800"));
        QCOMPARE(figure(62.5), QStringLiteral("62.5"));
        QCOMPARE(figure(62.04), QStringLiteral("62"));
        QCOMPARE(figure(1799.98), QStringLiteral("1800"));
    }

    void crowdedFiguresMakeWay()
    {
        const PaintStyle style = paperStyle(20.0);
        std::vector<Dimension> chain;
        double x = 0.0;
        for (const double step : {80.0, 40.0, 60.0, 500.0, 40.0, 80.0}) {
            Dimension dimension;
            dimension.a = QPointF(x, 0.0);
            dimension.b = QPointF(x + step, 0.0);
            dimension.valueMm = step;
            chain.push_back(dimension);
            x += step;
        }
        staggerFigures(chain, style);
        QImage image(800, 400, QImage::Format_RGB32);
        QPainter painter(&image);
        std::vector<QRectF> figures;
        for (const Dimension& one : chain) {
            QRectF box = paintDimension(painter, one, style).boundingRect();
            const double inset = 0.1 * box.height();
            box.adjust(inset, inset, -inset, -inset);
            for (const QRectF& other : figures) {
                QVERIFY(!other.intersects(box));
            }
            figures.push_back(box);
        }
        QCOMPARE(chain[3].figureRow, 0);
    }

    void drawingIsMeasuredOutside()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            for (const Projection& projection : {Projection::above(), Projection::front()}) {
                const QRectF parts = partsBounds(plan, projection);
                const auto all = drawingDimensions(plan, projection);
                QVERIFY(!all.empty());
                for (const Dimension& one : all) {
                    const QPointF along = (one.b - one.a) / std::hypot((one.b - one.a).x(), (one.b - one.a).y());
                    const QPointF at = (one.a + one.b) / 2.0 +
                                       QPointF(along.y(), -along.x()) * (one.offsetUnits * 10.0);
                    QVERIFY2(!parts.contains(at), name.c_str());
                }
            }
        }
    }

    void theWholeIsTheSumOfACloseRow()
    {
        Plan plan;
        Counter counter = sinkCounter();
        counter.cutouts.clear();
        plan.parts = {makePart("C1", counter), makePart("C2", counter, {{1804, 0}, 0.0})};
        const auto all = drawingDimensions(plan, Projection::above());
        QCOMPARE(valueOf(all, What::overall), 3604.0);
        QCOMPARE(std::count_if(all.begin(), all.end(), [](const Dimension& one) { return one.valueMm == 1800.0; }), 2);
    }

    void levelsAreMarkedOnce()
    {
        Plan plan;
        plan.parts = {makePart("C1", sinkCounter()), makePart("C2", sinkCounter(), {{2000, 0}, 0.0})};
        const auto marks = levelMarks(plan, Projection::front());
        QCOMPARE(marks.size(), std::size_t{2});
        QCOMPARE(marks[0].figure, QStringLiteral("0"));
        QCOMPARE(marks[1].figure, QStringLiteral("+900"));
        QVERIFY(levelMarks(plan, Projection::above()).empty());
    }

    void theGroundFalls()
    {
        Plan plan;
        plan.site.ground.emplace(Ground{10.0, 2.0, 0.0, {}});
        QCOMPARE(groundLevelMm(plan, {0, 0}), 10.0);
        QCOMPARE(groundLevelMm(plan, {1000, 500}), -10.0);
        plan.site.ground->fallTowardsDeg = 270.0;
        QCOMPARE(groundLevelMm(plan, {1000, 500}), 20.0);
    }
};

QTEST_MAIN(DimensionTest)
#include "dimension_test.moc"
