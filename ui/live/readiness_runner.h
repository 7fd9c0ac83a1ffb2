#pragma once

#include <QObject>

#include "core/assess/assessment.h"
#include "core/assess/readiness_assessor.h"
#include "core/plan/plan.h"
#include "ui/live/newest_work.h"

namespace yardcast::ui {

/// Finds when castings are ready, on a thread of its own. Only the newest plan counts: what is under way for an older
/// one gives way at once.
class ReadinessRunner : public QObject {
    Q_OBJECT

public:
    explicit ReadinessRunner(QObject* parent = nullptr);

    /// `assessed`: with strength, of this plan.
    void ask(const PlanPtr& plan, const AssessmentPtr& assessed);
    /// What is under way is not wanted any more.
    void cancel() { work_.cancel(); }

signals:
    void found(const PlanPtr& plan, const Readiness& readiness);

private:
    ReadinessAssessor assessor_;   ///< touched only on the thread
    NewestWork work_;
};

}  // namespace yardcast::ui
