#include "core/fem/dense_front.h"

#include <cmath>

#include "core/fem/dense_wide.h"

namespace yardcast::fem {

namespace {

/// Columns that are eliminated before the rest of the front is told: their panel stays in the cache.
constexpr int kDeep = 48;

// NOLINTBEGIN: as in dense_vectors.h
/// c -= a b' for three vectors of rows and three columns.
template <class V>
YARDCAST_INLINE void tile(const double* a, const double* b, int stride, int depth, double* c, int cStride)
{
    constexpr int lanes = int(sizeof(V) / sizeof(double));
    V c00{}, c10{}, c20{}, c01{}, c11{}, c21{}, c02{}, c12{}, c22{};
    for (int k = 0; k < depth; ++k) {
        YARDCAST_LOAD(V, a0, a);
        YARDCAST_LOAD(V, a1, a + lanes);
        YARDCAST_LOAD(V, a2, a + 2 * lanes);
        const double b0 = b[0];
        c00 += a0 * b0;
        c10 += a1 * b0;
        c20 += a2 * b0;
        const double b1 = b[1];
        c01 += a0 * b1;
        c11 += a1 * b1;
        c21 += a2 * b1;
        const double b2 = b[2];
        c02 += a0 * b2;
        c12 += a1 * b2;
        c22 += a2 * b2;
        a += stride;
        b += stride;
    }
    subtractAt(c, c00);
    subtractAt(c + lanes, c10);
    subtractAt(c + 2 * lanes, c20);
    c += cStride;
    subtractAt(c, c01);
    subtractAt(c + lanes, c11);
    subtractAt(c + 2 * lanes, c21);
    c += cStride;
    subtractAt(c, c02);
    subtractAt(c + lanes, c12);
    subtractAt(c + 2 * lanes, c22);
}

/// c -= a b' for six columns and `rows` rows.
template <class Wide>
YARDCAST_INLINE void strip(const double* a, int rows, const double* b, int stride, int depth, double* c, int cStride)
{
    constexpr int tall = int(3 * sizeof(Wide) / sizeof(double));
    int i = 0;
    for (; i + tall <= rows; i += tall) {
        tile<Wide>(a + i, b, stride, depth, c + i, cStride);
        tile<Wide>(a + i, b + 3, stride, depth, c + i + 3 * cStride, cStride);
    }
    for (; i < rows; i += 6) {
        tile<Two>(a + i, b, stride, depth, c + i, cStride);
        tile<Two>(a + i, b + 3, stride, depth, c + i + 3 * cStride, cStride);
    }
}

YARDCAST_INLINE bool factorSix(double* d, int stride, const double* leastPivot)
{
    for (int j = 0; j < 6; ++j) {
        double* const column = d + j * stride;
        double pivot = column[j];
        for (int k = 0; k < j; ++k) pivot -= d[k * stride + j] * d[k * stride + j];
        if (!(pivot > leastPivot[j])) return false;
        const double reciprocal = 1 / std::sqrt(pivot);
        for (int i = j + 1; i < 6; ++i) {
            double sum = column[i];
            for (int k = 0; k < j; ++k) sum -= d[k * stride + i] * d[k * stride + j];
            column[i] = sum * reciprocal;
        }
        column[j] = reciprocal;
    }
    return true;
}

/// One vector of rows right of six columns: x becomes x inverse(L').
template <class V>
YARDCAST_INLINE void dividedBySix(double* x, const double* d, int stride)
{
    YARDCAST_LOAD(V, x0, x);
    YARDCAST_LOAD(V, x1, x + stride);
    YARDCAST_LOAD(V, x2, x + 2 * stride);
    YARDCAST_LOAD(V, x3, x + 3 * stride);
    YARDCAST_LOAD(V, x4, x + 4 * stride);
    YARDCAST_LOAD(V, x5, x + 5 * stride);
    const double* l = d;
    x0 *= l[0];
    x1 -= x0 * l[1];
    x2 -= x0 * l[2];
    x3 -= x0 * l[3];
    x4 -= x0 * l[4];
    x5 -= x0 * l[5];
    l += stride;
    x1 *= l[1];
    x2 -= x1 * l[2];
    x3 -= x1 * l[3];
    x4 -= x1 * l[4];
    x5 -= x1 * l[5];
    l += stride;
    x2 *= l[2];
    x3 -= x2 * l[3];
    x4 -= x2 * l[4];
    x5 -= x2 * l[5];
    l += stride;
    x3 *= l[3];
    x4 -= x3 * l[4];
    x5 -= x3 * l[5];
    l += stride;
    x4 *= l[4];
    x5 -= x4 * l[5];
    l += stride;
    x5 *= l[5];
    std::memcpy(x, &x0, sizeof(V));
    std::memcpy(x + stride, &x1, sizeof(V));
    std::memcpy(x + 2 * stride, &x2, sizeof(V));
    std::memcpy(x + 3 * stride, &x3, sizeof(V));
    std::memcpy(x + 4 * stride, &x4, sizeof(V));
    std::memcpy(x + 5 * stride, &x5, sizeof(V));
}

template <class Wide>
YARDCAST_INLINE bool factorFront(const DenseFront& front, const double* leastPivot)
{
    constexpr int lanes = int(sizeof(Wide) / sizeof(double));
    const int stride = front.rows;
    for (int from = 0; from < front.columns; from += kDeep) {
        const int to = from + kDeep < front.columns ? from + kDeep : front.columns;
        for (int j = from; j < to; j += 6) {
            double* const block = front.panel + j * stride + j;
            const double* const left = front.panel + from * stride + j;
            if (j > from) strip<Wide>(left, front.rows - j, left, stride, j - from, block, stride);
            if (!factorSix(block, stride, leastPivot + j)) return false;
            int i = 6;
            for (; i + lanes <= front.rows - j; i += lanes) dividedBySix<Wide>(block + i, block, stride);
            for (; i < front.rows - j; i += 2) dividedBySix<Two>(block + i, block, stride);
        }
        const double* const done = front.panel + from * stride;
        for (int j = to; j < front.columns; j += 6)
            strip<Wide>(done + j, front.rows - j, done + j, stride, to - from, front.panel + j * stride + j, stride);
        const int below = front.below();
        for (int j = 0; j < below - front.border; j += 6) {
            const double* const rows = done + front.columns + j;
            strip<Wide>(rows, below - j, rows, stride, to - from, front.update + j * below + j, below);
        }
    }
    return true;
}

template <class Wide>
YARDCAST_INLINE void subtractOwnSquare(const double* rows, int stride, int count, int depth, double* square,
                                       int squareStride)
{
    for (int from = 0; from < depth; from += kDeep) {
        const int deep = depth - from < kDeep ? depth - from : kDeep;
        for (int j = 0; j < count; j += 6)
            strip<Wide>(rows + from * stride + j, count - j, rows + from * stride + j, stride, deep,
                        square + j * squareStride + j, squareStride);
    }
}

/// y += A x for four columns.
template <class V>
YARDCAST_INLINE void fourColumns(const double* a, int stride, const double* x, double* y)
{
    YARDCAST_LOAD(V, sum, y);
    for (int c = 0; c < 4; ++c) {
        YARDCAST_LOAD(V, column, a + c * stride);
        sum += column * x[c];
    }
    std::memcpy(y, &sum, sizeof(V));
}

template <class Wide>
YARDCAST_INLINE void addProductOf(const double* a, int stride, int rows, int columns, const double* x, double* y)
{
    constexpr int lanes = int(sizeof(Wide) / sizeof(double));
    int j = 0;
    for (; j + 4 <= columns; j += 4, a += 4 * stride) {
        int i = 0;
        for (; i + lanes <= rows; i += lanes) fourColumns<Wide>(a + i, stride, x + j, y + i);
        for (; i < rows; ++i)
            for (int c = 0; c < 4; ++c) y[i] += a[c * stride + i] * x[j + c];
    }
    for (; j < columns; ++j, a += stride)
        for (int i = 0; i < rows; ++i) y[i] += a[i] * x[j];
}

// ---- solves with one load

template <class V>
YARDCAST_INLINE void forwardRows(const double* l, int stride, const double* y, double* to)
{
    YARDCAST_LOAD(V, sum, to);
    for (int c = 0; c < 6; ++c) {
        YARDCAST_LOAD(V, a, l + c * stride);
        sum -= a * y[c];
    }
    std::memcpy(to, &sum, sizeof(V));
}

template <class Wide>
YARDCAST_INLINE void forwardOne(const double* panel, int stride, int columns, int count, double* y, double* below)
{
    constexpr int lanes = int(sizeof(Wide) / sizeof(double));
    for (int i = 0; i < count; ++i) below[i] = 0.0;
    for (int j = 0; j < columns; j += 6) {
        const double* const d = panel + j * stride + j;
        double* const yj = y + j;
        for (int c = 0; c < 6; ++c) {
            double sum = yj[c];
            for (int k = 0; k < c; ++k) sum -= d[k * stride + c] * yj[k];
            yj[c] = sum * d[c * stride + c];
        }
        for (int i = j + 6; i < columns; i += 2) forwardRows<Two>(panel + j * stride + i, stride, yj, y + i);
        const double* const l = panel + j * stride + columns;
        int i = 0;
        for (; i + lanes <= count; i += lanes) forwardRows<Wide>(l + i, stride, yj, below + i);
        for (; i < count; i += 2) forwardRows<Two>(l + i, stride, yj, below + i);
    }
}

/// y of three columns -= l' x over `count` rows (even).
template <class V>
YARDCAST_INLINE void backwardRows(const double* l, int stride, int count, const double* x, double* y)
{
    constexpr int lanes = int(sizeof(V) / sizeof(double));
    const double* const l1 = l + stride;
    const double* const l2 = l1 + stride;
    V s0{}, s1{}, s2{};
    int i = 0;
    for (; i + lanes <= count; i += lanes) {
        YARDCAST_LOAD(V, value, x + i);
        YARDCAST_LOAD(V, a0, l + i);
        YARDCAST_LOAD(V, a1, l1 + i);
        YARDCAST_LOAD(V, a2, l2 + i);
        s0 += a0 * value;
        s1 += a1 * value;
        s2 += a2 * value;
    }
    for (int lane = 0; lane < lanes; ++lane) {
        y[0] -= s0[lane];
        y[1] -= s1[lane];
        y[2] -= s2[lane];
    }
    for (; i < count; ++i) {
        y[0] -= l[i] * x[i];
        y[1] -= l1[i] * x[i];
        y[2] -= l2[i] * x[i];
    }
}

template <class Wide>
YARDCAST_INLINE void backwardOne(const double* panel, int stride, int columns, int count, double* y,
                                 const double* below)
{
    for (int j = columns - 6; j >= 0; j -= 6) {
        double* const yj = y + j;
        const double* const l = panel + j * stride + columns;
        for (int c = 0; c < 6; c += 3) {
            backwardRows<Wide>(l + c * stride, stride, count, below, yj + c);
            backwardRows<Two>(panel + (j + c) * stride + j + 6, stride, columns - j - 6, y + j + 6, yj + c);
        }
        const double* const d = panel + j * stride + j;
        for (int c = 5; c >= 0; --c) {
            double sum = yj[c];
            for (int k = c + 1; k < 6; ++k) sum -= d[c * stride + k] * yj[k];
            yj[c] = sum * d[c * stride + c];
        }
    }
}

// NOLINTEND

/// The kernels, compiled for the instructions that `ATTRIBUTE` names.
#define YARDCAST_KERNELS(Name, Wide, ATTRIBUTE)                                                                      \
    struct Name {                                                                                                    \
        ATTRIBUTE static bool factor(const DenseFront& front, const double* leastPivot)                              \
        {                                                                                                            \
            return factorFront<Wide>(front, leastPivot);                                                             \
        }                                                                                                            \
        ATTRIBUTE static void subtractSquare(const double* rows, int stride, int count, int depth, double* square,   \
                                             int squareStride)                                                       \
        {                                                                                                            \
            subtractOwnSquare<Wide>(rows, stride, count, depth, square, squareStride);                               \
        }                                                                                                            \
        ATTRIBUTE static void addProduct(const double* a, int stride, int rows, int columns, const double* x,        \
                                         double* y)                                                                  \
        {                                                                                                            \
            addProductOf<Wide>(a, stride, rows, columns, x, y);                                                      \
        }                                                                                                            \
        ATTRIBUTE static void forward(const double* l, int stride, int columns, int count, double* y, double* below) \
        {                                                                                                            \
            forwardOne<Wide>(l, stride, columns, count, y, below);                                                   \
        }                                                                                                            \
        ATTRIBUTE static void backward(const double* l, int stride, int columns, int count, double* y,               \
                                       const double* below)                                                          \
        {                                                                                                            \
            backwardOne<Wide>(l, stride, columns, count, y, below);                                                  \
        }                                                                                                            \
        template <int loads>                                                                                         \
        ATTRIBUTE static void forwardOf(const double* l, int stride, int columns, int count, double* y,              \
                                        double* below)                                                               \
        {                                                                                                            \
            forwardMany<Wide, loads>(l, stride, columns, count, y, below);                                           \
        }                                                                                                            \
        template <int loads>                                                                                         \
        ATTRIBUTE static void backwardOf(const double* l, int stride, int columns, int count, double* y,             \
                                         const double* below)                                                        \
        {                                                                                                            \
            backwardMany<Wide, loads>(l, stride, columns, count, y, below);                                          \
        }                                                                                                            \
        static constexpr DenseKernels all()                                                                          \
        {                                                                                                            \
            return {factor,                                                                                          \
                    subtractSquare,                                                                                  \
                    addProduct,                                                                                      \
                    {{{1, forward, backward},                                                                        \
                      {kFewLoads, forwardOf<kFewLoads>, backwardOf<kFewLoads>},                                      \
                      {kLoadsAtOnce, forwardOf<kLoadsAtOnce>, backwardOf<kLoadsAtOnce>}}}};                          \
        }                                                                                                            \
    }

YARDCAST_KERNELS(Plain, Two, );
#if defined(__x86_64__)
YARDCAST_KERNELS(Fused, Four, __attribute__((target("avx2,fma"))));
#endif

}  // namespace

const DenseKernels& denseKernels()
{
    static const DenseKernels kernels = [] {
#if defined(__x86_64__)
        if (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma")) return Fused::all();
#endif
        return Plain::all();
    }();
    return kernels;
}

}  // namespace yardcast::fem
