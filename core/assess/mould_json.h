#pragma once

#include "core/assess/json_tools.h"
#include "core/mould/mould.h"

/// Inner seam of the JSON of an assessment: moulds.
namespace yardcast {

/// What is to be sawn for it, one row a piece: casting, name, length_mm, width_mm, thickness_mm, count and what it is.
void addBoards(Json& boards, const Mould& mould);
/// The mould as a whole: sizes, pressure, diagonals, handedness, what it needs besides boards.
Json mouldJson(const Mould& mould);

}  // namespace yardcast
