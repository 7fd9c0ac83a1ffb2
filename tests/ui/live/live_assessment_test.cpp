#include <QSignalSpy>
#include <QTest>

#include "core/assess/assess.h"
#include "core/assess/with_cuts.h"
#include "core/io/plan_file.h"
#include "core/plan/edits.h"
#include "ui/document/plan_document.h"
#include "ui/live/live_assessment.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

Plan sample(const char* name)
{
    const FileText file = readFile(std::string(YARDCAST_SOURCE_DIR "/sample-projects/") + name + ".yardplan");
    return readPlan(file.text.value_or("")).plan.value_or(Plan{});
}

}  // namespace

class LiveAssessmentTest : public QObject {
    Q_OBJECT

private slots:
    void speaksAboutTheFirstPlan()
    {
        PlanDocument document;
        LiveAssessment live(document, exampleBook());
        QVERIFY(!live.assessment());
        QTRY_VERIFY(live.assessment());
        QVERIFY(live.isCurrent());
        QCOMPARE(live.assessment()->castings.size(), std::size_t{0});
    }

    void givesWhatAssessGives()
    {
        PlanDocument document;
        LiveAssessment live(document, exampleBook());
        document.reset(sample("two-level-bar"));
        QVERIFY(!live.isCurrent());
        QTRY_VERIFY(live.isCurrent());
        const AssessmentPtr straight = assess(*document.plan(), exampleBook());
        QCOMPARE(live.assessment()->massKg(), straight->massKg());
        // Its cuts may be there already.
        const AssessmentPtr same = withCuts(*document.plan(), straight, exampleBook(), live.assessment()->cuts);
        QCOMPARE(live.assessment()->shopping.totalMinor, same->shopping.totalMinor);
        QVERIFY(live.assessment()->castings.size() > 20);
    }

    void cutsComeWhenTheHandRestsAndGoWithTheirPlan()
    {
        PlanDocument document;
        LiveAssessment live(document, exampleBook());
        document.reset(sample("grill-bench"));
        QTRY_VERIFY_WITH_TIMEOUT(live.areCutsKnown(), 20000);
        const CutPlansPtr cuts = live.assessment()->cuts;
        QVERIFY(cuts && !cuts->bars.empty());
        const AssessmentPtr plain = assess(*document.plan(), exampleBook());
        const AssessmentPtr straight = withCuts(*document.plan(), plain, exampleBook(),
                                                CutSolver().solve(cutJobs(*document.plan(), exampleBook(), *plain)));
        QCOMPARE(live.assessment()->shopping.totalMinor, straight->shopping.totalMinor);
        QVERIFY(straight->shopping.totalMinor != plain->shopping.totalMinor);
        document.apply("Higher", [](const Plan& plan) {
            Plan other = plan;
            other.title += "!";
            return other;
        });
        QTRY_VERIFY(live.isCurrent());
        QVERIFY(!live.areCutsKnown() || live.assessment()->cuts != cuts);
        QTRY_VERIFY_WITH_TIMEOUT(live.areCutsKnown(), 20000);
        // No list has changed, so none was solved again.
        QVERIFY(live.assessment()->cuts->bars == cuts->bars);
        QVERIFY(live.assessment()->cuts->sheets == cuts->sheets);
    }

    /// A drag sends plans faster than they are assessed: the last one is always spoken about in the end, and those
    /// in between may be skipped.
    void theNewestPlanWins()
    {
        PlanDocument document;
        LiveAssessment live(document, exampleBook());
        document.reset(sample("two-level-bar"));
        QSignalSpy assessed(&live, &LiveAssessment::assessed);
        constexpr int kSteps = 200;
        for (int step = 1; step <= kSteps; ++step) {
            document.preview([step](const Plan& plan) {
                return changeCounter(plan, "C1a", [step](Counter& counter) { counter.thicknessMm = 35.0 + 0.01 * step; });
            });
        }
        QTRY_VERIFY(live.isCurrent());
        QVERIFY(assessed.count() < kSteps);
        const AssessmentPtr straight = assess(*document.plan(), exampleBook());
        QCOMPARE(live.assessment()->massKg(), straight->massKg());
        document.cancelPreview();
        QTRY_VERIFY(live.isCurrent());
        QCOMPARE(live.plan(), document.committed());
    }

    void newPricesCountAtOnce()
    {
        PlanDocument document;
        LiveAssessment live(document, exampleBook());
        Plan plan = sample("grill-bench");
        plan.prices.clear();  // prices of the plan's own go before the book's
        document.reset(plan);
        QTRY_VERIFY_WITH_TIMEOUT(live.areCutsKnown(), 20000);
        const std::int64_t before = live.assessment()->shopping.totalMinor;
        PriceBook dear = exampleBook();
        for (PricedItem& item : dear.items) {
            for (Pack& pack : item.packs) pack.priceMinor *= 2;
            if (item.cuts) item.cuts->priceMinor *= 2;
        }
        QSignalSpy assessed(&live, &LiveAssessment::assessed);
        live.setPrices(dear);
        QTRY_VERIFY_WITH_TIMEOUT(live.areCutsKnown() && live.assessment()->shopping.totalMinor == 2 * before, 20000);
        QVERIFY(assessed.count() > 0);
    }

    /// Closing a window in the middle of a drag must not wait for, or be reached by, an answer under way.
    void canBeEndedWhileBusy()
    {
        for (int round = 0; round < 20; ++round) {
            PlanDocument document;
            auto live = std::make_unique<LiveAssessment>(document, exampleBook());
            document.reset(sample("two-level-bar"));
            live.reset();
            QCoreApplication::processEvents();
        }
    }
};

QTEST_GUILESS_MAIN(LiveAssessmentTest)
#include "live_assessment_test.moc"
