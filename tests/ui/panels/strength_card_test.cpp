#include <QAbstractItemModel>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTabBar>
#include <QUndoStack>

#include "core/plan/edits.h"
#include "tests/ui/panels/panel_fixture.h"
#include "ui/live/strength_choice.h"
#include "ui/panels/figure_button.h"
#include "ui/panels/figure_popover.h"
#include "ui/panels/findings_card.h"
#include "ui/panels/line_view.h"
#include "ui/panels/remedy_list.h"
#include "ui/panels/strength_card.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

FigureButton* big(QWidget& card) { return card.findChild<FigureButton*>(QStringLiteral("bigFigure")); }

LineView* tableOf(QWidget& card, const QString& name)
{
    for (LineView* view : card.findChildren<LineView*>()) {
        if (view->accessibleName() == name) return view;
    }
    return nullptr;
}

template <class Card>
void show(Card& card, QSize size = {360, 620})
{
    card.resize(size);
    card.show();
    QVERIFY(QTest::qWaitForWindowExposed(&card));
}

/// Gives a counter a finding with a remedy that makes it 10 mm thicker.
StrengthAssessor::Solver offering(const Plan& plan, const std::string& counter)
{
    const std::string path = "/parts/" + std::to_string(indexOfPart(plan, counter)) + "/thickness_mm";
    const double thickness = std::get<Counter>(findPart(plan, counter)->body).thicknessMm;
    return [=](const StrengthInput& input, Refinement refinement, CaseChoice choice, std::stop_token stop) {
        CastingStrengthPtr solved = QuickStrength()(input, refinement, choice, stop);
        const auto* body = std::get_if<Counter>(&input.body);
        if (!solved || input.casting->part != counter || !body || body->thicknessMm > thickness) return solved;
        auto answer = std::make_shared<CastingStrength>(*solved);
        Finding& finding = answer->findings.emplace_back();
        finding.code = "lifts_off";  // of these, no edits are tried
        finding.severity = Severity::stop;
        finding.subjects = {input.casting->id, counter};
        Remedy& thicker = finding.remedies.emplace_back();
        thicker.code = "thicker";
        thicker.edit = R"([{"op":"replace","path":")" + path + R"(","value":)" + std::to_string(thickness + 10.0) + "}]";
        thicker.effect = "+12.0 kg";
        Remedy& broken = finding.remedies.emplace_back();
        broken.code = "move_away";
        broken.edit = R"([{"op":"replace","path":"/parts/999/at","value":[0,0]}])";
        finding.remedies.emplace_back().code = "advice";
        return CastingStrengthPtr(answer);
    };
}

struct Offered {
    Plan plan = samplePlan("grill-bench.yardplan");
    std::string counter = [this] {
        for (const PartPtr& part : plan.parts) {
            if (part->kind() == PartKind::counter) return part->id;
        }
        return std::string();
    }();
    PlanDocument document;
    Selection selection{document};
    LiveAssessment live{document, exampleBook(), nullptr, offering(plan, counter)};

    void settle() { QTRY_VERIFY(live.isCurrent() && !live.isRefining()); }
    double thickness() const
    {
        return std::get<Counter>(findPart(*document.plan(), counter)->body).thicknessMm;
    }
    int indexOfOffer() const
    {
        const auto& findings = live.assessment()->findings;
        for (std::size_t i = 0; i < findings.size(); ++i) {
            if (findings[i].code != "lifts_off") continue;
            if (!findings[i].remedies.empty() && !findings[i].remedies.front().edit.empty()) return int(i);
        }
        return -1;
    }
};

}  // namespace

class StrengthCardTest : public QObject {
    Q_OBJECT

private slots:
    void theBigFigureIsTheWorstOfAll()
    {
        PanelFixture f(samplePlan("grill-bench.yardplan"));
        f.settleStrength();
        StrengthCard card(f.document, f.selection, f.live);
        show(card);
        QCOMPARE(big(card)->figure(), QStringLiteral("160"));
        QVERIFY(big(card)->mark() == Severity::stop);
        QVERIFY(!big(card)->isStale());
        keepPicture(card.grab(), QStringLiteral("strength-card"));
    }

    void theChosenPieceIsShown()
    {
        PanelFixture f(samplePlan("grill-bench.yardplan"));
        f.settleStrength();
        StrengthCard card(f.document, f.selection, f.live);
        show(card);
        QStringList counters;
        for (const PartPtr& part : f.document.plan()->parts) {
            if (part->kind() == PartKind::counter) counters.append(QString::fromStdString(part->id));
        }
        QVERIFY(counters.size() >= 2);
        for (const QString& id : std::as_const(counters)) {
            f.selection.setParts({id});
            QVERIFY2(big(card)->unit().contains(id), qPrintable(big(card)->unit()));
        }
    }

    void theCaseIsThatOfTheDrawing()
    {
        PanelFixture f(samplePlan("grill-bench.yardplan"));
        f.settleStrength();
        StrengthCard card(f.document, f.selection, f.live);
        card.setOpened(true);
        show(card);
        auto* chooser = card.findChild<QComboBox*>(QStringLiteral("caseChooser"));
        QVERIFY(!chooser->accessibleName().isEmpty());
        QCOMPARE(chooser->currentIndex(), 0);
        QVERIFY(chooser->count() >= 3);

        // From outside to the card.
        f.live.strengthChoice().setWhich(StrengthCase::tilt);
        QCOMPARE(big(card)->figure(), QStringLiteral("80"));
        QVERIFY(chooser->currentIndex() > 0);

        // From the chooser and from the table of cases to the outside.
        chooser->setFocus();
        QTest::keyClick(chooser, Qt::Key_Home);
        QTest::keyClick(chooser, Qt::Key_Return);
        if (f.live.strengthChoice().which()) emit chooser->activated(0);
        QVERIFY(!f.live.strengthChoice().which());
        QCOMPARE(big(card)->figure(), QStringLiteral("160"));
        LineView* cases = tableOf(card, QStringLiteral("Cases"));
        QVERIFY(cases);
        QCOMPARE(cases->currentRow(), -1);
        f.live.strengthChoice().setWhich(StrengthCase::inPlace);
        QCOMPARE(cases->lineModel().line(cases->currentRow()).key, QString::number(int(StrengthCase::inPlace)));
        const int row = cases->lineModel().rowOf(QString::number(int(StrengthCase::tilt)));
        QVERIFY(row >= 0);
        cases->setCurrentIndex(cases->lineModel().index(row, 0));
        QVERIFY(f.live.strengthChoice().which() == StrengthCase::tilt);
        const Line& line = cases->lineModel().line(row);
        QCOMPARE(line.cells.at(1), QStringLiteral("48"));
        QVERIFY(line.cells.last().startsWith("80"));
    }

    void sectionsHaveTheirForces()
    {
        PanelFixture f(samplePlan("grill-bench.yardplan"));
        f.settleStrength();
        StrengthCard card(f.document, f.selection, f.live);
        card.setOpened(true);
        show(card);
        LineView* sections = tableOf(card, QStringLiteral("Sections"));
        QCOMPARE(sections->lineModel().rowCount(), 1);
        QVERIFY(sections->lineModel().line(0).cells.first().contains("middle of span"));
    }

    void figuresAnswerAClick()
    {
        PanelFixture f(samplePlan("grill-bench.yardplan"));
        f.settleStrength();
        StrengthCard card(f.document, f.selection, f.live);
        show(card);
        QSignalSpy asked(&card, &LiveCard::figureAsked);
        QTest::mouseClick(big(card), Qt::LeftButton);
        QCOMPARE(asked.count(), 1);
        auto* note = card.findChild<FigurePopover*>();
        QVERIFY(note);
        QString said;
        for (const QLabel* label : note->findChildren<QLabel*>()) said += label->text();
        QVERIFY2(said.contains("EN 1992-1-1") && said.contains("160"), qPrintable(said));
        delete note;
    }

    void whileItIsRefinedItIsInLighterInk()
    {
        PanelFixture f(samplePlan("grill-bench.yardplan"));
        f.settleStrength();
        StrengthCard card(f.document, f.selection, f.live);
        card.setStaleAfterMs(0);
        show(card);
        QVERIFY(!big(card)->isStale());
        const std::string id = f.document.plan()->parts.front()->id;
        f.document.preview([&](const Plan& plan) { return moveParts(plan, {id}, {10, 0}); });
        f.settle();
        QTRY_VERIFY(f.live.strengthState() >= StrengthState::draft);
        if (f.live.isRefining()) QTRY_VERIFY(big(card)->isStale());
        f.document.cancelPreview();
        QTRY_VERIFY(!f.live.isRefining());
        QTRY_VERIFY(!big(card)->isStale());
    }

    void anEmptyPlanSaysWhatToDo()
    {
        PanelFixture f;
        StrengthCard card(f.document, f.selection, f.live);
        show(card);
        QVERIFY(card.findChild<QLabel*>(QStringLiteral("emptyText"))->isVisible());
    }

    void aRemedyIsDoneInOneStepAndTakenBack()
    {
        Offered f;
        f.document.reset(f.plan);
        f.settle();
        FindingsCard card(f.document, f.selection, f.live);
        show(card);
        const double before = f.thickness();
        QVERIFY(f.indexOfOffer() >= 0);
        card.showFinding(f.indexOfOffer());
        auto* list = card.findChild<RemedyList*>();
        QVERIFY(list->isVisible());
        // Advice has no button.
        QCOMPARE(list->buttons().size(), 2);
        QString said;
        for (const QLabel* label : list->findChildren<QLabel*>()) said += label->text();
        QVERIFY(said.contains("+12.0 kg"));
        keepPicture(card.grab(), QStringLiteral("remedies"));
        QVERIFY(!list->buttons().first()->accessibleName().isEmpty());

        list->buttons().first()->setFocus();
        QTest::keyClick(list->buttons().first(), Qt::Key_Space);
        QCOMPARE(f.thickness(), before + 10.0);
        QCOMPARE(f.document.undoStack()->count(), 1);
        QVERIFY(!f.document.undoStack()->undoText().isEmpty());
        f.settle();
        QCOMPARE(f.indexOfOffer(), -1);
        f.document.undoStack()->undo();
        QVERIFY(*f.document.plan() == f.plan);
        f.settle();
        QVERIFY(f.indexOfOffer() >= 0);
    }

    void aRemedyThatDoesNotFitChangesNothingAndSaysSo()
    {
        Offered f;
        f.document.reset(f.plan);
        f.settle();
        FindingsCard card(f.document, f.selection, f.live);
        show(card);
        card.showFinding(f.indexOfOffer());
        card.findChild<RemedyList*>()->buttons().at(1)->click();
        QVERIFY(*f.document.plan() == f.plan);
        QCOMPARE(f.document.undoStack()->count(), 0);
        QVERIFY(card.findChild<QLabel*>(QStringLiteral("explanation"))->text().contains("no longer fits"));
    }

    void whatIsOfAnOlderPlanCannotBeDone()
    {
        Offered f;
        f.document.reset(f.plan);
        f.settle();
        FindingsCard card(f.document, f.selection, f.live);
        card.setStaleAfterMs(0);
        show(card);
        card.showFinding(f.indexOfOffer());
        auto* list = card.findChild<RemedyList*>();
        QPushButton* button = list->buttons().first();
        QVERIFY(button->isEnabled());
        const double before = f.thickness();
        f.document.apply("Move", [&](const Plan& plan) { return moveParts(plan, {f.counter}, {10, 0}); });
        QVERIFY(!button->isEnabled());
        emit list->taken(f.live.assessment()->findings[std::size_t(f.indexOfOffer())].remedies.front());
        QCOMPARE(f.thickness(), before);
        f.settle();
        QTRY_VERIFY(card.findChild<RemedyList*>()->buttons().first()->isEnabled());
    }
};

QTEST_MAIN(StrengthCardTest)
#include "strength_card_test.moc"
