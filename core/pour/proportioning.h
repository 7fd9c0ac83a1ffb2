#pragma once

#include "core/plan/mix.h"

/// A first recipe for a strength, step by step as ACI 211.1-91 does it (tables from memory; concrete without entrained
/// air). A starting point for a trial batch, not a proof.
namespace yardcast {

/// Mixing water, kg/m3, for a slump of 75 to 100 mm: 228 at grains of 9.5 mm, 216 at 12.5, 205 at 19, 193 at 25, 181 at
/// 37.5, 169 at 50 (table A1.5.3.3); interpolated, flat beyond.
double mixingWaterKgM3(double maxAggregateMm);
/// Ratio of water to cement for a mean cylinder strength: `strengthByRatioMpa` read the other way.
double ratioForStrength(double meanMpa);
/// Dry-rodded volume of the coarse aggregate in a m3 of concrete by its largest grain and the fineness modulus of the
/// sand (table A1.5.3.6); interpolated both ways, flat beyond 2.4 to 3.0 and 9.5 to 37.5 mm.
double coarseVolumeShare(double maxAggregateMm, double finenessModulus);
/// First estimate of the mass of fresh concrete, kg/m3: 2280 at 9.5 mm, 2310 at 12.5, 2345 at 19, 2380 at 25, 2410 at
/// 37.5, 2445 at 50 (table A1.5.3.7.1).
double freshMassKgM3(double maxAggregateMm);

struct ProportionInput {
    double meanMpa = 33.0;
    double maxAggregateMm = 8.0;
    double finenessModulus = 2.8;
    double dryRoddedKgM3 = 1600.0;     ///< of the coarse aggregate
    double sandDryKgM3 = 2640.0;       ///< dry mass over the volume of the grains, likewise gravel
    double gravelDryKgM3 = 2680.0;
    double mostWaterCement = 10.0;     ///< of the exposure or the plan
    double leastCementKgM3 = 0.0;
};
/// For one m3, dry masses in kg.
struct Proportions {
    double waterKg = 0.0;
    double airPercent = 0.0;
    double waterCement = 0.0;
    double cementKg = 0.0;
    double gravelKg = 0.0;
    double sandByMassKg = 0.0;         ///< first estimate of the fresh mass less all else
    double sandByVolumeKg = 0.0;       ///< absolute volumes
};
Proportions proportion(const ProportionInput& input);

/// A recipe for the mean strength of the mix's class, by absolute volumes, within the ratio and with the least cement
/// given; grains as the defaults of `Recipe`. For a class that is none as for C25/30.
Recipe startingRecipe(const Mix& mix, double mostWaterCement, double leastCementKgM3);

}  // namespace yardcast
