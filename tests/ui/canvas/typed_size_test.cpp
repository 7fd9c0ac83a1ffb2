#include <QLocale>
#include <QtTest>

#include "ui/canvas/typed_size.h"

using namespace yardcast::ui;

class TypedSizeTest : public QObject {
    Q_OBJECT

private slots:
    void reads_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<double>("first");
        QTest::addColumn<double>("second");  // -1: none
        QTest::newRow("mm") << "1850" << 1850.0 << -1.0;
        QTest::newRow("two") << "1850 620" << 1850.0 << 620.0;
        QTest::newRow("times") << "1850x620" << 1850.0 << 620.0;
        QTest::newRow("times spaced") << " 1850 x 620 " << 1850.0 << 620.0;
        QTest::newRow("times sign") << QString::fromUtf8("1850 \u00d7 620") << 1850.0 << 620.0;
        QTest::newRow("cm") << "185 cm" << 1850.0 << -1.0;
        QTest::newRow("cm tight") << "185cm" << 1850.0 << -1.0;
        QTest::newRow("m point") << "1.85 m" << 1850.0 << -1.0;
        QTest::newRow("m comma") << "1,85 m" << 1850.0 << -1.0;
        QTest::newRow("both units") << "1,85 m x 62 cm" << 1850.0 << 620.0;
        QTest::newRow("both units, space") << "1.85 m 62 cm" << 1850.0 << 620.0;
        QTest::newRow("one unit for both") << "185 x 62 cm" << 1850.0 << 620.0;
        QTest::newRow("one unit for both, metres") << "1,85 0,62 m" << 1850.0 << 620.0;
        QTest::newRow("mm said") << "1850 mm" << 1850.0 << -1.0;
        QTest::newRow("decimal mm") << "12,5" << 12.5 << -1.0;
        QTest::newRow("minus") << "-120" << -120.0 << -1.0;
        QTest::newRow("two moves") << "100 -50" << 100.0 << -50.0;
        QTest::newRow("capital") << "1850X620" << 1850.0 << 620.0;
    }

    void reads()
    {
        QFETCH(QString, text);
        QFETCH(double, first);
        QFETCH(double, second);
        for (const QLocale::Language language : {QLocale::English, QLocale::German}) {
            QLocale::setDefault(QLocale(language));
            const TypedSizeReading reading = readTypedSize(text);
            QVERIFY2(bool(reading), qPrintable(reading.fault));
            QCOMPARE(reading.size.firstMm, first);
            QCOMPARE(reading.size.secondMm.has_value(), second != -1.0);
            if (reading.size.secondMm) QCOMPARE(*reading.size.secondMm, second);
        }
        QLocale::setDefault(QLocale(QLocale::English));
    }

    void refusesInWords_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("says");
        QTest::newRow("empty") << "  " << "needed";
        QTest::newRow("letters") << "wide" << "not a number";
        QTest::newRow("unit") << "12 ft" << "unit";
        QTest::newRow("two marks") << "1.850,5" << "thousands";
        QTest::newRow("grouped") << "1.850" << "1.85 m";
        QTest::newRow("grouped by a space") << "1 850" << "1850";
        QTest::newRow("three figures") << "1 2 3" << "two figures";
        QTest::newRow("second is bad") << "1850 x 6%" << "6%";
        QTest::newRow("times only") << "x" << "needed";
    }

    void refusesInWords()
    {
        QFETCH(QString, text);
        QFETCH(QString, says);
        const TypedSizeReading reading = readTypedSize(text);
        QVERIFY(!reading);
        QVERIFY2(reading.fault.contains(says, Qt::CaseInsensitive), qPrintable(reading.fault));
    }
};

QTEST_GUILESS_MAIN(TypedSizeTest)
#include "typed_size_test.moc"
