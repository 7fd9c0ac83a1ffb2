#include "ui/document/plan_document.h"

#include <utility>

#include <QElapsedTimer>
#include <QUndoCommand>
#include <QUndoStack>

namespace yardcast::ui {

namespace {
constexpr qint64 kMergeWithinMs = 1000;
}

/// Before and after, as whole plans.
class PlanCommand : public QUndoCommand {
public:
    PlanCommand(PlanDocument& document, const QString& name, PlanPtr before, PlanPtr after, int mergeId)
        : QUndoCommand(name), document_(document), before_(std::move(before)), after_(std::move(after)),
          mergeId_(mergeId)
    {
        age_.start();
    }

    int id() const override { return mergeId_; }
    void undo() override { document_.setCommitted(before_); }
    void redo() override { document_.setCommitted(after_); }

    bool mergeWith(const QUndoCommand* other) override
    {
        const auto* next = static_cast<const PlanCommand*>(other);
        if (age_.elapsed() > kMergeWithinMs || text() != next->text()) return false;
        after_ = next->after_;
        age_.restart();
        if (*before_ == *after_) setObsolete(true);
        return true;
    }

private:
    PlanDocument& document_;
    PlanPtr before_;
    PlanPtr after_;
    int mergeId_;
    QElapsedTimer age_;
};

PlanDocument::PlanDocument(QObject* parent)
    : QObject(parent), committed_(std::make_shared<const Plan>()), undoStack_(new QUndoStack(this))
{
}

PlanDocument::~PlanDocument() = default;

void PlanDocument::reset(Plan plan)
{
    preview_.reset();
    undoStack_->clear();
    committed_ = std::make_shared<const Plan>(std::move(plan));
    emit documentReset();
    emit committedChanged();
    emit planChanged();
}

void PlanDocument::apply(const QString& name, const Edit& edit, int mergeId)
{
    cancelPreview();
    auto after = std::make_shared<const Plan>(edit(*committed_));
    if (*after == *committed_) return;
    undoStack_->push(new PlanCommand(*this, name, committed_, std::move(after), mergeId));
}

void PlanDocument::preview(const Edit& edit)
{
    preview_ = std::make_shared<const Plan>(edit(*committed_));
    emit planChanged();
}

void PlanDocument::commitPreview(const QString& name)
{
    if (!preview_) return;
    PlanPtr after = std::exchange(preview_, nullptr);
    if (*after == *committed_) {
        emit planChanged();
        return;
    }
    undoStack_->push(new PlanCommand(*this, name, committed_, std::move(after), -1));
}

void PlanDocument::cancelPreview()
{
    if (!preview_) return;
    preview_.reset();
    emit planChanged();
}

void PlanDocument::setCommitted(PlanPtr plan)
{
    preview_.reset();
    committed_ = std::move(plan);
    emit committedChanged();
    emit planChanged();
}

}  // namespace yardcast::ui
