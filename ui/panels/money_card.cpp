#include "ui/panels/money_card.h"

#include <algorithm>

#include "core/purchase/currency.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

struct Aisle {
    std::string group;
    std::int64_t minor = 0;
};

std::vector<Aisle> aislesOf(const ShoppingList& list)
{
    std::vector<Aisle> aisles;
    for (const ShoppingLine& line : list.lines) {
        auto found = std::ranges::find(aisles, line.group, &Aisle::group);
        if (found == aisles.end()) {
            aisles.push_back({line.group, 0});
            found = aisles.end() - 1;
        }
        found->minor += line.priceMinor;
    }
    return aisles;
}

QString amount(std::int64_t minor, const Plan& plan)
{
    return numberText(fromMinor(minor, plan.currency), minorDigits(plan.currency));
}

std::int64_t contingencyMinor(std::int64_t totalMinor)
{
    return static_cast<std::int64_t>(static_cast<double>(totalMinor) * MoneyCard::kContingencyShare + 0.5);
}

}  // namespace

MoneyCard::MoneyCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("moneyCard"), document, selection, live, parent)
{
    setEmptyText(tr("Nothing to pay for yet. A budget can be set in the properties of the plan."));
    aisles_ = addTable(tr("By aisle"), {{tr("Aisle"), false}, {tr("Amount"), true}, {tr("share\n%"), true}});
}

CardSummary MoneyCard::summarise(const Plan& plan, const Assessment& assessment) const
{
    const ShoppingList& list = assessment.shopping;
    CardSummary summary;
    summary.empty = list.lines.empty();
    if (summary.empty) return summary;
    summary.big = {.code = QStringLiteral("money"),
                   .text = amount(list.totalMinor, plan),
                   .unit = QString::fromStdString(plan.currency)};
    if (plan.budget) {
        const std::int64_t left = toMinor(plan.budget->limit, plan.currency) - list.totalMinor;
        const double share =
            list.totalMinor > 0 ? static_cast<double>(left) / static_cast<double>(list.totalMinor) : 1.0;
        if (left < 0) {
            summary.lines.append(
                {QStringLiteral("money"),
                 tr("%1 over the limit of %2")
                     .arg(moneyText(-left, plan.currency), moneyText(plan.budget->limit, plan.currency)),
                 {},
                 Severity::caution});
        } else if (share < kContingencyShare) {
            summary.lines.append({.code = QStringLiteral("contingency"),
                                  .text = tr("%1 under the limit: only %2 kept back for the unforeseen")
                                              .arg(moneyText(left, plan.currency), percentText(share * 100.0)),
                                  .mark = Severity::caution});
        } else {
            summary.lines.append(
                {.code = QStringLiteral("contingency"),
                 .text = tr("%1 under the limit of %2")
                             .arg(moneyText(left, plan.currency), moneyText(plan.budget->limit, plan.currency))});
        }
        if (plan.budget->quote) {
            const std::int64_t saved = toMinor(*plan.budget->quote, plan.currency) - list.totalMinor;
            summary.lines.append(
                {.code = QStringLiteral("money"),
                 .text = saved >= 0 ? tr("%1 less than the builder's quote").arg(moneyText(saved, plan.currency))
                                    : tr("%1 more than the builder's quote").arg(moneyText(-saved, plan.currency))});
        }
    } else {
        summary.lines.append({.text = tr("No budget in the plan.")});
    }
    const auto unpriced = std::ranges::count_if(list.lines, [](const ShoppingLine& line) { return !line.priced; });
    if (unpriced > 0) {
        summary.lines.append({.text = counted(static_cast<int>(unpriced), tr("1 line without a price is not in it"),
                                              tr("%1 lines without a price are not in it")),
                              .mark = Severity::caution});
    }
    return summary;
}

void MoneyCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    const ShoppingList& list = assessment.shopping;
    QList<Line> lines;
    const auto add = [&](const QString& key, Line::Kind kind, const QString& name, std::int64_t minor, bool share,
                         int source = -1) {
        const double percent =
            list.totalMinor > 0 ? 100.0 * static_cast<double>(minor) / static_cast<double>(list.totalMinor) : 0.0;
        lines.append({.key = key,
                      .kind = kind,
                      .cells = {name, amount(minor, plan), share ? numberText(percent, 0) : QString()},
                      .source = source});
    };
    const std::vector<Aisle> aisles = aislesOf(list);
    for (int i = 0; i < static_cast<int>(aisles.size()); ++i) {
        add(QString::fromStdString(aisles[i].group), Line::Kind::line, groupName(aisles[i].group), aisles[i].minor,
            true, i);
    }
    add(QStringLiteral("/total"), Line::Kind::total, tr("Total"), list.totalMinor, true);
    add(QStringLiteral("/contingency"), Line::Kind::line,
        tr("Keep back %1").arg(percentText(kContingencyShare * 100.0)),
        contingencyMinor(list.totalMinor), false);
    lines.last().tip = tr("For the unforeseen: 10 to 15 % is common practice, no source.");
    if (plan.budget) {
        const std::int64_t limit = toMinor(plan.budget->limit, plan.currency);
        add(QStringLiteral("/limit"), Line::Kind::line, tr("Limit"), limit, false);
        const std::int64_t left = limit - list.totalMinor;
        add(QStringLiteral("/left"), Line::Kind::line, left < 0 ? tr("Over the limit by") : tr("Left of the limit"),
            std::abs(left), false);
        if (left < contingencyMinor(list.totalMinor)) lines.last().mark = Severity::caution;
        if (plan.budget->quote) {
            add(QStringLiteral("/quote"), Line::Kind::line, tr("Builder's quote"),
                toMinor(*plan.budget->quote, plan.currency), false);
        }
    }
    aisles_->lineModel().setTitle(1, tr("Amount\n%1").arg(QString::fromStdString(plan.currency)));
    aisles_->lineModel().setLines(std::move(lines));
}

QList<FigureValue> MoneyCard::valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const
{
    QList<FigureValue> values;
    const ShoppingList& list = assessment.shopping;
    if (code == QLatin1String("money")) {
        for (const Aisle& aisle : aislesOf(list))
            values.append({groupName(aisle.group), moneyText(aisle.minor, plan.currency)});
    }
    values.append({tr("Total"), moneyText(list.totalMinor, plan.currency)});
    if (!plan.budget) return values;
    values.append({tr("Limit"), moneyText(plan.budget->limit, plan.currency)});
    if (code == QLatin1String("contingency")) {
        values.append(
            {tr("Left"), moneyText(toMinor(plan.budget->limit, plan.currency) - list.totalMinor, plan.currency)});
        values.append({tr("To keep back"), moneyText(contingencyMinor(list.totalMinor), plan.currency)});
    }
    return values;
}

LiveCard::LineNote MoneyCard::noteOf(const LineView&, const Line& line, const Plan& plan,
                                     const Assessment& assessment) const
{
    if (line.source < 0) return {};
    const std::string group = line.key.toStdString();
    QList<FigureValue> values;
    for (const ShoppingLine& item : assessment.shopping.lines) {
        if (item.group != group) continue;
        values.append({item.name.empty() ? itemWord(item.item) : QString::fromStdString(item.name),
                       item.priced ? moneyText(item.priceMinor, plan.currency) : tr("no price")});
    }
    values.append({groupName(group), tr("%1 %2").arg(line.cells.value(1), QString::fromStdString(plan.currency))});
    return {QStringLiteral("money"), values};
}

void MoneyCard::visitSubjects(const LineView&, const Line& line, const Assessment& assessment,
                              const std::function<void(const std::string&)>& visit) const
{
    if (line.source < 0) return;
    const std::string group = line.key.toStdString();
    for (const ShoppingLine& item : assessment.shopping.lines) {
        if (item.group != group) continue;
        for (const ShoppingOrigin& origin : item.origins) visit(origin.subject);
    }
}

}  // namespace yardcast::ui
