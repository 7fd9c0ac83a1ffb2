#include "ui/live/readiness_runner.h"

#include <optional>
#include <utility>

#include "ui/live/thread_manners.h"

namespace yardcast::ui {

// The window and the strength of what is drawn go first.
ReadinessRunner::ReadinessRunner(QObject* parent)
    : QObject(parent), work_(QStringLiteral("readiness"), kRemedyNiceness)
{
}

void ReadinessRunner::ask(const PlanPtr& plan, const AssessmentPtr& assessed)
{
    work_.start([this, plan, assessed](const std::stop_token& stop) {
        std::optional<Readiness> readiness = assessor_.assess(*plan, *assessed, stop);
        if (!readiness) return;
        QMetaObject::invokeMethod(this, [this, plan, readiness = std::move(*readiness), stop] {
            if (!stop.stop_requested()) emit found(plan, readiness);
        });
    });
}

}  // namespace yardcast::ui
