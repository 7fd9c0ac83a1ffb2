#include "core/fem/node_order.h"

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCore>

namespace yardcast::fem {

std::vector<int> eliminationOrder(const NodeGraph& graph)
{
    const int n = graph.nodes();
    // With its diagonal: nodes without one would be put last.
    Eigen::SparseMatrix<double> pattern(n, n);
    pattern.resizeNonZeros(Eigen::Index(graph.neighbours.size()) + n);
    int next = 0;
    for (int node = 0; node < n; ++node) {
        pattern.outerIndexPtr()[node] = next;
        bool placed = false;
        for (int k = graph.begin[std::size_t(node)]; k < graph.begin[std::size_t(node) + 1]; ++k) {
            const int other = graph.neighbours[std::size_t(k)];
            if (!placed && other > node) {
                pattern.innerIndexPtr()[next++] = node;
                placed = true;
            }
            pattern.innerIndexPtr()[next++] = other;
        }
        if (!placed) pattern.innerIndexPtr()[next++] = node;
    }
    pattern.outerIndexPtr()[n] = next;
    std::fill_n(pattern.valuePtr(), next, 1.0);

    Eigen::AMDOrdering<int>::PermutationType permutation;
    Eigen::internal::minimum_degree_ordering(pattern, permutation);
    return {permutation.indices().data(), permutation.indices().data() + n};
}

}  // namespace yardcast::fem
