#include "ui/live/paper_runner.h"

#include <atomic>
#include <utility>

#include "core/assess/assess.h"
#include "core/assess/readiness_assessor.h"
#include "core/assess/strength_assessor.h"
#include "core/assess/with_cuts.h"
#include "ui/live/thread_manners.h"

namespace yardcast::ui {

/// Lives on the thread; touched only by calls queued to it.
class PaperRunner::Worker : public QObject {
public:
    using Tell = std::function<void(int)>;

    Worker()
        : strength_([this](const StrengthInput& input, Refinement refinement, CaseChoice choice, std::stop_token stop) {
              CastingStrengthPtr solved = solveStrength(input, refinement, choice, std::move(stop));
              tell_(++solved_);
              return solved;
          })
    {
    }

    /// Null when stopped. `tell` is called from several threads.
    AssessmentPtr assess(const Plan& plan, const AssessmentPtr& base, const PriceBook& prices, Tell tell,
                         const std::stop_token& stop)
    {
        tell_ = std::move(tell);
        solved_ = 0;
        const auto strength = strength_.assess(plan, *base, Refinement::printed, {}, stop);
        if (!strength) return nullptr;
        const AssessmentPtr solved = withStrength(plan, base, *strength);
        tell_(static_cast<int>(base->castings.size()));
        const auto readiness = readiness_.assess(plan, *solved, stop, Refinement::printed);
        if (!readiness) return nullptr;
        const AssessmentPtr ready = withReadiness(plan, solved, *readiness);
        const CutPlansPtr cuts = cuts_.solve(cutJobs(plan, prices, *ready), stop);
        return cuts ? withCuts(plan, ready, prices, cuts) : nullptr;
    }

private:
    StrengthAssessor strength_;
    ReadinessAssessor readiness_;
    CutSolver cuts_;
    Tell tell_;
    std::atomic<int> solved_{0};
};

PaperRunner::PaperRunner(QObject* parent) : QObject(parent), worker_(new Worker)
{
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    thread_.setObjectName("paper");
    thread_.start();
    QMetaObject::invokeMethod(worker_, [] { giveWay(kStrengthNiceness); });
}

PaperRunner::~PaperRunner()
{
    stop_.request_stop();
    thread_.quit();
    thread_.wait();
}

void PaperRunner::cancel()
{
    stop_.request_stop();
    running_ = false;
}

void PaperRunner::start(const PlanPtr& plan, const PriceBook& prices, Work work)
{
    stop_.request_stop();
    stop_ = std::stop_source();
    running_ = true;
    QMetaObject::invokeMethod(worker_, [this, worker = worker_, plan, prices, work = std::move(work),
                                        stop = stop_.get_token()] {
        if (stop.stop_requested()) return;
        const AssessmentPtr base = assess(*plan, prices);
        const int castings = static_cast<int>(base->castings.size());
        const auto tell = [this, castings, stop](int solved) {
            QMetaObject::invokeMethod(this, [this, solved, castings, stop] {
                if (!stop.stop_requested()) emit progressed(solved, castings);
            });
        };
        const AssessmentPtr answer = worker->assess(*plan, base, prices, tell, stop);
        if (!answer || stop.stop_requested()) return;
        if (work) work(*plan, *answer);
        QMetaObject::invokeMethod(this, [this, plan, answer, stop] {
            if (stop.stop_requested()) return;
            running_ = false;
            emit done(plan, answer);
        });
    });
}

}  // namespace yardcast::ui
