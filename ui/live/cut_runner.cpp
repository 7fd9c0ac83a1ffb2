#include "ui/live/cut_runner.h"

#include "core/assess/with_cuts.h"
#include "ui/live/thread_manners.h"

namespace yardcast::ui {

// The window and the strength of what is drawn go first.
CutRunner::CutRunner(QObject* parent) : QObject(parent), work_(QStringLiteral("cuts"), kRemedyNiceness) {}

void CutRunner::ask(const PlanPtr& plan, const AssessmentPtr& assessed, const PriceBook& prices)
{
    work_.start([this, plan, assessed, prices](const std::stop_token& stop) {
        const CutPlansPtr cuts = solver_.solve(cutJobs(*plan, prices, *assessed), stop);
        if (!cuts) return;
        QMetaObject::invokeMethod(this, [this, plan, cuts, stop] {
            if (!stop.stop_requested()) emit found(plan, cuts);
        });
        std::optional<MouldSavings> savings = mouldSavings(*plan, prices, *assessed, stop);
        if (!savings) return;
        const auto kept = std::make_shared<const MouldSavings>(std::move(*savings));
        QMetaObject::invokeMethod(this, [this, plan, kept, stop] {
            if (!stop.stop_requested()) emit weighed(plan, kept);
        });
    });
}

}  // namespace yardcast::ui
