#include "core/materials/temperature_course.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace yardcast {

namespace {

constexpr double kHoursADay = 24.0;
constexpr double kRiseH = kWarmestH - kColdestH;
constexpr double kFallH = kHoursADay - kRiseH;
/// Eq. B.10 holds between these.
constexpr double kLeastC = 0.0;
constexpr double kMostC = 80.0;
constexpr double kLoneReadingH = 1.0;
constexpr double kKelvin = 273.15;

/// Half a wave from one extreme to the next: hours of some day, without wrapping.
struct HalfWave {
    double fromH = 0.0;
    double spanH = kRiseH;
    double fromC = 20.0;
    double toC = 20.0;

    double atC(double h) const
    {
        return (fromC + toC) / 2 - (toC - fromC) / 2 * std::cos(std::numbers::pi * (h - fromH) / spanH);
    }
    /// The hour at which it is this warm; the nearer end where it never is.
    double hourAtC(double c) const
    {
        const double middle = (fromC + toC) / 2;
        const double swing = (toC - fromC) / 2;
        return fromH + spanH / std::numbers::pi * std::acos(std::clamp((middle - c) / swing, -1.0, 1.0));
    }
};

HalfWave halfWaveAt(double lowC, double highC, double h)
{
    const double day = kHoursADay * std::floor((h - kColdestH) / kHoursADay);
    const double warmest = day + kWarmestH;
    if (h < warmest) return {day + kColdestH, kRiseH, lowC, highC};
    return {warmest, kFallH, highC, lowC};
}

double rateADay(double c) { return equivalentAgeDays(kHoursADay, c); }

/// Days of equivalent age of a piece without a kink: Gauss of five points over four equal parts. For swings of 80 K in
/// ten hours that is good to 1e-9.
double smoothDays(const HalfWave& wave, double fromH, double toH)
{
    constexpr double kNode[] = {0.0, 0.5384693101056831, 0.9061798459386640};
    constexpr double kWeight[] = {0.5688888888888889, 0.4786286704993665, 0.2369268850561891};
    constexpr int kParts = 4;
    const double half = (toH - fromH) / kParts / 2;
    double sum = 0.0;
    for (int part = 0; part < kParts; ++part) {
        const double middle = fromH + (2 * part + 1) * half;
        double own = kWeight[0] * rateADay(wave.atC(middle));
        for (int i = 1; i < 3; ++i) {
            own += kWeight[i] * (rateADay(wave.atC(middle - kNode[i] * half)) +
                                 rateADay(wave.atC(middle + kNode[i] * half)));
        }
        sum += own * half;
    }
    return sum / kHoursADay;
}

/// Between two hours of the same half wave; the equation has kinks where the wave passes its ends.
double halfWaveDays(const HalfWave& wave, double fromH, double toH)
{
    double kinks[] = {wave.hourAtC(kLeastC), wave.hourAtC(kMostC)};
    if (kinks[0] > kinks[1]) std::swap(kinks[0], kinks[1]);
    double sum = 0.0;
    double from = fromH;
    for (const double kink : {kinks[0], kinks[1], toH}) {
        const double to = std::clamp(kink, from, toH);
        if (to > from) sum += smoothDays(wave, from, to);
        from = to;
    }
    return sum;
}

/// Days of equivalent age of the wave between two hours of the day, counted on past midnight.
double waveDays(const TemperatureCourse& course, double fromH, double toH)
{
    if (!(toH > fromH)) return 0.0;
    if (course.lowC == course.highC) return equivalentAgeDays(toH - fromH, course.lowC);
    const auto within = [&](double from, double to) {
        double sum = 0.0;
        for (int guard = 0; from < to && guard < 8; ++guard) {
            const HalfWave wave = halfWaveAt(course.lowC, course.highC, from);
            const double end = std::min(wave.fromH + wave.spanH, to);
            sum += halfWaveDays(wave, from, end);
            from = end;
        }
        return sum;
    };
    const double days = std::floor((toH - fromH) / kHoursADay);
    const double rest = toH - days * kHoursADay;
    return (days > 0.0 ? days * within(kColdestH, kColdestH + kHoursADay) : 0.0) + within(fromH, rest);
}

/// Where the last reading stops counting.
double readingsEndH(const std::vector<TemperatureReading>& readings)
{
    const std::size_t count = readings.size();
    if (count == 0) return 0.0;
    const double held = count > 1 ? readings[count - 1].h - readings[count - 2].h : kLoneReadingH;
    return readings.back().h + std::max(held, 0.0);
}

/// A stretch of the course, hours after the pour; `c` where a reading holds.
struct Stretch {
    double fromH = 0.0;
    double toH = 0.0;
    const TemperatureReading* reading = nullptr;
};

double stretchDays(const TemperatureCourse& course, const Stretch& stretch, double toH)
{
    if (stretch.reading) return equivalentAgeDays(toH - stretch.fromH, stretch.reading->c);
    return waveDays(course, course.startH + stretch.fromH, course.startH + toH);
}

/// Calls `visit(stretch)` from the pour up to `endH` until it returns false.
template <typename Visit>
void eachStretch(const TemperatureCourse& course, double endH, Visit visit)
{
    double at = 0.0;
    const auto& readings = course.readings;
    const double readingsEnd = readingsEndH(readings);
    if (!readings.empty() && readings.front().h > 0.0) {
        const Stretch before{0.0, std::min(readings.front().h, endH), nullptr};
        if (!visit(before)) return;
        at = before.toH;
    }
    for (std::size_t i = 0; i < readings.size() && at < endH; ++i) {
        const double to = std::min(i + 1 < readings.size() ? readings[i + 1].h : readingsEnd, endH);
        if (!(to > at)) continue;
        if (!visit(Stretch{at, to, &readings[i]})) return;
        at = to;
    }
    if (at < endH) visit(Stretch{at, endH, nullptr});
}

/// Sum over the readings of f(temperature) times hours.
template <typename Of>
double sumOver(const std::vector<TemperatureReading>& readings, double endH, Of of)
{
    double sum = 0.0;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const double to = std::min(i + 1 < readings.size() ? readings[i + 1].h : endH, endH);
        if (to > readings[i].h) sum += of(readings[i].c) * (to - readings[i].h);
    }
    return sum;
}

}  // namespace

double airAtHourC(double lowC, double highC, double hourOfDay)
{
    if (lowC == highC || !std::isfinite(hourOfDay)) return lowC;
    return halfWaveAt(lowC, highC, hourOfDay).atC(hourOfDay);
}

double courseAtC(const TemperatureCourse& course, double h)
{
    const auto& readings = course.readings;
    if (!readings.empty() && h >= readings.front().h && h < readingsEndH(readings)) {
        const auto next = std::upper_bound(readings.begin(), readings.end(), h,
                                           [](double hour, const TemperatureReading& r) { return hour < r.h; });
        return std::prev(next)->c;
    }
    return airAtHourC(course.lowC, course.highC, course.startH + h);
}

double equivalentAgeDays(const TemperatureCourse& course, double ageH)
{
    if (!(ageH > 0.0 && std::isfinite(ageH))) return 0.0;
    double days = 0.0;
    eachStretch(course, ageH, [&](const Stretch& stretch) {
        days += stretchDays(course, stretch, stretch.toH);
        return true;
    });
    return days;
}

double equivalentAgeDays(const std::vector<TemperatureReading>& readings, double endH)
{
    return sumOver(readings, endH, [](double c) { return equivalentAgeDays(1.0, c); });
}

double hoursToEquivalentAge(const TemperatureCourse& course, double days, double mostH)
{
    if (!(days > 0.0)) return 0.0;
    double left = days;
    double found = std::numeric_limits<double>::infinity();
    eachStretch(course, mostH, [&](Stretch stretch) {
        const double whole = stretchDays(course, stretch, stretch.toH);
        if (whole < left) {
            left -= whole;
            return true;
        }
        double low = stretch.fromH;
        double high = stretch.toH;
        // An equation of at most 1e4 hours halved 60 times is as fine as the numbers are.
        for (int i = 0; i < 60 && high - low > 1e-10 * high; ++i) {
            const double middle = (low + high) / 2;
            (stretchDays(course, stretch, middle) < left ? low : high) = middle;
        }
        found = high;
        return false;
    });
    return found;
}

StrengthAtAge strengthAtAge(const ConcreteProperties& concrete, double s, double ageH, const TemperatureCourse& course)
{
    return strengthAtEquivalentAge(concrete, s, equivalentAgeDays(course, ageH));
}

double nurseSaulMaturity(const std::vector<TemperatureReading>& readings, double endH, double datumC)
{
    return sumOver(readings, endH, [&](double c) { return std::max(c - datumC, 0.0); });
}

double equivalentAgeH(const std::vector<TemperatureReading>& readings, double endH, double qKelvin, double referenceC)
{
    return sumOver(readings, endH, [&](double c) {
        return std::exp(-qKelvin * (1.0 / (c + kKelvin) - 1.0 / (referenceC + kKelvin)));
    });
}

}  // namespace yardcast
