#pragma once

#include <memory>

#include <QObject>
#include <QThread>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "core/purchase/price_book.h"

namespace yardcast::ui {

class PlanDocument;

/// Keeps an Assessment up to date beside the drawing, on a thread of its own. Only the newest plan counts: while one
/// is being assessed, those that came in between are skipped.
class LiveAssessment : public QObject {
    Q_OBJECT

public:
    LiveAssessment(PlanDocument& document, PriceBook prices, QObject* parent = nullptr);
    ~LiveAssessment() override;

    /// The latest, and the plan it speaks about. Null before the first.
    const AssessmentPtr& assessment() const { return assessment_; }
    const PlanPtr& plan() const { return plan_; }
    /// False while the shown plan is newer than the assessment.
    bool isCurrent() const;
    void setPrices(PriceBook prices);
    const PriceBook& prices() const { return prices_; }

signals:
    void assessed();

private:
    class Worker;
    void request();
    void take(const PlanPtr& plan, const AssessmentPtr& assessment);

    PlanDocument& document_;
    PriceBook prices_;
    QThread thread_;
    Worker* worker_;
    bool busy_ = false;
    bool waiting_ = false;
    AssessmentPtr assessment_;
    PlanPtr plan_;
};

}  // namespace yardcast::ui
