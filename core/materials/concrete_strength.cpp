#include "core/materials/concrete_strength.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/materials/materials.h"

namespace yardcast {

namespace {

constexpr double kMeanOverFckMpa = 8.0;
constexpr double kLowerFractile = 0.7;
constexpr double kHighestNormalFckMpa = 50.0;
constexpr double kFullAgeDays = 28.0;
constexpr double kNoFckUntilDays = 3.0;
constexpr double kHoursADay = 24.0;

}  // namespace

ConcreteProperties concreteProperties(double fckMpa)
{
    if (!(fckMpa > 0.0 && std::isfinite(fckMpa))) return {};
    ConcreteProperties concrete;
    concrete.fckMpa = fckMpa;
    concrete.fcmMpa = fckMpa + kMeanOverFckMpa;
    concrete.fctmMpa = fckMpa <= kHighestNormalFckMpa ? 0.30 * std::pow(fckMpa, 2.0 / 3.0)
                                                      : 2.12 * std::log(1.0 + concrete.fcmMpa / 10.0);
    concrete.fctk005Mpa = kLowerFractile * concrete.fctmMpa;
    concrete.ecmMpa = 22'000.0 * std::pow(concrete.fcmMpa / 10.0, 0.3);
    return concrete;
}

std::optional<ConcreteProperties> concreteProperties(const std::string& name)
{
    const auto strength = concreteClass(name);
    if (!strength) return std::nullopt;
    return concreteProperties(strength->fckMpa);
}

ConcreteProperties weakened(const ConcreteProperties& concrete, double share)
{
    if (!(share < 1.0)) return concrete;
    const double left = std::max(share, 0.0);
    ConcreteProperties weak = concrete;
    weak.fckMpa *= left;
    weak.fcmMpa *= left;
    weak.fctmMpa *= left;
    weak.fctk005Mpa *= left;
    weak.ecmMpa *= std::pow(left, 0.3);
    return weak;
}

double strengthShare(double ageDays, double s)
{
    if (!(ageDays > 0.0)) return 0.0;
    return std::exp(s * (1.0 - std::sqrt(kFullAgeDays / ageDays)));
}

double ageOfShareDays(double share, double s)
{
    if (!(share > 0.0)) return 0.0;
    const double root = 1.0 - std::log(share) / s;
    return root > 0.0 ? kFullAgeDays / (root * root) : std::numeric_limits<double>::infinity();
}

double equivalentAgeDays(double hours, double meanC)
{
    if (!(hours > 0.0 && meanC >= 0.0)) return 0.0;
    return hours / kHoursADay * std::exp(13.65 - 4000.0 / (273.0 + std::min(meanC, 80.0)));
}

StrengthAtAge strengthAtEquivalentAge(const ConcreteProperties& concrete, double s, double ageDays)
{
    StrengthAtAge result;
    result.ageDays = ageDays;
    result.share = strengthShare(result.ageDays, s);
    result.fcmMpa = result.share * concrete.fcmMpa;
    result.fctmMpa = std::pow(result.share, result.ageDays < kFullAgeDays ? 1.0 : 2.0 / 3.0) * concrete.fctmMpa;
    result.fctk005Mpa = kLowerFractile * result.fctmMpa;
    result.elasticMpa = std::pow(result.share, 0.3) * concrete.ecmMpa;
    if (result.ageDays >= kFullAgeDays) {
        result.fckMpa = concrete.fckMpa;
    } else if (result.ageDays > kNoFckUntilDays) {
        result.fckMpa = std::max(result.fcmMpa - kMeanOverFckMpa, 0.0);
    }
    return result;
}

StrengthAtAge strengthAtAge(const ConcreteProperties& concrete, double s, double ageH, double meanC)
{
    return strengthAtEquivalentAge(concrete, s, equivalentAgeDays(ageH, meanC));
}

double flexuralFactor(double depthMm) { return std::max(1.6 - depthMm / 1000.0, 1.0); }

}  // namespace yardcast
