#pragma once

#include <functional>
#include <stop_token>

#include <QObject>
#include <QString>
#include <QThread>

namespace yardcast::ui {

/// A thread of its own for work of which only the newest counts: what is under way for an older one is asked to stop. The
/// thread ends with this, so declare it after what its work touches.
class NewestWork {
public:
    /// `niceness`: see ui/live/thread_manners.h.
    NewestWork(const QString& name, int niceness);
    ~NewestWork();
    NewestWork(const NewestWork&) = delete;
    NewestWork& operator=(const NewestWork&) = delete;

    /// Gives up what is under way; `work` runs on the thread, unless it is given up before its turn.
    void start(std::function<void(const std::stop_token&)> work);
    /// What is under way is not wanted any more.
    void cancel() { stop_.request_stop(); }

private:
    QThread thread_;
    QObject* there_;
    std::stop_source stop_;
};

}  // namespace yardcast::ui
