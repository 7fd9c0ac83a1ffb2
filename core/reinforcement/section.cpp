#include "core/reinforcement/section.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

/// Table 3.1 and 3.1.7(3): the rectangular block, which is lower and shorter above C50/60.
struct StressBlock {
    double depthShare = 0.8;      ///< lambda
    double strengthShare = 1.0;   ///< eta
    double crushStrain = 0.0035;  ///< eps_cu3
};

StressBlock stressBlock(double fckMpa)
{
    if (!(fckMpa > 50.0)) return {};
    const double over = std::min(fckMpa, 90.0) - 50.0;
    return {0.8 - over / 400.0, 1.0 - over / 200.0, 0.0026 + 0.035 * std::pow((40.0 - over) / 100.0, 4.0)};
}

/// Layers by their distance from the compressed side.
struct Pulled {
    double areaMm2Mm;
    double depthMm;
    double yieldMpa;
    double elasticMpa;
};

std::vector<Pulled> pulledLayers(double depthMm, const std::vector<SteelLayer>& layers, TensionSide tension,
                                 double gammaSteel)
{
    std::vector<Pulled> pulled;
    for (const SteelLayer& layer : layers) {
        const double d = tension == TensionSide::underside ? layer.depthMm : depthMm - layer.depthMm;
        if (!(layer.areaMm2Mm > 0.0 && layer.fykMpa > 0.0 && d > 0.0 && d <= depthMm)) continue;
        pulled.push_back({layer.areaMm2Mm, d, layer.fykMpa / gammaSteel, layer.elasticMpa});
    }
    return pulled;
}

double plainDesignMpa(double fctk005Mpa, double gammaConcrete) { return 0.8 * fctk005Mpa / gammaConcrete; }

}  // namespace

ReinforcementStrength reinforcementStrength(SteelMaterial material)
{
    const bool fibres = material == SteelMaterial::glass || material == SteelMaterial::basalt;
    return fibres ? ReinforcementStrength{0.0, 0.0, false} : ReinforcementStrength{};
}

BendingResistance bendingResistance(double depthMm, double fckMpa, const std::vector<SteelLayer>& layers,
                                    TensionSide tension, const SafetyFactors& safety)
{
    const std::vector<Pulled> pulled = pulledLayers(depthMm, layers, tension, safety.steel);
    if (pulled.empty() || !(fckMpa > 0.0 && depthMm > 0.0)) return {};
    const StressBlock block = stressBlock(fckMpa);
    const double pressedPerMm = block.strengthShare * safety.longTerm * fckMpa / safety.concrete * block.depthShare;
    const auto tensionOf = [&](const Pulled& layer, double x) {
        if (layer.depthMm <= x) return 0.0;
        const double strain = block.crushStrain * (layer.depthMm - x) / x;
        return layer.areaMm2Mm * std::min(strain * layer.elasticMpa, layer.yieldMpa);
    };
    double low = 0.0;
    double high = depthMm;
    for (int i = 0; i < 100; ++i) {
        const double x = (low + high) / 2;
        double balance = pressedPerMm * x;
        for (const Pulled& layer : pulled) balance -= tensionOf(layer, x);
        (balance < 0.0 ? low : high) = x;
    }
    BendingResistance result;
    result.compressedMm = high;
    double depthMoment = 0.0;
    for (const Pulled& layer : pulled) {
        const double force = tensionOf(layer, high);
        if (!(force > 0.0)) continue;
        result.tensionNMm += force;
        result.areaMm2Mm += layer.areaMm2Mm;
        depthMoment += force * layer.depthMm;
    }
    if (!(result.tensionNMm > 0.0)) return {};
    result.effectiveDepthMm = depthMoment / result.tensionNMm;
    result.momentN = depthMoment - result.tensionNMm * block.depthShare * high / 2;
    return result;
}

double steelForMomentMm2Mm(double momentN, double effectiveDepthMm, double fckMpa, double fykMpa)
{
    const double k = momentN / (effectiveDepthMm * effectiveDepthMm * fckMpa);
    if (!(k > 0.0 && k <= 0.167)) return 0.0;
    const double z = std::min(0.5 + std::sqrt(0.25 - k / 1.134), 0.95) * effectiveDepthMm;
    return momentN / (0.87 * fykMpa * z);
}

double crackingMomentN(double depthMm, double tensileMpa) { return tensileMpa * depthMm * depthMm / 6; }

bool breaksWithoutWarning(double resistanceUnfactoredN, double crackingMoment)
{
    return resistanceUnfactoredN < crackingMoment;
}

double plainConcreteMomentN(double depthMm, double fctk005Mpa, double gammaConcrete)
{
    return plainDesignMpa(fctk005Mpa, gammaConcrete) * depthMm * depthMm / 6;
}

double plainConcreteShearNMm(double depthMm, double fctk005Mpa, double gammaConcrete)
{
    return plainDesignMpa(fctk005Mpa, gammaConcrete) * depthMm / 1.5;
}

ShearResistance shearResistance(double effectiveDepthMm, double areaMm2Mm, double fckMpa, double alongMpa,
                                double gammaConcrete)
{
    ShearResistance result;
    if (!(effectiveDepthMm > 0.0 && fckMpa > 0.0)) return result;
    result.k = std::min(1 + std::sqrt(200 / effectiveDepthMm), 2.0);
    result.steelShare = std::min(areaMm2Mm / effectiveDepthMm, 0.02);
    result.leastMpa = 0.035 * std::pow(result.k, 1.5) * std::sqrt(fckMpa);
    const double bySteel = 0.18 / gammaConcrete * result.k * std::cbrt(100 * result.steelShare * fckMpa);
    const double along = 0.15 * std::min(alongMpa, 0.2 * fckMpa / gammaConcrete);
    result.resistanceNMm = std::max((std::max(bySteel, result.leastMpa) + along) * effectiveDepthMm, 0.0);
    return result;
}

CrackedSection crackedSection(double effectiveDepthMm, double areaMm2Mm, double modularRatio)
{
    // x^2 / 2 = n A (d - x)
    const double steel = modularRatio * areaMm2Mm;
    CrackedSection section;
    section.compressedMm = steel * (std::sqrt(1 + 2 * effectiveDepthMm / steel) - 1);
    if (!(steel > 0.0)) section.compressedMm = 0.0;
    const double x = section.compressedMm;
    section.inertiaMm3 = x * x * x / 3 + steel * (effectiveDepthMm - x) * (effectiveDepthMm - x);
    return section;
}

double steelStressMpa(double momentN, double effectiveDepthMm, double areaMm2Mm, double modularRatio)
{
    if (!(areaMm2Mm > 0.0)) return 0.0;
    const double x = crackedSection(effectiveDepthMm, areaMm2Mm, modularRatio).compressedMm;
    return momentN / (areaMm2Mm * (effectiveDepthMm - x / 3));
}

double tensionZoneMm(double depthMm, double effectiveDepthMm, double compressedMm)
{
    return std::min({2.5 * (depthMm - effectiveDepthMm), (depthMm - compressedMm) / 3, depthMm / 2});
}

double crackStrain(double steelMpa, double modularRatio, double steelShare, double kt, double tensileMpa,
                   double elasticMpa)
{
    const double stiffening = kt * tensileMpa / steelShare * (1 + modularRatio * steelShare);
    return std::max((steelMpa - stiffening) / elasticMpa, 0.6 * steelMpa / elasticMpa);
}

double crackSpacingMm(double coverMm, double diameterMm, double steelShare, double k1, double k2)
{
    return 3.4 * coverMm + 0.425 * k1 * k2 * diameterMm / steelShare;
}

double crackSpacingFarBarsMm(double depthMm, double compressedMm) { return 1.3 * (depthMm - compressedMm); }

double farBarsMm(double coverMm, double diameterMm) { return 5 * (coverMm + diameterMm / 2); }

double crackWidthMm(double depthMm, const std::vector<SteelLayer>& layers, TensionSide tension, double momentN,
                    double crackingMoment, double elasticMpa, double tensileMpa, bool lasting, bool ribbed)
{
    if (!(momentN > crackingMoment && elasticMpa > 0.0)) return 0.0;
    // One layer in the middle of all that is pulled stands for them; its cover and bars are those of the outermost.
    double area = 0.0;
    double depthArea = 0.0;
    double elasticArea = 0.0;
    const SteelLayer* outermost = nullptr;
    double outermostDepth = 0.0;
    const auto add = [&](const SteelLayer& layer, double d) {
        area += layer.areaMm2Mm;
        depthArea += layer.areaMm2Mm * d;
        elasticArea += layer.areaMm2Mm * layer.elasticMpa;
        if (outermost == nullptr || d > outermostDepth) {
            outermost = &layer;
            outermostDepth = d;
        }
    };
    for (const SteelLayer& layer : layers) {
        const double d = tension == TensionSide::underside ? layer.depthMm : depthMm - layer.depthMm;
        if (layer.areaMm2Mm > 0.0 && d > depthMm / 3 && d < depthMm) add(layer, d);
    }
    if (outermost == nullptr) return 0.0;
    const double d = depthArea / area;
    const double modularRatio = elasticArea / area / elasticMpa;
    const double x = crackedSection(d, area, modularRatio).compressedMm;
    const double zone = tensionZoneMm(depthMm, d, x);
    if (!(zone > 0.0)) return 0.0;
    const double share = area / zone;
    const double cover = std::max(depthMm - outermostDepth - outermost->diameterMm / 2, 0.0);
    const double strain = crackStrain(steelStressMpa(momentN, d, area, modularRatio), modularRatio, share,
                                      lasting ? 0.4 : 0.6, tensileMpa, elasticArea / area);
    const bool alone = !(outermost->spacingMm > 0.0);
    const bool far = alone || outermost->spacingMm > farBarsMm(cover, outermost->diameterMm);
    const double near = crackSpacingMm(cover, outermost->diameterMm, share, ribbed ? 0.8 : 1.6, 0.5);
    return strain * (far ? crackSpacingFarBarsMm(depthMm, x) : near);
}

double crackedShare(double momentN, double crackingMoment, double beta)
{
    if (!(momentN > crackingMoment)) return 0.0;
    const double ratio = crackingMoment / momentN;
    return std::clamp(1 - beta * ratio * ratio, 0.0, 1.0);
}

double effectiveStiffness(double uncracked, double cracked, double crackedShareOfState)
{
    return 1 / (crackedShareOfState / cracked + (1 - crackedShareOfState) / uncracked);
}

namespace {

struct Pair {
    double x;
    double y;
};

/// Wood's rules for steel on the side that positive moments pull.
Pair positiveMoments(double mx, double my, double mxy)
{
    const double twist = std::abs(mxy);
    if (mx < -twist) return {0.0, std::max(my + mxy * mxy / std::abs(mx), 0.0)};
    if (my < -twist) return {std::max(mx + mxy * mxy / std::abs(my), 0.0), 0.0};
    return {mx + twist, my + twist};
}

}  // namespace

DesignMoments designMoments(double mx, double my, double mxy)
{
    const Pair underside = positiveMoments(mx, my, mxy);
    const Pair face = positiveMoments(-mx, -my, mxy);
    return {underside.x, underside.y, face.x, face.y};
}

}  // namespace yardcast
