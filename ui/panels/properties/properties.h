#pragma once

#include <functional>

#include <QString>

#include "core/plan/plan.h"
#include "ui/panels/fields/scope.h"

namespace yardcast {
struct PriceBook;
}

namespace yardcast::ui {

class FieldColumn;
class PropertySheet;

/// What the descriptions need besides the plan.
struct PropertyContext {
    /// Something has a new id: it is to be chosen under that.
    std::function<void(const QString& part)> renamedPart;
    std::function<void(const QString& fixture)> renamedFixture;
    std::function<void(const QString& part, const QString& cutout)> renamedCutout;
    const PriceBook* prices = nullptr;  ///< outlives the sheet
};

/// Each puts the groups of one kind on the sheet. A part may be several: then only what they have in common is there.
void describeCounter(PropertySheet& sheet, const Scope<Part>& parts, const Ids& ids);
void describeSupport(PropertySheet& sheet, const Scope<Part>& parts);
void describePanel(PropertySheet& sheet, const Scope<Part>& parts);
void describeFront(PropertySheet& sheet, const Scope<Part>& parts);
void describeAppliance(PropertySheet& sheet, const Scope<Part>& parts);
void describeCutout(PropertySheet& sheet, const std::string& part, const std::string& cutout,
                    const PropertyContext& context);
void describeFixture(PropertySheet& sheet, const std::string& fixture, const PropertyContext& context);
/// Id, name, place; first on the sheet of a part.
void describePlace(PropertySheet& sheet, const Scope<Part>& parts, const Ids& ids, const PropertyContext& context);
/// Parts of different kinds: what they share.
void describeSeveral(PropertySheet& sheet, const Scope<Part>& parts);
/// Nothing chosen: the plan itself.
/// What the figures of strength rest on.
void describeAssumptions(PropertySheet& sheet);
/// Hours, moulds and working time of the pours.
void describePouring(PropertySheet& sheet);
/// How moulds are built and sawn, boards at hand, castings that share a mould.
void describeMoulding(PropertySheet& sheet);
void describePlan(PropertySheet& sheet, const PropertyContext& context);
void describeSite(PropertySheet& sheet);
void describeMixes(PropertySheet& sheet);
/// The day of the pour, readings of the concrete, the season.
void describeWeather(PropertySheet& sheet);
void describeOwned(PropertySheet& sheet, const PropertyContext& context);

}  // namespace yardcast::ui
