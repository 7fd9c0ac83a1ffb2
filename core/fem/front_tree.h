#pragma once

#include <span>
#include <vector>

#include "core/fem/node_order.h"

namespace yardcast::fem {

/// The elimination of a graph, front by front. A front eliminates the nodes at consecutive places `first[f]` to
/// `first[f + 1]` and couples the places `rowsOf(f)` that are eliminated later. Children come before their parent and
/// the fronts below one front are consecutive.
struct FrontTree {
    std::vector<int> nodeAt;   ///< the node at each place
    std::vector<int> placeOf;  ///< the place of each node
    std::vector<int> first;    ///< first place of each front, and the number of places
    std::vector<int> frontOf;  ///< front that eliminates each place
    std::vector<int> parent;   ///< -1: none
    std::vector<int> rowBegin;
    std::vector<int> rows;     ///< places, ascending

    int fronts() const { return int(parent.size()); }
    int pivots(int front) const { return first[std::size_t(front) + 1] - first[std::size_t(front)]; }
    std::span<const int> rowsOf(int front) const
    {
        const auto from = std::size_t(rowBegin[std::size_t(front)]);
        return {rows.data() + from, std::size_t(rowBegin[std::size_t(front) + 1]) - from};
    }
};

FrontTree frontTree(const NodeGraph& graph);

}  // namespace yardcast::fem
