#include "ui/sheets/shopping_rows.h"

#include <algorithm>
#include <cmath>


#include "core/purchase/currency.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/finding_words.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

/// The figure of an amount of money, without its code.
QString priceFigure(std::int64_t minor, const std::string& currency)
{
    return numberText(fromMinor(minor, currency), minorDigits(currency));
}

/// The size of a pack is never rounded: a sheet of 3.125 m2 is not 3.13.
QString packSize(double size, const std::string& unit)
{
    return unit == "piece" ? amountText(size, unit) : shortNumberText(size, 4) + QChar(0x00A0) + unitName(unit);
}

/// The book's name; where it has none, the key in words.
QString lineName(const ShoppingLine& line)
{
    const QString name = QString::fromStdString(line.name);
    const QString key = QString::fromStdString(line.item);
    if (!name.startsWith(key)) {
        return name;
    }
    QString words = itemWord(line.item) + name.mid(key.size());
    if (!words.isEmpty()) {
        words[0] = words[0].toUpper();
    }
    return words;
}

ShoppingRow rowOf(const ShoppingLine& line, const std::string& currency)
{
    ShoppingRow row;
    row.name = lineName(line);
    row.need = (line.estimate ? estimateMark() + QChar(0x00A0) : QString()) + amountText(line.need, line.unit);
    if (line.owned > 0.0) {
        row.owned = amountText(line.owned, line.unit);
    }
    for (const PackChoice& pack : line.packs) {
        row.packs << QString::number(pack.count) + QChar(0x00A0) + QChar(0x00D7) + QChar(0x00A0) +
                         packSize(pack.size, line.unit);
    }
    if (!line.priced) {
        row.packs = {Sheets::tr("no price known")};
    } else if (line.packs.empty()) {
        row.packs = {Sheets::tr("nothing to buy")};
    }
    if (line.leftover > 0.0) {
        row.leftover = Sheets::tr("left over %1").arg(amountText(line.leftover, line.unit));
    }
    if (line.priced && !line.packs.empty()) {
        row.price = priceFigure(line.priceMinor, currency);
    }
    return row;
}

/// Nobody should buy for a plan that cannot be built: the stops stand on the list.
QStringList stopRemarks(const Plan& plan, const Assessment& assessment)
{
    constexpr int kMostStops = 4;
    QStringList remarks;
    int more = 0;
    for (const Finding& finding : assessment.findings) {
        if (finding.severity != Severity::stop) {
            continue;
        }
        if (remarks.size() < kMostStops) {
            remarks << severityName(finding.severity) + QStringLiteral(": ") + findingText(finding, &plan);
        } else {
            ++more;
        }
    }
    if (more > 0) {
        remarks << Sheets::tr("And %1 more stops: settle them before you buy.").arg(more);
    }
    return remarks;
}

bool hasFinding(const Assessment& assessment, const char* code)
{
    return std::any_of(assessment.findings.begin(), assessment.findings.end(),
                       [&](const Finding& finding) { return finding.code == code; });
}

}  // namespace

QString estimateMark()
{
    return QString(QChar(0x2248));
}

std::vector<ShoppingAisle> shoppingAisles(const ShoppingList& list)
{
    std::vector<ShoppingAisle> aisles;
    std::string group;
    std::int64_t sum = 0;
    for (const ShoppingLine& line : list.lines) {
        if (aisles.empty() || line.group != group) {
            group = line.group;
            sum = 0;
            aisles.push_back({groupName(group), {}, {}});
        }
        sum += line.priceMinor;
        aisles.back().rows.push_back(rowOf(line, list.currency));
        aisles.back().subtotal = priceFigure(sum, list.currency);
    }
    return aisles;
}

ShoppingSums shoppingSums(const Plan& plan, const Assessment& assessment)
{
    const ShoppingList& list = assessment.shopping;
    const std::string& currency = list.currency;
    ShoppingSums sums;
    if (currency != kNoCurrency) {
        sums.currency = QString::fromStdString(currency);
    }
    sums.lines.emplace_back(Sheets::tr("Total of this list"), moneyText(list.totalMinor, currency));
    if (plan.budget) {
        const std::int64_t limit = toMinor(plan.budget->limit, currency);
        sums.lines.emplace_back(Sheets::tr("Your limit"), moneyText(limit, currency));
        const std::int64_t left = limit - list.totalMinor;
        sums.lines.emplace_back(left >= 0 ? Sheets::tr("Left of it") : Sheets::tr("OVER the limit by"),
                                moneyText(left >= 0 ? left : -left, currency));
        if (plan.budget->quote) {
            const std::int64_t quote = toMinor(*plan.budget->quote, currency);
            sums.lines.emplace_back(Sheets::tr("A builder's quote"), moneyText(quote, currency));
            const std::int64_t saved = quote - list.totalMinor;
            sums.lines.emplace_back(saved >= 0 ? Sheets::tr("Less than the quote by")
                                               : Sheets::tr("MORE than the quote by"),
                                    moneyText(saved >= 0 ? saved : -saved, currency));
        }
    }
    if (list.massKg > 0.0) {
        sums.lines.emplace_back(Sheets::tr("To carry home: dry mix, cement, steel"), massText(list.massKg));
    }
    sums.remarks << stopRemarks(plan, assessment);
    if (hasFinding(assessment, "example_prices")) {
        sums.remarks << Sheets::tr("Prices: invented example. They are nobody's offer; put in your own before you "
                                   "decide.");
    }
    const auto any = [&](auto test) { return std::any_of(list.lines.begin(), list.lines.end(), test); };
    if (any([](const ShoppingLine& line) { return line.estimate; })) {
        sums.remarks << Sheets::tr("%1 An estimate: it holds until the cuts are planned.").arg(estimateMark());
    }
    if (any([](const ShoppingLine& line) { return !line.priced; })) {
        sums.remarks << Sheets::tr("Lines without a known price are not in the total.");
    }
    sums.remarks << Sheets::tr("Not in the list: sink, tap, appliances, hire of tools, delivery, trades, your "
                               "hours.");
    return sums;
}

}  // namespace yardcast::ui
