#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

/// What one mix needs for all its castings.
struct MixQuantities {
    std::string mix;
    double netL = 0.0;            ///< volume of the castings (the steel in them not taken off: safe by about 1 %)
    double volumeL = 0.0;         ///< to be mixed: net with the allowance
    double litresPerBag = 0.0;    ///< with all additions, by absolute volumes
    double bagsExact = 0.0;
    int bags = 0;                 ///< whole bags, rounded up
    double bagsKg = 0.0;          ///< dry mix, exact
    double extraCementKg = 0.0;   ///< this and what follows: for bagsExact
    double silicaFumeKg = 0.0;
    double plasticiserKg = 0.0;
    double waterL = 0.0;          ///< to be added, besides the water in the plasticiser
    double fibresKg = 0.0;
    std::vector<std::pair<std::string, double>> fibresByKindKg;
    double waterCement = 0.0;     ///< all water, the plasticiser's included, to cement (bag and extra)
    double waterBinder = 0.0;     ///< w/(c + k s), EN 206 5.2.5.2.3; equals waterCement without silica fume
    double kValue = 0.0;          ///< the k used; 0 without silica fume
    double freshDensityKgM3 = 0.0;  ///< by the mix itself: masses over litresPerBag
    int batches = 0;              ///< 0 without a mixer
    double bagsPerBatch = 0.0;    ///< what one filling takes, in whole bags where at least one fits
    double usableDrumL = 0.0;
    std::vector<std::pair<std::string, double>> castingLitres;  ///< casting id and litres with allowance
};

/// Share of the drum that can be filled; common practice 50 to 80 %, no source.
inline constexpr double kUsableDrumShare = 0.65;

/// One entry for each mix in use, in the plan's order. `findings` receives cautions (ratio over the limit, aggregate
/// too large for the thinnest field, fume beyond what counts).
std::vector<MixQuantities> mixQuantities(const Plan& plan, const std::vector<CastingPtr>& castings,
                                         std::vector<Finding>& findings);

}  // namespace yardcast
