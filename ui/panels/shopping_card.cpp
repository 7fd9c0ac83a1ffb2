#include "ui/panels/shopping_card.h"

#include <algorithm>
#include <set>

#include "core/purchase/currency.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString priceText(std::int64_t minor, const std::string& currency)
{
    return numberText(fromMinor(minor, currency), minorDigits(currency));
}

QStringList detailsOf(const ShoppingLine& line)
{
    QStringList details;
    for (const PackChoice& pack : line.packs) {
        details.append(ShoppingCard::tr("%1 × %2").arg(pack.count).arg(amountText(pack.size, line.unit)));
    }
    if (line.packs.empty() && line.need <= line.owned) details.append(ShoppingCard::tr("nothing to buy"));
    details.append(ShoppingCard::tr("need %1").arg(amountText(line.need, line.unit)));
    if (line.owned > 0.0) details.append(ShoppingCard::tr("owned %1").arg(amountText(line.owned, line.unit)));
    if (line.leftover > 1e-9)
        details.append(ShoppingCard::tr("%1 left over").arg(amountText(line.leftover, line.unit)));
    if (line.estimate) details.append(ShoppingCard::tr("estimate"));
    return details;
}

}  // namespace

ShoppingCard::ShoppingCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("shoppingCard"), document, selection, live, parent)
{
    setEmptyText(tr("Nothing to buy yet. What a part needs is listed here as soon as it is drawn."));
    list_ = addTable(tr("Shopping list"), {{tr("Item"), false}, {tr("Price"), true}});
}

CardSummary ShoppingCard::summarise(const Plan& plan, const Assessment& assessment) const
{
    const ShoppingList& list = assessment.shopping;
    CardSummary summary;
    summary.empty = list.lines.empty();
    if (summary.empty) return summary;
    std::set<std::string> aisles;
    int packs = 0;
    int estimates = 0;
    for (const ShoppingLine& line : list.lines) {
        aisles.insert(line.group);
        estimates += line.estimate ? 1 : 0;
        for (const PackChoice& pack : line.packs) packs += pack.count;
    }
    const QString where = counted(static_cast<int>(aisles.size()), tr("1 aisle"), tr("%1 aisles"));
    summary.big = {.code = QStringLiteral("packs"),
                   .text = QString::number(packs),
                   .unit = packs == 1 ? tr("pack to buy in %1").arg(where) : tr("packs to buy in %1").arg(where)};
    summary.lines.append(
        {.code = QStringLiteral("money"), .text = tr("%1 in all").arg(moneyText(list.totalMinor, plan.currency))});
    summary.lines.append({.text = tr("About %1 to carry home").arg(massText(list.massKg))});
    if (estimates > 0) {
        summary.lines.append(
            {.text = counted(estimates, tr("1 line is an estimate"), tr("%1 lines are estimates"))});
    }
    return summary;
}

void ShoppingCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    QList<Line> lines;
    std::string group;
    for (int i = 0; i < static_cast<int>(assessment.shopping.lines.size()); ++i) {
        const ShoppingLine& line = assessment.shopping.lines[i];
        if (i == 0 || line.group != group) {
            group = line.group;
            const QString name = groupName(group);
            lines.append({.key = QStringLiteral("aisle/") + QString::fromStdString(group),
                          .kind = Line::Kind::heading,
                          .cells = {name}});
        }
        const QString name = line.name.empty() ? itemWord(line.item) : QString::fromStdString(line.name);
        const QString price = line.priced ? priceText(line.priceMinor, plan.currency) : tr("no price");
        lines.append({.key = QString::fromStdString(line.item) + QLatin1Char('/') + name,
                      .cells = {name, price},
                      .details = detailsOf(line),
                      .source = i});
    }
    if (!lines.isEmpty()) {
        lines.append({.key = QStringLiteral("total"),
                      .kind = Line::Kind::total,
                      .cells = {tr("Total"), priceText(assessment.shopping.totalMinor, plan.currency)}});
    }
    list_->lineModel().setTitle(1, tr("Price\n%1").arg(QString::fromStdString(plan.currency)));
    list_->lineModel().setLines(std::move(lines));
}

QList<FigureValue> ShoppingCard::valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const
{
    QList<FigureValue> values;
    const ShoppingList& list = assessment.shopping;
    if (code == QLatin1String("money")) {
        values.append({tr("Lines with a price"),
                       QString::number(std::ranges::count_if(list.lines, &ShoppingLine::priced))});
        values.append({tr("Total"), moneyText(list.totalMinor, plan.currency)});
        return values;
    }
    std::vector<std::string> groups;
    for (const ShoppingLine& line : list.lines) {
        if (groups.empty() || groups.back() != line.group) groups.push_back(line.group);
    }
    for (const std::string& group : groups) {
        int packs = 0;
        for (const ShoppingLine& line : list.lines) {
            if (line.group != group) continue;
            for (const PackChoice& pack : line.packs) packs += pack.count;
        }
        values.append({groupName(group), counted(packs, tr("1 pack"), tr("%1 packs"))});
    }
    return values;
}

LiveCard::LineNote ShoppingCard::noteOf(const LineView&, const Line& line, const Plan& plan,
                                        const Assessment& assessment) const
{
    if (line.source < 0) return {};
    constexpr qsizetype mostOrigins = 12;
    const ShoppingLine& item = assessment.shopping.lines[line.source];
    QList<FigureValue> values;
    for (const ShoppingOrigin& origin : item.origins) {
        if (values.size() == mostOrigins) {
            values.append({tr("and %1 more").arg(static_cast<qsizetype>(item.origins.size()) - mostOrigins), {}});
            break;
        }
        const QString from = origin.subject.empty() ? tr("the plan") : subjectName(&plan, origin.subject);
        values.append({from, amountText(origin.amount, item.unit)});
    }
    values.append({tr("Need"), amountText(item.need, item.unit)});
    if (item.owned > 0.0) values.append({tr("Owned"), amountText(item.owned, item.unit)});
    for (const PackChoice& pack : item.packs) {
        values.append({tr("%1 × %2").arg(pack.count).arg(amountText(pack.size, item.unit)),
                       tr("%1 each").arg(moneyText(pack.priceMinor, plan.currency))});
    }
    if (item.priced) values.append({tr("Price"), moneyText(item.priceMinor, plan.currency)});
    return {QStringLiteral("packs"), values};
}

void ShoppingCard::visitSubjects(const LineView&, const Line& line, const Assessment& assessment,
                                 const std::function<void(const std::string&)>& visit) const
{
    if (line.source < 0) return;
    for (const ShoppingOrigin& origin : assessment.shopping.lines[line.source].origins) visit(origin.subject);
}

}  // namespace yardcast::ui
