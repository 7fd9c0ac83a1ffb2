#include "core/assess/weather_json.h"

namespace yardcast {

namespace {

const char* gainWord(StrengthGain gain)
{
    switch (gain) {
        case StrengthGain::rapid: return "rapid";
        case StrengthGain::medium: return "medium";
        case StrengthGain::slow: return "slow";
        case StrengthGain::verySlow: return "very_slow";
    }
    return "";
}

}  // namespace

Json weatherJson(const PourWeather& weather)
{
    Json hours = Json::array();
    for (const WeatherHour& hour : weather.hours) {
        hours.push_back({{"h", hour.hourOfDay},
                         {"air_c", rounded(hour.airC)},
                         {"humidity_percent", rounded(hour.humidityPercent)},
                         {"concrete_c", rounded(hour.concreteC)},
                         {"evaporation_kg_m2_h", rounded(hour.evaporationKgM2H)},
                         {"working_minutes", rounded(hour.workingMinutes)}});
    }
    Json cooling = Json::array();
    for (const Cooling& way : weather.cooling) {
        cooling.push_back({{"from_c", rounded(way.fromC)},
                           {"target_c", rounded(way.targetC)},
                           {"water_c", rounded(way.coldWaterC)},
                           {"cold_water_enough", way.coldWaterEnough},
                           {"ice_kg_per_batch", rounded(way.icePerBatchKg)},
                           {"ice_percent", rounded(way.icePercent)},
                           {"ice_enough", way.iceEnough}});
    }
    return {{"evaporation_kg_m2_h", rounded(weather.evaporationKgM2H)},
            {"limit_kg_m2_h", rounded(weather.limitKgM2H)},
            {"uncertain_percent", kEvaporationUncertainPercent},
            {"mix_c", rounded(weather.mixC)},
            {"working_minutes", rounded(weather.workingMinutes)},
            {"start_h", rounded(weather.startH)},
            {"work_h", rounded(weather.workH)},
            {"worst_from_start_kg_m2_h", rounded(weather.worstAtPlanKgM2H)},
            {"best_start_h", rounded(weather.bestStartH)},
            {"worst_from_best_start_kg_m2_h", rounded(weather.worstAtBestKgM2H)},
            {"frost", weather.frostTonight},
            {"frost_after_h", weather.frostTonight ? Json(rounded(weather.frostAtH)) : Json()},
            {"low_c", rounded(weather.lowC)},
            {"cooling", cooling},
            {"hours", hours}};
}

Json curingJson(const std::vector<Curing>& curing)
{
    Json list = Json::array();
    for (const Curing& one : curing) {
        list.push_back({{"mix", one.mix},
                        {"gain", gainWord(one.gain)},
                        {"strength_ratio", rounded(one.ratio)},
                        {"surface_c", rounded(one.surfaceC)},
                        {"days", rounded(one.days)},
                        {"counted_days", rounded(one.countedDays)},
                        {"sheet_m2", rounded(one.sheetM2)}});
    }
    return list;
}

}  // namespace yardcast
