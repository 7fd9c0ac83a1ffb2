#pragma once

#include <vector>

namespace yardcast::fem {

/// Neighbours of each node of a graph: those of node i are `neighbours[begin[i]] .. neighbours[begin[i + 1]]`, without
/// i.
struct NodeGraph {
    std::vector<int> begin;
    std::vector<int> neighbours;
    int nodes() const { return int(begin.size()) - 1; }
};

/// An order of elimination with little fill (approximate minimum degree): the node at each place.
std::vector<int> eliminationOrder(const NodeGraph& graph);

}  // namespace yardcast::fem
