#pragma once

#include "core/cutting/bar_kinds.h"
#include "core/cutting/bar_pricing.h"

/// Of plans that cost the same, the one that is easier to cut and leaves more that is of use.
namespace yardcast::bars {

/// A plan of the same bars with fewer different patterns, where one is found: the fullest pattern that goes in most
/// often, again and again, for several shares of waste a bar may have (after Haessler, Operations Research 23, 1975,
/// 483-493; from memory); then any three or four patterns that one or two can stand for, decided by trying. Never more
/// patterns than before, but not proven to be the fewest.
Solution withFewerPatterns(const BarKinds& kinds, const Solution& solution, PatternPricer& pricer);

/// Moves and exchanges pieces between the bars that are cut like no other, so that what is left lies in few long rests.
Solution withLongerRests(const BarKinds& kinds, const Solution& solution);

}  // namespace yardcast::bars
