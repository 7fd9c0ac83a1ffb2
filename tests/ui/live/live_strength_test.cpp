#include <atomic>
#include <condition_variable>
#include <mutex>
#include <thread>

#include <QSignalSpy>
#include <QTest>

#include "core/assess/assess.h"
#include "core/io/plan_file.h"
#include "core/plan/edits.h"
#include "ui/document/plan_document.h"
#include "ui/live/live_assessment.h"
#include "ui/live/strength_choice.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

Plan sample(const char* name)
{
    const FileText file = readFile(std::string(YARDCAST_SOURCE_DIR "/sample-projects/") + name + ".yardplan");
    return readPlan(file.text.value_or("")).plan.value_or(Plan{});
}

/// A solver that can be held up, and remembers what it was asked. Its answers say which thickness they belong to.
class HeldSolver {
public:
    struct Call {
        std::string casting;
        Refinement refinement;
        CaseChoice choice;
        bool stopped = false;
    };

    CastingStrengthPtr solve(const StrengthInput& input, Refinement refinement, CaseChoice choice, std::stop_token stop)
    {
        std::unique_lock lock(mutex_);
        onWindowsThread_ = onWindowsThread_ || std::this_thread::get_id() == window_;
        ++under_;
        const auto free = [&] { return refinement == Refinement::draft ? !holdsDrafts_ : !holdsFine_; };
        changed_.wait(lock, stop, free);
        --under_;
        calls_.push_back({input.casting->id, refinement, choice, stop.stop_requested()});
        if (stop.stop_requested()) return nullptr;
        auto answer = std::make_shared<CastingStrength>();
        answer->casting = input.casting->id;
        answer->part = input.casting->part;
        answer->refinement = refinement;
        const auto add = [&](StrengthCase which) {
            CaseResult& one = answer->cases.emplace_back();
            one.which = which;
            one.usePercent = input.casting->massKg * (which == StrengthCase::tilt ? tiltTimes_.load() : 1.0);
        };
        if (choice.inUse) add(StrengthCase::inPlace);
        if (choice.handling) add(StrengthCase::tilt);
        Finding finding;
        finding.code = "strength_test";
        finding.severity = Severity::stop;
        finding.subjects = {answer->casting};
        answer->findings = {finding};
        return answer;
    }

    void holdDrafts(bool hold) { set(holdsDrafts_, hold); }
    void setTiltTimes(double times) { tiltTimes_ = times; }
    void holdFine(bool hold) { set(holdsFine_, hold); }
    /// How many castings are being solved now.
    int under()
    {
        const std::lock_guard lock(mutex_);
        return under_;
    }
    std::vector<Call> takeCalls()
    {
        const std::lock_guard lock(mutex_);
        return std::exchange(calls_, {});
    }
    bool hasStopped()
    {
        const std::lock_guard lock(mutex_);
        return std::ranges::any_of(calls_, &Call::stopped);
    }
    bool wasOnWindowsThread()
    {
        const std::lock_guard lock(mutex_);
        return onWindowsThread_;
    }
    StrengthAssessor::Solver solver()
    {
        return [this](const StrengthInput& input, Refinement refinement, CaseChoice choice, std::stop_token stop) {
            return solve(input, refinement, choice, std::move(stop));
        };
    }

private:
    void set(bool& value, bool to)
    {
        const std::lock_guard lock(mutex_);
        value = to;
        changed_.notify_all();
    }

    std::mutex mutex_;
    std::condition_variable_any changed_;
    std::thread::id window_ = std::this_thread::get_id();
    std::vector<Call> calls_;
    int under_ = 0;
    std::atomic<double> tiltTimes_ = 1.0;
    bool holdsDrafts_ = false;
    bool holdsFine_ = false;
    bool onWindowsThread_ = false;
};

Edit thickness(double mm)
{
    return [mm](const Plan& plan) {
        return changeCounter(plan, "C1a", [mm](Counter& counter) { counter.thicknessMm = mm; });
    };
}

double massOf(const Assessment& assessment, const std::string& casting)
{
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting->id == casting) return placed.casting->massKg;
    }
    return 0.0;
}

/// Whether the shown strength of the casting was solved for its mass as it is now.
bool fits(const LiveAssessment& live, const std::string& casting)
{
    const CastingStrength* strength = live.assessment()->strengthOf(casting);
    const CaseResult* inPlace = strength ? strength->find(StrengthCase::inPlace) : nullptr;
    return inPlace && inPlace->usePercent == massOf(*live.assessment(), casting);
}

}  // namespace

class LiveStrengthTest : public QObject {
    Q_OBJECT

private slots:
    void comesAfterTheQuickFiguresAndIsRefined()
    {
        HeldSolver held;
        held.holdDrafts(true);
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_VERIFY(live.isCurrent());
        QCOMPARE(live.strengthState(), StrengthState::none);
        QVERIFY(live.assessment()->strength.empty());
        QVERIFY(live.isRefining());

        held.holdFine(true);
        held.holdDrafts(false);
        QTRY_COMPARE(live.strengthState(), StrengthState::draft);
        QCOMPARE(live.assessment()->strength.size(), live.assessment()->castings.size());
        QCOMPARE(live.assessment()->strength.front()->refinement, Refinement::draft);

        held.holdFine(false);
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        QVERIFY(!live.isRefining());
        QCOMPARE(live.assessment()->strength.front()->refinement, Refinement::working);
        QCOMPARE(live.assessment()->strength.front()->cases.size(), std::size_t{2});
        QVERIFY(std::ranges::any_of(live.assessment()->findings,
                                    [](const Finding& finding) { return finding.code == "strength_test"; }));
        QVERIFY(!held.wasOnWindowsThread());
    }

    void aGestureSolvesOnlyWhatChangesAndWhatIsSeen()
    {
        HeldSolver held;
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        held.takeCalls();

        document.preview(thickness(47.0));
        QTRY_COMPARE(live.strengthState(), StrengthState::draft);
        QVERIFY(fits(live, "C1a"));
        const auto calls = held.takeCalls();
        QVERIFY(!calls.empty());
        QVERIFY(calls.size() < live.assessment()->castings.size());
        for (const auto& call : calls) {
            QCOMPARE(call.refinement, Refinement::draft);
            QVERIFY(call.choice.inUse && !call.choice.handling);
        }
        // The cases that were not solved are shown as they were.
        const CastingStrength* strength = live.assessment()->strengthOf("C1a");
        QVERIFY(strength->find(StrengthCase::tilt));
        QVERIFY(strength->find(StrengthCase::tilt)->usePercent != strength->find(StrengthCase::inPlace)->usePercent);

        // As long as the hand holds it nothing is refined.
        QTest::qWait(600);
        QCOMPARE(live.strengthState(), StrengthState::draft);
        QVERIFY(held.takeCalls().empty());

        document.commitPreview("thicker");
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        strength = live.assessment()->strengthOf("C1a");
        QCOMPARE(strength->find(StrengthCase::tilt)->usePercent, massOf(*live.assessment(), "C1a"));
    }

    void aGestureSolvesTheCaseThatIsLookedAt()
    {
        HeldSolver held;
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        live.strengthChoice().setWhich(StrengthCase::tilt);
        held.takeCalls();
        document.preview(thickness(47.0));
        QTRY_COMPARE(live.strengthState(), StrengthState::draft);
        for (const auto& call : held.takeCalls()) QVERIFY(call.choice.handling && !call.choice.inUse);
    }

    /// With each piece in its worst case on the screen, a drag of one that is worst off in somebody's hands.
    void aGestureSolvesTheWorstCaseOfWhatTheHandIsOn()
    {
        HeldSolver held;
        held.setTiltTimes(2.0);
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        held.takeCalls();
        document.preview(thickness(47.0));
        QTRY_COMPARE(live.strengthState(), StrengthState::draft);
        const auto calls = held.takeCalls();
        QVERIFY(!calls.empty());
        for (const auto& call : calls) QVERIFY(call.choice.handling && call.choice.inUse);
        QCOMPARE(live.assessment()->strengthOf("C1a")->worst()->usePercent, 2.0 * massOf(*live.assessment(), "C1a"));
    }

    void undoIsKnownAtOnce()
    {
        HeldSolver held;
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        held.takeCalls();
        document.preview(thickness(47.0));
        QTRY_COMPARE(live.strengthState(), StrengthState::draft);
        held.takeCalls();
        document.cancelPreview();
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        QVERIFY(held.takeCalls().empty());
        QVERIFY(fits(live, "C1a"));
    }

    void whatIsOlderStaysShownUntilTheNewIsThere()
    {
        HeldSolver held;
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        held.holdDrafts(true);
        document.apply("thicker", thickness(47.0));
        QTRY_VERIFY(live.isCurrent());
        QCOMPARE(live.strengthState(), StrengthState::older);
        QCOMPARE(live.assessment()->strength.size(), live.assessment()->castings.size());
        QVERIFY(!fits(live, "C1a"));
        held.holdDrafts(false);
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        QVERIFY(fits(live, "C1a"));
    }

    void theNewestPlanTakesTheOlderSolveAway()
    {
        HeldSolver held;
        held.holdFine(true);
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_VERIFY(held.under() > 0 && live.strengthState() == StrengthState::draft);
        held.takeCalls();
        document.apply("thicker", thickness(47.0));
        // Nobody lets the fine solve go on: it is the newer plan that ends it.
        QTRY_VERIFY(live.isCurrent() && fits(live, "C1a"));
        QVERIFY(held.hasStopped());
        held.holdFine(false);
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        QVERIFY(fits(live, "C1a"));
    }

    /// Asked again when the hand rests, what is under way goes on.
    void aSolveUnderWayIsNotBegunAnew()
    {
        HeldSolver held;
        held.holdFine(true);
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_VERIFY(held.under() > 0 && live.strengthState() == StrengthState::draft);
        QTest::qWait(600);
        QVERIFY(!held.hasStopped());
        held.holdFine(false);
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
    }

    void aDraftThatTakesTooLongGivesWayToo()
    {
        HeldSolver held;
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        held.holdDrafts(true);
        document.preview(thickness(47.0));
        QTRY_VERIFY(held.under() > 0);
        held.takeCalls();
        document.preview(thickness(48.0));
        QTRY_VERIFY(held.hasStopped());
        held.holdDrafts(false);
        QTRY_COMPARE(live.strengthState(), StrengthState::draft);
        QVERIFY(fits(live, "C1a"));
    }

    /// A drag that sends plans faster than they are solved still shows something on its way.
    void aDragIsNotStarved()
    {
        HeldSolver held;
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        const CastingStrength* before = live.assessment()->strengthOf("C1a");
        int seen = 0;
        for (int step = 1; step <= 300; ++step) {
            document.preview(thickness(40.0 + 0.01 * step));
            QCoreApplication::processEvents();
            const CastingStrength* now = live.assessment()->strengthOf("C1a");
            if (now != before) ++seen;
            before = now;
            QThread::msleep(1);
        }
        QVERIFY(seen >= 2);
        QTRY_COMPARE(live.strengthState(), StrengthState::draft);
        QVERIFY(fits(live, "C1a"));
    }

    void anotherPlanHasNothingOfTheOneBefore()
    {
        HeldSolver held;
        PlanDocument document;
        LiveAssessment live(document, exampleBook(), nullptr, held.solver());
        document.reset(sample("two-level-bar"));
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        held.holdDrafts(true);
        document.reset(sample("grill-bench"));
        QTRY_VERIFY(live.isCurrent());
        QCOMPARE(live.strengthState(), StrengthState::none);
        QVERIFY(live.assessment()->strength.empty());
        held.holdDrafts(false);
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        QCOMPARE(live.assessment()->strength.size(), live.assessment()->castings.size());
    }

    void anEmptyPlanHasNothingToRefine()
    {
        PlanDocument document;
        LiveAssessment live(document, exampleBook());
        QTRY_COMPARE(live.strengthState(), StrengthState::working);
        QVERIFY(live.assessment()->strength.empty());
    }

    void canBeEndedWhileASolveIsUnderWay()
    {
        for (int round = 0; round < 10; ++round) {
            HeldSolver held;
            held.holdFine(round % 2 == 0);
            held.holdDrafts(round % 3 == 0);
            PlanDocument document;
            auto live = std::make_unique<LiveAssessment>(document, exampleBook(), nullptr, held.solver());
            document.reset(sample("two-level-bar"));
            QTRY_VERIFY(live->isCurrent());
            live.reset();
            QCoreApplication::processEvents();
        }
    }
};

QTEST_GUILESS_MAIN(LiveStrengthTest)
#include "live_strength_test.moc"
