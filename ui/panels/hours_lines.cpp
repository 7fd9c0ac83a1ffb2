#include "ui/panels/hours_lines.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "ui/drawing/hours_chart.h"
#include "ui/wording/figures.h"
#include "ui/wording/handling_advice.h"
#include "ui/wording/names.h"
#include "ui/wording/readiness_names.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

struct When {
    Q_DECLARE_TR_FUNCTIONS(hours_lines)
};

constexpr int kDays[] = {1, 2, 3, 7};
/// The hours are found to this.
constexpr double kSameH = 0.05;

Line heading(const QString& key, const QString& text)
{
    return {.key = key, .kind = Line::Kind::heading, .cells = {text, QString(), QString()}};
}

QString dash() { return QStringLiteral("\u2013"); }

/// As the findings have it.
std::optional<Severity> severityOf(const HoursBar& bar, double planH)
{
    if (!bar.planned || !bar.possible || bar.cautiousH <= planH + kSameH) return std::nullopt;
    return Severity::caution;
}

/// What else has to be known before it is touched, as lines of words.
void addAdvice(const Plan& plan, const Assessment& assessment, const HoursGroup& group, int source, HoursLines& all)
{
    const QString key = QString::fromStdString(group.castings.front());
    const auto add = [&](const QString& what, const QString& name, const QString& text) {
        if (text.isEmpty()) return;
        all.lines.append({.key = key + QLatin1Char('|') + what,
                          .cells = {name, QString(), QString()},
                          .tip = text,
                          .mark = Severity::caution,
                          .source = source});
    };
    for (const std::string& casting : group.castings) {
        const QString late = lateCornerText(plan, assessment, casting);
        if (late.isEmpty()) continue;
        add(QStringLiteral("late"), When::tr("Set down all corners at once"), late);
        break;
    }
    for (const CastingHoursPtr& hours : assessment.hours) {
        if (!hours || hours->casting != group.castings.front()) continue;
        add(QStringLiteral("water"), When::tr("Much water: less strength"), wetMixText(plan, hours->mix));
    }
}

void addCastings(const Plan& plan, const Assessment& assessment, HoursLines& all)
{
    const HoursChart chart = hoursChart(plan, assessment);
    for (const HoursGroup& group : chart.groups) {
        const QString key = QString::fromStdString(group.castings.front());
        const int source = static_cast<int>(all.subjects.size());
        all.subjects.push_back(group.castings);
        Line title = heading(key, group.title);
        title.source = source;
        all.lines.append(title);
        all.lines.append({.key = key + QStringLiteral("|plan"),
                          .cells = {When::tr("The plan lifts it"), QString(), plannedHourText(group.planH)},
                          .source = source});
        for (const HoursBar& bar : group.bars) {
            Line line{.key = key + QLatin1Char('|') + QLatin1String(handlingWayWord(bar.way)),
                      .cells = {handlingWayName(bar.way), bar.possible ? waitText(bar.likelyH) : dash(),
                                bar.possible ? waitText(bar.cautiousH) : dash()},
                      .mark = severityOf(bar, group.planH),
                      .source = source};
            if (!bar.possible) {
                line.tip = When::tr("Nothing holds it that way");
            } else if (std::isfinite(bar.cautiousH)) {
                line.tip = When::tr("With the safety kept from %1 on").arg(clockText(bar.cautiousH, chart.startH));
                if (const QString night = byDayText(bar.cautiousH, chart.startH); !night.isEmpty()) {
                    line.tip += QStringLiteral("; ") + night;
                }
            }
            all.lines.append(line);
        }
        addAdvice(plan, assessment, group, source, all);
    }
}

void addGain(const Assessment& assessment, HoursLines& all)
{
    for (const GainCurve& gain : assessment.gain) {
        const QString key = QStringLiteral("gain|") + QString::fromStdString(gain.mix);
        const int source = static_cast<int>(all.subjects.size());
        all.subjects.push_back({gain.mix});
        Line title = heading(key, When::tr("Mix %1: share of 28 days, mean MPa").arg(QString::fromStdString(gain.mix)));
        title.source = source;
        all.lines.append(title);
        for (const int days : kDays) {
            const auto at = std::ranges::find_if(
                gain.h, [&](double h) { return std::abs(h - 24.0 * days) < kSameH; });
            if (at == gain.h.end()) continue;
            const auto i = static_cast<std::size_t>(at - gain.h.begin());
            all.lines.append({.key = key + QLatin1Char('|') + QString::number(days),
                              .cells = {days == 1 ? When::tr("After 1 day") : When::tr("After %1 days").arg(days),
                                        percentText(100.0 * gain.share[i]), numberText(gain.meanMpa[i], 1)},
                              .source = source});
        }
    }
}

void addSeason(const Assessment& assessment, HoursLines& all)
{
    if (assessment.season.empty()) return;
    all.lines.append(heading(QStringLiteral("season"), When::tr("Months: until carried, rank")));
    for (const SeasonMonth& month : assessment.season) {
        Line line{.key = QStringLiteral("season|%1").arg(month.month),
                  .cells = {monthName(month.month), month.carryH > 0.0 ? waitText(month.carryH) : dash(),
                            month.rank > 0 ? QString::number(month.rank) : When::tr("not fit")}};
        if (month.frost) line.tip = When::tr("Its nights are too cold for fresh concrete");
        if (month.rank == 0) line.mark = Severity::caution;
        all.lines.append(line);
    }
}

QString mpaText(double mpa) { return When::tr("%1\u00a0MPa").arg(numberText(mpa, 2)); }

QString ageDaysText(double days)
{
    return std::isfinite(days) ? When::tr("%1\u00a0days").arg(numberText(days, 2)) : When::tr("never");
}

const CastingHours* hoursOf(const Assessment& assessment, const std::string& casting)
{
    for (const CastingHoursPtr& hours : assessment.hours) {
        if (hours && hours->casting == casting) return hours.get();
    }
    return nullptr;
}

HoursNote castingNote(const Plan& plan, const Assessment& assessment, const CastingHours& hours, const QString& way)
{
    HoursNote note{QStringLiteral("earliest_hour"), {{When::tr("Casting"), subjectName(&plan, hours.casting)}}};
    const auto add = [&](const QString& name, const QString& value) { note.values.append({name, value}); };
    const auto found = std::ranges::find_if(hours.ways, [&](const EarliestHour& hour) {
        return way == QLatin1String(handlingWayWord(hour.way));
    });
    const EarliestHour* hour = found == hours.ways.end() ? hours.governing() : &*found;
    add(When::tr("The plan lifts it"), plannedHourText(hours.planH));
    if (!hour || !hour->possible) return note;
    add(When::tr("Way"), handlingWayName(hour->way));
    add(When::tr("Likely from"), waitText(hour->likelyH));
    add(When::tr("With safety from"), std::isfinite(hour->cautiousH)
            ? When::tr("%1 (%2)").arg(waitText(hour->cautiousH),
                                      clockText(hour->cautiousH, hoursChart(plan, assessment, hours.part).startH))
            : waitText(hour->cautiousH));
    add(When::tr("Age at 20 °C, likely"), ageDaysText(hour->likelyDays));
    add(When::tr("Age at 20 °C, with safety"), ageDaysText(hour->cautiousDays));
    add(When::tr("Greatest tension"), mpaText(hour->tensionMpa));
    add(When::tr("Where"), placeText(hour->place, findPart(plan, hours.part)));
    if (hour->byCompression) {
        add(When::tr("Decided by"), When::tr("stripping at %1: likely on the mean, with safety of what counts on it").arg(mpaText(assumptionsOf(plan).stripMpa)));
    }
    if (hour->stretched()) add(When::tr("Beware"), When::tr("before one day at 20 °C: to be tested"));
    return note;
}

HoursNote gainNote(const Assessment& assessment, const QString& mix, double days)
{
    HoursNote note{QStringLiteral("strength_gain"), {{When::tr("Mix"), mix}}};
    for (const GainCurve& gain : assessment.gain) {
        if (QString::fromStdString(gain.mix) != mix) continue;
        for (std::size_t i = 0; i < gain.h.size(); ++i) {
            if (days > 0.0 && std::abs(gain.h[i] - 24.0 * days) >= kSameH) continue;
            if (days <= 0.0 && std::fmod(gain.h[i], 24.0) > kSameH) continue;
            note.values.append({When::tr("After %1").arg(waitText(gain.h[i])),
                                When::tr("%1, mean %2").arg(percentText(100.0 * gain.share[i]),
                                                            mpaText(gain.meanMpa[i]))});
        }
    }
    return note;
}

HoursNote seasonNote(const Assessment& assessment, int number)
{
    HoursNote note{QStringLiteral("season_month"), {}};
    for (const SeasonMonth& month : assessment.season) {
        if (month.month != number) continue;
        const auto rate = [](double kg) { return When::tr("%1\u00a0kg/m² an hour").arg(numberText(kg, 2)); };
        note.values = {{When::tr("Month"), monthName(month.month)},
                       {When::tr("Until carried"), month.carryH > 0.0 ? waitText(month.carryH) : dash()},
                       {When::tr("To be kept moist"), ageDaysText(month.curingDays)},
                       {When::tr("Water lost, worst hour"), rate(month.evaporationKgM2H)},
                       {When::tr("Limit"), rate(month.limitKgM2H)},
                       {When::tr("Best start"), clockText(month.bestStartH)},
                       {When::tr("Frost at night"), month.frost ? When::tr("yes") : When::tr("no")}};
    }
    return note;
}

}  // namespace

HoursNote hoursNote(const Plan& plan, const Assessment& assessment, const Line& line)
{
    const QStringList key = line.key.split(QLatin1Char('|'));
    if (key.front() == QLatin1String("gain")) {
        return key.size() < 2 ? HoursNote() : gainNote(assessment, key[1], key.value(2).toDouble());
    }
    if (key.front() == QLatin1String("season")) {
        return key.size() < 2 ? HoursNote() : seasonNote(assessment, key[1].toInt());
    }
    const CastingHours* hours = hoursOf(assessment, key.front().toStdString());
    return hours ? castingNote(plan, assessment, *hours, key.value(1)) : HoursNote();
}

HoursLines hoursLines(const Plan& plan, const Assessment& assessment)
{
    HoursLines all;
    addCastings(plan, assessment, all);
    if (!all.lines.isEmpty()) {
        all.lines.append({.key = QStringLiteral("last_caution"),
                          .cells = {When::tr("Cold, wet or soft: wait, whatever the hour"), QString(), QString()},
                          .tip = lastCaution()});
    }
    addGain(assessment, all);
    addSeason(assessment, all);
    return all;
}

}  // namespace yardcast::ui
