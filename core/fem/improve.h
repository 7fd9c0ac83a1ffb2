#pragma once

#include "core/fem/size_field.h"
#include "core/fem/triangulation.h"

namespace yardcast::fem {

/// Moves free nodes to the middle of their neighbours where that makes the least angle about them larger.
void smooth(Triangulation& mesh, int sweeps);

}  // namespace yardcast::fem
