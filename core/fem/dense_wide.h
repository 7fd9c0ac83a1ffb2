#pragma once

#include "core/fem/dense_vectors.h"

namespace yardcast::fem {

// NOLINTBEGIN: as in dense_vectors.h
/// Solves with several loads side by side, a multiple of two of the widest vectors.

/// How far ahead of its use the factor is fetched, bytes.
constexpr int kAheadBytes = 256;

YARDCAST_INLINE void fetch(const double* from)
{
    __builtin_prefetch(reinterpret_cast<const char*>(from) + kAheadBytes);
}

/// to -= sum over `depth` columns of l[c] y[c], for six rows, two vectors of loads at a time; or to becomes that.
template <class V, int kWide, bool fresh>
YARDCAST_INLINE void sixRowsWide(const double* l, int stride, int depth, const double* y, double* to)
{
    constexpr int lanes = int(sizeof(V) / sizeof(double));
    for (int part = 0; part < kWide; part += 2 * lanes) {
        V a0{}, a1{}, a2{}, a3{}, a4{}, a5{}, b0{}, b1{}, b2{}, b3{}, b4{}, b5{};
        const double* column = l;
        const double* from = y + part;
        for (int c = 0; c < depth; ++c) {
            if (part == 0) fetch(column);
            YARDCAST_LOAD(V, a, from);
            YARDCAST_LOAD(V, b, from + lanes);
            a0 += a * column[0];
            b0 += b * column[0];
            a1 += a * column[1];
            b1 += b * column[1];
            a2 += a * column[2];
            b2 += b * column[2];
            a3 += a * column[3];
            b3 += b * column[3];
            a4 += a * column[4];
            b4 += b * column[4];
            a5 += a * column[5];
            b5 += b * column[5];
            column += stride;
            from += kWide;
        }
        double* const row = to + part;
        subtractTo<fresh>(row, a0);
        subtractTo<fresh>(row + lanes, b0);
        subtractTo<fresh>(row + kWide, a1);
        subtractTo<fresh>(row + kWide + lanes, b1);
        subtractTo<fresh>(row + 2 * kWide, a2);
        subtractTo<fresh>(row + 2 * kWide + lanes, b2);
        subtractTo<fresh>(row + 3 * kWide, a3);
        subtractTo<fresh>(row + 3 * kWide + lanes, b3);
        subtractTo<fresh>(row + 4 * kWide, a4);
        subtractTo<fresh>(row + 4 * kWide + lanes, b4);
        subtractTo<fresh>(row + 5 * kWide, a5);
        subtractTo<fresh>(row + 5 * kWide + lanes, b5);
    }
}

template <int kWide>
YARDCAST_INLINE void scaleWide(double* y, double factor)
{
    for (int r = 0; r < kWide; ++r) y[r] *= factor;
}

template <class Wide, int kWide>
YARDCAST_INLINE void forwardMany(const double* panel, int stride, int columns, int count, double* y, double* below)
{
    for (int j = 0; j < columns; j += 6) {
        double* const yj = y + j * kWide;
        if (j > 0) sixRowsWide<Wide, kWide, false>(panel + j, stride, j, y, yj);
        const double* const d = panel + j * stride + j;
        for (int c = 0; c < 6; ++c) {
            for (int k = 0; k < c; ++k)
                for (int r = 0; r < kWide; ++r) yj[c * kWide + r] -= d[k * stride + c] * yj[k * kWide + r];
            scaleWide<kWide>(yj + c * kWide, d[c * stride + c]);
        }
    }
    const double* const l = panel + columns;
    for (int i = 0; i < count; i += 6) sixRowsWide<Wide, kWide, true>(l + i, stride, columns, y, below + i * kWide);
}

/// y of six columns -= l' x over `count` rows, two vectors of loads at a time.
template <class V, int kWide>
YARDCAST_INLINE void sixColumnsWide(const double* l, int stride, int count, const double* x, double* y)
{
    constexpr int lanes = int(sizeof(V) / sizeof(double));
    const double* const l1 = l + stride;
    const double* const l2 = l1 + stride;
    const double* const l3 = l2 + stride;
    const double* const l4 = l3 + stride;
    const double* const l5 = l4 + stride;
    for (int part = 0; part < kWide; part += 2 * lanes) {
        V a0{}, a1{}, a2{}, a3{}, a4{}, a5{}, b0{}, b1{}, b2{}, b3{}, b4{}, b5{};
        for (int from = 0; from < count; from += 6) {
            if (part == 0) {
                fetch(l + from);
                fetch(l1 + from);
                fetch(l2 + from);
                fetch(l3 + from);
                fetch(l4 + from);
                fetch(l5 + from);
            }
            for (int i = from; i < from + 6; ++i) {
                YARDCAST_LOAD(V, a, x + i * kWide + part);
                YARDCAST_LOAD(V, b, x + i * kWide + part + lanes);
                a0 += a * l[i];
                b0 += b * l[i];
                a1 += a * l1[i];
                b1 += b * l1[i];
                a2 += a * l2[i];
                b2 += b * l2[i];
                a3 += a * l3[i];
                b3 += b * l3[i];
                a4 += a * l4[i];
                b4 += b * l4[i];
                a5 += a * l5[i];
                b5 += b * l5[i];
            }
        }
        double* const to = y + part;
        subtractAt(to, a0);
        subtractAt(to + lanes, b0);
        subtractAt(to + kWide, a1);
        subtractAt(to + kWide + lanes, b1);
        subtractAt(to + 2 * kWide, a2);
        subtractAt(to + 2 * kWide + lanes, b2);
        subtractAt(to + 3 * kWide, a3);
        subtractAt(to + 3 * kWide + lanes, b3);
        subtractAt(to + 4 * kWide, a4);
        subtractAt(to + 4 * kWide + lanes, b4);
        subtractAt(to + 5 * kWide, a5);
        subtractAt(to + 5 * kWide + lanes, b5);
    }
}

template <class Wide, int kWide>
YARDCAST_INLINE void backwardMany(const double* panel, int stride, int columns, int count, double* y,
                                  const double* below)
{
    for (int j = columns - 6; j >= 0; j -= 6) {
        double* const yj = y + j * kWide;
        sixColumnsWide<Wide, kWide>(panel + j * stride + columns, stride, count, below, yj);
        sixColumnsWide<Wide, kWide>(panel + j * stride + j + 6, stride, columns - j - 6, yj + 6 * kWide, yj);
        const double* const d = panel + j * stride + j;
        for (int c = 5; c >= 0; --c) {
            for (int k = c + 1; k < 6; ++k)
                for (int r = 0; r < kWide; ++r) yj[c * kWide + r] -= d[c * stride + k] * yj[k * kWide + r];
            scaleWide<kWide>(yj + c * kWide, d[c * stride + c]);
        }
    }
}
// NOLINTEND

}  // namespace yardcast::fem
