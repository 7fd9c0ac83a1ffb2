#pragma once

#include <QString>

#include "core/plan/plan.h"
#include "ui/panels/fields/number_field.h"
#include "ui/panels/fields/scope.h"

namespace yardcast::ui {

class FieldColumn;
class PropertySheet;

/// A size: more than nothing, up to 100 m.
NumberRules sizeRules();
/// A place: 1 km to either side.
NumberRules placeRules();
/// A length that may be nothing at all.
NumberRules coverRules();
/// `unit` from `least` to `most`.
NumberRules rules(const QString& unit, double least, double most, int decimals = 2);
/// `unit` within what the plan allows.
NumberRules within(const QString& unit, NumberLimits limits);
NumberRules optional(NumberRules own, const QString& emptyText);

/// Two fields of a point in a part's own frame, "path.x" and "path.y".
void addPointFields(FieldColumn& column, const QString& path, const QString& acrossLabel, const QString& upLabel,
                    const Scope<Point>& point);
/// Two fields of a size, "path.width" and "path.depth".
void addSizeFields(FieldColumn& column, const QString& path, const Scope<Size>& size);

/// Fields that several sheets share; `path` is that of the key they lie in.
void addCutoutFields(FieldColumn& column, const Scope<Cutout>& cutout);
void addFixtureFields(FieldColumn& column, const Scope<Fixture>& fixture);
void addSteelGroup(PropertySheet& sheet, const Scope<std::optional<Steel>>& steel, const QString& path);
void addMaterialChoice(FieldColumn& column, const QString& path, const QString& label,
                       const Scope<SteelMaterial>& material);
void addCoreGroup(PropertySheet& sheet, const Scope<std::optional<Core>>& core, const QString& path);
void addMixChoice(FieldColumn& column, const QString& path, const Scope<std::string>& mix);
void addUprightCastChoice(FieldColumn& column, const QString& path, const Scope<UprightCast>& cast);

}  // namespace yardcast::ui
