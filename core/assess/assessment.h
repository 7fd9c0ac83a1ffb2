#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/front/front_layout.h"
#include "core/handling/lifting.h"
#include "core/mould/mould.h"
#include "core/mould/mould_estimate.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/pour/curing.h"
#include "core/pour/mix_quantities.h"
#include "core/pour/mixing_card.h"
#include "core/pour/pour_plan.h"
#include "core/pour/pour_play.h"
#include "core/pour/weather.h"
#include "core/purchase/cut_lists.h"
#include "core/purchase/shopping.h"
#include "core/readiness/earliest_hours.h"
#include "core/reinforcement/steel_schedule.h"
#include "core/structure/strength.h"

namespace yardcast {

/// A casting where it stands.
struct PlacedCasting {
    CastingPtr casting;
    std::array<double, 3> centroidMm{};  ///< plan axes
};

/// Everything the program knows about one plan: an immutable value.
struct Assessment {
    std::vector<PlacedCasting> castings;      ///< in the order of the parts
    std::vector<MixQuantities> mixes;         ///< only mixes that some casting uses
    std::vector<MixingCard> cards;            ///< one a mix, same order
    PourWeather weather;
    std::vector<Curing> curing;               ///< one a mix in use
    PourPlan pour;
    SteelSchedule steel;
    std::vector<CastingLift> handling;        ///< one a casting, same order
    std::vector<FrontLayout> fronts;
    MouldEstimate mould;
    std::vector<MouldPtr> moulds;             ///< one a casting, same order
    CutPlansPtr cuts;                         ///< what is cut from whole sheets and lengths; null while not known
    ShoppingList shopping;
    std::vector<CastingStrengthPtr> strength; ///< those that are known, in the order of castings (see withStrength)
    std::vector<CastingHoursPtr> hours;       ///< those that are known (see withReadiness), likewise what follows
    PourPlayPtr play;                         ///< null while not known
    std::vector<GainCurve> gain;              ///< one a mix in use; without the hours while they are not known
    std::vector<SeasonMonth> season;          ///< where the plan has one
    std::vector<Finding> findings;            ///< gravest first, then in the order of the parts

    double volumeL() const;
    double massKg() const;
    int count(Severity severity) const;
    /// Of the casting with this id; null where it is not known.
    const CastingStrength* strengthOf(const std::string& casting) const;
};

using AssessmentPtr = std::shared_ptr<const Assessment>;

}  // namespace yardcast
