#pragma once

#include <QString>
#include <QStringList>

#include "core/plan/plan.h"

/// The usual cautions in their short forms. Each set ends with who decides.
namespace yardcast::ui {

/// Dust of cement and silica, and burns from wet cement: for whoever buys, mixes and grinds.
QStringList materialCautions();
QStringList liftingCautions();
/// For whoever saws boards, battens and foam at home.
QStringList sawCautions();
/// For drawings: what a licensed trade has to do, as far as the plan has such things; and that the drawing is of
/// furniture.
QString drawingCaution(const Plan& plan);
/// For the drawing of one slab.
QString slabCaution();

}  // namespace yardcast::ui
