#include "ui/live/search_runner.h"

#include <utility>

#include "ui/live/thread_manners.h"

namespace yardcast::ui {

SearchRunner::SearchRunner(QObject* parent) : QObject(parent), work_(QStringLiteral("search"), kRemedyNiceness) {}

void SearchRunner::cancel()
{
    work_.cancel();
    searching_ = false;
}

void SearchRunner::search(const PlanPtr& plan, const PriceBook& prices, const std::string& counter, SearchGoal goal)
{
    searching_ = true;
    work_.start([this, plan, prices, counter, goal](const std::stop_token& stop) {
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
