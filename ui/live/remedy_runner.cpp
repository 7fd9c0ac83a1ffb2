#include "ui/live/remedy_runner.h"

#include <utility>

#include "core/remedy/remedies.h"
#include "ui/live/thread_manners.h"

namespace yardcast::ui {

RemedyRunner::RemedyRunner(StrengthAssessor::Solver solver, QObject* parent)
    : QObject(parent), worker_(new QObject), solver_(std::move(solver))
{
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    thread_.setObjectName("remedies");
    // Nobody waits for them: the window and the strength of what is drawn go first.
    thread_.start();
    QMetaObject::invokeMethod(worker_, [] { giveWay(kRemedyNiceness); });
}

RemedyRunner::~RemedyRunner()
{
    stop_.request_stop();
    thread_.quit();
    thread_.wait();
}

void RemedyRunner::cancel() { stop_.request_stop(); }

void RemedyRunner::ask(const PlanPtr& plan, const PriceBook& prices, const AssessmentPtr& assessed)
{
    stop_.request_stop();
    stop_ = std::stop_source();
    QMetaObject::invokeMethod(worker_, [this, plan, prices, assessed, solver = solver_, stop = stop_.get_token()] {
        if (stop.stop_requested()) return;
        RemedyFinder finder(*plan, prices, assessed, Refinement::working, solver);
        for (const Finding& finding : finder.findings()) {
            const std::vector<Remedy> remedies = finder.remedies(finding, stop);
            if (stop.stop_requested()) return;
            QMetaObject::invokeMethod(this, [this, plan, complaint = complaintOf(finding), remedies, stop] {
                if (!stop.stop_requested()) emit found(plan, complaint, remedies);
            });
        }
        QMetaObject::invokeMethod(this, [this, plan, stop] {
            if (!stop.stop_requested()) emit finished(plan);
        });
    });
}

}  // namespace yardcast::ui
