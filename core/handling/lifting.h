#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/handling/grip_loads.h"
#include "core/handling/lift_means.h"
#include "core/handling/niosh.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

/// By what the limit of one person goes.
enum class LimitRule {
    plan,          ///< the plan's own limit each, and the team factor
    reference25,   ///< EN 1005-2, ISO 11228-1: 25 kg, general working population; team factor
    reference15,   ///< the same, 15 kg: general population at home (from memory); team factor
    niosh          ///< recommended weight limit of the NIOSH equation for each of the team, see `pieceLift`
};
/// "plan", "reference_25", "reference_15", "niosh"
const char* limitRuleWord(LimitRule rule);
struct RuleLimit {
    LimitRule rule = LimitRule::plan;
    double eachKg = 0.0;
    double teamKg = 0.0;   ///< of those who lift the casting
    int people = 0;        ///< the mass needs; 0: more than kMostPeople
    bool inUse = false;    ///< findings go by it: exactly one of a casting
};

struct CastingLift {
    std::string casting;
    double massKg = 0.0;
    int people = 0;          ///< needed by the plan's limit each and the team factor; 0 where more than kMostPeople
    int guidelinePeople = 0; ///< the same without that bound; 0 where the limit is no number
    int crewPeople = 0;      ///< who lift it: lift.people, or the crew
    double limitKg = 0.0;    ///< what those can lift: the mass that they could carry
    std::vector<Point> grips;  ///< own frame, those of the plan that lie on it
    Point centroid;          ///< own frame; uprights lying on their large face: own x and height above the base
    double eachKg = 0.0;     ///< mass over people; 0 for nobody
    double tiltKg = 0.0;     ///< pull that tilts it up, see `tiltKg`
    std::vector<GripLoad> loads;   ///< at the plan's own grips; empty where it has none
    std::vector<RuleLimit> limits;
    std::vector<MeansAdvice> means;  ///< where it is over the limit; gentle ones first
    std::vector<std::string> alike;  ///< other castings of the same kind and mass that fewer hands cannot lift either

    /// Loads at the plan's grips, or at those proposed where it has none.
    std::vector<GripLoad> loadsAt(const std::vector<Point>& proposed) const;
    const RuleLimit* find(LimitRule rule) const;
};

/// Share of the summed limits a team can lift: 1, 2/3 for two, 1/2 for three (HSE L23). For four and more no factor
/// is published; 1/2 is kept (judgement).
double teamFactor(int people);
double teamLimitKg(int people, double limitEachKg);
/// Least number of people whose team limit carries the mass; 0 when more than `kMostPeople` would be needed.
int peopleNeeded(double massKg, double limitEachKg);
inline constexpr int kMostPeople = 8;
/// The same without that bound: by the factor for many. 0 when the limit is not positive or the count is no number.
int peopleByGuideline(double massKg, double limitEachKg);

/// What is taken for the NIOSH equation, stated wherever its figure stands: hands 40 cm before the ankles because the edge of a
/// slab keeps the body away, from a bench 75 cm high, 25 cm up, no twist, less than one lift in five minutes, an hour at most;
/// no handles (straps and lifting handles: good coupling). Our choice; the equation is written for one lifter.
NioshLift pieceLift(bool handles = false);

/// What was proposed for castings before, so that a drag elsewhere finds it again. Not thread-safe.
class LiftMemo {
public:
    LiftMemo();
    ~LiftMemo();
    LiftMemo(LiftMemo&&) noexcept;
    LiftMemo& operator=(LiftMemo&&) noexcept;

private:
    struct Known;
    std::unique_ptr<Known> known_;
    friend class LiftPlanner;
};

/// A caution past what those who lift can lift, a stop past twice that: once for castings that are alike, all of them the
/// first subjects (`count` of them), then their parts. Remedies: `joint_added` and `core_added` with their edits for all of
/// them, `trolley_used` and `hoist_used` as advice. `grip_heavy` where the plan's own grips let one person
/// bear more than the limit each though the crew could lift it.
std::vector<CastingLift> liftings(const Plan& plan, const std::vector<CastingPtr>& castings,
                                  std::vector<Finding>& findings, LiftMemo* memo = nullptr);

}  // namespace yardcast
