#include <QAbstractItemModelTester>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <QTreeView>
#include <QUndoStack>

#include "core/plan/edits.h"
#include "panel_fixture.h"
#include "ui/canvas/tool_kind.h"
#include "ui/look/theme.h"
#include "ui/panels/outline_model.h"
#include "ui/panels/parts_outline.h"
#include "ui/panels/parts_tray.h"
#include "ui/panels/tray_button.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

constexpr char kSample[] = "two-level-bar.yardplan";

struct ShownOutline : PanelFixture {
    PartsOutline outline{document, selection, live};
    explicit ShownOutline(const Plan& plan = samplePlan(kSample)) : PanelFixture(plan)
    {
        outline.resize(300, 600);
        outline.show();
        (void)QTest::qWaitForWindowExposed(&outline);
    }
    OutlineModel& model() { return *static_cast<OutlineModel*>(outline.view().model()); }
};

}  // namespace

class ListsTest : public QObject {
    Q_OBJECT

private slots:
    void outlineShowsPartsCutoutsAndSite()
    {
        ShownOutline shown;
        const Plan& plan = *shown.document.plan();
        QCOMPARE(shown.model().rowCount(), static_cast<int>(plan.parts.size()) + 1);
        int cutouts = 0;
        for (std::size_t i = 0; i < plan.parts.size(); ++i) {
            const QModelIndex index = shown.model().index(static_cast<int>(i), 0);
            QVERIFY(index.data().toString().startsWith(QString::fromStdString(plan.parts[i]->id)));
            cutouts += shown.model().rowCount(index);
        }
        QVERIFY(cutouts >= 2);
        const QModelIndex site = shown.model().index(static_cast<int>(plan.parts.size()), 0);
        QCOMPARE(shown.model().rowCount(site), static_cast<int>(plan.site.fixtures.size()));
        keepPicture(shown.outline.grab(), QStringLiteral("outline"));
    }

    void choosingGoesBothWays()
    {
        ShownOutline shown;
        shown.selection.setParts({QStringLiteral("C2"), QStringLiteral("S1")});
        const auto chosen = shown.outline.view().selectionModel()->selectedIndexes();
        QCOMPARE(chosen.size(), 2);
        QVERIFY(chosen.contains(shown.model().indexOfPart(QStringLiteral("C2"))));

        const QModelIndex part = shown.model().indexOfPart(QStringLiteral("C3"));
        shown.outline.view().scrollTo(part);
        QTest::mouseClick(shown.outline.view().viewport(), Qt::LeftButton, {},
                          shown.outline.view().visualRect(part).center());
        QCOMPARE(shown.selection.parts(), QStringList{QStringLiteral("C3")});

        const QModelIndex cutout = shown.model().index(0, 0, part);
        const QString id = shown.model().placeOf(cutout).id;
        QVERIFY(!id.isEmpty());
        shown.outline.view().scrollTo(cutout);
        QTest::mouseClick(shown.outline.view().viewport(), Qt::LeftButton, {},
                          shown.outline.view().visualRect(cutout).center());
        QCOMPARE(shown.selection.cutout(), (CutoutRef{QStringLiteral("C3"), id}));

        shown.selection.setFixture(QStringLiteral("gas"));
        const auto fixture = shown.outline.view().selectionModel()->selectedIndexes();
        QCOMPARE(fixture.size(), 1);
        QCOMPARE(shown.model().placeOf(fixture[0]).id, QStringLiteral("gas"));
        shown.selection.clear();
        QVERIFY(shown.outline.view().selectionModel()->selectedIndexes().isEmpty());
    }

    void renamesInPlace()
    {
        ShownOutline shown;
        const QModelIndex part = shown.model().indexOfPart(QStringLiteral("C3"));
        shown.outline.view().setCurrentIndex(part);
        shown.outline.view().edit(part);
        auto* editor = shown.outline.view().findChild<QLineEdit*>();
        QVERIFY(editor);
        QCOMPARE(editor->text(), QString::fromStdString(*findPart(*shown.document.plan(), "C3")->name));
        editor->setText(QStringLiteral("Washing place"));
        QTest::keyClick(editor, Qt::Key_Return);
        QTRY_COMPARE(*findPart(*shown.document.plan(), "C3")->name, std::string("Washing place"));
        QCOMPARE(shown.document.undoStack()->count(), 1);
        QVERIFY(part.data().toString().contains(QStringLiteral("Washing place")));
        shown.document.undoStack()->undo();
        QVERIFY(!part.data().toString().contains(QStringLiteral("Washing place")));
    }

    void followsEveryChange()
    {
        ShownOutline shown;
        QAbstractItemModelTester tester(&shown.model(), QAbstractItemModelTester::FailureReportingMode::QtTest);
        shown.selection.setParts({QStringLiteral("S4")});
        const Plan before = *shown.document.plan();
        shown.document.apply(QStringLiteral("remove"),
                             [](const Plan& p) { return removeParts(p, {"C4", "S1", "S2", "G3"}); });
        Cutout cutout;
        cutout.id = "K9";
        cutout.centre = {300, 300};
        cutout.size = {100, 100};
        shown.document.apply(QStringLiteral("cutout"), [&](const Plan& p) { return addCutout(p, "C1a", cutout); });
        shown.document.apply(QStringLiteral("copy"), [](const Plan& p) { return duplicateParts(p, {"C3"}, {0, 900}); });
        shown.document.apply(QStringLiteral("order"), [](const Plan& p) {
            return changePlan(p, [](Plan& plan) { std::swap(plan.parts[0], plan.parts[3]); });
        });
        const auto matches = [&] {
            const Plan& plan = *shown.document.plan();
            for (std::size_t i = 0; i < plan.parts.size(); ++i) {
                const auto place = shown.model().placeOf(shown.model().index(static_cast<int>(i), 0));
                if (place.id.toStdString() != plan.parts[i]->id) return false;
            }
            return true;
        };
        QVERIFY(matches());
        QCOMPARE(shown.selection.parts(), QStringList{QStringLiteral("S4")});  // still chosen
        while (shown.document.undoStack()->canUndo()) {
            shown.document.undoStack()->undo();
            QVERIFY(matches());
        }
        QVERIFY(*shown.document.plan() == before);
    }

    void emptyOutlineSaysWhatToDo()
    {
        ShownOutline shown((Plan()));
        QVERIFY(shown.outline.findChild<QLabel*>()->isVisible());
    }

    void trayOffersEverything()
    {
        // The canvas reads what the tray sends.
        QCOMPARE(QLatin1String(kTrayMime), QLatin1String(kPartKindMime));
        PartsTray tray;
        tray.resize(tray.sizeHint());
        tray.show();
        (void)QTest::qWaitForWindowExposed(&tray);
        for (const char* word : {"counter", "support", "panel", "front", "appliance", "sink", "hob", "tap", "drain",
                                 "opening", "water", "waste", "power", "gas", "wall", "tree", "door"}) {
            auto* button = tray.findChild<TrayButton*>(QLatin1String(word));
            QVERIFY2(button, word);
            QVERIFY2(!button->icon().isNull(), word);
            QVERIFY(button->minimumSizeHint().height() >= kTargetPx && button->minimumSizeHint().width() >= kTargetPx);
            QSignalSpy asked(&tray, &PartsTray::drawingAsked);
            QTest::mouseClick(button, Qt::LeftButton);
            QCOMPARE(asked.size(), 1);
            QCOMPARE(asked[0][0].toString(), QLatin1String(word));
        }
        QCOMPARE(tray.words().size(), 17);
        keepPicture(tray.grab(), QStringLiteral("tray"));
        tray.resize(tray.minimumSizeHint().width(), 500);
        keepPicture(tray.grab(), QStringLiteral("tray-narrow"));
    }
};

int main(int argc, char** argv)
{
    QApplication application(argc, argv);
    Theme theme(application);
    ListsTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "lists_test.moc"
