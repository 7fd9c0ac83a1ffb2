#include <QtTest>

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QToolButton>

#include "ui/window/angle_field.h"
#include "ui/window/message_bar.h"
#include "ui/window/new_plan.h"
#include "ui/window/window_memory.h"

#include "core/io/plan_file.h"

using namespace yardcast;
using namespace yardcast::ui;

class PiecesTest : public QObject {
    Q_OBJECT

private slots:
    void aWindowIsBroughtBackToAScreenThatIsThere_data()
    {
        QTest::addColumn<QRect>("window");
        QTest::addColumn<QRect>("expected");
        QTest::newRow("inside") << QRect(10, 20, 800, 600) << QRect(10, 20, 800, 600);
        QTest::newRow("second screen gone") << QRect(2200, 100, 800, 600) << QRect(566, 100, 800, 600);
        QTest::newRow("above the edge") << QRect(100, -300, 800, 600) << QRect(100, 0, 800, 600);
        QTest::newRow("too large") << QRect(-50, -50, 3000, 2000) << QRect(0, 0, 1366, 768);
    }
    void aWindowIsBroughtBackToAScreenThatIsThere()
    {
        QFETCH(QRect, window);
        QFETCH(QRect, expected);
        QCOMPARE(clampedToScreens(window, {QRect(0, 0, 1366, 768)}), expected);
    }

    void aWindowStaysOnTheScreenItIsMostlyOn()
    {
        const QList<QRect> screens{QRect(0, 0, 1366, 768), QRect(1366, 0, 1920, 1080)};
        QCOMPARE(clampedToScreens(QRect(1300, 200, 900, 700), screens), QRect(1366, 200, 900, 700));
        QCOMPARE(clampedToScreens(QRect(1500, 100, 900, 700), screens), QRect(1500, 100, 900, 700));
    }

    void messagesTakeEachOthersPlaceByName()
    {
        MessageBar bar;
        int restored = 0;
        int dismissed = 0;
        bar.show({"a", Message::Weight::note, "one", {}, {}, {}});
        bar.show({"b", Message::Weight::caution, "two", {"/parts/0: x", "/parts/1: y"},
                  {{"Restore", [&] { ++restored; }}, {"Leave it", {}}}, [&] { ++dismissed; }});
        bar.show({"a", Message::Weight::stop, "three", {}, {}, {}});
        QCOMPARE(bar.shown(), QStringList({"b", "a"}));
        const auto buttons = bar.findChildren<QPushButton*>();
        QCOMPARE(buttons.size(), 2);
        QTest::mouseClick(buttons.first(), Qt::LeftButton);
        QCOMPARE(restored, 1);
        QCOMPARE(dismissed, 0);
        QCOMPARE(bar.shown(), QStringList({"a"}));
        bar.dismiss("a");
        bar.dismiss("nothing");
        QVERIFY(bar.shown().isEmpty());
    }

    void theCrossDismissesAndTells()
    {
        MessageBar bar;
        int dismissed = 0;
        bar.show({"a", Message::Weight::note, "one", {}, {{"Yes", {}}}, [&] { ++dismissed; }});
        QTest::mouseClick(bar.findChild<QToolButton*>(), Qt::LeftButton);
        QCOMPARE(dismissed, 1);
        QVERIFY(!bar.isShown("a"));
    }

    void anAngleIsTakenInBothSpellingsAndNonsenseIsRefused()
    {
        QWidget window;
        window.resize(400, 300);
        window.show();
        double angle = 0.0;
        auto* field = new AngleField(&window);
        connect(field, &AngleField::entered, this, [&](double deg) { angle = deg; });
        field->openOver(window);
        auto* edit = field->findChild<QLineEdit*>();
        edit->setText("a lot");
        QTest::keyClick(edit, Qt::Key_Return);
        QCOMPARE(angle, 0.0);
        QVERIFY(field->isVisible());
        edit->setText("-12,5");
        QTest::keyClick(edit, Qt::Key_Return);
        QCOMPARE(angle, -12.5);
    }

    void anEmptyPlanIsAPlanThatCanBeSaved()
    {
        const Plan plan = emptyPlan();
        QVERIFY(plan.parts.empty());
        QVERIFY(findMix(plan, "worktop") != nullptr);
        const PlanReading again = readPlan(writePlan(plan));
        QVERIFY(again.problems.empty());
        QVERIFY(again.plan && *again.plan == plan);
    }
};

QTEST_MAIN(PiecesTest)
#include "pieces_test.moc"
