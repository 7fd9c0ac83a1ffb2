#include "core/fem/shell_element.h"

#include <algorithm>
#include <cmath>

#include "core/fem/membrane_strain.h"

namespace yardcast::fem {

namespace {

/// Rows of strains or curvatures (x, y, xy) over nine freedoms of the triangle.
using Operator = std::array<std::array<double, 9>, 3>;
using Square = std::array<std::array<double, 3>, 3>;
using Nine = std::array<std::array<double, 9>, 9>;

/// Differences of coordinates; index k belongs to the corner k or to the side from corner k to corner k + 1.
struct Shape {
    double sideX[3];
    double sideY[3];
    double sideSquared[3];
    double gradientX[3];  ///< of the area coordinate of corner k
    double gradientY[3];
    double area;
};

constexpr int kNext[3] = {1, 2, 0};
constexpr int kLast[3] = {2, 0, 1};

Shape shapeOf(const Corners& c)
{
    Shape s;
    for (int k = 0; k < 3; ++k) {
        const Point side = c[std::size_t(kNext[k])] - c[std::size_t(k)];
        s.sideX[k] = side.x;
        s.sideY[k] = side.y;
        s.sideSquared[k] = side.x * side.x + side.y * side.y;
    }
    const double doubled = s.sideX[0] * s.sideY[1] - s.sideY[0] * s.sideX[1];
    s.area = doubled / 2;
    for (int k = 0; k < 3; ++k) {
        // The side opposite corner k is the one from k + 1.
        s.gradientX[k] = -s.sideY[kNext[k]] / doubled;
        s.gradientY[k] = s.sideX[kNext[k]] / doubled;
    }
    return s;
}

// ---- bending: freedoms w, turn about x, turn about y at each corner

/// Curvatures w,xx w,yy 2w,xy at each corner.
void curvatures(const Shape& s, std::array<Operator, 3>& at)
{
    // The normal turns b = (turn y, -turn x) are quadratic: linear between corners plus, on each side, a bubble of
    // height q d / l^2 along the side d that makes the slope along it that of a cubic deflection.
    Operator constant{};
    for (int k = 0; k < 3; ++k) {
        const auto w = std::size_t(3 * k);
        constant[0][w + 2] = -s.gradientX[k];
        constant[1][w + 1] = s.gradientY[k];
        constant[2][w + 2] = -s.gradientY[k];
        constant[2][w + 1] = s.gradientX[k];
    }
    at = {constant, constant, constant};
    for (int i = 0; i < 3; ++i) {
        const int j = kNext[i];
        const double dx = s.sideX[i];
        const double dy = s.sideY[i];
        const double height[6] = {1.5, 0.75 * dy, -0.75 * dx, -1.5, 0.75 * dy, -0.75 * dx};
        const std::size_t freedom[6] = {std::size_t(3 * i),     std::size_t(3 * i + 1), std::size_t(3 * i + 2),
                                        std::size_t(3 * j),     std::size_t(3 * j + 1), std::size_t(3 * j + 2)};
        for (int end = 0; end < 2; ++end) {
            const int corner = end == 0 ? i : j;
            const int other = end == 0 ? j : i;
            const double k = -4 / s.sideSquared[i];
            const double strain[3] = {k * s.gradientX[other] * dx, k * s.gradientY[other] * dy,
                                      k * (s.gradientY[other] * dx + s.gradientX[other] * dy)};
            Operator& there = at[std::size_t(corner)];
            for (std::size_t row = 0; row < 3; ++row)
                for (int f = 0; f < 6; ++f) there[row][freedom[f]] += strain[row] * height[f];
        }
    }
}

// ---- membrane: freedoms u, v, turn about z at each corner

/// Mean strains over the triangle.
void meanStrains(const Shape& s, Operator& mean)
{
    const double half = 1 / (2 * s.area);
    constexpr double alpha = 1.5;
    for (int k = 0; k < 3; ++k) {
        const int next = kNext[k];
        const int last = kLast[k];
        const auto u = std::size_t(3 * k);
        // In the paper's terms for corner 1: y23, x32 and, of the neighbouring sides, x31 x12 and y13 y21.
        const double y23 = -s.sideY[next];
        const double x32 = s.sideX[next];
        const double x31 = -s.sideX[last];
        const double x12 = -s.sideX[k];
        const double y13 = s.sideY[last];
        const double y21 = s.sideY[k];
        mean[0][u] = half * y23;
        mean[1][u] = 0.0;
        mean[2][u] = half * x32;
        mean[0][u + 1] = 0.0;
        mean[1][u + 1] = half * x32;
        mean[2][u + 1] = half * y23;
        mean[0][u + 2] = half * alpha / 6 * y23 * (y13 - y21);
        mean[1][u + 2] = half * alpha / 6 * x32 * (x31 - x12);
        mean[2][u + 2] = half * alpha / 3 * (x31 * y13 - x12 * y21);
    }
}

/// The three hierarchical turns: those of the corners less that of the triangle.
void hierarchicalTurns(const Shape& s, Operator& turns)
{
    const double k = 1 / (4 * s.area);
    for (std::size_t row = 0; row < 3; ++row)
        for (int corner = 0; corner < 3; ++corner) {
            const auto u = std::size_t(3 * corner);
            const int opposite = kNext[corner];
            turns[row][u] = k * s.sideX[opposite];
            turns[row][u + 1] = k * s.sideY[opposite];
            turns[row][u + 2] = row == std::size_t(corner) ? 1.0 : 0.0;
        }
}

/// At each corner the deviation of the strains from the mean, from the three hierarchical turns.
void deviations(const Shape& s, double poisson, std::array<Square, 3>& at)
{
    const double beta0 = std::max((1 - 4 * poisson * poisson) / 2, 0.01);
    const double scale = 1.5 * std::sqrt(beta0) * 2 * s.area / 3;
    constexpr double b1 = 1, b2 = 2, b3 = 1, b4 = 0, b5 = 1, b6 = -1, b7 = -1, b8 = -1, b9 = -2;
    constexpr double natural[3][3][3] = {{{b1, b2, b3}, {b4, b5, b6}, {b7, b8, b9}},
                                         {{b9, b7, b8}, {b3, b1, b2}, {b6, b4, b5}},
                                         {{b5, b6, b4}, {b8, b9, b7}, {b2, b3, b1}}};
    // From strains along the three sides to x, y, xy.
    const double k = 1 / (4 * s.area * s.area);
    double toAxes[3][3];
    for (int side = 0; side < 3; ++side) {
        const int next = kNext[side];
        const int last = kLast[side];
        const double xa = -s.sideX[next];
        const double ya = -s.sideY[next];
        const double xb = s.sideX[last];
        const double yb = s.sideY[last];
        // For side 21: y23 y13, x23 x13, y23 x31 + x32 y13.
        toAxes[0][side] = k * ya * yb * s.sideSquared[side];
        toAxes[1][side] = k * xa * xb * s.sideSquared[side];
        toAxes[2][side] = -k * (ya * xb + xa * yb) * s.sideSquared[side];
    }
    for (std::size_t corner = 0; corner < 3; ++corner)
        for (std::size_t row = 0; row < 3; ++row)
            for (std::size_t column = 0; column < 3; ++column) {
                double sum = 0.0;
                for (std::size_t side = 0; side < 3; ++side)
                    sum += toAxes[row][side] * natural[corner][side][column] / s.sideSquared[side];
                at[corner][row][column] = scale * sum;
            }
}

/// Plane stress: the three moduli that are not zero.
struct Elastic {
    double direct;
    double cross;
    double shear;
};

Elastic planeStress(double elasticMpa, double poisson)
{
    const double direct = elasticMpa / (1 - poisson * poisson);
    return {direct, direct * poisson, direct * (1 - poisson) / 2};
}

/// sum += weight * b' E b
void addEnergy(const Operator& b, const Elastic& e, double weight, Nine& sum)
{
    Operator stress;
    for (std::size_t j = 0; j < 9; ++j) {
        stress[0][j] = weight * (e.direct * b[0][j] + e.cross * b[1][j]);
        stress[1][j] = weight * (e.cross * b[0][j] + e.direct * b[1][j]);
        stress[2][j] = weight * e.shear * b[2][j];
    }
    for (std::size_t i = 0; i < 9; ++i)
        for (std::size_t j = 0; j < 9; ++j)
            sum[i][j] += b[0][i] * stress[0][j] + b[1][i] * stress[1][j] + b[2][i] * stress[2][j];
}

void bendingStiffness(const Shape& s, const Elastic& e, Nine& stiffness)
{
    std::array<Operator, 3> at;
    curvatures(s, at);
    // The energy is quadratic in the triangle: the middles of the sides integrate it exactly.
    for (std::size_t k = 0; k < 3; ++k) {
        const Operator& a = at[k];
        const Operator& b = at[std::size_t(kNext[k])];
        Operator middle;
        for (std::size_t row = 0; row < 3; ++row)
            for (std::size_t j = 0; j < 9; ++j) middle[row][j] = (a[row][j] + b[row][j]) / 2;
        addEnergy(middle, e, s.area / 3, stiffness);
    }
}

void membraneStiffness(const Shape& s, const Elastic& e, double poisson, Nine& stiffness)
{
    Operator mean;
    meanStrains(s, mean);
    addEnergy(mean, e, s.area, stiffness);

    // The deviations sum to nothing over the corners, so their energy adds to that of the mean.
    std::array<Square, 3> at;
    deviations(s, poisson, at);
    Square byTurns{};
    for (std::size_t k = 0; k < 3; ++k) {
        const Square& a = at[k];
        const Square& b = at[std::size_t(kNext[k])];
        double m[3][3];
        for (std::size_t row = 0; row < 3; ++row)
            for (std::size_t j = 0; j < 3; ++j) m[row][j] = (a[row][j] + b[row][j]) / 2;
        for (std::size_t j = 0; j < 3; ++j) {
            const double stress[3] = {e.direct * m[0][j] + e.cross * m[1][j], e.cross * m[0][j] + e.direct * m[1][j],
                                      e.shear * m[2][j]};
            for (std::size_t i = 0; i < 3; ++i)
                byTurns[i][j] += s.area / 3 * (m[0][i] * stress[0] + m[1][i] * stress[1] + m[2][i] * stress[2]);
        }
    }
    Operator turns;
    hierarchicalTurns(s, turns);
    for (std::size_t j = 0; j < 9; ++j) {
        double moment[3];
        for (std::size_t row = 0; row < 3; ++row)
            moment[row] = byTurns[row][0] * turns[0][j] + byTurns[row][1] * turns[1][j] + byTurns[row][2] * turns[2][j];
        for (std::size_t i = 0; i < 9; ++i)
            stiffness[i][j] += turns[0][i] * moment[0] + turns[1][i] * moment[1] + turns[2][i] * moment[2];
    }
}

}  // namespace

void elementStiffness(const Corners& corners, const ShellSection& section, double elasticMpa, double poisson,
                      ElementStiffness& stiffness)
{
    const Shape s = shapeOf(corners);
    const Elastic e = planeStress(elasticMpa, poisson);
    Nine bending{};
    bendingStiffness(s, {e.direct * section.inertiaMm3, e.cross * section.inertiaMm3,
                         e.shear * section.inertiaMm3 * section.twistFactor}, bending);
    Nine membrane{};
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
}

std::array<ShellForces, 3> elementForces(const Corners& corners, const ShellSection& section, double elasticMpa,
                                         double poisson, const ElementDisplacement& displacement)
{
    const Shape s = shapeOf(corners);
    const Elastic e = planeStress(elasticMpa, poisson);
    double plate[9];
    std::array<double, 9> disc;
    for (std::size_t k = 0; k < 3; ++k) {
        const double* const d = &displacement[6 * k];
        disc[3 * k] = d[0] + section.centreMm * d[4];
        disc[3 * k + 1] = d[1] - section.centreMm * d[3];
        disc[3 * k + 2] = d[5];
        for (std::size_t i = 0; i < 3; ++i) plate[3 * k + i] = d[2 + i];
    }
    std::array<Operator, 3> bend;
    curvatures(s, bend);
    const auto strains = cornerStrains(corners, poisson, disc);
    std::array<ShellForces, 3> forces;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto& strain = strains[k];
        double curvature[3] = {};
        for (std::size_t row = 0; row < 3; ++row)
            for (std::size_t j = 0; j < 9; ++j) curvature[row] += bend[k][row][j] * plate[j];
        const double t = section.areaMm;
        const double i = section.inertiaMm3;
        forces[k].force = {t * (e.direct * strain[0] + e.cross * strain[1]),
                           t * (e.cross * strain[0] + e.direct * strain[1]), t * e.shear * strain[2]};
        forces[k].moment = {i * (e.direct * curvature[0] + e.cross * curvature[1]),
                            i * (e.cross * curvature[0] + e.direct * curvature[1]),
                            i * section.twistFactor * e.shear * curvature[2]};
    }
    double shear[2] = {};
    for (std::size_t k = 0; k < 3; ++k) {
        const auto& m = forces[k].moment;
        shear[0] -= s.gradientX[k] * m[0] + s.gradientY[k] * m[2];
        shear[1] -= s.gradientX[k] * m[2] + s.gradientY[k] * m[1];
    }
    for (ShellForces& f : forces) f.shear = {shear[0], shear[1]};
    return forces;
}

}  // namespace yardcast::fem
