#include <QCoreApplication>

#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

}  // namespace

void describePanel(PropertySheet& sheet, const Scope<Part>& parts)
{
    const Scope<Panel> panel = bodyScope<Panel>(parts);
    FieldColumn& size = sheet.group(tr("Size"));
    size.length(QStringLiteral("panel.length_mm"), tr("Length"), panel.member([](auto& p) { return &p.lengthMm; }),
                sizeRules());
    size.length(QStringLiteral("panel.thickness_mm"), tr("Thickness"),
                panel.member([](auto& p) { return &p.thicknessMm; }), sizeRules());
    size.length(QStringLiteral("panel.height_mm"), tr("Height"), panel.member([](auto& p) { return &p.heightMm; }),
                sizeRules());
    size.length(QStringLiteral("panel.base_mm"), tr("Foot above datum"),
                panel.member([](auto& p) { return &p.baseMm; }), placeRules());

    FieldColumn& casting = sheet.group(tr("Casting"));
    addMixChoice(casting, QStringLiteral("panel.mix"), panel.member([](auto& p) { return &p.mix; }));
    addUprightCastChoice(casting, QStringLiteral("panel.cast"), panel.member([](auto& p) { return &p.cast; }));
    addCoreGroup(sheet, panel.member([](auto& p) { return &p.core; }), QStringLiteral("panel.core"));
    addSteelGroup(sheet, panel.member([](auto& p) { return &p.steel; }), QStringLiteral("panel.steel"));
}

}  // namespace yardcast::ui
