#pragma once

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "ui/sheets/sheet_table.h"

/// The tables of the steel of one casting. Each 180 mm wide; without rows where there is nothing to say.
namespace yardcast::ui {

SheetTable meshTable(const CastingSteelLayout& layout, bool counter);
SheetTable barTable(const CastingSteelLayout& layout, bool counter);
/// Where every bar begins and ends, measured from the marked corner of the casting: along its front, and away from it.
/// The same in the mould and where it stands.
SheetTable barPlaceTable(const CastingSteelLayout& layout, Point corner);
/// What the steel is worth: each section in its gravest case, the eight gravest.
SheetTable steelCheckTable(const CastingStrength* strength, const Part& part);

/// What has to be known when the steel is laid, one sentence each.
QStringList steelSentences(const CastingSteelLayout& layout, bool counter);

}  // namespace yardcast::ui
