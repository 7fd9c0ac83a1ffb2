#include "core/readiness/earliest_hours.h"

namespace yardcast {

const char* handlingWayWord(HandlingWay way)
{
    switch (way) {
    case HandlingWay::strip: return "strip";
    case HandlingWay::tilt: return "tilt";
    case HandlingWay::carryFlat: return "carry_flat";
    case HandlingWay::carryOnEdge: return "carry_on_edge";
    }
    return "";
}

const EarliestHour* CastingHours::find(HandlingWay way) const
{
    for (const EarliestHour& one : ways) {
        if (one.way == way) return &one;
    }
    return nullptr;
}

}  // namespace yardcast
