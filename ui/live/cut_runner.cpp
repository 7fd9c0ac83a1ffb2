#include "ui/live/cut_runner.h"

#include <utility>

#include "core/assess/with_cuts.h"
#include "ui/live/thread_manners.h"

namespace yardcast::ui {

/// Lives on the thread; touched only by calls queued to it.
class CutRunner::Worker : public QObject {
public:
    CutPlansPtr solve(const Plan& plan, const Assessment& assessed, const PriceBook& prices, std::stop_token stop)
    {
        return solver_.solve(cutJobs(plan, prices, assessed), std::move(stop));
    }

private:
    CutSolver solver_;
};

CutRunner::CutRunner(QObject* parent) : QObject(parent), worker_(new Worker)
{
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    thread_.setObjectName("cuts");
    thread_.start();
    // The window and the strength of what is drawn go first.
    QMetaObject::invokeMethod(worker_, [] { giveWay(kRemedyNiceness); });
}

CutRunner::~CutRunner()
{
    stop_.request_stop();
    thread_.quit();
    thread_.wait();
}

void CutRunner::cancel() { stop_.request_stop(); }

void CutRunner::ask(const PlanPtr& plan, const AssessmentPtr& assessed, const PriceBook& prices)
{
    stop_.request_stop();
    stop_ = std::stop_source();
    QMetaObject::invokeMethod(worker_, [this, worker = worker_, plan, assessed, prices, stop = stop_.get_token()] {
        if (stop.stop_requested()) return;
        const CutPlansPtr cuts = worker->solve(*plan, *assessed, prices, stop);
        if (!cuts) return;
        QMetaObject::invokeMethod(this, [this, plan, cuts, stop] {
            if (!stop.stop_requested()) emit found(plan, cuts);
        });
    });
}

}  // namespace yardcast::ui
