#pragma once

#include "core/castings/casting.h"
#include "core/plan/plan.h"
#include "core/structure/strength.h"
#include "ui/sheets/sheet_table.h"

namespace yardcast::ui {

/// Every case of a casting, 180 mm wide: age, factor, strength, tension, use; in words the worst place, the worst
/// section with its figures, and what holds the casting.
SheetTable caseTable(const CastingStrength& strength, const Part& part, const Casting& casting);
/// Sections of one case with their letters: mean moment and force, use. 91 mm wide.
SheetTable sectionTable(const std::vector<SectionForces>& sections, const Part& part);
/// The same sentence on the sheet and on the card.
QString worstSentence(const CaseResult& result, const Part& part);

/// What has to be known to read the figures, one sentence each.
QStringList strengthSentences(const CastingStrength& strength, const Part& part);
/// What the signs of the drawing mean, and which way round it lies in the case that is drawn.
QString strengthLegend(const CaseResult& result, bool hasSections);

}  // namespace yardcast::ui
