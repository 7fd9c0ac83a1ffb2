#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/plan.h"

/// What would help when hands are not enough.
namespace yardcast {

enum class LiftMeans { morePeople, joint, foamCore, trolley, straps, hoist };
/// "more_people", "joint", "foam_core", "trolley", "straps", "hoist"
const char* liftMeansWord(LiftMeans means);

struct MeansAdvice {
    LiftMeans means = LiftMeans::trolley;
    double massKg = 0.0;      ///< after it (joint, foam core): of the heaviest piece; else as it is
    int people = 0;           ///< needed with it by the rule it goes by; 0: more than kMostPeople
    double kgEach = 0.0;      ///< what one of them bears, or one of two slings; trolley: what tilting it up takes in all
    bool enough = false;      ///< those who lift it can then
    int joints = 0;           ///< joint
    bool overSupport = false; ///< joint: all lie over a support
    double foamMm = 0.0;      ///< foam core: its thickness
    std::string edit;         ///< RFC 6902 patch, where it is an edit of the plan
};

/// Spread of the slings of a hoist, degrees between them; its pull is taken by two of four (from memory).
inline constexpr double kSlingSpreadDeg = 60.0;

/// Pull that tilts the flat piece up about its longest straight side, kg: by the levers of its centre and of its far side.
double tiltKg(const Casting& casting);

/// Where supports and panels bear counters. The plan must outlive it.
class Rests {
public:
    explicit Rests(const Plan& plan);
    /// Boxes, in the counter's own frame, of what lies right under its underside; none for what is no counter.
    std::vector<Box> under(const Part& counter) const;

private:
    struct Rest {
        Box box;          ///< plan axes
        double highMm;
        const Part* part;
    };
    const Plan& plan_;
    std::vector<Rest> rests_;   ///< by their low x
    double widestMm_ = 0.0;
};

/// The fewest straight joints right across a casting of a counter so that no piece is over `limitKg`: not through a cutout
/// nor nearer than kLeastStripMm to one, over a rest where that costs no joint more, across the shorter way, pieces of as even mass
/// as can be. Tried: the pieces are those that `castingsOf` makes of the part with them; none may bring a stop of validation,
/// and each must stand on two rests with its centre of gravity between them (where the whole casting does). Nothing where at most
/// kMostJoints do not do it, or for what is no counter.
struct JointProposal {
    std::vector<Joint> joints;
    double heaviestKg = 0.0;
    bool overSupport = false;  ///< every one
};
inline constexpr std::size_t kMostJoints = 5;
std::optional<JointProposal> proposeJoints(const Part& part, const Casting& casting, double limitKg,
                                           const std::vector<Box>& rests);

/// The least foam core of a support or panel, in thicknesses that foam comes in, that brings it to `limitKg`; the largest
/// that leaves kLeastWallMm of concrete beside it where none does. Tried with `castingsOf`. Nothing where there is no room
/// or no kilogram to gain.
struct CoreProposal {
    Core core;
    double massKg = 0.0;
};
std::optional<CoreProposal> proposeCore(const Part& part, double limitKg);

/// The edits as RFC 6902 patches on the plan's file; `part` is the index in its parts.
std::string jointPatch(std::size_t part, const Counter& counter, const std::vector<Joint>& joints);
std::string corePatch(std::size_t part, bool hasCore, const Core& core);

}  // namespace yardcast
