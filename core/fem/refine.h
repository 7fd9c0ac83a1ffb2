#pragma once

#include "core/fem/size_field.h"
#include "core/fem/triangulation.h"

namespace yardcast::fem {

/// Puts points into triangles that are thin or too large until none is, or none can be mended; at most `most` sites.
/// Edges of lines that stand in the way are split, or given up where they are short already.
void refine(Triangulation& mesh, const SizeField& sizes, int most);

}  // namespace yardcast::fem
