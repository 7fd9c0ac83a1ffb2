#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

#include <QElapsedTimer>
#include <QObject>
#include <QThread>
#include <QTimer>

#include "core/assess/assessment.h"
#include "core/assess/strength_assessor.h"
#include "core/plan/plan.h"

namespace yardcast::ui {

/// What is to be solved, and of which plan.
struct StrengthJob {
    PlanPtr plan;
    AssessmentPtr base;         ///< of this plan; its castings
    Refinement refinement = Refinement::draft;
    CaseChoice choice;
};

/// Solves strength on a thread of its own. Only the newest job counts: one that waits is replaced, and one under way
/// gives way. A draft is let run for a moment first: drags send plans faster than any solver, and nothing would ever
/// be seen if each took the one before away.
class StrengthRunner : public QObject {
    Q_OBJECT

public:
    explicit StrengthRunner(StrengthAssessor::Solver solver, QObject* parent = nullptr);
    ~StrengthRunner() override;

    void ask(StrengthJob job);
    /// Another plan altogether: nothing of what was asked is told any more.
    void forget();

signals:
    /// One a casting of the job's base, in their order.
    void solved(const StrengthJob& job, const std::vector<CastingStrengthPtr>& strength);

private:
    class Worker;
    void start(StrengthJob job);
    void finish(int number, const std::optional<std::vector<CastingStrengthPtr>>& strength);

    QThread thread_;
    Worker* worker_;
    QTimer patience_;
    std::optional<StrengthJob> running_;
    std::optional<StrengthJob> waiting_;
    std::stop_source stop_;
    QElapsedTimer runningFor_;
    int number_ = 0;      ///< of the job under way
    bool untold_ = false; ///< the job under way is not wanted any more
};

}  // namespace yardcast::ui
