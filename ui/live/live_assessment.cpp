#include "ui/live/live_assessment.h"

#include <utility>

#include "core/assess/assess.h"
#include "ui/document/plan_document.h"

namespace yardcast::ui {

/// Lives on the thread; touched only by calls queued to it.
class LiveAssessment::Worker : public QObject {
public:
    explicit Worker(PriceBook prices) : assessor_(std::make_unique<Assessor>(std::move(prices))) {}

    void setPrices(PriceBook prices) { assessor_ = std::make_unique<Assessor>(std::move(prices)); }
    AssessmentPtr assess(const Plan& plan) { return assessor_->assess(plan); }

private:
    std::unique_ptr<Assessor> assessor_;
};

LiveAssessment::LiveAssessment(PlanDocument& document, PriceBook prices, QObject* parent)
    : QObject(parent), document_(document), prices_(std::move(prices)), worker_(new Worker(prices_))
{
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    thread_.setObjectName("assessment");
    thread_.start();
    connect(&document, &PlanDocument::planChanged, this, &LiveAssessment::request);
    request();
}

LiveAssessment::~LiveAssessment()
{
    thread_.quit();
    thread_.wait();
}

bool LiveAssessment::isCurrent() const { return plan_ == document_.plan(); }

void LiveAssessment::setPrices(PriceBook prices)
{
    prices_ = std::move(prices);
    QMetaObject::invokeMethod(worker_, [worker = worker_, book = prices_] { worker->setPrices(book); });
    request();
}

void LiveAssessment::request()
{
    if (busy_) {
        waiting_ = true;
        return;
    }
    busy_ = true;
    waiting_ = false;
    QMetaObject::invokeMethod(worker_, [this, worker = worker_, plan = document_.plan()] {
        AssessmentPtr assessment = worker->assess(*plan);
        QMetaObject::invokeMethod(this, [this, plan, assessment] { take(plan, assessment); });
    });
}

void LiveAssessment::take(const PlanPtr& plan, const AssessmentPtr& assessment)
{
    busy_ = false;
    assessment_ = assessment;
    plan_ = plan;
    emit assessed();
    if (waiting_) request();
}

}  // namespace yardcast::ui
