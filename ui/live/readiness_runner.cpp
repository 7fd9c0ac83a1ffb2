#include "ui/live/readiness_runner.h"

#include <optional>
#include <utility>

#include "ui/live/thread_manners.h"

namespace yardcast::ui {

/// Lives on the thread; touched only by calls queued to it.
class ReadinessRunner::Worker : public QObject {
public:
    std::optional<Readiness> assess(const Plan& plan, const Assessment& assessed, std::stop_token stop)
    {
        return assessor_.assess(plan, assessed, std::move(stop));
    }

private:
    ReadinessAssessor assessor_;
};

ReadinessRunner::ReadinessRunner(QObject* parent) : QObject(parent), worker_(new Worker)
{
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    thread_.setObjectName("readiness");
    thread_.start();
    // The window and the strength of what is drawn go first.
    QMetaObject::invokeMethod(worker_, [] { giveWay(kRemedyNiceness); });
}

ReadinessRunner::~ReadinessRunner()
{
    stop_.request_stop();
    thread_.quit();
    thread_.wait();
}

void ReadinessRunner::cancel() { stop_.request_stop(); }

void ReadinessRunner::ask(const PlanPtr& plan, const AssessmentPtr& assessed)
{
    stop_.request_stop();
    stop_ = std::stop_source();
    QMetaObject::invokeMethod(worker_, [this, worker = worker_, plan, assessed, stop = stop_.get_token()] {
        if (stop.stop_requested()) return;
        std::optional<Readiness> readiness = worker->assess(*plan, *assessed, stop);
        if (!readiness) return;
        QMetaObject::invokeMethod(this, [this, plan, readiness = std::move(*readiness), stop] {
            if (!stop.stop_requested()) emit found(plan, readiness);
        });
    });
}

}  // namespace yardcast::ui
