#include "core/pour/mix_concrete.h"

#include <algorithm>
#include <limits>

#include "core/materials/materials.h"
#include "core/pour/charge.h"

namespace yardcast {

namespace {

double daysTo(double wantedMpa, double fullMpa, double s)
{
    // Rounding must not make "never" of a strength that is reached at 28 days.
    constexpr double kRounding = 1e-9;
    if (!(fullMpa * (1 + kRounding) >= wantedMpa)) return std::numeric_limits<double>::infinity();
    return ageOfShareDays(std::min(1.0, wantedMpa / fullMpa), s);
}

}  // namespace

MixConcrete concreteOf(const Mix& mix)
{
    MixConcrete answer;
    answer.name = readClass(mix.strengthClass).taken;
    const ConcreteProperties whole = concreteProperties(answer.name).value_or(ConcreteProperties{});
    if (isUsable(mix) && whole.fcmMpa > 0.0) {
        const double planned = ratiosOf(mix, plannedChargeOf(mix)).waterBinderK;
        const double weighed = ratiosOf(mix, weighedChargeOf(mix)).waterBinderK;
        answer.waterBinder = mix.trial ? std::max(planned, weighed) : planned;
        answer.supportedMpa = strengthByRatioMpa(answer.waterBinder);
        answer.likelyShare = std::min(1.0, answer.supportedMpa / strengthByRatioMpa(planned));
        answer.cautiousShare = std::min(answer.likelyShare, answer.supportedMpa / whole.fcmMpa);
    }
    answer.likely = weakened(whole, answer.likelyShare);
    answer.cautious = weakened(whole, answer.cautiousShare);
    return answer;
}

double cautiousOfMean(const ConcreteProperties& concrete)
{
    return concrete.fcmMpa > 0.0 ? concrete.fckMpa / concrete.fcmMpa : 0.0;
}

double likelyStripDays(const MixConcrete& concrete, double s, double stripMpa)
{
    return daysTo(stripMpa, concrete.likely.fcmMpa, s);
}

double cautiousStripDays(const MixConcrete& concrete, double s, double stripMpa)
{
    return daysTo(stripMpa, cautiousOfMean(concrete.cautious) * concrete.cautious.fcmMpa, s);
}

}  // namespace yardcast
