#pragma once

#include <optional>
#include <vector>

#include "core/geometry/region.h"

namespace yardcast {

/// Strips on the inner side of edges of the outline, from the edge to `widthMm` within, mitred where two of them meet at a
/// re-entrant corner; they may overlap. No `edges`: all. Unknown edges are passed over.
std::vector<Ring> stripsAlongEdges(const Ring& outline, double widthMm, const std::optional<std::vector<int>>& edges);

}  // namespace yardcast
