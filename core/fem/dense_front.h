#pragma once

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

/// How many right-hand sides the wide solves take, side by side for each freedom.
inline constexpr int kLoadsAtOnce = 16;

struct DenseKernels {
    /// Cholesky of the pivots; the panel becomes the factor with reciprocals on its diagonal, and `update` loses the
    /// products of the rows below. `leastPivot` holds, for each column, what its pivot must exceed. False where one
    /// does not (or is no number).
    bool (*factor)(const DenseFront& front, const double* leastPivot);
    /// square -= rows * rows' for `count` rows of `depth` columns, on and below the diagonal.
    void (*subtractSquare)(const double* rows, int rowStride, int count, int depth, double* square, int squareStride);
    /// y becomes inverse(L) y for the pivots; below -= L y for the `count` rows below them.
    void (*forward)(const double* panel, int stride, int columns, int count, double* y, double* below);
    void (*forwardWide)(const double* panel, int stride, int columns, int count, double* y, double* below);
    /// y becomes inverse(L') (y - L' below).
    void (*backward)(const double* panel, int stride, int columns, int count, double* y, const double* below);
    void (*backwardWide)(const double* panel, int stride, int columns, int count, double* y, const double* below);
};

const DenseKernels& denseKernels();

}  // namespace yardcast::fem
