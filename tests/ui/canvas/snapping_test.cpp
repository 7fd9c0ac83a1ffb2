#include <QtTest>

#include "ui/canvas/snapping.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

Box box(double x, double y, double width, double height) { return {{x, y}, {x + width, y + height}}; }

/// Targets of plain boxes, as parts would give them.
SnapTargets targetsOf(const std::vector<Box>& boxes)
{
    SnapTargets targets;
    int n = 0;
    for (const Box& b : boxes) {
        const std::string owner = "P" + std::to_string(++n);
        const Point corners[4] = {b.low, {b.high.x, b.low.y}, b.high, {b.low.x, b.high.y}};
        for (int i = 0; i < 4; ++i) {
            const Point a = corners[i];
            const Point c = corners[(i + 1) % 4];
            targets.corners.push_back({a, owner});
            targets.middles.push_back({(a + c) * 0.5, owner});
            targets.edges.push_back({a, c, owner});
        }
        targets.middles.push_back({b.centre(), owner});
        targets.boxes.push_back({b, owner});
    }
    return targets;
}

Moving movingOf(const Box& b)
{
    return {{b.low, {b.high.x, b.low.y}, b.high, {b.low.x, b.high.y}}, b};
}

}  // namespace

class SnappingTest : public QObject {
    Q_OBJECT

private slots:
    void orderIsCornerMiddleEdgeGrid()
    {
        // A box 20 wide: within 12 of every point of its lower side lie a corner, the middle and the edge.
        const SnapTargets targets = targetsOf({box(0, 0, 20, 100)});
        QCOMPARE(snapPoint(targets, {4, -3}, {12, 1000.0}).kind, SnapKind::corner);
        const Point caught = snapPoint(targets, {9, -3}, {12, 1000.0}).at;
        QVERIFY((caught == Point{0, 0}) || (caught == Point{20, 0}));
        const SnapTargets wide = targetsOf({box(0, 0, 400, 100)});
        const Snap middle = snapPoint(wide, {205, -3}, {12, 1000.0});
        QCOMPARE(middle.kind, SnapKind::middle);
        QCOMPARE(middle.at, (Point{200, 0}));
        const Snap edge = snapPoint(wide, {300, -3}, {12, 1000.0});
        QCOMPARE(edge.kind, SnapKind::edge);
        QCOMPARE(edge.at.y, 0.0);
        QCOMPARE(edge.owner, std::string("P1"));
        const Snap grid = snapPoint(wide, {640, -320}, {12, 1000.0});
        QCOMPARE(grid.kind, SnapKind::grid);
        QCOMPARE(grid.at, (Point{1000, 0}));
    }

    void nothingBeyondTheRadius()
    {
        const SnapTargets targets = targetsOf({box(0, 0, 400, 100)});
        const Snap snap = snapPoint(targets, {-13, -13}, {12});
        QCOMPARE(snap.kind, SnapKind::none);
        QCOMPARE(snap.at, (Point{-13, -13}));
        QVERIFY(snap.guides.empty());
    }

    void pointComesInLineWithACorner()
    {
        const SnapTargets targets = targetsOf({box(0, 0, 400, 100)});
        const Snap snap = snapPoint(targets, {405, 733}, {12, 10.0});
        QCOMPARE(snap.at, (Point{400, 730}));
        QCOMPARE(snap.kindX, SnapKind::corner);
        QCOMPARE(snap.kindY, SnapKind::grid);
        QCOMPARE(snap.guides.size(), std::size_t(1));
        QCOMPARE(snap.guides[0].from, (Point{400, 100}));  // the nearer of the two corners
        QCOMPARE(snap.guides[0].to, snap.at);
    }

    void slantedEdgeTakesTheFoot()
    {
        SnapTargets targets;
        targets.edges.push_back({{0, 0}, {300, 300}, "C1"});
        const Snap snap = snapPoint(targets, {104, 100}, {12, 10.0});
        QCOMPARE(snap.kind, SnapKind::edge);
        QCOMPARE(snap.at.x, 102.0);
        QCOMPARE(snap.at.y, 102.0);
    }

    void moveMeetsACorner()
    {
        const SnapTargets targets = targetsOf({box(0, 0, 400, 100)});
        const Snap snap = snapMove(targets, movingOf(box(1000, 500, 200, 60)), {-597, -504}, {12, 10.0});
        QCOMPARE(snap.kind, SnapKind::corner);
        QCOMPARE(snap.at, (Point{-600, -500}));
    }

    void moveCentresBeforeItAlignsSides()
    {
        // 398 wide under 400: within the radius lie both "middle to middle" and "side to side"; the middle is first.
        const SnapTargets targets = targetsOf({box(0, 0, 400, 100)});
        const Snap snap = snapMove(targets, movingOf(box(1000, 500, 398, 60)), {-997, 0}, {12});
        QCOMPARE(snap.kindX, SnapKind::middle);
        QCOMPARE(snap.at.x, -999.0);
        QVERIFY(!snap.guides.empty());
    }

    void moveAlignsASide()
    {
        const SnapTargets targets = targetsOf({box(0, 0, 400, 100)});
        const Snap snap = snapMove(targets, movingOf(box(1000, 500, 100, 60)), {-995, 203}, {12, 10.0});
        QCOMPARE(snap.kindX, SnapKind::edge);
        QCOMPARE(snap.at.x, -1000.0);
        QCOMPARE(snap.kindY, SnapKind::grid);
        QCOMPARE(snap.at.y, 200.0);
    }

    void moveMakesEqualGapsBetweenNeighbours()
    {
        // Gap of 1000 between the two; the moved one is 200 wide: 400 either side.
        const SnapTargets targets = targetsOf({box(0, 0, 300, 100), box(1300, 0, 310, 100)});
        const Snap snap = snapMove(targets, movingOf(box(0, 30, 200, 61)), {705, 0}, {12});
        QCOMPARE(snap.kindX, SnapKind::spacing);
        QCOMPARE(snap.at.x, 700.0);
        const auto gaps = std::ranges::count_if(snap.guides, [](const Guide& g) { return g.what == Guide::What::gap; });
        QCOMPARE(gaps, 2);
    }

    void moveGoesOnWithTheGapOfARow()
    {
        const SnapTargets targets = targetsOf({box(0, 0, 300, 100), box(450, 0, 300, 100)});
        const Snap snap = snapMove(targets, movingOf(box(2000, 30, 200, 61)), {-1095, 0}, {12});
        QCOMPARE(snap.kindX, SnapKind::spacing);
        QCOMPARE(snap.at.x, -1100.0);  // 750 + 150 = 900
    }

    void lockedAxisStays()
    {
        const SnapTargets targets = targetsOf({box(0, 0, 400, 100)});
        const Snap snap = snapMove(targets, movingOf(box(1000, 500, 100, 60)), {-995, 0}, {12, 10.0}, {false, true});
        QCOMPARE(snap.at, (Point{-1000, 0}));
    }

    void alongKeepsToItsDirection()
    {
        SnapTargets targets = targetsOf({box(0, 0, 400, 100)});
        targets.gridOrigin = {1003, 0};
        const Snap inLine = snapAlong(targets, {405, 700}, {1, 0}, {12, 10.0});
        QCOMPARE(inLine.at, (Point{400, 700}));
        QCOMPARE(inLine.kind, SnapKind::corner);
        const Snap grid = snapAlong(targets, {1851, 700}, {1, 0}, {12, 10.0});
        QCOMPARE(grid.at.x, 1853.0);  // 850 from the grid's origin: the size comes out round
        QCOMPARE(grid.kind, SnapKind::grid);
    }

    void emptyTargetsChangeNothing()
    {
        const SnapTargets none;
        QCOMPARE(snapPoint(none, {1.5, 2.5}, {10}).at, (Point{1.5, 2.5}));
        QCOMPARE(snapMove(none, movingOf(box(0, 0, 1, 1)), {3.25, 4.5}, {10}).at, (Point{3.25, 4.5}));
        QCOMPARE(snapAlong(none, {1.5, 2.5}, {0, 1}, {10}).at, (Point{1.5, 2.5}));
    }

    void hundredsOfPartsSnapToo()
    {
        std::vector<Box> boxes;
        for (int i = 0; i < 500; ++i) boxes.push_back(box(i % 25 * 700.0, i / 25 * 700.0, 600, 600));
        const SnapTargets targets = targetsOf(boxes);
        const Moving moving = movingOf(box(0, 0, 333, 222));
        double sum = 0.0;
        for (int i = 0; i < 100; ++i) sum += snapMove(targets, moving, {i * 31.0, i * 17.0}, {20, 10}).at.x;
        QVERIFY(sum != 0.0);
    }
};

QTEST_GUILESS_MAIN(SnappingTest)
#include "snapping_test.moc"
