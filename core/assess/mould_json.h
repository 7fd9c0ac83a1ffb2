#pragma once

#include "core/assess/json_tools.h"
#include "core/mould/mould.h"
#include "core/purchase/later_boards.h"
#include "core/purchase/mould_sharing.h"

/// Inner seam of the JSON of an assessment: moulds.
namespace yardcast {

/// What is to be sawn for it, one row a piece: casting, name, length_mm, width_mm, thickness_mm, count and what it is.
void addBoards(Json& boards, const Mould& mould);
/// The mould as a whole: sizes, pressure, diagonals, handedness, what it needs besides boards.
Json mouldJson(const Mould& mould);

/// Fewer moulds against more days, one object a group of castings that are the same.
Json sharingJson(const MouldSharing& sharing, const std::string& currency);
/// What is sawn out of old bases, and when.
Json laterBoardsJson(const LaterBoards& later, const std::string& currency);

}  // namespace yardcast
