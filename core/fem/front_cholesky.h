#pragma once

#include <functional>
#include <memory>
#include <stop_token>
#include <vector>

#include "core/fem/front_tree.h"

namespace yardcast::fem {

/// Where 6 x 6 blocks of the stiffness go while a front is put together.
class FrontBlocks {
public:
    struct Block {
        double* at;
        int stride;  ///< from column to column
    };
    /// The block that couples two nodes of this front, the row's place not before the column's, and the column's node a
    /// pivot of the front or one of its rows.
    Block block(int rowPlace, int columnPlace) const;
    /// Puts stiffness on the diagonal; call it for each addition to a diagonal block (it measures what pivots may be
    /// lost).
    double* diagonal(int place) { return diagonal_ + 6 * place; }

private:
    friend class FrontCholesky;
    const int* local_ = nullptr;
    double* panel_ = nullptr;
    double* update_ = nullptr;
    double* diagonal_ = nullptr;
    int rows_ = 0;
    int pivots_ = 0;  ///< nodes
    int below_ = 0;
};

/// Sparse Cholesky factor of a symmetric positive definite matrix of 6 x 6 blocks, front by front, bordered by `marks`:
/// single freedoms whose mutual flexibility is wanted. Source of the method: Duff, Reid, ACM Trans. Math. Software 9
/// (1983) 302-325 (multifrontal), from memory.
class FrontCholesky {
public:
    /// `markedPlaces` ascending; the freedom `markedFreedom` (0..5) of each is marked.
    FrontCholesky(FrontTree tree, std::vector<int> markedPlaces, int markedFreedom);

    /// `assemble(front, blocks)` adds what belongs to a front: everything whose first eliminated node is a pivot of it.
    /// False where the matrix is not positive definite (a pivot under 1e-11 of its diagonal) or `stop` was asked.
    bool factor(const std::function<void(int, FrontBlocks&)>& assemble, const std::stop_token& stop);

    const FrontTree& tree() const { return tree_; }
    int freedoms() const { return 6 * int(tree_.nodeAt.size()); }
    int marks() const { return int(marked_.size()); }
    /// Displacement of the marks (rows) under a unit force on each (columns, `markStride` apart): symmetric.
    const double* flexibility() const { return flexibility_.data(); }
    std::size_t markStride() const { return std::size_t(markStride_); }

    /// Solves in two halves, for 1, `kFewLoads` or `kLoadsAtOnce` loads side by side; freedoms in the order of places.
    /// Forward also adds to `atMarks` the displacement of the marks; backward adds the effect of `forces` at the marks.
    void forward(double* x, double* atMarks, int loads) const;
    void backward(double* x, const double* forces, int loads) const;

private:
    int markCount(int front) const;
    int stride(int front) const;

    FrontTree tree_;
    std::vector<int> marked_;
    int markedFreedom_ = 0;
    std::vector<int> markBegin_;   ///< first mark at or below each front
    std::vector<int> markEnd_;
    std::vector<std::size_t> panelBegin_;
    std::size_t stackSize_ = 0;
    int tallest_ = 0;
    std::unique_ptr<double[]> panels_;
    std::vector<double> flexibility_;
    int markStride_ = 0;
};

}  // namespace yardcast::fem
