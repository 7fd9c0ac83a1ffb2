#include <algorithm>

#include "core/materials/concrete_strength.h"
#include "core/pour/cement_speed.h"
#include "core/pour/mix_concrete.h"
#include "core/pour/weather.h"
#include "core/readiness/earliest_hours.h"

namespace yardcast {

namespace {

constexpr double kCurveStepH = 6.0;
constexpr double kCurveEndH = 168.0;

void keepLatest(std::optional<double>& latest, const EarliestHour* hour)
{
    if (hour != nullptr) latest = std::max(latest.value_or(0.0), hour->cautiousH);
}

}  // namespace

std::vector<GainCurve> gainCurves(const Plan& plan, const std::vector<std::string>& mixesInUse,
                                  const std::vector<CastingHoursPtr>& hours)
{
    std::vector<GainCurve> curves;
    const TemperatureCourse course = courseOf(plan);
    for (const std::string& id : mixesInUse) {
        const Mix* mix = findMix(plan, id);
        if (!mix) continue;
        const ConcreteProperties concrete = concreteOf(*mix).likely;
        GainCurve& curve = curves.emplace_back();
        curve.mix = id;
        const auto add = [&](double h) {
            const double days = equivalentAgeDays(course, h);
            curve.h.push_back(h);
            curve.share.push_back(strengthShare(days, cementS(mix->cementSpeed)));
            curve.meanMpa.push_back(curve.share.back() * concrete.fcmMpa);
        };
        for (double h = 0.0; h <= kCurveEndH; h += kCurveStepH) add(h);
        add(kLongestWaitH);
        for (const CastingHoursPtr& casting : hours) {
            if (!casting || casting->mix != id) continue;
            keepLatest(curve.stripH, casting->outOfMould());
            keepLatest(curve.tiltH, casting->find(HandlingWay::tilt));
            keepLatest(curve.carryH, casting->find(casting->carry));
        }
    }
    return curves;
}

}  // namespace yardcast
