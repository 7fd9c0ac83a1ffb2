#include "core/fem/membrane_strain.h"

#include <cmath>

namespace yardcast::fem {

namespace {

constexpr int kStates = 4;

/// Cholesky factor of a symmetric positive definite matrix, in its lower triangle, with reciprocals on the diagonal.
template <int n>
void factor(double (&a)[n][n])
{
    for (int j = 0; j < n; ++j) {
        for (int k = 0; k < j; ++k) a[j][j] -= a[j][k] * a[j][k];
        a[j][j] = 1 / std::sqrt(a[j][j]);
        for (int i = j + 1; i < n; ++i) {
            for (int k = 0; k < j; ++k) a[i][j] -= a[i][k] * a[j][k];
            a[i][j] *= a[j][j];
        }
    }
}

template <int n>
void solve(const double (&a)[n][n], double (&x)[n])
{
    for (int i = 0; i < n; ++i) {
        for (int k = 0; k < i; ++k) x[i] -= a[i][k] * x[k];
        x[i] *= a[i][i];
    }
    for (int i = n - 1; i >= 0; --i) {
        for (int k = i + 1; k < n; ++k) x[i] -= a[k][i] * x[k];
        x[i] *= a[i][i];
    }
}

/// The straight-sided triangle, about its centroid, of area 1/2.
struct Straight {
    double x[3];
    double y[3];
    double gradientX[3];
    double gradientY[3];

    explicit Straight(const Corners& c)
    {
        const Point centre = (c[0] + c[1] + c[2]) * (1.0 / 3);
        const double scale = 1 / std::sqrt(cross(c[1] - c[0], c[2] - c[0]));
        for (std::size_t i = 0; i < 3; ++i) {
            x[i] = (c[i].x - centre.x) * scale;
            y[i] = (c[i].y - centre.y) * scale;
        }
        for (int i = 0; i < 3; ++i) {
            const int j = (i + 1) % 3;
            const int k = (i + 2) % 3;
            gradientX[i] = y[j] - y[k];
            gradientY[i] = x[k] - x[j];
        }
    }
    void deform(const double (&u)[3], const double (&v)[3], double (&strain)[3], double& turn) const
    {
        strain[0] = strain[1] = strain[2] = turn = 0.0;
        for (int i = 0; i < 3; ++i) {
            strain[0] += gradientX[i] * u[i];
            strain[1] += gradientY[i] * v[i];
            strain[2] += gradientY[i] * u[i] + gradientX[i] * v[i];
            turn += (gradientX[i] * v[i] - gradientY[i] * u[i]) / 2;
        }
    }
};

/// A linear stress in equilibrium, seen from the corners.
struct State {
    double strain[3][3];  ///< x, y, xy at each corner
    double excess[3][3];  ///< the same less the strain of the straight-sided triangle
    double turn[3];       ///< turn of each corner less that of the straight-sided triangle
};

/// From the stress function x3, x2 y, x y2 or y3, for a modulus of 1.
State stateOf(const Straight& t, int which, double poisson)
{
    // Along x and y: stress x, stress y, stress xy.
    constexpr double stresses[kStates][3][2] = {{{0, 0}, {6, 0}, {0, 0}},
                                                {{0, 0}, {0, 2}, {-2, 0}},
                                                {{2, 0}, {0, 0}, {0, -2}},
                                                {{0, 6}, {0, 0}, {0, 0}}};
    const auto& s = stresses[which];
    double ex[2];
    double ey[2];
    double g[2];
    for (int k = 0; k < 2; ++k) {
        ex[k] = s[0][k] - poisson * s[1][k];
        ey[k] = s[1][k] - poisson * s[0][k];
        g[k] = 2 * (1 + poisson) * s[2][k];
    }
    const double bendX = g[1] - ey[0];  // of u along y
    const double bendY = g[0] - ex[1];  // of v along x
    double u[3];
    double v[3];
    for (int i = 0; i < 3; ++i) {
        const double x = t.x[i];
        const double y = t.y[i];
        u[i] = ex[0] * x * x / 2 + ex[1] * x * y + bendX * y * y / 2;
        v[i] = ey[1] * y * y / 2 + ey[0] * x * y + bendY * x * x / 2;
    }
    double even[3];
    double turn;
    t.deform(u, v, even, turn);
    State state;
    for (int i = 0; i < 3; ++i) {
        const double x = t.x[i];
        const double y = t.y[i];
        state.strain[i][0] = ex[0] * x + ex[1] * y;
        state.strain[i][1] = ey[0] * x + ey[1] * y;
        state.strain[i][2] = g[0] * x + g[1] * y;
        for (int k = 0; k < 3; ++k) state.excess[i][k] = state.strain[i][k] - even[k];
        state.turn[i] = (ey[0] * y + bendY * x - ex[1] * x - bendX * y) / 2 - turn;
    }
    return state;
}

/// Strains about the centroid sum to nothing over the corners, so of the integral over the triangle only the products of
/// what is at the same corner are left (the factor is of no account).
double energy(const State& a, const State& b, double poisson)
{
    double sum = 0.0;
    for (int i = 0; i < 3; ++i) {
        const double* const p = a.strain[i];
        const double* const q = b.strain[i];
        sum += p[0] * q[0] + p[1] * q[1] + poisson * (p[0] * q[1] + p[1] * q[0]) + (1 - poisson) / 2 * p[2] * q[2];
    }
    return sum;
}

}  // namespace

StrainsOfTurns strainsOfTurns(const Corners& corners, double poisson)
{
    const Straight t(corners);
    State states[kStates];
    for (int s = 0; s < kStates; ++s) states[s] = stateOf(t, s, poisson);

    // Of the four states' amounts a, the least a' W a / 2 with T a = turns: a = inverse(W) T' m.
    double energies[kStates][kStates];
    for (int p = 0; p < kStates; ++p)
        for (int q = 0; q <= p; ++q) energies[p][q] = energy(states[p], states[q], poisson);
    factor(energies);
    double byTurns[3][kStates];
    for (int i = 0; i < 3; ++i) {
        for (int s = 0; s < kStates; ++s) byTurns[i][s] = states[s].turn[i];
        solve(energies, byTurns[i]);
    }
    double matrix[3][3];
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j <= i; ++j) {
            matrix[i][j] = 0.0;
            for (int s = 0; s < kStates; ++s) matrix[i][j] += states[s].turn[i] * byTurns[j][s];
        }
    factor(matrix);
    StrainsOfTurns strains;
    for (std::size_t row = 0; row < 9; ++row) {
        double by[3] = {};
        for (int i = 0; i < 3; ++i)
            for (int s = 0; s < kStates; ++s) by[i] += byTurns[i][s] * states[s].excess[row / 3][row % 3];
        solve(matrix, by);
        strains[row] = {by[0], by[1], by[2]};
    }
    return strains;
}

}  // namespace yardcast::fem
