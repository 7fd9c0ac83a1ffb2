#include "app/cli_pour_report.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "app/cli_text_table.h"
#include "ui/wording/figures.h"
#include "ui/wording/handling_advice.h"
#include "ui/wording/lifting_names.h"
#include "ui/wording/names.h"
#include "ui/wording/pour_names.h"
#include "ui/wording/readiness_names.h"

namespace yardcast::cli {

namespace {

using namespace yardcast::ui;

struct Cli {
    Q_DECLARE_TR_FUNCTIONS(cli)
};

QString chanceOf(const PourPlayPtr& play, const std::string& casting)
{
    if (!play) return QStringLiteral("-");
    const auto found = std::ranges::find_if(play->castings,
                                            [&](const CastingChance& one) { return one.casting == casting; });
    return found == play->castings.end() ? QStringLiteral("-") : chanceText(found->chance, play->plays);
}

}  // namespace

QString pourTable(const Loaded& loaded)
{
    const PourPlan& pour = loaded.assessment->pour;
    if (pour.days.empty()) return {};
    TextTable table(QStringLiteral("rllrrrrrrr"));
    table.add({Cli::tr("day"), Cli::tr("casting"), Cli::tr("mix"), Cli::tr("litres"), Cli::tr("batches"),
               Cli::tr("begin"), Cli::tr("last in"), Cli::tr("waits"), Cli::tr("workable"), Cli::tr("cold joint")});
    int calendarDay = 1;
    for (const PourDay& day : pour.days) {
        calendarDay += day.afterDays;
        for (const PouredCasting& poured : day.castings) {
            const QString chance = chanceOf(loaded.assessment->play, poured.casting);
            table.add({QString::number(calendarDay), subjectName(&loaded.plan, poured.casting),
                       QString::fromStdString(poured.mix), numberText(poured.litres, 1), numberText(poured.batches, 1),
                       clockText(day.startH + poured.startMin / 60), clockText(day.startH + poured.endMin / 60),
                       minutesText(poured.longestGapMin), minutesText(poured.workingMinutes),
                       poured.fits ? chance : Cli::tr("as planned")});
        }
    }
    return QLatin1Char('\n') + Cli::tr("Pour plan") + QLatin1Char('\n') + table.text() +
           Cli::tr("A batch takes %1; laying steel or foam between two layers %2 each, in which nothing is mixed.")
               .arg(minutesText(pour.batchMinutes), minutesText(pour.layingMinutes)) +
           QLatin1Char('\n');
}

QString hoursTable(const Loaded& loaded)
{
    const Assessment& assessment = *loaded.assessment;
    if (assessment.hours.empty()) return {};
    const double startH = loaded.plan.pouring.value_or(Pouring{}).startH;
    TextTable table(QStringLiteral("llrrrl"));
    table.add({Cli::tr("casting"), Cli::tr("handled"), Cli::tr("likely"), Cli::tr("with safety"), Cli::tr("plan"),
               Cli::tr("that is")});
    QStringList words;
    const auto say = [&words](const QString& text) {
        if (!text.isEmpty() && !words.contains(text)) words << text;
    };
    for (const CastingHoursPtr& hours : assessment.hours) {
        if (!hours) continue;
        for (const EarliestHour& hour : hours->ways) {
            const QString name = subjectName(&loaded.plan, hours->casting);
            if (!hour.possible) {
                table.add({name, handlingWayName(hour.way), Cli::tr("not so"), QString(), QString(), QString()});
                continue;
            }
            QString when;
            if (std::isfinite(hour.cautiousH)) {
                when = clockText(hour.cautiousH, startH);
                if (isNight(hour.cautiousH + startH)) when += Cli::tr(" (night: the morning after)");
            }
            table.add({name, handlingWayName(hour.way), waitText(hour.likelyH), waitText(hour.cautiousH),
                       plannedHourText(hours->planH), when});
        }
        if (const QString late = lateCornerText(loaded.plan, assessment, hours->casting); !late.isEmpty()) {
            say(QString::fromStdString(hours->casting) + QStringLiteral(": ") + late);
        }
        if (const QString wet = wetMixText(loaded.plan, hours->mix); !wet.isEmpty()) {
            say(Cli::tr("Mix %1: %2").arg(QString::fromStdString(hours->mix), wet));
        }
    }
    say(lastCaution());
    return QLatin1Char('\n') + Cli::tr("When it may be handled") + QLatin1Char('\n') + table.text() +
           words.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

QString curingTable(const Loaded& loaded)
{
    const Assessment& assessment = *loaded.assessment;
    if (assessment.curing.empty()) return {};
    TextTable table(QStringLiteral("lrr"));
    table.add({Cli::tr("mix"), Cli::tr("keep moist"), Cli::tr("sheeting")});
    for (const Curing& curing : assessment.curing) {
        table.add({QString::fromStdString(curing.mix), curingDaysText(curing.days), areaText(curing.sheetM2)});
    }
    const PourWeather& weather = assessment.weather;
    return QLatin1Char('\n') + Cli::tr("Curing") + QLatin1Char('\n') + table.text() +
           Cli::tr("Evaporation: up to %1 kg/m² an hour begun at %2, limit %3; begun at %4 up to %5.")
               .arg(numberText(std::max(weather.worstAtPlanKgM2H, weather.evaporationKgM2H), 2),
                    clockText(weather.startH), numberText(weather.limitKgM2H, 1), clockText(weather.bestStartH),
                    numberText(weather.worstAtBestKgM2H, 2)) +
           QLatin1Char('\n');
}

QString holdsTable(const Loaded& loaded)
{
    const Assessment& assessment = *loaded.assessment;
    QStringList words;
    TextTable table(QStringLiteral("lrrrr"));
    table.add({Cli::tr("casting"), Cli::tr("grip"), Cli::tr("from the left"), Cli::tr("from the front"), Cli::tr("bears")});
    bool any = false;
    for (const CastingLift& lift : assessment.handling) {
        const CastingStrength* strength = assessment.strengthOf(lift.casting);
        const auto loads = lift.loadsAt(strength ? strength->grips : std::vector<Point>());
        const auto placed = std::ranges::find_if(assessment.castings, [&](const PlacedCasting& one) {
            return one.casting && one.casting->id == lift.casting;
        });
        if (placed == assessment.castings.end()) continue;
        if (const QString heavy = heavyGripsText(loads, loaded.plan.crew.liftLimitKg); !heavy.isEmpty()) {
            words << QString::fromStdString(lift.casting) + QStringLiteral(": ") + heavy + QLatin1Char('\n');
        }
        const Point origin = placed->casting->boundsMm.low;
        for (std::size_t i = 0; i < loads.size(); ++i) {
            any = true;
            table.add({i == 0 ? subjectName(&loaded.plan, lift.casting) : QString(), QString::number(i + 1),
                       lengthText(std::round(loads[i].at.x - origin.x)), lengthText(std::round(loads[i].at.y - origin.y)),
                       massText(loads[i].kg)});
        }
    }
    return any ? QLatin1Char('\n') + Cli::tr("Who holds what") + QLatin1Char('\n') + table.text() + words.join(QString())
               : QString();
}

QString gainTable(const Loaded& loaded)
{
    const std::vector<GainCurve>& gain = loaded.assessment->gain;
    if (gain.empty()) return {};
    constexpr double kAgesH[] = {24.0, 48.0, 72.0, 168.0, 672.0};
    TextTable table(QStringLiteral("lrrrrr"));
    table.add({Cli::tr("mix"), Cli::tr("1 day"), Cli::tr("2 days"), Cli::tr("3 days"), Cli::tr("7 days"), Cli::tr("28 days")});
    for (const GainCurve& curve : gain) {
        QStringList row{QString::fromStdString(curve.mix)};
        for (const double ageH : kAgesH) {
            const auto at = std::ranges::find(curve.h, ageH);
            const auto i = static_cast<std::size_t>(at - curve.h.begin());
            row << (at == curve.h.end() || i >= curve.share.size() ? QStringLiteral("-") : percentText(100 * curve.share[i]));
        }
        table.add(row);
    }
    return QLatin1Char('\n') + Cli::tr("Mean strength by the plan's temperatures, of that at 28 days and 20 °C") +
           QLatin1Char('\n') + table.text();
}

QString seasonTable(const Loaded& loaded)
{
    const std::vector<SeasonMonth>& season = loaded.assessment->season;
    if (season.empty()) return {};
    TextTable table(QStringLiteral("lrrrrrl"));
    table.add({Cli::tr("month"), Cli::tr("until carried"), Cli::tr("keep moist"), Cli::tr("kg/(m² h)"), Cli::tr("limit"),
               Cli::tr("best start"), Cli::tr("rank")});
    for (const SeasonMonth& month : season) {
        table.add({monthName(month.month), month.carryH > 0.0 ? waitText(month.carryH) : QStringLiteral("-"),
                   curingDaysText(month.curingDays), numberText(month.evaporationKgM2H, 2), numberText(month.limitKgM2H, 1),
                   clockText(month.bestStartH),
                   month.rank > 0 ? QString::number(month.rank)
                   : month.frost  ? Cli::tr("not fit: frost")
                                  : Cli::tr("not fit")});
    }
    return QLatin1Char('\n') + Cli::tr("Months to pour in") + QLatin1Char('\n') + table.text();
}

}  // namespace yardcast::cli
