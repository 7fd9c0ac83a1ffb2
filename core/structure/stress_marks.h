#pragma once

#include <vector>

#include "core/structure/body.h"

namespace yardcast {

/// Where stress is looked at in a body whatever its mesh: half a thickness apart, and where lines meet edges. `regions`
/// are those of its kinds of section, `boundary` the rings of the outline and its holes. The body must have its mesh,
/// shares and corners.
std::vector<StressMark> stressMarks(const Body& body, const std::vector<Region>& regions,
                                    const std::vector<Ring>& boundary);

}  // namespace yardcast
