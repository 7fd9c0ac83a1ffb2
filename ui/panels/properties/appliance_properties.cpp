#include <QCoreApplication>

#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

}  // namespace

void describeAppliance(PropertySheet& sheet, const Scope<Part>& parts)
{
    const Scope<Appliance> appliance = bodyScope<Appliance>(parts);
    FieldColumn& size = sheet.group(tr("Size"));
    addSizeFields(size, QStringLiteral("appliance.size"), appliance.member([](auto& a) { return &a.size; }));
    size.length(QStringLiteral("appliance.height_mm"), tr("Height"),
                appliance.member([](auto& a) { return &a.heightMm; }), sizeRules());
    size.number(QStringLiteral("appliance.mass_kg"), tr("Mass"), appliance.member([](auto& a) { return &a.massKg; }),
                rules(tr("kg"), 0, 1e5));

    FieldColumn& stands = sheet.group(tr("Where it stands"));
    stands.choiceBound(QStringLiteral("appliance.on"), tr("Stands on"),
                       bindText(appliance.member([](auto& a) { return &a.on; })), [](const Plan& plan) {
                           QList<Option> options{{QString(), tr("the ground")}};
                           for (const PartPtr& part : plan.parts) {
                               if (part->kind() != PartKind::counter) continue;
                               options.append({QString::fromStdString(part->id), subjectName(&plan, part->id)});
                           }
                           return options;
                       });
    stands
        .length(QStringLiteral("appliance.clearance_mm"), tr("Clearance"),
                appliance.member([](auto& a) { return &a.clearanceMm; }), optional(coverRules(), tr("not said")))
        .setHint(tr("Distance to anything that can burn, from its manual. Local rules and licensed trades decide."));
    stands
        .number(QStringLiteral("appliance.surface_c"), tr("Surface gets"),
                appliance.member([](auto& a) { return &a.surfaceC; }),
                optional(rules(tr("°C"), -50, 1500), tr("not said")))
        .setHint(tr("Temperature of its outside in use, from its manual."));
}

}  // namespace yardcast::ui
