#pragma once

#include <string>

#include <QString>
#include <QStringList>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"

/// What is said beside the hours at which castings may be handled.
namespace yardcast::ui {

/// "Set down all corners together: one late by 3 mm takes 120 % of what it bears at 48 h ..." where the solver found so, or
/// where it is so at the hour from which it may be carried: solved at the plan's hour, a bound at the other; else empty.
QString lateCornerText(const Plan& plan, const Assessment& assessment, const std::string& casting);
/// What the water of a mix leaves of its class, where it does not support it; else empty.
QString wetMixText(const Plan& plan, const std::string& mix);
/// What the hand decides, not the hour.
QString lastCaution();

}  // namespace yardcast::ui
