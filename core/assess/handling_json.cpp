#include "core/assess/handling_json.h"

namespace yardcast {

namespace {

/// Null stands for "more than can get their hands on it".
Json peopleJson(int people) { return people > 0 ? Json(people) : Json(); }

Json limitsJson(const CastingLift& lift)
{
    Json list = Json::array();
    for (const RuleLimit& limit : lift.limits) {
        list.push_back({{"rule", limitRuleWord(limit.rule)},
                        {"each_kg", rounded(limit.eachKg)},
                        {"team_kg", rounded(limit.teamKg)},
                        {"people", peopleJson(limit.people)},
                        {"in_use", limit.inUse}});
    }
    return list;
}

Json meansJson(const CastingLift& lift)
{
    Json list = Json::array();
    for (const MeansAdvice& advice : lift.means) {
        Json one{{"means", liftMeansWord(advice.means)},
                 {"mass_kg", rounded(advice.massKg)},
                 {"people", peopleJson(advice.people)},
                 {"kg_each", rounded(advice.kgEach)},
                 {"enough", advice.enough}};
        if (advice.means == LiftMeans::joint) {
            one["joints"] = advice.joints;
            one["over_support"] = advice.overSupport;
        }
        if (advice.means == LiftMeans::foamCore) one["foam_mm"] = rounded(advice.foamMm);
        const Json edit = Json::parse(advice.edit, nullptr, false);
        if (!edit.is_discarded()) one["edit"] = edit;
        list.push_back(std::move(one));
    }
    return list;
}

}  // namespace

Json handlingJson(const Assessment& assessment)
{
    Json list = Json::array();
    for (const CastingLift& lift : assessment.handling) {
        Json grips = Json::array();
        for (const Point& grip : lift.grips) grips.push_back(pointJson(grip));
        const CastingStrength* strength = assessment.strengthOf(lift.casting);
        const auto loads = lift.loadsAt(strength != nullptr ? strength->grips : std::vector<Point>());
        Json loadsAt = Json::array();
        for (const GripLoad& load : loads) loadsAt.push_back({{"at", pointJson(load.at)}, {"kg", rounded(load.kg)}});
        const RuleLimit* plan = lift.find(LimitRule::plan);
        Json over = Json::array();  // counted from 0, as `loads` are
        for (const std::size_t i : plan ? gripsOver(loads, plan->eachKg) : std::vector<std::size_t>()) over.push_back(i);
        Json persons = Json::array();
        for (const double kg : personLoads(loads, lift.crewPeople)) persons.push_back(rounded(kg));
        list.push_back({{"casting", lift.casting},
                        {"mass_kg", rounded(lift.massKg)},
                        {"people", lift.guidelinePeople},
                        {"by_hand", lift.people > 0},
                        {"crew_people", lift.crewPeople},
                        {"limit_kg", rounded(lift.limitKg)},
                        {"grips", grips},
                        {"centroid_mm", pointJson(lift.centroid)},
                        {"each_kg", rounded(lift.eachKg)},
                        {"tilt_kg", rounded(lift.tiltKg)},
                        {"grips_proposed", lift.grips.empty() && !loads.empty()},
                        {"loads", loadsAt},
                        {"grips_over", over},
                        {"person_kg", persons},
                        {"limits", limitsJson(lift)},
                        {"means", meansJson(lift)}});
    }
    return list;
}

}  // namespace yardcast
