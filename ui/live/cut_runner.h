#pragma once

#include <stop_token>

#include <QObject>
#include <QThread>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "core/purchase/cut_lists.h"
#include "core/purchase/price_book.h"

namespace yardcast::ui {

/// Cuts what a plan wants from whole sheets and lengths, on a thread of its own. Only the newest plan counts: what is
/// under way for an older one gives way at once. Lists that did not change are not solved again.
class CutRunner : public QObject {
    Q_OBJECT

public:
    explicit CutRunner(QObject* parent = nullptr);
    ~CutRunner() override;

    /// `assessed`: of this plan, at least as quickly assessed.
    void ask(const PlanPtr& plan, const AssessmentPtr& assessed, const PriceBook& prices);
    /// What is under way is not wanted any more.
    void cancel();

signals:
    void found(const PlanPtr& plan, const CutPlansPtr& cuts);

private:
    class Worker;

    QThread thread_;
    Worker* worker_;
    std::stop_source stop_;
};

}  // namespace yardcast::ui
