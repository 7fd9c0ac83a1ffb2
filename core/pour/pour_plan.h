#pragma once

#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "core/castings/casting.h"
#include "core/materials/holding.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/pour/mix_quantities.h"
#include "core/pour/weather.h"

/// Which castings are poured when, in which layers, with which batches.
namespace yardcast {

/// What goes in: concrete below the steel, the steel, concrete on it, foam, concrete beside the foam (rim, ribs, the
/// edge about a core), or all the concrete in one go.
enum class LayerKind { first, steel, second, filler, rim, whole };
/// "first", "steel", "second", "filler", "rim", "whole".
const char* layerKindWord(LayerKind kind);

/// A layer of one casting in the pouring position, from the mould base up, in the order of pouring; steel and filler
/// have no litres and no batches, and take time where they lie between two layers of concrete.
struct PourLayer {
    LayerKind kind = LayerKind::whole;
    double fromMm = 0.0;        ///< above the mould base
    double toMm = 0.0;
    double litres = 0.0;        ///< to mix, with allowance
    double firstBatch = 0.0;    ///< counted through the casting's mix on that day: 2.5 means half of the third batch
    double lastBatch = 0.0;
    double fromMin = 0.0;       ///< minutes since the day's start: when its first batch goes in
    double toMin = 0.0;         ///< when its last batch is in
    friend bool operator==(const PourLayer&, const PourLayer&) = default;
};
/// The layers of a casting with `litres` of concrete to mix; batches and minutes are not filled in. A counter lies with
/// its face down or up as its part says, other castings lie on a large face (own y = 0 down) or stand. Lying castings
/// are divided where their foam begins and ends and at the lower side of their lowest steel, which lies on the first
/// layer: common practice is about 20 mm, here it is the height that the steel's cover asks for. The litres of the
/// layers sum to `litres`. `part` is the casting's own.
std::vector<PourLayer> pourLayers(const Casting& casting, const Part& part, double litres);

/// Foam that wants to float: U = V (fresh - foam) g (Archimedes).
struct Uplift {
    double litres = 0.0;        ///< of foam that is in the fresh concrete
    double forceN = 0.0;
    double holdN = 0.0;         ///< kHoldShare times that
    int fixings = 0;            ///< screws through hold-down battens at kFixingN each; even, one at either end
    friend bool operator==(const Uplift&, const Uplift&) = default;
};
inline constexpr int kLeastFixings = 4;     ///< two battens; our choice
/// None without foam, or where the foam is as heavy as the concrete.
Uplift upliftOf(double foamL, double foamKgM3, double freshKgM3);

struct PouredCasting {
    std::string casting;
    std::string mix;
    double litres = 0.0;
    double batches = 0.0;       ///< 1.5 means one batch and half of another
    double startMin = 0.0;      ///< since the day's start: its first batch is begun, or where it begins with the rest of
                                ///< the batch before, that one is ready
    double endMin = 0.0;        ///< its last batch is in
    double workingMinutes = 0.0;///< of its first batch, at that hour's concrete
    double longestGapMin = 0.0; ///< between one batch in it and what covers it
    bool fits = true;           ///< it can be finished within the working time
    std::vector<PourLayer> layers;
    Uplift uplift;
    double tableKg = 0.0;       ///< fresh concrete, steel and foam on its mould base
    double tableKpa = 0.0;
    friend bool operator==(const PouredCasting&, const PouredCasting&) = default;
};

/// One filling of the mixer.
struct PourBatch {
    std::string mix;
    int number = 1;             ///< counted through the mix on that day
    double litres = 0.0;        ///< the last before another mix, a wait or the evening is smaller, or the last two are
    double beginMin = 0.0;      ///< since the day's start
    double readyMin = 0.0;
    std::vector<std::pair<std::string, double>> into;  ///< castings and litres, in the order of pouring
};

struct PourDay {
    int day = 1;                ///< counted from 1; days between for curing are left out
    int afterDays = 0;          ///< days since the day before (moulds must come free)
    double startH = 8.0;        ///< hour of the day: the plan's, or later where the first mould comes free later
    double endMin = 0.0;
    std::vector<PouredCasting> castings;
    std::vector<PourBatch> mixed;
    double litres = 0.0;
    int batches = 0;            ///< each mix rounded up by itself
};

struct PourPlan {
    std::vector<PourDay> days;
    std::vector<std::string> leftOut;  ///< castings without a usable mix, or of more than kMostBatches batches
    bool handMixed = false;     ///< no mixer: times are those of kHandBatchL
    double batchMinutes = 0.0;
    double layingMinutes = 0.0; ///< for steel or foam between two layers of a casting
    /// The day and the place in it of a casting; null where it is left out.
    const PouredCasting* find(const std::string& casting) const;
};
/// Of one batch mixed by hand (see kHandBatchL); common practice, no source.
inline constexpr double kHandBatchMinutes = 15.0;
inline constexpr int kMostBatches = 200;
/// So long the crew waits on a day for a mould to come free before it goes home, and so long for more of them once one
/// has to be waited for; our choice.
inline constexpr double kLongestIdleMin = 60.0;

/// Where a casting comes in the pour.
struct PourPlace {
    int number = 0;             ///< from 1, through all days
    int calendarDay = 1;        ///< from 1, days between counted
    const PouredCasting* poured = nullptr;
};
/// By casting; good as long as `pour` is.
std::unordered_map<std::string_view, PourPlace> pourPlaces(const PourPlan& pour);

/// The plan's own order first (an id of a part stands for all its castings), then the program's: mixes together in the
/// plan's order, large castings first. A casting is not begun on a day on which it cannot be finished by the evening or
/// within the working time of that hour's concrete, nor before a mould is free (the one it shares, or any where the
/// plan bounds their number); then the next day begins with it. Where it fits on no day, it stands on a day of its own
/// and findings say so.
///
/// A cold joint: batches come ready one after the other, `batch_minutes` apart; the same concrete is covered by the
/// next batch beside it, and by the layer above it, which is begun where the layer below was begun. Nothing is mixed while
/// steel or foam is laid between two layers (`Pouring::layingMinutes` for each): all hands are at the mould. A casting fits
/// where the time between the two stays under the working time.
///
/// Findings: cold_joint_certain (stop), day_too_long (caution), uplift (note, of all foam), order_unknown, order_twice
/// (notes), table_load (note, of the heaviest).
PourPlan pourPlan(const Plan& plan, const std::vector<CastingPtr>& castings,
                  const std::vector<MixQuantities>& quantities, const PourWeather& weather,
                  std::vector<Finding>& findings);

}  // namespace yardcast
