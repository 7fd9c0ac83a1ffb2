#include "core/pour/pour_changes.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/io/plan_patch.h"

namespace yardcast {

namespace {

/// What an edit writes is as short as what a person types.
double tenths(double value) { return std::round(value * 10) / 10; }

Pouring& pouringOf(Plan& plan)
{
    if (!plan.pouring) plan.pouring = Pouring{};
    return *plan.pouring;
}

}  // namespace

double minutesWithOneMore(double batchMinutes, int people)
{
    const double turning = std::min(batchMinutes, kTurningMinutes);
    const double hands = std::max(1, people);
    return turning + (batchMinutes - turning) * hands / (hands + 1);
}

double minutesOfBatch(double batchMinutes, double fromL, double toL)
{
    if (!(fromL > 0.0 && toL > 0.0)) return batchMinutes;
    const double turning = std::min(batchMinutes, kTurningMinutes);
    return turning + (batchMinutes - turning) * toL / fromL;
}

std::optional<double> nextDrumL(double drumL)
{
    for (const double common : kCommonDrumsL) {
        if (common >= drumL * 1.2) return common;
    }
    return std::nullopt;
}

Plan withStart(const Plan& plan, double startH)
{
    Plan changed = plan;
    pouringOf(changed).startH = startH;
    return changed;
}

Plan withHours(const Plan& plan, double hours)
{
    Plan changed = plan;
    pouringOf(changed).hours = hours;
    return changed;
}

Plan withWater(const Plan& plan, double waterC, double coolerK)
{
    Plan changed = plan;
    changed.conditions.waterC = waterC;
    changed.conditions.concreteC = tenths(plan.conditions.concreteC - coolerK);
    return changed;
}

Plan withIce(const Plan& plan, double icePercent, double coolerK)
{
    Plan changed = plan;
    changed.conditions.icePercent = icePercent;
    changed.conditions.concreteC = tenths(plan.conditions.concreteC - coolerK);
    return changed;
}

Plan withOrder(const Plan& plan, std::vector<std::string> order)
{
    Plan changed = plan;
    pouringOf(changed).order = std::move(order);
    return changed;
}

std::optional<Plan> withOneMoreHand(const Plan& plan)
{
    if (!plan.mixer) return std::nullopt;
    Plan changed = plan;
    changed.mixer->batchMinutes = tenths(minutesWithOneMore(plan.mixer->batchMinutes, plan.crew.people));
    changed.crew.people = plan.crew.people + 1;
    return changed;
}

Plan withDrum(const Plan& plan, double drumL)
{
    Plan changed = plan;
    if (!plan.mixer) {
        changed.mixer = Mixer{};
        changed.mixer->drumL = drumL;
        return changed;
    }
    changed.mixer->drumL = drumL;
    changed.mixer->batchMinutes = tenths(minutesOfBatch(plan.mixer->batchMinutes, plan.mixer->drumL, drumL));
    return changed;
}

std::string settingsPatch(const Plan& before, const Plan& after)
{
    Plan from = before;
    Plan to = after;
    from.parts.clear();
    to.parts.clear();
    return patchBetween(from, to);
}

}  // namespace yardcast
