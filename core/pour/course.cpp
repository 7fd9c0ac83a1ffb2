#include <cmath>

#include "core/pour/weather.h"

namespace yardcast {

TemperatureCourse courseOf(const Plan& plan)
{
    const Conditions& conditions = plan.conditions;
    TemperatureCourse course;
    course.lowC = conditions.lowC.value_or(conditions.airC);
    course.highC = conditions.highC.value_or(conditions.airC);
    course.startH = plan.pouring.value_or(Pouring{}).startH;
    for (const MeasuredTemperature& m : conditions.measured) {
        const bool rises = m.h >= 0.0 && (course.readings.empty() || m.h > course.readings.back().h);
        // What is out of order has a finding of its own.
        if (rises && std::isfinite(m.h) && std::isfinite(m.c)) course.readings.push_back({m.h, m.c});
    }
    return course;
}

}  // namespace yardcast
