#pragma once

#include <memory>

#include <QSet>
#include <QWidget>

#include "ui/document/selection.h"
#include "ui/panels/fields/field.h"

class QLabel;
class QScrollArea;
class QTimer;

namespace yardcast::ui {

class LiveAssessment;
class PropertySheet;

/// Everything the plan file can say about what is chosen, in plain words: a part, several parts, a cutout, a fixture,
/// or with nothing chosen the plan itself. Checked while it is typed; each change is one entry of the undo list.
class PropertyEditor : public QWidget, public FieldHost {
    Q_OBJECT

public:
    PropertyEditor(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);
    ~PropertyEditor() override;

    /// The field of a key of the plan file, e.g. "counter.rim.depth_mm"; null where what is chosen has none.
    Field* field(const QString& path) const;
    PropertySheet& sheet() const;

    void apply(const QString& name, const Edit& edit) override;
    void undo() override;
    void redo() override;
    PlanPtr plan() const override;
    QString objection(const Edit& edit) override;

protected:
    void showEvent(QShowEvent* event) override;

private:
    struct Target {
        QStringList parts;
        CutoutRef cutout;
        QString fixture;
        friend bool operator==(const Target&, const Target&) = default;
    };
    void follow();
    void catchUp() const;
    void rebuild();
    void refresh();
    QString titleOf(const Plan& plan) const;

    PlanDocument& document_;
    Selection& selection_;
    LiveAssessment& live_;
    QLabel* title_;
    QScrollArea* scroll_;
    PropertySheet* sheet_ = nullptr;
    Target target_;
    QTimer* rebuildTimer_;
    QSet<QString> closedGroups_;
    PlanPtr checkedPlan_;
    QSet<QString> knownObjections_;
};

}  // namespace yardcast::ui
