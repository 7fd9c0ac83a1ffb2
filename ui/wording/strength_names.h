#pragma once

#include <string>

#include <QString>

#include "core/plan/plan.h"
#include "core/structure/strength.h"

/// Words for what the solver of strength names by codes.
namespace yardcast::ui {

/// "In place, own weight", "Tilted up about an edge" ...
QString strengthCaseName(StrengthCase which);
/// "at 48 h", from five days on "at 7 days".
QString ageText(double hours);
/// "strip in front of sink K1", "middle of span S1–S2", "over S1", "field". With the part, cutouts are called by what
/// they are for.
QString placeText(const PlaceName& place, const Part* part = nullptr);
/// What holds a casting: the id of a part as it is, "hand 1", "edge" and the like in words.
QString heldText(const std::string& under);
/// What a force would weigh, in whole kg: "19 kg"; "under 1 kg".
QString heldForceText(double newton);
/// "face" or "underside".
QString sideText(bool onFace);

}  // namespace yardcast::ui
