#include "core/fem/front_cholesky.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

#include "core/fem/dense_front.h"

namespace yardcast {
namespace {

using namespace fem;

NodeGraph graphOf(int nodes, const std::set<std::pair<int, int>>& edges)
{
    NodeGraph graph;
    graph.begin.push_back(0);
    for (int i = 0; i < nodes; ++i) {
        for (int j = 0; j < nodes; ++j)
            if (edges.contains({std::min(i, j), std::max(i, j)}) && i != j) graph.neighbours.push_back(j);
        graph.begin.push_back(int(graph.neighbours.size()));
    }
    return graph;
}

/// A random symmetric positive definite matrix of 6 x 6 blocks over the edges of a grid with some chords.
struct Blocks {
    int nodes;
    std::set<std::pair<int, int>> edges;
    std::vector<std::vector<double>> dense;

    explicit Blocks(unsigned seed, int across, int up) : nodes(across * up)
    {
        std::mt19937 random(seed);
        std::uniform_real_distribution<double> even(-1, 1);
        for (int j = 0; j < up; ++j)
            for (int i = 0; i < across; ++i) {
                const int node = j * across + i;
                if (i + 1 < across) edges.insert({node, node + 1});
                if (j + 1 < up) edges.insert({node, node + across});
            }
        for (int k = 0; k < nodes / 10; ++k) {
            const int a = int(random() % unsigned(nodes));
            const int b = int(random() % unsigned(nodes));
            if (a != b) edges.insert({std::min(a, b), std::max(a, b)});
        }
        const std::size_t n = std::size_t(nodes) * 6;
        dense.assign(n, std::vector<double>(n, 0.0));
        for (const auto& [a, b] : edges)
            for (std::size_t i = 0; i < 6; ++i)
                for (std::size_t j = 0; j < 6; ++j)
                    dense[std::size_t(a) * 6 + i][std::size_t(b) * 6 + j] =
                        dense[std::size_t(b) * 6 + j][std::size_t(a) * 6 + i] = even(random);
        for (std::size_t i = 0; i < n; ++i)
            for (std::size_t j = 0; j < n; ++j)
                if (i != j) dense[i][i] += std::abs(dense[i][j]) + 1e-3;
    }

    /// Every block at the front that eliminates the first of its two nodes.
    std::function<void(int, FrontBlocks&)> assembler(const FrontTree& tree) const
    {
        return [this, &tree](int front, FrontBlocks& blocks) {
            const auto add = [&](int rowPlace, int columnPlace) {
                const auto row = std::size_t(tree.nodeAt[std::size_t(rowPlace)]) * 6;
                const auto column = std::size_t(tree.nodeAt[std::size_t(columnPlace)]) * 6;
                const FrontBlocks::Block block = blocks.block(rowPlace, columnPlace);
                for (std::size_t j = 0; j < 6; ++j)
                    for (std::size_t i = 0; i < 6; ++i)
                        block.at[j * std::size_t(block.stride) + i] += dense[row + i][column + j];
                if (rowPlace == columnPlace)
                    for (std::size_t i = 0; i < 6; ++i) blocks.diagonal(rowPlace)[i] += dense[row + i][row + i];
            };
            for (int place = tree.first[std::size_t(front)]; place < tree.first[std::size_t(front) + 1]; ++place) {
                add(place, place);
                for (const auto& [a, b] : edges) {
                    const int p = tree.placeOf[std::size_t(a)];
                    const int q = tree.placeOf[std::size_t(b)];
                    if (std::min(p, q) == place) add(std::max(p, q), place);
                }
            }
        };
    }
};

TEST(FrontTree, EliminatesEachNodeOnceAndChildrenFirst)
{
    const Blocks blocks(3, 13, 9);
    const FrontTree tree = frontTree(graphOf(blocks.nodes, blocks.edges));
    std::vector<int> sorted = tree.nodeAt;
    std::ranges::sort(sorted);
    for (int i = 0; i < blocks.nodes; ++i) {
        EXPECT_EQ(sorted[std::size_t(i)], i);
        EXPECT_EQ(tree.nodeAt[std::size_t(tree.placeOf[std::size_t(i)])], i);
    }
    for (int f = 0; f < tree.fronts(); ++f) {
        const int parent = tree.parent[std::size_t(f)];
        const auto rows = tree.rowsOf(f);
        EXPECT_TRUE(std::ranges::is_sorted(rows));
        EXPECT_EQ(parent < 0, rows.empty());
        if (parent < 0) continue;
        EXPECT_GT(parent, f);
        EXPECT_EQ(tree.frontOf[std::size_t(rows.front())], parent);
    }
}

TEST(FrontCholesky, SolvesOneLoadAndMany)
{
    for (unsigned seed = 1; seed < 6; ++seed) {
        const Blocks blocks(seed, 7 + int(seed), 8);
        FrontCholesky factor(frontTree(graphOf(blocks.nodes, blocks.edges)), {}, 2);
        ASSERT_TRUE(factor.factor(blocks.assembler(factor.tree()), {}));
        const FrontTree& tree = factor.tree();
        const std::size_t n = std::size_t(blocks.nodes) * 6;
        const auto freedom = [&](std::size_t i) { return std::size_t(tree.nodeAt[i / 6]) * 6 + i % 6; };
        for (const int loads : {1, kFewLoads, kLoadsAtOnce}) {
            const auto width = std::size_t(loads);
            std::vector<double> load(n * width);
            for (std::size_t i = 0; i < load.size(); ++i) load[i] = std::sin(double(i * (seed + 1)));
            std::vector<double> x = load;
            factor.forward(x.data(), nullptr, loads);
            factor.backward(x.data(), nullptr, loads);
            for (std::size_t r = 0; r < width; ++r)
                for (std::size_t i = 0; i < n; ++i) {
                    double sum = -load[i * width + r];
                    for (std::size_t j = 0; j < n; ++j)
                        sum += blocks.dense[freedom(i)][freedom(j)] * x[j * width + r];
                    ASSERT_NEAR(sum, 0.0, 1e-11);
                }
        }
    }
}

TEST(FrontCholesky, KnowsTheFlexibilityOfItsMarks)
{
    const Blocks blocks(9, 12, 6);
    const FrontTree tree = frontTree(graphOf(blocks.nodes, blocks.edges));
    std::vector<int> places;
    for (int place = 0; place < blocks.nodes; place += 1 + place % 3) places.push_back(place);
    places.push_back(places.back());  // two marks on one node
    FrontCholesky factor(tree, places, 2);
    ASSERT_TRUE(factor.factor(blocks.assembler(factor.tree()), {}));
    ASSERT_EQ(factor.marks(), int(places.size()));
    const std::size_t n = std::size_t(blocks.nodes) * 6;
    for (std::size_t j = 0; j < places.size(); ++j) {
        // A unit force on a mark, once as a load and once as a force of the mark itself.
        std::vector<double> x(n, 0.0);
        x[std::size_t(places[j]) * 6 + 2] = 1.0;
        std::vector<double> seen(places.size(), 0.0);
        factor.forward(x.data(), seen.data(), 1);
        factor.backward(x.data(), nullptr, 1);
        std::vector<double> y(n, 0.0);
        std::vector<double> forces(places.size(), 0.0);
        forces[j] = 1.0;
        factor.backward(y.data(), forces.data(), 1);
        for (std::size_t i = 0; i < n; ++i) ASSERT_NEAR(x[i], y[i], 1e-13);
        for (std::size_t i = 0; i < places.size(); ++i) {
            const double flexibility = factor.flexibility()[j * factor.markStride() + i];
            ASSERT_NEAR(flexibility, x[std::size_t(places[i]) * 6 + 2], 1e-13);
            ASSERT_NEAR(seen[i], flexibility, 1e-13);
        }
    }
}

TEST(FrontCholesky, RefusesWhatIsNotPositive)
{
    Blocks blocks(4, 6, 6);
    blocks.dense[77][77] = -1.0;
    FrontCholesky factor(frontTree(graphOf(blocks.nodes, blocks.edges)), {}, 2);
    EXPECT_FALSE(factor.factor(blocks.assembler(factor.tree()), {}));
    blocks.dense[77][77] = std::nan("");
    EXPECT_FALSE(factor.factor(blocks.assembler(factor.tree()), {}));
}

TEST(FrontCholesky, StopsOnItsWay)
{
    const Blocks blocks(4, 9, 9);
    FrontCholesky factor(frontTree(graphOf(blocks.nodes, blocks.edges)), {}, 2);
    std::stop_source source;
    int seen = 0;
    const auto assemble = blocks.assembler(factor.tree());
    EXPECT_FALSE(factor.factor(
        [&](int front, FrontBlocks& to) {
            assemble(front, to);
            if (++seen == 3) source.request_stop();
        },
        source.get_token()));
    EXPECT_EQ(seen, 3);
}

}  // namespace
}  // namespace yardcast
