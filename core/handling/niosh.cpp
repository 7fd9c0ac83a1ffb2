#include "core/handling/niosh.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace yardcast {

namespace {

constexpr double kLoadConstantKg = 23.0;
constexpr double kNearestHorizontalCm = 25.0;
constexpr double kFarthestHorizontalCm = 63.0;
constexpr double kHighestCm = 175.0;
constexpr double kKnuckleHeightCm = 75.0;
constexpr double kLeastTravelCm = 25.0;
constexpr double kMostTravelCm = 175.0;
constexpr double kMostTwistDeg = 135.0;
constexpr double kFewestLiftsPerMinute = 0.2;

/// Table 5 of the manual: by lifts a minute, for one hour, two and eight; V < 75 cm, then V >= 75 cm.
struct FrequencyRow {
    double liftsPerMinute;
    double low[3];
    double high[3];
};
constexpr std::array<FrequencyRow, 17> kFrequencyTable{{
    {0.2, {1.00, 0.95, 0.85}, {1.00, 0.95, 0.85}}, {0.5, {0.97, 0.92, 0.81}, {0.97, 0.92, 0.81}},
    {1.0, {0.94, 0.88, 0.75}, {0.94, 0.88, 0.75}}, {2.0, {0.91, 0.84, 0.65}, {0.91, 0.84, 0.65}},
    {3.0, {0.88, 0.79, 0.55}, {0.88, 0.79, 0.55}}, {4.0, {0.84, 0.72, 0.45}, {0.84, 0.72, 0.45}},
    {5.0, {0.80, 0.60, 0.35}, {0.80, 0.60, 0.35}}, {6.0, {0.75, 0.50, 0.27}, {0.75, 0.50, 0.27}},
    {7.0, {0.70, 0.42, 0.22}, {0.70, 0.42, 0.22}}, {8.0, {0.60, 0.35, 0.18}, {0.60, 0.35, 0.18}},
    {9.0, {0.52, 0.30, 0.00}, {0.52, 0.30, 0.15}}, {10.0, {0.45, 0.26, 0.00}, {0.45, 0.26, 0.13}},
    {11.0, {0.41, 0.00, 0.00}, {0.41, 0.23, 0.00}}, {12.0, {0.37, 0.00, 0.00}, {0.37, 0.21, 0.00}},
    {13.0, {0.00, 0.00, 0.00}, {0.34, 0.00, 0.00}}, {14.0, {0.00, 0.00, 0.00}, {0.31, 0.00, 0.00}},
    {15.0, {0.00, 0.00, 0.00}, {0.28, 0.00, 0.00}},
}};

double frequencyMultiplier(double liftsPerMinute, LiftDuration duration, bool high)
{
    if (!std::isfinite(liftsPerMinute) || liftsPerMinute > kFrequencyTable.back().liftsPerMinute) return 0.0;
    const auto valueOf = [&](const FrequencyRow& row) {
        return (high ? row.high : row.low)[static_cast<std::size_t>(duration)];
    };
    const double lifts = std::max(liftsPerMinute, kFewestLiftsPerMinute);
    const auto above = std::find_if(kFrequencyTable.begin(), kFrequencyTable.end(),
                                    [&](const FrequencyRow& row) { return lifts <= row.liftsPerMinute; });
    if (above == kFrequencyTable.begin() || lifts == above->liftsPerMinute) return valueOf(*above);
    // Where the table ends within a column, nothing is allowed beyond its last figure.
    if (valueOf(*above) == 0.0) return 0.0;
    const FrequencyRow& below = *(above - 1);
    const double share = (lifts - below.liftsPerMinute) / (above->liftsPerMinute - below.liftsPerMinute);
    return valueOf(below) + share * (valueOf(*above) - valueOf(below));
}

double couplingMultiplier(Coupling coupling, bool high)
{
    switch (coupling) {
    case Coupling::good: return 1.0;
    case Coupling::fair: return high ? 1.0 : 0.95;
    case Coupling::poor: return 0.90;
    }
    return 0.0;
}

}  // namespace

NioshLimit nioshLimit(const NioshLift& lift)
{
    const bool high = lift.verticalCm >= kKnuckleHeightCm;
    NioshLimit limit;
    if (lift.horizontalCm <= kFarthestHorizontalCm) {
        limit.horizontal = kNearestHorizontalCm / std::max(lift.horizontalCm, kNearestHorizontalCm);
    }
    if (lift.verticalCm >= 0.0 && lift.verticalCm <= kHighestCm) {
        limit.vertical = 1.0 - 0.003 * std::abs(lift.verticalCm - kKnuckleHeightCm);
    }
    if (lift.travelCm <= kMostTravelCm) limit.travel = 0.82 + 4.5 / std::max(lift.travelCm, kLeastTravelCm);
    const double twist = std::abs(lift.asymmetryDeg);
    if (twist <= kMostTwistDeg) limit.asymmetry = 1.0 - 0.0032 * twist;
    limit.frequency = frequencyMultiplier(lift.liftsPerMinute, lift.duration, high);
    limit.coupling = couplingMultiplier(lift.coupling, high);
    limit.limitKg = kLoadConstantKg * limit.horizontal * limit.vertical * limit.travel * limit.asymmetry *
        limit.frequency * limit.coupling;
    return limit;
}

}  // namespace yardcast
