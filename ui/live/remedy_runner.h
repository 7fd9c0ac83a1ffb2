#pragma once

#include <string>
#include <vector>

#include <QObject>

#include "core/assess/assessment.h"
#include "core/assess/strength_assessor.h"
#include "core/plan/plan.h"
#include "core/purchase/price_book.h"
#include "ui/live/newest_work.h"

namespace yardcast::ui {

/// Tries edits for the findings of a plan, on a thread of its own, gravest finding first. Only the newest plan counts.
class RemedyRunner : public QObject {
    Q_OBJECT

public:
    explicit RemedyRunner(StrengthAssessor::Solver solver, QObject* parent = nullptr);

    /// `assessed`: with strength, of this plan.
    void ask(const PlanPtr& plan, const PriceBook& prices, const AssessmentPtr& assessed);
    /// What is under way is not wanted any more.
    void cancel() { work_.cancel(); }

signals:
    /// The remedies of one finding (`complaintOf`); none is an answer too.
    void found(const PlanPtr& plan, const std::string& complaint, const std::vector<Remedy>& remedies);
    /// All findings of this plan were looked at.
    void finished(const PlanPtr& plan);

private:
    StrengthAssessor::Solver solver_;
    NewestWork work_;
};

}  // namespace yardcast::ui
