#include <cmath>
#include <limits>

#include <QLocale>
#include <QTest>

#include "ui/wording/figure_notes.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

/// As a person sees it: the no-break space before a unit is a space.
QString seen(QString text)
{
    return text.replace(QChar(0x00A0), QLatin1Char(' '));
}

}  // namespace

class FiguresTest : public QObject {
    Q_OBJECT

private slots:
    void init() { QLocale::setDefault(QLocale::c()); }

    void massHasOneDecimalUnderAHundred()
    {
        QCOMPARE(seen(massText(56.25)), QStringLiteral("56.3 kg"));
        QCOMPARE(seen(massText(99.94)), QStringLiteral("99.9 kg"));
        QCOMPARE(seen(massText(99.96)), QStringLiteral("100 kg"));
        QCOMPARE(seen(massText(214.4)), QStringLiteral("214 kg"));
        QCOMPARE(seen(massText(-0.01)), QStringLiteral("0.0 kg"));
        QCOMPARE(seen(massText(1e300)), QStringLiteral("1e+300 kg"));
        QCOMPARE(massText(std::numeric_limits<double>::quiet_NaN()), QString(QChar(0x2013)));
    }

    void lengthsDropIdleDecimals()
    {
        QCOMPARE(seen(lengthText(1850)), QStringLiteral("1850 mm"));
        QCOMPARE(seen(lengthText(62.54)), QStringLiteral("62.5 mm"));
        QCOMPARE(seen(lengthText(-20)), QStringLiteral("-20 mm"));
        QCOMPARE(seen(sizeText(1850, 620)), QStringLiteral("1850 × 620 mm"));
    }

    void hoursOfTheDayAreClockTimes()
    {
        QCOMPARE(clockText(7.5), QStringLiteral("07:30"));
        QCOMPARE(clockText(0.0), QStringLiteral("00:00"));
        QCOMPARE(clockText(25.25), QStringLiteral("01:15"));
        QCOMPARE(clockText(-1.0), QStringLiteral("23:00"));
        QCOMPARE(clockText(23.9999), QStringLiteral("00:00"));
        QCOMPARE(clockText(HUGE_VAL), QString(QChar(0x2013)));
    }
    void moneyKeepsMinorDigitsOfTheCurrency()
    {
        QCOMPARE(seen(moneyText(std::int64_t(32140), "EUR")), QStringLiteral("321.40 EUR"));
        QCOMPARE(seen(moneyText(std::int64_t(5), "EUR")), QStringLiteral("0.05 EUR"));
        QCOMPARE(seen(moneyText(std::int64_t(-5), "EUR")), QStringLiteral("-0.05 EUR"));
        QCOMPARE(seen(moneyText(std::int64_t(5200), "JPY")), QStringLiteral("5200 JPY"));
        QCOMPARE(seen(moneyText(std::int64_t(5400), "KWD")), QStringLiteral("5.400 KWD"));
        QCOMPARE(seen(moneyText(std::int64_t(540), "XXX")), QStringLiteral("5.40"));
        QCOMPARE(seen(moneyText(900.0, "EUR")), QStringLiteral("900.00 EUR"));
        QCOMPARE(seen(moneyText(std::numeric_limits<std::int64_t>::min(), "JPY")),
                 QStringLiteral("-9223372036854775808 JPY"));
    }

    void decimalSignIsTheLocales()
    {
        QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
        QCOMPARE(seen(massText(56.25)), QStringLiteral("56,3 kg"));
        QCOMPARE(seen(moneyText(std::int64_t(1232140), "EUR")), QStringLiteral("12321,40 EUR"));
        QCOMPARE(plainMoneyText(1232140, "EUR"), QStringLiteral("12321.40"));
        QCOMPARE(seen(lengthText(1850.5)), QStringLiteral("1850,5 mm"));
    }

    void amountsReadAsAPersonWouldWriteThem()
    {
        QCOMPARE(seen(amountText(187.5123, "kg")), QStringLiteral("188 kg"));
        QCOMPARE(seen(amountText(4.51236, "m2")), QStringLiteral("4.51 m²"));
        QCOMPARE(seen(amountText(3.125, "m2")), QStringLiteral("3.125 m²"));
        QCOMPARE(seen(amountText(2.0, "l")), QStringLiteral("2 l"));
        QCOMPARE(amountText(1.0, "piece"), QStringLiteral("1 piece"));
        QCOMPARE(amountText(2.2, "piece"), QStringLiteral("3 pieces"));
    }

    void namesOfSubjects()
    {
        Plan plan;
        Part part;
        part.id = "C1";
        part.name = "Sink slab";
        part.body = Counter{};
        plan.parts.push_back(std::make_shared<const Part>(part));
        QCOMPARE(subjectName(&plan, "C1"), QStringLiteral("C1 Sink slab"));
        QCOMPARE(subjectName(&plan, "C1.2"), QStringLiteral("C1.2 Sink slab"));
        QCOMPARE(subjectName(&plan, "worktop"), QStringLiteral("worktop"));
        QCOMPARE(subjectName(nullptr, "C1"), QStringLiteral("C1"));
        QCOMPARE(itemWord("mesh_4_50"), QStringLiteral("mesh, 4 mm at 50 mm"));
        QCOMPARE(itemWord("bar_8"), QStringLiteral("bar, 8 mm"));
        QCOMPARE(itemWord("mesh_3_50_glass"), QStringLiteral("mesh, 3 mm at 50 mm, glass fibre"));
        QCOMPARE(itemWord("bar_6_stainless"), QStringLiteral("bar, 6 mm, stainless steel"));
    }

    void everyFigureHasItsNote()
    {
        QVERIFY(figureCodes().size() >= 25);
        for (const std::string& code : figureCodes()) {
            const FigureNote note = figureNote(code);
            QVERIFY2(!note.title.isEmpty() && !note.formula.isEmpty() && !note.source.isEmpty(), code.c_str());
        }
        QVERIFY(figureNote("no_such_figure").title.isEmpty());
    }
};

}  // namespace yardcast::ui

QTEST_APPLESS_MAIN(yardcast::ui::FiguresTest)
#include "figures_test.moc"
