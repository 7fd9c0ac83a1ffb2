#pragma once

#include <string>
#include <vector>

#include "core/structure/strength.h"
#include "tests/property/random_plan.h"

/// Slabs whose cutout is dragged across rests, rims and towards edges in small steps.
namespace yardcast::random {

/// A counter on two to four walls, with a sink that is dragged and at times a rim, ribs, a load.
class DraggedKitchen {
public:
    /// Everything follows from the number.
    explicit DraggedKitchen(std::uint32_t number);

    /// The slab with its sink `steps` steps of `kStepMm` from where it began.
    StrengthInput at(double steps) const;

    static constexpr int kSteps = 6;
    static constexpr double kStepMm = 0.5;

private:
    Counter counter_;
    double length_ = 0.0;
    double depth_ = 0.0;
    double deep_ = 0.0;
    double wallMm_ = 0.0;
    std::vector<double> walls_;
    Size size_;
    double radius_ = 0.0;
    Point from_;
    Point along_;
};

/// A figure of an answer, and what its change is measured against.
struct DragFigure {
    std::string kind;   ///< "deflection", "rest", "moment", "own use", "person use"
    std::string name;   ///< the same in each step
    double value = 0.0;
    double scale = 0.0;
};

std::vector<DragFigure> dragFigures(const CastingStrength& strength);

/// The greatest change of each kind of figure in one step, as a share.
struct DragJump {
    std::string kind;
    std::string name;
    double share = 0.0;
    /// What of it is no slope. A strip that a drag makes narrower bends more with every step, and a rest that is nearly
    /// left carries less: such changes shrink with the step, jumps do not. Where `share` is more than `kLookedInto` the
    /// step is halved `kHalvings` times, always towards the half that changes more; this is what the last one changes.
    double jump = 0.0;

    static constexpr double kLookedInto = 0.01;
    static constexpr int kHalvings = 4;
};
std::vector<DragJump> jumpsBetween(const std::vector<DragFigure>& before, const std::vector<DragFigure>& now);

/// One slab, dragged.
struct Drag {
    std::vector<std::vector<DragJump>> steps;
    std::string trouble;            ///< why a step could not be solved; empty when all were
    double leastAngleDeg = 180.0;   ///< of any triangle of any step
};
Drag drag(std::uint32_t number, Refinement refinement);

}  // namespace yardcast::random
