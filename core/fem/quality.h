#pragma once

#include <algorithm>
#include <cmath>

#include "core/geometry/point.h"

namespace yardcast::fem {

/// Squared sine of the least angle of a triangle (which is at most 60 degrees); 0 where it is clockwise or flat.
inline double leastSineSquared(Point a, Point b, Point c)
{
    const double twice = cross(b - a, c - a);
    if (twice <= 0.0) return 0.0;
    double u = dot(b - a, b - a), v = dot(c - b, c - b), w = dot(a - c, a - c);
    if (u > v) std::swap(u, v);
    if (u > w) std::swap(u, w);
    return twice * twice / (v * w);  // the least angle lies opposite the shortest side u
}

inline double sineSquaredOfDeg(double degrees)
{
    const double sine = std::sin(degrees * 3.14159265358979323846 / 180.0);
    return sine * sine;
}

}  // namespace yardcast::fem
