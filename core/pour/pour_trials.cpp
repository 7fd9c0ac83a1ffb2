#include "core/pour/pour_trials.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <optional>
#include <string>
#include <utility>

#include "core/pour/play_draws.h"
#include "core/pour/play_remedies.h"
#include "core/pour/pour_changes.h"
#include "core/pour/pour_findings.h"

namespace yardcast {

namespace {

constexpr double kCautionChance = 0.10;
constexpr double kStopChance = 0.50;
/// A change is worth offering for a casting where it takes this share of its chance away, and more than the plays err.
constexpr double kWorthShare = 0.2;
constexpr std::size_t kMostOffered = 4;
constexpr double kSure95 = 1.96;
constexpr double kLongestEarlierH = 4.0;
constexpr int kStopEvery = 64;

/// Standard error of a share found by plays; that of k + 2 in n + 4 (Agresti and Coull 1998), so that none in n is not
/// taken for never.
double errorOf(int count, int plays)
{
    const double n = plays + 4.0;
    const double share = (count + 2.0) / n;
    return std::sqrt(share * (1 - share) / n);
}

/// The code of a change as a remedy, and under which key its value stands.
struct RemedyWords {
    const char* code;
    const char* valueKey;
};

RemedyWords remedyWords(PlayChange change)
{
    switch (change) {
    case PlayChange::none: break;
    case PlayChange::coolerWater: return {"play_cooler_water", "water_c"};
    case PlayChange::iceWater: return {"play_ice_water", "cooler_k"};
    case PlayChange::earlierStart: return {"play_earlier_start", "start_clock"};
    case PlayChange::splitDays: return {"play_split_days", "days"};
    case PlayChange::otherOrder: return {"play_other_order", "order"};
    case PlayChange::oneMoreHand: return {"play_one_more_hand", "people"};
    case PlayChange::largerMixer: return {"play_larger_mixer", "drum_l"};
    }
    return {"", ""};
}

/// One plan played.
struct Outcome {
    PourSchedule schedule;
    Played played;

    double chance(std::size_t task) const { return static_cast<double>(played.joints[task]) / played.plays; }
    double any() const { return static_cast<double>(played.any) / played.plays; }
    double worst() const
    {
        double most = 0.0;
        for (std::size_t i = 0; i < played.joints.size(); ++i) most = std::max(most, chance(i));
        return most;
    }
};

struct Candidate {
    TriedChange tried;
    std::map<std::string, double> chances;  ///< by casting
};

class Trials {
public:
    Trials(const PlayWorld& world, const Plan& plan, const std::vector<CastingPtr>& castings,
           const std::vector<MixQuantities>& quantities, int plays, std::uint64_t seed, std::stop_token stop,
           const PourSpread& spread)
        : world_(world), plan_(plan), castings_(castings), quantities_(quantities), plays_(plays), seed_(seed),
          stop_(std::move(stop)), spread_(spread)
    {
    }

    PourPlayPtr run()
    {
        base_ = play(plan_, quantities_);
        if (!base_) return nullptr;
        if (base_->played.any > 0) tryAll();
        if (stop_.stop_requested()) return nullptr;
        std::stable_sort(candidates_.begin(), candidates_.end(), [](const Candidate& a, const Candidate& b) {
            if (a.tried.anyChance != b.tried.anyChance) return a.tried.anyChance < b.tried.anyChance;
            return a.tried.worstChance < b.tried.worstChance;
        });

        auto result = std::make_shared<PourPlay>();
        result->plays = base_->played.plays;
        result->anyChance = base_->any();
        for (std::size_t i = 0; i < base_->schedule.tasks.size(); ++i) {
            result->castings.push_back({base_->schedule.tasks[i].casting->id, base_->chance(i),
                                        errorOf(base_->played.joints[i], base_->played.plays)});
        }
        for (const Candidate& candidate : candidates_) result->tried.push_back(candidate.tried);
        addFindings(*result);
        return result;
    }

private:
    /// Nothing when stopped or when there is nothing to pour.
    std::optional<Outcome> play(const Plan& plan, const std::vector<MixQuantities>& quantities) const
    {
        const WorkingByHour working(world_.weatherOf(plan), plan.pouring.value_or(Pouring{}).workingMinutes);
        Outcome outcome;
        outcome.schedule = schedulePours(plan, castings_, quantities, working);
        if (outcome.schedule.tasks.empty()) return std::nullopt;
        outcome.played = playSchedule(outcome.schedule, working, 0.0, plays_, seed_, spread_, stop_);
        if (outcome.played.plays == 0) return std::nullopt;
        return outcome;
    }

    static bool isBetter(const std::optional<Outcome>& a, const std::optional<Outcome>& b)
    {
        if (!a || !b) return a.has_value();
        return a->any() < b->any() || (a->any() == b->any() && a->worst() < b->worst());
    }

    void keep(PlayChange change, double value, const std::optional<Outcome>& outcome, std::string edit)
    {
        if (!outcome) return;
        Candidate candidate;
        candidate.tried = {change, value, outcome->worst(), outcome->any(), std::move(edit)};
        for (std::size_t i = 0; i < outcome->schedule.tasks.size(); ++i) {
            candidate.chances[outcome->schedule.tasks[i].casting->id] = outcome->chance(i);
        }
        candidates_.push_back(std::move(candidate));
    }

    void tryEdit(PlayChange change, double value, const Plan& changed)
    {
        keep(change, value, play(changed, quantities_), settingsPatch(plan_, changed));
    }

    void tryWater()
    {
        const double ownC = plan_.conditions.waterC;
        const double byWaterK = world_.coolsK(plan_, kCoolWaterC, 0.0);
        if (ownC > kCoolWaterC && byWaterK > 0.0) {
            tryEdit(PlayChange::coolerWater, kCoolWaterC, withWater(plan_, kCoolWaterC, byWaterK));
        }
        const double byIceK = world_.coolsK(plan_, ownC, kMostIceShare);
        if (byIceK > 0.0) tryEdit(PlayChange::iceWater, byIceK, withIce(plan_, 100 * kMostIceShare, byIceK));
    }

    void tryStart()
    {
        const double startH = base_->schedule.rules.startH;
        std::optional<Outcome> best;
        double bestH = 0.0;
        for (double earlier = 1.0; earlier <= kLongestEarlierH; earlier += 1.0) {
            const double hour = startH - earlier;
            if (hour < kEarliestWorkH) break;
            std::optional<Outcome> outcome = play(withStart(plan_, hour), quantities_);
            if (!isBetter(outcome, best)) continue;
            best = std::move(outcome);
            bestH = hour;
        }
        if (best) keep(PlayChange::earlierStart, bestH, best, settingsPatch(plan_, withStart(plan_, bestH)));
    }

    /// Shorter days, so that the last castings come into another morning.
    void trySplit()
    {
        double longestDay = 0.0;
        double longestCasting = 0.0;
        for (const ScheduledDay& day : base_->schedule.days) {
            longestDay = std::max(longestDay, day.slots.back().endMin);
            for (const PourSlot& slot : day.slots) {
                const double own = (slot.lastBatch - slot.firstBatch + 1) * base_->schedule.rules.batchMinutes +
                                   std::accumulate(slot.layMin.begin(), slot.layMin.end(), 0.0);
                longestCasting = std::max(longestCasting, own);
            }
        }
        const double halfHours = std::ceil(std::max(longestDay / 2, longestCasting) / 30 - 1e-9);
        const double hours = std::max(0.5, halfHours / 2);
        if (!(hours * 60 < longestDay)) return;
        const Plan changed = withHours(plan_, hours);
        const auto outcome = play(changed, quantities_);
        if (!outcome || outcome->schedule.days.size() <= base_->schedule.days.size()) return;
        keep(PlayChange::splitDays, static_cast<double>(outcome->schedule.days.size()), outcome,
             settingsPatch(plan_, changed));
    }

    /// Mixes stay together; what has to wait longest for its next batch first, or last.
    void tryOrder()
    {
        const std::vector<PourTask>& tasks = base_->schedule.tasks;
        std::vector<std::string> present;
        for (const PourTask& task : tasks) present.push_back(task.casting->id);
        std::optional<Outcome> best;
        std::vector<std::string> bestOrder;
        for (const double sign : {1.0, -1.0}) {
            std::map<std::string, double> mixGap;
            std::vector<std::pair<double, std::size_t>> byGap;
            for (std::size_t i = 0; i < tasks.size(); ++i) {
                const double gap = sign * longestGapMin(tasks[i], base_->schedule.rules);
                byGap.emplace_back(gap, i);
                const auto [found, isNew] = mixGap.emplace(tasks[i].casting->mix, gap);
                if (!isNew) found->second = std::max(found->second, gap);
            }
            std::stable_sort(byGap.begin(), byGap.end(), [&](const auto& a, const auto& b) {
                const std::string& mixA = tasks[a.second].casting->mix;
                const std::string& mixB = tasks[b.second].casting->mix;
                if (mixA == mixB) return a.first > b.first;
                if (mixGap[mixA] != mixGap[mixB]) return mixGap[mixA] > mixGap[mixB];
                return mixA < mixB;
            });
            std::vector<std::string> order;
            for (const auto& [gap, index] : byGap) order.push_back(tasks[index].casting->id);
            if (order == present || order == bestOrder) continue;
            std::optional<Outcome> outcome = play(withOrder(plan_, order), quantities_);
            if (!isBetter(outcome, best)) continue;
            best = std::move(outcome);
            bestOrder = std::move(order);
        }
        if (best) {
            keep(PlayChange::otherOrder, 0.0, best, settingsPatch(plan_, withOrder(plan_, std::move(bestOrder))));
        }
    }

    void tryCrewAndMixer()
    {
        if (const auto changed = withOneMoreHand(plan_)) {
            tryEdit(PlayChange::oneMoreHand, changed->crew.people, *changed);
        }
        const auto drumL = plan_.mixer ? nextDrumL(plan_.mixer->drumL) : std::optional(Mixer{}.drumL);
        if (!drumL) return;
        const Plan changed = withDrum(plan_, *drumL);
        std::vector<Finding> ignored;
        const std::vector<MixQuantities> quantities = mixQuantities(changed, castings_, ignored);
        keep(PlayChange::largerMixer, *drumL, play(changed, quantities), settingsPatch(plan_, changed));
    }

    void tryAll()
    {
        tryWater();
        tryStart();
        trySplit();
        tryOrder();
        tryCrewAndMixer();
    }

    void addFindings(PourPlay& result) const
    {
        for (const ScheduledDay& day : base_->schedule.days) {
            for (const PourSlot& slot : day.slots) {
                const CastingChance& is = result.castings[slot.task];
                // One that does not fit by its expected times has a finding of its own.
                if (!(is.chance > kCautionChance) || !slot.fits) continue;
                const int index = indexOfPart(plan_, base_->schedule.tasks[slot.task].casting->part);
                Finding finding{"cold_joint_likely",
                                is.chance > kStopChance ? Severity::stop : Severity::caution,
                                {is.casting},
                                index < 0 ? std::string() : "/parts/" + std::to_string(index),
                                {{"chance_percent", is.chance * 100},
                                 {"low_percent", std::max(0.0, is.chance - kSure95 * is.error) * 100},
                                 {"high_percent", std::min(1.0, is.chance + kSure95 * is.error) * 100},
                                 {"plays", static_cast<double>(result.plays)}},
                                remediesFor(is)};
                result.findings.push_back(std::move(finding));
            }
        }
    }

    std::vector<Remedy> remediesFor(const CastingChance& is) const
    {
        std::vector<std::pair<double, const Candidate*>> helping;
        for (const Candidate& candidate : candidates_) {
            const auto after = candidate.chances.find(is.casting);
            if (after == candidate.chances.end()) continue;
            const double gained = is.chance - after->second;
            const bool othersWorse = candidate.tried.anyChance > base_->any() + is.error;
            if (gained < kWorthShare * is.chance || gained < 2 * is.error || othersWorse) continue;
            helping.emplace_back(after->second, &candidate);
        }
        std::stable_sort(helping.begin(), helping.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
        if (helping.size() > kMostOffered) helping.resize(kMostOffered);
        std::vector<Remedy> remedies;
        for (const auto& [after, candidate] : helping) {
            Remedy remedy = remedyOf(candidate->tried);
            remedy.values["chance_after_percent"] = after * 100;
            remedy.values["chance_before_percent"] = is.chance * 100;
            remedy.values["plays"] = static_cast<double>(base_->played.plays);
            remedies.push_back(std::move(remedy));
        }
        return remedies;
    }

    const PlayWorld& world_;
    const Plan& plan_;
    const std::vector<CastingPtr>& castings_;
    const std::vector<MixQuantities>& quantities_;
    const int plays_;
    const std::uint64_t seed_;
    const std::stop_token stop_;
    const PourSpread& spread_;
    std::optional<Outcome> base_;
    std::vector<Candidate> candidates_;
};

/// How often a schedule may be played so that it ends.
int playsFor(const PourSchedule& schedule, int plays)
{
    double batches = 0.0;
    for (const ScheduledDay& day : schedule.days) batches += static_cast<double>(day.notBeforeMin.size());
    const double most = kMostPlayedBatches / std::max(1.0, batches);
    return std::max(1, static_cast<int>(std::min<double>(plays, std::max(50.0, most))));
}

}  // namespace

const char* playChangeWord(PlayChange change)
{
    switch (change) {
    case PlayChange::none: return "none";
    case PlayChange::coolerWater: return "cooler_water";
    case PlayChange::iceWater: return "ice_water";
    case PlayChange::earlierStart: return "earlier_start";
    case PlayChange::splitDays: return "split_days";
    case PlayChange::otherOrder: return "other_order";
    case PlayChange::oneMoreHand: return "one_more_hand";
    case PlayChange::largerMixer: return "larger_mixer";
    }
    return "";
}

Remedy remedyOf(const TriedChange& tried)
{
    const RemedyWords words = remedyWords(tried.change);
    return {words.code, {{words.valueKey, tried.value}}, tried.edit, {}};
}

Played playSchedule(const PourSchedule& schedule, const WorkingByHour& working, double coolerC, int plays,
                    std::uint64_t seed, const PourSpread& spread, std::stop_token stop)
{
    const LogNormal batchSpread(spread.batchShare);
    const LogNormal layingSpread(spread.layingShare);
    const LogNormal workingSpread(spread.workingShare);
    const int count = playsFor(schedule, plays);
    Played played;
    played.joints.assign(schedule.tasks.size(), 0);
    std::vector<double> readyMin;
    std::vector<double> layFactor;
    for (int play = 0; play < count; ++play) {
        if (play % kStopEvery == 0 && stop.stop_requested()) return {};
        const PlayDraws draws(seed, static_cast<std::uint64_t>(play));
        bool any = false;
        std::uint64_t batch = 0;
        std::uint64_t calendarDay = 0;
        for (const ScheduledDay& day : schedule.days) {
            calendarDay += static_cast<std::uint64_t>(std::max(0, day.afterDays));
            const double airK = spread.airC > 0.0 ? spread.airC * draws.normal(Draw::air, calendarDay) : 0.0;
            // Half as long for each 10 K more, as workingMinutes has it.
            double share = ownExp((coolerC - kFollowsAir * airK) / 10 * 0.693147180559945309);
            if (spread.workingShare > 0.0) share *= workingSpread.at(draws.normal(Draw::working, calendarDay));

            readyMin.clear();
            layFactor.clear();
            double now = 0.0;
            for (std::size_t i = 0; i < day.notBeforeMin.size(); ++i) {
                double minutes = schedule.rules.batchMinutes;
                if (spread.batchShare > 0.0) minutes *= batchSpread.at(draws.normal(Draw::batch, batch));
                if (spread.slipShare > 0.0 && draws.share(Draw::slip, batch) < spread.slipShare) minutes *= kSlipFactor;
                now = std::max(now, day.notBeforeMin[i]) + minutes;
                readyMin.push_back(now);
                const bool lays = day.layMin[i] > 0.0 && spread.layingShare > 0.0;
                layFactor.push_back(lays ? layingSpread.at(draws.normal(Draw::laying, batch)) : 1.0);
                now += day.layMin[i] * layFactor.back();
                ++batch;
            }
            double madeMin = 0.0;
            int madeBatch = -1;
            for (const PourSlot& slot : day.slots) {
                bool joint = false;
                // What is left of a batch waits until the casting before it is done.
                const bool begun = slot.firstBatch == madeBatch;
                for (std::size_t i = 0; i < slot.layMin.size() && !joint; ++i) {
                    const std::size_t placed = static_cast<std::size_t>(slot.firstBatch) + i;
                    const double goesIn = i == 0 && begun ? std::max(madeMin, readyMin[placed]) : readyMin[placed];
                    const double gap = i < slot.covered.size()
                                           ? readyMin[placed + static_cast<std::size_t>(slot.covered[i])] - goesIn
                                           : slot.layMin[i] * layFactor[placed];
                    joint = gap > working.at(day.startH + goesIn / 60) * share + 1e-9;
                }
                madeBatch = slot.lastBatch;
                const auto last = static_cast<std::size_t>(slot.lastBatch);
                madeMin = readyMin[last] + slot.layMin.back() * layFactor[last];
                if (!joint) continue;
                ++played.joints[slot.task];
                any = true;
            }
        }
        played.any += any ? 1 : 0;
    }
    played.plays = count;
    return played;
}

PourPlayPtr playPourIn(const PlayWorld& world, const Plan& plan, const std::vector<CastingPtr>& castings,
                       const std::vector<MixQuantities>& quantities, int plays, std::uint64_t seed,
                       std::stop_token stop, const PourSpread& spread)
{
    return Trials(world, plan, castings, quantities, std::max(1, plays), seed, std::move(stop), spread).run();
}

}  // namespace yardcast
