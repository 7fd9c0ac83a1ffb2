#include <algorithm>
#include <cmath>
#include <set>

#include <QtTest>

#include "sample_plans.h"
#include "ui/drawing/part_painter.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

double pathArea(const QPainterPath& path)
{
    double area = 0.0;
    for (const QPolygonF& polygon : path.toSubpathPolygons()) {
        double twice = 0.0;
        for (qsizetype i = 0; i < polygon.size(); ++i) {
            const QPointF a = polygon[i];
            const QPointF b = polygon[(i + 1) % polygon.size()];
            twice += a.x() * b.y() - b.x() * a.y();
        }
        area += twice / 2.0;
    }
    return std::fabs(area);
}

}  // namespace

class PartShapeTest : public QObject {
    Q_OBJECT

private slots:
    void shapesFromAboveCoverTheFootprint()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            for (const PartPtr& part : plan.parts) {
                const double expected = std::fabs(signedArea(footprint(*part)));
                const double drawn = pathArea(partShape(plan, *part, Projection::above()));
                QVERIFY2(std::fabs(drawn - expected) <= 1e-6 * expected, part->id.c_str());
            }
        }
    }

    void cutoutsKeepTheirArea()
    {
        const Counter counter = sinkCounter();
        const PartPtr part = makePart("C1", counter, {{200, 300}, 30.0});
        const double pi = 3.14159265358979323846;
        const double sink = pathArea(cutoutShape(*part, counter.cutouts[0], Projection::above()));
        const double tap = pathArea(cutoutShape(*part, counter.cutouts[1], Projection::above()));
        QVERIFY(std::fabs(sink - 500.0 * 400.0) < 1e-3);
        QVERIFY(std::fabs(tap - pi * 35.0 * 35.0 / 4.0) < 0.01);
    }

    void elevationShapesStandBetweenTheirLevels()
    {
        for (const double look : {90.0, 0.0, 30.0}) {
            const Projection projection = Projection::front(look);
            for (const std::string& name : samplePlanNames()) {
                const Plan plan = samplePlan(name);
                for (const PartPtr& part : plan.parts) {
                    const QRectF box = partShape(plan, *part, projection).boundingRect();
                    const Levels levels = levelsOf(plan, *part);
                    double low = 1e9;
                    double high = -1e9;
                    for (const Point& point : footprint(*part)) {
                        low = std::min(low, projection.map(point).x());
                        high = std::max(high, projection.map(point).x());
                    }
                    QVERIFY2(std::fabs(box.left() - low) < 1e-6 && std::fabs(box.right() - high) < 1e-6,
                             part->id.c_str());
                    QVERIFY2(std::fabs(-box.bottom() - levels.lowMm) < 1e-6 &&
                                 std::fabs(-box.top() - levels.highMm) < 1e-6,
                             part->id.c_str());
                }
            }
        }
    }

    void aRimOnOneEdgeHangsOnlyThere()
    {
        Counter counter = sinkCounter();
        counter.cutouts.clear();
        counter.rim->edges = std::vector<int>{1};
        counter.rim->depthMm = 90.0;
        Plan plan;
        plan.parts = {makePart("C1", counter)};
        // Edge 1 is the right end: seen from the front it is a deep line at the right of a thin slab.
        const double front = pathArea(partShape(plan, *plan.parts[0], Projection::front(90.0)));
        QCOMPARE(front, 1800.0 * 40.0);
        const double fromRight = pathArea(partShape(plan, *plan.parts[0], Projection::front(180.0)));
        QCOMPARE(fromRight, 600.0 * 90.0);
    }

    void everyPartIsPaintedOnce()
    {
        for (const Projection& projection : {Projection::above(), Projection::front(90.0)}) {
            const Plan plan = samplePlan("two-level-bar");
            std::set<const Part*> seen;
            for (const Part* part : paintOrder(plan, projection)) {
                QVERIFY(seen.insert(part).second);
            }
            QCOMPARE(seen.size(), plan.parts.size());
        }
    }

    void nearIsPaintedAfterFar()
    {
        Plan plan;
        Support support;
        support.lengthMm = 600;
        support.widthMm = 100;
        plan.parts = {makePart("S1", support, {{0, 0}, 0.0}), makePart("S2", support, {{0, 500}, 0.0})};
        const auto fromFront = paintOrder(plan, Projection::front(90.0));
        QCOMPARE(fromFront.back()->id, std::string("S1"));
        const auto fromBehind = paintOrder(plan, Projection::front(270.0));
        QCOMPARE(fromBehind.back()->id, std::string("S2"));
    }

    void whatLiesUnderACounterIsPaintedOverIt()
    {
        Plan plan;
        Support support;
        Appliance oven;
        oven.on = "C1";
        oven.size = {400, 400};
        oven.heightMm = 300;
        plan.parts = {makePart("A1", oven, {{100, 100}, 0.0}), makePart("S1", support, {{100, 100}, 0.0}),
                      makePart("C1", sinkCounter())};
        std::vector<std::string> order;
        for (const Part* part : paintOrder(plan, Projection::above())) {
            order.push_back(part->id);
        }
        QCOMPARE(order, (std::vector<std::string>{"C1", "S1", "A1"}));
    }

    void boundsHoldEverything()
    {
        for (const Projection& projection : {Projection::above(), Projection::front(90.0)}) {
            for (const std::string& name : samplePlanNames()) {
                const Plan plan = samplePlan(name);
                const QRectF all = drawingBounds(plan, projection).adjusted(-1e-6, -1e-6, 1e-6, 1e-6);
                QVERIFY(all.contains(partsBounds(plan, projection)));
                for (const PartPtr& part : plan.parts) {
                    QVERIFY(all.contains(partShape(plan, *part, projection).boundingRect()));
                }
                for (const Fixture& fixture : plan.site.fixtures) {
                    const QRectF box = fixtureShape(fixture, projection).boundingRect();
                    QVERIFY(box.isNull() || all.contains(box));
                }
            }
        }
        QCOMPARE(drawingBounds(Plan(), Projection::above()).size(), QSizeF(1000.0, 1000.0));
        QVERIFY(partsBounds(Plan(), Projection::above()).isNull());
    }
};

QTEST_APPLESS_MAIN(PartShapeTest)
#include "part_shape_test.moc"
