#pragma once

#include <QObject>

#include "core/assess/assessment.h"
#include "core/assess/mould_savings.h"
#include "core/plan/plan.h"
#include "core/purchase/cut_lists.h"
#include "core/purchase/price_book.h"
#include "ui/live/newest_work.h"

namespace yardcast::ui {

/// Cuts what a plan wants from whole sheets and lengths, then weighs what fewer moulds and old boards would save, on a
/// thread of its own. Only the newest plan counts: what is
/// under way for an older one gives way at once. Lists that did not change are not solved again.
class CutRunner : public QObject {
    Q_OBJECT

public:
    explicit CutRunner(QObject* parent = nullptr);

    /// `assessed`: of this plan, at least as quickly assessed.
    void ask(const PlanPtr& plan, const AssessmentPtr& assessed, const PriceBook& prices);
    /// What is under way is not wanted any more.
    void cancel() { work_.cancel(); }

signals:
    void found(const PlanPtr& plan, const CutPlansPtr& cuts);
    /// After `found`.
    void weighed(const PlanPtr& plan, const std::shared_ptr<const MouldSavings>& savings);

private:
    CutSolver solver_;   ///< touched only on the thread
    NewestWork work_;
};

}  // namespace yardcast::ui
