#include <QCoreApplication>

#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

}  // namespace

void describePlace(PropertySheet& sheet, const Scope<Part>& parts, const Ids& ids, const PropertyContext& context)
{
    FieldColumn& column = sheet.group(tr("Part"));
    if (ids.size() == 1) {
        const std::string id = ids[0];
        Binding<QString> mark = bindText(parts.member([](auto& part) { return &part.id; }));
        mark.write = [id](const Plan& plan, const QString& text) { return renamePart(plan, id, text.toStdString()); };
        TextRules rulesOfMark;
        rulesOfMark.fault = [id, &host = column.host()](const QString& text) {
            if (text.isEmpty()) return tr("A part needs a mark, such as C1.");
            const std::string wanted = text.toStdString();
            if (wanted != id && findPart(*host.plan(), wanted)) return tr("Another part has this mark.");
            return QString();
        };
        rulesOfMark.committed = context.renamedPart;
        column.textBound(QStringLiteral("part.id"), tr("Mark"), mark, rulesOfMark)
            .setHint(tr("Stands on the drawing, the lists and the moulds."));
        column.text(QStringLiteral("part.name"), tr("Name"), parts.member([](auto& part) { return &part.name; }),
                    {.emptyText = tr("none")});
        addPointFields(column, QStringLiteral("part.at"), tr("Place from left"), tr("Place from front"),
                       parts.member([](auto& part) { return &part.place.at; }));
    }
    column.number(QStringLiteral("part.turn_deg"), tr("Turned"),
                  parts.member([](auto& part) { return &part.place.turnDeg; }), rules(tr("°"), -360, 360))
        .setHint(tr("Counter-clockwise, about its front left corner."));
}

}  // namespace yardcast::ui
