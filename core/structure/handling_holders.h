#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/structure/handled_body.h"
#include "core/structure/handling_search.h"

/// Who and what holds a casting in the cases of handling: loads of unit size on its body, with words for the answer.
/// For core/structure only.
namespace yardcast {

/// Where both moments of a beam on two supports are equal: 0.0214 w L2 over them and between them.
inline constexpr double kBattenShare = 0.207;

struct Holders {
    struct Named {
        std::string under;
        std::vector<FreeBody::Place> places;
        std::vector<Region> regions;
    };
    std::vector<Named> all;

    std::vector<FreeBody::Place> places() const;
};

/// What each of them holds in a state; the state is of just these places.
std::vector<HeldAt> heldBy(const Holders& holders, const FreeBody::State& state);

Holders handsAt(HandledBody& handled, const std::vector<Point>& points, Point along);
/// The edge it turns about and the hands that lift.
Holders tiltHolders(HandledBody& handled, const FoundTilt& tilt);
/// Hands below the lower edge on both sides of the weight, near the fifth points where that lies in the middle; at the
/// height of the mass, so that it hangs straight. `weightAlong` is the load of the weight towards that edge.
Holders handsBelow(HandledBody& handled, const StandingEdge& edge, int weightAlong);
/// The edge it stands on where no way of tilting was found.
std::optional<StandingEdge> edgeToStandOn(const StrengthInput& input);

}  // namespace yardcast
