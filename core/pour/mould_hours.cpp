#include "core/pour/mould_hours.h"

#include <algorithm>
#include <cmath>

#include "core/materials/temperature_course.h"
#include "core/pour/cement_speed.h"
#include "core/pour/mix_concrete.h"
#include "core/pour/weather.h"

namespace yardcast {

namespace {

constexpr double kLongestH = 8760.0;

double within(double hours, double otherwise) { return hours >= 0.0 && hours <= kLongestH ? hours : otherwise; }

double strongEnoughH(const Plan& plan, const std::string& id)
{
    const Mix* mix = findMix(plan, id);
    if (mix == nullptr) return 0.0;
    const double days =
        cautiousStripDays(concreteOf(*mix), cementS(mix->cementSpeed), assumptionsOf(plan).stripMpa);
    return std::isfinite(days) ? within(hoursToEquivalentAge(courseOf(plan), days), 0.0) : 0.0;
}

}  // namespace

double liftHours(const Part& part)
{
    const auto* counter = std::get_if<Counter>(&part.body);
    const double ageH = counter != nullptr && counter->lift ? counter->lift->ageH.value_or(kDefaultLiftAgeH)
                                                            : kDefaultLiftAgeH;
    return within(ageH, kDefaultLiftAgeH);
}

double MouldHours::of(const Part& part, const std::string& mix)
{
    auto known = strongEnoughH_.find(mix);
    if (known == strongEnoughH_.end()) known = strongEnoughH_.emplace(mix, strongEnoughH(plan_, mix)).first;
    return std::max(liftHours(part), known->second);
}

}  // namespace yardcast
