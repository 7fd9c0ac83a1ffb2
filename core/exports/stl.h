#pragma once

#include <string>
#include <vector>

#include "core/exports/kitchen_model.h"

namespace yardcast {

/// The bytes of a binary STL file of all pieces, each a shell of its own: mm, z up, triangles counter-clockwise from
/// outside, normals by the right hand. Coordinates are single floats, as the format has them. The 80 bytes of the
/// header begin with `header` (ASCII; other letters become "?") and never with "solid", which would mark a text file.
std::string stlBytes(const std::vector<ModelPiece>& pieces, const std::string& header = "Yardcast, mm, z up");

}  // namespace yardcast
