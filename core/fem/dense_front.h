#pragma once

#include <array>

/// Dense arithmetic of one front. Matrices lie column by column; sizes are multiples of 6 unless said otherwise. The
/// instructions of the machine at hand are chosen when the program starts.
namespace yardcast::fem {

/// One front: `columns` pivots in a panel of `rows` rows, and the lower triangle of what they leave to the rows below
/// in `update` (rows - columns each way). The last `border` rows carry no columns of their own: they get no column in
/// `update` either.
struct DenseFront {
    double* panel = nullptr;
    double* update = nullptr;
    int rows = 0;
    int columns = 0;
    int border = 0;
    int below() const { return rows - columns; }
};

/// How many right-hand sides solves take side by side for each freedom: one, few, or many.
inline constexpr int kFewLoads = 8;
inline constexpr int kLoadsAtOnce = 16;

struct SolveKernels {
    int loads = 1;
    /// y becomes inverse(L) y for the pivots; below becomes -L y of the `count` rows below them.
    void (*forward)(const double* panel, int stride, int columns, int count, double* y, double* below);
    /// y becomes inverse(L') (y - L' below).
    void (*backward)(const double* panel, int stride, int columns, int count, double* y, const double* below);
};

struct DenseKernels {
    /// Cholesky of the pivots; the panel becomes the factor with reciprocals on its diagonal, and `update` loses the
    /// products of the rows below. `leastPivot` holds, for each column, what its pivot must exceed. False where one
    /// does not (or is no number).
    bool (*factor)(const DenseFront& front, const double* leastPivot);
    /// square -= rows * rows' for `count` rows of `depth` columns, on and below the diagonal.
    void (*subtractSquare)(const double* rows, int rowStride, int count, int depth, double* square, int squareStride);
    /// y += A x, of any size.
    void (*addProduct)(const double* a, int stride, int rows, int columns, const double* x, double* y);
    std::array<SolveKernels, 3> solves;
    /// The narrowest that takes so many loads; many where none does.
    const SolveKernels& solving(int loads) const
    {
        return loads <= solves[0].loads ? solves[0] : loads <= solves[1].loads ? solves[1] : solves[2];
    }
};

const DenseKernels& denseKernels();

}  // namespace yardcast::fem
