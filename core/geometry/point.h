#pragma once

#include <cmath>

namespace yardcast {

/// A point or a vector in a plane, mm.
struct Point {
    double x = 0.0;
    double y = 0.0;

    friend bool operator==(const Point&, const Point&) = default;
};

/// Width along x and depth along y, mm.
struct Size {
    double width = 0.0;
    double depth = 0.0;

    friend bool operator==(const Size&, const Size&) = default;
};

inline Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
inline Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
inline Point operator*(Point a, double k) { return {a.x * k, a.y * k}; }
inline double dot(Point a, Point b) { return a.x * b.x + a.y * b.y; }
/// z component of a x b; positive when b lies counter-clockwise of a.
inline double cross(Point a, Point b) { return a.x * b.y - a.y * b.x; }
inline double length(Point a) { return std::hypot(a.x, a.y); }
inline double distance(Point a, Point b) { return length(b - a); }
/// a turned a quarter counter-clockwise.
inline Point leftNormal(Point a) { return {-a.y, a.x}; }

/// Where a part's own frame lies in the plan: turned about its origin by `turnDeg`
/// (degrees, counter-clockwise), then moved to `at`.
struct Placement {
    Point at;
    double turnDeg = 0.0;

    /// From the part's own frame to plan axes. Exact at multiples of 90 degrees.
    Point toPlan(Point own) const;
    /// The inverse of `toPlan`.
    Point toOwn(Point plan) const;
    /// A direction from own frame to plan axes (no translation).
    Point directionToPlan(Point own) const;
    Point directionToOwn(Point plan) const;

    friend bool operator==(const Placement&, const Placement&) = default;
};

/// Sine and cosine of an angle in degrees; exact at multiples of 90.
struct SineCosine {
    double sine = 0.0;
    double cosine = 1.0;
};
SineCosine sineCosineDeg(double degrees);

}  // namespace yardcast
