#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/plan/plan.h"

/// What one unit of a mix is made of, by absolute volumes: the one model of a mix that quantities, cards, temperature
/// and limits read.
namespace yardcast {

/// For one bag of dry mix (`perBag`), or for one m3 of a recipe. Masses in kg, volumes in l.
struct Charge {
    bool perBag = true;
    double dryMixKg = 0.0;         ///< the bag; 0 for a recipe
    double cementKg = 0.0;         ///< in the bag and extra, or of the recipe
    double extraCementKg = 0.0;
    double sandKg = 0.0;           ///< as it lies, moisture included; recipes only, likewise gravel
    double gravelKg = 0.0;
    double sandDryKg = 0.0;
    double gravelDryKg = 0.0;
    double fumeKg = 0.0;
    double plasticiserKg = 0.0;
    double pigmentKg = 0.0;
    std::vector<std::pair<std::string, double>> fibresKg;  ///< by kind
    double waterL = 0.0;           ///< to be added from the tap
    double moistureL = 0.0;        ///< free water the aggregates bring (negative: they drink)
    double effectiveWaterL = 0.0;  ///< outside the pores: added, moisture, the plasticiser's
    double absorbedL = 0.0;        ///< in the pores of the aggregates once they are full; recipes only
    double airL = 0.0;             ///< recipes only, as declared or `entrappedAirPercent`; a bag's yield has its own
    /// Fresh concrete; after a trial batch as weighed. Of one that was wetter than planned not more than planned: the
    /// water it should not have fills no mould.
    double litres = 0.0;
    double massKg = 0.0;           ///< all of it
    double densityKgM3() const { return litres > 0.0 ? massKg / litres * 1000 : 0.0; }
    double fibreKg() const;
    bool byTrial = false;          ///< litres come from a weighed bucket
    double plannedLitres = 0.0;    ///< before the trial
};
/// Why a mix gives no charge.
enum class MixFault {
    none,
    numbers,   ///< something is no sensible number (validation says so)
    noRoom,    ///< cement, water, air and additions leave no room for sand and gravel, or fibres for the rest
    tooWet     ///< sand and gravel bring more water than the recipe has
};
MixFault faultOf(const Mix& mix);
/// False where numbers of the mix are none, or its fibres, air, cement and water leave no room (validation or a finding
/// says so).
bool isUsable(const Mix& mix);
/// Air that stays in concrete by itself, percent of the volume: 3 at grains of 9.5 mm and below, 2.5 at 12.5, 2 at 19,
/// 1.5 at 25, 1 at 37.5, 0.5 at 50 (ACI 211.1, from memory), interpolated. Serves recipes whose air is not known.
double entrappedAirPercent(double maxAggregateMm);
/// Recipes by the sum of absolute volumes: W/1000 + C/rho_c + ... + air = 1 m3 (ACI 211.1).
/// The mix must be usable.
Charge chargeOf(const Mix& mix);
/// The same as if no trial batch had been weighed.
Charge plannedChargeOf(const Mix& mix);
/// As `chargeOf`, with the water that the weighed bucket shows beyond what is said to have gone in: for ratios. The other
/// figures are those of the mix as it is to be made.
Charge weighedChargeOf(const Mix& mix);
/// kg/m3 of the weighed bucket; nothing without a trial batch or where that is no density of concrete (300 to 5000).
std::optional<double> trialDensityKgM3(const Mix& mix);
/// Litres of water in one charge beyond what is said to have gone in, that would explain the trial batch's density;
/// 0 without one, or where it is less than 2 % (our choice: a bucket filled and read by hand) below what it should be.
double extraWaterByTrialL(const Mix& mix);
inline constexpr double kDensityTolerance = 0.02;
inline constexpr double kSpreadLeftByTrial = 0.5;
/// How far a bag's yield may lie to either side, percent of its own yield: as the plan says. One weighed batch takes away
/// what was not known of the make of bag, not how bags differ nor how a bucket is read: half of the spread stays, and not
/// less than kDensityTolerance where the spread was more (our choice, no source).
double yieldSpreadPercent(const Mix& mix, const Charge& charge);
/// Litres of one charge when the bag yields as little (-1) or as much (1) as that spread says; recipes have no spread.
double litresAtSpread(const Mix& mix, const Charge& charge, double sign);

/// Water to binder by every definition in use.
struct Ratios {
    double waterCement = 0.0;        ///< effective water to cement: EN 206
    double waterBinderK = 0.0;       ///< w/(c + k s), EN 206 5.2.5.2.3, s counted to 11 % of the cement
    double waterBinderPlain = 0.0;   ///< w/(c + s), as the trade speaks of it
    double totalWaterCement = 0.0;   ///< with the water in the pores of the aggregate (recipes), else as waterCement
    double kValue = 0.0;             ///< 0 without silica fume
};
Ratios ratiosOf(const Mix& mix, const Charge& charge);
/// EN 206 5.2.5.2.3: silica fume counts up to this share of the cement.
inline constexpr double kMostFumeShare = 0.11;
/// Cement and k times the silica fume that counts, kg in the charge: what a ratio is taken to.
double binderKKg(const Mix& mix, const Charge& charge);

/// What a ratio supports: mean cylinder strength by the table of ACI 211.1 (from memory: 40 at 0.42, 35 at 0.47, 30 at
/// 0.54, 25 at 0.61, 20 at 0.69, 15 at 0.79; without entrained air), interpolated, flat below its ratios; above them
/// it goes on falling as between its last two (Abrams: by the same factor for the same more of water). An estimate.
double strengthByRatioMpa(double waterCement);

}  // namespace yardcast
