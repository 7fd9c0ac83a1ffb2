#include "core/pour/weather_findings.h"

#include <algorithm>
#include <cmath>

#include "core/io/number_text.h"
#include "core/io/patch_text.h"
#include "core/materials/concrete_strength.h"
#include "core/pour/cement_speed.h"
#include "core/pour/mix_concrete.h"
#include "core/pour/pour_changes.h"

namespace yardcast {

namespace {

/// Another start is offered where it takes away a tenth of the evaporation.
constexpr double kWorthMoving = 0.9;
constexpr double kWorthCoolingK = 0.5;
/// Cold mixes are brought to this: common practice, no source.
constexpr double kFreshInColdC = 10.0;
constexpr double kUnderMatsC = 10.0;
/// A stated temperature this far from that of the ingredients is a slip, or a thermometer: worth a word.
constexpr double kWorthAskingK = 3.0;

Finding about(std::string code, Severity severity, FindingValues values)
{
    return {std::move(code), severity, {}, "/conditions", std::move(values), {}};
}

std::string startEdit(const Plan& plan, double startH)
{
    const std::string hour = shortestText(startH);
    return plan.pouring ? addPatch("/pour/start_h", hour) : addPatch("/pour", R"({"start_h":)" + hour + "}");
}

std::string concreteEdit(double c)
{
    return addPatch("/conditions/concrete_c", shortestText(c));
}

/// What an edit writes is as short as what a person types.
double tenths(double value) { return std::round(value * 10) / 10; }

/// The water of another temperature, or more of it as ice, and the concrete that comes of it.
std::string coolingEdit(const Plan& plan, double waterC, double icePercent, double concreteC)
{
    Plan changed = plan;
    changed.conditions.waterC = tenths(waterC);
    changed.conditions.icePercent = icePercent;
    changed.conditions.concreteC = tenths(concreteC);
    return settingsPatch(plan, changed);
}

Remedy attempt(std::string code, FindingValues values = {}, std::string edit = {})
{
    return {std::move(code), std::move(values), std::move(edit), {}};
}

bool isKnown(const MixTemperatureInput& input) { return input.waterKg > 1e-6; }

double cooledByC(const MixTemperatureInput& input, double waterC)
{
    MixTemperatureInput colder = input;
    colder.waterC = waterC;
    return mixTemperatureC(input) - mixTemperatureC(colder);
}

/// Concrete at which the hour's evaporation is the limit.
double concreteAtLimitC(const WeatherHour& hour, double windKmh, double limit)
{
    const double air = hour.humidityPercent / 100 * std::pow(std::max(hour.airC + 18.0, 0.0), 2.5);
    return std::pow(limit / (5e-6 * (windKmh + 4.0)) + air, 0.4) - 18.0;
}

void addEvaporation(const Plan& plan, const PourWeather& weather, const MixTemperatureInput& input,
                    std::vector<Finding>& findings)
{
    const double wind = plan.conditions.windKmh;
    const double limit = weather.limitKgM2H;
    WeatherHour hour = worstHour(plan, weather.startH, weather.workH);
    if (weather.evaporationKgM2H > hour.evaporationKgM2H) {
        hour.airC = plan.conditions.airC;
        hour.concreteC = plan.conditions.concreteC;
        hour.humidityPercent = plan.conditions.humidityPercent;
        hour.evaporationKgM2H = weather.evaporationKgM2H;
    }
    const double worst = hour.evaporationKgM2H;
    if (!(worst >= limit)) return;
    Finding finding = about("evaporation_high", worst >= 2 * limit ? Severity::stop : Severity::caution,
                            {{"evaporation", worst}, {"limit", limit}, {"at_h", std::fmod(hour.hourOfDay, 24.0)},
                             {"air_c", hour.airC}, {"wind_kmh", wind}, {"start_h", weather.startH}});
    if (weather.worstAtBestKgM2H < kWorthMoving * weather.worstAtPlanKgM2H) {
        finding.remedies.push_back(attempt("start_at_hour", {{"start_h", weather.bestStartH},
                                                             {"evaporation", weather.worstAtBestKgM2H}},
                                           startEdit(plan, weather.bestStartH)));
    }
    if (isKnown(input)) {
        const double wantedK = hour.concreteC - concreteAtLimitC(hour, wind, limit);
        const double waterC = std::max(waterForC(input, mixTemperatureC(input) - wantedK), kColdestWaterC);
        const double byK = cooledByC(input, waterC);
        if (waterC < input.waterC && byK > kWorthCoolingK) {
            const double cooled = hour.concreteC - byK;
            const double then = evaporationKgM2H(cooled, hour.airC, hour.humidityPercent / 100, wind);
            finding.remedies.push_back(
                attempt("water_colder", {{"water_c", waterC}, {"concrete_c", cooled}, {"evaporation", then}},
                        coolingEdit(plan, waterC, plan.conditions.icePercent, plan.conditions.concreteC - byK)));
        }
    }
    const double calmKmh = limit / (worst / (wind + 4.0)) - 4.0;
    if (calmKmh >= 0.0) finding.remedies.push_back(attempt("windbreak", {{"wind", calmKmh}, {"evaporation", limit}}));
    finding.remedies.push_back(attempt("cover_at_once"));
    findings.push_back(std::move(finding));
}

void addMixTemperature(const Plan& plan, const PourWeather& weather, const MixTemperatureInput& input,
                       std::vector<Finding>& findings)
{
    double hottest = plan.conditions.concreteC;
    for (double h = 0.0; h < weather.workH + 0.25; h += 0.5)
        hottest = std::max(hottest, weatherAt(plan, weather.startH + h).concreteC);
    if (hottest > kHottestMixC) {
        Finding finding = about("mix_hot", Severity::caution, {{"concrete_c", hottest}, {"limit_c", kHottestMixC}});
        for (const Cooling& way : weather.cooling) {
            if (way.coldWaterEnough) {
                finding.remedies.push_back(
                    attempt("water_cold_for", {{"water_c", way.coldWaterC}, {"concrete_c", way.targetC}},
                            coolingEdit(plan, way.coldWaterC, plan.conditions.icePercent, way.targetC)));
            } else if (way.iceEnough) {
                finding.remedies.push_back(
                    attempt("ice_for",
                            {{"ice_kg", way.icePerBatchKg},
                             {"ice_percent", way.icePercent},
                             {"concrete_c", way.targetC}},
                            coolingEdit(plan, plan.conditions.waterC, way.icePercent, way.targetC)));
            }
        }
        findings.push_back(std::move(finding));
    }
    if (plan.conditions.concreteC < kColdestMixC) {
        Finding finding = about("mix_cold", Severity::caution,
                                {{"concrete_c", plan.conditions.concreteC}, {"limit_c", kColdestMixC}});
        if (isKnown(input)) {
            const double waterC = waterForC(input, kFreshInColdC);
            if (waterC > input.waterC && waterC <= kHottestWaterC) {
                finding.remedies.push_back(
                    attempt("water_warm_for", {{"water_c", waterC}, {"concrete_c", kFreshInColdC}},
                            coolingEdit(plan, waterC, plan.conditions.icePercent, kFreshInColdC)));
            }
        }
        findings.push_back(std::move(finding));
    }
    if (isKnown(input) && std::abs(weather.mixC - plan.conditions.concreteC) > kWorthAskingK) {
        Finding finding = about("mix_differs", Severity::note,
                                {{"concrete_c", plan.conditions.concreteC}, {"mix_c", weather.mixC}});
        finding.pointer = "/conditions/concrete_c";
        const double rounded = std::round(2 * weather.mixC) / 2;
        finding.remedies.push_back(attempt("concrete_as_mixed", {{"concrete_c", rounded}}, concreteEdit(rounded)));
        findings.push_back(std::move(finding));
    }
}

void addIce(const Plan& plan, const PourWeather& weather, std::vector<Finding>& findings)
{
    const double mostPercent = 100 * kMostIceShare;
    if (!(plan.conditions.icePercent > mostPercent + 1e-9)) return;
    Finding finding = about("ice_unsure", Severity::caution,
                            {{"ice_percent", plan.conditions.icePercent}, {"limit_percent", mostPercent},
                             {"mix_c", weather.mixC}});
    finding.pointer = "/conditions/ice_percent";
    findings.push_back(std::move(finding));
}

void addFrost(const Plan& plan, const PourWeather& weather, std::vector<Finding>& findings)
{
    if (!weather.frostTonight) return;
    Finding finding = about("frost_night", Severity::caution,
                            {{"low_c", weather.lowC}, {"frost_h", weather.frostAtH},
                             {"strength_mpa", weather.frostMpa}, {"limit_mpa", kFrostProofMpa}});
    double warmH = 0.0;
    for (const Mix& mix : plan.mixes) {
        const ConcreteProperties concrete = concreteOf(mix).likely;
        const double s = cementS(mix.cementSpeed);
        double h = 0.0;
        while (h < 24.0 * 14 && strengthAtAge(concrete, s, h, kUnderMatsC).fcmMpa < kFrostProofMpa) h += 1.0;
        warmH = std::max(warmH, h);
    }
    if (warmH > 0.0) finding.remedies.push_back(attempt("keep_warm", {{"warm_h", warmH}, {"mats_c", kUnderMatsC}}));
    findings.push_back(std::move(finding));
}

}  // namespace

void addWeatherFindings(const Plan& plan, const PourWeather& weather, const MixTemperatureInput& input,
                        std::vector<Finding>& findings)
{
    const bool casts = std::any_of(plan.parts.begin(), plan.parts.end(), [](const PartPtr& part) {
        return part->kind() != PartKind::front && part->kind() != PartKind::appliance;
    });
    if (!casts) return;
    addEvaporation(plan, weather, input, findings);
    addMixTemperature(plan, weather, input, findings);
    addIce(plan, weather, findings);
    addFrost(plan, weather, findings);
}

}  // namespace yardcast
