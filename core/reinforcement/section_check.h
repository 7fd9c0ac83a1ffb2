#pragma once

#include <vector>

#include "core/materials/concrete_strength.h"
#include "core/reinforcement/section.h"

namespace yardcast {

/// What passes through a section of a slab, per mm of width. Moments are positive where the underside is pulled.
struct SectionAction {
    double designMomentN = 0.0;   ///< with the factors of EN 1990
    double serviceMomentN = 0.0;  ///< without: for cracks and deflection
    double designShearNMm = 0.0;
    bool lasting = true;          ///< stays on it or comes again and again (kt 0.4, beta 0.5), or once (0.6, 1.0)
};

/// What a section bears with its steel where it lies, and without. All moments absolute, N.
struct SectionCheck {
    TensionSide tension = TensionSide::underside;
    double crackingMomentN = 0.0;     ///< likely: fctm(t), eq. 3.23
    double resistanceN = 0.0;         ///< cracked, design value; 0 without steel on that side
    double resistancePlainN = 0.0;    ///< section 12, design value, uncracked
    double resistanceBestN = 0.0;     ///< the same steel as near to the pulled side as bond and 10 mm of cover allow
    double steelAreaMm2M = 0.0;       ///< in tension, mm2 a metre
    double leastSteelMm2M = 0.0;      ///< 9.2.1.1, mm2 a metre
    double effectiveDepthMm = 0.0;
    double shearResistanceNMm = 0.0;  ///< 6.2.2; without steel section 12
    double crackWidthMm = 0.0;        ///< 0 where it does not crack or has no steel there
    double softening = 1.0;           ///< how many times it bends more than uncracked, 7.4.3; 1 where it does not crack
    bool cracks = false;              ///< service moment above the cracking moment
    bool breaksWithoutWarning = false;  ///< cracked it carries less than what cracks it, all safety off

    /// Whether it bears the design action by its steel, or uncracked by section 12.
    bool bears(const SectionAction& action) const;
};
/// `concrete`: of its age. Up to three days, where the code has no fck(t), fcm(t) - 8 stands for it.
SectionCheck checkSection(double depthMm, const std::vector<SteelLayer>& layers, const StrengthAtAge& concrete,
                          const SectionAction& action);

}  // namespace yardcast
