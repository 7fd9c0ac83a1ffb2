#include <QAction>
#include <QTabBar>
#include <QUndoStack>

#include "core/plan/edits.h"
#include "core/pour/pour_play.h"
#include "tests/ui/panels/panel_fixture.h"
#include "ui/panels/figure_button.h"
#include "ui/panels/line_view.h"
#include "ui/panels/pour_card.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

LineView* tableOf(QWidget& card, const QString& name)
{
    for (LineView* view : card.findChildren<LineView*>()) {
        if (view->accessibleName() == name) return view;
    }
    return nullptr;
}

std::vector<std::string> orderOf(const PourPlan& pour)
{
    std::vector<std::string> order;
    for (const PourDay& day : pour.days) {
        for (const PouredCasting& poured : day.castings) order.push_back(poured.casting);
    }
    return order;
}

}  // namespace

class PourCardTest : public QObject {
    Q_OBJECT

private slots:
    void listsCastingsInTheOrderOfPouring()
    {
        PanelFixture fixture(samplePlan("grill-bench.yardplan"));
        PourCard card(fixture.document, fixture.selection, fixture.live);
        card.resize(360, 620);
        card.show();
        card.setOpened(true);
        QVERIFY(QTest::qWaitForWindowExposed(&card));
        LineView* order = tableOf(card, QStringLiteral("Order"));
        QVERIFY(order);
        const std::vector<std::string> planned = orderOf(fixture.live.assessment()->pour);
        QStringList shown;
        for (const Line& line : order->lineModel().lines()) {
            if (line.source >= 0) shown << line.key;
        }
        QCOMPARE(shown.size(), static_cast<qsizetype>(planned.size()));
        for (qsizetype i = 0; i < shown.size(); ++i) {
            QCOMPARE(shown[i], QString::fromStdString(planned[static_cast<std::size_t>(i)]));
        }
        keepPicture(card.grab(), QStringLiteral("pour-card"));
    }

    void laterAndUndoChangeTheOrder()
    {
        PanelFixture fixture(samplePlan("grill-bench.yardplan"));
        PourCard card(fixture.document, fixture.selection, fixture.live);
        card.resize(360, 620);
        card.show();
        card.setOpened(true);
        QVERIFY(QTest::qWaitForWindowExposed(&card));
        LineView* order = tableOf(card, QStringLiteral("Order"));
        const std::vector<std::string> before = orderOf(fixture.live.assessment()->pour);
        QVERIFY(before.size() > 2);
        order->setCurrentIndex(order->lineModel().index(order->lineModel().rowOf(QString::fromStdString(before[0])), 0));
        card.moveEarlier();  // it is the first: nothing happens
        QCOMPARE(fixture.document.undoStack()->count(), 0);
        card.moveLater();
        QCOMPARE(fixture.document.undoStack()->count(), 1);
        fixture.settle();
        std::vector<std::string> expected = before;
        std::swap(expected[0], expected[1]);
        QVERIFY(orderOf(fixture.live.assessment()->pour) == expected);
        fixture.document.undoStack()->undo();
        fixture.settle();
        QVERIFY(orderOf(fixture.live.assessment()->pour) == before);
    }
};

QTEST_MAIN(PourCardTest)
#include "pour_card_test.moc"
