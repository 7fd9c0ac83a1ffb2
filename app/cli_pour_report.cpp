#include "app/cli_pour_report.h"

#include <algorithm>

#include <QCoreApplication>

#include "app/cli_text_table.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/pour_names.h"

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
    return QLatin1Char('\n') + Cli::tr("Pour plan") + QLatin1Char('\n') + table.text();
}

}  // namespace yardcast::cli
