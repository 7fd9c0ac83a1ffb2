#include "core/reinforcement/section_check.h"

#include <algorithm>
#include <cmath>

#include "core/reinforcement/detailing_rules.h"

namespace yardcast {

namespace {

constexpr double kLeastCoverMm = 10.0;  ///< 4.4.1.2(2), with the bar itself for bond
constexpr SafetyFactors kLikely{1.0, 1.0, 1.0};

double fckOf(const StrengthAtAge& concrete) { return concrete.fckMpa.value_or(std::max(concrete.fcmMpa - 8.0, 0.0)); }

/// The same steel with its layers moved to the pulled side.
std::vector<SteelLayer> movedOut(double depthMm, std::vector<SteelLayer> layers, TensionSide tension)
{
    for (SteelLayer& layer : layers) {
        const double axis = std::max(layer.diameterMm, kLeastCoverMm) + layer.diameterMm / 2;
        layer.depthMm = tension == TensionSide::face ? std::min(axis, layer.depthMm)
                                                     : std::max(depthMm - axis, layer.depthMm);
    }
    return layers;
}

/// Uncracked stiffness over that between the states, both of one width and one modulus.
double softeningOf(double depthMm, const BendingResistance& cracked, double elasticMpa, double shareOfState)
{
    if (!(shareOfState > 0.0 && elasticMpa > 0.0)) return 1.0;
    const double uncracked = depthMm * depthMm * depthMm / 12;
    const double modularRatio = ReinforcementStrength{}.elasticMpa / elasticMpa;
    const double inertia = crackedSection(cracked.effectiveDepthMm, cracked.areaMm2Mm, modularRatio).inertiaMm3;
    if (!(inertia > 0.0)) return 1.0;
    return std::max(uncracked / effectiveStiffness(uncracked, std::min(inertia, uncracked), shareOfState), 1.0);
}

}  // namespace

bool SectionCheck::bears(const SectionAction& action) const
{
    const double moment = std::abs(action.designMomentN);
    return (moment <= resistanceN || moment <= resistancePlainN) &&
           std::abs(action.designShearNMm) <= shearResistanceNMm;
}

SectionCheck checkSection(double depthMm, const std::vector<SteelLayer>& layers, const StrengthAtAge& concrete,
                          const SectionAction& action)
{
    SectionCheck check;
    if (!(depthMm > 0.0 && std::isfinite(depthMm))) return check;
    check.tension = action.designMomentN < 0.0 ? TensionSide::face : TensionSide::underside;
    const double fck = fckOf(concrete);
    const double service = std::abs(action.serviceMomentN);

    check.crackingMomentN = crackingMomentN(depthMm, flexuralFactor(depthMm) * concrete.fctmMpa);
    check.resistancePlainN = plainConcreteMomentN(depthMm, concrete.fctk005Mpa);
    const BendingResistance bending = bendingResistance(depthMm, fck, layers, check.tension);
    check.resistanceN = bending.momentN;
    check.resistanceBestN =
        bendingResistance(depthMm, fck, movedOut(depthMm, layers, check.tension), check.tension).momentN;
    check.steelAreaMm2M = 1000 * bending.areaMm2Mm;
    check.effectiveDepthMm = bending.effectiveDepthMm;
    check.leastSteelMm2M =
        1000 * leastSteelMm2Mm(bending.effectiveDepthMm, concrete.fctmMpa, ReinforcementStrength{}.fykMpa);
    check.shearResistanceNMm =
        bending.areaMm2Mm > 0.0 ? shearResistance(bending.effectiveDepthMm, bending.areaMm2Mm, fck).resistanceNMm
                                : plainConcreteShearNMm(depthMm, concrete.fctk005Mpa);
    check.breaksWithoutWarning = breaksWithoutWarning(
        bendingResistance(depthMm, fck, layers, check.tension, kLikely).momentN, check.crackingMomentN);

    check.cracks = service > check.crackingMomentN;
    if (check.cracks && bending.areaMm2Mm > 0.0) {
        check.crackWidthMm = crackWidthMm(depthMm, layers, check.tension, service, check.crackingMomentN,
                                          concrete.elasticMpa, concrete.fctmMpa, action.lasting);
        check.softening = softeningOf(depthMm, bending, concrete.elasticMpa,
                                      crackedShare(service, check.crackingMomentN, action.lasting ? 0.5 : 1.0));
    }
    return check;
}

}  // namespace yardcast
