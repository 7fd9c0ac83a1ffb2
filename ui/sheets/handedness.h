#pragma once

#include <QString>

#include "core/plan/plan.h"

/// What tells left from right on a sheet: one marked corner, and a sentence that can be checked at the thing itself.
namespace yardcast::ui {

/// Seen from above as it stands, or lying face down in the mould, where left and right are changed over.
enum class Seen { asItStands, inTheMould };

/// The left end of the edge farthest to the front, in the frame of the ring.
Point frontLeftCorner(const Ring& outline);
/// Where the largest cutout lies for one who stands at the front edge; empty without cutouts.
QString handednessSentence(const Counter& counter, Seen seen = Seen::asItStands);

}  // namespace yardcast::ui
