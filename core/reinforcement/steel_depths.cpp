#include "core/reinforcement/steel_depths.h"

#include <algorithm>
#include <limits>

namespace yardcast {

double thinnestAtFaceMm(const Casting& casting)
{
    double least = std::numeric_limits<double>::infinity();
    for (const Zone& zone : casting.zones) {
        if (isAtFace(zone)) least = std::min(least, zone.toMm);
    }
    return least;
}

double thinnestAlongMm(const Casting& casting, const BarStretch& bar)
{
    double least = std::numeric_limits<double>::infinity();
    for (const Zone& zone : casting.zones) {
        if (isAtFace(zone) && zone.toMm < least && !clipToRegion(bar.from, bar.to, zone.region).empty())
            least = zone.toMm;
    }
    return least;
}

}  // namespace yardcast
