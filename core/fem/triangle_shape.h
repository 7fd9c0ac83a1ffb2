#pragma once

#include "core/fem/shell_element.h"

namespace yardcast::fem {

inline constexpr int kNext[3] = {1, 2, 0};
inline constexpr int kLast[3] = {2, 0, 1};

/// Differences of coordinates; index k belongs to the corner k or to the side from corner k to corner k + 1.
struct TriangleShape {
    double sideX[3];
    double sideY[3];
    double gradientX[3];  ///< of the area coordinate of corner k
    double gradientY[3];
    double area;

    explicit TriangleShape(const Corners& c)
    {
        for (int k = 0; k < 3; ++k) {
            const Point side = c[std::size_t(kNext[k])] - c[std::size_t(k)];
            sideX[k] = side.x;
            sideY[k] = side.y;
        }
        const double doubled = sideX[0] * sideY[1] - sideY[0] * sideX[1];
        const double perDoubled = 1 / doubled;
        area = doubled / 2;
        for (int k = 0; k < 3; ++k) {
            // The side opposite corner k is the one from k + 1.
            gradientX[k] = -sideY[kNext[k]] * perDoubled;
            gradientY[k] = sideX[kNext[k]] * perDoubled;
        }
    }
    /// -4 / l^2 of a side: what makes the height of the bubble of a side a curvature along it.
    double bubble(int side) const { return -4 / (sideX[side] * sideX[side] + sideY[side] * sideY[side]); }
    /// Curvatures w,xx w,yy 2w,xy at a corner for a bubble along a side that ends there, `other` its other end.
    void curvaturesOfBubble(int side, int other, double (&at)[3]) const
    {
        at[0] = gradientX[other] * sideX[side];
        at[1] = gradientY[other] * sideY[side];
        at[2] = gradientY[other] * sideX[side] + gradientX[other] * sideY[side];
    }
};

/// Plane stress: the three moduli that are not zero.
struct PlaneModuli {
    double direct;
    double cross;
    double shear;
};

inline PlaneModuli planeStress(double elasticMpa, double poisson)
{
    const double direct = elasticMpa / (1 - poisson * poisson);
    return {direct, direct * poisson, direct * (1 - poisson) / 2};
}

}  // namespace yardcast::fem
