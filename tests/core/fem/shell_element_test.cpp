#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/fem/shell_element.h"

namespace yardcast {
namespace {

const fem::Corners kSkew{{{10, 20}, {47, 25}, {22, 51}}};
constexpr ShellSection kRim{50.0, -25.0, 50.0 * 50.0 * 50.0 / 12, 0.6};

fem::ElementStiffness stiffnessOf(const fem::Corners& corners, const ShellSection& section, double poisson = 0.2)
{
    fem::ElementStiffness k;
    fem::elementStiffness(corners, section, 30000, poisson, k);
    return k;
}

fem::ElementDisplacement times(const fem::ElementStiffness& k, const fem::ElementDisplacement& d)
{
    fem::ElementDisplacement f{};
    for (std::size_t i = 0; i < 18; ++i)
        for (std::size_t j = 0; j < 18; ++j) f[i] += k[i * 18 + j] * d[j];
    return f;
}

double greatest(const fem::ElementStiffness& k)
{
    return std::abs(*std::ranges::max_element(k, {}, [](double v) { return std::abs(v); }));
}

/// Of a symmetric matrix, ascending (Jacobi's rotations).
std::vector<double> eigenvalues(fem::ElementStiffness a)
{
    for (int sweep = 0; sweep < 60; ++sweep)
        for (std::size_t p = 0; p < 18; ++p)
            for (std::size_t q = p + 1; q < 18; ++q) {
                const double off = a[p * 18 + q];
                if (off == 0) continue;
                const double theta = (a[q * 18 + q] - a[p * 18 + p]) / (2 * off);
                const double t = (theta >= 0 ? 1 : -1) / (std::abs(theta) + std::sqrt(theta * theta + 1));
                const double c = 1 / std::sqrt(t * t + 1);
                const double s = t * c;
                for (std::size_t k = 0; k < 18; ++k) {
                    const double x = a[k * 18 + p];
                    const double y = a[k * 18 + q];
                    a[k * 18 + p] = c * x - s * y;
                    a[k * 18 + q] = s * x + c * y;
                }
                for (std::size_t k = 0; k < 18; ++k) {
                    const double x = a[p * 18 + k];
                    const double y = a[q * 18 + k];
                    a[p * 18 + k] = c * x - s * y;
                    a[q * 18 + k] = s * x + c * y;
                }
            }
    std::vector<double> values;
    for (std::size_t i = 0; i < 18; ++i) values.push_back(a[i * 19]);
    std::ranges::sort(values);
    return values;
}

/// A small motion of the rigid body: shift and turn about the origin, at corners in z = 0.
fem::ElementDisplacement rigid(const fem::Corners& corners, std::array<double, 3> shift, std::array<double, 3> turn)
{
    fem::ElementDisplacement d{};
    for (std::size_t k = 0; k < 3; ++k) {
        const Point p = corners[k];
        d[6 * k] = shift[0] - turn[2] * p.y;
        d[6 * k + 1] = shift[1] + turn[2] * p.x;
        d[6 * k + 2] = shift[2] + turn[0] * p.y - turn[1] * p.x;
        for (std::size_t i = 0; i < 3; ++i) d[6 * k + 3 + i] = turn[i];
    }
    return d;
}

TEST(ShellElement, IsSymmetric)
{
    const fem::ElementStiffness k = stiffnessOf(kSkew, kRim);
    for (std::size_t i = 0; i < 18; ++i)
        for (std::size_t j = 0; j < i; ++j) EXPECT_NEAR(k[i * 18 + j], k[j * 18 + i], 1e-13 * greatest(k));
}

TEST(ShellElement, HasSixMotionsWithoutEnergyAndTwelveWith)
{
    for (const double poisson : {0.0, 0.2, 0.3, 0.49}) {
        const std::vector<double> values = eigenvalues(stiffnessOf(kSkew, kRim, poisson));
        for (std::size_t i = 0; i < 6; ++i) EXPECT_LT(std::abs(values[i]), 1e-12 * values.back());
        // Forces per mm and moments per radian stand side by side, so the least real one is small but not nothing.
        EXPECT_GT(values[6], 1e-6 * values.back());
    }
}

TEST(ShellElement, RigidMotionsMakeNoForceWithTheCentroidBelowTheCorners)
{
    const fem::ElementStiffness k = stiffnessOf(kSkew, kRim);
    for (std::size_t i = 0; i < 6; ++i) {
        std::array<double, 3> shift{};
        std::array<double, 3> turn{};
        (i < 3 ? shift[i] : turn[i - 3]) = 1.0;
        const fem::ElementDisplacement d = rigid(kSkew, shift, turn);
        const double size = *std::ranges::max_element(d, {}, [](double v) { return std::abs(v); });
        for (const double f : times(k, d)) EXPECT_NEAR(f, 0.0, 1e-12 * greatest(k) * std::abs(size));
        for (const ShellForces& f : fem::elementForces(kSkew, kRim, 30000, 0.2, d))
            for (std::size_t j = 0; j < 3; ++j) {
                EXPECT_NEAR(f.force[j], 0.0, 1e-6);
                EXPECT_NEAR(f.moment[j], 0.0, 1e-4);
            }
    }
}

TEST(ShellElement, BendingInItsPlaneTakesTheRightEnergyInBlocksOfAnyShape)
{
    // Felippa 2003: two optimal triangles that make a rectangle hold the energy M^2 a / (2 E I) of pure bending
    // exactly, whatever the rectangle's sides and Poisson's ratio.
    for (const double poisson : {0.0, 0.2, 1.0 / 3})
        for (const double a : {1.0, 4.0, 16.0}) {
            const Point p[4] = {{-a / 2, -0.5}, {a / 2, -0.5}, {a / 2, 0.5}, {-a / 2, 0.5}};
            double energy = 0.0;
            for (const fem::Corners& corners : {fem::Corners{p[0], p[1], p[2]}, fem::Corners{p[0], p[2], p[3]}}) {
                fem::ElementStiffness k;
                fem::elementStiffness(corners, {1.0, 0.0, 1.0 / 12, 1.0}, 1.0, poisson, k);
                fem::ElementDisplacement d{};
                for (std::size_t i = 0; i < 3; ++i) {
                    const double x = corners[i].x;
                    const double y = corners[i].y;
                    d[6 * i] = -x * y;
                    d[6 * i + 1] = x * x / 2 + poisson * y * y / 2;
                    d[6 * i + 5] = x;
                }
                const fem::ElementDisplacement f = times(k, d);
                for (std::size_t i = 0; i < 18; ++i) energy += d[i] * f[i] / 2;
            }
            // Displacements of up to 100 times the strains' worth cancel: ten digits are left, and are found right.
            EXPECT_NEAR(energy / (a / 24), 1.0, 1e-10) << "sides " << a << " : 1, nu " << poisson;
        }
}

TEST(ShellElement, TurnedTrianglesAreAsStiff)
{
    // The energy of any displacement is the same when triangle and displacement are turned about z.
    const double c = std::cos(0.7);
    const double s = std::sin(0.7);
    fem::Corners turned;
    for (std::size_t i = 0; i < 3; ++i)
        turned[i] = {c * kSkew[i].x - s * kSkew[i].y, s * kSkew[i].x + c * kSkew[i].y};
    fem::ElementDisplacement d;
    for (std::size_t i = 0; i < 18; ++i) d[i] = std::sin(3.0 * double(i) + 1) * (i % 6 < 3 ? 1.0 : 0.03);
    fem::ElementDisplacement e;
    for (std::size_t i = 0; i < 18; i += 3) {
        e[i] = c * d[i] - s * d[i + 1];
        e[i + 1] = s * d[i] + c * d[i + 1];
        e[i + 2] = d[i + 2];
    }
    // Scaled twisting is a matter of the frame, so it is left out here.
    const ShellSection plain{kRim.areaMm, kRim.centreMm, kRim.inertiaMm3, 1.0};
    const fem::ElementStiffness a = stiffnessOf(kSkew, plain);
    const fem::ElementStiffness b = stiffnessOf(turned, plain);
    double first = 0.0;
    double second = 0.0;
    const fem::ElementDisplacement fa = times(a, d);
    const fem::ElementDisplacement fb = times(b, e);
    for (std::size_t i = 0; i < 18; ++i) {
        first += d[i] * fa[i];
        second += e[i] * fb[i];
    }
    EXPECT_NEAR(second / first, 1.0, 1e-12);
    EXPECT_GT(first, 0.0);
}

}  // namespace
}  // namespace yardcast
