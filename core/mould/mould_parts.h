#pragma once

#include "core/mould/mould.h"

/// Which parts of moulds go together.
namespace yardcast {

/// Foam that lies in the concrete: each casting takes its own, also out of a mould that serves again.
inline bool isFoamInside(const MouldPart& part)
{
    return part.kind == MouldPartKind::filler || part.kind == MouldPartKind::core;
}

/// It is sawn out of the sheets that moulds are built of. What is bent is of a thin board of its own.
inline bool isMouldBoard(const MouldPart& part) { return part.stuff == MouldStuff::board && !part.bent; }

/// Sold by the sheet, not by the length.
inline bool isSheet(MouldStuff stuff) { return stuff == MouldStuff::board || stuff == MouldStuff::foam; }

}  // namespace yardcast
