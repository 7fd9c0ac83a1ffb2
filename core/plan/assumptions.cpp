#include "core/plan/assumptions.h"

namespace yardcast {

Assumptions withinLimits(const Assumptions& assumptions)
{
    const Assumptions defaults;
    Assumptions sound = assumptions;
    keepWithin(sound.bedNMm3, kBedLimits, defaults.bedNMm3);
    keepWithin(sound.strippingFactor, kFactorLimits, defaults.strippingFactor);
    keepWithin(sound.handlingFactor, kFactorLimits, defaults.handlingFactor);
    keepWithin(sound.suctionKpa, kSuctionLimits);
    keepWithin(sound.crackSafety, kFactorLimits, defaults.crackSafety);
    keepWithin(sound.evenLoadKpa, kEvenLoadLimits, defaults.evenLoadKpa);
    keepWithin(sound.personN, kPersonLimits);
    keepWithin(sound.lateCornerMm, kLateCornerLimits, defaults.lateCornerMm);
    keepWithin(sound.stripMpa, kStripLimits, defaults.stripMpa);
    if (!isWithin(sound.curingClass, kCuringClassLimits)) sound.curingClass = defaults.curingClass;
    return sound;
}

double suctionKpa(const Assumptions& assumptions)
{
    if (assumptions.suctionKpa) return *assumptions.suctionKpa;
    switch (assumptions.mouldSurface) {
    case MouldSurface::coated: return 1.0;
    case MouldSurface::planed: return 2.0;
    case MouldSurface::rough: break;
    }
    return 3.0;
}

double personN(const Assumptions& assumptions, Imposed imposed)
{
    return assumptions.personN.value_or(imposed == Imposed::person ? 1500.0 : 1000.0);
}

}  // namespace yardcast
