#pragma once

#include "core/plan/mix.h"

namespace yardcast {

/// The s of EN 1992-1-1 eq. 3.2 for the cement of a mix.
double cementS(CementSpeed speed);

}  // namespace yardcast
