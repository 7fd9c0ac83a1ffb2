#include <QLocale>
#include <QTest>

#include "ui/wording/steel_names.h"

namespace yardcast::ui {

namespace {

QString seen(QString text)
{
    return text.replace(QChar(0x00A0), QLatin1Char(' '));
}

SteelCheck check()
{
    SteelCheck made;
    made.tensionAtFace = true;
    made.designMomentN = 400.0;
    made.crackingMomentN = 500.0;
    made.resistanceN = 600.0;
    made.resistancePlainN = 200.0;
    made.resistanceBestN = 700.0;
    made.steelAreaMm2M = 250.0;
    return made;
}

}  // namespace

class SteelNamesTest : public QObject {
    Q_OBJECT

private slots:
    void init() { QLocale::setDefault(QLocale::c()); }

    void heightsAreSaidFromWhereTheyAreMeasured()
    {
        SteelHeight height;
        height.distanceMm = 18.5;
        QCOMPARE(seen(heightText(height, SteelDatum::mouldBase)), "18.5 mm above the mould base");
        QCOMPARE(seen(heightText(height, SteelDatum::frontWall)), "18.5 mm from the front wall of the mould");
        QCOMPARE(barMark(3), "bar 3");
        QCOMPARE(meshMark(1), "mesh 1");
        QCOMPARE(barShapeText("00"), "straight");
        QVERIFY(steelSideText(SteelSide::middle).contains("works either way, but weakly"));
    }

    void whatSteelIsWorthIsSaid()
    {
        QCOMPARE(steelCheckText(check()), "Steel is needed at the face. Cracked, with its steel, it carries 1.5 times what "
                                          "is asked; plain concrete 0.5 times.");
        QVERIFY(!steelIsWeak(check()));
        SteelCheck brittle = check();
        brittle.breaksWithoutWarning = true;
        QVERIFY(steelCheckText(brittle).contains("would break without warning"));
        QVERIFY(steelIsWeak(brittle));
        SteelCheck misplaced = check();
        misplaced.resistanceN = 100.0;
        QVERIFY(steelCheckText(misplaced).contains("Where it lies the steel is worth little"));
        QVERIFY(steelIsWeak(misplaced));
        SteelCheck bare = check();
        bare.steelAreaMm2M = 0.0;
        bare.resistanceN = 0.0;
        QVERIFY(steelCheckText(bare).contains("No steel that counts lies towards the face"));
    }

    void aSectionThatIsAskedNextToNothingIsNoMatter()
    {
        SteelCheck idle = check();
        idle.designMomentN = 2.0;
        idle.breaksWithoutWarning = true;
        QVERIFY(!steelMatters(idle));
        QVERIFY(!steelIsWeak(idle));
        QVERIFY(steelCheckText(idle).contains("over 20 times"));
    }
};

}  // namespace yardcast::ui

QTEST_APPLESS_MAIN(yardcast::ui::SteelNamesTest)
#include "steel_names_test.moc"
