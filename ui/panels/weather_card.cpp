#include "ui/panels/weather_card.h"

#include <algorithm>
#include <cmath>

#include <QLabel>

#include "ui/look/theme.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/panels/weather_chart_view.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/readiness_names.h"

namespace yardcast::ui {

namespace {

QString celsius(double c) { return WeatherCard::tr("%1 °C").arg(shortNumberText(c, 1)); }
QString rate(double kgM2H) { return WeatherCard::tr("%1 kg/m² an hour").arg(numberText(kgM2H, 2)); }
QString minutes(double value) { return WeatherCard::tr("%1 min").arg(numberText(value, 0)); }
QString hoursText(double value) { return WeatherCard::tr("%1 h").arg(shortNumberText(value, 1)); }

QString days(double value) { return curingDaysText(value); }

/// By the hours at which castings are begun, as the pour plan has them; without a pour by the concrete typed.
QString workableText(const Plan& plan, const Assessment& assessment)
{
    double least = HUGE_VAL;
    double most = 0.0;
    for (const PourDay& day : assessment.pour.days) {
        for (const PouredCasting& poured : day.castings) {
            least = std::min(least, poured.workingMinutes);
            most = std::max(most, poured.workingMinutes);
        }
    }
    if (!(most > 0.0)) {
        return WeatherCard::tr("Workable for %1 at %2")
            .arg(minutes(assessment.weather.workingMinutes), celsius(plan.conditions.concreteC));
    }
    if (most - least < 0.5) return WeatherCard::tr("Workable for %1 when it is poured").arg(minutes(least));
    return WeatherCard::tr("Workable for %1 to %2, by the hour it is poured").arg(numberText(least, 0), minutes(most));
}

/// As the finding has it.
std::optional<Severity> severityOf(double evaporation, double limit)
{
    if (evaporation >= 2 * limit) return Severity::stop;
    if (evaporation >= limit) return Severity::caution;
    return std::nullopt;
}

double worstOf(const PourWeather& weather) { return std::max(weather.worstAtPlanKgM2H, weather.evaporationKgM2H); }

const Curing* longest(const Assessment& assessment)
{
    const auto found = std::ranges::max_element(assessment.curing, {}, &Curing::days);
    return found == assessment.curing.end() ? nullptr : &*found;
}

QString gainText(StrengthGain gain)
{
    switch (gain) {
    case StrengthGain::rapid: return WeatherCard::tr("rapid");
    case StrengthGain::medium: return WeatherCard::tr("medium");
    case StrengthGain::slow: return WeatherCard::tr("slow");
    case StrengthGain::verySlow: return WeatherCard::tr("very slow");
    }
    return {};
}

QString coolingText(const Cooling& way)
{
    if (way.coldWaterEnough) {
        return WeatherCard::tr("Water of %1 brings it to %2.").arg(celsius(way.coldWaterC), celsius(way.targetC));
    }
    if (way.iceEnough) {
        return WeatherCard::tr("%1 of ice a batch (%2 of the water), in its place, bring it to %3.")
            .arg(massText(way.icePerBatchKg), percentText(way.icePercent), celsius(way.targetC));
    }
    return WeatherCard::tr("Neither cold water nor a fifth of it as ice brings it to %1: cool the bags as well.")
        .arg(celsius(way.targetC));
}

}  // namespace

WeatherCard::WeatherCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("weatherCard"), document, selection, live, parent)
{
    setEmptyText(tr("Nothing to cast yet. Once there is a piece, the weather of its pour day shows here."));
    chart_ = new WeatherChartView(this);
    addToolRow(chart_);
    hours_ = addTable(tr("By the hour"), {{tr("Hour"), false},
                                          {tr("air\n°C"), true},
                                          {tr("humid\n%"), true},
                                          {tr("mixed\n°C"), true},
                                          {tr("lost\nkg/m² h"), true}});
    curing_ = addTable(tr("Curing"), {{tr("Mix"), false}, {tr("keep moist"), true}, {tr("sheeting\nm²"), true}});
    foot_ = new QLabel(this);
    foot_->setObjectName(QStringLiteral("weatherFoot"));
    foot_->setWordWrap(true);
    foot_->setForegroundRole(QPalette::PlaceholderText);
    foot_->setContentsMargins(kStepPx, kStepPx, kStepPx, 0);
    addFootnote(foot_);
}

CardSummary WeatherCard::summarise(const Plan& plan, const Assessment& assessment) const
{
    CardSummary summary;
    summary.empty = assessment.castings.empty();
    if (summary.empty) return summary;
    const PourWeather& weather = assessment.weather;
    const bool asPlanned = std::abs(weather.bestStartH - weather.startH) < 0.25;
    const bool none = weather.worstAtBestKgM2H >= weather.limitKgM2H;
    summary.big = {.code = QStringLiteral("best_start"),
                   .text = clockText(weather.bestStartH),
                   .unit = none ? tr("dries it least, but no hour of this day is good")
                           : asPlanned ? tr("is the best start, as planned")
                                     : tr("is the best start (planned %1)").arg(clockText(weather.startH))};
    const double worst = worstOf(weather);
    summary.lines.append({.code = QStringLiteral("evaporation"),
                          .text = tr("Loses up to %1, limit %2").arg(rate(worst), numberText(weather.limitKgM2H, 1)),
                          .mark = severityOf(worst, weather.limitKgM2H)});
    summary.lines.append({.code = QStringLiteral("working_time"),
                          .text = workableText(plan, assessment)});
    if (weather.frostTonight) {
        summary.lines.append({.code = QStringLiteral("frost"),
                              .text = tr("Freezes after %1, at %2 MPa")
                                          .arg(hoursText(weather.frostAtH), numberText(weather.frostMpa, 1)),
                              .mark = Severity::caution});
    } else if (const Curing* curing = longest(assessment)) {
        summary.lines.append({.code = QStringLiteral("curing"),
                              .text = std::isfinite(curing->days) ? tr("Keep moist for %1").arg(days(curing->days))
                                                                  : tr("Too cold for curing"),
                              .mark = std::isfinite(curing->days) ? std::nullopt : std::optional(Severity::caution)});
    }
    return summary;
}

void WeatherCard::fillTables(const Plan&, const Assessment& assessment)
{
    const PourWeather& weather = assessment.weather;
    chart_->setWeather(weather);
    QList<Line> lines;
    for (int i = 0; i < static_cast<int>(weather.hours.size()); ++i) {
        const WeatherHour& hour = weather.hours[i];
        lines.append({.key = QString::number(i),
                      .cells = {clockText(hour.hourOfDay), numberText(hour.airC, 1),
                                numberText(hour.humidityPercent, 0), numberText(hour.concreteC, 1),
                                numberText(hour.evaporationKgM2H, 2)},
                      .tip = tr("Workable for %1").arg(minutes(hour.workingMinutes)),
                      .mark = severityOf(hour.evaporationKgM2H, weather.limitKgM2H),
                      .source = i});
    }
    hours_->lineModel().setLines(std::move(lines));
    lines.clear();
    for (int i = 0; i < static_cast<int>(assessment.curing.size()); ++i) {
        const Curing& one = assessment.curing[i];
        lines.append({.key = QString::fromStdString(one.mix),
                      .cells = {QString::fromStdString(one.mix),
                                std::isfinite(one.days) ? curingDaysText(one.days) : tr("too cold"),
                                numberText(one.sheetM2, 1)},
                      .mark = std::isfinite(one.days) ? std::nullopt : std::optional(Severity::caution),
                      .source = i});
    }
    curing_->lineModel().setLines(std::move(lines));
    QString text = tr("From its ingredients the concrete comes to %1.").arg(celsius(weather.mixC));
    for (const Cooling& way : weather.cooling) text += QLatin1Char(' ') + coolingText(way);
    text += QLatin1Char(' ') + tr("The formula is a rough one: real rates lie up to 40 % to either side.");
    if (foot_->text() != text) foot_->setText(text);
}

QList<FigureValue> WeatherCard::valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const
{
    const PourWeather& weather = assessment.weather;
    const Conditions& day = plan.conditions;
    if (code == QLatin1String("best_start")) {
        return {{tr("Work takes"), hoursText(weather.workH)},
                {tr("Most lost from %1").arg(clockText(weather.startH)), rate(weather.worstAtPlanKgM2H)},
                {tr("Most lost from %1").arg(clockText(weather.bestStartH)), rate(weather.worstAtBestKgM2H)}};
    }
    if (code == QLatin1String("working_time")) {
        return {{tr("At 20 °C"), minutes(plan.pouring.value_or(Pouring{}).workingMinutes)},
                {tr("Concrete"), celsius(day.concreteC)},
                {tr("Workable at that"), minutes(weather.workingMinutes)},
                {tr("In the pour"), workableText(plan, assessment)}};
    }
    if (code == QLatin1String("frost")) {
        return {{tr("Coldest"), celsius(weather.lowC)},
                {tr("First frost after"), hoursText(weather.frostAtH)},
                {tr("Strength then"), tr("%1 MPa").arg(numberText(weather.frostMpa, 1))},
                {tr("Wanted"), tr("%1 MPa").arg(numberText(kFrostProofMpa, 0))}};
    }
    if (code == QLatin1String("curing")) {
        const Curing* one = longest(assessment);
        if (!one) return {};
        return {{tr("Mix"), QString::fromStdString(one->mix)},
                {tr("Strength gain"), tr("%1 (r %2)").arg(gainText(one->gain), numberText(one->ratio, 2))},
                {tr("Curing class"), QString::number(assumptionsOf(plan).curingClass)},
                {tr("Mean of the hours that count"), celsius(one->surfaceC)},
                {tr("Table"), days(one->countedDays)},
                {tr("With cold hours"), days(one->days)}};
    }
    return {{tr("Concrete"), celsius(day.concreteC)},
            {tr("Air"), celsius(day.airC)},
            {tr("Humidity"), percentText(day.humidityPercent)},
            {tr("Wind"), tr("%1 km/h").arg(shortNumberText(day.windKmh, 1))},
            {tr("At these"), rate(weather.evaporationKgM2H)},
            {tr("Most during the work"), rate(weather.worstAtPlanKgM2H)},
            {tr("Limit"), rate(weather.limitKgM2H)}};
}

LiveCard::LineNote WeatherCard::noteOf(const LineView& view, const Line& line, const Plan& plan,
                                       const Assessment& assessment) const
{
    if (line.source < 0) return {};
    if (&view == curing_) return {QStringLiteral("curing"), valuesBehind(QStringLiteral("curing"), plan, assessment)};
    const WeatherHour& hour = assessment.weather.hours[line.source];
    return {QStringLiteral("evaporation"),
            {{tr("Hour"), clockText(hour.hourOfDay)},
             {tr("Air"), celsius(hour.airC)},
             {tr("Humidity"), percentText(hour.humidityPercent)},
             {tr("Concrete"), celsius(hour.concreteC)},
             {tr("Wind"), tr("%1 km/h").arg(shortNumberText(plan.conditions.windKmh, 1))},
             {tr("Lost"), rate(hour.evaporationKgM2H)},
             {tr("Workable for"), minutes(hour.workingMinutes)}}};
}

void WeatherCard::visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                                const std::function<void(const std::string&)>& visit) const
{
    if (&view == curing_ && line.source >= 0) visit(assessment.curing[line.source].mix);
}

}  // namespace yardcast::ui
