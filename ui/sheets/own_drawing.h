#pragma once

#include <vector>

#include "core/castings/casting.h"
#include "core/plan/parts.h"
#include "core/structure/strength.h"
#include "ui/sheets/drawing_fit.h"

namespace yardcast::ui {

/// One casting in its own frame as it stands (a counter from above, an upright from its broad side), with how much of
/// its strength a case uses. `sections` are lettered in their order. Pieces of one counter that are drawn together have
/// one mark of the front, not each its own.
enum class FrontMark { no, yes };
ScaledDrawing strengthDrawing(const Part& part, const CastingPtr& casting, const CaseResult& result,
                              const std::vector<SectionForces>& sections, FrontMark front = FrontMark::yes);
/// The same casting without colours: numbered hands, battens, and in heavy line the edge it turns about or stands on.
ScaledDrawing holdDrawing(const Part& part, const CastingPtr& casting, const CaseResult& result);

}  // namespace yardcast::ui
