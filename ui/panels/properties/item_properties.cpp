#include <algorithm>

#include <QCoreApplication>

#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"

/// Cutouts, fixtures, and several parts of different kinds.
namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

}  // namespace

void describeCutout(PropertySheet& sheet, const std::string& part, const std::string& cutout,
                    const PropertyContext& context)
{
    const Scope<Counter> counter = bodyScope<Counter>(partScope({part}));
    const Scope<Cutout> scope = cutoutScope(counter, cutout);
    FieldColumn& column = sheet.group(tr("Cutout"));
    TextRules mark;
    mark.fault = [counter, cutout, &host = column.host()](const QString& text) {
        if (text.isEmpty()) return tr("A cutout needs a mark, such as K1.");
        for (const Counter* c : counter.read(*host.plan())) {
            const bool taken = std::ranges::any_of(c->cutouts, [&](const Cutout& other) {
                return other.id != cutout && other.id == text.toStdString();
            });
            if (taken) return tr("Another cutout of this counter has this mark.");
        }
        return QString();
    };
    mark.committed = [renamed = context.renamedCutout, part = QString::fromStdString(part)](const QString& text) {
        if (renamed) renamed(part, text);
    };
    column.text(QStringLiteral("counter.cutouts.id"), tr("Mark"), scope.member([](auto& c) { return &c.id; }), mark);
    addCutoutFields(column, scope);
}

void describeFixture(PropertySheet& sheet, const std::string& fixture, const PropertyContext& context)
{
    const Scope<Fixture> scope = fixtureScope(fixture);
    FieldColumn& column = sheet.group(tr("On the site"));
    TextRules mark;
    mark.fault = [fixture, &host = column.host()](const QString& text) {
        if (text.isEmpty()) return tr("This needs a mark.");
        const bool taken = std::ranges::any_of(host.plan()->site.fixtures, [&](const Fixture& other) {
            return other.id != fixture && other.id == text.toStdString();
        });
        return taken ? tr("Something else on the site has this mark.") : QString();
    };
    mark.committed = context.renamedFixture;
    column.text(QStringLiteral("site.fixtures.id"), tr("Mark"), scope.member([](auto& f) { return &f.id; }), mark);
    addFixtureFields(column, scope);
}

void describeSeveral(PropertySheet& sheet, const Scope<Part>& parts)
{
    const Scope<std::string> mix = parts.member([](auto& part) -> decltype(&part.id) {
        if (auto* counter = std::get_if<Counter>(&part.body)) return &counter->mix;
        if (auto* support = std::get_if<Support>(&part.body)) return &support->mix;
        if (auto* panel = std::get_if<Panel>(&part.body)) return &panel->mix;
        return nullptr;
    });
    addMixChoice(sheet.group(tr("Casting")), QStringLiteral("several.mix"), mix);
}

}  // namespace yardcast::ui
