#pragma once

#include <cstdint>
#include <functional>
#include <stop_token>
#include <vector>

#include "core/pour/pour_play.h"
#include "core/pour/pour_schedule.h"

/// Playing a pour through and trying changes. Inner seam of core/pour: `playPour` gives it the weather.
namespace yardcast {

/// What the plays came to.
struct Played {
    int plays = 0;
    std::vector<int> joints;    ///< plays with a cold joint, one a task of the schedule
    int any = 0;                ///< plays with a cold joint in some casting
};
/// `coolerC`: by how much the concrete is cooler than `working` has it. Empty (no plays) when stopped.
Played playSchedule(const PourSchedule& schedule, const WorkingByHour& working, double coolerC, int plays,
                    std::uint64_t seed, const PourSpread& spread, std::stop_token stop);

/// Water kept in a fridge or beside ice; common practice, no source.
inline constexpr double kCoolWaterC = 5.0;
/// More than this many batches in all are played fewer times, so that it ends.
inline constexpr double kMostPlayedBatches = 4e6;

struct PlayWorld {
    std::function<PourWeather(const Plan&)> weatherOf;
    /// How much cooler the concrete gets with water of `waterC`, at least a share of it as ice, than with the plan's own water, K;
    /// 0 where that is not known.
    std::function<double(const Plan&, double waterC, double iceShare)> coolsK;
};
PourPlayPtr playPourIn(const PlayWorld& world, const Plan& plan, const std::vector<CastingPtr>& castings,
                       const std::vector<MixQuantities>& quantities, int plays, std::uint64_t seed,
                       std::stop_token stop, const PourSpread& spread);

}  // namespace yardcast
