#include "ui/panels/cuts_card.h"

#include <set>

#include <QScrollBar>
#include <QTest>

#include "panel_fixture.h"
#include "ui/look/theme.h"
#include "ui/panels/cut_view.h"
#include "ui/panels/figure_button.h"
#include "ui/panels/line_view.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

constexpr char kSample[] = "two-level-bar.yardplan";

struct Shown : PanelFixture {
    CutsCard card{document, selection, live};
    explicit Shown(const Plan& plan) : PanelFixture(plan)
    {
        card.setOpened(true);
        card.resize(340, 620);
        card.show();
        (void)QTest::qWaitForWindowExposed(&card);
    }
    /// Until all is cut and the card has it.
    bool settleCuts()
    {
        return QTest::qWaitFor([this] { return live.isCurrent() && live.areCutsKnown() && !stock()->lineModel().lines().isEmpty(); },
                               60000);
    }
    QString big() const { return card.findChild<FigureButton*>(QStringLiteral("bigFigure"))->figure(); }
    LineView* table(const QString& name) const
    {
        for (LineView* view : card.findChildren<LineView*>()) {
            if (view->accessibleName() == name) return view;
        }
        return nullptr;
    }
    LineView* stock() const { return table(QStringLiteral("Sheets and lengths")); }
    CutView* picture() const { return card.findChild<CutView*>(); }
};

}  // namespace

class CutsCardTest : public QObject {
    Q_OBJECT

private slots:
    void countsWhatIsBoughtAndListsEverySheetAndPiece()
    {
        Shown shown(samplePlan(kSample));
        QVERIFY(shown.settleCuts());
        const CutPlans& cuts = *shown.live.assessment()->cuts;
        int bought = 0;
        int rows = 0;
        std::size_t pieces = 0;
        for (const SheetCutsPtr& one : cuts.sheets) {
            for (const CutSheet& sheet : one->plan.sheets) {
                if (!one->job.stock[static_cast<std::size_t>(sheet.stock)].atHand) bought += sheet.times;
                ++rows;
            }
            pieces += one->job.pieces.size();
        }
        for (const BarCutsPtr& one : cuts.bars) {
            for (const BarPattern& pattern : one->plan.patterns) {
                if (!one->job.stock[static_cast<std::size_t>(pattern.stock)].atHand) bought += pattern.times;
                ++rows;
            }
            pieces += one->job.pieces.size();
        }
        QVERIFY(rows > 0);
        QVERIFY2(shown.big().startsWith(QString::number(bought)), qPrintable(shown.big()));
        int listed = 0;
        for (const Line& line : shown.stock()->lineModel().lines()) listed += line.kind == Line::Kind::line ? 1 : 0;
        QCOMPARE(listed, rows);
        QCOMPARE(static_cast<std::size_t>(shown.table(QStringLiteral("Pieces"))->lineModel().lines().size()), pieces);
    }

    void thePictureIsThatOfTheChosenLine()
    {
        Shown shown(samplePlan(kSample));
        QVERIFY(shown.settleCuts());
        QVERIFY(shown.picture()->isVisible());
        std::set<QString> seen;
        const LineModel& model = shown.stock()->lineModel();
        for (int row = 0; row < model.lines().size(); ++row) {
            if (model.line(row).source < 0) continue;
            shown.stock()->setCurrentIndex(shown.stock()->model()->index(row, 0));
            seen.insert(shown.picture()->accessibleName());
        }
        QVERIFY(seen.size() > 1);
        QVERIFY(!seen.contains(QString()));
    }

    void looksRight()
    {
        Shown shown(samplePlan(kSample));
        QVERIFY(shown.settleCuts());
        for (const Appearance appearance : {Appearance::light, Appearance::dark}) {
            qApp->findChild<Theme*>()->setAppearance(appearance);
            QCoreApplication::processEvents();
            QVERIFY(shown.card.minimumSizeHint().width() <= 300);
            for (LineView* view : shown.card.findChildren<LineView*>()) {
                if (view->isVisible()) QCOMPARE(view->horizontalScrollBar()->maximum(), 0);
            }
            keepPicture(shown.card.grab(), appearance == Appearance::dark ? QStringLiteral("cuts-dark") : QStringLiteral("cuts-light"));
        }
    }

    void anEmptyPlanSaysWhatToDo()
    {
        Shown shown(Plan{});
        QVERIFY(!shown.picture()->isVisible());
    }
};

int main(int argc, char** argv)
{
    QApplication application(argc, argv);
    Theme theme(application);
    CutsCardTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "cuts_card_test.moc"
