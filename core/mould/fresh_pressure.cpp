#include "core/mould/fresh_pressure.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

constexpr double kMpaPerKpa = 1e-3;

double inertiaMm3(double thicknessMm) { return std::pow(thicknessMm, 3) / 12; }

}  // namespace

double hydrostaticKpa(double heightMm, double gammaKnM3) { return gammaKnM3 * heightMm * 1e-3; }

const char* freshClassWord(FreshClass which)
{
    switch (which) {
    case FreshClass::f1: return "F1";
    case FreshClass::f2: return "F2";
    case FreshClass::f3: return "F3";
    case FreshClass::f4: return "F4";
    case FreshClass::f5: return "F5";
    case FreshClass::f6: return "F6";
    case FreshClass::scc: return "SCC";
    }
    return "";
}

double din18218Kpa(FreshClass which, double riseMPerH, double settingFactor)
{
    const double v = std::max(riseMPerH, 0.0);
    const double k1 = settingFactor;
    const auto stiff = [&](double slope, double least) { return std::max((slope * v + least) * k1, 25.0); };
    const auto fluid = [&](double slope) { return std::max(25.0 + slope * v * k1, 30.0); };
    switch (which) {
    case FreshClass::f1: return stiff(5, 21);
    case FreshClass::f2: return stiff(10, 19);
    case FreshClass::f3: return stiff(14, 18);
    case FreshClass::f4: return stiff(17, 17);
    case FreshClass::f5: return fluid(30);
    case FreshClass::f6: return fluid(38);
    case FreshClass::scc: return fluid(33);
    }
    return 0.0;
}

double ciria108Kpa(const Ciria108& in)
{
    const double hydrostatic = in.gammaKnM3 * in.heightM;
    const double byRise = in.shape * std::sqrt(std::max(in.riseMPerH, 0.0));
    if (byRise > in.heightM) return hydrostatic;
    const double k = std::pow(36.0 / (in.concreteC + 16.0), 2);
    return std::min(hydrostatic, in.gammaKnM3 * (byRise + in.mix * k * std::sqrt(in.heightM - byRise)));
}

double aci347Kpa(double riseMPerH, double concreteC, double heightM, double weight, double chemistry, double gammaKnM3)
{
    const double byRise = weight * chemistry * (7.2 + 785.0 * riseMPerH / (concreteC + 17.8));
    return std::min(std::max(byRise, 30.0 * weight), gammaKnM3 * heightM);
}

BoardBending boardBending(double pressureKpa, double spanMm, double thicknessMm, double elasticMpa)
{
    const double inertia = inertiaMm3(thicknessMm);
    if (!(inertia > 0.0 && elasticMpa > 0.0)) return {};
    const double q = pressureKpa * kMpaPerKpa;
    return {5 * q * std::pow(spanMm, 4) / (384 * elasticMpa * inertia),
            q * spanMm * spanMm / 8 / (thicknessMm * thicknessMm / 6)};
}

double spanForBowMm(double pressureKpa, double bowMm, double thicknessMm, double elasticMpa)
{
    const double q = pressureKpa * kMpaPerKpa;
    if (!(q > 0.0)) return 0.0;
    return std::pow(384 * elasticMpa * inertiaMm3(thicknessMm) * bowMm / (5 * q), 0.25);
}

}  // namespace yardcast
