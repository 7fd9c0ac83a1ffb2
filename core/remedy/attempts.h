#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/structure/strength.h"

namespace yardcast {

/// An edit that may help, not yet tried.
struct Attempt {
    std::string code;                            ///< of the remedy, e.g. "thicker"
    std::map<std::string, FindingValue> values;  ///< for its sentence
    Plan after;
};

/// True for findings that editing the casting may clear: those that its strength gives.
bool isWorthTrying(const Finding& finding);

/// A bounded set (at most some twenty) of edits for one finding about one casting, gentle ones first:
///
/// | code           | values                  | means                                                            |
/// | -------------- | ----------------------- | ---------------------------------------------------------------- |
/// | wait_longer    | age_h                   | handled later: from `wait_h` on where that is known, else several |
/// | grips_proposed |                         | the plan's grips are taken out, those proposed serve             |
/// | carry_on_edge  |                         | where carrying it flat is too much                               |
/// | more_people    | people                  |                                                                  |
/// | thicker        | by_mm, thickness_mm     | 5 to 20 mm; the face stays, what stands below is shortened       |
/// | rim_added      | depth_mm, width_mm      |                                                                  |
/// | rim_deeper     | by_mm, depth_mm         |                                                                  |
/// | cutout_rim     | cutout, width_mm        |                                                                  |
/// | rib_added      | width_mm, x_mm          | from front to back, at the worst place or where a span is widest |
/// | rib_over       | under, width_mm         | along a support that the thin field does not touch               |
/// | cutout_moved   | cutout, by_mm           | away from the narrow strip                                       |
/// | support_added  | x_mm                    | a copy of the nearest one                                        |
/// | support_moved  | support, by_mm          | towards the worst place; below 0 to the left                     |
/// | bars_added     | count, diameter_mm      | in the strip, on the side that is pulled                         |
/// | steel_to_side  | cover_mm                | the mesh to the side that is pulled                              |
std::vector<Attempt> attemptsFor(const Plan& plan, const CastingStrength& strength, const Finding& finding);

/// The counter made deeper or shallower without moving its face: `change` edits it, and what bears it from below
/// (within the play that bedding allows) is cut or raised by as much.
Plan changeDepth(const Plan& plan, const std::string& counter, const std::function<void(Counter&)>& change);

}  // namespace yardcast
