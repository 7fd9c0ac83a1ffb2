#include <QCoreApplication>
#include <set>

#include "ui/look/number_text.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

void addGround(PropertySheet& sheet, const Scope<Site>& site)
{
    const Scope<std::optional<Ground>> ground = site.member([](auto& s) { return &s.ground; });
    const Scope<Ground> content = contentOf(ground);
    FieldColumn& column = sheet.group(tr("Ground"));
    column.check(QStringLiteral("site.ground"), tr("Ground"), tr("is known"), bindPresence(ground, Ground()));
    column.length(QStringLiteral("site.ground.level_mm"), tr("Level at the origin"),
                  content.member([](auto& g) { return &g.levelMm; }), placeRules());
    column.number(QStringLiteral("site.ground.fall_percent"), tr("Fall"),
                  content.member([](auto& g) { return &g.fallPercent; }), rules(tr("%"), 0, 100));
    column.number(QStringLiteral("site.ground.fall_towards_deg"), tr("Falls towards"),
                  content.member([](auto& g) { return &g.fallTowardsDeg; }), rules(tr("°"), -360, 360))
        .setHint(tr("0° is to the right, 90° to the back, 180° to the left, 270° towards you."));
}

void addSiteOutline(PropertySheet& sheet, const Scope<Site>& site)
{
    const Scope<std::optional<std::vector<Point>>> outline = site.member([](auto& s) { return &s.outline; });
    const std::vector<Point> fresh{{0, 0}, {4000, 0}, {4000, 3000}, {0, 3000}};
    FieldColumn& column = sheet.group(tr("Site outline"));
    column.check(QStringLiteral("site.outline"), tr("Outline"), tr("is drawn"), bindPresence(outline, fresh));
    const Scope<std::vector<Point>> corners = contentOf(outline);
    column.list(QStringLiteral("site.outline.corners"),
                {tr("Corners"), tr("Add a corner"), tr("Remove the corner"), {}},
                {{tr("Corner"), false}, {tr("from left\nmm"), true}, {tr("from front\nmm"), true}},
                listAccess<Point>(
                    corners,
                    [](const Point& p, int index) {
                        return QStringList{QString::number(index + 1), formatNumber(p.x, 1), formatNumber(p.y, 1)};
                    },
                    [corners](const Plan& plan) {
                        const auto found = corners.read(plan);
                        const bool any = !found.empty() && !found[0]->empty();
                        return any ? (found[0]->back() + found[0]->front()) * 0.5 : Point();
                    }),
                [corners](FieldColumn& form, const std::shared_ptr<const int>& index) {
                    addPointFields(form, QStringLiteral("site.outline.corner"), tr("From left"), tr("From front"),
                                   elementOf(corners, index));
                });
}

std::string freeFixtureId(const Plan& plan)
{
    std::set<std::string> taken;
    for (const Fixture& fixture : plan.site.fixtures) taken.insert(fixture.id);
    for (int number = 1;; ++number) {
        std::string id = "X" + std::to_string(number);
        if (!taken.contains(id)) return id;
    }
}

void addFixtures(PropertySheet& sheet, const Scope<Site>& site)
{
    const Scope<std::vector<Fixture>> fixtures = site.member([](auto& s) { return &s.fixtures; });
    sheet.group(tr("On the site"))
        .list(QStringLiteral("site.fixtures"),
              {tr("Connections, walls, trees"), tr("Add something"), tr("Remove it"), tr("What does not move.")},
              {{tr("What"), false}, {tr("from left\nmm"), true}, {tr("from front\nmm"), true}},
              listAccess<Fixture>(
                  fixtures,
                  [](const Fixture& fixture, int) {
                      return QStringList{
                          tr("%1  %2").arg(QString::fromStdString(fixture.id), fixtureName(fixture.kind)),
                          formatNumber(fixture.at.x, 0), formatNumber(fixture.at.y, 0)};
                  },
                  [](const Plan& plan) {
                      Fixture fixture;
                      fixture.id = freeFixtureId(plan);
                      return fixture;
                  }),
              [fixtures](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  addFixtureFields(form, elementOf(fixtures, index));
              });
}

}  // namespace

void describeSite(PropertySheet& sheet)
{
    const Scope<Site> site = planScope().member([](auto& p) { return &p.site; });
    addGround(sheet, site);
    addSiteOutline(sheet, site);
    addFixtures(sheet, site);
}

}  // namespace yardcast::ui
