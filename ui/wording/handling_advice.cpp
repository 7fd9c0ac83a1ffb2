#include "ui/wording/handling_advice.h"

#include "core/pour/mix_concrete.h"
#include "ui/wording/figures.h"
#include "ui/wording/readiness_names.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

QString lateCornerText(const Plan& plan, const Assessment& assessment, const std::string& casting)
{
    const CastingStrength* strength = assessment.strengthOf(casting);
    const CaseResult* late = strength ? strength->find(StrengthCase::cornerLate) : nullptr;
    if (!late || !late->holds || !(late->usePercent > 100.0)) return {};
    const QString gap = lengthText(assumptionsOf(plan).lateCornerMm);
    // Tension does not fall with the age: it grows with the stiffness. What would be over the strength of 28 days is over
    // it at every age before.
    const CaseResult* grown = strength->find(StrengthCase::inPlace);
    const bool always = grown && grown->strengthMpa > 0.0 &&
                        late->usePercent * late->strengthMpa / grown->strengthMpa > 100.0;
    return always ? Words::tr("Set down all corners together: one late by %1 cracks it at any age.").arg(gap)
                  : Words::tr("Set down all corners together: one late by %1 may crack it, reckoned for %2.")
                        .arg(gap, plannedHourText(late->ageH));
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
