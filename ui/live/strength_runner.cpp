#include "ui/live/strength_runner.h"

#include <algorithm>
#include <utility>

#include "ui/live/thread_manners.h"

namespace yardcast::ui {

namespace {
/// What a draft gets before it gives way to a newer plan: far more than it should need.
constexpr int kPatienceMs = 200;
}  // namespace

/// Lives on the thread; touched only by calls queued to it.
class StrengthRunner::Worker : public QObject {
public:
    explicit Worker(StrengthAssessor::Solver solver) : assessor_(std::move(solver)) {}

    std::optional<std::vector<CastingStrengthPtr>> solve(const StrengthJob& job, std::stop_token stop)
    {
        return assessor_.assessAtLeast(*job.plan, *job.base, job.refinement, job.choice, std::move(stop));
    }

private:
    StrengthAssessor assessor_;
};

StrengthRunner::StrengthRunner(StrengthAssessor::Solver solver, QObject* parent)
    : QObject(parent), worker_(new Worker(std::move(solver)))
{
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    thread_.setObjectName("strength");
    thread_.start();
    // The window and its quick figures go first.
    QMetaObject::invokeMethod(worker_, [] { giveWay(kStrengthNiceness); });
    patience_.setSingleShot(true);
    connect(&patience_, &QTimer::timeout, this, [this] { stop_.request_stop(); });
}

StrengthRunner::~StrengthRunner()
{
    stop_.request_stop();
    thread_.quit();
    thread_.wait();
}

void StrengthRunner::ask(StrengthJob job)
{
    if (!running_) {
        start(std::move(job));
        return;
    }
    const bool underWay = !untold_ && !stop_.stop_requested() && running_->plan == job.plan &&
                          running_->refinement == job.refinement && running_->choice.inUse == job.choice.inUse &&
                          running_->choice.handling == job.choice.handling;
    if (underWay) {
        waiting_.reset();
        patience_.stop();
        return;
    }
    waiting_ = std::move(job);
    const bool isDraft = running_->refinement == Refinement::draft;
    const qint64 left = isDraft && !untold_ ? kPatienceMs - runningFor_.elapsed() : 0;
    if (left <= 0) {
        stop_.request_stop();
    } else if (!patience_.isActive()) {
        patience_.start(static_cast<int>(left));
    }
}

void StrengthRunner::forget()
{
    waiting_.reset();
    if (!running_) return;
    untold_ = true;
    stop_.request_stop();
}

void StrengthRunner::start(StrengthJob job)
{
    running_ = std::move(job);
    untold_ = false;
    stop_ = std::stop_source();
    runningFor_.start();
    const int number = ++number_;
    QMetaObject::invokeMethod(worker_, [this, worker = worker_, asked = *running_, token = stop_.get_token(), number] {
        auto strength = worker->solve(asked, token);
        QMetaObject::invokeMethod(this, [this, number, strength = std::move(strength)] { finish(number, strength); });
    });
}

void StrengthRunner::finish(int number, const std::optional<std::vector<CastingStrengthPtr>>& strength)
{
    if (number != number_ || !running_) return;
    patience_.stop();
    const StrengthJob job = *std::exchange(running_, std::nullopt);
    const bool told = strength && !untold_;
    // The next goes to work while this one is shown.
    if (waiting_) start(*std::exchange(waiting_, std::nullopt));
    if (told) emit solved(job, *strength);
}

}  // namespace yardcast::ui
