#pragma once

#include <optional>

#include "core/plan/plan.h"

/// What a newly drawn thing is like: sensible defaults, so that a first counter is one drag. All points are plan mm.
namespace yardcast::ui {

inline constexpr double kCounterTopMm = 900.0;
inline constexpr double kCounterThicknessMm = 40.0;
/// Less than this is no size of a part that is cast or bought.
inline constexpr double kLeastSizeMm = 20.0;

/// The plan with a mix to cast from: unchanged where it has one already.
Plan withMix(const Plan& plan);

/// Width and depth that a click without a drag gives.
Size defaultSize(PartKind kind);
Cutout defaultCutout(CutoutPurpose purpose, CutoutShape shape);

/// The counter with the highest face whose outline holds the point, or null.
const Part* counterAt(const Plan& plan, Point at);

/// A part that covers `box`. Supports and panels run along the longer side; a support under a counter reaches up to its
/// underside; a panel whose middle is over a counter stands on its face; an appliance there stands on it.
Part newPart(const Plan& plan, PartKind kind, const Box& box);
/// What a click at `at` makes: a support under a counter runs from its front to its back, a panel stands along the
/// back edge behind the point, both along the counter however it is turned; others lie with their middle at the point.
Part defaultPart(const Plan& plan, PartKind kind, Point at);

/// A counter of any outline (plan axes), with its frame at the low corner of its bounds.
Part newCounter(const Plan& plan, const Ring& outline);
/// A front between two points, with its visible side towards the person: away from the counter it stands under, or
/// else downwards in plan. It reaches up to the underside of that counter.
Part newFront(const Plan& plan, Point from, Point to);

/// With the part, and a mix if there was none. `part.id` must be free (see freePartId).
Plan withNewPart(const Plan& plan, Part part);

std::string freeFixtureId(const Plan& plan, FixtureKind kind);
/// True for what has a size on the ground (wall, tree, door, other).
bool hasExtent(FixtureKind kind);
Size defaultFixtureSize(FixtureKind kind);

/// Where a straight line through `at` along `direction` enters and leaves the outline on either side of `at`; nothing
/// when `at` lies outside.
std::optional<std::pair<Point, Point>> chordThrough(const Ring& outline, Point at, Point direction);

}  // namespace yardcast::ui
