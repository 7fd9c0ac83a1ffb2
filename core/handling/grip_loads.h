#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/geometry/point.h"
#include "core/plan/plan.h"

/// Who bears how much of a casting.
namespace yardcast {

struct GripLoad {
    Point at;                 ///< own frame
    double kg = 0.0;          ///< carried flat: by statics; with more than three grips those of a rigid piece on equal springs
};
/// Loads at the grips of a flat piece about its centre of gravity. Negative: the piece tips there. Empty where fewer than
/// two grips, or all in one point. Sum = mass to 1e-9 where they hold it.
std::vector<GripLoad> gripLoads(const std::vector<Point>& grips, Point centroid, double massKg);

/// What would help when hands are not enough.
enum class LiftMeans { trolley, straps, hoist, joint, foamCore, thinner, morePeople };
struct MeansAdvice {
    LiftMeans means = LiftMeans::trolley;
    double massKg = 0.0;      ///< after it (joint, foam core, thinner): of the heaviest piece; else as it is
    int people = 0;           ///< needed with it
    std::string edit;         ///< RFC 6902 patch, where it is an edit of the plan
};

}  // namespace yardcast
