#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/pour/charge.h"
#include "core/pour/mix_limits.h"
#include "core/pour/mix_quantities.h"

/// What the person at the mixer reads.
namespace yardcast {

enum class Ingredient {
    dryMix,
    cement,
    sand,
    gravel,
    silicaFume,
    plasticiser,
    pigment,
    fibres,
    waterFirst,
    ice,        ///< in place of as much of the first water; crushed, it has to be gone before the mixing ends
    waterLast
};

/// What goes in at one step, in the order of mixing. Extra cement of a bag mix comes before the dry mix.
struct CardStep {
    Ingredient what = Ingredient::dryMix;
    std::string kind;           ///< of fibres
    double kg = 0.0;            ///< liquids: kg as well
    double litres = 0.0;        ///< liquids only
    int wholeBags = 0;          ///< of dry mix, or of a recipe's cement
    double restKg = 0.0;        ///< to be weighed besides the whole bags
    double mixMinutes = 0.0;    ///< to let it turn after it
    bool belowScale = false;    ///< a kitchen scale of 1 g to 5 kg does not weigh it well (< kLeastScoopG)
};
/// A kitchen scale reads to 1 g: less than this is more than 5 % off (our choice).
inline constexpr double kLeastScoopG = 20.0;

struct BatchCard {
    int times = 0;
    double litres = 0.0;
    double bags = 0.0;          ///< of dry mix, or of a recipe's cement
    std::vector<CardStep> steps;
    double minutes = 0.0;       ///< of mixing, all steps
};

struct MixingCard {
    std::string mix;
    bool perBag = true;         ///< false: by a recipe
    double bagKg = 0.0;
    bool byHand = false;        ///< no mixer: batches of kHandBatchL in a tub
    BatchCard full;             ///< as many whole bags as the drum takes (or all alike, `even`); times 0 where there is none
    BatchCard lastButOne;       ///< times 1 where it shares with the last one
    BatchCard odd;              ///< the last one; times 0 or 1
    bool even = false;          ///< everything is weighed, and all batches are alike
    double sparedL = 0.0;       ///< what the last batch would have been by full ones, where that was too little to mix
    MixCheck check;
    Charge charge;
    double litresLow = 0.0;     ///< what the bags bought give when the yield is as low, as high as its spread says
    double litresHigh = 0.0;
    int spareBags = 0;          ///< that cover the low end of the yield
    double plannedDensityKgM3 = 0.0;
    double trialDensityKgM3 = 0.0;   ///< 0 without a trial batch
    double extraWaterL = 0.0;        ///< water too much in one bag or m3 by the trial's density; 0 within 2 %

    /// Those that there are, in the order of mixing; good as long as the card is.
    std::vector<const BatchCard*> batches() const;
    int count() const { return full.times + lastButOne.times + odd.times; }
};
/// Water first 80 %, plasticiser in the last portion; minutes of mixing: common practice, no source.
inline constexpr double kFirstWaterShare = 0.8;
inline constexpr double kFumeMinutes = 1.0;      ///< silica fume in the first water, likewise pigment
inline constexpr double kBinderMinutes = 2.0;    ///< once all powder and grains are in
inline constexpr double kLastWaterMinutes = 2.0;
inline constexpr double kFibreMinutes = 2.0;

/// One go of so many litres, once: the pour plan has batches of other sizes than the card where a day or a wait ends one.
/// The mix must be usable.
BatchCard batchOfLitres(const Plan& plan, const MixQuantities& quantities, double litres);

/// One a mix in use that is usable, in the order of `quantities`. Sums: full.times * full + lastButOne + odd =
/// `MixQuantities` to 1e-9 (`shareBatches`). Findings, one a mix and subject: scoop_small (note), too_wet_by_density, trial_impossible (cautions), yield_low
/// (note); what EN 206 asks where it is known not to be met: exposure_ratio, exposure_cement, exposure_class, exposure_air
/// (cautions); one exposure_air_unknown (note) for all mixes; ratio_class (caution: the ratio does not support the class;
/// a stop under half of it),
/// plasticiser_over (caution), pigment_over (note). Pointers into /mixes/i.
std::vector<MixingCard> mixingCards(const Plan& plan, const std::vector<MixQuantities>& quantities,
                                    std::vector<Finding>& findings);

}  // namespace yardcast
