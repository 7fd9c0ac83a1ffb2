#include "core/plan/mix.h"

namespace yardcast {

double bagYieldL(const Bag& bag)
{
    if (!bag.freshDensityKgM3) return bag.yieldL;
    return *bag.freshDensityKgM3 > 0.0 ? (bag.massKg + bag.waterL) / *bag.freshDensityKgM3 * 1000 : 0.0;
}

double maxAggregateMm(const Mix& mix) { return mix.recipe ? mix.recipe->maxAggregateMm : mix.bag.maxAggregateMm; }

}  // namespace yardcast
