#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/plan.h"
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
    double batchL = 0.0;
    double stripH = 0.0;  ///< so long it lies in its mould (`MouldHours`); 0 where no mould is waited for

    double batches() const { return litres / batchL; }
};

/// For each batch of a casting but its last: how many batches later the concrete of it is covered at the latest (1 or
/// more). `startL`: how far the run of batches was used up before it. The first layer is covered by the second at the same
/// share of both, for both are begun at the same end.
std::vector<int> coveredAfter(const PourTask& task, double startL);

/// One casting in its day. Batches are counted from 0 through all mixes of the day.
struct PourSlot {
    std::size_t task = 0;
    double startL = 0.0;           ///< how far the run of batches of its mix was used up before it
    int firstBatch = 0;
    int lastBatch = 0;
    int runBatch = 0;              ///< first batch of its run
    std::vector<int> covered;
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
    std::vector<double> notBeforeMin;  ///< one a batch: it is not begun before (a mould must come free)
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
double longestGapMin(const PourTask& task, double batchMinutes);

}  // namespace yardcast
