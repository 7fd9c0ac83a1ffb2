#include <QCoreApplication>
#include <QLocale>

#include "ui/look/number_text.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"

namespace yardcast::ui {

namespace {

constexpr double kMostReadingH = 10'000.0;
constexpr double kNextReadingH = 6.0;

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

NumberRules celsius() { return rules(tr("°C"), -40, 60, 1); }

void addDay(PropertySheet& sheet, const Scope<Conditions>& day)
{
    FieldColumn& column = sheet.group(tr("Day of the pour"));
    column.number(QStringLiteral("plan.conditions.air_c"), tr("Air"), day.member([](auto& d) { return &d.airC; }),
                  celsius());
    column.number(QStringLiteral("plan.conditions.high_c"), tr("Warmest"), day.member([](auto& d) { return &d.highC; }),
                  optional(celsius(), tr("as the air")))
        .setHint(tr("About three in the afternoon; the days after are taken as alike."));
    column.number(QStringLiteral("plan.conditions.low_c"), tr("Coldest"), day.member([](auto& d) { return &d.lowC; }),
                  optional(celsius(), tr("as the air")))
        .setHint(tr("About sunrise."));
    column.number(QStringLiteral("plan.conditions.concrete_c"), tr("Concrete"),
                  day.member([](auto& d) { return &d.concreteC; }), celsius())
        .setHint(tr("Fresh from the mixer, when the air is as above."));
    column.number(QStringLiteral("plan.conditions.humidity_percent"), tr("Humidity"),
                  day.member([](auto& d) { return &d.humidityPercent; }), rules(tr("%"), 0, 100, 1));
    column.number(QStringLiteral("plan.conditions.wind_kmh"), tr("Wind"),
                  day.member([](auto& d) { return &d.windKmh; }), rules(tr("km/h"), 0, 250, 1));
    column.number(QStringLiteral("plan.conditions.water_c"), tr("Tap water"),
                  day.member([](auto& d) { return &d.waterC; }), rules(tr("°C"), 0, 95, 1));
    column.number(QStringLiteral("plan.conditions.ice_percent"), tr("Ice"),
                  day.member([](auto& d) { return &d.icePercent; }), rules(tr("% of the water"), 0, 75, 0))
        .setHint(tr("In place of as much of the mixing water, by mass."));
    column.number(QStringLiteral("plan.conditions.materials_c"), tr("Bags, sand, gravel"),
                  day.member([](auto& d) { return &d.materialsC; }), optional(celsius(), tr("as the air")));
}

void addReadings(PropertySheet& sheet, const Scope<Conditions>& day)
{
    const Scope<std::vector<MeasuredTemperature>> readings = day.member([](auto& d) { return &d.measured; });
    sheet.group(tr("Measured temperatures"))
        .list(QStringLiteral("plan.conditions.measured"),
              {tr("Read off the concrete"), tr("Add a reading"), tr("Remove the reading"),
               tr("A reading holds until the next; where there are none, the day's air counts.")},
              {{tr("Hours since the pour"), true}, {tr("°C"), true}},
              listAccess<MeasuredTemperature>(
                  readings,
                  [](const MeasuredTemperature& m, int) {
                      return QStringList{formatNumber(m.h), formatNumber(m.c)};
                  },
                  [](const Plan& plan) {
                      const std::vector<MeasuredTemperature>& all = plan.conditions.measured;
                      const double h = all.empty() ? 0.0 : all.back().h + kNextReadingH;
                      return MeasuredTemperature{h, plan.conditions.concreteC, {}};
                  }),
              [readings](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  const Scope<MeasuredTemperature> one = elementOf(readings, index);
                  form.number(QStringLiteral("plan.conditions.measured.h"), tr("After"),
                              one.member([](auto& m) { return &m.h; }), rules(tr("h"), 0, kMostReadingH));
                  form.number(QStringLiteral("plan.conditions.measured.c"), tr("Concrete"),
                              one.member([](auto& m) { return &m.c; }), rules(tr("°C"), -40, 95, 1));
              });
}

void addSeason(PropertySheet& sheet)
{
    const Scope<std::vector<MonthWeather>> season = planScope().member([](auto& p) { return &p.season; });
    sheet.group(tr("Season"))
        .list(QStringLiteral("plan.season"),
              {tr("Usual weather by the month"), tr("Add a month"), tr("Remove the month"),
               tr("With some months here the best of them for casting are named.")},
              {{tr("Month"), false}, {tr("coldest"), true}, {tr("warmest"), true}},
              listAccess<MonthWeather>(
                  season,
                  [](const MonthWeather& m, int) {
                      return QStringList{QLocale().standaloneMonthName(m.month), formatNumber(m.lowC),
                                         formatNumber(m.highC)};
                  },
                  [](const Plan& plan) {
                      MonthWeather fresh;
                      fresh.month = plan.season.empty() ? 4 : plan.season.back().month % 12 + 1;
                      return fresh;
                  }),
              [season](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  const Scope<MonthWeather> one = elementOf(season, index);
                  form.number(QStringLiteral("plan.season.month"), tr("Month"),
                              one.member([](auto& m) { return &m.month; }), rules({}, 1, 12, 0));
                  form.number(QStringLiteral("plan.season.low_c"), tr("Coldest"),
                              one.member([](auto& m) { return &m.lowC; }), celsius());
                  form.number(QStringLiteral("plan.season.high_c"), tr("Warmest"),
                              one.member([](auto& m) { return &m.highC; }), celsius());
                  form.number(QStringLiteral("plan.season.humidity_percent"), tr("Humidity"),
                              one.member([](auto& m) { return &m.humidityPercent; }), rules(tr("%"), 0, 100, 1));
                  form.number(QStringLiteral("plan.season.wind_kmh"), tr("Wind"),
                              one.member([](auto& m) { return &m.windKmh; }), rules(tr("km/h"), 0, 200, 1));
              });
}

}  // namespace

void describeWeather(PropertySheet& sheet)
{
    const Scope<Conditions> day = planScope().member([](auto& p) { return &p.conditions; });
    addDay(sheet, day);
    addReadings(sheet, day);
    addSeason(sheet);
}

}  // namespace yardcast::ui
