#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/structure/strength.h"

/// What attempts share. For core/remedy only.
namespace yardcast {

/// The least cover that steel is put at by an edit, mm: what spacers are sold for. Common practice, no source.
inline constexpr double kLeastCoverMm = 10.0;

/// The case a finding speaks about (its value "case"), or the worst one.
const CaseResult* worstCase(const CastingStrength& strength, const Finding& finding);
/// Whether a finding about steel says that the face is pulled there, not the underside.
bool isPulledAtFace(const Finding& finding);
/// Null when the counter has no such cutout.
const Cutout* findCutout(const Counter& counter, const std::string& id);
/// Supports and panels that end just below the counter's deepest underside and lie under it, in the plan's order.
std::vector<const Part*> bearersOf(const Plan& plan, const Part& counter);
/// Of these, the one whose middle is nearest along the counter to `own`; null where nothing bears it.
const Part* nearestBearer(const Plan& plan, const Part& counter, Point own);
/// Middle of the footprint, plan axes.
Point middleOf(const Part& part);
/// The way a cutout has to go for the strip to widen (a unit vector along an axis of the counter), or the origin where
/// no strip is meant or the opposite strip has no more to give.
Point awayFromStrip(const Counter& counter, const Cutout& cutout, PlaceKind strip);
/// A rib along the long side of what lies below, across the whole counter. At least `widthMm` wide, and as wide as
/// what it bears on. Nothing where the two do not meet.
std::optional<Rib> ribAlong(const Part& counterPart, const Counter& counter, const Part& under, double widthMm);
/// Two bars of 8 mm along the strip the place names, on the side the finding says is pulled.
std::optional<BarGroup> barsAlongStrip(const Counter& counter, const PlaceName& place, const Finding& finding);

}  // namespace yardcast
