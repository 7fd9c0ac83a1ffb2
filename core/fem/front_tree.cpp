#include "core/fem/front_tree.h"

#include <algorithm>
#include <numeric>

namespace yardcast::fem {

namespace {

/// Structure of the factor, column by column of nodes, in some order of elimination.
struct Columns {
    std::vector<int> parent;
    std::vector<std::vector<int>> rows;  ///< places after the column's own, ascending
};

std::vector<int> inverse(const std::vector<int>& order)
{
    std::vector<int> place(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) place[std::size_t(order[i])] = int(i);
    return place;
}

std::vector<int> eliminationParents(const NodeGraph& graph, const std::vector<int>& order,
                                    const std::vector<int>& place)
{
    const std::size_t n = order.size();
    std::vector<int> parent(n, -1);
    std::vector<int> ancestor(n, -1);
    for (int j = 0; j < int(n); ++j) {
        const auto node = std::size_t(order[std::size_t(j)]);
        for (int k = graph.begin[node]; k < graph.begin[node + 1]; ++k) {
            int i = place[std::size_t(graph.neighbours[std::size_t(k)])];
            while (i != -1 && i < j) {
                const int next = ancestor[std::size_t(i)];
                ancestor[std::size_t(i)] = j;
                if (next == -1) parent[std::size_t(i)] = j;
                i = next;
            }
        }
    }
    return parent;
}

/// Places in an order where every subtree is consecutive and children come first.
std::vector<int> postorder(const std::vector<int>& parent)
{
    const std::size_t n = parent.size();
    std::vector<int> firstChild(n, -1);
    std::vector<int> sibling(n, -1);
    for (int j = int(n) - 1; j >= 0; --j) {
        const int p = parent[std::size_t(j)];
        if (p < 0) continue;
        sibling[std::size_t(j)] = firstChild[std::size_t(p)];
        firstChild[std::size_t(p)] = j;
    }
    std::vector<int> result;
    result.reserve(n);
    std::vector<int> stack;
    for (int root = 0; root < int(n); ++root) {
        if (parent[std::size_t(root)] >= 0) continue;
        stack.push_back(root);
        while (!stack.empty()) {
            const int j = stack.back();
            const int child = firstChild[std::size_t(j)];
            if (child >= 0) {
                firstChild[std::size_t(j)] = sibling[std::size_t(child)];
                stack.push_back(child);
            } else {
                result.push_back(j);
                stack.pop_back();
            }
        }
    }
    return result;
}

Columns columnsOf(const NodeGraph& graph, const std::vector<int>& order, const std::vector<int>& place,
                  std::vector<int> parent)
{
    const std::size_t n = order.size();
    Columns columns{std::move(parent), std::vector<std::vector<int>>(n)};
    std::vector<int> mark(n, -1);
    std::vector<int> firstChild(n, -1);
    std::vector<int> sibling(n, -1);
    for (int j = 0; j < int(n); ++j) {
        std::vector<int>& rows = columns.rows[std::size_t(j)];
        mark[std::size_t(j)] = j;
        const auto add = [&](int i) {
            if (i <= j || mark[std::size_t(i)] == j) return;
            mark[std::size_t(i)] = j;
            rows.push_back(i);
        };
        const auto node = std::size_t(order[std::size_t(j)]);
        for (int k = graph.begin[node]; k < graph.begin[node + 1]; ++k)
            add(place[std::size_t(graph.neighbours[std::size_t(k)])]);
        for (int child = firstChild[std::size_t(j)]; child >= 0; child = sibling[std::size_t(child)])
            for (const int i : columns.rows[std::size_t(child)]) add(i);
        std::ranges::sort(rows);
        const int p = columns.parent[std::size_t(j)];
        if (p >= 0) {
            sibling[std::size_t(j)] = firstChild[std::size_t(p)];
            firstChild[std::size_t(p)] = j;
        }
    }
    return columns;
}

/// A front eats the one before it (its last child) when the zeros that this stores are few: bigger blocks are worth
/// some arithmetic on zeros. Measured on slabs of 500 to 3000 nodes.
bool worthMerging(int pivots, int rows, double zerosWith)
{
    const double size = pivots * (pivots + 1) / 2.0 + double(pivots) * rows;
    if (pivots <= 4) return zerosWith < 0.5 * size;
    if (pivots <= 16) return zerosWith < 0.2 * size;
    return zerosWith < 0.06 * size;
}

}  // namespace

FrontTree frontTree(const NodeGraph& graph)
{
    FrontTree tree;
    std::vector<int> order = eliminationOrder(graph);
    std::vector<int> place = inverse(order);
    std::vector<int> parent = eliminationParents(graph, order, place);
    {
        const std::vector<int> post = postorder(parent);
        std::vector<int> better(order.size());
        for (std::size_t i = 0; i < post.size(); ++i) better[i] = order[std::size_t(post[i])];
        const std::vector<int> where = inverse(post);
        std::vector<int> moved(parent.size());
        for (std::size_t i = 0; i < post.size(); ++i) {
            const int p = parent[std::size_t(post[i])];
            moved[i] = p < 0 ? -1 : where[std::size_t(p)];
        }
        order = std::move(better);
        parent = std::move(moved);
        place = inverse(order);
    }
    const Columns columns = columnsOf(graph, order, place, parent);

    // From the bottom up: a front begins as one column and takes in the front just below it while that is worth it.
    struct Front {
        int first = 0;
        int last = 0;  ///< its rows are those of this place
        double zeros = 0.0;
    };
    std::vector<Front> fronts;
    const int n = int(order.size());
    for (int j = 0; j < n; ++j) {
        Front front{j, j, 0.0};
        while (!fronts.empty() && parent[std::size_t(fronts.back().last)] == j) {
            const Front& child = fronts.back();
            const int childRows = int(columns.rows[std::size_t(child.last)].size());
            const int rows = int(columns.rows[std::size_t(j)].size());
            const int pivots = child.last - child.first + 1;
            // Rows of the child's columns that they do not have by themselves.
            const double zeros = child.zeros + front.zeros + double(pivots) * (j - front.first + 1 + rows - childRows);
            if (zeros > 0 && !worthMerging(j - child.first + 1, rows, zeros)) break;
            front.first = child.first;
            front.zeros = zeros;
            fronts.pop_back();
        }
        fronts.push_back(front);
    }

    tree.rowBegin.push_back(0);
    tree.frontOf.resize(order.size());
    for (const Front& front : fronts) {
        tree.first.push_back(front.first);
        const auto& rows = columns.rows[std::size_t(front.last)];
        tree.rows.insert(tree.rows.end(), rows.begin(), rows.end());
        tree.rowBegin.push_back(int(tree.rows.size()));
        for (int j = front.first; j <= front.last; ++j)
            tree.frontOf[std::size_t(j)] = int(tree.first.size()) - 1;
    }
    tree.first.push_back(n);
    for (const Front& front : fronts) {
        const int p = parent[std::size_t(front.last)];
        tree.parent.push_back(p < 0 ? -1 : tree.frontOf[std::size_t(p)]);
    }
    tree.nodeAt = std::move(order);
    tree.placeOf = std::move(place);
    return tree;
}

}  // namespace yardcast::fem
