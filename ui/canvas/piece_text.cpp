#include "ui/canvas/piece_text.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QStringList>

#include "core/castings/casting.h"
#include "core/handling/lifting.h"
#include "ui/look/number_text.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text, const char* comment = nullptr, int n = -1)
{
    return QCoreApplication::translate("Canvas", text, comment, n);
}

/// A mass is not known to grams: whole kg from 10 kg on.
QString kg(double massKg) { return tr("%1 kg").arg(formatNumber(massKg, massKg < 9.95 ? 1 : 0)); }

QString people(int count)
{
    if (count == 0) return tr("more than %1 people").arg(kMostPeople);
    if (count == 1) return tr("1 person");
    return tr("%1 people").arg(count);
}

}  // namespace

QString lengthMm(double mm) { return tr("%1 mm").arg(formatNumber(mm, 1)); }

QString sizeMm(double firstMm, double secondMm)
{
    return tr("%1 \u00d7 %2 mm").arg(formatNumber(firstMm, 1), formatNumber(secondMm, 1));
}

QString wayText(Point by, bool fromAbove)
{
    QStringList ways;
    if (std::abs(by.x) >= 0.05) {
        ways << (by.x > 0.0 ? tr("%1 mm right") : tr("%1 mm left")).arg(formatNumber(std::abs(by.x), 1));
    }
    if (std::abs(by.y) >= 0.05) {
        const QString positive = fromAbove ? tr("%1 mm back") : tr("%1 mm up");
        const QString negative = fromAbove ? tr("%1 mm forward") : tr("%1 mm down");
        ways << (by.y > 0.0 ? positive : negative).arg(formatNumber(std::abs(by.y), 1));
    }
    return ways.isEmpty() ? lengthMm(0.0) : ways.join(tr(", "));
}

QString joined(const QStringList& figures)
{
    QStringList kept;
    for (const QString& figure : figures) {
        if (!figure.isEmpty()) kept << figure;
    }
    return kept.join(QStringLiteral("  \u00b7  "));
}

QString massText(const Plan& plan, const Part& part)
{
    const std::vector<CastingPtr> castings = castingsOf(part);
    if (castings.empty()) return {};
    double sum = 0.0;
    double heaviest = 0.0;
    for (const CastingPtr& casting : castings) {
        sum += casting->massKg;
        heaviest = std::max(heaviest, casting->massKg);
    }
    return joined({kg(sum), people(peopleNeeded(heaviest, plan.crew.liftLimitKg))});
}

QString castingsText(const Plan& plan, const Part& part)
{
    const std::vector<CastingPtr> castings = castingsOf(part);
    if (castings.size() < 2) return massText(plan, part);
    QStringList masses;
    QStringList counts;
    for (const CastingPtr& casting : castings) {
        masses << kg(casting->massKg);
        const int count = peopleNeeded(casting->massKg, plan.crew.liftLimitKg);
        counts << (count == 0 ? tr("more than %1").arg(kMostPeople) : QString::number(count));
    }
    const QString plus = QStringLiteral(" + ");
    return joined({masses.join(plus), tr("%1 people", "several counts, joined by plus signs").arg(counts.join(plus))});
}

QString kindCalled(PartKind kind)
{
    switch (kind) {
    case PartKind::counter: return tr("counter");
    case PartKind::support: return tr("support");
    case PartKind::panel: return tr("panel");
    case PartKind::front: return tr("front");
    case PartKind::appliance: return tr("appliance");
    }
    return {};
}

QString purposeCalled(CutoutPurpose purpose)
{
    switch (purpose) {
    case CutoutPurpose::sink: return tr("sink cutout");
    case CutoutPurpose::hob: return tr("hob cutout");
    case CutoutPurpose::tap: return tr("tap hole");
    case CutoutPurpose::drain: return tr("drain hole");
    case CutoutPurpose::other: return tr("opening");
    }
    return {};
}

QString fixtureCalled(FixtureKind kind)
{
    switch (kind) {
    case FixtureKind::water: return tr("water connection");
    case FixtureKind::waste: return tr("waste connection");
    case FixtureKind::power: return tr("power connection");
    case FixtureKind::gas: return tr("gas connection");
    case FixtureKind::wall: return tr("wall");
    case FixtureKind::tree: return tr("tree");
    case FixtureKind::door: return tr("door");
    case FixtureKind::other: return tr("fixed thing");
    }
    return {};
}

QString partCalled(const Part& part)
{
    if (part.name && !part.name->empty()) return QString::fromStdString(*part.name);
    return tr("%1 %2", "kind and id of a part").arg(kindCalled(part.kind()), QString::fromStdString(part.id));
}

QString cutoutCalled(const Cutout& cutout)
{
    return tr("%1 %2", "purpose and id of a cutout").arg(purposeCalled(cutout.purpose), QString::fromStdString(cutout.id));
}

}  // namespace yardcast::ui
