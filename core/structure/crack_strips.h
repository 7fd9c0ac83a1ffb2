#pragma once

#include "core/structure/body.h"

namespace yardcast {

/// Fills the strips about the crack lines of a body's inner corners. They depend on the body alone, so that each load
/// takes its means from the same weights.
void fillCrackStrips(Body& body);

}  // namespace yardcast
