#pragma once

#include "core/castings/casting.h"
#include "core/castings/steel_in_casting.h"

/// What concrete steel lies in. For core/reinforcement only.
namespace yardcast {

/// Concrete that starts at the face: the steel has to lie in it.
inline bool isAtFace(const Zone& zone) { return zone.isConcrete() && zone.fromMm == 0.0; }

/// Thickness of the thinnest of it in the casting, mm; infinite where there is none.
double thinnestAtFaceMm(const Casting& casting);
/// Of that which a bar runs through.
double thinnestAlongMm(const Casting& casting, const BarStretch& bar);

}  // namespace yardcast
