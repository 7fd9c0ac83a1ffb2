#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

#include "core/plan/finding.h"
#include "core/plan/mix.h"

/// Edits of one mix that clear what is said about it: each is tried on the mix before it is offered.
namespace yardcast {

/// The most water from the tap that keeps a ratio (silica fume counted): into a bag, or into a m3 of a recipe; l.
/// Not below 0. The mix must be usable.
double mostWaterL(const Mix& mix, double mostRatio);
/// Less water and more cement, as far as either keeps the ratio and stays in bounds. No less water where a trial batch
/// says what went in.
std::vector<Remedy> ratioRemedies(const Mix& mix, std::size_t index, double mostRatio);
/// The least more cement (0.1 % of the bag, 1 kg in a m3) with which `clears` holds: none or one.
std::vector<Remedy> cementRemedies(const Mix& mix, std::size_t index, const std::function<bool(const Mix&)>& clears);
/// The share set to the most there may be.
Remedy plasticiserRemedy(std::size_t index, double percent);
/// One for each class that a text can mean.
std::vector<Remedy> classRemedies(std::size_t index, const std::vector<std::string>& names);
Remedy pigmentRemedy(std::size_t index, double percent);

}  // namespace yardcast
