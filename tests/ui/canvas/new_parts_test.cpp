#include <QtTest>

#include "core/plan/edits.h"
#include "ui/canvas/new_parts.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

Box box(double x, double y, double width, double height) { return {{x, y}, {x + width, y + height}}; }

/// A counter 1800 x 600 with its front left corner at (100, 200).
Plan planWithCounter()
{
    const Plan empty;
    return withNewPart(empty, newPart(empty, PartKind::counter, box(100, 200, 1800, 600)));
}

}  // namespace

class NewPartsTest : public QObject {
    Q_OBJECT

private slots:
    void firstCounterBringsAMix()
    {
        const Plan plan = planWithCounter();
        QCOMPARE(plan.parts.size(), std::size_t(1));
        QCOMPARE(plan.mixes.size(), std::size_t(1));
        const Part& part = *plan.parts.front();
        const auto& counter = std::get<Counter>(part.body);
        QCOMPARE(part.id, std::string("C1"));
        QCOMPARE(counter.mix, plan.mixes.front().id);
        QCOMPARE(counter.topMm, 900.0);
        QCOMPARE(counter.thicknessMm, 40.0);
        QCOMPARE(part.place.at, (Point{100, 200}));
        QCOMPARE(signedArea(counter.outline), 1800.0 * 600.0);
    }

    void aMixOfThePlanIsTaken()
    {
        Plan plan;
        Mix mix;
        mix.id = "own";
        plan.mixes.push_back(mix);
        plan = withNewPart(plan, newPart(plan, PartKind::counter, box(0, 0, 1000, 600)));
        QCOMPARE(plan.mixes.size(), std::size_t(1));
        QCOMPARE(std::get<Counter>(plan.parts.front()->body).mix, std::string("own"));
    }

    void supportUnderACounterReachesItsUnderside()
    {
        const Plan plan = planWithCounter();
        const Part part = defaultPart(plan, PartKind::support, {500, 500});
        const auto& support = std::get<Support>(part.body);
        QCOMPARE(support.baseMm, 0.0);
        QCOMPARE(support.heightMm, 860.0);
        QCOMPARE(support.lengthMm, 560.0);  // 600 less 20 at the front and the back
        QCOMPARE(support.widthMm, 100.0);
        const auto covers = boundsOf(footprint(part));
        QCOMPARE(covers->low, (Point{450, 220}));
        QCOMPARE(covers->high, (Point{550, 780}));
    }

    void supportUnderARimReachesTheRim()
    {
        Plan plan = planWithCounter();
        plan = changeCounter(plan, "C1", [](Counter& c) { c.rim = Rim{}; });  // 60 deep
        const Part part = newPart(plan, PartKind::support, box(450, 220, 100, 560));
        QCOMPARE(std::get<Support>(part.body).heightMm, 840.0);
    }

    void supportAlongXIsNotTurned()
    {
        const Plan plan;
        const Part part = newPart(plan, PartKind::support, box(0, 0, 700, 120));
        QCOMPARE(part.place.turnDeg, 0.0);
        QCOMPARE(std::get<Support>(part.body).lengthMm, 700.0);
        const auto covers = boundsOf(footprint(part));
        QCOMPARE(covers->high, (Point{700, 120}));
    }

    void panelStandsAlongTheBackEdge()
    {
        const Plan plan = planWithCounter();
        const Part part = defaultPart(plan, PartKind::panel, {500, 500});
        const auto& panel = std::get<Panel>(part.body);
        QCOMPARE(panel.baseMm, 900.0);
        QCOMPARE(panel.lengthMm, 1800.0);
        QCOMPARE(boundsOf(footprint(part))->high, (Point{1900, 800}));
    }

    void panelStandsAlongTheEdgeBehindThePoint()
    {
        const Plan empty;
        const Ring ell{{0, 0}, {2000, 0}, {2000, 1500}, {1400, 1500}, {1400, 600}, {0, 600}};
        const Plan plan = withNewPart(empty, newCounter(empty, ell));
        const Part behind = defaultPart(plan, PartKind::panel, {500, 300});
        QCOMPARE(boundsOf(footprint(behind))->high, (Point{1400, 600}));
        QCOMPARE(std::get<Panel>(behind.body).lengthMm, 1400.0);
        const Part leg = defaultPart(plan, PartKind::panel, {1700, 300});
        QCOMPARE(boundsOf(footprint(leg))->high, (Point{2000, 1500}));
        QCOMPARE(std::get<Panel>(leg.body).lengthMm, 600.0);
    }

    void supportAndPanelTurnWithTheirCounter()
    {
        Plan plan = planWithCounter();
        plan = turnParts(plan, {"C1"}, 90.0, {100, 200});  // now from (-500, 200) to (100, 2000); its back is on the left
        const Part support = defaultPart(plan, PartKind::support, {-200, 600});
        QCOMPARE(boundsOf(footprint(support))->low, (Point{-480, 550}));
        QCOMPARE(boundsOf(footprint(support))->high, (Point{80, 650}));
        const Part panel = defaultPart(plan, PartKind::panel, {-200, 600});
        QCOMPARE(boundsOf(footprint(panel))->low, (Point{-500, 200}));
        QCOMPARE(boundsOf(footprint(panel))->high, (Point{-460, 2000}));
        QCOMPARE(std::get<Support>(support.body).heightMm, 860.0);
    }

    void frontFacesThePerson()
    {
        const Plan plan = planWithCounter();
        // Drawn from right to left in front of the counter's middle: turned, so that one sees it from the front.
        const Part part = newFront(plan, {1800, 260}, {200, 260});
        const auto& front = std::get<Front>(part.body);
        const Point right = leftNormal(front.to - front.from) * -1.0;
        QVERIFY(right.y < 0.0);
        QCOMPARE(front.topMm, 860.0);
        QCOMPARE(distance(front.from, front.to), 1600.0);
    }

    void frontAtTheEndFacesOutwards()
    {
        const Plan plan = planWithCounter();
        const Part part = newFront(plan, {150, 250}, {150, 750});  // near the left end
        const auto& front = std::get<Front>(part.body);
        QVERIFY((leftNormal(front.to - front.from) * -1.0).x < 0.0);
    }

    void applianceStandsOnTheCounter()
    {
        const Plan plan = planWithCounter();
        const Part on = newPart(plan, PartKind::appliance, box(400, 250, 500, 500));
        QCOMPARE(std::get<Appliance>(on.body).on.value_or(""), std::string("C1"));
        const Part beside = newPart(plan, PartKind::appliance, box(4000, 250, 500, 500));
        QVERIFY(!std::get<Appliance>(beside.body).on);
    }

    void anOutlineEitherWayRoundIsCounterClockwise()
    {
        const Plan plan;
        const Ring clockwise{{0, 0}, {0, 500}, {900, 500}, {900, 0}};
        const Part part = newCounter(plan, clockwise);
        QCOMPARE(signedArea(std::get<Counter>(part.body).outline), 900.0 * 500.0);
        QCOMPARE(std::abs(signedArea(footprint(part))), 900.0 * 500.0);
    }

    void chordRunsFromEdgeToEdge()
    {
        // An L: upright through the leg is long, through the rest short.
        const Ring ell{{0, 0}, {1000, 0}, {1000, 1000}, {600, 1000}, {600, 400}, {0, 400}};
        const auto leg = chordThrough(ell, {800, 100}, {0, 1});
        QVERIFY(leg.has_value());
        QCOMPARE(leg->first, (Point{800, 0}));
        QCOMPARE(leg->second, (Point{800, 1000}));
        const auto rest = chordThrough(ell, {300, 100}, {0, 1});
        QCOMPARE(rest->second, (Point{300, 400}));
        QVERIFY(!chordThrough(ell, {300, 900}, {0, 1}).has_value());
    }

    /// A pointer that snapped to an edge or a corner still gets the stretch through the slab, never a point.
    void chordFromAnEdgeIsNoPoint()
    {
        const Ring ell{{0, 0}, {1000, 0}, {1000, 1000}, {600, 1000}, {600, 400}, {0, 400}};
        const auto across = chordThrough(ell, {1000, 700}, {1, 0});
        QVERIFY(across.has_value());
        QCOMPARE(distance(across->first, across->second), 400.0);
        const auto up = chordThrough(ell, {600, 400}, {0, -1});
        QVERIFY(up.has_value());
        QCOMPARE(distance(up->first, up->second), 400.0);
        // From a corner straight out of the slab there is no way through it.
        QVERIFY(!chordThrough(ell, {0, 0}, {1, -1}).has_value());
        QVERIFY(!chordThrough(ell, {500, 200}, {0, 0}).has_value());
    }

    void fixtureIdsAreFree()
    {
        Plan plan;
        QCOMPARE(freeFixtureId(plan, FixtureKind::water), std::string("water"));
        Fixture water;
        water.id = "water";
        water.kind = FixtureKind::water;
        plan = addFixture(plan, water);
        QCOMPARE(freeFixtureId(plan, FixtureKind::water), std::string("water-2"));
    }
};

QTEST_GUILESS_MAIN(NewPartsTest)
#include "new_parts_test.moc"
