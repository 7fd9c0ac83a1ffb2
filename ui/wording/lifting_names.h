#pragma once

#include <QString>

#include "core/handling/lifting.h"

/// Rules and means of lifting in words.
namespace yardcast::ui {

QString limitRuleName(LimitRule rule);
/// Where the limit comes from, with what is assumed.
QString limitRuleSource(LimitRule rule);
/// "2 joints", "foam core 40 mm", "trolley".
QString meansName(const MeansAdvice& advice);
/// With its figures, and whether those who lift it can then.
QString meansSentence(const MeansAdvice& advice);

/// "Grip 2 bears 31 kg, grip 3 bears 28 kg: more than the 25 kg of one person. Two take such a grip." Empty where none is over.
QString heavyGripsText(const std::vector<GripLoad>& loads, double limitEachKg);

}  // namespace yardcast::ui
