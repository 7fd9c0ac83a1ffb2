#include "app/cli_reports.h"

#include <algorithm>

#include <QCoreApplication>

#include "app/cli_pour_report.h"
#include "app/cli_text_table.h"
#include "ui/wording/figures.h"
#include "ui/wording/finding_words.h"
#include "ui/wording/mix_names.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/names.h"
#include "ui/wording/strength_names.h"

namespace yardcast::cli {

namespace {

using namespace yardcast::ui;

struct Cli {
    Q_DECLARE_TR_FUNCTIONS(cli)
};

QString heading(const QString& text)
{
    return QLatin1Char('\n') + text + QLatin1Char('\n');
}

/// A terminal does not break lines at no-break spaces, and tools that read the tables do not expect them.
std::string plain(QString text)
{
    return text.replace(QChar(0x00A0), QLatin1Char(' ')).toStdString();
}

QString titleOf(const Plan& plan)
{
    return plan.title.empty() ? Cli::tr("(no title)") : QString::fromStdString(plan.title);
}

QString castingsTable(const Loaded& loaded)
{
    TextTable table(QStringLiteral("lrrrr"));
    table.add({Cli::tr("casting"), Cli::tr("volume"), Cli::tr("mass"), Cli::tr("people"), Cli::tr("crew can lift")});
    const Assessment& assessment = *loaded.assessment;
    for (std::size_t i = 0; i < assessment.castings.size(); ++i) {
        const Casting& casting = *assessment.castings[i].casting;
        QStringList row{subjectName(&loaded.plan, casting.id), volumeText(casting.volumeL), massText(casting.massKg)};
        if (i < assessment.handling.size()) {
            const CastingLift& lift = assessment.handling[i];
            row << (lift.people > 0 ? QString::number(lift.people) : Cli::tr("over %1").arg(kMostPeople));
            row << massText(lift.limitKg);
        }
        table.add(row);
    }
    table.add({Cli::tr("together"), volumeText(assessment.volumeL()), massText(assessment.massKg())});
    return heading(Cli::tr("Castings")) + table.text();
}

QString mixesTable(const Assessment& assessment)
{
    TextTable table(QStringLiteral("lrrrrrrrr"));
    table.add({Cli::tr("mix"), Cli::tr("to mix"), Cli::tr("bags"), Cli::tr("spare"), Cli::tr("cement"),
               Cli::tr("silica fume"), Cli::tr("plasticiser"), Cli::tr("tap water"), Cli::tr("water/cement"),
               Cli::tr("batches in one run")});
    for (const MixQuantities& mix : assessment.mixes) {
        table.add({QString::fromStdString(mix.mix), volumeText(mix.volumeL),
                   mix.perBag ? QString::number(mix.bags) : QStringLiteral("-"),
                   mix.perBag ? QString::number(mix.spareBags) : QStringLiteral("-"),
                   weighedText(mix.perBag ? mix.extraCementKg : mix.cementKg), weighedText(mix.silicaFumeKg),
                   weighedText(mix.plasticiserKg), volumeText(mix.waterL), numberText(mix.waterCement, 2),
                   mix.batches > 0 ? QString::number(mix.batches) : QStringLiteral("-")});
    }
    return heading(Cli::tr("Concrete")) + table.text();
}

/// What goes into each batch, and what of the limits is not met or not known.
QString cardsTable(const Assessment& assessment)
{
    QString text;
    for (const MixingCard& card : assessment.cards) {
        const std::vector<const BatchCard*> made = card.batches();
        if (made.empty()) continue;
        TextTable table(QStringLiteral("lrrrr"));
        QStringList head{Cli::tr("step")};
        for (const BatchCard* batch : made) head << batchName(card, *batch).toLower();
        table.add(head << Cli::tr("then mix"));
        const BatchCard& longest = *made.front();
        for (std::size_t i = 0; i < longest.steps.size(); ++i) {
            const CardStep& step = longest.steps[i];
            QStringList row{stepName(step, card.perBag)};
            for (const BatchCard* batch : made) {
                row << (i < batch->steps.size() ? stepAmountText(batch->steps[i]) : QString());
            }
            table.add(row << (step.mixMinutes > 0.0 ? Cli::tr("%1 min").arg(shortNumberText(step.mixMinutes)) : QString()));
        }
        for (const LimitCheck& row : card.check.limits) {
            if (!row.met.value_or(false)) table.add({limitName(row), limitText(row), metText(row.met)});
        }
        text += heading(Cli::tr("Mixing card: %1, %2").arg(QString::fromStdString(card.mix), batchesText(card))) +
                table.text();
        for (const QString& words : {sharedBatchesText(card), waterText(card)}) {
            if (!words.isEmpty()) text += words + QLatin1Char('\n');
        }
    }
    return text;
}

QString steelTable(const SteelSchedule& steel)
{
    if (steel.meshes.empty() && steel.bars.empty()) return {};
    TextTable table(QStringLiteral("lrr"));
    if (steel.meshAreaM2 > 0.0) table.add({Cli::tr("mesh with laps"), areaText(steel.meshAreaM2)});
    for (const DiameterTotal& total : steel.barTotals) {
        table.add({Cli::tr("bars %1 mm").arg(shortNumberText(total.diameterMm)), metresText(total.lengthM),
                   massText(total.massKg)});
    }
    table.add({Cli::tr("together"), QString(), massText(steel.massKg)});
    return heading(Cli::tr("Steel")) + table.text();
}

QString strengthTable(const Loaded& loaded)
{
    TextTable table(QStringLiteral("lllrrl"));
    table.add({Cli::tr("casting"), Cli::tr("worst case"), Cli::tr("age"), Cli::tr("strength"), Cli::tr("use"),
               Cli::tr("where")});
    bool any = false;
    for (const CastingStrengthPtr& strength : loaded.assessment->strength) {
        const CaseResult* worst = strength ? strength->worst() : nullptr;
        if (!worst) continue;
        any = true;
        if (!worst->holds) {
            table.add({subjectName(&loaded.plan, strength->casting), strengthCaseName(worst->which), ageText(worst->ageH),
                       QString(), QString(), Cli::tr("it tips, or nothing holds it")});
            continue;
        }
        table.add({subjectName(&loaded.plan, strength->casting), strengthCaseName(worst->which), ageText(worst->ageH),
                   Cli::tr("%1 MPa").arg(numberText(worst->strengthMpa, 2)), percentText(worst->usePercent),
                   placeText(worst->place, findPart(loaded.plan, strength->part))});
    }
    return any ? heading(Cli::tr("Strength")) + table.text() : QString();
}

QString mouldsTable(const Loaded& loaded)
{
    const Assessment& assessment = *loaded.assessment;
    if (assessment.moulds.empty()) return {};
    TextTable table(QStringLiteral("lrrrrrl"));
    table.add({Cli::tr("casting"), Cli::tr("inside"), Cli::tr("height"), Cli::tr("diagonals"), Cli::tr("brackets every"),
               Cli::tr("bow"), Cli::tr("check")});
    for (const MouldPtr& mould : assessment.moulds) {
        QStringList diagonals;
        for (const Mould::Diagonal& diagonal : mould->diagonals) diagonals << lengthText(diagonal.lengthMm);
        diagonals.removeDuplicates();
        const Part* part = findPart(loaded.plan, mould->part);
        const MouldPressure& pressure = mould->pressure;
        table.add({subjectName(&loaded.plan, mould->casting), sizeText(mould->widthMm, mould->depthMm),
                   lengthText(mould->heightMm), diagonals.join(QStringLiteral(" / ")), lengthText(pressure.bracketMm),
                   Cli::tr("%1 mm").arg(numberText(pressure.bowMm, 1)),
                   part ? mouldCheckSentence(mould->check, part->kind()) : QString()});
    }
    return heading(Cli::tr("Moulds")) + table.text();
}

QString frontsTable(const Loaded& loaded)
{
    if (loaded.assessment->fronts.empty()) return {};
    TextTable table(QStringLiteral("lrrrr"));
    table.add({Cli::tr("front"), Cli::tr("battens"), Cli::tr("gap"), Cli::tr("doors"), Cli::tr("timber")});
    for (const FrontLayout& front : loaded.assessment->fronts) {
        const QString name = subjectName(&loaded.plan, front.part);
        if (!front.solved) {
            table.add({name, Cli::tr("no even gap")});
            continue;
        }
        table.add({name, QString::number(front.battens), lengthText(front.gapMm), QString::number(front.doors.size()),
                   metresText(front.timberM + front.frameTimberM)});
    }
    return heading(Cli::tr("Fronts")) + table.text();
}

QString packsText(const ShoppingLine& line)
{
    if (!line.priced) return Cli::tr("no price");
    if (line.packs.empty()) return Cli::tr("all owned");
    QStringList texts;
    for (const PackChoice& choice : line.packs) {
        const QString count = QString::number(choice.count);
        const QString size = shortNumberText(choice.size, 3);
        if (line.unit != "piece") {
            texts << Cli::tr("%1 x %2 %3").arg(count, size, unitName(line.unit));
        } else {
            texts << (line.packs.size() == 1 && choice.size == 1.0 ? count : Cli::tr("%1 x %2").arg(count, size));
        }
    }
    return texts.join(QStringLiteral(" + "));
}

/// Parts of concrete that are in no figure, or in no mix: what they would need is not in the list.
QString leftOutText(const Loaded& loaded)
{
    const Assessment& assessment = *loaded.assessment;
    QStringList names;
    for (const PartPtr& part : loaded.plan.parts) {
        if (part->kind() == PartKind::front || part->kind() == PartKind::appliance) continue;
        const auto placed = std::ranges::find_if(
            assessment.castings, [&](const PlacedCasting& one) { return one.casting->part == part->id; });
        const bool mixed = placed != assessment.castings.end() &&
                           std::ranges::any_of(assessment.mixes, [&](const MixQuantities& mix) {
                               return mix.mix == placed->casting->mix;
                           });
        if (!mixed) names << QString::fromStdString(part->id);
    }
    if (names.isEmpty()) return {};
    return Cli::tr("Left out: %1. The stops that \"check\" prints say why.").arg(names.join(QStringLiteral(", "))) +
           QLatin1Char('\n');
}

QString budgetText(const Loaded& loaded)
{
    const ShoppingList& shopping = loaded.assessment->shopping;
    QString text = Cli::tr("Total %1").arg(moneyText(shopping.totalMinor, shopping.currency));
    if (loaded.plan.budget) text += Cli::tr(", limit %1").arg(moneyText(loaded.plan.budget->limit, shopping.currency));
    return text + QLatin1Char('\n') + leftOutText(loaded);
}

QString countsText(const Assessment& assessment)
{
    return Cli::tr("Findings: %1 stop, %2 caution, %3 note")
               .arg(assessment.count(Severity::stop))
               .arg(assessment.count(Severity::caution))
               .arg(assessment.count(Severity::note)) +
           QLatin1Char('\n');
}

QString csvField(const QString& text)
{
    const bool quote = text.contains(QLatin1Char(',')) || text.contains(QLatin1Char('"')) ||
                       text.contains(QLatin1Char('\n')) || text.contains(QLatin1Char('\r'));
    if (!quote) return text;
    return QLatin1Char('"') + QString(text).replace(QLatin1Char('"'), QStringLiteral("\"\"")) + QLatin1Char('"');
}

QString csvRow(const QStringList& fields)
{
    QStringList written;
    for (const QString& field : fields) written << csvField(field);
    return written.join(QLatin1Char(',')) + QStringLiteral("\r\n");
}

}  // namespace

std::string assessmentReport(const Loaded& loaded)
{
    const Assessment& assessment = *loaded.assessment;
    QString text = titleOf(loaded.plan) + QLatin1Char('\n');
    text += castingsTable(loaded);
    if (!assessment.mixes.empty()) text += mixesTable(assessment) + cardsTable(assessment);
    text += pourTable(loaded);
    text += curingTable(loaded);
    text += gainTable(loaded);
    text += hoursTable(loaded);
    text += seasonTable(loaded);
    text += holdsTable(loaded);
    text += strengthTable(loaded);
    text += steelTable(assessment.steel);
    text += mouldsTable(loaded);
    text += frontsTable(loaded);
    text += heading(Cli::tr("Shopping list")) + QStringLiteral("  ") + budgetText(loaded);
    text += QLatin1Char('\n') + countsText(assessment);
    return plain(text);
}

std::string findingsReport(const Loaded& loaded)
{
    QString text;
    for (const Finding& finding : loaded.assessment->findings) {
        text += severityName(finding.severity) + QStringLiteral(": ") + findingText(finding, &loaded.plan) +
                QLatin1Char('\n');
        const QString help = findingHelp(finding);
        if (!help.isEmpty()) text += QStringLiteral("  ") + help + QLatin1Char('\n');
        for (const Remedy& remedy : finding.remedies) {
            text += QStringLiteral("  - ") + remedyText(remedy) + QLatin1Char('\n');
        }
        if (!finding.pointer.empty()) {
            text += Cli::tr("  in the file: %1").arg(QString::fromStdString(finding.pointer)) + QLatin1Char('\n');
        }
        text += Cli::tr("  source: %1").arg(findingSource(finding)) + QLatin1Char('\n');
    }
    return plain(text + countsText(*loaded.assessment));
}

std::string shoppingReport(const Loaded& loaded)
{
    const ShoppingList& shopping = loaded.assessment->shopping;
    QString text = Cli::tr("Shopping list: %1").arg(titleOf(loaded.plan)) + QLatin1Char('\n');
    text += Cli::tr("Prices: %1").arg(QString::fromStdString(loaded.prices.title)) + QLatin1Char('\n');
    bool estimates = false;
    for (const std::string& group : priceGroups()) {
        TextTable table(QStringLiteral("llrrr"));
        for (const ShoppingLine& line : shopping.lines) {
            if (line.group != group) continue;
            estimates = estimates || line.estimate;
            const QString name = line.priced || line.name != line.item ? QString::fromStdString(line.name)
                                                                       : itemWord(line.item);
            table.add({QStringLiteral("[ ]"), name, packsText(line),
                       (line.estimate ? QStringLiteral("~") : QString()) + amountText(line.need, line.unit),
                       line.priced ? moneyText(line.priceMinor, shopping.currency) : QStringLiteral("?")});
        }
        if (!table.isEmpty()) text += heading(groupName(group)) + table.text();
    }
    text += QLatin1Char('\n') + budgetText(loaded);
    if (estimates) text += Cli::tr("~ is an estimate.") + QLatin1Char('\n');
    return plain(text);
}

std::string shoppingCsv(const Loaded& loaded)
{
    const ShoppingList& shopping = loaded.assessment->shopping;
    QString text = csvRow({QStringLiteral("group"), QStringLiteral("item"), QStringLiteral("name"),
                           QStringLiteral("need"), QStringLiteral("unit"), QStringLiteral("owned"),
                           QStringLiteral("pack"), QStringLiteral("packs"), QStringLiteral("pack_price"),
                           QStringLiteral("price"), QStringLiteral("currency"), QStringLiteral("leftover"),
                           QStringLiteral("estimate")});
    const auto money = [&](std::int64_t minor) { return plainMoneyText(minor, shopping.currency); };
    for (const ShoppingLine& line : shopping.lines) {
        const std::size_t rows = std::max<std::size_t>(line.packs.size(), 1);
        for (std::size_t i = 0; i < rows; ++i) {
            QStringList row{QString::fromStdString(line.group), QString::fromStdString(line.item),
                            QString::fromStdString(line.name)};
            row << (i == 0 ? shortNumberText(line.need, 4) : QString()) << QString::fromStdString(line.unit)
                << (i == 0 ? shortNumberText(line.owned, 4) : QString());
            if (i < line.packs.size()) {
                const PackChoice& choice = line.packs[i];
                row << shortNumberText(choice.size, 4) << QString::number(choice.count) << money(choice.priceMinor)
                    << money(choice.priceMinor * choice.count);
            } else {
                row << QString() << QStringLiteral("0") << QString() << (line.priced ? money(0) : QString());
            }
            row << QString::fromStdString(shopping.currency)
                << (i == 0 ? shortNumberText(line.leftover, 4) : QString())
                << (line.estimate ? QStringLiteral("yes") : QStringLiteral("no"));
            text += csvRow(row);
        }
    }
    return text.toStdString();
}

}  // namespace yardcast::cli
