#include "core/pour/pour_plan.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <unordered_map>

#include "core/materials/gravity.h"
#include "core/materials/materials.h"
#include "core/pour/pour_findings.h"
#include "core/pour/pour_schedule.h"

namespace yardcast {

namespace {

constexpr double kNoise = 1e-9;

/// What lies under it while it is poured.
double baseMm2(const Casting& casting, const Part& part)
{
    return isCastUpright(part.body) ? casting.boundsMm.width() * casting.deepestMm : areaMm2(casting.outline);
}

/// One day of the schedule written out.
class DayWriter {
public:
    DayWriter(const PourSchedule& schedule, const ScheduledDay& planned) : schedule_(schedule), planned_(planned)
    {
        double now = 0.0;
        for (std::size_t i = 0; i < planned.notBeforeMin.size(); ++i) {
            PourBatch batch;
            batch.beginMin = std::max(now, planned.notBeforeMin[i]);
            batch.readyMin = batch.beginMin + schedule.rules.batchMinutes;
            now = batch.readyMin + planned.layMin[i];
            day_.mixed.push_back(std::move(batch));
        }
        day_.startH = planned.startH;
        day_.afterDays = planned.afterDays;
    }

    PourDay write(const std::unordered_map<std::string, double>& freshKgM3)
    {
        for (const PourSlot& slot : planned_.slots) day_.castings.push_back(pouredOf(slot, freshKgM3));
        day_.batches = static_cast<int>(day_.mixed.size());
        if (!planned_.slots.empty()) day_.endMin = planned_.slots.back().endMin;
        return std::move(day_);
    }

private:
    const PourBatch& batchAt(int index) const { return day_.mixed[static_cast<std::size_t>(index)]; }

    /// How many batches of the mix were made before this run.
    int madeBefore(const std::string& mix, int runBatch) const
    {
        int made = 0;
        for (int i = 0; i < runBatch; ++i) made += batchAt(i).mix == mix ? 1 : 0;
        return made;
    }

    void fillBatches(const PourSlot& slot, const PourTask& task, int before)
    {
        const double endL = slot.startL + task.litres;
        for (int index = slot.firstBatch; index <= slot.lastBatch; ++index) {
            const BatchRun& run = planned_.runs[slot.run];
            const double lowL = run.startL(index - slot.runBatch);
            // Whole in sum: the last takes what rounding left.
            const double highL = index == slot.lastBatch ? endL : run.startL(index - slot.runBatch + 1);
            const double litres = highL - (index == slot.firstBatch ? slot.startL : lowL);
            PourBatch& batch = day_.mixed[static_cast<std::size_t>(index)];
            batch.mix = task.casting->mix;
            batch.number = before + index - slot.runBatch + 1;
            batch.litres += litres;
            batch.into.emplace_back(task.casting->id, litres);
        }
    }

    void timeLayers(const PourSlot& slot, int before, PouredCasting& poured) const
    {
        const BatchRun& run = planned_.runs[slot.run];
        double atL = slot.startL;
        double leftL = poured.litres;
        double nowMin = std::max(batchAt(slot.firstBatch).readyMin, slot.startMin);
        bool begun = false;
        for (PourLayer& layer : poured.layers) {
            layer.fromMin = nowMin;
            if (layer.litres > 0.0) {
                const double from = atL;
                atL += layer.litres;
                leftL -= layer.litres;
                layer.firstBatch = before + run.placeFrom(from);
                layer.lastBatch = before + run.placeOf(atL);
                const auto readyMin = [&](int batch) {
                    return batchAt(std::clamp(slot.runBatch + batch, slot.firstBatch, slot.lastBatch)).readyMin;
                };
                layer.fromMin = std::max(nowMin, readyMin(run.at(from)));
                nowMin = std::max(layer.fromMin, readyMin(run.endingAt(atL)));
                begun = true;
            } else if (begun && leftL > kNoise * poured.litres) {
                nowMin += schedule_.rules.layingMin;
            }
            layer.toMin = nowMin;
        }
    }

    PouredCasting pouredOf(const PourSlot& slot, const std::unordered_map<std::string, double>& freshKgM3)
    {
        const PourTask& task = schedule_.tasks[slot.task];
        const Casting& casting = *task.casting;
        const int before = madeBefore(casting.mix, slot.runBatch);
        fillBatches(slot, task, before);

        PouredCasting poured;
        poured.casting = casting.id;
        poured.mix = casting.mix;
        poured.litres = task.litres;
        const BatchRun& run = planned_.runs[slot.run];
        poured.batches = run.placeOf(slot.startL + task.litres) - run.placeFrom(slot.startL);
        poured.startMin = slot.startMin;
        poured.endMin = slot.endMin;
        poured.workingMinutes = slot.workingMinutes;
        poured.longestGapMin = slot.longestGapMin;
        poured.fits = slot.fits;
        poured.layers = task.layers;
        timeLayers(slot, before, poured);

        const double foam = foamDensityKgM3(task.part->body);
        const auto fresh = freshKgM3.find(casting.mix);
        poured.uplift = upliftOf(casting.fillerL, foam, fresh == freshKgM3.end() ? 0.0 : fresh->second);
        poured.tableKg = casting.freshKg + casting.steelKg + casting.fillerL / 1000 * foam;
        const double base = baseMm2(casting, *task.part);
        if (base > 0.0) poured.tableKpa = poured.tableKg * kGravityMS2 / base * 1000;
        day_.litres += task.litres;
        return poured;
    }

    const PourSchedule& schedule_;
    const ScheduledDay& planned_;
    PourDay day_;
};

}  // namespace

const PouredCasting* PourPlan::find(const std::string& casting) const
{
    for (const PourDay& day : days) {
        for (const PouredCasting& poured : day.castings) {
            if (poured.casting == casting) return &poured;
        }
    }
    return nullptr;
}

std::unordered_map<std::string_view, PourPlace> pourPlaces(const PourPlan& pour)
{
    std::unordered_map<std::string_view, PourPlace> places;
    int number = 0;
    int calendarDay = 1;
    for (const PourDay& day : pour.days) {
        calendarDay += day.afterDays;
        for (const PouredCasting& poured : day.castings) places[poured.casting] = {++number, calendarDay, &poured};
    }
    return places;
}

PourPlan pourPlan(const Plan& plan, const std::vector<CastingPtr>& castings,
                  const std::vector<MixQuantities>& quantities, const PourWeather& weather,
                  std::vector<Finding>& findings)
{
    const WorkingByHour working(weather, plan.pouring.value_or(Pouring{}).workingMinutes);
    const PourSchedule schedule = schedulePours(plan, castings, quantities, working);
    std::unordered_map<std::string, double> freshKgM3;
    for (const MixQuantities& q : quantities) {
        freshKgM3.emplace(q.mix, q.freshDensityKgM3 > 0.0 ? q.freshDensityKgM3 : kFreshConcreteKgM3);
    }

    PourPlan result;
    result.leftOut = schedule.leftOut;
    result.handMixed = schedule.rules.handMixed;
    result.batchMinutes = schedule.rules.batchMinutes;
    result.layingMinutes = schedule.rules.layingMin;
    for (const ScheduledDay& planned : schedule.days) {
        PourDay day = DayWriter(schedule, planned).write(freshKgM3);
        day.day = static_cast<int>(result.days.size()) + 1;
        result.days.push_back(std::move(day));
    }
    pourFindings(plan, schedule, working, quantities, result, findings);
    return result;
}

}  // namespace yardcast
