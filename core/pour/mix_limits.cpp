#include "core/pour/mix_limits.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "core/io/plan_words.h"
#include "core/materials/concrete_strength.h"
#include "core/materials/materials.h"

namespace yardcast {

namespace {

/// Rounding of a figure that a remedy set to its limit exactly must not fail it.
constexpr double kSlack = 1e-9;

bool isAtMost(double is, double limit) { return is <= limit * (1 + kSlack) + kSlack; }
bool isAtLeast(double is, double limit) { return is >= limit * (1 - kSlack) - kSlack; }

/// Classes of EN 1992-1-1 Table 3.1 that a mix of the garden may reach, the highest first.
constexpr std::array<std::string_view, 9> kClasses{"C50/60", "C45/55", "C40/50", "C35/45", "C30/37",
                                                   "C25/30", "C20/25", "C16/20", "C12/15"};

std::string classSupported(double meanMpa)
{
    for (const std::string_view name : kClasses) {
        const auto concrete = concreteProperties(std::string(name));
        if (concrete && isAtLeast(meanMpa, concrete->fcmMpa)) return std::string(name);
    }
    return {};
}

/// Fills the rows of one mix.
class Checker {
public:
    Checker(const Mix& mix, MixCheck& check) : mix_(mix), charge_(weighedChargeOf(mix)), check_(check)
    {
        check_.mix = mix.id;
        check_.ratios = ratiosOf(mix, charge_);
        check_.cementKgM3 = perM3(charge_.cementKg);
        concrete_ = concreteProperties(mix.strengthClass);
    }

    void limits(const ExposureLimits& limits, const std::string& by)
    {
        using What = LimitCheck::What;
        if (limits.maxWaterCement > 0.0)
            atMost(What::waterCement, by, check_.ratios.waterBinderK, limits.maxWaterCement);
        if (limits.minFckMpa > 0.0) {
            LimitCheck row{What::strengthClass, by, concrete_ ? concrete_->fckMpa : 0.0, limits.minFckMpa, {}};
            if (concrete_) row.met = isAtLeast(row.is, row.limit);
            check_.limits.push_back(row);
        }
        if (limits.minCementKgM3 > 0.0) cement(limits.minCementKgM3, by);
        if (limits.minAirPercent > 0.0) {
            LimitCheck row{What::air, by, mix_.airPercent.value_or(0.0), limits.minAirPercent, {}};
            if (mix_.airPercent) row.met = isAtLeast(row.is, row.limit);
            check_.limits.push_back(row);
        }
    }

    void ownLimit()
    {
        if (mix_.maxWaterCement > 0.0)
            atMost(LimitCheck::What::waterCement, "plan", check_.ratios.waterBinderK, mix_.maxWaterCement);
    }

    void additions()
    {
        using What = LimitCheck::What;
        if (charge_.fumeKg > 0.0)
            atMost(What::fume, "EN 206 5.2.5.2.3", charge_.fumeKg / charge_.cementKg * 100, kMostFumeShare * 100);
        if (charge_.plasticiserKg > 0.0)
            atMost(What::plasticiser, "EN 206 5.2.6", charge_.plasticiserKg / charge_.cementKg * 1000,
                   kMostAdmixtureGKg);
        if (charge_.pigmentKg > 0.0)
            atMost(What::pigment, "EN 12878", charge_.pigmentKg / charge_.cementKg * 100, kMostPigmentPercent);
    }

    void strength()
    {
        const double meanMpa = strengthByRatioMpa(check_.ratios.waterBinderK);
        check_.classSupported = classSupported(meanMpa);
        LimitCheck row{LimitCheck::What::ratioForClass, "ACI 211.1", meanMpa, concrete_ ? concrete_->fcmMpa : 0.0, {}};
        if (concrete_) row.met = isAtLeast(row.is, row.limit);
        check_.limits.push_back(row);
    }

private:
    double perM3(double kg) const { return kg / charge_.litres * 1000; }

    void atMost(LimitCheck::What what, const std::string& by, double is, double limit)
    {
        check_.limits.push_back({what, by, is, limit, isAtMost(is, limit)});
    }

    void cement(double least, const std::string& by)
    {
        // Up to this minimum fume takes the place of a little cement only.
        constexpr double kLastOfTheLow = 300.0;
        LimitCheck row{LimitCheck::What::cement, by, perM3(binderKKg(mix_, charge_)), least, {}};
        if (least <= kLastOfTheLow) row.is = std::min(row.is, check_.cementKgM3 + kMostCementReplacedKgM3);
        row.met = isAtLeast(row.is, row.limit);
        check_.limits.push_back(row);
    }

    const Mix& mix_;
    Charge charge_;
    MixCheck& check_;
    std::optional<ConcreteProperties> concrete_;
};

}  // namespace

std::string classNamed(double fckMpa)
{
    for (const std::string_view name : kClasses) {
        const auto concrete = concreteClass(std::string(name));
        if (concrete && concrete->fckMpa == fckMpa) return std::string(name);
    }
    return {};
}

ExposureLimits limitsOf(Exposure exposure)
{
    switch (exposure) {
    case Exposure::x0: return {0.0, 12, 0, 0};
    case Exposure::xc1: return {0.65, 20, 260, 0};
    case Exposure::xc2: return {0.60, 25, 280, 0};
    case Exposure::xc3: return {0.55, 30, 280, 0};
    case Exposure::xc4: return {0.50, 30, 300, 0};
    case Exposure::xd1: return {0.55, 30, 300, 0};
    case Exposure::xd2: return {0.55, 30, 300, 0};
    case Exposure::xd3: return {0.45, 35, 320, 0};
    case Exposure::xs1: return {0.50, 30, 300, 0};
    case Exposure::xs2: return {0.45, 35, 320, 0};
    case Exposure::xs3: return {0.45, 35, 340, 0};
    }
    return {};
}

ExposureLimits limitsOf(Frost frost)
{
    switch (frost) {
    case Frost::none: return {};
    case Frost::xf1: return {0.55, 30, 300, 0};
    case Frost::xf2: return {0.55, 25, 300, 4.0};
    case Frost::xf3: return {0.50, 30, 320, 4.0};
    case Frost::xf4: return {0.45, 30, 340, 4.0};
    }
    return {};
}

MixCheck checkMix(const Plan& plan, const Mix& mix)
{
    const Assumptions assumptions = assumptionsOf(plan);
    MixCheck check;
    Checker checker(mix, check);
    checker.ownLimit();
    checker.limits(limitsOf(assumptions.exposure), std::string(wordFor(assumptions.exposure)));
    if (assumptions.frost != Frost::none)
        checker.limits(limitsOf(assumptions.frost), std::string(wordFor(assumptions.frost)));
    checker.additions();
    checker.strength();
    return check;
}

}  // namespace yardcast
