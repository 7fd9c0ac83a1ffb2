#include <QtTest>

#include "core/plan/edits.h"
#include "ui/canvas/dimension_edit.h"
#include "ui/canvas/new_parts.h"

using namespace yardcast;
using namespace yardcast::ui;

using What = DimensionTarget::What;

namespace {

Plan planOf(const Ring& outline, double turnDeg = 0.0)
{
    const Plan empty;
    Part part = newCounter(empty, outline);
    part.place.turnDeg = turnDeg;
    return withNewPart(empty, part);
}

const Counter& counterOf(const Plan& plan) { return std::get<Counter>(plan.parts.front()->body); }

double edge(const Plan& plan, int index)
{
    const Ring& ring = counterOf(plan).outline;
    return distance(ring[static_cast<std::size_t>(index)], ring[static_cast<std::size_t>(index + 1) % ring.size()]);
}

DimensionTarget target(What what, int index = -1, const std::string& cutout = {})
{
    return {what, "C1", cutout, index};
}

const Ring kRectangle{{0, 0}, {1800, 0}, {1800, 620}, {0, 620}};
const Ring kEll{{0, 0}, {2000, 0}, {2000, 1500}, {1400, 1500}, {1400, 600}, {0, 600}};

}  // namespace

/// What a figure says after it was typed over is what was typed: the plan is measured again after each edit.
class DimensionEditTest : public QObject {
    Q_OBJECT

private slots:
    void everySideOfARectangle_data()
    {
        QTest::addColumn<int>("index");
        QTest::addColumn<double>("turn");
        for (int i = 0; i < 4; ++i) {
            for (const double turn : {0.0, 30.0, 90.0}) QTest::addRow("side %d, turned %g", i, turn) << i << turn;
        }
    }

    void everySideOfARectangle()
    {
        QFETCH(int, index);
        QFETCH(double, turn);
        const Plan plan = planOf(kRectangle, turn);
        const double old = edge(plan, index);
        const SizeEdit edit = withDimension(plan, target(What::edgeLength, index), old, 777.0);
        QVERIFY2(bool(edit), qPrintable(edit.fault));
        QCOMPARE(edge(edit.plan, index), 777.0);
        QCOMPARE(edge(edit.plan, (index + 1) % 4), edge(plan, (index + 1) % 4));
        // The front left corner stays: it grows to the right and to the back.
        QCOMPARE(counterOf(edit.plan).outline[0], (Point{0, 0}));
        QVERIFY(isRectangle(counterOf(edit.plan).outline));
    }

    void everySideOfAnEll()
    {
        const Plan plan = planOf(kEll);
        for (int i = 0; i < 6; ++i) {
            const double wanted = edge(plan, i) + 55.0;
            const SizeEdit edit = withDimension(plan, target(What::edgeLength, i), edge(plan, i), wanted);
            QVERIFY2(bool(edit), qPrintable(edit.fault));
            QCOMPARE(edge(edit.plan, i), wanted);
        }
    }

    void slantedSide()
    {
        const Plan plan = planOf({{0, 0}, {1800, 0}, {1500, 600}, {0, 600}});
        for (const int i : {0, 1, 2, 3}) {
            const SizeEdit edit = withDimension(plan, target(What::edgeLength, i), edge(plan, i), edge(plan, i) + 40.0);
            QVERIFY2(bool(edit), qPrintable(edit.fault));
            QVERIFY(std::abs(edge(edit.plan, i) - edge(plan, i) - 40.0) < 1e-6);
        }
    }

    void stripsMoveTheCutout()
    {
        Plan plan = planOf(kRectangle);
        Cutout sink = defaultCutout(CutoutPurpose::sink, CutoutShape::rectangle);
        sink.id = "K1";
        sink.centre = {900, 310};
        plan = addCutout(plan, "C1", sink);
        const auto centre = [](const SizeEdit& edit) { return counterOf(edit.plan).cutouts.front().centre; };
        // 620 free on the left, 620 on the right, 110 in front and behind.
        QCOMPARE(centre(withDimension(plan, target(What::cutoutFromLeft, -1, "K1"), 620, 500)), (Point{780, 310}));
        QCOMPARE(centre(withDimension(plan, target(What::cutoutFromRight, -1, "K1"), 620, 500)), (Point{1020, 310}));
        QCOMPARE(centre(withDimension(plan, target(What::cutoutFromFront, -1, "K1"), 110, 100)), (Point{900, 300}));
        QCOMPARE(centre(withDimension(plan, target(What::cutoutFromBack, -1, "K1"), 110, 100)), (Point{900, 320}));
        const SizeEdit wide = withDimension(plan, target(What::cutoutWidth, -1, "K1"), 560, 600);
        QCOMPARE(counterOf(wide.plan).cutouts.front().size, (Size{600, 400}));
        const SizeEdit deep = withDimension(plan, target(What::cutoutDepth, -1, "K1"), 400, 380);
        QCOMPARE(counterOf(deep.plan).cutouts.front().size, (Size{560, 380}));
    }

    void heightsAndLevels()
    {
        Plan plan = planOf(kRectangle);
        plan = withNewPart(plan, newPart(plan, PartKind::support, {{100, 20}, {200, 600}}));
        DimensionTarget height{What::height, "S1", {}, -1};
        const SizeEdit taller = withDimension(plan, height, 860, 900);
        QCOMPARE(std::get<Support>(findPart(taller.plan, "S1")->body).heightMm, 900.0);
        const SizeEdit thicker = withDimension(plan, target(What::height), 40, 50);
        QCOMPARE(counterOf(thicker.plan).thicknessMm, 50.0);
        const SizeEdit raised = withDimension(plan, target(What::level), 900, 950);
        QCOMPARE(counterOf(raised.plan).topMm, 950.0);
        Plan rimmed = changeCounter(plan, "C1", [](Counter& c) { c.rim = Rim{}; });
        const SizeEdit rim = withDimension(rimmed, target(What::height), 60, 70);
        QCOMPARE(counterOf(rim.plan).rim->depthMm, 70.0);
        QCOMPARE(counterOf(rim.plan).thicknessMm, 40.0);
    }

    void wholeSizes()
    {
        const Plan plan = planOf(kRectangle);
        const SizeEdit both = withPartSize(plan, "C1", {1850, 650});
        QCOMPARE(edge(both.plan, 0), 1850.0);
        QCOMPARE(edge(both.plan, 1), 650.0);
        const SizeEdit one = withPartSize(plan, "C1", {1850, {}});
        QCOMPARE(edge(one.plan, 0), 1850.0);
        QCOMPARE(edge(one.plan, 1), 620.0);
    }

    void refusesInWords()
    {
        const Plan plan = planOf(kEll);
        QVERIFY(!withPartSize(plan, "C1", {1850, 650}));
        QVERIFY(withPartSize(plan, "C1", {1850, 650}).fault.contains("Click the figure"));
        QVERIFY(!withDimension(plan, target(What::edgeLength, 0), 2000, 0.0));
        QVERIFY(!withDimension(plan, target(What::edgeLength, 0), 2000, -5.0));
        QVERIFY(!withDimension(plan, target(What::edgeLength, 0), 2000, 1e6));
        QVERIFY(!withDimension(plan, {What::height, "S9", {}, -1}, 1, 2));
        QVERIFY(!withDimension(plan, target(What::overall), 2000, 2100));
        QVERIFY(!withCutoutSize(plan, "C1", "K9", {100, 100}));
        // A refusal changes nothing.
        QVERIFY(withPartSize(plan, "C1", {1850, 650}).plan == plan);
    }
};

QTEST_GUILESS_MAIN(DimensionEditTest)
#include "dimension_edit_test.moc"
