#include <QCoreApplication>

#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

}  // namespace

void describeSupport(PropertySheet& sheet, const Scope<Part>& parts)
{
    const Scope<Support> support = bodyScope<Support>(parts);
    FieldColumn& size = sheet.group(tr("Size"));
    size.length(QStringLiteral("support.length_mm"), tr("Length"), support.member([](auto& s) { return &s.lengthMm; }),
                sizeRules());
    size.length(QStringLiteral("support.width_mm"), tr("Width"), support.member([](auto& s) { return &s.widthMm; }),
                sizeRules());
    size.length(QStringLiteral("support.height_mm"), tr("Height"), support.member([](auto& s) { return &s.heightMm; }),
                sizeRules());
    size.length(QStringLiteral("support.base_mm"), tr("Foot above datum"),
                support.member([](auto& s) { return &s.baseMm; }), placeRules());

    FieldColumn& casting = sheet.group(tr("Casting"));
    addMixChoice(casting, QStringLiteral("support.mix"), support.member([](auto& s) { return &s.mix; }));
    addUprightCastChoice(casting, QStringLiteral("support.cast"), support.member([](auto& s) { return &s.cast; }));
    addCoreGroup(sheet, support.member([](auto& s) { return &s.core; }), QStringLiteral("support.core"));

    const Scope<std::optional<Pads>> pads = support.member([](auto& s) { return &s.pads; });
    const Scope<Pads> inPads = contentOf(pads);
    FieldColumn& column = sheet.group(tr("Pads"));
    column.check(QStringLiteral("support.pads"), tr("Pads"), tr("stands on pads"), bindPresence(pads, Pads()));
    column.number(QStringLiteral("support.pads.count"), tr("How many"), inPads.member([](auto& p) { return &p.count; }),
                  rules({}, 1, 99, 0));
    addSizeFields(column, QStringLiteral("support.pads.size"), inPads.member([](auto& p) { return &p.size; }));
    column.length(QStringLiteral("support.pads.thickness_mm"), tr("Thickness"),
                  inPads.member([](auto& p) { return &p.thicknessMm; }), optional(coverRules(), tr("8")));
}

}  // namespace yardcast::ui
