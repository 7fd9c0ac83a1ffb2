#include <QAction>
#include <QComboBox>
#include <QLabel>

#include "core/mould/mould.h"
#include "core/plan/edits.h"
#include "tests/ui/panels/panel_fixture.h"
#include "ui/look/theme.h"
#include "ui/panels/line_view.h"
#include "ui/panels/mould_card.h"
#include "ui/panels/mould_view.h"

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
        moulds = tableOf(card, QStringLiteral("All moulds"));
    }
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
