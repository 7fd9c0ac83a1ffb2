#include "ui/live/paper_runner.h"

#include <atomic>
#include <utility>

#include "core/assess/assess.h"
#include "core/assess/readiness_assessor.h"
#include "core/assess/strength_assessor.h"
#include "core/assess/with_cuts.h"
#include "ui/live/thread_manners.h"

namespace yardcast::ui {

class PaperRunner::Worker {
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

PaperRunner::PaperRunner(QObject* parent)
    : QObject(parent), worker_(std::make_unique<Worker>()), work_(QStringLiteral("paper"), kStrengthNiceness)
{
}

PaperRunner::~PaperRunner() = default;

void PaperRunner::cancel()
{
    work_.cancel();
    running_ = false;
}

void PaperRunner::start(const PlanPtr& plan, const PriceBook& prices, Work work)
{
    running_ = true;
    work_.start([this, plan, prices, work = std::move(work)](const std::stop_token& stop) {
        const AssessmentPtr base = assess(*plan, prices);
        const int castings = static_cast<int>(base->castings.size());
        const auto tell = [this, castings, stop](int solved) {
            QMetaObject::invokeMethod(this, [this, solved, castings, stop] {
                if (!stop.stop_requested()) emit progressed(solved, castings);
            });
        };
        const AssessmentPtr answer = worker_->assess(*plan, base, prices, tell, stop);
        if (!answer || stop.stop_requested()) return;
        if (work) work(plan, answer);
        QMetaObject::invokeMethod(this, [this, plan, answer, stop] {
            if (stop.stop_requested()) return;
            running_ = false;
            emit done(plan, answer);
        });
    });
}

}  // namespace yardcast::ui
