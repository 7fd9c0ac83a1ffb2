#pragma once

#include <cstdint>
#include <memory>
#include <stop_token>
#include <string>
#include <vector>

#include "core/pour/pour_plan.h"

/// The pour played through many times: how likely is a cold joint, and what lowers it most.
namespace yardcast {

/// What varies from play to play; all our estimates, no source, shown as such.
struct PourSpread {
    double batchShare = 0.25;       ///< standard deviation of a batch's minutes, share of the mean (log-normal)
    double slipShare = 0.03;        ///< of batches that go wrong and take kSlipFactor as long
    double workingShare = 0.20;     ///< standard deviation of the working time, share (log-normal), one draw a day
    double airC = 2.0;              ///< standard deviation of the day's temperature
    double layingShare = 0.25;      ///< of the minutes for laying steel or foam, as of a batch's
};
inline constexpr double kSlipFactor = 3.0;

struct CastingChance {
    std::string casting;
    double chance = 0.0;            ///< of a cold joint, 0 to 1
    double error = 0.0;             ///< standard error of that from the count of plays; above 0 also where none in n was
};

enum class PlayChange { none, coolerWater, iceWater, earlierStart, splitDays, otherOrder, oneMoreHand, largerMixer };
/// "none", "cooler_water", "ice_water", "earlier_start", "split_days", "other_order", "one_more_hand", "larger_mixer".
const char* playChangeWord(PlayChange change);
/// One change that was tried.
struct TriedChange {
    PlayChange change = PlayChange::none;
    double value = 0.0;             ///< deg C of the water, K that ice cools, hour of start, days, people, drum in l
    double worstChance = 0.0;       ///< the greatest of all castings
    double anyChance = 0.0;         ///< that at least one casting has a cold joint
    std::string edit;               ///< RFC 6902 patch of the plan, empty where it is no edit
};

struct PourPlay {
    int plays = 0;
    std::vector<CastingChance> castings;   ///< in the order of pouring
    double anyChance = 0.0;
    std::vector<TriedChange> tried;        ///< the best first
    std::vector<Finding> findings;         ///< cold_joint_likely (caution above 10 %, stop above 50 %), remedies included
};
using PourPlayPtr = std::shared_ptr<const PourPlay>;

/// Equal inputs give equal answers: the generator is seeded by `seed` and has its own arithmetic. Each change is played
/// with the same draws (common random numbers), so differences are differences. Changes are tried only where some play
/// had a cold joint. Null when stopped, or when there is nothing to pour.
PourPlayPtr playPour(const Plan& plan, const std::vector<CastingPtr>& castings,
                     const std::vector<MixQuantities>& quantities, int plays = 2000, std::uint64_t seed = 1,
                     std::stop_token stop = {}, const PourSpread& spread = {});

}  // namespace yardcast
