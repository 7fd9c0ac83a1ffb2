#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

#include "core/structure/body.h"

namespace yardcast {

/// What people do to a casting between mould and place.
struct HandlingAnswer {
    std::vector<CaseResult> cases;   ///< in the order of StrengthCase; those that make sense for it
    std::vector<Point> grips;        ///< of the plan, or proposed (none for what is cast upright)
    bool gripsProposed = false;
    std::vector<Point> tiltHands;    ///< of the case tilt, own frame
    std::vector<Finding> findings;   ///< subjects: casting, part
};

/// All cases at the age at which it is lifted (`liftAgeH`), its stiffness and strength those of that age; the face or
/// front lies on the mould unless the plan says otherwise.
/// - suction: lifted flat off the base by the grips, own weight and the suction of the mould's surface, no factor
///   beside (CEN/TR 15728 and VDI/BV-BS 6205, from memory). What holds on to sides and formers is not in it: they are
///   taken off first. Counters and panels.
/// - tilt: about a long outer edge (`CaseResult::edge`, of the casting's outline), lifted along the opposite edge,
///   still flat: nothing later is worse. Own weight times the stripping factor. The best edge and hands are found on
///   a draft.
/// - carriedFlat: by the grips, times the handling factor; the worse of face down and face up (only face up where it
///   was cast so).
/// - carriedOnEdge: standing on the edge of `tilt`, hands below that edge.
/// - setDown: face up on two battens, under the outermost rests where there are two, else at 0.207 of its length from
///   the ends, where a beam suffers least.
/// - cornerLate: on the ends of the same battens, one of the four lower by `lateCornerMm`; the worst of the four.
/// Hands press and never pull, and give way by `kHandNMm`. Deflections leave out what hands and beds sink.
/// `body` is the casting as meshed for `refinement`. Nothing when `stop` was asked; no cases where it cannot be solved.
std::optional<HandlingAnswer> handlingCases(const StrengthInput& input, const std::shared_ptr<const Body>& body,
                                            Refinement refinement, std::stop_token stop = {});

}  // namespace yardcast
