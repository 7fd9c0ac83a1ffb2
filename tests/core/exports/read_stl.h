#pragma once

#include <string>

#include "core/exports/solid.h"

namespace yardcast::test {

/// A binary STL file read back, points with the same coordinates being one point, as other programs have to read it.
/// Throws where the length is not what the count says or a normal is not that of its triangle.
Solid readStl(const std::string& bytes);

}  // namespace yardcast::test
