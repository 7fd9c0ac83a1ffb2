#include <algorithm>
#include <cmath>

#include "core/pour/cement_speed.h"
#include "core/pour/curing.h"
#include "core/pour/weather.h"
#include "core/readiness/earliest_hours.h"

namespace yardcast {

namespace {

/// The weather of a month in place of the pour day's; nothing has been measured in it.
Plan inMonth(const Plan& plan, const MonthWeather& month)
{
    Plan changed = plan;
    Conditions& c = changed.conditions;
    c.airC = (month.lowC + month.highC) / 2;
    c.lowC = month.lowC;
    c.highC = month.highC;
    c.humidityPercent = month.humidityPercent;
    c.windKmh = month.windKmh;
    c.concreteC = c.airC;
    c.materialsC.reset();
    c.measured.clear();
    return changed;
}

double longestCuringDays(const Plan& plan, const std::vector<std::string>& mixesInUse, double surfaceC)
{
    double days = 0.0;
    for (const std::string& id : mixesInUse) {
        const Mix* mix = findMix(plan, id);
        if (mix == nullptr) continue;
        const StrengthGain gain = strengthGain(cementS(mix->cementSpeed));
        days = std::max(days, curingDays(assumptionsOf(plan).curingClass, gain, surfaceC));
    }
    return days;
}

}  // namespace

std::vector<SeasonMonth> seasonMonths(const Plan& plan, const std::vector<std::string>& mixesInUse,
                                      const std::vector<CastingHoursPtr>& hours)
{
    double neededDays = 0.0;
    for (const CastingHoursPtr& casting : hours) {
        const EarliestHour* last = casting ? casting->governing() : nullptr;
        // What never holds does so in no month, and says so itself.
        if (last && std::isfinite(last->cautiousDays)) neededDays = std::max(neededDays, last->cautiousDays);
    }
    std::vector<SeasonMonth> months;
    for (const MonthWeather& weather : plan.season) {
        const Plan then = inMonth(plan, weather);
        std::vector<Finding> unused;
        const PourWeather day = pourWeather(then, mixesInUse, unused);
        SeasonMonth& month = months.emplace_back();
        month.month = weather.month;
        month.bestStartH = day.bestStartH;
        month.evaporationKgM2H = day.worstAtBestKgM2H;
        month.limitKgM2H = day.limitKgM2H;
        month.frost = day.frostTonight;
        month.curingDays = longestCuringDays(plan, mixesInUse, then.conditions.airC);
        TemperatureCourse course = courseOf(then);
        course.startH = day.bestStartH;
        month.carryH = neededDays > 0.0 ? hoursToEquivalentAge(course, neededDays) : 0.0;
    }
    std::vector<SeasonMonth*> fit;
    for (SeasonMonth& month : months) {
        if (!month.frost && std::isfinite(month.carryH) && std::isfinite(month.curingDays)) fit.push_back(&month);
    }
    const auto waitH = [](const SeasonMonth& month) { return std::max(month.carryH, 24.0 * month.curingDays); };
    std::ranges::stable_sort(fit, [&](const SeasonMonth* a, const SeasonMonth* b) {
        const bool dryA = a->evaporationKgM2H > a->limitKgM2H;
        const bool dryB = b->evaporationKgM2H > b->limitKgM2H;
        return dryA != dryB ? dryB : waitH(*a) < waitH(*b);
    });
    for (std::size_t i = 0; i < fit.size(); ++i) fit[i]->rank = static_cast<int>(i) + 1;
    return months;
}

}  // namespace yardcast
