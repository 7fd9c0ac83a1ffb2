#include <algorithm>
#include <cmath>

#include "core/handling/lifting.h"

namespace yardcast {

double teamFactor(int people)
{
    if (people <= 0) return 0.0;
    if (people == 1) return 1.0;
    return people == 2 ? 2.0 / 3.0 : 0.5;
}

double teamLimitKg(int people, double limitEachKg)
{
    if (people <= 0 || !(limitEachKg > 0.0)) return 0.0;
    return people * limitEachKg * teamFactor(people);
}

int peopleByGuideline(double massKg, double limitEachKg)
{
    if (const int few = peopleNeeded(massKg, limitEachKg); few > 0) return few;
    if (!(limitEachKg > 0.0) || !(massKg > 0.0)) return 0;
    const double people = std::ceil(massKg / (limitEachKg * teamFactor(kMostPeople)) - 1e-9);
    return people <= 1e6 ? static_cast<int>(people) : 0;
}

int peopleNeeded(double massKg, double limitEachKg)
{
    for (int people = 1; people <= kMostPeople; ++people) {
        if (teamLimitKg(people, limitEachKg) >= massKg) return people;
    }
    return 0;
}

NioshLift pieceLift(bool handles)
{
    NioshLift lift;
    lift.horizontalCm = 40.0;
    lift.verticalCm = 75.0;
    lift.travelCm = 25.0;
    lift.coupling = handles ? Coupling::good : Coupling::poor;
    return lift;
}

const char* limitRuleWord(LimitRule rule)
{
    switch (rule) {
    case LimitRule::plan: return "plan";
    case LimitRule::reference25: return "reference_25";
    case LimitRule::reference15: return "reference_15";
    case LimitRule::niosh: return "niosh";
    }
    return "";
}

const RuleLimit* CastingLift::find(LimitRule rule) const
{
    const auto found =
        std::find_if(limits.begin(), limits.end(), [&](const RuleLimit& limit) { return limit.rule == rule; });
    return found == limits.end() ? nullptr : &*found;
}

std::vector<GripLoad> CastingLift::loadsAt(const std::vector<Point>& proposed) const
{
    return grips.empty() ? gripLoads(proposed, centroid, massKg) : loads;
}

}  // namespace yardcast
