#include "ui/panels/hours_lines.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "ui/drawing/hours_chart.h"
#include "ui/wording/figures.h"
#include "ui/wording/readiness_names.h"

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
                          .cells = {When::tr("The plan lifts it"), QString(), waitText(group.planH)},
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
            }
            all.lines.append(line);
        }
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

}  // namespace

HoursLines hoursLines(const Plan& plan, const Assessment& assessment)
{
    HoursLines all;
    addCastings(plan, assessment, all);
    addGain(assessment, all);
    addSeason(assessment, all);
    return all;
}

}  // namespace yardcast::ui
