#pragma once

#include "core/fem/size_field.h"
#include "core/fem/triangulation.h"

namespace yardcast::fem {

/// Puts the points of a lattice of equilateral triangles into the inside, finer where the field asks for it, as far as
/// they keep off what is there already. The lattice lies along `direction` and has a point at `centre`. False where
/// there would be more than `most` sites.
bool addSeeds(Triangulation& mesh, const SizeField& sizes, Box bounds, Point centre, Point direction, int most);

}  // namespace yardcast::fem
