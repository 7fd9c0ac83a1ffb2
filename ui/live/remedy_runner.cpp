#include "ui/live/remedy_runner.h"

#include <utility>

#include "core/remedy/remedies.h"
#include "ui/live/thread_manners.h"

namespace yardcast::ui {

// Nobody waits for them: the window and the strength of what is drawn go first.
RemedyRunner::RemedyRunner(StrengthAssessor::Solver solver, QObject* parent)
    : QObject(parent), solver_(std::move(solver)), work_(QStringLiteral("remedies"), kRemedyNiceness)
{
}

void RemedyRunner::ask(const PlanPtr& plan, const PriceBook& prices, const AssessmentPtr& assessed)
{
    work_.start([this, plan, prices, assessed, solver = solver_](const std::stop_token& stop) {
        RemedyFinder finder(*plan, prices, assessed, Refinement::working, solver);
        for (const Finding& finding : finder.findings()) {
            const std::vector<Remedy> remedies = finder.remedies(finding, stop);
            if (stop.stop_requested()) return;
            QMetaObject::invokeMethod(this, [this, plan, complaint = complaintOf(finding), remedies, stop] {
                if (!stop.stop_requested()) emit found(plan, complaint, remedies);
            });
        }
        QMetaObject::invokeMethod(this, [this, plan, stop] {
            if (!stop.stop_requested()) emit finished(plan);
        });
    });
}

}  // namespace yardcast::ui
