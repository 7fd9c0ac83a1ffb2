#include "core/geometry/point.h"

#include <numbers>

namespace yardcast {

SineCosine sineCosineDeg(double degrees)
{
    const double turn = std::remainder(degrees, 360.0);
    if (turn == 0.0) return {0.0, 1.0};
    if (turn == 90.0) return {1.0, 0.0};
    if (turn == -90.0) return {-1.0, 0.0};
    if (turn == 180.0 || turn == -180.0) return {0.0, -1.0};
    const double radians = turn * std::numbers::pi / 180.0;
    return {std::sin(radians), std::cos(radians)};
}

Point Placement::directionToPlan(Point own) const
{
    const SineCosine t = sineCosineDeg(turnDeg);
    return {own.x * t.cosine - own.y * t.sine, own.x * t.sine + own.y * t.cosine};
}

Point Placement::directionToOwn(Point plan) const
{
    const SineCosine t = sineCosineDeg(turnDeg);
    return {plan.x * t.cosine + plan.y * t.sine, -plan.x * t.sine + plan.y * t.cosine};
}

Point Placement::toPlan(Point own) const { return at + directionToPlan(own); }

Point Placement::toOwn(Point plan) const { return directionToOwn(plan - at); }

}  // namespace yardcast
