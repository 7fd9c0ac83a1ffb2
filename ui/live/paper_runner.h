#pragma once

#include <functional>
#include <memory>

#include <QObject>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "core/purchase/price_book.h"
#include "ui/live/newest_work.h"

namespace yardcast::ui {

/// Solves a plan as finely as paper wants it, on a thread of its own: the window goes on. One at a time; another one,
/// or cancelling, ends that under way. What was solved is kept for the next time.
class PaperRunner : public QObject {
    Q_OBJECT

public:
    /// What is done with the answer on that thread, such as writing a file.
    using Work = std::function<void(const PlanPtr&, const AssessmentPtr&)>;

    explicit PaperRunner(QObject* parent = nullptr);
    ~PaperRunner() override;

    void start(const PlanPtr& plan, const PriceBook& prices, Work work = {});
    /// Neither `progressed` nor `done` comes any more of what is under way.
    void cancel();
    bool isRunning() const { return running_; }

signals:
    /// So many castings are solved; all of them: their hours are being found, and the work is done.
    void progressed(int solved, int castings);
    void done(const PlanPtr& plan, const AssessmentPtr& assessment);

private:
    class Worker;

    std::unique_ptr<Worker> worker_;   ///< touched only on the thread
    bool running_ = false;
    NewestWork work_;
};

}  // namespace yardcast::ui
