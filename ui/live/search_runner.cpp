#include "ui/live/search_runner.h"

#include <utility>

#include "ui/live/thread_manners.h"

namespace yardcast::ui {

SearchRunner::SearchRunner(QObject* parent) : QObject(parent), worker_(new QObject)
{
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    thread_.setObjectName("search");
    thread_.start();
    QMetaObject::invokeMethod(worker_, [] { giveWay(kRemedyNiceness); });
}

SearchRunner::~SearchRunner()
{
    stop_.request_stop();
    thread_.quit();
    thread_.wait();
}

void SearchRunner::cancel()
{
    stop_.request_stop();
    searching_ = false;
}

void SearchRunner::search(const PlanPtr& plan, const PriceBook& prices, const std::string& counter, SearchGoal goal)
{
    stop_.request_stop();
    stop_ = std::stop_source();
    searching_ = true;
    QMetaObject::invokeMethod(worker_, [this, plan, prices, counter, goal, stop = stop_.get_token()] {
        const auto tell = [&](const SearchStep& step) {
            QMetaObject::invokeMethod(this, [this, step, stop] {
                if (!stop.stop_requested()) emit progressed(step);
            });
        };
        std::optional<SearchAnswer> answer = searchCounter(*plan, prices, counter, goal, tell, stop);
        QMetaObject::invokeMethod(this, [this, plan, counter, answer = std::move(answer), stop] {
            if (stop.stop_requested()) return;
            searching_ = false;
            emit found(plan, counter, answer);
        });
    });
}

}  // namespace yardcast::ui
