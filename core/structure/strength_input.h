#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/materials/temperature_course.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

/// Where a support, a panel or another thing bears a casting: its footprint brought to the casting's own frame.
struct Rest {
    std::string under;          ///< id of the part below
    Region footprint;           ///< what of it lies under the casting
    Region bearing;             ///< what of that the concrete touches: only zones as deep as the rest reaches
    double lengthMm = 0.0;      ///< bearing length: how far the casting reaches over it, across its long side
    friend bool operator==(const Rest&, const Rest&) = default;
};

struct PressingLoad {
    std::string name;
    Region region;              ///< own frame
    double massKg = 0.0;
    bool appliance = false;     ///< an appliance that stands on it (else one of the counter's `loads`)
    friend bool operator==(const PressingLoad&, const PressingLoad&) = default;
};

/// Everything the strength of one casting depends on, and nothing else: equal inputs need no new solving.
struct StrengthInput {
    CastingPtr casting;
    PartBody body;                      ///< of its part: outline, cutouts with ids, steel, pads, cast
    std::vector<Rest> rests;            ///< counters
    std::vector<PressingLoad> loads;    ///< counters
    double carriedN = 0.0;              ///< supports: what the counters above put on it, with its place along own x
    double carriedAtMm = 0.0;
    std::string strengthClass;          ///< that the mix is taken for, see core/pour/mix_concrete.h
    double likelyShare = 1.0;           ///< of its strength, after a trial batch that was too wet
    double cautiousShare = 1.0;         ///< what the water supports of it; hours only
    CementSpeed cementSpeed = CementSpeed::normal;
    double maxAggregateMm = 0.0;
    bool fibres = false;
    TemperatureCourse course;           ///< while it hardens
    double liftAgeH = kDefaultLiftAgeH;
    int people = 2;
    std::vector<Point> grips;           ///< empty: to be proposed
    Assumptions assumptions;

    friend bool operator==(const StrengthInput& a, const StrengthInput& b);
};

/// From this age on, 28 days, concrete has the strength of its class, whatever the temperature was.
inline constexpr double kFullAgeH = 28 * 24.0;
/// The concrete it is cast of, likely; nothing where its class is none.
std::optional<ConcreteProperties> concreteOf(const StrengthInput& input);
/// The concrete of the input at an age: by its course until `kFullAgeH`, then at 28 days. All zero where its class is
/// none.
StrengthAtAge concreteAtAge(const StrengthInput& input, double ageH);

/// What one person puts on a counter, by what the plan assumes and how the counter is used.
double personLoadN(const StrengthInput& input);
/// A finding about the casting: its subjects are the casting and, where that is another id, its part.
Finding findingAbout(const StrengthInput& input, std::string code, Severity severity);

/// One input a casting, in the order of `castings`. Cheap (no solving): what changes with a drag is seen by
/// comparing inputs.
std::vector<StrengthInput> strengthInputs(const Plan& plan, const std::vector<CastingPtr>& castings);

}  // namespace yardcast
