#include <cmath>

#include <QtTest>

#include "ui/drawing/projection.h"

using namespace yardcast;
using namespace yardcast::ui;

class ProjectionTest : public QObject {
    Q_OBJECT

private slots:
    void aboveGoesThereAndBack()
    {
        const Projection projection = Projection::above();
        for (const Point point : {Point{0, 0}, Point{1800, -620.5}, Point{-12.25, 3.5}}) {
            QCOMPARE(projection.unmap(projection.map(point, 123.0)), point);
        }
    }

    void awayFromThePersonIsUpTheSheet()
    {
        const Projection projection = Projection::above();
        QVERIFY(projection.map({0, 100}).y() < projection.map({0, 0}).y());
        QVERIFY(projection.map({100, 0}).x() > projection.map({0, 0}).x());
    }

    void theFrontKeepsLeftAndRight()
    {
        const Projection projection = Projection::front(90.0);
        QCOMPARE(projection.map({250, 77}, 900.0), QPointF(250.0, -900.0));
        QVERIFY(projection.depth({0, 100}) > projection.depth({0, 0}));
        QCOMPARE(projection.rightwards(), (Point{1.0, 0.0}));
    }

    void frontGivesAlongAndHeight_data()
    {
        QTest::addColumn<double>("lookDeg");
        for (const double look : {0.0, 37.0, 90.0, 180.0, 270.0, -45.0}) {
            QTest::addRow("looking %g", look) << look;
        }
    }

    void frontGivesAlongAndHeight()
    {
        QFETCH(double, lookDeg);
        const Projection projection = Projection::front(lookDeg);
        const Point right = projection.rightwards();
        const SineCosine look = sineCosineDeg(lookDeg);
        // To the right and away from the viewer are at right angles, right being clockwise from the look.
        QVERIFY(std::fabs(dot(right, {look.cosine, look.sine})) < 1e-12);
        QVERIFY(cross({look.cosine, look.sine}, right) < -0.999999);
        const Point point{420.0, -130.0};
        const Point back = projection.unmap(projection.map(point, 860.0));
        QCOMPARE(back.x, dot(point, right));
        QCOMPARE(back.y, 860.0);
        // What the view loses is the depth: both together are the point again.
        const Point again = right * back.x + Point{look.cosine, look.sine} * projection.depth(point);
        QVERIFY(distance(again, point) < 1e-9);
    }

    void aStandingHeightDoesNotMoveFromAbove()
    {
        QCOMPARE(Projection::above().map({5, 6}, 0.0), Projection::above().map({5, 6}, 1000.0));
    }
};

QTEST_APPLESS_MAIN(ProjectionTest)
#include "projection_test.moc"
