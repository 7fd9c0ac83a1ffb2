#include "ui/wording/readiness_names.h"

#include <cmath>

#include <QTest>

using namespace yardcast;
using namespace yardcast::ui;

namespace {

QString plain(QString text) { return text.replace(QChar(0x00A0), QLatin1Char(' ')); }

}  // namespace

class ReadinessNamesTest : public QObject {
    Q_OBJECT

private slots:
    void hoursAreRoundedOneWayAndNeverDown()
    {
        QCOMPARE(plain(waitText(30.2)), QStringLiteral("31 h"));
        QCOMPARE(plain(waitText(48.0)), QStringLiteral("48 h"));
        QCOMPARE(plain(waitText(48.2)), QStringLiteral("2.5 days"));
        QCOMPARE(plain(waitText(60.0)), QStringLiteral("2.5 days"));
        QCOMPARE(plain(waitText(71.9)), QStringLiteral("3 days"));
        QCOMPARE(plain(waitText(179.0)), QStringLiteral("7.5 days"));
        QCOMPARE(waitText(HUGE_VAL), QStringLiteral("never"));
        // What a remedy writes into the plan is what the sentence says.
        for (double h = 1.0; h < 400.0; h += 0.7) {
            QVERIFY(shownWaitH(h) >= h - 0.05);
            QCOMPARE(waitText(shownWaitH(h)), waitText(h));
        }
    }

    void whatThePlanStatesIsNotRounded()
    {
        QCOMPARE(plain(plannedHourText(40.0)), QStringLiteral("40 h"));
        QCOMPARE(plain(plannedHourText(50.0)), QStringLiteral("2.1 days (50 h)"));
    }

    void curingGoesByHalfDays()
    {
        QCOMPARE(plain(curingDaysText(2.3)), QStringLiteral("2.5 days"));
        QCOMPARE(plain(curingDaysText(2.5)), QStringLiteral("2.5 days"));
        QCOMPARE(plain(curingDaysText(3.01)), QStringLiteral("3.5 days"));
    }

    void nobodyLiftsAtNight()
    {
        QVERIFY(isNight(20.0) && isNight(5.9) && isNight(48.0) && !isNight(6.0) && !isNight(43.9));
        QVERIFY(byDayText(30.0, 8.0).isEmpty());  // 14:00
        QVERIFY(byDayText(40.0, 8.0).endsWith(QStringLiteral("day 3, 6:00")));
        QVERIFY(byDayText(37.0, 8.0).endsWith(QStringLiteral("day 3, 6:00")));  // 21:00 of the second day
    }
};

QTEST_APPLESS_MAIN(ReadinessNamesTest)
#include "readiness_names_test.moc"
