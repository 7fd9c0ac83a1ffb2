#include <algorithm>
#include <cmath>

#include "ui/drawing/weather_chart.h"
#include "ui/sheets/cautions.h"
#include "ui/sheets/list_pages.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/pour_names.h"
#include "ui/wording/readiness_names.h"

namespace yardcast::ui {

namespace {

/// An empty box to tick.
const QString kTick = QString(QChar(0x25A1));

QString at(const PourDay& day, double minutes) { return clockText(day.startH + minutes / 60); }

QString litresText(double litres) { return numberText(litres, 1); }

QString heightsText(const PourLayer& layer)
{
    return Sheets::tr("%1 to %2").arg(shortNumberText(layer.fromMm, 0), shortNumberText(layer.toMm, 0));
}

/// What has to be done with a layer besides filling it.
QString layerNote(const PouredCasting& poured, const PourLayer& layer)
{
    if (layer.kind != LayerKind::filler || poured.uplift.fixings == 0) {
        return {};
    }
    return Sheets::tr("It floats with %1 N: hold it down with battens and %2 screws before concrete comes beside or "
                      "over it.")
        .arg(numberText(poured.uplift.forceN, 0))
        .arg(poured.uplift.fixings);
}

ListBlock orderBlock(const Plan& plan, const PourDay& day, int firstNumber)
{
    ListBlock block;
    block.title = Sheets::tr("In this order; heights from the mould base");
    block.table.columns = {{Sheets::tr("Casting, layer"), 74.0, false}, {Sheets::tr("mm"), 21.0, true},
                           {Sheets::tr("litres"), 16.0, true},          {Sheets::tr("from batch"), 37.0, false},
                           {Sheets::tr("first in"), 16.0, true},        {Sheets::tr("last in"), 16.0, true}};
    int number = firstNumber;
    for (const PouredCasting& poured : day.castings) {
        SheetRow head;
        head.bold = true;
        head.headsNext = true;
        head.cells = {QStringLiteral("%1  %2").arg(number++).arg(subjectName(&plan, poured.casting)),
                      QString(),
                      litresText(poured.litres),
                      QString::fromStdString(poured.mix),
                      QString(),
                      QString()};
        const QString working = minutesText(poured.workingMinutes);
        head.note = poured.longestGapMin > 0.0
                        ? Sheets::tr("Workable for about %1; what covers it comes after %2 at most. On the mould "
                                     "table: %3.")
                              .arg(working, minutesText(poured.longestGapMin), massText(poured.tableKg))
                        : Sheets::tr("From one batch. Workable for about %1. On the mould table: %2.")
                              .arg(working, massText(poured.tableKg));
        if (!poured.fits) {
            head.note = Sheets::tr("NOT IN TIME: a cold joint is to be expected. ") + head.note;
        }
        block.table.rows.push_back(head);
        for (const PourLayer& layer : poured.layers) {
            SheetRow row;
            const bool concrete = layer.litres > 0.0;
            row.cells = {QStringLiteral("      %1 %2").arg(kTick, layerName(layer.kind)), heightsText(layer),
                         concrete ? litresText(layer.litres) : QString(),
                         concrete ? batchesText(layer.firstBatch, layer.lastBatch)
                                  : layer.toMin > layer.fromMin
                                        ? Sheets::tr("to lay: %1").arg(minutesText(layer.toMin - layer.fromMin))
                                        : QString(),
                         concrete || layer.toMin > layer.fromMin ? at(day, layer.fromMin) : QString(),
                         concrete || layer.toMin > layer.fromMin ? at(day, layer.toMin) : QString()};
            row.note = layerNote(poured, layer);
            block.table.rows.push_back(row);
        }
    }
    return block;
}

ListBlock batchBlock(const PourDay& day)
{
    ListBlock block;
    block.title = Sheets::tr("Batches: tick each when it is in");
    block.table.columns = {{QString(), 10.0, false},           {Sheets::tr("Batch"), 50.0, false},
                           {Sheets::tr("litres"), 18.0, true}, {Sheets::tr("begin"), 18.0, true},
                           {Sheets::tr("ready"), 18.0, true},  {Sheets::tr("goes into (litres)"), 66.0, false}};
    for (const PourBatch& batch : day.mixed) {
        QStringList into;
        for (const auto& [casting, litres] : batch.into) {
            into << Sheets::tr("%1 (%2)", "casting, litres").arg(QString::fromStdString(casting), litresText(litres));
        }
        SheetRow row;
        row.cells = {kTick,
                     QStringLiteral("%1 %2").arg(QString::fromStdString(batch.mix)).arg(batch.number),
                     litresText(batch.litres),
                     at(day, batch.beginMin),
                     at(day, batch.readyMin),
                     into.join(QStringLiteral(", "))};
        block.table.rows.push_back(row);
    }
    return block;
}

ListBlock weatherBlock(const PourWeather& weather)
{
    ListBlock block;
    block.title = Sheets::tr("How fast fresh concrete dries through the day");
    const PaintStyle style = paperStyle();
    block.pictureMm = weatherChartHeight(style);
    block.picture = [weather, style](QPainter& painter, const QRectF& box) {
        paintWeatherChart(painter, box.adjusted(2.0, 0.0, -2.0, 0.0), weather, style);
    };
    return block;
}

/// Which month of those typed suits the pour best.
ListBlock seasonBlock(const std::vector<SeasonMonth>& season)
{
    ListBlock block;
    block.title = Sheets::tr("Months to pour in, by their usual weather (with the safety kept)");
    block.table.columns = {{Sheets::tr("Month"), 34.0, false},         {Sheets::tr("until carried"), 26.0, true},
                           {Sheets::tr("keep moist"), 24.0, true},     {Sheets::tr("water lost, kg/(m² h)"), 40.0, true},
                           {Sheets::tr("best start"), 22.0, true},     {Sheets::tr("rank"), 34.0, true}};
    for (const SeasonMonth& month : season) {
        SheetRow row;
        row.cells = {monthName(month.month),
                     month.carryH > 0.0 ? waitText(month.carryH) : QString(),
                     curingDaysText(month.curingDays),
                     Sheets::tr("%1, limit %2").arg(numberText(month.evaporationKgM2H, 2), numberText(month.limitKgM2H, 1)),
                     clockText(month.bestStartH),
                     month.rank > 0 ? QString::number(month.rank)
                     : month.frost  ? Sheets::tr("not fit: frost")
                                    : Sheets::tr("not fit")};
        block.table.rows.push_back(row);
    }
    return block;
}

/// The hour of the weather nearest to an hour of the day; null without.
const WeatherHour* weatherAt(const PourWeather& weather, double hourOfDay)
{
    if (weather.hours.empty()) {
        return nullptr;
    }
    const auto hour = static_cast<std::size_t>(std::llround(std::max(0.0, hourOfDay)));
    return &weather.hours[hour % weather.hours.size()];
}

QStringList weatherWords(const PourDay& day, const PourWeather& weather)
{
    QStringList words;
    const WeatherHour* first = weatherAt(weather, day.startH);
    const WeatherHour* last = weatherAt(weather, day.startH + day.endMin / 60);
    if (!first || !last) {
        return words;
    }
    words << Sheets::tr("Expected weather: air %1 °C at %2 and %3 °C at %4; concrete %5 to %6 °C as mixed.")
                 .arg(numberText(first->airC, 0), clockText(day.startH), numberText(last->airC, 0),
                      at(day, day.endMin), numberText(std::min(first->concreteC, last->concreteC), 0),
                      numberText(std::max(first->concreteC, last->concreteC), 0));
    // Not less than the card of the weather has: that looks every half hour, and at the conditions typed.
    double worst = std::max(weather.evaporationKgM2H, weather.worstAtPlanKgM2H);
    for (double h = day.startH; h <= day.startH + day.endMin / 60 + 0.5; h += 1.0) {
        worst = std::max(worst, weatherAt(weather, h)->evaporationKgM2H);
    }
    const QString evaporation = Sheets::tr("Evaporation up to %1 kg/(m² h), care from %2.")
                                    .arg(numberText(worst, 2), numberText(weather.limitKgM2H, 1));
    words << (weather.limitKgM2H > 0.0 && worst >= weather.limitKgM2H
                  ? evaporation + Sheets::tr(" Shade and screen it from wind, and cover it as soon as it is struck "
                                             "off.")
                  : evaporation);
    if (weather.frostTonight) {
        words << Sheets::tr("Frost may come in the first night: cover it warm, or wait for milder days.");
    }
    return words;
}

QStringList curingWords(const PourDay& day, const std::vector<Curing>& curing)
{
    QStringList words;
    for (const Curing& one : curing) {
        const bool used = std::any_of(day.castings.begin(), day.castings.end(),
                                      [&](const PouredCasting& poured) { return poured.mix == one.mix; });
        if (!used || !std::isfinite(one.days)) {
            continue;
        }
        words << Sheets::tr("Keep %1 moist and covered for %2 (%3 of sheeting in all), the edges weighted down.")
                     .arg(QString::fromStdString(one.mix), curingDaysText(one.days), areaText(one.sheetM2));
    }
    return words;
}

QStringList closingWords(const PourDay& day, const Assessment& assessment)
{
    QStringList words = weatherWords(day, assessment.weather);
    words << Sheets::tr("Begin every layer where the one below was begun. Times are those to be expected: batches of "
                        "%1 one after the other, and %2 to lay steel or foam between two layers; concrete that has begun to "
                        "set is thrown away, never made soft with water.")
                 .arg(minutesText(assessment.pour.batchMinutes), minutesText(assessment.pour.layingMinutes));
    words += curingWords(day, assessment.curing);
    return words + materialCautions();
}

}  // namespace

std::vector<SheetPage> pourPages(const Plan& plan, const Assessment& assessment)
{
    SheetPage like;
    like.sheet = sheetTitle(QStringLiteral("pour"));
    if (assessment.pour.days.empty()) {
        return {wordsPage(like, Sheets::tr("Nothing to pour yet: the plan has no castings with a mix that can be "
                                           "used."))};
    }
    std::vector<SheetPage> pages;
    int number = 1;
    int calendarDay = 1;
    for (const PourDay& day : assessment.pour.days) {
        calendarDay += day.afterDays;
        SheetPage page = like;
        const QString hours = Sheets::tr("%1 to %2").arg(clockText(day.startH), at(day, day.endMin));
        page.part = assessment.pour.days.size() > 1 ? Sheets::tr("Day %1, %2").arg(calendarDay).arg(hours) : hours;
        page.view = Sheets::tr("as it lies in the mould");
        std::vector<ListBlock> blocks{orderBlock(plan, day, number), batchBlock(day)};
        // The days are taken as alike: one picture of them.
        if (number == 1 && !assessment.weather.hours.empty()) blocks.push_back(weatherBlock(assessment.weather));
        if (number == 1 && !assessment.season.empty()) blocks.push_back(seasonBlock(assessment.season));
        for (SheetPage& made : listPages(page, blocks, closingWords(day, assessment))) pages.push_back(std::move(made));
        number += static_cast<int>(day.castings.size());
    }
    return pages;
}

}  // namespace yardcast::ui
