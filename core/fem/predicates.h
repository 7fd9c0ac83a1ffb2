#pragma once

#include <cstdint>

#include "core/geometry/point.h"

/// Exact decisions about points on a lattice of 1/256 mm.
namespace yardcast::fem {

inline constexpr double kSitesPerMm = 256.0;
/// Sites lie within this many lattice steps of the origin: differences stay under 2^29, which keeps `turn` exact in 64
/// bits and `inCircle` in 128.
inline constexpr std::int64_t kFarthestSite = std::int64_t(1) << 27;

/// A point of the lattice.
struct Site {
    std::int32_t x = 0;
    std::int32_t y = 0;

    friend bool operator==(const Site&, const Site&) = default;
};

Site siteOf(Point mm);
inline Point pointOf(Site site) { return {site.x / kSitesPerMm, site.y / kSitesPerMm}; }

/// Twice the signed area of abc: positive when it turns counter-clockwise, zero on one line.
inline std::int64_t turn(Site a, Site b, Site c)
{
    return (std::int64_t(b.x) - a.x) * (std::int64_t(c.y) - a.y) -
           (std::int64_t(b.y) - a.y) * (std::int64_t(c.x) - a.x);
}

/// Scalar product of a-p and b-p: negative when p lies within the circle that has ab as its diameter.
inline std::int64_t facing(Site p, Site a, Site b)
{
    return (std::int64_t(a.x) - p.x) * (std::int64_t(b.x) - p.x) +
           (std::int64_t(a.y) - p.y) * (std::int64_t(b.y) - p.y);
}

/// True where p lies strictly within the circle through the counter-clockwise triangle abc.
bool inCircle(Site a, Site b, Site c, Site p);

}  // namespace yardcast::fem
