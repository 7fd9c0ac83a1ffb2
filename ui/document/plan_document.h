#pragma once

#include <functional>

#include <QObject>
#include <QString>

#include "core/plan/plan.h"

class QUndoStack;

namespace yardcast::ui {

using Edit = std::function<Plan(const Plan&)>;

/// The one plan of a window: what is committed, what a gesture in progress makes of it, and the way back.
/// Undo holds whole plans (parts shared), so it cannot be wrong. Views read `plan()` and listen to `planChanged`.
class PlanDocument : public QObject {
    Q_OBJECT

public:
    explicit PlanDocument(QObject* parent = nullptr);
    ~PlanDocument() override;

    /// What is shown: the plan of the gesture in progress, or the committed one. Never null.
    const PlanPtr& plan() const { return preview_ ? preview_ : committed_; }
    const PlanPtr& committed() const { return committed_; }
    bool isPreviewing() const { return preview_ != nullptr; }
    QUndoStack* undoStack() const { return undoStack_; }

    /// Another plan altogether: the undo list is emptied and marked clean.
    void reset(Plan plan);

    /// One edit, one entry in the undo list called `name`. An edit that changes nothing leaves no entry. Entries with
    /// the same `mergeId` (>= 0) that follow each other within a second become one (nudging with the arrow keys).
    void apply(const QString& name, const Edit& edit, int mergeId = -1);

    /// A gesture in progress: `edit` is always applied to the committed plan, so a drag never accumulates error.
    void preview(const Edit& edit);
    /// The preview becomes one entry of the undo list.
    void commitPreview(const QString& name);
    void cancelPreview();

signals:
    /// `plan()` is another one now.
    void planChanged();
    /// `committed()` is another one now (edit, undo, redo or reset); `planChanged` is sent too.
    void committedChanged();
    /// `reset` was called.
    void documentReset();

private:
    friend class PlanCommand;
    void setCommitted(PlanPtr plan);

    PlanPtr committed_;
    PlanPtr preview_;
    QUndoStack* undoStack_;
};

}  // namespace yardcast::ui
