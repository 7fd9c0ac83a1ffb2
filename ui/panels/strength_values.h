#pragma once

#include <QList>

#include "core/plan/plan.h"
#include "core/structure/strength.h"
#include "ui/panels/figure_popover.h"

/// This plan's values behind figures of strength.
namespace yardcast::ui {

QList<FigureValue> caseValues(const CastingStrength& strength, const CaseResult& result, const Plan& plan);
QList<FigureValue> sectionValues(const SectionForces& section, const CaseResult& result, const Part* part);

}  // namespace yardcast::ui
