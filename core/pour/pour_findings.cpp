#include "core/pour/pour_findings.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "core/pour/pour_changes.h"

namespace yardcast {

namespace {

constexpr double kNoise = 1e-9;
/// Whatever a file holds, so many findings about its order and so many sought remedies are enough.
constexpr std::size_t kMostOrderFindings = 10;
constexpr int kMostSought = 8;

std::string partPointer(const Plan& plan, const Casting& casting)
{
    const int index = indexOfPart(plan, casting.part);
    return index < 0 ? std::string() : "/parts/" + std::to_string(index);
}

const MixQuantities* quantitiesOf(const std::vector<MixQuantities>& quantities, const std::string& mix)
{
    for (const MixQuantities& q : quantities) {
        if (q.mix == mix) return &q;
    }
    return nullptr;
}

/// Whether the casting, begun at this hour with a fresh batch of so many litres and minutes, is covered in time.
bool holdsAt(PourTask task, double batchL, double minutes, double layingMin, double startH, const WorkingByHour& working)
{
    if (!(task.litres / batchL <= kMostBatches)) return false;
    task.batchL = batchL;
    const SlotBatches slot = slotBatches(task, 0.0, BatchRun(batchL), layingMin);
    const std::vector<double> waits = waitsMin(slot, minutes);
    double hour = startH;
    for (std::size_t i = 0; i < waits.size(); ++i) {
        hour += minutes / 60;
        if (waits[i] > working.at(hour) + kNoise) return false;
        hour += slot.layMin[i] / 60;
    }
    return true;
}

/// What lets a casting that is too slow be finished in time, each worked out for it.
std::vector<Remedy> remediesFor(const Plan& plan, const PourSchedule& schedule, const PourTask& task, double startH,
                                const WorkingByHour& working, const std::vector<MixQuantities>& quantities)
{
    std::vector<Remedy> remedies;
    const double minutes = schedule.rules.batchMinutes;
    const double layingMin = schedule.rules.layingMin;
    for (double hour = std::floor(startH * 2 - kNoise) / 2; hour >= kEarliestWorkH; hour -= 0.5) {
        if (!holdsAt(task, task.batchL, minutes, layingMin, hour, working)) continue;
        remedies.push_back({"pour_earlier", {{"start_clock", hour}}, settingsPatch(plan, withStart(plan, hour)), {}});
        break;
    }
    if (const auto changed = withOneMoreHand(plan)) {
        if (holdsAt(task, task.batchL, changed->mixer->batchMinutes, layingMin, startH, working)) {
            remedies.push_back({"pour_more_hands",
                                {{"people", static_cast<double>(changed->crew.people)},
                                 {"batch_min", changed->mixer->batchMinutes}},
                                settingsPatch(plan, *changed),
                                {}});
        }
    }
    const MixQuantities* q = quantitiesOf(quantities, task.casting->mix);
    const double drumL = plan.mixer ? plan.mixer->drumL : 0.0;
    for (const double larger : kCommonDrumsL) {
        if (q == nullptr || !(larger > drumL) || !(q->litresPerBag > 0.0)) continue;
        const Plan changed = withDrum(plan, larger);
        const double usable = larger * changed.mixer->usablePercent / 100;
        const double batchL = bagsThatFit(usable, q->litresPerBag) * q->litresPerBag;
        if (!(batchL > 0.0) || !holdsAt(task, batchL, changed.mixer->batchMinutes, layingMin, startH, working))
            continue;
        remedies.push_back({"pour_larger_mixer",
                            {{"drum_l", larger}, {"batch_min", changed.mixer->batchMinutes}},
                            settingsPatch(plan, changed),
                            {}});
        break;
    }
    // Half as long for each 10 K more: so the temperature at which the longest wait would just be borne.
    const double minutesAt20 = plan.pouring.value_or(Pouring{}).workingMinutes;
    const double needC = 20 + 10 * std::log2(minutesAt20 / longestGapMin(task, schedule.rules));
    if (needC >= kColdestMixC && needC < kHottestMixC) {
        remedies.push_back({"pour_cooler_concrete", {{"concrete_c", std::floor(needC)}}, {}, {}});
    }
    remedies.push_back({"pour_divide", {}, {}, {}});
    return remedies;
}

void addSlowCastings(const Plan& plan, const PourSchedule& schedule, const WorkingByHour& working,
                     const std::vector<MixQuantities>& quantities, std::vector<Finding>& findings)
{
    int sought = 0;
    for (const ScheduledDay& day : schedule.days) {
        for (const PourSlot& slot : day.slots) {
            const PourTask& task = schedule.tasks[slot.task];
            const std::string pointer = partPointer(plan, *task.casting);
            if (!slot.fits) {
                const double startH = day.startH + slot.startMin / 60;
                std::vector<Remedy> remedies;
                if (++sought <= kMostSought) {
                    remedies = remediesFor(plan, schedule, task, startH, working, quantities);
                }
                findings.push_back({"cold_joint_certain",
                                    Severity::stop,
                                    {task.casting->id},
                                    pointer,
                                    {{"gap_min", slot.longestGapMin},
                                     {"working_min", slot.workingMinutes},
                                     {"batches", static_cast<double>(slot.lastBatch - slot.firstBatch + 1)},
                                     {"batch_min", schedule.rules.batchMinutes},
                                     {"start_clock", startH}},
                                    std::move(remedies)});
            }
            if (slot.inTime) continue;
            const double takesH = slot.endMin / 60;
            Finding finding{"day_too_long",
                            Severity::caution,
                            {task.casting->id},
                            plan.pouring ? "/pour/hours" : pointer,
                            {{"takes_h", takesH}, {"hours_h", schedule.rules.limitMin / 60}},
                            {}};
            const double longer = std::ceil(takesH * 2 - kNoise) / 2;
            if (longer <= 24.0) {
                finding.remedies.push_back(
                    {"pour_longer_day", {{"hours_h", longer}}, settingsPatch(plan, withHours(plan, longer)), {}});
            }
            findings.push_back(std::move(finding));
        }
    }
}

void addFoam(const PourPlan& pour, std::vector<Finding>& findings)
{
    Finding finding{"uplift", Severity::note, {}, {}, {}, {}};
    double forceN = 0.0;
    double litres = 0.0;
    int fixings = 0;
    int most = 0;
    std::string strongest;
    for (const PourDay& day : pour.days) {
        for (const PouredCasting& poured : day.castings) {
            if (poured.uplift.fixings == 0) continue;
            finding.subjects.push_back(poured.casting);
            fixings += poured.uplift.fixings;
            if (poured.uplift.forceN > forceN) {
                forceN = poured.uplift.forceN;
                litres = poured.uplift.litres;
                most = poured.uplift.fixings;
                strongest = poured.casting;
            }
        }
    }
    if (finding.subjects.empty()) return;
    std::swap(finding.subjects.front(),
              *std::find(finding.subjects.begin(), finding.subjects.end(), strongest));
    finding.values = {{"lift_n", forceN},
                      {"foam_l", litres},
                      {"fixings", static_cast<double>(most)},
                      {"fixings_in_all", static_cast<double>(fixings)}};
    findings.push_back(std::move(finding));
}

void addTable(const PourPlan& pour, std::vector<Finding>& findings)
{
    const PouredCasting* heaviest = nullptr;
    for (const PourDay& day : pour.days) {
        for (const PouredCasting& poured : day.castings) {
            if (heaviest == nullptr || poured.tableKg > heaviest->tableKg) heaviest = &poured;
        }
    }
    if (heaviest == nullptr || !(heaviest->tableKg > kTableNoteKg)) return;
    findings.push_back({"table_load",
                        Severity::note,
                        {heaviest->casting},
                        {},
                        {{"table_kg", heaviest->tableKg}, {"table_kpa", heaviest->tableKpa}},
                        {}});
}

void addOrder(const Plan& plan, const PourSchedule& schedule, std::vector<Finding>& findings)
{
    if (!plan.pouring) return;
    std::set<std::string> known(schedule.leftOut.begin(), schedule.leftOut.end());
    for (const PourTask& task : schedule.tasks) {
        known.insert(task.casting->id);
        known.insert(task.casting->part);
    }
    const std::vector<std::string>& order = plan.pouring->order;
    std::set<std::string> seen;
    std::vector<std::string> clean;
    std::vector<Finding> odd;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const bool isKnown = known.count(order[i]) > 0;
        const bool isNew = seen.insert(order[i]).second;
        if (isKnown && isNew) {
            clean.push_back(order[i]);
        } else if (odd.size() < kMostOrderFindings) {
            odd.push_back({isKnown ? "order_twice" : "order_unknown",
                           Severity::note,
                           {},
                           "/pour/order/" + std::to_string(i),
                           {{"name", order[i]}},
                           {}});
        }
    }
    if (odd.empty()) return;
    const Remedy remedy{"pour_order_clean", {}, settingsPatch(plan, withOrder(plan, std::move(clean))), {}};
    for (Finding& finding : odd) {
        finding.remedies.push_back(remedy);
        findings.push_back(std::move(finding));
    }
}

}  // namespace

void pourFindings(const Plan& plan, const PourSchedule& schedule, const WorkingByHour& working,
                  const std::vector<MixQuantities>& quantities, const PourPlan& pour, std::vector<Finding>& findings)
{
    addSlowCastings(plan, schedule, working, quantities, findings);
    addFoam(pour, findings);
    addOrder(plan, schedule, findings);
    addTable(pour, findings);
}

}  // namespace yardcast
