#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

/// What one mix needs for all its castings. Of a mix from a recipe the bags are those of its cement.
struct MixQuantities {
    std::string mix;
    bool perBag = true;           ///< of dry bags; false: by a recipe
    double bagKg = 0.0;           ///< of one bag: dry mix, or cement
    double netL = 0.0;            ///< volume of the castings (the steel in them not taken off: safe by about 1 %)
    double volumeL = 0.0;         ///< to be mixed: net with the allowance
    double litresPerBag = 0.0;    ///< with all additions, by absolute volumes
    double bagsExact = 0.0;
    int bags = 0;                 ///< whole bags, rounded up
    double bagsKg = 0.0;          ///< dry mix, exact; 0 by a recipe
    double charges = 0.0;         ///< how many times `chargeOf`: bagsExact, or m3 of a recipe as planned
    double cementKg = 0.0;        ///< all of it: in the bags and extra, or the recipe's
    double extraCementKg = 0.0;   ///< this and what follows: for bagsExact; 0 by a recipe
    double sandKg = 0.0;          ///< as it lies, with its moisture; recipes only, likewise gravel
    double gravelKg = 0.0;
    double silicaFumeKg = 0.0;
    double plasticiserKg = 0.0;
    double pigmentKg = 0.0;
    double waterL = 0.0;          ///< to be added, besides the water in the plasticiser and on sand and gravel; ice in it
    double iceKg = 0.0;           ///< of that, as ice
    double fibresKg = 0.0;
    std::vector<std::pair<std::string, double>> fibresByKindKg;
    double waterCement = 0.0;     ///< all water, the plasticiser's included, to cement (bag and extra)
    double waterBinder = 0.0;     ///< w/(c + k s), EN 206 5.2.5.2.3; equals waterCement without silica fume
    double kValue = 0.0;          ///< the k used; 0 without silica fume
    double freshDensityKgM3 = 0.0;  ///< by the mix itself: masses over litresPerBag
    int batches = 0;              ///< 0 without a mixer
    double bagsPerBatch = 0.0;    ///< what one filling takes, in whole bags where at least one fits
    double usableDrumL = 0.0;
    bool byTrial = false;         ///< the yield is that of a weighed bucket
    double litresLow = 0.0;       ///< what `bags` give when each yields as little, as much as its spread says; by a
    double litresHigh = 0.0;      ///< recipe both are volumeL
    int spareBags = 0;            ///< more bags that cover the low yield; 0 by a recipe
    std::vector<std::pair<std::string, double>> castingLitres;  ///< casting id and litres with allowance
};

/// Without a mixer: mixed by hand in a tub of this size; common practice, no source.
inline constexpr double kHandBatchL = 20.0;

/// Bags that one go of so many litres takes: whole ones where at least one fits.
double bagsThatFit(double litres, double litresPerBag);
/// Bags of one go: of the mixer, or by hand in a tub.
double bagsInBatch(const MixQuantities& quantities);

/// One entry for each mix in use that is usable, in the plan's order. `findings` receives cautions: water_cement_over,
/// recipe_ratio_over (with the remedies that clear it exactly), aggregate_large, mixer_small, fume_over (note), and why a recipe gives no concrete: recipe_no_room, recipe_too_wet (stop).
std::vector<MixQuantities> mixQuantities(const Plan& plan, const std::vector<CastingPtr>& castings,
                                         std::vector<Finding>& findings);

}  // namespace yardcast
