#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/pour/mix_quantities.h"
#include "core/pour/weather.h"

/// Which castings are poured when, in which layers, with which batches.
namespace yardcast {

enum class LayerKind { first, steel, second, filler, whole };
/// A layer of one casting in the pouring position, from the mould base up; steel and filler have no litres.
struct PourLayer {
    LayerKind kind = LayerKind::whole;
    double fromMm = 0.0;        ///< above the mould base
    double toMm = 0.0;
    double litres = 0.0;        ///< to mix, with allowance
    double firstBatch = 0.0;    ///< counted through the casting's mix on that day: 2.5 means half of the third batch
    double lastBatch = 0.0;
    double fromMin = 0.0;       ///< minutes since the day's start
    double toMin = 0.0;
};

/// Foam that wants to float: U = V (fresh - foam) g.
struct Uplift {
    double litres = 0.0;        ///< of foam that is in the fresh concrete
    double forceN = 0.0;
    double holdN = 0.0;         ///< 1.5 times that (F-60, our factor)
    int fixings = 0;            ///< screws through hold-down battens at kFixingN each
};
/// What one 4 mm wood screw in a mould side may be counted on for; our choice, no source.
inline constexpr double kFixingN = 300.0;

struct PouredCasting {
    std::string casting;
    std::string mix;
    double litres = 0.0;
    double batches = 0.0;
    double startMin = 0.0;      ///< since the day's start
    double endMin = 0.0;        ///< its last batch is in
    double workingMinutes = 0.0;///< of its first batch, at that hour's concrete
    double longestGapMin = 0.0; ///< between one batch in it and what covers it
    bool fits = true;           ///< it can be finished within the working time
    std::vector<PourLayer> layers;
    Uplift uplift;
    double tableKg = 0.0;       ///< fresh concrete, steel and foam on its mould base
    double tableKpa = 0.0;
};

struct PourDay {
    int day = 1;                ///< counted from 1; days between for curing are left out
    int afterDays = 0;          ///< days to wait since the day before (moulds must come free)
    double startH = 8.0;
    double endMin = 0.0;
    std::vector<PouredCasting> castings;
    double litres = 0.0;
    int batches = 0;            ///< each mix rounded up by itself
};

struct PourPlan {
    std::vector<PourDay> days;
    std::vector<std::string> leftOut;  ///< castings that have no usable mix, or a plan without mixer
    bool handMixed = false;     ///< no mixer: times are those of kHandBatchL
};
/// Without a mixer: mixed by hand in a tub of this size; common practice, no source.
inline constexpr double kHandBatchL = 20.0;
inline constexpr double kHandBatchMinutes = 15.0;

/// By the plan's own order first, then large ones of the same mix together; a casting is not begun on a day that it
/// cannot be finished on, nor when no mould is free. Findings: cold_joint_certain (stop: one casting takes longer than
/// its working time), day_too_long, uplift (note with fixings), order_unknown, table_load (note).
PourPlan pourPlan(const Plan& plan, const std::vector<CastingPtr>& castings,
                  const std::vector<MixQuantities>& quantities, const PourWeather& weather,
                  std::vector<Finding>& findings);

}  // namespace yardcast
