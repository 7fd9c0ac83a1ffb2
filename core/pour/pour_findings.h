#pragma once

#include <vector>

#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/pour/mix_quantities.h"
#include "core/pour/pour_schedule.h"

/// What is to be said about a pour plan. Inner seam of core/pour.
namespace yardcast {

/// A mould table that bears more than this, kg, is worth a word: trestles from the store bear about as much. Our choice.
inline constexpr double kTableNoteKg = 150.0;

void pourFindings(const Plan& plan, const PourSchedule& schedule, const WorkingByHour& working,
                  const std::vector<MixQuantities>& quantities, const PourPlan& pour, std::vector<Finding>& findings);

}  // namespace yardcast
