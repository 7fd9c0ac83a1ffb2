#include "core/pour/cement_speed.h"

#include "core/materials/concrete_strength.h"

namespace yardcast {

double cementS(CementSpeed speed)
{
    switch (speed) {
        case CementSpeed::slow: return kSlowCementS;
        case CementSpeed::normal: return kNormalCementS;
        case CementSpeed::rapid: return kRapidCementS;
    }
    return kNormalCementS;
}

}  // namespace yardcast
