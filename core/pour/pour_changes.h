#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/plan.h"

/// What can be changed about a pour, as edits from Plan to Plan. Inner seam of core/pour.
namespace yardcast {

/// So many minutes of a batch the drum has to turn, however many hands there are; the rest is shared among them. Common
/// practice, no source.
inline constexpr double kTurningMinutes = 4.0;

/// What one more hand makes of a batch's minutes.
double minutesWithOneMore(double batchMinutes, int people);
/// What batches of another size make of them: filling and emptying take as much longer as there is more of it.
double minutesOfBatch(double batchMinutes, double fromL, double toL);
/// The next common drum (our list of round sizes, no source), or nothing beyond the largest.
std::optional<double> nextDrumL(double drumL);
inline constexpr double kCommonDrumsL[] = {63.0, 85.0, 125.0, 150.0, 200.0, 250.0, 350.0};

Plan withStart(const Plan& plan, double startH);
Plan withHours(const Plan& plan, double hours);
/// The concrete comes out so much cooler by it.
Plan withWater(const Plan& plan, double waterC, double coolerK);
/// A share of the mixing water as ice, percent; the concrete comes out so much cooler by it.
Plan withIce(const Plan& plan, double icePercent, double coolerK);
Plan withOrder(const Plan& plan, std::vector<std::string> order);
/// Nothing without a mixer, whose minutes are the plan's.
std::optional<Plan> withOneMoreHand(const Plan& plan);
/// A plan that mixes by hand gets the first common drum.
Plan withDrum(const Plan& plan, double drumL);

/// The edit between two plans that differ outside their parts only, as RFC 6902 patch.
std::string settingsPatch(const Plan& before, const Plan& after);

}  // namespace yardcast
