#include "core/pour/weather.h"

#include <algorithm>
#include <cmath>

#include "core/materials/concrete_strength.h"
#include "core/pour/cement_speed.h"
#include "core/pour/mix_concrete.h"
#include "core/pour/pour_plan.h"
#include "core/pour/weather_findings.h"

namespace yardcast {

namespace {

constexpr double kSetUpH = 1.0;
constexpr double kShortestWorkH = 1.0;
constexpr double kStartStepH = 0.5;
constexpr double kLookEveryH = 0.25;
/// Until then every concrete that hardens at all bears frost, or the days are no days for casting.
constexpr double kFrostWatchH = 72.0;
constexpr double kFrostStepH = 0.5;
constexpr double kSameRate = 1e-9;

Pouring pouringOf(const Plan& plan) { return plan.pouring.value_or(Pouring{}); }

double sane(double value, double least, double most)
{
    return std::isfinite(value) ? std::clamp(value, least, most) : least;
}

/// Lowest air in the hours of work.
double coldestC(const Plan& plan, double startH, double workH)
{
    double coldest = HUGE_VAL;
    for (double h = 0.0; h < workH + kLookEveryH / 2; h += kLookEveryH)
        coldest = std::min(coldest, weatherAt(plan, startH + h).airC);
    return coldest;
}

/// Goes of the mixer, or of the tub, as the mixing cards count them.
double batchesOf(const Plan& plan, const MixQuantities& mix)
{
    if (plan.mixer) return mix.batches;
    const double perBatch = bagsInBatch(mix);
    return perBatch > 0.0 ? std::ceil(mix.bagsExact / perBatch - 1e-9) : 0.0;
}

void watchFrost(const Plan& plan, const std::vector<const Mix*>& mixes, PourWeather& weather)
{
    const TemperatureCourse course = courseOf(plan);
    for (const Mix* mix : mixes) {
        const ConcreteProperties concrete = concreteOf(*mix).likely;
        const double proofH = [&] {
            for (double h = 0.0; h <= kFrostWatchH; h += kFrostStepH) {
                if (strengthAtAge(concrete, cementS(mix->cementSpeed), h, course).fcmMpa >= kFrostProofMpa) return h;
            }
            return kFrostWatchH;
        }();
        for (double h = 0.0; h < proofH; h += kFrostStepH) {
            if (courseAtC(course, h) >= 0.0) continue;
            const double mpa = strengthAtAge(concrete, cementS(mix->cementSpeed), h, course).fcmMpa;
            if (!weather.frostTonight || h < weather.frostAtH) {
                weather.frostAtH = h;
                weather.frostMpa = mpa;
            }
            weather.frostTonight = true;
            break;
        }
    }
}

/// How many charges go into one filling of the mixer; one without a mixer.
double chargesPerBatch(const Plan& plan, const std::vector<MixQuantities>& quantities, const Mix& mix,
                       const Charge& charge)
{
    if (!plan.mixer) return 1.0;
    for (const MixQuantities& q : quantities) {
        if (q.mix != mix.id || !(q.bagsPerBatch > 0.0)) continue;
        return q.perBag ? q.bagsPerBatch : q.bagsPerBatch * q.bagKg / charge.cementKg;
    }
    return 1.0;
}

Cooling coolingOf(const MixTemperatureInput& input, double units)
{
    Cooling cooling;
    cooling.targetC = kWarmMixC;
    cooling.fromC = mixTemperatureC(input);
    const double wantedC = waterForC(input, kWarmMixC);
    cooling.coldWaterEnough = wantedC >= kColdestWaterC;
    cooling.coldWaterC = std::max(wantedC, kColdestWaterC);
    // A kilogram of ice in place of one of water takes away its melting and the warmth of that water.
    MixTemperatureInput iced = input;
    iced.iceKg += 1.0;
    iced.waterKg -= 1.0;
    const double perKgIceC = cooling.fromC - mixTemperatureC(iced);
    const double iceKg =
        perKgIceC > 0.0 ? input.iceKg + (cooling.fromC - kWarmMixC) / perKgIceC : HUGE_VAL;
    const double share = iceKg / (input.waterKg + input.iceKg);
    cooling.iceEnough = share <= kMostIceShare;
    if (!cooling.coldWaterEnough && cooling.iceEnough) {
        cooling.icePerBatchKg = iceKg * units;
        cooling.icePercent = std::min(std::ceil(100 * share - 1e-9), 100 * kMostIceShare);
    }
    return cooling;
}

}  // namespace

double evaporationKgM2H(double concreteC, double airC, double humidityShare, double windKmh)
{
    const auto term = [](double c) { return std::pow(std::max(c + 18.0, 0.0), 2.5); };
    const double rate = 5.0 * (term(concreteC) - humidityShare * term(airC)) * (windKmh + 4.0) * 1e-6;
    return std::max(rate, 0.0);
}

double evaporationLimit(const Mix& mix)
{
    const bool fibres =
        std::any_of(mix.fibres.begin(), mix.fibres.end(), [](const Fibre& f) { return f.kgPerM3 > 0.0; });
    return mix.silicaFumePercent > 0.0 || fibres ? kEvaporationLimitLowBleed : kEvaporationLimit;
}

double saturationHpa(double airC) { return 6.112 * std::exp(17.62 * airC / (243.12 + airC)); }

double dewPointC(double airC, double humidityPercent)
{
    const double gamma = std::log(std::max(humidityPercent, 0.1) / 100) + 17.62 * airC / (243.12 + airC);
    return 243.12 * gamma / (17.62 - gamma);
}

double humidityPercentAt(double airC, double dewPoint)
{
    return std::min(100.0 * saturationHpa(dewPoint) / saturationHpa(airC), 100.0);
}

double workingMinutes(double minutesAt20, double concreteC)
{
    return minutesAt20 * std::exp2((20.0 - concreteC) / 10.0);
}

WeatherHour weatherAt(const Plan& plan, double hourOfDay)
{
    const Conditions& c = plan.conditions;
    const double airC = sane(c.airC, -40.0, 60.0);
    const double humidity = sane(c.humidityPercent, 0.0, 100.0);
    WeatherHour hour;
    hour.hourOfDay = hourOfDay;
    hour.airC = airAtHourC(sane(c.lowC.value_or(airC), -40.0, 60.0), sane(c.highC.value_or(airC), -40.0, 60.0),
                           hourOfDay);
    hour.humidityPercent = hour.airC == airC ? humidity : humidityPercentAt(hour.airC, dewPointC(airC, humidity));
    hour.concreteC = sane(c.concreteC, -40.0, 95.0) + kFollowsAir * (hour.airC - airC);
    hour.evaporationKgM2H =
        evaporationKgM2H(hour.concreteC, hour.airC, hour.humidityPercent / 100, sane(c.windKmh, 0.0, 500.0));
    hour.workingMinutes = workingMinutes(pouringOf(plan).workingMinutes, hour.concreteC);
    return hour;
}

double workHours(const Plan& plan, const std::vector<MixQuantities>& quantities)
{
    const double most = sane(pouringOf(plan).hours, kShortestWorkH, 24.0);
    if (quantities.empty()) return most;
    const double minutes = plan.mixer ? plan.mixer->batchMinutes : kHandBatchMinutes;
    double work = kSetUpH;
    for (const MixQuantities& mix : quantities) work += batchesOf(plan, mix) * minutes / 60;
    return sane(work, kShortestWorkH, most);
}

WeatherHour worstHour(const Plan& plan, double startH, double workH)
{
    WeatherHour worst = weatherAt(plan, startH);
    for (double h = kLookEveryH; h < workH + kLookEveryH / 2; h += kLookEveryH) {
        const WeatherHour hour = weatherAt(plan, startH + h);
        if (hour.evaporationKgM2H > worst.evaporationKgM2H) worst = hour;
    }
    return worst;
}

double bestStart(const Plan& plan, double workH)
{
    const double own = pouringOf(plan).startH;
    struct Rank {
        double startH = kEarliestWorkH;
        double cold = HUGE_VAL;   ///< how far below kColdestMixC it gets
        double worst = HUGE_VAL;
    };
    Rank best;
    const auto isBetter = [&](const Rank& a, const Rank& b) {
        if (std::abs(a.cold - b.cold) > kSameRate) return a.cold < b.cold;
        if (std::abs(a.worst - b.worst) > kSameRate) return a.worst < b.worst;
        return std::abs(a.startH - own) < std::abs(b.startH - own);
    };
    for (double h = kEarliestWorkH; h == kEarliestWorkH || h + workH <= kLatestWorkH + 1e-9; h += kStartStepH) {
        const Rank rank{h, std::max(kColdestMixC - coldestC(plan, h, workH), 0.0),
                        worstHour(plan, h, workH).evaporationKgM2H};
        if (h == kEarliestWorkH || isBetter(rank, best)) best = rank;
    }
    // Nobody is sent to a worse hour than their own.
    const Rank planned{own, std::max(kColdestMixC - coldestC(plan, own, workH), 0.0),
                       worstHour(plan, own, workH).evaporationKgM2H};
    return own >= 0.0 && own < 24.0 && !isBetter(best, planned) ? own : best.startH;
}

PourWeather pourWeather(const Plan& plan, const std::vector<std::string>& mixesInUse, std::vector<Finding>& findings,
                        const std::vector<MixQuantities>& quantities)
{
    const Conditions& c = plan.conditions;
    const Pouring pouring = pouringOf(plan);
    std::vector<const Mix*> mixes;
    for (const std::string& id : mixesInUse) {
        if (const Mix* mix = findMix(plan, id)) mixes.push_back(mix);
    }

    PourWeather weather;
    weather.evaporationKgM2H =
        evaporationKgM2H(sane(c.concreteC, -40.0, 95.0), sane(c.airC, -40.0, 60.0),
                         sane(c.humidityPercent, 0.0, 100.0) / 100, sane(c.windKmh, 0.0, 500.0));
    weather.limitKgM2H = kEvaporationLimit;
    for (const Mix* mix : mixes) weather.limitKgM2H = std::min(weather.limitKgM2H, evaporationLimit(*mix));
    weather.mixC = c.concreteC;
    weather.workingMinutes = workingMinutes(pouring.workingMinutes, c.concreteC);
    for (int h = 0; h < 24; ++h) weather.hours.push_back(weatherAt(plan, h));
    weather.startH = sane(pouring.startH, 0.0, 24.0);
    weather.workH = workHours(plan, quantities);
    weather.bestStartH = bestStart(plan, weather.workH);
    weather.worstAtBestKgM2H = worstHour(plan, weather.bestStartH, weather.workH).evaporationKgM2H;
    weather.worstAtPlanKgM2H = worstHour(plan, weather.startH, weather.workH).evaporationKgM2H;
    weather.lowC = c.lowC.value_or(c.airC);
    watchFrost(plan, mixes, weather);

    MixTemperatureInput input;
    if (!mixes.empty() && isUsable(*mixes.front())) {
        const Mix& mix = *mixes.front();
        const Charge charge = chargeOf(mix);
        input = mixTemperatureInput(charge, c.materialsC.value_or(c.airC), c.waterC, iceShareOf(plan));
        weather.mixC = mixTemperatureC(input);
        if (weather.mixC > kWarmMixC && input.waterKg > 1e-6)
            weather.cooling.push_back(coolingOf(input, chargesPerBatch(plan, quantities, mix, charge)));
    }
    addWeatherFindings(plan, weather, input, findings);
    return weather;
}

}  // namespace yardcast
