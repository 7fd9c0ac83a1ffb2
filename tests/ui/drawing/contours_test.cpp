#include <cmath>
#include <limits>

#include <QtTest>

#include "ui/drawing/contours.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

/// A lattice of squares 10 mm wide, each of two triangles.
TriangleMesh lattice(int across, int down)
{
    TriangleMesh mesh;
    for (int j = 0; j <= down; ++j) {
        for (int i = 0; i <= across; ++i) {
            mesh.nodes.push_back({10.0 * i, 10.0 * j});
        }
    }
    const int row = across + 1;
    for (int j = 0; j < down; ++j) {
        for (int i = 0; i < across; ++i) {
            const int a = j * row + i;
            mesh.triangles.push_back({a, a + 1, a + row + 1});
            mesh.triangles.push_back({a, a + row + 1, a + row});
        }
    }
    return mesh;
}

template <class F>
std::vector<double> valuesOf(const TriangleMesh& mesh, F f)
{
    std::vector<double> values;
    for (const Point& node : mesh.nodes) {
        values.push_back(f(node));
    }
    return values;
}

double areaOf(const std::vector<Ring>& pieces)
{
    double sum = 0.0;
    for (const Ring& piece : pieces) {
        sum += signedArea(piece);
    }
    return sum;
}

}  // namespace

class ContoursTest : public QObject {
    Q_OBJECT

private slots:
    void aSlopeHasStraightLinesFromEdgeToEdge()
    {
        const TriangleMesh mesh = lattice(20, 10);
        const auto values = valuesOf(mesh, [](Point p) { return p.x; });
        const auto lines = contourLines(mesh, values, {25.0, 100.0, 500.0});
        QCOMPARE(lines.size(), std::size_t{2});
        for (const ContourLine& line : lines) {
            QVERIFY(!line.closed);
            QVERIFY(std::fabs(line.lengthMm() - 100.0) < 1e-9);
            for (const Point& point : line.points) {
                QVERIFY(std::fabs(point.x - line.level) < 1e-9);
            }
        }
        QVERIFY(std::fabs(areaOf(piecesAbove(mesh, values, 25.0)) - 175.0 * 100.0) < 1e-6);
        QCOMPARE(piecesAbove(mesh, values, 500.0).size(), std::size_t{0});
    }

    void aHillHasRings()
    {
        const TriangleMesh mesh = lattice(40, 40);
        const auto values = valuesOf(mesh, [](Point p) { return 200.0 - distance(p, {200.0, 200.0}); });
        const auto lines = contourLines(mesh, values, {100.0});
        QCOMPARE(lines.size(), std::size_t{1});
        QVERIFY(lines[0].closed);
        // A ring of radius 100, its chords on a lattice of 10 mm: within a percent of the circle.
        QVERIFY(std::fabs(lines[0].lengthMm() / (2.0 * M_PI * 100.0) - 1.0) < 0.01);
        QVERIFY(std::fabs(areaOf(piecesAbove(mesh, values, 100.0)) / (M_PI * 1e4) - 1.0) < 0.01);
        const auto [at, direction] = lines[0].alongMm(50.0);
        QVERIFY(std::fabs(distance(at, {200.0, 200.0}) - 100.0) < 1.0);
        QVERIFY(std::fabs(length(direction) - 1.0) < 1e-9);
    }

    void twoHillsAreTwoRings()
    {
        const TriangleMesh mesh = lattice(40, 20);
        const auto values = valuesOf(mesh, [](Point p) {
            return 100.0 - std::min(distance(p, {100.0, 100.0}), distance(p, {300.0, 100.0}));
        });
        QCOMPARE(contourLines(mesh, values, {50.0}).size(), std::size_t{2});
    }

    void nodesOnTheLevelGiveOneLine()
    {
        const TriangleMesh mesh = lattice(10, 10);
        const auto values = valuesOf(mesh, [](Point p) { return p.x; });
        const auto lines = contourLines(mesh, values, {50.0});
        QCOMPARE(lines.size(), std::size_t{1});
        QVERIFY(std::fabs(lines[0].lengthMm() - 100.0) < 1e-9);
        QVERIFY(std::fabs(areaOf(piecesAbove(mesh, values, 50.0)) - 50.0 * 100.0) < 1e-6);
    }

    void hatchCrossesTheWholeAreaInOneLine()
    {
        const TriangleMesh mesh = lattice(20, 10);
        const auto values = valuesOf(mesh, [](Point p) { return p.x; });
        const auto lines = hatchThrough(piecesAbove(mesh, values, 25.0), 0.0, 8.0);
        // Rows at 8, 16 ... 96 and the one on the edge at 0, which belongs to neither or to the area.
        QVERIFY(lines.size() == 12 || lines.size() == 13);
        for (const auto& [from, to] : lines) {
            QVERIFY(std::fabs(distance(from, to) - 175.0) < 1e-6);
        }
        double sum = 0.0;
        for (const auto& [from, to] : hatchThrough(piecesAbove(mesh, values, 25.0), 45.0, 0.5)) {
            sum += distance(from, to) * 0.5;
        }
        QVERIFY(std::fabs(sum / (175.0 * 100.0) - 1.0) < 0.01);
    }

    void whatIsNoNumberIsBelow()
    {
        const TriangleMesh mesh = lattice(10, 10);
        auto values = valuesOf(mesh, [](Point p) { return p.x; });
        values[60] = std::numeric_limits<double>::quiet_NaN();
        for (const ContourLine& line : contourLines(mesh, values, {50.0})) {
            for (const Point& point : line.points) {
                QVERIFY(std::isfinite(point.x) && std::isfinite(point.y));
            }
        }
        for (const Ring& piece : piecesAbove(mesh, values, 50.0)) {
            QVERIFY(std::isfinite(signedArea(piece)));
        }
        QVERIFY(contourLines(mesh, {1.0, 2.0}, {1.5}).empty());
    }
};

QTEST_APPLESS_MAIN(ContoursTest)
#include "contours_test.moc"
