#include "core/pour/pour_schedule.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <unordered_map>
#include <unordered_set>

#include "core/pour/mould_hours.h"

namespace yardcast {

namespace {

constexpr double kHoursADay = 24.0;

double within(double value, double low, double high, double otherwise)
{
    return value >= low && value <= high ? value : otherwise;
}

double batchLitres(const MixQuantities& q)
{
    const double litres = bagsInBatch(q) * q.litresPerBag;
    return litres > 0.0 && std::isfinite(litres) ? litres : kHandBatchL;
}

/// Which mould a casting shares with others, and how many come out of it before.
struct SharedUse {
    std::size_t mould = 0;
    int before = 0;
};
using SharedUses = std::unordered_map<std::string, SharedUse>;

/// Only castings that there are; what is named twice counts where it is named first.
SharedUses sharedUses(const Plan& plan, const std::vector<CastingPtr>& castings)
{
    SharedUses uses;
    const std::vector<SharedMould> shared = mouldingOf(plan).shared;
    if (shared.empty()) return uses;
    std::unordered_set<std::string> known;
    for (const CastingPtr& casting : castings) known.insert(casting->id);
    for (std::size_t i = 0; i < shared.size(); ++i) {
        int before = 0;
        for (const std::string& id : shared[i].castings) {
            if (known.count(id) > 0 && uses.try_emplace(id, SharedUse{i, before}).second) ++before;
        }
    }
    return uses;
}

/// Castings of one mould change places so that they come as the mould's list has them.
void orderInMoulds(std::vector<std::size_t>& order, const std::vector<CastingPtr>& castings, const SharedUses& uses)
{
    std::map<std::size_t, std::vector<std::size_t>> placesOf;
    for (std::size_t place = 0; place < order.size(); ++place) {
        const auto use = uses.find(castings[order[place]]->id);
        if (use != uses.end()) placesOf[use->second.mould].push_back(place);
    }
    for (const auto& [mould, places] : placesOf) {
        std::vector<std::size_t> members;
        for (const std::size_t place : places) members.push_back(order[place]);
        std::stable_sort(members.begin(), members.end(), [&](std::size_t a, std::size_t b) {
            return uses.at(castings[a]->id).before < uses.at(castings[b]->id).before;
        });
        for (std::size_t i = 0; i < places.size(); ++i) order[places[i]] = members[i];
    }
}

/// Indices of castings: first as ordered, then by mix and size. What comes out of a mould a second time comes after all
/// that comes out of one for the first time.
std::vector<std::size_t> orderOf(const Plan& plan, const std::vector<CastingPtr>& castings,
                                 const std::unordered_map<std::string, std::size_t>& mixPlace, const SharedUses& uses)
{
    std::vector<std::size_t> order;
    std::vector<bool> taken(castings.size(), false);
    const auto take = [&](std::size_t i) {
        if (!taken[i]) order.push_back(i);
        taken[i] = true;
    };
    if (plan.pouring && !plan.pouring->order.empty()) {
        std::unordered_map<std::string, std::vector<std::size_t>> named;
        for (std::size_t i = 0; i < castings.size(); ++i) {
            named[castings[i]->id].push_back(i);
            if (castings[i]->part != castings[i]->id) named[castings[i]->part].push_back(i);
        }
        for (const std::string& id : plan.pouring->order) {
            const auto found = named.find(id);
            if (found == named.end()) continue;
            for (const std::size_t i : found->second) take(i);
        }
    }
    std::vector<std::size_t> rest(castings.size());
    std::iota(rest.begin(), rest.end(), std::size_t{0});
    const auto placeOf = [&](std::size_t i) {
        const auto found = mixPlace.find(castings[i]->mix);
        return found == mixPlace.end() ? mixPlace.size() : found->second;
    };
    const auto before = [&](std::size_t i) {
        const auto use = uses.find(castings[i]->id);
        return use == uses.end() ? 0 : use->second.before;
    };
    std::stable_sort(rest.begin(), rest.end(), [&](std::size_t a, std::size_t b) {
        if (before(a) != before(b)) return before(a) < before(b);
        const std::size_t placeA = placeOf(a);
        const std::size_t placeB = placeOf(b);
        if (placeA != placeB) return placeA < placeB;
        // To the millilitre, so that equal castings stay in the order of the parts.
        return std::llround(castings[a]->volumeL * 1000) > std::llround(castings[b]->volumeL * 1000);
    });
    for (const std::size_t i : rest) take(i);
    orderInMoulds(order, castings, uses);
    return order;
}

/// Puts one casting after the other, day by day.
class Scheduler {
public:
    Scheduler(PourSchedule& schedule, const WorkingByHour& working, const SharedUses& uses)
        : schedule_(schedule), working_(working), uses_(uses), waitsForMoulds_(rules().moulds || !uses.empty())
    {
        for (std::size_t i = 0; i < schedule_.tasks.size(); ++i) place(i);
        closeRun();
    }

private:
    struct Try {
        PourSlot slot;
        double waitUntilMin = 0.0;
        bool newRun = true;
    };

    const PourRules& rules() const { return schedule_.rules; }
    ScheduledDay& today() { return schedule_.days.back(); }
    double madeMin() const { return madeMin_; }

    /// Hours since midnight of the first day at which a mould for a casting is free, if it is begun at `fromH`.
    double mouldFreeH(double fromH, std::size_t index) const
    {
        const auto use = uses_.find(schedule_.tasks[index].casting->id);
        if (use != uses_.end()) {
            const auto known = sharedFree_.find(use->second.mould);
            if (known != sharedFree_.end()) fromH = std::max(fromH, known->second);
        }
        if (!rules().moulds) return fromH;
        std::vector<double> later;
        for (const double free : mouldFree_) {
            if (free > fromH) later.push_back(free);
        }
        if (later.size() < *rules().moulds) return fromH;
        const auto nth = later.begin() + static_cast<std::ptrdiff_t>(later.size() - *rules().moulds);
        std::nth_element(later.begin(), nth, later.end());
        return *nth;
    }

    /// The same where one has to wait for it: where moulds are scarce, with those that come free in the hour after it as well,
    /// for as many castings as are left from `index` on, so that a batch is not mixed for one mould while the next is being
    /// stripped. Not past `latestH` for that.
    double mouldsFreeH(double fromH, std::size_t index, double latestH) const
    {
        const double firstH = mouldFreeH(fromH, index);
        if (!(firstH > fromH) || !rules().moulds) return firstH;
        std::vector<double> soon;
        for (const double free : mouldFree_) {
            if (free > firstH && free <= std::min(firstH + kLongestIdleMin / 60, latestH) + 1e-9) soon.push_back(free);
        }
        std::sort(soon.begin(), soon.end());
        const std::size_t more = std::min(soon.size(), schedule_.tasks.size() - index - 1);
        return more == 0 ? firstH : soon[more - 1];
    }

    double hourOf(double minute) const { return schedule_.days.back().startH + minute / 60; }

    Try tryAt(std::size_t index, double waitUntilMin)
    {
        const PourTask& task = schedule_.tasks[index];
        Try t;
        t.waitUntilMin = waitUntilMin;
        const bool waits = waitUntilMin > madeMin() + 1e-9;
        t.newRun = today().slots.empty() || waits || runMix_ != task.casting->mix;
        PourSlot& slot = t.slot;
        slot.task = index;
        slot.run = today().runs.size() - (t.newRun ? 0 : 1);
        slot.startL = t.newRun ? 0.0 : runL_;
        slot.runBatch = t.newRun ? batches_ : runBatch_;
        take(slot, slotBatches(task, slot.startL, BatchRun(task.batchL), rules().layingMin));
        // When each of its batches is ready; the first may be the rest of the one before.
        std::vector<double> readyMin;
        double now = std::max(madeMin(), waitUntilMin);
        slot.startMin = now;
        for (int batch = slot.firstBatch; batch <= slot.lastBatch; ++batch) {
            if (batch >= batches_) now += rules().batchMinutes;
            readyMin.push_back(now);
            now += slot.layMin[static_cast<std::size_t>(batch - slot.firstBatch)];
        }
        settle(slot, readyMin);
        return t;
    }

    /// Which batches of its run a slot takes.
    static void take(PourSlot& slot, SlotBatches batches)
    {
        slot.firstBatch = slot.runBatch + batches.first;
        slot.lastBatch = slot.runBatch + batches.last;
        slot.covered = std::move(batches.covered);
        slot.layMin = std::move(batches.layMin);
    }

    /// Times of a slot from those at which its batches go in.
    void settle(PourSlot& slot, const std::vector<double>& goesInMin) const
    {
        slot.endMin = goesInMin.back() + slot.layMin.back();
        slot.workingMinutes = working_.at(hourOf(goesInMin.front()));
        slot.longestGapMin = 0.0;
        slot.fits = true;
        for (std::size_t i = 0; i < goesInMin.size(); ++i) {
            const double gap = i < slot.covered.size()
                                   ? goesInMin[i + static_cast<std::size_t>(slot.covered[i])] - goesInMin[i]
                                   : slot.layMin[i];
            slot.longestGapMin = std::max(slot.longestGapMin, gap);
            slot.fits = slot.fits && gap <= working_.at(hourOf(goesInMin[i])) + 1e-9;
        }
        slot.inTime = slot.endMin <= limitMin() + 1e-9;
    }

    /// The run that ends here is shared out, where its last batch would be too little to mix. Not where a casting would then
    /// wait too long to be covered, nor where others wait for its mould on that day and it would end later.
    void closeRun()
    {
        if (schedule_.days.empty() || today().slots.empty()) return;
        ScheduledDay& day = today();
        const std::size_t index = day.runs.size() - 1;
        const auto first = std::find_if(day.slots.begin(), day.slots.end(),
                                        [&](const PourSlot& slot) { return slot.run == index; });
        const PourTask& task = schedule_.tasks[first->task];
        day.runs[index] = BatchRun(runL_, task.batchL, task.litresPerBag, false);
        const BatchRun shared(runL_, task.batchL, task.litresPerBag, true);
        if (!shared.isShared()) return;
        std::vector<PourSlot> slots(first, day.slots.end());
        const auto runBatch = static_cast<std::size_t>(runBatch_);
        std::vector<double> layMin(day.layMin.size() - runBatch, 0.0);
        for (PourSlot& slot : slots) {
            take(slot, slotBatches(schedule_.tasks[slot.task], slot.startL, shared, rules().layingMin));
            for (std::size_t i = 0; i < slot.layMin.size(); ++i) {
                layMin[static_cast<std::size_t>(slot.firstBatch - slot.runBatch) + i] += slot.layMin[i];
            }
        }
        std::vector<double> readyMin;
        double now = dayReadyMin(runBatch);
        for (std::size_t i = 0; i < layMin.size(); ++i) {
            now = std::max(now, day.notBeforeMin[runBatch + i]) + rules().batchMinutes;
            readyMin.push_back(now);
            now += layMin[i];
        }
        double madeMin = -1.0;
        for (std::size_t i = 0; i < slots.size(); ++i) {
            PourSlot& slot = slots[i];
            const auto from = static_cast<std::size_t>(slot.firstBatch - slot.runBatch);
            const auto to = static_cast<std::size_t>(slot.lastBatch - slot.runBatch);
            std::vector<double> goesIn(readyMin.begin() + static_cast<std::ptrdiff_t>(from),
                                       readyMin.begin() + static_cast<std::ptrdiff_t>(to) + 1);
            const bool begun = i > 0 && slots[i - 1].lastBatch == slot.firstBatch;
            if (begun) goesIn.front() = std::max(goesIn.front(), madeMin);
            slot.startMin = begun ? goesIn.front() : readyMin[from] - rules().batchMinutes;
            settle(slot, goesIn);
            madeMin = slot.endMin;
            const PourSlot& was = *(first + static_cast<std::ptrdiff_t>(i));
            if (was.fits && !slot.fits) return;
            // Who waits for a mould on this very day has been told when it is free.
            const bool sameDay = schedule_.tasks[slot.task].stripH < kHoursADay;
            if (waitsForMoulds_ && sameDay && slot.endMin > was.endMin + 1e-9) return;
        }
        day.runs[index] = shared;
        std::copy(slots.begin(), slots.end(), first);
        std::copy(layMin.begin(), layMin.end(), day.layMin.begin() + static_cast<std::ptrdiff_t>(runBatch));
        mouldFree_.resize(mouldFree_.size() - slots.size());
        for (const PourSlot& slot : slots) noteMould(slot);
    }

    /// When its mould comes free.
    void noteMould(const PourSlot& slot)
    {
        const PourTask& task = schedule_.tasks[slot.task];
        mouldFree_.push_back(calendarDay_ * kHoursADay + hourOf(slot.endMin) + task.stripH);
        const auto use = uses_.find(task.casting->id);
        if (use != uses_.end()) sharedFree_[use->second.mould] = mouldFree_.back();
    }

    /// When the batches before this one are ready and what was laid after them.
    double dayReadyMin(std::size_t batch)
    {
        double now = 0.0;
        for (std::size_t i = 0; i < batch; ++i) {
            now = std::max(now, today().notBeforeMin[i]) + rules().batchMinutes + today().layMin[i];
        }
        return now;
    }

    double limitMin() const
    {
        return rules().limitMin - (schedule_.days.back().startH - rules().startH) * 60;
    }

    void keep(Try t)
    {
        const PourTask& task = schedule_.tasks[t.slot.task];
        if (t.newRun) {
            closeRun();
            today().runs.emplace_back(task.batchL);
            runMix_ = task.casting->mix;
            runL_ = 0.0;
            runBatch_ = t.slot.runBatch;
        }
        runL_ += task.litres;
        const int more = t.slot.lastBatch + 1 - batches_;
        for (int i = 0; i < more; ++i) today().notBeforeMin.push_back(i == 0 ? t.waitUntilMin : 0.0);
        batches_ += std::max(0, more);
        today().layMin.resize(static_cast<std::size_t>(batches_), 0.0);
        for (std::size_t i = 0; i < t.slot.layMin.size(); ++i) {
            today().layMin[static_cast<std::size_t>(t.slot.firstBatch) + i] += t.slot.layMin[i];
        }
        madeMin_ = t.slot.endMin;
        noteMould(t.slot);
        today().slots.push_back(std::move(t.slot));
    }

    /// The first day, or the next on which a mould comes free in the hours of work.
    void beginDay(std::size_t index)
    {
        closeRun();
        ScheduledDay day;
        day.startH = rules().startH;
        if (!schedule_.days.empty()) {
            int next = calendarDay_ + 1;
            const double freeH = mouldsFreeH(next * kHoursADay + day.startH, index,
                                             std::numeric_limits<double>::infinity());
            const double daysOn = std::floor((freeH - day.startH) / kHoursADay + 1e-9);
            next = std::max(next, static_cast<int>(std::min(daysOn, 1e6)));
            if (freeH - next * kHoursADay - day.startH > rules().limitMin / 60) ++next;
            day.startH = std::max(day.startH, freeH - next * kHoursADay);
            day.afterDays = next - calendarDay_;
            calendarDay_ = next;
        }
        openDay(std::move(day));
    }

    void openDay(ScheduledDay day)
    {
        schedule_.days.push_back(std::move(day));
        batches_ = 0;
        madeMin_ = 0.0;
        runMix_.clear();
        runL_ = 0.0;
        runBatch_ = 0;
    }

    void place(std::size_t index)
    {
        if (!schedule_.days.empty()) {
            const double nowH = calendarDay_ * kHoursADay + hourOf(madeMin());
            const double waitMin = madeMin() + (mouldsFreeH(nowH, index, nowH + kLongestIdleMin / 60) - nowH) * 60;
            if (waitMin - madeMin() <= kLongestIdleMin) {
                Try t = tryAt(index, waitMin);
                if (t.slot.fits && t.slot.inTime) {
                    keep(std::move(t));
                    return;
                }
            }
        }
        beginDay(index);
        Try t = tryAt(index, 0.0);
        if (!(t.slot.fits && t.slot.inTime) && today().startH > rules().startH) {
            // A mould came free too late in the day: the next morning.
            ScheduledDay later;
            later.startH = rules().startH;
            later.afterDays = today().afterDays + 1;
            ++calendarDay_;
            schedule_.days.pop_back();
            openDay(std::move(later));
            t = tryAt(index, 0.0);
        }
        keep(std::move(t));
    }

    PourSchedule& schedule_;
    const WorkingByHour& working_;
    const SharedUses& uses_;
    const bool waitsForMoulds_;
    std::unordered_map<std::size_t, double> sharedFree_;  ///< by mould, like `mouldFree_`
    int calendarDay_ = 0;
    std::vector<double> mouldFree_;  ///< hours since midnight of the first day
    int batches_ = 0;                ///< made on this day
    double madeMin_ = 0.0;           ///< when the last of them is ready
    std::string runMix_;
    double runL_ = 0.0;              ///< of the run that castings have taken
    int runBatch_ = 0;
};

}  // namespace

WorkingByHour::WorkingByHour(const PourWeather& weather, double minutesWithoutHours)
{
    minutes_.fill(minutesWithoutHours);
    if (weather.hours.size() != minutes_.size()) return;
    for (std::size_t h = 0; h < minutes_.size(); ++h) minutes_[h] = weather.hours[h].workingMinutes;
}

double WorkingByHour::at(double hourOfDay) const
{
    const double wrapped = hourOfDay - kHoursADay * std::floor(hourOfDay / kHoursADay);
    if (!(wrapped >= 0.0 && wrapped < kHoursADay)) return minutes_[0];
    const auto hour = static_cast<std::size_t>(wrapped);
    const double share = wrapped - static_cast<double>(hour);
    return minutes_[hour] + (minutes_[(hour + 1) % minutes_.size()] - minutes_[hour]) * share;
}

PourRules pourRules(const Plan& plan)
{
    const Pouring initial;
    const Pouring pouring = plan.pouring.value_or(initial);
    PourRules rules;
    rules.startH = within(pouring.startH, 0.0, 24.0, initial.startH);
    rules.limitMin = within(pouring.hours, 0.5, 24.0, initial.hours) * 60;
    rules.layingMin = within(pouring.layingMinutes, 0.0, 240.0, initial.layingMinutes);
    if (pouring.moulds && *pouring.moulds >= 1) rules.moulds = static_cast<std::size_t>(*pouring.moulds);
    rules.handMixed = !plan.mixer.has_value();
    rules.batchMinutes = plan.mixer ? within(plan.mixer->batchMinutes, 0.01, 1440.0, Mixer{}.batchMinutes)
                                    : kHandBatchMinutes;
    return rules;
}

PourSchedule schedulePours(const Plan& plan, const std::vector<CastingPtr>& castings,
                           const std::vector<MixQuantities>& quantities, const WorkingByHour& working)
{
    PourSchedule schedule;
    schedule.rules = pourRules(plan);
    // Nobody asks for the hours where no mould is waited for.
    const bool waits = schedule.rules.moulds || !mouldingOf(plan).shared.empty();
    MouldHours mouldHours(plan);
    std::unordered_map<std::string, std::size_t> mixPlace;
    std::unordered_map<std::string, double> litres;
    for (std::size_t i = 0; i < quantities.size(); ++i) {
        mixPlace.emplace(quantities[i].mix, i);
        for (const auto& [casting, castingL] : quantities[i].castingLitres) litres[casting] = castingL;
    }
    std::unordered_map<std::string, const Part*> parts;
    for (const PartPtr& part : plan.parts) parts.emplace(part->id, part.get());

    const SharedUses uses = sharedUses(plan, castings);
    for (const std::size_t index : orderOf(plan, castings, mixPlace, uses)) {
        const CastingPtr& casting = castings[index];
        const auto mix = mixPlace.find(casting->mix);
        const auto amount = litres.find(casting->id);
        const auto part = parts.find(casting->part);
        PourTask task;
        task.casting = casting;
        if (mix != mixPlace.end() && amount != litres.end() && part != parts.end()) {
            task.litres = amount->second;
            task.batchL = batchLitres(quantities[mix->second]);
            task.litresPerBag = quantities[mix->second].litresPerBag;
        }
        // Written so that what is no number is left out as well.
        if (!(task.litres > 0.0 && task.batchL > 0.0 && task.batches() <= kMostBatches)) {
            schedule.leftOut.push_back(casting->id);
            continue;
        }
        task.part = part->second;
        task.layers = pourLayers(*casting, *task.part, task.litres);
        if (waits) task.stripH = mouldHours.of(*task.part, casting->mix);
        schedule.tasks.push_back(std::move(task));
    }
    Scheduler(schedule, working, uses);
    return schedule;
}

}  // namespace yardcast
