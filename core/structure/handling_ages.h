#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

#include "core/materials/concrete_strength.h"
#include "core/structure/handling_search.h"
#include "core/structure/strength.h"

namespace yardcast {

struct Holders;

/// Where hands take hold of a casting in all ways of handling it.
struct ChosenHands {
    std::vector<Point> grips;        ///< of the plan, or proposed
    bool gripsProposed = false;
    std::optional<FoundTilt> tilt;   ///< nothing where no way of tilting it holds, or it is cast upright
    /// By what hands and edge they are, not by how much they bear.
    friend bool operator==(const ChosenHands& a, const ChosenHands& b);
};
/// As `solveStrength` chose them. Nothing where that has no cases of handling.
std::optional<ChosenHands> handsOf(const StrengthInput& input, const CastingStrength& strength);

/// A casting in its ways of handling (suction, tilt, carriedFlat, carriedOnEdge) at any age: one mesh, one
/// factorisation. The forces between piece, hands and edge follow the stiffness of the age; at the age at which it is
/// lifted the uses are those of `handlingCases`.
class HandlingAges {
public:
    /// With these hands, or those that `handlingCases` would choose at the input's age of lifting. Null where it cannot
    /// be meshed or solved, or `stop` was asked.
    static std::unique_ptr<HandlingAges> make(const StrengthInput& input, Refinement refinement,
                                              std::optional<ChosenHands> hands = {}, std::stop_token stop = {});
    ~HandlingAges();

    struct Use {
        bool holds = false;          ///< false: it tips or nothing holds it; the rest is 0 then
        double usePercent = 0.0;     ///< of `fctk005Mpa` times the flexural factor over the safety against cracking
        double tensionMpa = 0.0;
        PlaceName place;
    };
    /// Concrete of that stiffness and that strength. Nothing for ways that make no sense for the casting.
    std::optional<Use> use(StrengthCase which, double elasticMpa, double fctk005Mpa);

    const ChosenHands& hands() const { return hands_; }

private:
    HandlingAges();
    void addLoads();
    FreeBody::State hold(const Holders& holders, double factor, double suctionKpa = 0.0) const;

    std::shared_ptr<const Body> body_;
    std::unique_ptr<HandledBody> handled_;
    ChosenHands hands_;
    std::unique_ptr<Holders> grips_;
    std::unique_ptr<Holders> tilt_;
    std::unique_ptr<Holders> below_;
    std::optional<StandingEdge> edge_;
    int weightAlong_ = -1;
};

}  // namespace yardcast
