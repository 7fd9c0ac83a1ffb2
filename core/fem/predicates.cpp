#include "core/fem/predicates.h"

#include <cmath>

namespace yardcast::fem {

Site siteOf(Point mm)
{
    return {static_cast<std::int32_t>(std::lround(mm.x * kSitesPerMm)),
            static_cast<std::int32_t>(std::lround(mm.y * kSitesPerMm))};
}

bool inCircle(Site a, Site b, Site c, Site p)
{
    const double ax = double(a.x) - p.x, ay = double(a.y) - p.y;
    const double bx = double(b.x) - p.x, by = double(b.y) - p.y;
    const double cx = double(c.x) - p.x, cy = double(c.y) - p.y;
    const double bxcy = bx * cy, cxby = cx * by;
    const double cxay = cx * ay, axcy = ax * cy;
    const double axby = ax * by, bxay = bx * ay;
    const double liftA = ax * ax + ay * ay;
    const double liftB = bx * bx + by * by;
    const double liftC = cx * cx + cy * cy;
    const double sum = liftA * (bxcy - cxby) + liftB * (cxay - axcy) + liftC * (axby - bxay);
    const double most = liftA * (std::abs(bxcy) + std::abs(cxby)) + liftB * (std::abs(cxay) + std::abs(axcy)) +
                        liftC * (std::abs(axby) + std::abs(bxay));
    // The differences are exact, so rounding cannot turn the sign of a sum beyond 10 units in the last place
    // (Shewchuk 1997, bound A of the circle test: (10 + 96 u) u with u = 2^-53; here with room).
    constexpr double kBound = 1.2e-15;
    if (sum > kBound * most) return true;
    if (sum < -kBound * most) return false;

    __extension__ using Wide = __int128;
    const auto whole = [](double value) { return static_cast<std::int64_t>(value); };
    const std::int64_t iax = whole(ax), iay = whole(ay), ibx = whole(bx), iby = whole(by), icx = whole(cx),
                       icy = whole(cy);
    const Wide exact = Wide(iax * iax + iay * iay) * (ibx * icy - icx * iby) +
                       Wide(ibx * ibx + iby * iby) * (icx * iay - iax * icy) +
                       Wide(icx * icx + icy * icy) * (iax * iby - ibx * iay);
    return exact > 0;
}

}  // namespace yardcast::fem
