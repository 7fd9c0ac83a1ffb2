#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include <QString>
#include <QStringList>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"

namespace yardcast::ui {

/// One line of the list as it is printed.
struct ShoppingRow {
    QString name;
    QString need;      ///< exact; begins with the mark of an estimate where it is one
    QString owned;     ///< empty where nothing is owned
    QStringList packs; ///< one text a pack size: "8 × 25 kg"
    QString leftover;  ///< "1.4 l left over"; empty where nothing is left
    QString price;     ///< the figure alone; the currency stands in the heading
};

struct ShoppingAisle {
    QString name;
    std::vector<ShoppingRow> rows;
    QString subtotal;
};

struct ShoppingSums {
    QString currency;                ///< for headings; empty where the plan has none
    std::vector<std::pair<QString, QString>> lines;  ///< total, budget, quote, mass: words and figure
    QStringList remarks;             ///< what the marks mean, what the prices are
};

/// The mark before a need that is an estimate.
QString estimateMark();
std::vector<ShoppingAisle> shoppingAisles(const ShoppingList& list);
ShoppingSums shoppingSums(const Plan& plan, const Assessment& assessment);

}  // namespace yardcast::ui
