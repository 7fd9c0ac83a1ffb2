#pragma once

#include <vector>

#include "core/castings/casting.h"
#include "core/plan/plan.h"
#include "core/structure/strength.h"
#include "ui/sheets/sheet_page.h"

/// Where a casting is held on the day it is lifted: what a person needs beside the piece with a tape in the hand.
namespace yardcast::ui {

/// "its back edge", of an upright "its foot"; "the edge from 120, 0 to 800, 600" where it is slanted or not the
/// outermost (mm from the left end and from the front edge). Empty where the outline has no such edge.
QString edgeText(const Casting& casting, int edge);
/// "not before 48 h".
QString notBeforeText(double hours);
/// "Prep slab weighs 78 kg. Not before 48 h after the pour."
QString massAndAgeText(const Casting& casting, const CastingStrength& strength);
/// "Turns about its back edge; hands go under its front edge." or what it stands on; empty where it does neither.
QString edgeSentence(const CaseResult& result, const Casting& casting);

/// The table of every hand and batten with what it bears, and a sheet with a drawing for each way of holding it. None
/// where it is not handled. `like` says what stands in the title block.
std::vector<SheetPage> holdPages(const SheetPage& like, const CastingStrength& strength, const Part& part,
                                 const CastingPtr& casting);

}  // namespace yardcast::ui
