#include <QAction>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTabBar>
#include <QUndoStack>

#include "core/assess/mould_savings.h"
#include "core/mould/mould.h"
#include "core/plan/edits.h"
#include "tests/ui/panels/panel_fixture.h"
#include "ui/look/theme.h"
#include "ui/panels/line_view.h"
#include "ui/panels/mould_card.h"
#include "ui/panels/mould_view.h"
#include "ui/panels/remedy_list.h"
#include "ui/wording/board_times.h"
#include "ui/wording/mould_steps.h"

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

struct OpenCard {
    explicit OpenCard(const char* sample) : fixture(samplePlan(sample)), card(fixture.document, fixture.selection, fixture.live)
    {
        card.resize(360, 760);
        card.show();
        card.setOpened(true);
        QVERIFY(QTest::qWaitForWindowExposed(&card));
        picture = card.findChild<MouldView*>(QStringLiteral("mouldPicture"));
        parts = tableOf(card, QStringLiteral("Parts"));
        moulds = tableOf(card, QStringLiteral("Moulds"));
        fewer = tableOf(card, QStringLiteral("Fewer"));
    }
    void showFewer() const
    {
        auto* tabs = card.findChild<QTabBar*>();
        for (int i = 0; i < tabs->count(); ++i) {
            if (tabs->tabText(i) == QStringLiteral("Fewer")) tabs->setCurrentIndex(i);
        }
        QVERIFY(fewer->isVisible());
        QVERIFY(QTest::qWaitFor([this] { return fixture.live.isCurrent() && fixture.live.savings() != nullptr; }, 180000));
    }
    void choose(const QString& key) const
    {
        const int row = fewer->lineModel().rowOf(key);
        QVERIFY2(row >= 0, qPrintable(key));
        fewer->setCurrentIndex(fewer->lineModel().index(row, 0));
    }
    const QList<QPushButton*>& offered() const { return card.findChild<RemedyList*>()->buttons(); }
    const Mould& mouldOf(const std::string& casting) const
    {
        for (const MouldPtr& mould : fixture.live.assessment()->moulds) {
            if (mould->casting == casting) return *mould;
        }
        qFatal("no mould of %s", casting.c_str());
    }

    PanelFixture fixture;
    MouldCard card;
    MouldView* picture = nullptr;
    LineView* parts = nullptr;
    LineView* moulds = nullptr;
    LineView* fewer = nullptr;
};

}  // namespace

class MouldCardTest : public QObject {
    Q_OBJECT

private slots:
    void showsTheMouldOfWhatIsChosen()
    {
        OpenCard open("two-level-bar.yardplan");
        QVERIFY(open.picture && open.parts && open.moulds);
        QVERIFY(!open.fixture.live.assessment()->moulds.empty());
        open.fixture.selection.setParts({QStringLiteral("C2")});
        QCOMPARE(open.card.shownCasting(), std::string("C2"));
        const Mould& mould = open.mouldOf("C2");
        QCOMPARE(open.parts->lineModel().lines().size(), static_cast<qsizetype>(mould.parts.size()));
        for (std::size_t i = 0; i < mould.parts.size(); ++i) {
            QCOMPARE(open.parts->lineModel().lines()[static_cast<qsizetype>(i)].key,
                     QString::fromStdString(mould.parts[i].name));
        }
        open.fixture.selection.setParts({QStringLiteral("S1")});
        QCOMPARE(open.card.shownCasting(), std::string("S1"));
        // What is not cast leaves the mould that is shown.
        open.fixture.selection.clear();
        QCOMPARE(open.card.shownCasting(), std::string("S1"));
    }

    void stepsStandInTheirOrderAndMarkTheirPiece()
    {
        OpenCard open("two-level-bar.yardplan");
        open.fixture.selection.setParts({QStringLiteral("C2")});
        const Mould& mould = open.mouldOf("C2");
        const std::vector<MouldStep> steps = mouldSteps(mould, true);
        LineView* build = tableOf(open.card, QStringLiteral("Build"));
        QVERIFY(build && build->isVisible());
        QCOMPARE(build->lineModel().lines().size(), static_cast<qsizetype>(steps.size()));
        // Every part goes in once, none before one of an earlier step; the questions come before what floats is laid in.
        std::size_t parts = 0;
        int last = 0;
        for (const MouldStep& step : steps) {
            parts += step.parts.size();
            for (const MouldPart* part : step.parts) {
                QVERIFY(part->step >= last);
                last = part->step;
            }
        }
        QCOMPARE(parts, mould.parts.size());
        QVERIFY(build->lineModel().line(0).cells[0].startsWith(QStringLiteral("1  ")));
        build->setCurrentIndex(build->lineModel().index(0, 0));
        QCOMPARE(open.picture->marked(), mould.parts.front().name);
    }

    void everyMouldIsListedWithItsHand()
    {
        OpenCard open("two-level-bar.yardplan");
        const auto& moulds = open.fixture.live.assessment()->moulds;
        const QList<Line>& lines = open.moulds->lineModel().lines();
        QCOMPARE(lines.size(), static_cast<qsizetype>(moulds.size()));
        for (std::size_t i = 0; i < moulds.size(); ++i) {
            const QString hand = lines[static_cast<qsizetype>(i)].details.first();
            QCOMPARE(hand, moulds[i]->mirrored ? QStringLiteral("mirrored") : QStringLiteral("not mirrored"));
        }
    }

    void choosingALineMarksThePieceAndClickingThePieceChoosesTheLine()
    {
        OpenCard open("two-level-bar.yardplan");
        open.fixture.selection.setParts({QStringLiteral("C2")});
        const Mould& mould = open.mouldOf("C2");
        const auto side = std::find_if(mould.parts.begin(), mould.parts.end(), [](const MouldPart& part) {
            return part.kind == MouldPartKind::side;
        });
        QVERIFY(side != mould.parts.end());
        const int row = open.parts->lineModel().rowOf(QString::fromStdString(side->name));
        QVERIFY(row >= 0);
        const QImage before = open.picture->grab().toImage();
        open.parts->setCurrentIndex(open.parts->lineModel().index(row, 0));
        QCOMPARE(open.picture->marked(), side->name);
        QVERIFY(open.picture->grab().toImage() != before);
        const auto former = std::find_if(mould.parts.begin(), mould.parts.end(), [](const MouldPart& part) {
            return part.kind == MouldPartKind::former;
        });
        QVERIFY(former != mould.parts.end());
        QSignalSpy clicked(open.picture, &MouldView::partClicked);
        QTest::mouseClick(open.picture, Qt::LeftButton, {}, open.picture->placeOf(former->name));
        QCOMPARE(clicked.count(), 1);
        const std::string hit = clicked[0][0].toString().toStdString();
        const auto found = std::find_if(mould.parts.begin(), mould.parts.end(),
                                        [&](const MouldPart& part) { return part.name == hit; });
        QVERIFY2(found != mould.parts.end(), hit.c_str());
        QCOMPARE(open.picture->marked(), hit);
    }

    void fewerMouldsAreWeighedAndOneClickTakesThem()
    {
        OpenCard open("grill-bench.yardplan");
        QVERIFY(open.offered().isEmpty());
        open.showFewer();
        const auto savings = open.fixture.live.savings();
        QVERIFY(savings && !savings->sharing.groups.empty() && !savings->sharing.groups[0].options.empty());
        const SharingGroup& group = savings->sharing.groups[0];
        const SharingOption& option = group.options.back();
        QString castings;
        for (const std::string& casting : group.castings)
            castings += (castings.isEmpty() ? QString() : QStringLiteral(", ")) + QString::fromStdString(casting);
        open.choose(QStringLiteral("now/") + castings);
        QVERIFY(open.offered().isEmpty());
        open.choose(QStringLiteral("option/%1/%2").arg(castings).arg(option.moulds.size()));
        // Another tab offers none of it.
        open.card.findChild<QTabBar*>()->setCurrentIndex(0);
        QVERIFY(open.offered().isEmpty());
        open.showFewer();
        QCOMPARE(open.offered().size(), 1);
        const PlanPtr before = open.fixture.document.plan();
        open.offered().first()->click();
        QVERIFY(*open.fixture.document.plan() == option.after);
        open.fixture.document.undoStack()->undo();
        QVERIFY(*open.fixture.document.plan() == *before);
    }

    void oldBasesAreListedWithWhatTheyCanBecome()
    {
        OpenCard open("two-level-bar.yardplan");
        open.showFewer();
        const LaterBoards& later = open.fixture.live.savings()->later;
        QVERIFY(!later.cuts.empty());
        open.choose(QStringLiteral("later/all"));
        QVERIFY(open.offered().isEmpty());
        int cuts = 0;
        for (const Line& line : open.fewer->lineModel().lines()) {
            if (!line.key.startsWith(QStringLiteral("later/")) || line.key == QStringLiteral("later/all")) continue;
            const LaterCut& cut = later.cuts[static_cast<std::size_t>(cuts++)];
            QCOMPARE(line.details.size(), static_cast<qsizetype>(cut.pieces.size()));
            QVERIFY(line.cells[0].contains(QString::fromStdString(cut.board)));
        }
        QCOMPARE(cuts, static_cast<int>(later.cuts.size()));
        const LaterCut& first = later.cuts.front();
        const Plan& plan = *open.fixture.document.plan();
        const Assessment& assessment = *open.fixture.live.assessment();
        QVERIFY(!boardTimeTexts(plan, assessment, later, first.casting).filter(QStringLiteral("keep the base")).isEmpty());
        const QString taken =
            boardTimeTexts(plan, assessment, later, first.pieces.front().casting).join(QLatin1Char(' '));
        QVERIFY2(taken.contains(QStringLiteral("Need not be bought")), qPrintable(taken));
    }

    void theSentenceNamesTheSideInTheMould()
    {
        OpenCard open("corner-kitchen.yardplan");
        auto* check = open.card.findChild<QLabel*>(QStringLiteral("mouldCheck"));
        QVERIFY(check);
        bool told = false;
        for (const MouldPtr& mould : open.fixture.live.assessment()->moulds) {
            if (mould->check.side.empty()) continue;
            open.card.showCasting(mould->casting);
            QVERIFY2(check->text().contains(QStringLiteral("on your ") + QString::fromStdString(mould->check.side)),
                     qPrintable(check->text()));
            told = true;
        }
        QVERIFY(told);
    }

    void thePickerGoesThroughAllMouldsAndChoosesTheirParts()
    {
        OpenCard open("corner-kitchen.yardplan");
        auto* picker = open.card.findChild<QComboBox*>();
        QVERIFY(picker);
        QCOMPARE(picker->count(), static_cast<int>(open.fixture.live.assessment()->moulds.size()));
        for (int i = 0; i < picker->count(); ++i) {
            emit picker->activated(i);
            const std::string casting = picker->itemData(i).toString().toStdString();
            QCOMPARE(open.card.shownCasting(), casting);
            QVERIFY(open.fixture.selection.contains(QString::fromStdString(open.mouldOf(casting).part)));
            QCOMPARE(picker->currentIndex(), i);
        }
    }

    void anEmptyPlanSaysWhatToDo()
    {
        PanelFixture fixture;
        MouldCard card(fixture.document, fixture.selection, fixture.live);
        card.show();
        bool said = false;
        for (const QLabel* label : card.findChildren<QLabel*>()) said = said || label->text().contains(QStringLiteral("press C"));
        QVERIFY(said);
    }

    void pictures()
    {
        if (qEnvironmentVariableIsEmpty("YARDCAST_PICTURES")) return;
        for (const char* sample : {"two-level-bar.yardplan", "corner-kitchen.yardplan"}) {
            OpenCard open(sample);
            int number = 0;
            for (const MouldPtr& mould : open.fixture.live.assessment()->moulds) {
                if (number++ % 3 != 0) continue;
                open.card.showCasting(mould->casting);
                QTest::qWait(30);
                keepPicture(open.card.grab(), QStringLiteral("mould-card-") + QString::fromStdString(mould->casting));
            }
        }
    }
};

int main(int argc, char** argv)
{
    QApplication application(argc, argv);
    Theme theme(application);
    MouldCardTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "mould_card_test.moc"
