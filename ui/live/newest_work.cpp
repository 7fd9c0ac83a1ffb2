#include "ui/live/newest_work.h"

#include <utility>

#include "ui/live/thread_manners.h"

namespace yardcast::ui {

NewestWork::NewestWork(const QString& name, int niceness) : there_(new QObject)
{
    there_->moveToThread(&thread_);
    QObject::connect(&thread_, &QThread::finished, there_, &QObject::deleteLater);
    thread_.setObjectName(name);
    thread_.start();
    QMetaObject::invokeMethod(there_, [niceness] { giveWay(niceness); });
}

NewestWork::~NewestWork()
{
    stop_.request_stop();
    thread_.quit();
    thread_.wait();
}

void NewestWork::start(std::function<void(const std::stop_token&)> work)
{
    stop_.request_stop();
    stop_ = std::stop_source();
    QMetaObject::invokeMethod(there_, [work = std::move(work), stop = stop_.get_token()] {
        if (!stop.stop_requested()) work(stop);
    });
}

}  // namespace yardcast::ui
