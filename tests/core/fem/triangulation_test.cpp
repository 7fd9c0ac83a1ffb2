#include "core/fem/triangulation.h"

#include <gtest/gtest.h>

#include <random>
#include <set>

namespace yardcast::fem {
namespace {

TEST(Predicates, DecideExactlyAboutPointsOfOneCircle)
{
    // (0,0), (2k,0), (2k,2k), (0,2k) lie on one circle whatever k is; one step of the lattice in or out decides.
    for (const std::int32_t k : {1, 3, 1000, 1 << 20, (1 << 26) - 1}) {
        const Site a{-k, -k}, b{k, -k}, c{k, k};
        EXPECT_FALSE(inCircle(a, b, c, {-k, k})) << k;
        EXPECT_TRUE(inCircle(a, b, c, {-k + 1, k})) << k;
        EXPECT_FALSE(inCircle(a, b, c, {-k - 1, k})) << k;
    }
    // A Pythagorean circle of radius 5 * 13 * 2^20 about the origin: rounding alone could not tell.
    const std::int32_t u = 1 << 20;
    const Site a{65 * u, 0}, b{39 * u, 52 * u}, c{-33 * u, 56 * u};
    EXPECT_FALSE(inCircle(a, b, c, {25 * u, -60 * u}));
    EXPECT_TRUE(inCircle(a, b, c, {25 * u, -60 * u + 1}));
    EXPECT_FALSE(inCircle(a, b, c, {25 * u, -60 * u - 1}));
    EXPECT_EQ(turn({-(1 << 27), -(1 << 27)}, {0, 0}, {1 << 27, 1 << 27}), 0);
    EXPECT_GT(turn({-(1 << 27), -(1 << 27)}, {0, 0}, {(1 << 27) - 1, 1 << 27}), 0);
}

/// Neighbours know each other, corners turn left, and free edges are Delaunay.
void expectSound(const Triangulation& mesh)
{
    double area = 0.0;
    for (int at = 0; at < int(mesh.triangles().size()); ++at) {
        const Triangle& t = mesh.triangle(at);
        if (!t.alive()) continue;
        const std::int64_t twice = turn(mesh.site(t.corner[0]), mesh.site(t.corner[1]), mesh.site(t.corner[2]));
        ASSERT_GT(twice, 0);
        area += 0.5 * double(twice);
        for (int i = 0; i < 3; ++i) {
            const int other = t.neighbour[std::size_t(i)];
            if (other < 0) continue;
            const Triangle& o = mesh.triangle(other);
            const int j = o.indexOfNeighbour(at);
            ASSERT_EQ(o.neighbour[std::size_t(j)], at);
            ASSERT_EQ(o.kind[std::size_t(j)], t.kind[std::size_t(i)]);
            ASSERT_EQ(o.corner[std::size_t((j + 1) % 3)], t.corner[std::size_t((i + 2) % 3)]);
            if (t.kind[std::size_t(i)] != EdgeKind::free) continue;
            EXPECT_FALSE(inCircle(mesh.site(t.corner[0]), mesh.site(t.corner[1]), mesh.site(t.corner[2]),
                                  mesh.site(o.corner[std::size_t(j)])));
        }
    }
    const Site low = mesh.site(0), high = mesh.site(2);
    EXPECT_EQ(area, double(high.x - low.x) * double(high.y - low.y));
}

class Random {
public:
    std::int32_t below(std::int32_t n) { return std::int32_t(engine_() % std::uint32_t(n)); }

private:
    std::mt19937 engine_{7};
};

TEST(Triangulation, StaysDelaunayWhateverIsPutIn)
{
    Random random;
    for (const std::int32_t range : {12, 200, 100000}) {  // the first: most points fall on others or on lines
        Triangulation mesh({-1, -1}, {range + 1, range + 1}, 300);
        int last = 0;
        for (int k = 0; k < 300; ++k) {
            const Site p{random.below(range), random.below(range)};
            const int site = mesh.insert(p, last);
            ASSERT_GE(site, 0);
            EXPECT_EQ(mesh.site(site), p);
            last = mesh.triangleAt(site);
        }
        expectSound(mesh);
    }
}

TEST(Triangulation, KeepsConstrainedEdgesThroughLaterPoints)
{
    Random random;
    Triangulation mesh({-1, -1}, {1001, 1001}, 400);
    const int a = mesh.insert({100, 130}, 0), b = mesh.insert({900, 770}, 0);
    const int onWay = mesh.insert({500, 450}, 0);  // on the line from a to b
    for (int k = 0; k < 100; ++k) mesh.insert({random.below(1000), random.below(1000)}, 0);
    ASSERT_TRUE(mesh.constrain(a, b, EdgeKind::boundary));
    expectSound(mesh);
    EXPECT_GE(mesh.edgeBetween(a, onWay).first + mesh.edgeBetween(onWay, b).first, -1);
    for (int k = 0; k < 100; ++k) mesh.insert({random.below(1000), random.below(1000)}, 0);
    expectSound(mesh);
    // From a to b one can still walk along boundary edges only.
    std::set<int> reached{a};
    bool grown = true;
    while (grown) {
        grown = false;
        for (const Triangle& t : mesh.triangles())
            for (int i = 0; t.alive() && i < 3; ++i) {
                if (t.kind[std::size_t(i)] != EdgeKind::boundary) continue;
                const int u = t.corner[std::size_t((i + 1) % 3)], v = t.corner[std::size_t((i + 2) % 3)];
                if (reached.count(u)) grown = reached.insert(v).second || grown;
                if (reached.count(v)) grown = reached.insert(u).second || grown;
            }
    }
    EXPECT_TRUE(reached.count(b));
    EXPECT_TRUE(reached.count(onWay));
    // What would cross it is refused.
    const int c = mesh.insert({300, 800}, 0), d = mesh.insert({700, 150}, 0);
    EXPECT_FALSE(mesh.constrain(c, d, EdgeKind::line));
    expectSound(mesh);
}

TEST(Triangulation, TakesSitesOutAndSplitsEdges)
{
    Random random;
    Triangulation mesh({-1, -1}, {1001, 1001}, 400);
    std::vector<int> sites;
    for (int k = 0; k < 150; ++k) sites.push_back(mesh.insert({random.below(1000), random.below(1000)}, 0));
    int removed = 0;
    for (int k = 0; k < 150; k += 3) {
        const int site = sites[std::size_t(k)];
        if (mesh.triangleAt(site) < 0) continue;
        std::vector<int> star;
        mesh.star(site, star);
        for (const int at : std::vector<int>(star)) {
            const Triangle t = mesh.triangle(at);
            if (mesh.remove(site, t.corner[std::size_t((t.indexOfCorner(site) + 1) % 3)])) {
                ++removed;
                break;
            }
        }
        expectSound(mesh);
    }
    EXPECT_GT(removed, 30);
    for (int k = 0; k < 30; ++k) {
        const Triangle& first = mesh.triangle(mesh.triangleAt(sites[1]));
        const int neighbour = first.corner[0] == sites[1] ? first.corner[1] : first.corner[0];
        const auto [at, edge] = mesh.edgeBetween(sites[1], neighbour);
        ASSERT_GE(at, 0);
        mesh.split(at, edge);
        expectSound(mesh);
    }
}

}  // namespace
}  // namespace yardcast::fem
