#include <QLocale>
#include <QTest>

#include "ui/wording/lifting_names.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

QString seen(QString text)
{
    return text.replace(QChar(0x00A0), QLatin1Char(' '));
}

Part slabWithSink()
{
    Counter counter;
    Cutout sink;
    sink.id = "K1";
    sink.purpose = CutoutPurpose::sink;
    counter.cutouts = {sink};
    Part part;
    part.id = "C1";
    part.body = counter;
    return part;
}

}  // namespace

class StrengthNamesTest : public QObject {
    Q_OBJECT

private slots:
    void init() { QLocale::setDefault(QLocale::c()); }

    void placesAreSaidByCutoutAndRest()
    {
        const Part part = slabWithSink();
        QCOMPARE(seen(placeText({PlaceKind::stripInFront, "K1", ""}, &part)), "strip in front of sink K1");
        QCOMPARE(placeText({PlaceKind::stripInFront, "K1", ""}), "strip in front of K1");
        QCOMPARE(placeText({PlaceKind::stripBehind, "K9", ""}, &part), "strip behind K9");
        QCOMPARE(placeText({PlaceKind::middleOfSpan, "S1", "S2"}, &part), "middle of span S1–S2");
        QCOMPARE(placeText({PlaceKind::over, "S1", ""}, &part), "over S1");
        QCOMPARE(placeText({PlaceKind::corner, "", ""}, &part), "inner corner of the outline");
    }

    void everyCaseAndPlaceHasItsOwnWords()
    {
        QStringList cases;
        for (int which = 0; which <= static_cast<int>(StrengthCase::standing); ++which) {
            cases << strengthCaseName(static_cast<StrengthCase>(which));
        }
        QVERIFY(!cases.contains(QString()));
        QCOMPARE(cases.removeDuplicates(), 0);
        QStringList places;
        for (int kind = 0; kind <= static_cast<int>(PlaceKind::body); ++kind) {
            places << placeText({static_cast<PlaceKind>(kind), "K1", "S2"});
        }
        QVERIFY(!places.contains(QString()));
        QCOMPARE(places.removeDuplicates(), 0);
    }

    void agesAreHoursAndThenDays()
    {
        QCOMPARE(seen(ageText(48.0)), "at 48 h");
        QCOMPARE(seen(ageText(36.5)), "at 36.5 h");
        QCOMPARE(ageText(168.0), "at 7 days");
        QCOMPARE(ageText(672.0), "at 28 days");
        QCOMPARE(seen(ageText(130.0)), "at 130 h");
    }

    void handsAndEdgesAreNoIds()
    {
        QCOMPARE(heldText("hand 2"), "hand 2");
        QCOMPARE(heldText("batten 1"), "batten 1");
        QCOMPARE(heldText("late corner"), "late corner");
        QCOMPARE(heldText("S1"), "S1");
        QCOMPARE(heldText("edge"), "edge");
    }

    void forcesAreSaidAsWhatWouldWeighThem()
    {
        // 9.81 N weigh 1 kg.
        QCOMPARE(seen(heldForceText(19.0 * 9.81)), "19 kg");
        QCOMPARE(seen(heldForceText(190.0)), "19 kg");
        QCOMPARE(seen(heldForceText(3.0)), "under 1 kg");
        QCOMPARE(seen(heldForceText(0.0)), "0 kg");
    }

    void gripsTooHeavyForOnePersonAreNamed()
    {
        const std::vector<GripLoad> loads{{{0, 0}, 25.0}, {{1, 0}, 31.0}, {{2, 0}, 12.0}, {{3, 0}, 40.0}};
        QCOMPARE(seen(heavyGripsText(loads, 25.0)),
                 "Grip 2 bears 31.0 kg, grip 4 bears 40.0 kg: more than the 25.0 kg of one person. Two take such a grip, or "
                 "move the grips.");
        QVERIFY(heavyGripsText(loads, 40.0).isEmpty());
    }
};

}  // namespace yardcast::ui

QTEST_APPLESS_MAIN(yardcast::ui::StrengthNamesTest)
#include "strength_names_test.moc"
