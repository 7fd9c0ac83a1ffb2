#include "ui/wording/handling_advice.h"

#include <algorithm>
#include <cmath>

#include "core/materials/concrete_strength.h"
#include "core/pour/cement_speed.h"
#include "core/pour/mix_concrete.h"
#include "ui/wording/figures.h"
#include "ui/wording/readiness_names.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

/// As the plan wants it carried; null where that is not known or never holds.
const EarliestHour* carriedHour(const Assessment& assessment, const std::string& casting)
{
    for (const CastingHoursPtr& hours : assessment.hours) {
        if (!hours || hours->casting != casting) continue;
        const EarliestHour* carried = hours->find(hours->carry);
        return carried && carried->possible && std::isfinite(carried->cautiousDays) ? carried : nullptr;
    }
    return nullptr;
}

/// What a late corner takes at most of the strength at that hour, percent, from what it takes at the plan's: strength goes
/// with the share of EN 1992-1-1 eq. 3.2, and the tension of a bent slab at most with its stiffness (share to the power
/// 0.3, Table 3.1 and eq. 3.5), none of it falling with less.
double mostAt(const Plan& plan, const Assessment& assessment, const EarliestHour& hour, const std::string& casting,
              const CaseResult& late, const CaseResult& grown)
{
    const Mix* mix = nullptr;
    for (const CastingHoursPtr& hours : assessment.hours) {
        if (hours && hours->casting == casting) mix = findMix(plan, hours->mix);
    }
    const double share = mix ? strengthShare(std::min(hour.cautiousDays, 28.0), cementS(mix->cementSpeed)) : 0.0;
    const double planShare = late.strengthMpa / grown.strengthMpa;
    if (!(share > 0.0 && planShare > 0.0)) return 0.0;
    return late.usePercent * planShare / share * std::max(1.0, std::pow(share / planShare, 0.3));
}

}  // namespace

QString lateCornerText(const Plan& plan, const Assessment& assessment, const std::string& casting)
{
    const CastingStrength* strength = assessment.strengthOf(casting);
    const CaseResult* late = strength ? strength->find(StrengthCase::cornerLate) : nullptr;
    if (!late || !late->holds) return {};
    const QString gap = lengthText(assumptionsOf(plan).lateCornerMm);
    // Tension does not fall with the age: it grows with the stiffness. What would be over the strength of 28 days is over
    // it at every age before.
    const CaseResult* grown = strength->find(StrengthCase::inPlace);
    const bool known = grown && grown->strengthMpa > 0.0;
    if (known && late->usePercent * late->strengthMpa / grown->strengthMpa > 100.0) {
        return Words::tr("Set down all corners together: one late by %1 cracks it at any age.").arg(gap);
    }
    const EarliestHour* carried = known ? carriedHour(assessment, casting) : nullptr;
    const double thenPercent = carried ? mostAt(plan, assessment, *carried, casting, *late, *grown) : 0.0;
    if (!(std::max(late->usePercent, thenPercent) > 100.0)) return {};
    const QString planned = Words::tr("%1 of what it bears at %2").arg(percentText(late->usePercent),
                                                                     plannedHourText(late->ageH));
    if (!carried) return Words::tr("Set down all corners together: one late by %1 takes %2.").arg(gap, planned);
    return Words::tr("Set down all corners together: one late by %1 takes %2, and at most %3 at the hour from which it may be "
                     "carried with safety (%4): that hour is for corners that come down together.")
        .arg(gap, planned, percentText(thenPercent), waitText(carried->cautiousH));
}

QString wetMixText(const Plan& plan, const std::string& mix)
{
    const Mix* found = findMix(plan, mix);
    if (!found) return {};
    const MixConcrete concrete = concreteOf(*found);
    if (!(concrete.cautiousShare < 1.0) || !(concrete.supportedMpa > 0.0)) return {};
    return Words::tr("Its water supports about %1\u00a0MPa, not the mean of %2: the hours with the safety kept are reckoned "
                     "with that.")
        .arg(numberText(concrete.supportedMpa, 0), QString::fromStdString(concrete.name));
}

QString lastCaution()
{
    return Words::tr("Do not strip or lift cold, wet or soft concrete, whatever the hour says: scratch the edge with a nail, "
                     "and where it goes in, wait.");
}

}  // namespace yardcast::ui
