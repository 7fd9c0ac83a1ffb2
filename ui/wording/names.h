#pragma once

#include <string>

#include <QString>

#include "core/castings/casting.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

/// Words for the codes of core.
namespace yardcast::ui {

/// "Counter", "Support", "Panel", "Front", "Appliance".
QString kindName(PartKind kind);
QString zoneName(ZoneKind kind);
QString purposeName(CutoutPurpose purpose);
QString fixtureName(FixtureKind kind);
QString cementSpeedName(CementSpeed speed);
/// "steel", "stainless steel", "glass fibre" ...
QString steelMaterialName(SteelMaterial material);
/// "XC4: wet and dry, outdoors" and so on, in the words of EN 1992-1-1 Table 4.1 cut short.
QString exposureName(Exposure exposure);
/// "XF3: rain and frost on a level face" and so on, after EN 206 Table 1.
QString frostName(Frost frost);
/// "coated board" ...
QString mouldSurfaceName(MouldSurface surface);
/// "Stop", "Caution", "Note".
QString severityName(Severity severity);

/// "C1 Sink slab": the id and the part's own name, or the id and its kind ("C1 counter"). For the id of a casting of a
/// jointed counter ("C1.2") the counter's name with that id. An id that is nothing in the plan is given back.
QString subjectName(const Plan* plan, const std::string& id);

/// Aisle of the shopping list: "Concrete", "Steel" and so on; an unknown group is given back.
QString groupName(const std::string& group);
/// "kg", "l", "ml", "m", "m²", "pieces".
QString unitName(const std::string& unit);
/// An item key in words, for items that the price book has no name for: "bar_8" -> "bar, 8 mm".
QString itemWord(const std::string& item);
/// Name of a timber piece of a front: "batten", "rail" ...
QString timberPieceName(const std::string& code);

}  // namespace yardcast::ui
