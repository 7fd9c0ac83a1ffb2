#include "core/reinforcement/detailing_rules.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace yardcast {

namespace {

// Table 4.4N: rows S1 to S6; columns X0, XC1, XC2 and XC3, XC4, XD1 and XS1, XD2 and XS2, XD3 and XS3.
constexpr std::array<std::array<double, 7>, 6> kCoverForLifeMm{{
    {10, 10, 10, 15, 20, 25, 30},
    {10, 10, 15, 20, 25, 30, 35},
    {10, 10, 20, 25, 30, 35, 40},
    {10, 15, 25, 30, 35, 40, 45},
    {15, 20, 30, 35, 40, 45, 50},
    {20, 25, 35, 40, 45, 50, 55},
}};

std::size_t columnOf(Exposure exposure)
{
    switch (exposure) {
    case Exposure::x0: return 0;
    case Exposure::xc1: return 1;
    case Exposure::xc2:
    case Exposure::xc3: return 2;
    case Exposure::xc4: return 3;
    case Exposure::xd1:
    case Exposure::xs1: return 4;
    case Exposure::xd2:
    case Exposure::xs2: return 5;
    case Exposure::xd3:
    case Exposure::xs3: break;
    }
    return 6;
}

/// Table 8.2, alpha2 of a bar in tension.
double coverShare(const BarInConcrete& bar)
{
    const double cd = std::min(bar.clearMm / 2, bar.coverMm);
    const double from = bar.bent ? 3 * bar.diameterMm : bar.diameterMm;
    return std::clamp(1 - 0.15 * (cd - from) / bar.diameterMm, 0.7, 1.0);
}

}  // namespace

double leastCoverForLifeMm(Exposure exposure, int structuralClass)
{
    const int row = std::clamp(structuralClass, 1, 6) - 1;
    return kCoverForLifeMm[static_cast<std::size_t>(row)][columnOf(exposure)];
}

CoverAsked coverAsked(Exposure exposure, double diameterMm, double aggregateMm, int structuralClass,
                      double deviationMm)
{
    const double bond = diameterMm + (aggregateMm > 32.0 ? 5.0 : 0.0);
    const double least = std::max({bond, leastCoverForLifeMm(exposure, structuralClass), 10.0});
    return {least, least + deviationMm};
}

double leastClearMm(double diameterMm, double aggregateMm)
{
    return std::max({diameterMm, aggregateMm + 5.0, 20.0});
}

double mostSpacingMm(double depthMm, bool mainBars)
{
    return mainBars ? std::min(3.0 * depthMm, 400.0) : std::min(3.5 * depthMm, 450.0);
}

double leastSteelMm2Mm(double effectiveDepthMm, double fctmMpa, double fykMpa)
{
    return std::max(0.26 * fctmMpa / fykMpa, 0.0013) * effectiveDepthMm;
}

double mostSteelMm2Mm(double depthMm) { return 0.04 * depthMm; }

double bondStrengthMpa(double fctk005Mpa, double diameterMm, bool good, double gammaConcrete)
{
    const double eta1 = good ? 1.0 : 0.7;
    const double eta2 = diameterMm <= 32.0 ? 1.0 : (132.0 - diameterMm) / 100.0;
    return 2.25 * eta1 * eta2 * fctk005Mpa / gammaConcrete;
}

double basicAnchorageMm(const BarInConcrete& bar, double fctk005Mpa)
{
    return bar.diameterMm / 4 * bar.stressMpa / bondStrengthMpa(fctk005Mpa, bar.diameterMm, bar.good);
}

double anchorageMm(const BarInConcrete& bar, double fctk005Mpa)
{
    const double basic = basicAnchorageMm(bar, fctk005Mpa);
    return std::max({coverShare(bar) * basic, 0.3 * basic, 10 * bar.diameterMm, 100.0});
}

double lapMm(const BarInConcrete& bar, double fctk005Mpa, double lappedShare)
{
    const double basic = basicAnchorageMm(bar, fctk005Mpa);
    const double alpha6 = std::clamp(std::sqrt(lappedShare * 100 / 25), 1.0, 1.5);
    return std::max({coverShare(bar) * alpha6 * basic, 0.3 * alpha6 * basic, 15 * bar.diameterMm, 200.0});
}

double meshLapMm(double barMm, double pitchMm)
{
    const double byTable = barMm <= 6.0 ? 150.0 : barMm <= 8.5 ? 250.0 : 350.0;
    return std::max(byTable, 2 * pitchMm);
}

double mostCrackWidthMm(Exposure exposure)
{
    return exposure == Exposure::x0 || exposure == Exposure::xc1 ? 0.4 : 0.3;
}

}  // namespace yardcast
