#include "core/castings/sheeting.h"

namespace yardcast {

double curingSheetM2(const Casting& casting)
{
    const std::optional<Box> box = boundsOf(casting.outline);
    if (!box) return 0.0;
    const Point size = box->high - box->low;
    return (size.x + 2 * kSheetOverlapMm) * (size.y + 2 * kSheetOverlapMm) * 1e-6;
}

}  // namespace yardcast
