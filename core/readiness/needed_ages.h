#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/structure/handling_ages.h"
#include "core/structure/strength.h"
#include "core/structure/strength_input.h"

/// How old a casting has to be for each way of handling, in days at 20 deg C: neither weather nor the plan's own hour
/// matters to it.
namespace yardcast {

enum class HandlingWay { strip, tilt, carryFlat, carryOnEdge };
inline constexpr HandlingWay kHandlingWays[] = {HandlingWay::strip, HandlingWay::tilt, HandlingWay::carryFlat,
                                                HandlingWay::carryOnEdge};
const char* handlingWayWord(HandlingWay way);  ///< "strip", "tilt", "carry_flat", "carry_on_edge"
/// The case of the solver that decides; strip: being broken loose from the base flat, by the grips.
StrengthCase caseOfWay(HandlingWay way);

/// Days at 20 deg C (eq. B.10), infinity where the strength of the class is not enough.
struct NeededAge {
    HandlingWay way = HandlingWay::strip;
    double likelyDays = 0.0;    ///< where the mean tensile strength, the safety taken off, bears the tension
    double cautiousDays = 0.0;  ///< where its 5 % fractile does: use of 100 %
    double tensionMpa = 0.0;    ///< greatest, at the cautious age (at 28 days where it never holds)
    PlaceName place;            ///< of it
    /// It would hold earlier, but the mould stays on until the compressive strength is `Assumptions::stripMpa`: likely the
    /// mean of it, cautiously what is counted on of that (`cautiousStripDays`). Nothing is lifted out of a mould before.
    bool byCompression = false;
    bool possible = true;       ///< false: nothing holds it that way (no long edge, tips)
};

struct CastingAges {
    std::vector<NeededAge> ways;   ///< in the order of kHandlingWays; those that make no sense are left out
    std::string whyNot;            ///< as CastingStrength's; empty when solved
};
using CastingAgesPtr = std::shared_ptr<const CastingAges>;

/// Found on one mesh, with these hands or those the solver chooses at the input's age of lifting: tension depends on
/// the age only through the stiffness against hands and edges, so the age follows from the tension, and the tension
/// again at that age, until it moves by less than a thousandth of a day. Null when stopped. Pure.
CastingAgesPtr neededAges(const StrengthInput& input, Refinement refinement,
                          const std::optional<ChosenHands>& hands = {}, std::stop_token stop = {});

}  // namespace yardcast
