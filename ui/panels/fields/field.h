#pragma once

#include <QWidget>

#include "core/plan/plan.h"
#include "ui/document/plan_document.h"

class QBoxLayout;
class QLabel;

namespace yardcast::ui {

/// What a field may ask of the editor it stands in.
class FieldHost {
public:
    virtual ~FieldHost() = default;
    /// One entry of the undo list.
    virtual void apply(const QString& name, const Edit& edit) = 0;
    /// One step of the undo list back or forward; a field with nothing of its own to undo hands the keys on.
    virtual void undo() = 0;
    virtual void redo() = 0;
    /// The plan that is shown. Never null.
    virtual PlanPtr plan() const = 0;
    /// In words, what would newly be wrong with the plan after this edit; empty where nothing would.
    virtual QString objection(const Edit& edit) = 0;
};

/// One property in the editor: its name, the place to type or choose, its unit, and a message below. The object name
/// is the path of its key in the plan file ("counter.rim.depth_mm").
class Field : public QWidget {
    Q_OBJECT

public:
    Field(FieldHost& host, const QString& path, const QString& label, QWidget* parent);

    /// The name in the undo list; "Change <label>" unless said otherwise.
    void setEditName(const QString& name) { editName_ = name; }
    const QString& editName() const { return editName_; }
    void setHint(const QString& hint);

    /// Shows what the plan says; what is being typed stays.
    virtual void showPlan(const Plan& plan) = 0;
    /// False: the plan has no such property now, and the field is hidden.
    bool isThere() const { return there_; }
    /// What was typed and not yet taken over goes into the plan; false where it cannot.
    virtual bool commit() { return true; }
    /// Back to what the plan says.
    virtual void restore() {}

    /// Why what is typed cannot be taken over; empty where it can.
    const QString& fault() const { return fault_; }
    /// What the message below says now: the fault, or what would newly be wrong with the plan.
    QString message() const;

    static int labelWidth(const QWidget& widget);

protected:
    FieldHost& host() const { return host_; }
    /// The label becomes its buddy.
    void setEditor(QWidget* editor, const QString& unit = {});
    /// Instead of an editor beside the label: something as wide as the whole field, the label above it.
    void setContent(QWidget* content, bool showsLabel);
    void setThere(bool there);
    void setMessage(const QString& text, bool isFault);
    const QString& label() const { return labelText_; }

private:
    FieldHost& host_;
    QString labelText_;
    QString editName_;
    QString fault_;
    QLabel* label_;
    QLabel* message_;
    QBoxLayout* row_;
    QBoxLayout* column_;
    bool there_ = true;
};

}  // namespace yardcast::ui
