#include "ui/canvas/piece_text.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "core/castings/casting.h"
#include "core/handling/lifting.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text, const char* comment = nullptr)
{
    return QCoreApplication::translate("Canvas", text, comment);
}

QString people(int count)
{
    if (count == 0) return tr("more than %1 people").arg(kMostPeople);
    if (count == 1) return tr("1 person");
    return tr("%1 people").arg(count);
}

}  // namespace

QString wayText(Point by, bool fromAbove)
{
    QStringList ways;
    const QString x = lengthText(std::abs(by.x));
    const QString y = lengthText(std::abs(by.y));
    if (std::abs(by.x) >= 0.05) ways << (by.x > 0.0 ? tr("%1 right") : tr("%1 left")).arg(x);
    if (std::abs(by.y) >= 0.05) {
        const QString positive = fromAbove ? tr("%1 back") : tr("%1 up");
        const QString negative = fromAbove ? tr("%1 forward") : tr("%1 down");
        ways << (by.y > 0.0 ? positive : negative).arg(y);
    }
    return ways.isEmpty() ? lengthText(0.0) : ways.join(QStringLiteral(", "));
}

QString joined(const QStringList& figures)
{
    QStringList kept;
    for (const QString& figure : figures) {
        if (!figure.isEmpty()) kept << figure;
    }
    return kept.join(QStringLiteral("  \u00b7  "));
}

QString massAndPeople(const Plan& plan, const Part& part)
{
    const std::vector<CastingPtr> castings = castingsOf(part);
    if (castings.empty()) return {};
    double sum = 0.0;
    double heaviest = 0.0;
    for (const CastingPtr& casting : castings) {
        sum += casting->massKg;
        heaviest = std::max(heaviest, casting->massKg);
    }
    return joined({massText(sum), people(peopleNeeded(heaviest, plan.crew.liftLimitKg))});
}

QString massesAndPeople(const Plan& plan, const Part& part)
{
    const std::vector<CastingPtr> castings = castingsOf(part);
    if (castings.size() < 2) return massAndPeople(plan, part);
    QStringList masses;
    QStringList counts;
    for (const CastingPtr& casting : castings) {
        masses << massText(casting->massKg);
        const int count = peopleNeeded(casting->massKg, plan.crew.liftLimitKg);
        counts << (count == 0 ? tr("more than %1", "people").arg(kMostPeople) : QString::number(count));
    }
    const QString plus = QStringLiteral(" + ");
    return joined({masses.join(plus), tr("%1 people", "several counts, joined by plus signs").arg(counts.join(plus))});
}

QString partsCalled(const Plan& plan, const QStringList& ids)
{
    if (ids.size() == 1) return subjectName(&plan, ids.front().toStdString());
    return tr("%1 parts").arg(ids.size());
}

QString cutoutCalled(const Cutout& cutout)
{
    return tr("%1 %2", "purpose and id of a cutout").arg(purposeName(cutout.purpose).toLower(),
                                                        QString::fromStdString(cutout.id));
}

}  // namespace yardcast::ui
