#pragma once

#include "ui/panels/fields/field.h"

class QLineEdit;

namespace yardcast::ui {

/// A field one types in. It is checked while it is typed, and taken over by Enter or when the focus leaves; Escape
/// restores. Nothing typed is ever dropped or changed.
class TypedField : public Field {
    Q_OBJECT

public:
    TypedField(FieldHost& host, const QString& path, const QString& label, const QString& unit, QWidget* parent);

    bool commit() override;
    void restore() override;
    QLineEdit& edit() const { return *edit_; }

protected:
    /// What is typed as an edit, or why not.
    struct Outcome {
        QString fault;
        Edit edit;
    };
    virtual Outcome read(const QString& text) const = 0;
    /// The text for what the plan says; called by `showPlan`. Left alone while something else is being typed.
    void showText(const QString& text, const QString& placeholder);
    /// After an edit was taken over.
    virtual void committed(const QString& text);

    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void check();

    QLineEdit* edit_;
    QString shown_;
};

}  // namespace yardcast::ui
