#include <QLocale>
#include <QTest>

#include "ui/look/number_text.h"

using namespace yardcast::ui;

class NumberTextTest : public QObject {
    Q_OBJECT

private slots:
    void readsLengths_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<double>("mm");
        QTest::newRow("bare is mm") << "1850" << 1850.0;
        QTest::newRow("cm with a space") << "185 cm" << 1850.0;
        QTest::newRow("m with point") << "1.85 m" << 1850.0;
        QTest::newRow("m with comma") << "1,85m" << 1850.0;
        QTest::newRow("mm") << " 620 mm " << 620.0;
        QTest::newRow("capitals") << "62 CM" << 620.0;
        QTest::newRow("decimals") << "4,5" << 4.5;
        QTest::newRow("begins with the mark") << ".5" << 0.5;
        QTest::newRow("ends with the mark") << "40." << 40.0;
        QTest::newRow("minus") << "-12" << -12.0;
        QTest::newRow("true minus") << QString(QChar(0x2212)) + "12" << -12.0;
        QTest::newRow("three decimals of a metre") << "1.850 m" << 1850.0;
        QTest::newRow("a small decimal") << "0.125" << 0.125;
    }
    void readsLengths()
    {
        QFETCH(QString, text);
        QFETCH(double, mm);
        const NumberReading reading = parseLengthMm(text);
        QVERIFY2(reading, qPrintable(text));
        QCOMPARE(reading.value, mm);
    }

    void refusesLengths_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<int>("fault");
        const auto row = [](const char* name, const char* text, NumberFault fault) {
            QTest::newRow(name) << QString::fromUtf8(text) << static_cast<int>(fault);
        };
        row("nothing", "", NumberFault::empty);
        row("blanks", "  ", NumberFault::empty);
        row("words", "wide", NumberFault::notANumber);
        row("only a unit", "mm", NumberFault::notANumber);
        row("only a mark", ".", NumberFault::notANumber);
        row("only a sign", "-", NumberFault::notANumber);
        row("grouped both ways", "1.850,5", NumberFault::twoMarks);
        row("grouped or not?", "1.850", NumberFault::looksGrouped);
        row("grouped with comma", "12,500", NumberFault::looksGrouped);
        row("two numbers", "1850 620", NumberFault::notANumber);
        row("exponent", "1e3", NumberFault::notANumber);
        row("other unit", "12 ft", NumberFault::unknownUnit);
        row("far away", "99999999999", NumberFault::tooLarge);
        row("far away in m", "99999999 m", NumberFault::tooLarge);
        row("sign in the middle", "12-4", NumberFault::notANumber);
    }
    void refusesLengths()
    {
        QFETCH(QString, text);
        QFETCH(int, fault);
        const NumberReading reading = parseLengthMm(text);
        QVERIFY(!reading);
        QCOMPARE(static_cast<int>(*reading.fault), fault);
        QVERIFY(!numberFaultText(*reading.fault).isEmpty());
    }

    void numbersKnowNoLengthUnit()
    {
        QCOMPARE(parseNumber(u"2,60").value, 2.6);
        QCOMPARE(parseNumber(u"1.850").value, 1.85);
        QVERIFY(!parseNumber(u"25 mm"));
    }

    void writesWhatItReads()
    {
        for (const char* name : {"en_GB", "de_DE", "C"}) {
            QLocale::setDefault(QLocale(QString::fromLatin1(name)));
            for (const double value : {0.0, 1850.0, -12.5, 0.25, 1234567.0, 0.1, 99.99}) {
                QCOMPARE(parseNumber(formatNumber(value)).value, value);
                QCOMPARE(parseNumber(formatFixed(value, 2)).value, value);
            }
        }
        QLocale::setDefault(QLocale(QStringLiteral("de_DE")));
        QCOMPARE(formatNumber(1850.50), QStringLiteral("1850,5"));
        QCOMPARE(formatFixed(2.0, 2), QStringLiteral("2,00"));
        QLocale::setDefault(QLocale(QStringLiteral("en_GB")));
        QCOMPARE(formatNumber(-0.0001, 2), QStringLiteral("0"));
        QCOMPARE(formatNumber(100.0, 0), QStringLiteral("100"));
    }
};

QTEST_GUILESS_MAIN(NumberTextTest)
#include "number_text_test.moc"
