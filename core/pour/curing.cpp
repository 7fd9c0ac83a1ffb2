#include "core/pour/curing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/castings/sheeting.h"
#include "core/materials/concrete_strength.h"
#include "core/pour/cement_speed.h"
#include "core/pour/weather.h"

namespace yardcast {

namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr double kRapidFrom = 0.50;
constexpr double kMediumFrom = 0.30;
constexpr double kSlowFrom = 0.15;
/// Past this nobody keeps a sheet wet.
constexpr double kLongestH = 120 * 24.0;

/// Surface temperature from which a row of the tables holds; days for rapid, medium, slow gain.
struct Row {
    double fromC;
    std::array<double, 3> days;
};
using Table = std::array<Row, 4>;
constexpr Table kClass2{{{25, {1.0, 1.5, 2.5}}, {15, {1.0, 2.5, 5}}, {10, {1.5, 4, 8}}, {5, {2.0, 5, 11}}}};
constexpr Table kClass3{{{25, {1.5, 2.5, 3.5}}, {15, {2.0, 4, 7}}, {10, {2.5, 7, 12}}, {5, {3.5, 9, 18}}}};
constexpr Table kClass4{{{25, {3, 5, 6}}, {15, {5, 9, 12}}, {10, {7, 13, 21}}, {5, {9, 18, 30}}}};

const Row* rowOf(int curingClass, double surfaceC)
{
    const Table& table = curingClass <= 2 ? kClass2 : curingClass == 3 ? kClass3 : kClass4;
    const auto row = std::find_if(table.begin(), table.end(), [&](const Row& r) { return surfaceC >= r.fromC; });
    return row == table.end() ? nullptr : &*row;
}

StrengthGain gainOf(double ratio)
{
    if (ratio >= kRapidFrom) return StrengthGain::rapid;
    if (ratio >= kMediumFrom) return StrengthGain::medium;
    return ratio >= kSlowFrom ? StrengthGain::slow : StrengthGain::verySlow;
}

/// Hour by hour: those warm enough count, until as many have as the table asks at their mean.
void runThrough(const TemperatureCourse& course, int curingClass, Curing& result)
{
    double counted = 0.0;
    double sum = 0.0;
    for (double h = 0.0; h < kLongestH; h += 1.0) {
        const double c = courseAtC(course, h + 0.5);
        if (c < kNoCuringBelowC) continue;
        counted += 1.0;
        sum += c;
        const double days = curingDays(curingClass, result.ratio, sum / counted);
        if (counted < 24 * days) continue;
        result.surfaceC = sum / counted;
        result.countedDays = days;
        result.days = (h + 1.0 - (counted - 24 * days)) / 24;
        return;
    }
    result.surfaceC = counted > 0.0 ? sum / counted : courseAtC(course, 0.0);
    result.countedDays = curingDays(curingClass, result.ratio, std::max(result.surfaceC, kNoCuringBelowC));
    result.days = kNever;
}

}  // namespace

StrengthGain strengthGain(double s) { return gainOf(strengthRatio(s)); }

double strengthRatio(double s) { return strengthShare(2.0, s); }

double curingDays(int curingClass, StrengthGain gain, double surfaceC)
{
    const Row* row = rowOf(curingClass, surfaceC);
    if (row == nullptr || gain == StrengthGain::verySlow) return kNever;
    return row->days[static_cast<std::size_t>(gain)];
}

double curingDays(int curingClass, double ratio, double surfaceC)
{
    const StrengthGain gain = gainOf(ratio);
    const double days = curingDays(curingClass, gain, surfaceC);
    const auto between = [&](StrengthGain faster, double slowRatio, double fastRatio) {
        const double fast = curingDays(curingClass, faster, surfaceC);
        return days + (fast - days) * (ratio - slowRatio) / (fastRatio - slowRatio);
    };
    if (!std::isfinite(days)) return days;
    if (gain == StrengthGain::medium) return between(StrengthGain::rapid, kMediumFrom, kRapidFrom);
    if (gain == StrengthGain::slow) return between(StrengthGain::medium, kSlowFrom, kMediumFrom);
    return days;
}

std::vector<Curing> curing(const Plan& plan, const std::vector<CastingPtr>& castings, std::vector<Finding>& findings)
{
    const TemperatureCourse course = courseOf(plan);
    const int curingClass = assumptionsOf(plan).curingClass;
    std::vector<Curing> result;
    for (std::size_t index = 0; index < plan.mixes.size(); ++index) {
        const Mix& mix = plan.mixes[index];
        Curing one;
        one.mix = mix.id;
        bool used = false;
        for (const CastingPtr& casting : castings) {
            if (casting->mix != mix.id) continue;
            used = true;
            one.sheetM2 += curingSheetM2(*casting);
        }
        if (!used) continue;
        const double s = cementS(mix.cementSpeed);
        one.gain = strengthGain(s);
        one.ratio = strengthRatio(s);
        runThrough(course, curingClass, one);
        const auto say = [&](const char* code, Severity severity, FindingValues values) {
            findings.push_back({code, severity, {mix.id}, "/mixes/" + std::to_string(index), std::move(values), {}});
        };
        const double waiting = one.days - one.countedDays;
        if (!std::isfinite(one.days)) {
            say("curing_stops", Severity::caution, {{"low_c", course.lowC}, {"high_c", course.highC}});
        } else if (waiting > 0.5) {
            say("curing_stretched", Severity::note, {{"days", one.days}, {"counted_days", one.countedDays}});
        }
        if (mix.silicaFumePercent > 0.0 && std::isfinite(one.days))
            say("fume_needs_curing", Severity::note, {{"days", one.days}});
        result.push_back(std::move(one));
    }
    return result;
}

}  // namespace yardcast
