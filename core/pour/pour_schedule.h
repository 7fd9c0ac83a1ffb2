#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/plan.h"
#include "core/pour/batch_shares.h"
#include "core/pour/mix_quantities.h"
#include "core/pour/pour_plan.h"
#include "core/pour/weather.h"

/// Castings put into days by the times that are to be expected. Inner seam of core/pour: the pour plan writes it out, the
/// plays vary its times.
namespace yardcast {

/// How long the concrete can be worked, by the hour of the day at which it goes in.
class WorkingByHour {
public:
    /// `minutesWithoutHours` where the weather has no hours.
    WorkingByHour(const PourWeather& weather, double minutesWithoutHours);
    /// Between full hours straight lines; any hour, wraps round.
    double at(double hourOfDay) const;

private:
    std::array<double, 24> minutes_{};
};

/// What every day of pouring is bound by, with what is no sensible number replaced by its default.
struct PourRules {
    double startH = 8.0;
    double limitMin = 540.0;
    double batchMinutes = 8.0;
    double layingMin = 10.0;       ///< to lay steel or foam between layers; nothing is mixed meanwhile
    std::optional<std::size_t> moulds;
    bool handMixed = false;
};
PourRules pourRules(const Plan& plan);

/// One casting to pour.
struct PourTask {
    CastingPtr casting;
    const Part* part = nullptr;
    std::vector<PourLayer> layers;
    double litres = 0.0;
    double batchL = 0.0;           ///< what the mixer takes
    double litresPerBag = 0.0;
    double stripH = 0.0;  ///< so long it lies in its mould (`MouldHours`); 0 where no mould is waited for

    double batches() const { return litres / batchL; }
};

/// The batches that one casting takes of a run, counted from the run's first.
struct SlotBatches {
    int first = 0;
    int last = 0;
    /// For each batch but the last: how many batches later the concrete of it is covered at the latest (1 or more).
    std::vector<int> covered;
    /// For each batch: minutes of laying steel or foam once its concrete, or the part of it below, is in.
    std::vector<double> layMin;
};
/// `startL`: how far the run was used up before the casting. The first layer is covered by the second at the same share of
/// both, for both are begun at the same end. Steel and foam that lie below all concrete or above it are laid before or
/// after, and take no time of the pour.
SlotBatches slotBatches(const PourTask& task, double startL, const BatchRun& run, double layingMin);

/// Of a casting that begins with a fresh batch, batches of `batchMinutes` one after the other: for each of its batches how long its concrete waits to be
/// covered, minutes; of the last one as long as laying takes that falls into it.
std::vector<double> waitsMin(const SlotBatches& slot, double batchMinutes);

/// One casting in its day. Batches are counted from 0 through all mixes of the day.
struct PourSlot {
    std::size_t task = 0;
    std::size_t run = 0;           ///< of the day's
    double startL = 0.0;           ///< how far the run of batches of its mix was used up before it
    int firstBatch = 0;
    int lastBatch = 0;
    int runBatch = 0;              ///< first batch of its run
    std::vector<int> covered;      ///< as in `SlotBatches`
    std::vector<double> layMin;    ///< likewise
    double startMin = 0.0;
    double endMin = 0.0;
    double workingMinutes = 0.0;
    double longestGapMin = 0.0;
    bool fits = true;              ///< in the working time
    bool inTime = true;            ///< before the evening
};

struct ScheduledDay {
    int afterDays = 0;
    double startH = 8.0;
    std::vector<PourSlot> slots;
    std::vector<BatchRun> runs;
    std::vector<double> notBeforeMin;  ///< one a batch: it is not begun before (a mould must come free)
    std::vector<double> layMin;        ///< one a batch: laying after it, before the next is begun
};

struct PourSchedule {
    PourRules rules;
    std::vector<PourTask> tasks;       ///< in the order of pouring
    std::vector<ScheduledDay> days;
    std::vector<std::string> leftOut;
};

/// Castings that `order` names, in its order and each once, then the others: mixes together in the plan's order, large
/// ones first; what comes out of a shared mould after another casting comes after all those, and waits for it. Those without a usable mix come in `leftOut`.
PourSchedule schedulePours(const Plan& plan, const std::vector<CastingPtr>& castings,
                           const std::vector<MixQuantities>& quantities, const WorkingByHour& working);

/// The longest time that concrete of the casting waits to be covered when it begins with a fresh batch, minutes.
double longestGapMin(const PourTask& task, const PourRules& rules);

}  // namespace yardcast
