#include "core/fem/node_order.h"

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCore>

namespace yardcast::fem {

std::vector<int> eliminationOrder(const NodeGraph& graph)
{
    const int n = graph.nodes();
    const std::vector<double> values(graph.neighbours.size(), 1.0);
    const Eigen::Map<const Eigen::SparseMatrix<double>> pattern(n, n, Eigen::Index(graph.neighbours.size()),
                                                                graph.begin.data(), graph.neighbours.data(),
                                                                values.data());
    Eigen::AMDOrdering<int>::PermutationType permutation;
    Eigen::AMDOrdering<int>()(Eigen::SparseMatrix<double>(pattern).selfadjointView<Eigen::Lower>(), permutation);
    return {permutation.indices().data(), permutation.indices().data() + n};
}

}  // namespace yardcast::fem
