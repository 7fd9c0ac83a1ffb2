#include <QCoreApplication>

#include "ui/look/number_text.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

}  // namespace

void describePouring(PropertySheet& sheet)
{
    FieldColumn& column = sheet.group(tr("Pouring"));
    const Scope<std::optional<Pouring>> own = planScope().member([](auto& p) { return &p.pouring; });
    const Scope<Pouring> content = contentOf(own);
    const QString path = QStringLiteral("plan.pour");
    column.check(path, tr("Pour plan"), tr("its own"), bindPresence(own, Pouring()))
        .setHint(tr("Hours, moulds and order of the pours. Without a tick the usual ones hold."));
    column
        .number(path + QStringLiteral(".start_h"), tr("Start"), content.member([](auto& p) { return &p.startH; }),
                rules(tr("h"), 0, 24))
        .setHint(tr("Hour of the day at which the first batch is begun: 7.5 is half past seven."));
    column.number(path + QStringLiteral(".hours"), tr("Hours a day"), content.member([](auto& p) { return &p.hours; }),
                  rules(tr("h"), 0.5, 24));
    column
        .number(path + QStringLiteral(".moulds"), tr("Moulds"), content.member([](auto& p) { return &p.moulds; }),
                optional(rules({}, 1, 10000, 0), tr("as many as castings")))
        .setHint(tr("How many castings may lie in moulds at one time."));
    column
        .number(path + QStringLiteral(".laying_minutes"), tr("Laying steel or foam"),
                content.member([](auto& p) { return &p.layingMinutes; }), rules(tr("min"), 0, 240))
        .setHint(tr("Between two layers of a casting, each time; all hands are at the mould and nothing is mixed. "
                    "10 min: common practice, no source."));
    column
        .number(path + QStringLiteral(".working_minutes"), tr("Working time"),
                content.member([](auto& p) { return &p.workingMinutes; }), rules(tr("min"), 5, 600))
        .setHint(tr("How long the concrete can be worked at 20 °C; half as long for each 10 K more."));
}

}  // namespace yardcast::ui
