#pragma once

#include <vector>

#include "core/geometry/region.h"
#include "core/plan/parts.h"

/// Sections of slabs after EN 1992-1-1:2004, for one mm of width: moments are Nmm/mm = N, shear N/mm, areas mm2/mm.
/// Depths are measured from the face (the top in use). A slab of 3 to 6 cm is outside the code's scope: the figures say
/// what its equations give, not that the code vouches for the slab.
namespace yardcast {

/// Which side of a slab in use is pulled.
enum class TensionSide { face, underside };

/// What a kind of reinforcement bears. Glass and basalt have no yield, no published value that would hold for grids and
/// bars from a store, and lose strength under lasting load: they are not counted for strength (`counted` false).
struct ReinforcementStrength {
    double fykMpa = 500.0;       ///< B500 for steel of every kind: assumed, what a store sells seldom says
    double elasticMpa = 200'000.0;
    bool counted = true;
};
ReinforcementStrength reinforcementStrength(SteelMaterial material);

/// Bars in one direction at one depth.
struct SteelLayer {
    double areaMm2Mm = 0.0;      ///< effective, per mm of width
    double depthMm = 0.0;        ///< of the bars' axis below the face
    double diameterMm = 0.0;
    double spacingMm = 0.0;      ///< from bar to bar; 0: one bar alone
    double fykMpa = 500.0;
    double elasticMpa = 200'000.0;
};

/// The layers that pull across a straight cut from-to through a casting with this outline, `widthMm` of it in concrete.
/// Mesh: as many wires as surely cross what of the cut lies within the mesh's cover (a strip narrower than cover,
/// pitch, cover may have none), at its mean depth (nobody knows which wires lie first), the same in every direction.
/// Bars: those that cross the cut, each with the square of the cosine to the cut's normal, and with the share of its
/// anchorage (8.4, from `fctk005Mpa` of the concrete at its age) that its shorter side has beyond the cut. What is not
/// counted (`ReinforcementStrength`) is left out.
std::vector<SteelLayer> layersAcross(const Steel& steel, const Region& outline, Point from, Point to, double widthMm,
                                     double fctk005Mpa);

/// gamma_c, gamma_s and alpha_cc (EN 1992-1-1 2.4.2.4, 3.1.6: recommended). 1, 1, 1 give what is likely to happen.
struct SafetyFactors {
    double concrete = 1.5;
    double steel = 1.15;
    double longTerm = 1.0;
};

struct BendingResistance {
    double momentN = 0.0;
    double compressedMm = 0.0;      ///< x, depth of the neutral axis from the compressed side
    double effectiveDepthMm = 0.0;  ///< of the tension force, from the compressed side
    double tensionNMm = 0.0;
    double areaMm2Mm = 0.0;         ///< of the layers in tension
};
/// 3.1.7(3) rectangular block, plane strain (6.1), steel with a level top branch (3.2.7). Layers in the compressed part
/// count as nothing. Zero without steel in tension.
BendingResistance bendingResistance(double depthMm, double fckMpa, const std::vector<SteelLayer>& layers,
                                    TensionSide tension, const SafetyFactors& safety = {});

/// K method: steel for a moment, mm2/mm, z = d (0.5 + sqrt(0.25 - K/1.134)) <= 0.95 d (alpha_cc 0.85, 0.87 fyk, as UK
/// practice has it). 0 for K above 0.167, where the section is too thin.
double steelForMomentMm2Mm(double momentN, double effectiveDepthMm, double fckMpa, double fykMpa);

/// Gross section, h^2/6 times a strength in bending (see `flexuralFactor` in core/materials).
double crackingMomentN(double depthMm, double tensileMpa);

/// Whether the section breaks when it cracks: what it bears cracked (all safety off) is less than what cracks it.
bool breaksWithoutWarning(double resistanceUnfactoredN, double crackingMomentN);

/// 12.3.1, 12.6.1: plain concrete, 0.8 fctk,0.05 / gamma_c on h^2/6 (factor from memory). Uncracked.
double plainConcreteMomentN(double depthMm, double fctk005Mpa, double gammaConcrete = 1.5);
/// 12.6.3 (from memory): plain concrete in shear without force along it, fctd,pl h / 1.5, N/mm.
double plainConcreteShearNMm(double depthMm, double fctk005Mpa, double gammaConcrete = 1.5);

/// 6.2.2(1), eq. 6.2. `alongMpa`: sigma_cp, compression positive.
struct ShearResistance {
    double k = 0.0;
    double steelShare = 0.0;      ///< rho_l, at most 0.02
    double leastMpa = 0.0;        ///< vmin
    double resistanceNMm = 0.0;   ///< VRd,c / bw
};
ShearResistance shearResistance(double effectiveDepthMm, double areaMm2Mm, double fckMpa, double alongMpa = 0.0,
                                double gammaConcrete = 1.5);

/// Cracked elastic section, tension not counted: x and inertia (mm3/mm) of one layer's worth of steel.
struct CrackedSection {
    double compressedMm = 0.0;
    double inertiaMm3 = 0.0;
};
CrackedSection crackedSection(double effectiveDepthMm, double areaMm2Mm, double modularRatio);
/// Stress in the steel of a cracked section, MPa: M / (As (d - x/3)).
double steelStressMpa(double momentN, double effectiveDepthMm, double areaMm2Mm, double modularRatio);

/// 7.3.4. Depth of concrete that goes with the steel: least of 2.5 (h - d), (h - x)/3, h/2.
double tensionZoneMm(double depthMm, double effectiveDepthMm, double compressedMm);
/// eps_sm - eps_cm, eq. 7.9; kt 0.6 short, 0.4 long loading.
double crackStrain(double steelMpa, double modularRatio, double steelShare, double kt, double tensileMpa,
                   double elasticMpa);
/// s_r,max, eq. 7.11 (k3 3.4, k4 0.425); k1 0.8 ribbed, 1.6 plain; k2 0.5 bending, 1.0 tension.
double crackSpacingMm(double coverMm, double diameterMm, double steelShare, double k1, double k2);
/// eq. 7.14, for bars farther apart than `farBarsMm`.
double crackSpacingFarBarsMm(double depthMm, double compressedMm);
/// 5 (c + phi/2).
double farBarsMm(double coverMm, double diameterMm);

/// Crack width of a section in bending with the layer that governs it: mm, 0 where `momentN` does not reach
/// `crackingMomentN` or where there is no steel in tension. `elasticMpa` and `tensileMpa` (mean) of the concrete.
double crackWidthMm(double depthMm, const std::vector<SteelLayer>& layers, TensionSide tension, double momentN,
                    double crackingMomentN, double elasticMpa, double tensileMpa, bool lasting, bool ribbed = true);

/// 7.4.3(3): share of the cracked state, 1 - beta (Mcr / M)^2, 0 below the cracking moment. beta 1.0 one short load,
/// 0.5 lasting or repeated.
double crackedShare(double momentN, double crackingMomentN, double beta);
/// 7.4.3, eq. 7.18 for curvature: stiffness (N mm2/mm) between uncracked and cracked.
double effectiveStiffness(double uncracked, double cracked, double crackedShareOfState);

/// Moments that orthogonal steel along x and y has to bear for a slab's mx, my, mxy (N, positive: underside pulled). R.
/// H. Wood, The reinforcement of slabs in accordance with a pre-determined field of moments, Concrete 2 (1968) 69-76,
/// with G. S. T. Armer's correspondence (from memory). Never negative.
struct DesignMoments {
    double undersideX = 0.0;
    double undersideY = 0.0;
    double faceX = 0.0;
    double faceY = 0.0;
};
DesignMoments designMoments(double mx, double my, double mxy);

}  // namespace yardcast
