#include <cmath>

#include <QtTest>

#include "core/purchase/currency.h"
#include "sheet_plans.h"
#include "ui/sheets/shopping_rows.h"

using namespace yardcast;
using namespace yardcast::ui;

class ShoppingRowsTest : public QObject {
    Q_OBJECT

private slots:
    void everyLineIsInItsAisleOnce()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            const AssessmentPtr assessment = assessed(plan);
            QVERIFY(!assessment->shopping.lines.empty());
            std::size_t rows = 0;
            QStringList names;
            for (const ShoppingAisle& aisle : shoppingAisles(assessment->shopping)) {
                QVERIFY(!names.contains(aisle.name));
                names << aisle.name;
                QVERIFY(!aisle.rows.empty());
                rows += aisle.rows.size();
            }
            QCOMPARE(rows, assessment->shopping.lines.size());
        }
    }

    void subtotalsMakeTheTotal()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            const AssessmentPtr assessment = assessed(plan);
            std::int64_t sum = 0;
            for (const ShoppingAisle& aisle : shoppingAisles(assessment->shopping)) {
                sum += std::llround(aisle.subtotal.toDouble() *
                                    static_cast<double>(minorPerUnit(assessment->shopping.currency)));
            }
            QCOMPARE(sum, assessment->shopping.totalMinor);
        }
    }

    void aLineSaysNeedPacksAndRest()
    {
        ShoppingList list;
        list.currency = "EUR";
        ShoppingLine board;
        board.item = "mould_board";
        board.name = "Board 2500 x 1250";
        board.group = "boards";
        board.unit = "m2";
        board.need = 5.5;
        board.owned = 0.5;
        board.packs = {{3.125, 2, 3900}};
        board.priceMinor = 7800;
        board.leftover = 1.25;
        board.estimate = true;
        ShoppingLine unknown;
        unknown.item = "foam_22";
        unknown.name = "foam_22";
        unknown.group = "boards";
        unknown.unit = "m2";
        unknown.need = 1.0;
        unknown.priced = false;
        list.lines = {board, unknown};
        const auto aisles = shoppingAisles(list);
        QCOMPARE(aisles.size(), std::size_t{1});
        const ShoppingRow& row = aisles[0].rows[0];
        const auto plain = [](QString text) { return text.replace(QChar(0x00A0), QLatin1Char(' ')); };
        QCOMPARE(plain(row.need), estimateMark() + QStringLiteral(" 5.5 m\u00B2"));
        QCOMPARE(plain(row.owned), QStringLiteral("0.5 m\u00B2"));
        // The size of a pack is not rounded.
        QCOMPARE(plain(row.packs.join(QLatin1Char('|'))), QStringLiteral("2 \u00D7 3.125 m\u00B2"));
        QCOMPARE(plain(row.leftover), QStringLiteral("left over 1.25 m\u00B2"));
        QCOMPARE(row.price, QStringLiteral("78.00"));
        QCOMPARE(aisles[0].rows[1].name, QStringLiteral("Foam, 22 mm"));
        QVERIFY(aisles[0].rows[1].price.isEmpty());
        QVERIFY(!aisles[0].rows[1].packs.isEmpty());
    }

    void budgetAndQuoteAreCompared()
    {
        Plan plan = counterPlan();
        plan.budget = Budget{};
        plan.budget->limit = 10.0;
        plan.budget->quote = 20.0;
        Assessment assessment = *assessed(plan);
        assessment.shopping.totalMinor = 1550;
        const auto text = [&] {
            QStringList all;
            for (const auto& [words, figure] : shoppingSums(plan, assessment).lines) {
                all << words + QLatin1Char('=') + figure;
            }
            return all.join(QLatin1Char('|')).replace(QChar(0x00A0), QLatin1Char(' '));
        };
        QVERIFY(text().contains(QStringLiteral("OVER the limit by=5.50 EUR")));
        QVERIFY(text().contains(QStringLiteral("Less than the quote by=4.50 EUR")));
        assessment.shopping.totalMinor = 900;
        QVERIFY(text().contains(QStringLiteral("Left of it=1.00 EUR")));
    }

    void inventedPricesAreCalledSo()
    {
        const Plan plan = counterPlan();
        const AssessmentPtr example = assessed(plan);
        QVERIFY(shoppingSums(plan, *example).remarks.join(QLatin1Char(' ')).contains(QStringLiteral("invented")));
        PriceBook own = exampleBook();
        own.currency = "EUR";
        const AssessmentPtr real = assess(plan, own);
        QVERIFY(!shoppingSums(plan, *real).remarks.join(QLatin1Char(' ')).contains(QStringLiteral("invented")));
    }

    void stopsStandOnTheList()
    {
        Plan plan = counterPlan();
        const auto remarks = [&] {
            return shoppingSums(plan, *assessed(plan)).remarks.join(QLatin1Char('|'));
        };
        // 97 kg for two people is more than twice what they can lift.
        QVERIFY2(remarks().contains(QStringLiteral("Stop: C1 counter")), qPrintable(remarks()));
        plan.crew.people = 8;
        QVERIFY2(!remarks().contains(QStringLiteral("has a mass")), qPrintable(remarks()));
    }

    void yenHaveNoDecimals()
    {
        Plan plan = counterPlan();
        plan.currency = "JPY";
        const AssessmentPtr assessment = assessed(plan);
        for (const ShoppingAisle& aisle : shoppingAisles(assessment->shopping)) {
            QVERIFY2(!aisle.subtotal.contains(QLatin1Char('.')), qPrintable(aisle.subtotal));
        }
    }
};

QTEST_MAIN(ShoppingRowsTest)
#include "shopping_rows_test.moc"
