#pragma once

#include "core/fem/size_field.h"
#include "core/fem/triangulation.h"

namespace yardcast::fem {

/// Moves free nodes, but those in `kept`, to the middle of their neighbours where that makes the least angle about them
/// larger.
void smooth(Triangulation& mesh, int sweeps, const std::vector<int>& kept);

/// Mends the triangles that are thin still: gives up lines at them, moves or takes out nodes, as far as each step makes
/// the least angle there larger. Boundaries stay where they are; nodes on straight sides may slide along them.
void mendThin(Triangulation& mesh);

}  // namespace yardcast::fem
