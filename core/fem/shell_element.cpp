#include "core/fem/shell_element.h"

#include <algorithm>
#include <cmath>

#include "core/fem/triangle_shape.h"

namespace yardcast::fem {

namespace {

using Square = double[3][3];
/// Symmetric, of nine freedoms of the triangle, three a corner.
using Nine = double[9][9];

void mirror(Nine& k)
{
    for (int i = 0; i < 9; ++i)
        for (int j = 0; j < i; ++j) k[i][j] = k[j][i];
}

// ---- bending: freedoms w, turn about x, turn about y at each corner

/// The normal turns (turn y, -turn x) are quadratic: linear between corners plus, on each side, a bubble of height
/// q d / l^2 along the side d that makes the slope along it that of a cubic deflection. So the curvatures of a corner
/// are even ones, from the turns of the corners, plus those of the bubbles of its two sides, and the energy is a matrix
/// of six between the three even curvatures and the three bubbles.
void bendingStiffness(const TriangleShape& s, const PlaneModuli& e, Nine& stiffness)
{
    const auto momentsOf = [&](const double (&b)[3], double (&m)[3]) {
        m[0] = e.direct * b[0] + e.cross * b[1];
        m[1] = e.cross * b[0] + e.direct * b[1];
        m[2] = e.shear * b[2];
    };
    const auto product = [](const double (&a)[3], const double (&b)[3]) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    };
    double first[3][3];   // curvatures of the bubble of side i at corner i
    double second[3][3];  // and at corner i + 1
    double both[3][3];
    double momentsFirst[3][3];
    double momentsBoth[3][3];
    for (int i = 0; i < 3; ++i) {
        s.curvaturesOfBubble(i, kNext[i], first[i]);
        s.curvaturesOfBubble(i, i, second[i]);
        for (int row = 0; row < 3; ++row) both[i][row] = first[i][row] + second[i][row];
        momentsOf(first[i], momentsFirst[i]);
        momentsOf(both[i], momentsBoth[i]);
    }
    // A linear curvature's energy is a twelfth of the area times the products at the corners and that of their sum.
    Square bubbles;
    for (int i = 0; i < 3; ++i) {
        double momentsSecond[3];
        momentsOf(second[i], momentsSecond);
        bubbles[i][i] = s.area / 12 * (product(first[i], momentsFirst[i]) + product(second[i], momentsSecond) +
                                       product(both[i], momentsBoth[i]));
        const int j = kNext[i];
        bubbles[i][j] = bubbles[j][i] =
            s.area / 12 * (product(second[i], momentsFirst[j]) + product(both[i], momentsBoth[j]));
    }

    // From freedoms to bubbles: side i has corner i's three freedoms and those of corner i + 1.
    double height[3][3];  // of corner i; those of corner i + 1 differ in the sign of w
    for (int i = 0; i < 3; ++i) {
        const double k = s.bubble(i);
        height[i][0] = 1.5 * k;
        height[i][1] = 0.75 * k * s.sideY[i];
        height[i][2] = -0.75 * k * s.sideX[i];
    }
    // What each freedom by itself calls up: even moments and forces on the bubbles.
    double even[9][3];
    double onBubble[9][3];
    for (int corner = 0; corner < 3; ++corner) {
        const int before = kLast[corner];
        const double gx = s.gradientX[corner];
        const double gy = s.gradientY[corner];
        for (int f = 0; f < 3; ++f) {
            const double here = height[corner][f];
            const double there = f == 0 ? -height[before][f] : height[before][f];
            const double curvature[3] = {f == 2 ? -gx : 0.0, f == 1 ? gy : 0.0, f == 0 ? 0.0 : f == 1 ? gx : -gy};
            double m[3];
            momentsOf(curvature, m);
            double* const evenOf = even[3 * corner + f];
            for (int row = 0; row < 3; ++row)
                evenOf[row] = s.area * (m[row] + (momentsBoth[corner][row] * here + momentsBoth[before][row] * there) / 3);
            double* const bubbleOf = onBubble[3 * corner + f];
            for (int i = 0; i < 3; ++i)
                bubbleOf[i] = s.area / 3 * product(momentsBoth[i], curvature) + bubbles[i][corner] * here +
                              bubbles[i][before] * there;
        }
    }
    for (int corner = 0; corner < 3; ++corner) {
        const int before = kLast[corner];
        const double gx = s.gradientX[corner];
        const double gy = s.gradientY[corner];
        const double* const here = height[corner];
        const double* const there = height[before];
        double* const w = stiffness[3 * corner];
        double* const turnX = stiffness[3 * corner + 1];
        double* const turnY = stiffness[3 * corner + 2];
        for (int j = 3 * corner; j < 9; ++j) {
            const double a = onBubble[j][corner];
            const double b = onBubble[j][before];
            const double* const m = even[j];
            w[j] = here[0] * a - there[0] * b;
            turnX[j] = gy * m[1] + gx * m[2] + here[1] * a + there[1] * b;
            turnY[j] = -gx * m[0] - gy * m[2] + here[2] * a + there[2] * b;
        }
    }
    mirror(stiffness);
}

// ---- membrane: freedoms u, v, turn about z at each corner

/// Energy of the three hierarchical turns (those of the corners less that of the triangle), from the deviation of the
/// strains at each corner from their mean. These sum to nothing over the corners, so their energy adds to that of the
/// mean, and is a twelfth of the area times the products at the corners.
void energyOfTurns(const TriangleShape& s, const PlaneModuli& e, double poisson, Square& sum)
{
    const double beta0 = std::max((1 - 4 * poisson * poisson) / 2, 0.01);
    const double scale = 1.5 * std::sqrt(beta0) * 2 * s.area / 3 / (4 * s.area * s.area);
    constexpr double b1 = 1, b2 = 2, b3 = 1, b4 = 0, b5 = 1, b6 = -1, b7 = -1, b8 = -1, b9 = -2;
    constexpr double natural[3][3][3] = {{{b1, b2, b3}, {b4, b5, b6}, {b7, b8, b9}},
                                         {{b9, b7, b8}, {b3, b1, b2}, {b6, b4, b5}},
                                         {{b5, b6, b4}, {b8, b9, b7}, {b2, b3, b1}}};
    // From strains along the three sides, each times its length squared, to x, y, xy.
    Square toAxes;
    for (int side = 0; side < 3; ++side) {
        const double xa = -s.sideX[kNext[side]];
        const double ya = -s.sideY[kNext[side]];
        const double xb = s.sideX[kLast[side]];
        const double yb = s.sideY[kLast[side]];
        // For side 21: y23 y13, x23 x13, y23 x31 + x32 y13.
        toAxes[0][side] = scale * ya * yb;
        toAxes[1][side] = scale * xa * xb;
        toAxes[2][side] = -scale * (ya * xb + xa * yb);
    }
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) sum[i][j] = 0.0;
    for (const auto& corner : natural) {
        Square at;
        for (int row = 0; row < 3; ++row)
            for (int j = 0; j < 3; ++j)
                at[row][j] = toAxes[row][0] * corner[0][j] + toAxes[row][1] * corner[1][j] +
                             toAxes[row][2] * corner[2][j];
        for (int j = 0; j < 3; ++j) {
            const double stress[3] = {e.direct * at[0][j] + e.cross * at[1][j],
                                      e.cross * at[0][j] + e.direct * at[1][j], e.shear * at[2][j]};
            for (int i = 0; i <= j; ++i)
                sum[i][j] += s.area / 12 * (at[0][i] * stress[0] + at[1][i] * stress[1] + at[2][i] * stress[2]);
        }
    }
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < i; ++j) sum[i][j] = sum[j][i];
}

void membraneStiffness(const TriangleShape& s, const PlaneModuli& e, double poisson, Nine& stiffness)
{
    constexpr double alpha = 1.5;
    // Mean strains x, y, xy of each freedom, and the stresses they call up.
    double mean[9][3];
    double stress[9][3];
    for (int k = 0; k < 3; ++k) {
        // In the paper's terms for corner 1: y23, x32 and, of the neighbouring sides, x31 x12 and y13 y21.
        const double gx = s.gradientX[k];
        const double gy = s.gradientY[k];
        const double x31 = -s.sideX[kLast[k]];
        const double x12 = -s.sideX[k];
        const double y13 = s.sideY[kLast[k]];
        const double y21 = s.sideY[k];
        const double of[3][3] = {{gx, 0.0, gy},
                                 {0.0, gy, gx},
                                 {alpha / 6 * gx * (y13 - y21), alpha / 6 * gy * (x31 - x12),
                                  alpha / 6 / s.area * (x31 * y13 - x12 * y21)}};
        for (int f = 0; f < 3; ++f) {
            double* const m = mean[3 * k + f];
            double* const t = stress[3 * k + f];
            for (int row = 0; row < 3; ++row) m[row] = of[f][row];
            t[0] = s.area * (e.direct * m[0] + e.cross * m[1]);
            t[1] = s.area * (e.cross * m[0] + e.direct * m[1]);
            t[2] = s.area * e.shear * m[2];
        }
    }
    Square turns;
    energyOfTurns(s, e, poisson, turns);
    const double column[3] = {turns[0][0] + turns[1][0] + turns[2][0], turns[0][1] + turns[1][1] + turns[2][1],
                              turns[0][2] + turns[1][2] + turns[2][2]};
    const double all = column[0] + column[1] + column[2];
    // What u and v of a corner turn the triangle by, with the other sign.
    double ofU[3];
    double ofV[3];
    for (int k = 0; k < 3; ++k) {
        ofU[k] = s.gradientY[k] / 2;
        ofV[k] = -s.gradientX[k] / 2;
    }
    for (int a = 0; a < 3; ++a) {
        double* const u = stiffness[3 * a];
        double* const v = stiffness[3 * a + 1];
        double* const turn = stiffness[3 * a + 2];
        const double* const m = mean[3 * a + 2];
        for (int b = a; b < 3; ++b) {
            const double moved[3] = {all * ofU[b], all * ofV[b], column[b]};
            const double turned[3] = {column[a] * ofU[b], column[a] * ofV[b], turns[a][b]};
            for (int f = 0; f < 3; ++f) {
                const int j = 3 * b + f;
                const double* const t = stress[j];
                u[j] = s.gradientX[a] * t[0] + s.gradientY[a] * t[2] + ofU[a] * moved[f];
                v[j] = s.gradientY[a] * t[1] + s.gradientX[a] * t[2] + ofV[a] * moved[f];
                turn[j] = m[0] * t[0] + m[1] * t[1] + m[2] * t[2] + turned[f];
            }
        }
    }
    mirror(stiffness);
}

/// K of a frame turned so that x runs along (c, s), in the frame itself: displacements and turns as vectors.
void turnBack(double c, double s, ElementStiffness& stiffness)
{
    const auto turnPair = [c, s](double& x, double& y) {
        const double turned = c * x - s * y;
        y = s * x + c * y;
        x = turned;
    };
    for (std::size_t i = 0; i < 18; ++i)
        for (std::size_t j = 0; j < 18; j += 3) turnPair(stiffness[i * 18 + j], stiffness[i * 18 + j + 1]);
    for (std::size_t j = 0; j < 18; ++j)
        for (std::size_t i = 0; i < 18; i += 3) turnPair(stiffness[i * 18 + j], stiffness[(i + 1) * 18 + j]);
}

}  // namespace

void elementStiffness(const Corners& corners, const ShellSection& section, double elasticMpa, double poisson,
                      ElementStiffness& stiffness)
{
    const auto [along, aside] = section.twistAlong;
    const bool turned = section.twistFactor < 1.0 && std::abs(aside) > 0.0;
    // A strip's twist is soft along and across it: the element is made in its directions and turned back.
    Corners own = corners;
    if (turned)
        for (Point& p : own) p = {along * p.x + aside * p.y, along * p.y - aside * p.x};
    const TriangleShape s(own);
    const PlaneModuli e = planeStress(elasticMpa, poisson);
    Nine bending;
    bendingStiffness(s, {e.direct * section.inertiaMm3, e.cross * section.inertiaMm3,
                         e.shear * section.inertiaMm3 * section.twistFactor}, bending);
    Nine membrane;
    membraneStiffness(s, {e.direct * section.areaMm, e.cross * section.areaMm, e.shear * section.areaMm}, poisson,
                      membrane);

    // The centroid at z = c moves by u + c (turn y), v - c (turn x).
    const double c = section.centreMm;
    for (std::size_t a = 0; a < 3; ++a)
        for (std::size_t b = 0; b < 3; ++b) {
            double* const k = &stiffness[a * 6 * 18 + b * 6];
            const auto m = [&](std::size_t i, std::size_t j) { return membrane[3 * a + i][3 * b + j]; };
            const auto p = [&](std::size_t i, std::size_t j) { return bending[3 * a + i][3 * b + j]; };
            const double rows[6][6] = {
                {m(0, 0), m(0, 1), 0.0, -c * m(0, 1), c * m(0, 0), m(0, 2)},
                {m(1, 0), m(1, 1), 0.0, -c * m(1, 1), c * m(1, 0), m(1, 2)},
                {0.0, 0.0, p(0, 0), p(0, 1), p(0, 2), 0.0},
                {-c * m(1, 0), -c * m(1, 1), p(1, 0), p(1, 1) + c * c * m(1, 1), p(1, 2) - c * c * m(1, 0),
                 -c * m(1, 2)},
                {c * m(0, 0), c * m(0, 1), p(2, 0), p(2, 1) - c * c * m(0, 1), p(2, 2) + c * c * m(0, 0),
                 c * m(0, 2)},
                {m(2, 0), m(2, 1), 0.0, -c * m(2, 1), c * m(2, 0), m(2, 2)}};
            for (std::size_t i = 0; i < 6; ++i)
                for (std::size_t j = 0; j < 6; ++j) k[i * 18 + j] = rows[i][j];
        }
    if (turned) turnBack(along, aside, stiffness);
}

}  // namespace yardcast::fem
