#pragma once

#include "core/pour/pour_play.h"

namespace yardcast {

/// The change as a remedy with its value and edit, without what it brings.
Remedy remedyOf(const TriedChange& tried);

}  // namespace yardcast
