#include "core/handling/lifting.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <unordered_map>

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

std::vector<CastingLift> liftings(const Plan& plan, const std::vector<CastingPtr>& castings,
                                  std::vector<Finding>& findings)
{
    std::unordered_map<std::string_view, std::size_t> indexOf;
    for (std::size_t i = 0; i < plan.parts.size(); ++i) indexOf.try_emplace(plan.parts[i]->id, i);

    std::vector<CastingLift> lifts;
    lifts.reserve(castings.size());
    for (const CastingPtr& casting : castings) {
        CastingLift lift;
        lift.casting = casting->id;
        lift.massKg = casting->massKg;
        lift.crewPeople = std::max(0, plan.crew.people);
        const auto found = indexOf.find(casting->part);
        if (found != indexOf.end()) {
            const auto* counter = std::get_if<Counter>(&plan.parts[found->second]->body);
            if (counter != nullptr && counter->lift) {
                lift.crewPeople = std::max(0, counter->lift->people.value_or(plan.crew.people));
                lift.grips = counter->lift->grips;
            }
        }
        lift.people = peopleNeeded(lift.massKg, plan.crew.liftLimitKg);
        lift.guidelinePeople = peopleByGuideline(lift.massKg, plan.crew.liftLimitKg);
        lift.limitKg = teamLimitKg(lift.crewPeople, plan.crew.liftLimitKg);
        if (lift.massKg > lift.limitKg) {
            const bool twice = lift.massKg > 2 * lift.limitKg;
            Finding finding{twice ? "too_heavy" : "heavy", twice ? Severity::stop : Severity::caution, {}, "", {}, {}};
            finding.subjects = {casting->id};
            if (casting->part != casting->id) finding.subjects.push_back(casting->part);
            if (found != indexOf.end()) finding.pointer = "/parts/" + std::to_string(found->second);
            finding.values = {{"mass_kg", lift.massKg},
                              {"limit_kg", lift.limitKg},
                              {"people", static_cast<double>(lift.people)},
                              {"crew", static_cast<double>(lift.crewPeople)}};
            findings.push_back(std::move(finding));
        }
        lifts.push_back(std::move(lift));
    }
    return lifts;
}

}  // namespace yardcast
